"""The measure of a text: published formulas, and counts that a reader can check by hand."""

from __future__ import annotations

import pytest

from notices.wording.reading_ease import (
    flesch,
    flesch_kincaid,
    measure,
    sentences_of,
    syllables_of,
    words_of,
)


def test_the_grade_agrees_with_a_published_one() -> None:
    """13 words, 1 sentence, 24 syllables: grade 11.3 (agronomy.md, section 12)."""
    assert flesch_kincaid(13, 1, 24) == pytest.approx(11.3, abs=0.05)


def test_the_ease_of_the_same_text() -> None:
    """206.835 − 1.015 · 13 − 84.6 · 24 / 13 = 206.835 − 13.195 − 156.185 = 37.455."""
    assert flesch(13, 1, 24) == pytest.approx(37.455, abs=0.001)


# As a dictionary parts them.
@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("green", 1),
        ("holes", 1),
        ("closed", 1),
        ("surface", 2),
        ("tining", 2),
        ("scarifying", 4),
        ("little", 2),
        ("wanted", 2),
        ("grasses", 2),
        ("one-twentieth", 4),
        ("the", 1),
        ("water", 2),
        ("player’s", 2),
        ("temporary", 4),
        ("competition", 4),
        ("weather", 2),
        ("we", 1),
        ("18", 1),
    ],
)
def test_syllables(word: str, parts: int) -> None:
    assert syllables_of(word) == parts


@pytest.mark.parametrize(
    ("text", "sentences"),
    [
        ("We cut. We sand.", ["We cut.", "We sand."]),
        ("It is 3.5 mm. Then 5 mm.", ["It is 3.5 mm.", "Then 5 mm."]),
        ("Look here: https://www.club.example/a.b. Thank you.", ["Look here: .", "Thank you."]),
        ("Write to office@club.example. We answer.", ["Write to .", "We answer."]),
        ("From 6:30 a.m. on the day.", ["From 6:30 a.m. on the day."]),
        ("Greens:\n\n* one\n* two", ["Greens:", "one", "two"]),
        ("He said: “Wait.” We wait.", ["He said: “Wait.", "We wait."]),
    ],
)
def test_sentences(text: str, sentences: list[str]) -> None:
    assert sentences_of(text) == sentences


def test_words() -> None:
    assert words_of("We don’t top-dress 1,200 m2 by 06:30.") == [
        *("We", "don’t", "top-dress", "1,200", "m2", "by", "06:30"),
    ]


def test_headings_count_for_nothing() -> None:
    text = "Our Club\nNews of the greens\n==================\n\nWHY\n\nWe cut the grass.\n"
    counted = measure(text)
    # "Our Club" stands above the ruled line and is no heading of its own.
    assert counted.sentences == ("Our Club", "We cut the grass.")
    assert counted.words == 6
    assert counted.average == 3.0


def test_long_sentences_are_named_the_longest_first() -> None:
    text = "One two three. One two three four five. One two three four."
    assert measure(text).longer_than(3) == ("One two three four five.", "One two three four.")
    assert measure(text).longer_than(5) == ()


def test_a_text_without_words() -> None:
    assert (measure("").grade, measure("").ease, measure(" ⛳ ").words) == (0, 100, 0)
