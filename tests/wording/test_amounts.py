"""Quantities as a committee reads them: two digits of a count, units of its own country."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.wording import amounts


@pytest.mark.parametrize(
    ("number", "said"),
    [(3_582_000, "3.6 million"), (446_000, "450,000"), (1234, "1,200"), (640, "640"), (57, "57")],
)
def test_counts(number: float, said: str) -> None:
    assert amounts.count(number) == said


@pytest.mark.parametrize(
    ("said", "metric", "imperial"),
    [
        # A cubic yard is 0.9144³ = 0.764555 m³: 21.1 m³ are 27.6 of them.
        (amounts.volume(21.1, "metric"), "21 m³", None),
        (amounts.volume(21.1, "imperial"), None, "28 cubic yards"),
        (amounts.volume(2.24, "metric"), "2.2 m³", None),
        # A US ton is 0.90718474 t: 97.6 t are 107.6.
        (amounts.mass(97.6, "metric"), "98 t", None),
        (amounts.mass(97.6, "imperial"), None, "108 tons"),
        # A mile is 1,609.344 m: 8,605 m are 5.35; half a mile is 805 m.
        (amounts.distance(8605, "metric"), "8.6 km", None),
        (amounts.distance(8605, "imperial"), None, "5.3 miles"),
        # 745,700 m ÷ 1,609.344 = 463.4.
        (amounts.distance(745_700, "imperial"), None, "463 miles"),
        (amounts.distance(157, "metric"), "160 m", None),
        # 157 m ÷ 0.3048 = 515 feet.
        (amounts.distance(157, "imperial"), None, "520 feet"),
        # 60 m² ÷ 0.09290304 = 645.8 square feet.
        (amounts.area(60, "metric"), "60 m²", None),
        (amounts.area(60, "imperial"), None, "650 square feet"),
    ],
)
def test_units(said: str, metric: str | None, imperial: str | None) -> None:
    assert said == (metric or imperial)


def test_a_formula_for_inches_and_square_feet() -> None:
    """A square foot is 12 × 12 = 144 square inches, and a foot 12 inches."""
    holes = "1,000,000 ÷ (spacing along × spacing across) × passes × area"
    assert amounts.formula(holes, "metric") == holes
    assert amounts.formula(holes, "imperial").startswith("144 ÷ (spacing along × spacing across)")
    slits = "area ÷ (blade spacing ÷ 1000) × passes"
    assert amounts.formula(slits, "imperial") == "area ÷ (blade spacing ÷ 12) × passes"
    # A rate per 1,000 square feet: the thousand stays.
    rate = "rate ÷ density ÷ 1000 × number of dressings × area"
    assert amounts.formula(rate, "imperial") == rate


def test_shares_and_hours() -> None:
    assert amounts.percent(5.309) == "5.3 %"
    assert amounts.hours(41.2) == "41"
    assert amounts.hours(5.02) == "5.0"


def test_a_time_after_midnight_is_the_last_minute_of_the_day() -> None:
    assert amounts.time_of_day(390) == dt.time(6, 30)
    assert amounts.time_of_day(1500) == dt.time(23, 59)
