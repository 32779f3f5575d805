"""Hours of people, costs, and the sand to be ordered."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.model import Programme
from notices.programme.public_holidays import working_day_before

ProgrammeOf = Callable[..., Programme]

COURSE = "course: {greens: [{green: 1-2, area: 480 m2}]}\n"
CLUB = "club: {name: Marl Hill, currency: GBP}\n"
# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; 12 between greens make it an hour.
CREW = """\
crew:
  people: 4
  kept_back: 0
  breaks: 60
  machines:
    - {operation: rolling, width: 1 m, speed: 1 km/h, efficiency: 60 %, minutes_between_greens: 12, people: 2}
"""
ROLLING = "works:\n  - {operation: rolling, dates: 2026-06-01}\n"


def value(programme: Programme, quantity: str, work: str = "all") -> float | None:
    figure = programme.figure(quantity, work)
    return figure.value if figure else None


def test_hours_are_time_by_people(programme_of: ProgrammeOf) -> None:
    # Two greens of an hour for two people, wherever the rest falls: 2 × 1 h × 2 = 4 h.
    for day in ("07:00 to 15:00", "10:30 to 14:30", "11:00 to 14:00"):
        crew = CREW + f"  working_day: {day}\n"
        programme = programme_of(CLUB + COURSE + crew + ROLLING)
        assert value(programme, "hours of people", "rolling-1") == pytest.approx(4)
        assert value(programme, "hours of people") == pytest.approx(4)


def test_without_a_price_nothing_is_said_of_money(programme_of: ProgrammeOf) -> None:
    plan = CLUB + COURSE + CREW + ROLLING + "  - {operation: top dressing, dates: 2026-06-01}\n"
    programme = programme_of(plan)
    assert not [f for f in programme.figures if "cost" in f.quantity]


def test_without_a_crew_nobody_knows_the_hours(programme_of: ProgrammeOf) -> None:
    assert value(programme_of(CLUB + COURSE + ROLLING), "hours of people") is None


def test_what_is_priced_is_summed(programme_of: ProgrammeOf) -> None:
    # 0.8 kg/m² on 960 m² are 0.768 t, at 50 a tonne 38.40; 4 h at 15 make 60; hire 1,200.
    programme = programme_of(
        CLUB
        + COURSE
        + CREW
        + "  hour_price: 15\n"
        + "sand: {price_per_tonne: 50, waste: 0 %}\n"
        + ROLLING.replace("rolling,", "rolling, hire: 1200,")
        + "  - {operation: top dressing, dates: 2026-07-01, settings: {rate: 0.8 kg/m2}}\n"
    )
    assert value(programme, "cost of labour", "rolling-1") == pytest.approx(60)
    assert value(programme, "cost of hire", "rolling-1") == 1200
    assert value(programme, "cost", "rolling-1") == pytest.approx(1260)
    assert value(programme, "cost of sand") == pytest.approx(38.4)
    assert value(programme, "cost of hire") == 1200
    hours = value(programme, "hours of people")
    assert hours is not None
    assert value(programme, "cost of labour") == pytest.approx(hours * 15)
    assert value(programme, "cost") == pytest.approx(38.4 + 1200 + hours * 15)
    figures = [f for f in programme.figures if f.quantity.startswith("cost")]
    assert {figure.unit for figure in figures} == {"GBP"}
    assert len({figure.id for figure in programme.figures}) == len(programme.figures)


def test_hire_alone_is_the_cost(programme_of: ProgrammeOf) -> None:
    programme = programme_of(COURSE + ROLLING.replace("rolling,", "rolling, hire: 1200,"))
    assert value(programme, "cost") == 1200
    assert value(programme, "cost", "rolling-1") is None


def test_sand_by_day(programme_of: ProgrammeOf) -> None:
    # Green 1 on Monday and green 2 on Tuesday, again a week later: 480 m² × 0.8 kg/m² = 0.384 t
    # a day, over 1.6 t/m³ (daniels2018) 0.24 m³; 1.536 t and 0.96 m³ in all.
    programme = programme_of(
        COURSE
        + "sand: {waste: 0 %, lorry_load: 1 t}\n"
        + "works:\n  - {operation: top dressing, dates: 2026-06-01 to 2026-06-02, "
        + "settings: {rate: 0.8 kg/m2, dressings: 2, days_between: 7}}\n"
    )
    order = programme.sand_order
    assert order is not None
    assert [day.date.isoformat() for day in order.days] == [
        *("2026-06-01", "2026-06-02", "2026-06-08", "2026-06-09"),
    ]
    assert [day.mass_t for day in order.days] == pytest.approx([0.384] * 4)
    assert [day.volume_m3 for day in order.days] == pytest.approx([0.24] * 4)
    assert order.top_ups == (dt.date(2026, 6, 8), dt.date(2026, 6, 9))
    assert order.mass_t == pytest.approx(1.536)
    assert order.volume_m3 == pytest.approx(0.96)
    assert order.lorry_loads == 2
    # The first need is on a Monday, so the sand comes on Friday.
    assert order.deliver_by == dt.date(2026, 5, 29)


def test_the_order_is_what_the_figures_say(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        COURSE
        + "works:\n"
        + "  - {operation: hollow tining, dates: 2026-09-01 to 2026-09-03, greens: 1}\n"
        + "  - {operation: top dressing, dates: 2026-09-01 to 2026-09-03, greens: 1, "
        + "settings: {fill: holes, dressings: 3}}\n"
    )
    order = programme.sand_order
    assert order is not None
    assert order.volume_m3 == pytest.approx(value(programme, "sand"))
    assert order.mass_t == pytest.approx(value(programme, "mass of sand"))
    assert order.lorry_loads == value(programme, "lorry loads")


def test_no_dressing_needs_no_sand(programme_of: ProgrammeOf) -> None:
    assert programme_of(COURSE + ROLLING).sand_order is None


@pytest.mark.parametrize(
    ("day", "before"),
    # 2026-06-01 is a Monday.
    [(1, "2026-05-29"), (2, "2026-06-01"), (6, "2026-06-05"), (7, "2026-06-05"), (8, "2026-06-05")],
)
def test_a_lorry_comes_on_a_weekday(day: int, before: str) -> None:
    assert working_day_before(dt.date(2026, 6, day), None).isoformat() == before


@pytest.mark.parametrize(
    ("day", "country", "before"),
    [
        # The late summer bank holiday of 2026 is Monday 31 August (gov.uk/bank-holidays), and
        # Scotland has its own on 3 August; Christmas is a Friday, and Monday 28 December stands
        # for Boxing Day, which is a Saturday.
        (dt.date(2026, 9, 1), "GB-ENG", "2026-08-28"),
        (dt.date(2026, 9, 1), "GB-SCT", "2026-08-31"),
        (dt.date(2026, 9, 1), None, "2026-08-31"),
        (dt.date(2026, 12, 29), "GB-ENG", "2026-12-24"),
    ],
)
def test_no_lorry_comes_on_a_public_holiday(day: dt.date, country: str | None, before: str) -> None:
    assert working_day_before(day, country).isoformat() == before
