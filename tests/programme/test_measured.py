"""What the club measured: figures with date and green, and before and after."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from notices.programme.model import Programme

ProgrammeOf = Callable[..., Programme]


PLAN = """\
course: {greens: [{green: 1-2, area: 480 m2}]}
works:
  - {operation: hollow tining, dates: 2026-06-01, greens: 1, services_checked: true}
  - {operation: rolling, dates: 2026-06-10}
measurements:
  - {date: 2026-09-01, green: 1, firmness: 112 g, speed: 2.9 m, thatch_depth: 18 mm}
  - {date: 2026-05-20, green: 1-2, firmness: "100,5 g", speed: 9 ft, organic_matter: 5.1 %}
  - {date: 2026-05-20, green: 1, firmness: 101.5 g}
  - {date: 2026-09-01, green: 2, firmness: 7 mm, speed: 2.9 m}
"""


@pytest.fixture(name="programme")
def of_plan(programme_of: ProgrammeOf) -> Programme:
    return programme_of(PLAN)


@pytest.mark.parametrize(
    ("quantity", "green", "value", "unit"),
    [
        ("firmness in g, 2026-05-20", "1", (100.5 + 101.5) / 2, "g"),  # two readings, their mean
        ("firmness in g, 2026-05-20", "2", 100.5, "g"),
        ("firmness in g, 2026-09-01", "1", 112, "g"),
        ("firmness in g, change", "1", 112 - 101, "g"),
        ("firmness in mm, 2026-09-01", "2", 7, "mm"),
        ("green speed, 2026-05-20", "2", 9 * 0.3048, "m"),
        ("green speed, change", "1", 2.9 - 9 * 0.3048, "m"),
        ("organic matter, 2026-05-20", "1", 5.1, "percent"),
        ("depth of thatch, 2026-09-01", "1", 18, "mm"),
    ],
)
def test_figures(programme: Programme, quantity: str, green: str, value: float, unit: str) -> None:
    figure = programme.figure(quantity, "all", green)
    assert figure is not None
    assert figure.value == pytest.approx(value)
    assert figure.unit == unit
    assert not figure.default_used


def test_nothing_is_set_side_by_side_in_two_units_or_on_one_day(programme: Programme) -> None:
    assert programme.figure("firmness in g, change", "all", "2") is None
    assert programme.figure("organic matter, change", "all", "1") is None


def test_before_and_after(programme: Programme) -> None:
    # Cores were taken of green 1 alone between May and September; rolling opens nothing.
    between = {(each.green, each.what): each.works_between for each in programme.measured}
    assert between["1", "green speed"] == ("hollow-tining-1",)
    assert between["2", "green speed"] == ()
    figure = programme.figure("green speed, change", "all", "1")
    assert figure is not None
    assert figure.inputs["works between"] == "hollow-tining-1"


def test_readings_stand_in_order_of_dates(programme: Programme) -> None:
    for each in programme.measured:
        days = [reading.date for reading in each.readings]
        assert days == sorted(days)
    assert [each.green for each in programme.measured] == sorted(
        each.green for each in programme.measured
    )
