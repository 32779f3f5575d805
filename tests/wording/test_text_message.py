"""Lengths as phones count them, after 3GPP TS 23.038 and TS 23.040."""

from __future__ import annotations

import pytest

from notices.wording.text_message import characters, first_within, for_phones, is_default, parts


@pytest.mark.parametrize(
    ("text", "count", "messages"),
    [
        ("a" * 160, 160, 1),
        ("a" * 161, 161, 2),
        ("a" * 306, 306, 2),  # two parts of 153
        ("a" * 307, 307, 3),
        ("€" * 80, 160, 1),  # the extension table: two characters each
        ("€" * 81, 162, 2),
        ("ł" * 70, 70, 1),  # not in the default alphabet: UCS-2
        ("ł" * 71, 71, 2),
        ("ł" * 134, 134, 2),  # two parts of 67
        ("ł" * 135, 135, 3),
        ("🏌", 2, 1),  # a pair of surrogates in UCS-2
    ],
)
def test_characters_and_parts(text: str, count: int, messages: int) -> None:
    assert (characters(text), parts(text)) == (count, messages)


def test_typographic_signs_become_plain_ones() -> None:
    said = for_phones("“We’ll work – rain allowing…”")
    assert said == '"We\'ll work - rain allowing..."'
    assert is_default(said)


def test_the_first_that_fits_is_taken() -> None:
    assert first_within(["a" * 9, "b" * 5, "c" * 3], 5) == "b" * 5
    assert first_within(["a" * 9], 5) == ""
