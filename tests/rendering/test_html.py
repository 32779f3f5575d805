"""HTML escapes whatever it is given, refuses what it does not know, and inlines its styles."""

from __future__ import annotations

import jinja2
import pytest

from notices.rendering import html


def test_a_name_that_the_template_needs_must_be_given() -> None:
    with pytest.raises(jinja2.UndefinedError):
        html.fill("web/index.html.j2")


def test_styles_are_inlined_and_those_for_the_dark_kept() -> None:
    page = html.inline_styles(
        "<html><head><style>p { color: #1b2b2b }</style>"
        '<style data-css-inline="keep">@media (prefers-color-scheme: dark) '
        "{ p { color: #fff } }</style></head><body><p>Words</p></body></html>"
    )
    assert '<p style="color: #1b2b2b' in page
    assert page.count("<style") == 1
    assert "prefers-color-scheme: dark" in page


def test_styles_are_fetched_from_nowhere() -> None:
    page = '<link rel="stylesheet" href="https://fallow.example/a.css"><p>Words</p>'
    assert "Words" in html.inline_styles(page)
