"""HTML escapes whatever it is given, refuses what it does not know, and inlines its styles."""

from __future__ import annotations

import datetime as dt

import jinja2
import pytest

from notices.documents.model import Document, Imprint
from notices.programme.model import Edition
from notices.rendering import html

DOCUMENT = Document(
    name="page",
    title="Title",
    language="en-GB",
    club="Fallow Moor Golf Club",
    imprint=Imprint(Edition(dt.date(2027, 3, 1))),
    summary="Summary.",
    sections=(),
    facts=(),
)


def test_a_name_that_the_template_needs_must_be_given() -> None:
    with pytest.raises(jinja2.UndefinedError):
        html.fill("web/index.html.j2", document=DOCUMENT)


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


def test_words_in_a_style_sheet_cannot_end_its_string() -> None:
    # CSS Syntax Level 3, 4.3.7: a backslash, the code in hexadecimal and a blank stand for a sign.
    page = html._environment().from_string("{{ name|css }}").render(name='O’Neil"; }</style>')
    assert page == r"O\2019 Neil\22 \3b  \7d \3c \2f style\3e "
