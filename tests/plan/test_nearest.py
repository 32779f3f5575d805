from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.plan.nearest import nearest, quoted

SETTINGS = ["tine_diameter", "inside_diameter", "spacing", "depth", "passes"]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("tine_diametre", "tine_diameter"),
        ("Tine-Diameter", "tine_diameter"),
        ("tine diameter", "tine_diameter"),
        ("dept", "depth"),
        ("spaceing", "spacing"),
        ("colour", None),
        ("", None),
        ("x" * 100_000, None),
    ],
)
def test_finds_the_word_that_was_meant(typed: str, meant: str | None) -> None:
    assert nearest(typed, SETTINGS) == meant


def test_no_known_words_no_suggestion() -> None:
    assert nearest("depth", []) is None


@given(st.text(), st.lists(st.text()))
def test_answers_with_a_known_word_or_none(word: str, known: list[str]) -> None:
    assert nearest(word, known) in [None, *known]


@given(st.text() | st.integers() | st.none() | st.booleans() | st.lists(st.integers()))
def test_quotes_anything_on_one_short_line(value: object) -> None:
    shown = quoted(value)
    assert shown.isprintable()
    assert len(shown) <= 62


def test_quotes_a_number_that_python_does_not_write_out() -> None:
    assert quoted(10**5000) == '"a very long number"'
