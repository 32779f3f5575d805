"""Sizes as a golfer pictures them."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.wording.measures import in_units, length, like, share, up_to, weeks

PARTS = {
    "half": 2,
    "third": 3,
    "quarter": 4,
    "fifth": 5,
    "sixth": 6,
    "seventh": 7,
    "eighth": 8,
    "tenth": 10,
    "twelfth": 12,
    "fifteenth": 15,
    "twentieth": 20,
    "twenty-fifth": 25,
    "thirtieth": 30,
    "fortieth": 40,
    "fiftieth": 50,
    "sixtieth": 60,
    "seventieth": 70,
    "eightieth": 80,
    "hundredth": 100,
}


def fraction(words: str) -> Fraction:
    """Read "about one-twentieth", or "about two-thirds", as a number."""
    match = re.fullmatch(r"about (one|two|three)[- ]([a-z-]+?)s?", words)
    if match is None:
        assert words == "about half"
        return Fraction(1, 2)
    return Fraction({"one": 1, "two": 2, "three": 3}[match[1]], PARTS[match[2]])


@given(st.floats(1.0, 58.0))
def test_the_fraction_named_is_near_the_value(percent: float) -> None:
    named = 100 * float(fraction(share(percent)))
    assert abs(named - percent) / percent <= 0.15, f"{share(percent)} for {percent} %"


@pytest.mark.parametrize(
    ("percent", "said"),
    [
        (5.3, "about one-twentieth"),
        (10.0, "about one-tenth"),
        (25.0, "about one-quarter"),
        (33.3, "about one-third"),
        (50.0, "about half"),
        (12.5, "about one-eighth"),
        (1.0, "about one-hundredth"),
    ],
)
def test_round_shares(percent: float, said: str) -> None:
    assert share(percent) == said


@given(st.floats(0.01, 0.9))
def test_a_share_too_small_to_name(percent: float) -> None:
    assert share(percent) == "less than one part in a hundred"


@given(st.floats(59.0, 400.0))
def test_a_share_too_large_to_be_half(percent: float) -> None:
    """Openings side by side; several passes may even come to more than the whole."""
    assert share(percent) == "more than half"


# A £2 coin is 2.5 mm thick (Royal Mint), a shoelace 4 to 5 mm wide, a pencil 7 to 8 mm thick,
# a broom handle 22 to 28 mm; a finger is 16 to 20 mm wide, the little one less, a thumb more.
@pytest.mark.parametrize(
    ("width_mm", "said"),
    [
        (2.0, "no wider than the edge of a coin"),
        (3.0, "about as wide as a shoelace"),
        (7.5, "about as wide as a pencil"),
        (10.0, "about as wide as your little finger"),
        (13.0, "about as wide as a finger"),
        (18.0, "about as wide as a thumb"),
    ],
)
def test_widths(width_mm: float, said: str) -> None:
    assert like(width_mm) == said


@pytest.mark.parametrize(
    ("mm", "said"),
    [
        (2, "2 mm"),
        (3.5, "3.5 mm"),
        (75, "75 mm"),
        (99.9, "99.9 mm"),
        (100, "10 cm"),
        (225, "22.5 cm"),
        (300, "30 cm"),
        (1000, "1 m"),
        (1500, "1.5 m"),
        (3000, "3 m"),
        # 1/2 in and 1 in, as some clubs type them: a golfer needs no hundredths.
        (12.7, "12.7 mm"),
        (25.4, "25.4 mm"),
        # Rounding must not leave "1000 mm" or "100 cm" behind.
        (99.99, "10 cm"),
        (999.9, "1 m"),
    ],
)
def test_lengths(mm: float, said: str) -> None:
    assert length(mm) == said


@given(st.floats(0.5, 12000.0))
def test_a_length_is_within_its_rounding(mm: float) -> None:
    amount, unit = length(mm).split(" ")
    factor = {"mm": 1, "cm": 10, "m": 1000}[unit]
    assert abs(float(amount) * factor - mm) <= 0.05 * factor + 1e-6


@pytest.mark.parametrize(
    ("days", "said"),
    [
        ([1], "a day"),
        ([1, 2], "a day or two"),
        ([0, 2], "a day or two"),
        ([3], "about three days"),
        ([0, 5], "up to five days"),
        ([3, 10], "three to ten days"),
        ([7], "about a week"),
        ([14], "about two weeks"),
        ([14, 28], "two to four weeks"),
        ([7, 14], "one to two weeks"),
        ([27, 29], "about four weeks"),
        ([70, 84], "10 to 12 weeks"),
    ],
)
def test_spans(days: list[int], said: str) -> None:
    assert weeks(days) == said


@given(st.lists(st.integers(0, 400), min_size=1, max_size=5))
def test_a_span_is_never_nothing_and_never_ends_before_it_starts(days: list[int]) -> None:
    said = weeks(days)
    assert not re.search(r"\b(?:no|0|-\d+)\b", said)
    assert not re.search(r"\b1 days\b|\bone days\b", said)


@pytest.mark.parametrize(
    ("mm", "said"),
    [
        (1.0, "0.04 inch"),  # 1/25.4 inch; 1/16 would be 1.6 mm
        (2.0, "0.08 inch"),  # 2/25.4; 1/16 would miss it by a fifth
        (1.5, "1/16 inch"),  # 1.59 mm
        (25.4 / 16, "1/16 inch"),
        (25.4 / 8, "1/8 inch"),
        (12.7, "½ inch"),
    ],
)
def test_what_no_rule_shows_is_written_in_decimals(mm: float, said: str) -> None:
    assert length(mm, "imperial") == said


def test_what_a_finding_measures_is_told_in_the_units_of_the_club() -> None:
    text = "5.2 kg/m² at 225 mm; usual is 10 to 15 mm, and 2 to 3 kg/m² of it"
    assert in_units(text, "metric") == text
    # 5.2 kg ÷ 0.45359237 × 92.90304 m² = 1,065 lb; 225 ÷ 25.4 = 8.86; 10 ÷ 25.4 = 0.39 and
    # 15 ÷ 25.4 = 0.59, to the eighth or sixteenth; 2 kg are 409.6 lb and 3 kg 614.4 lb.
    assert in_units(text, "imperial") == (
        "1,065 lb per 1,000 square feet at 9 inches; usual is 3/8 to 9/16 inch, "
        "and 410 to 614 lb per 1,000 square feet of it"
    )


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (16, "up to half an hour"),
        (30, "up to half an hour"),
        (31, "up to an hour"),
        (83, "up to an hour and a half"),
        (120, "up to two hours"),
        (150, "up to two and a half hours"),
        (181, ""),
    ],
)
def test_how_long_something_lasts_at_most(minutes: float, said: str) -> None:
    assert up_to(minutes) == said
