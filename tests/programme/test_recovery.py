"""When greens come back: what each work rests on, in which order, and through which winter."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notices.agronomy import recovery as model
from notices.agronomy.climate import STATIONS
from notices.agronomy.growth import Climate, Grass
from notices.agronomy.recovery import DateRange
from notices.programme.climate import RememberedClimate
from notices.programme.growing import Growing
from notices.programme.model import Programme, Recovery

ProgrammeOf = Callable[..., Programme]

BEST = "[20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]"
POLAR = "[-40, -40, -40, -40, -40, -40, -40, -40, -40, -40, -40, -40]"
DURHAM = "[4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]"


def course(means: str = DURHAM, optimum: str = "18 C", more: str = "") -> str:
    return (
        f"course: {{greens: [{{green: 1-2}}], monthly_mean_temperature: {means}, "
        f"optimum_temperature: {optimum}{more}}}\nworks:\n"
    )


def first(programme: Programme, work: str) -> Recovery:
    return programme.recoveries[work][0]


def day(number: int, month: int = 6, year: int = 2026) -> dt.date:
    return dt.date(year, month, number)


def span(early: dt.date, expected: dt.date, late: dt.date | None) -> DateRange:
    return DateRange(early, expected, late)


def test_holes_at_the_best_temperature_close_as_the_model_says(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        course(BEST, "20 C")
        + "  - {operation: solid tining, dates: 2026-06-01, settings: {tine_diameter: 9 mm}}\n"
    )
    # recovery_model: 9 mm ÷ (2 × 0.75) = 6 growth days, ÷ (2 × 0.45) = 10. At 20 °C one growth
    # day is a day; a degree off it is exp(−½ (1/5.5)²) = 0.9836, so 10 take 11 days. (0.9836 × 11
    # = 10.8, × 10 = 9.8.) Half of the opening: 3 days, and 5 ÷ 0.9836 = 5.08: the 6th. To be
    # expected: 9 mm ÷ (2 × 0.6) = 7.5, the 8th day, and half of it, 3.75, the 4th.
    found = first(programme, "solid-tining-1")
    assert found.fully_healed == span(day(7), day(9), day(12))
    assert found.putting_smoothly == span(day(4), day(5), day(7))
    assert found.back_in_play == DateRange.on(day(1))


def test_filled_holes_putt_three_to_ten_days_after_the_last_dressing(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(
        course()
        + """
  - {operation: hollow tining, dates: 2026-09-01}
  - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes, dressings: 3}}
"""
    )
    # Common practice: the last of three, a week apart, is on 15 September. The middle of 3 and 10
    # days is 6.5, rounded up to a week.
    assert first(programme, "hollow-tining-1").putting_smoothly == span(
        day(18, 9), day(22, 9), day(25, 9)
    )
    assert first(programme, "top-dressing-1").putting_smoothly == span(
        day(18, 9), day(22, 9), day(25, 9)
    )


@pytest.mark.parametrize(
    ("settings", "density", "days"),
    [
        # British trade press: 0.5 to 1 kg/m² is one dressing of the growing season.
        ("{rate: 1 kg/m2}", "1.5 t/m3", (2, 3, 4)),
        ("{rate: 1.01 kg/m2}", "1.5 t/m3", (4, 8, 11)),
        # Whatever the density: it is the weight that must be worked in.
        ("{rate: 1 kg/m2}", "1.2 t/m3", (2, 3, 4)),
        ("{rate: 1.01 kg/m2}", "1.9 t/m3", (4, 8, 11)),
        ("{}", "1.5 t/m3", (2, 3, 4)),
        ("{rate: 0.5 kg/m2, dressings: 2, days_between: 7}", "1.5 t/m3", (9, 10, 11)),
    ],
)
def test_a_sanded_surface(
    programme_of: ProgrammeOf, settings: str, density: str, days: tuple[int, int, int]
) -> None:
    programme = programme_of(
        f"sand: {{density: {density}}}\n{course()}"
        f"  - {{operation: top dressing, dates: 2026-06-01, settings: {settings}}}\n"
    )
    assert first(programme, "top-dressing-1").putting_smoothly == span(*map(day, days))


def test_a_dressing_that_fills_holes_unasked_is_a_heavy_one(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        course()
        + "  - {operation: hollow tining, dates: 2026-06-01}\n"
        + "  - {operation: top dressing, dates: 2026-06-02}\n"
    )
    assert first(programme, "top-dressing-1").putting_smoothly == span(day(5), day(9), day(12))


def test_a_green_does_not_putt_before_it_is_in_play_nor_heal_before_it_putts(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(
        course(BEST, "20 C")
        + "  - {operation: needle tining, dates: 2026-06-01, reopen: 20 days later}\n"
    )
    found = first(programme, "needle-tining-1")
    assert found.back_in_play == DateRange.on(day(21))
    assert found.putting_smoothly == DateRange.on(day(21))
    assert found.fully_healed == DateRange.on(day(21))
    figure = programme.figure("putting smoothly, early", "needle-tining-1", "1")
    assert figure is not None
    assert figure.value == 20
    assert figure.formula.endswith("not before back in play")
    assert figure.inputs["not_before"] == "2026-06-21"


def test_sand_in_winter_does_not_wait_for_spring(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        course() + "  - {operation: top dressing, dates: 2026-12-15}\n"
        "  - {operation: rolling, dates: 2026-12-15, reopen: 5 days later}\n"
    )
    for work in ("top-dressing-1", "rolling-1"):
        assert first(programme, work).growth_stops is None
    assert programme.periods[0].fully_healed.growth_stops is None
    assert not [f for f in programme.findings if f.code == "recovery-into-winter"]


def test_growth_that_never_comes_is_said_and_not_waited_for(programme_of: ProgrammeOf) -> None:
    programme = programme_of(course(POLAR) + "  - {operation: hollow tining, dates: 2026-06-01}\n")
    found = first(programme, "hollow-tining-1")
    assert found.fully_healed.late is None
    assert found.fully_healed.early == day(1) + dt.timedelta(days=730)
    assert found.growth_stops == day(2)
    assert found.growth_returns is None
    promise = programme.periods[0].putting_well
    assert promise.at_worst is None
    figure = programme.figure("fully healed, late", "hollow-tining-1", "1")
    assert figure is not None
    assert figure.value is None
    worst = programme.figure("fully healed, at worst", "hollow-tining-1")
    assert worst is not None
    assert worst.value is None


def test_sand_still_carries_the_ball_where_nothing_grows(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        course(POLAR)
        + "  - {operation: hollow tining, dates: 2026-06-01}\n"
        + "  - {operation: top dressing, dates: 2026-06-01, settings: {fill: holes}}\n"
    )
    putting = programme.periods[0].putting_well
    # 1 June + 7 days; + 10 days, and half as much again for the dressing and the holes together.
    assert (putting.expect_by, putting.at_worst) == (day(8), day(16))
    assert putting.growth_stops is None
    assert programme.periods[0].fully_healed.at_worst is None


def test_warm_season_grass_stands_still_in_a_british_autumn(programme_of: ProgrammeOf) -> None:
    work = "  - {operation: hollow tining, dates: 2026-09-01}\n"
    cool = programme_of(course() + work)
    warm = programme_of(course(optimum="31 C", more=", grass: warm-season") + work)
    assert first(cool, "hollow-tining-1").growth_stops != day(2, 9)
    # At 14 °C: exp(−½ (17/7)²) = 0.05, under the 10 % of pace_turf.
    assert first(warm, "hollow-tining-1").growth_stops == day(2, 9)


def test_without_temperatures_the_south_has_its_summer_in_january(
    programme_of: ProgrammeOf,
) -> None:
    place = "place: {latitude: -37.8, longitude: 145, timezone: Australia/Melbourne}"
    plan = """
        course: {greens: [{green: 1}]}
        works:
          - {operation: hollow tining, dates: 2026-01-12}
          - {operation: hollow tining, dates: 2026-07-12}
    """
    south = programme_of(f"club: {{name: Marl Hill, {place}}}\n" + plan.replace("\n        ", "\n"))
    north = programme_of(plan)

    def healed_in(programme: Programme, work: str) -> int:
        found = first(programme, work)
        assert found.fully_healed.late is not None
        return (found.fully_healed.late - found.done).days

    assert healed_in(south, "hollow-tining-1") < 30 < healed_in(north, "hollow-tining-1")
    assert healed_in(north, "hollow-tining-2") < 30 < healed_in(south, "hollow-tining-2")


def test_october_cores_in_the_north_putt_well_after_three_to_five_weeks(
    programme_of: ProgrammeOf,
) -> None:
    # Common practice, no published source: cores on 5 to 13 October, filled and topped up twice.
    programme = programme_of(
        course()
        + "  - {operation: hollow tining, dates: 2026-10-05}\n"
        + "  - {operation: top dressing, dates: 2026-10-05, settings: {fill: holes, dressings: 3}}\n"
    )
    putting = programme.periods[0].putting_well
    assert putting.at_worst is not None
    assert abs((putting.expect_by - day(5, 10)).days - 21) <= 7
    assert abs((putting.at_worst - day(5, 10)).days - 35) <= 7


def test_several_works_heal_as_slowly_as_the_slowest_and_at_worst_a_little_slower(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(
        course(BEST, "20 C")
        + "  - {operation: solid tining, dates: 2026-06-01, settings: {tine_diameter: 9 mm}}\n"
        + "  - {operation: needle tining, dates: 2026-06-01, settings: {tine_diameter: 4.5 mm}}\n"
    )
    # 9 mm: 6, 8 and 11 days, as above; 4.5 mm: 3 days, and 5 ÷ 0.9836: the 6th. At worst 11 +
    # 6 ÷ 2.
    healed = programme.periods[0].recoveries[0].fully_healed
    assert healed == span(day(7), day(9), day(15))


CLIMATES = [
    RememberedClimate.from_monthly_means(means, Grass.COOL_SEASON, 18)
    for means in (*STATIONS.values(), (-40.0,) * 12, (20.0,) * 12)
]


@given(
    st.sampled_from(CLIMATES),
    st.tuples(*[st.floats(0, 60)] * 3),
    st.dates(dt.date(2024, 1, 1), dt.date(2030, 12, 31)),
)
def test_remembered_growth_gives_the_dates_of_the_model(
    climate: Climate, days: tuple[float, float, float], done: dt.date
) -> None:
    needed = model.Range(*sorted(days))
    plain = Climate(climate.daily, climate.grass, climate.optimum_c)
    assert Growing(climate).span(needed, done) == model.span(needed, done, plain)


@settings(max_examples=40)
@given(
    st.dictionaries(st.dates(dt.date(2027, 1, 1), dt.date(2028, 12, 31)), st.floats(-20, 40)),
    st.integers(2026, 2029),
    st.sampled_from([-1.0, 0.0, 1.0]),
)
def test_a_remembered_year_is_that_of_its_days(
    known: dict[dt.date, float], year: int, offset: float
) -> None:
    # Single days may be known, and 2028 is a leap year.
    durham = STATIONS["Durham"]
    remembered = RememberedClimate.from_monthly_means(durham, Grass.COOL_SEASON, 18, known)
    plain = Climate.from_monthly_means(durham, Grass.COOL_SEASON, 18, known)
    assert remembered.growth_in(year, offset) == plain.growth_in(year, offset)
    for day in (dt.date(year, 2, 28), dt.date(year, 3, 1), *known):
        assert remembered.growth_on(day, offset) == plain.growth_on(day, offset)
    last = dt.date(year, 12, 30)
    assert next(plain.growth_after(last, offset)) == plain.growth_on(dt.date(year, 12, 31), offset)
    assert list(islice(plain.growth_after(last), 2))[1] == plain.growth_on(dt.date(year + 1, 1, 1))
