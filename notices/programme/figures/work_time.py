"""Time on each green: the machine, the cores and the sand by hand; and the length of each day."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from notices.agronomy import work_time
from notices.operations import Hauling
from notices.plan.model import Crew
from notices.programme.figures.quantity import Quantity
from notices.programme.model import DayTimetable, Figure, Green, Work, clock
from notices.programme.pace import ClubPace, clearing_of, hauling_of, pace_of
from notices.programme.sand import passes
from notices.programme.slugs import ALL

WORK_TIME = Quantity(
    "work time",
    "minutes",
    "60 × area ÷ (1000 × speed × width × efficiency) × passes + minutes between greens, "
    "for one visit",
    ("iowa_pm696", "judgement"),
)
FOR_ALL = (
    "60 × area ÷ (1000 × speed × width × efficiency) × passes "
    "+ minutes between greens × number of greens, for one visit to each"
)
CLEARING_TIME = Quantity(
    "clearing time",
    "minutes",
    "60 × material removed ÷ (people × volume that one clears in an hour)",
    ("definition", "common_practice"),
)
HAULING_TIME = Quantity(
    "hauling time",
    "minutes",
    "volume of sand ÷ volume of a load, rounded up to whole loads, × minutes per load",
    ("definition", "common_practice"),
)
HAULING_ALL = "whole loads to each green, summed over the greens, × minutes per load"
LENGTH_OF_DAY = Quantity(
    "length of the day",
    "minutes",
    "end of the last task − start of the first; each starts when its machine is free, the work "
    "before it has left the green and its people are free, not before light, sand not before the "
    "dew is off, and nothing on a sanded green before the sand is dry; a rest in between counts",
    ("johnson1954", "mitten1959", "graham1969", "common_practice"),
)


def figures_of_time(
    work: Work, greens: Mapping[str, Green], paces: Mapping[str, ClubPace]
) -> Iterator[Figure]:
    """Yield the machine's time on each green and in all; none for work by hand."""
    own = pace_of(work, paces)
    if own is None:
        return
    pace, count = own.pace, passes(work)
    inputs = {
        "width_m": pace.width_m,
        "speed_km_h": pace.speed_km_h,
        "efficiency": pace.efficiency,
        "minutes_between_greens": pace.minutes_between_greens,
        "passes": count,
    }
    assumed = not own.given or (
        "passes" in work.settings.values and work.settings.rests_on_default("passes")
    )
    total = 0.0
    for key in work.greens:
        green = greens[key]
        minutes = pace.minutes_between_greens + work_time.minutes_for_area(
            green.area_m2, pace.speed_km_h, pace.width_m, pace.efficiency, count
        )
        total += minutes
        yield WORK_TIME.of(
            work.id,
            minutes,
            {**inputs, "area_m2": green.area_m2},
            green=green,
            default_used=assumed or not green.area_given,
        )
    worked = [greens[key] for key in work.greens]
    yield WORK_TIME.of(
        work.id,
        total,
        {**inputs, "area_m2": sum(green.area_m2 for green in worked), "greens": len(worked)},
        formula=FOR_ALL,
        default_used=assumed or not all(green.area_given for green in worked),
    )


def figures_of_hands(
    work: Work, greens: Mapping[str, Green], crew: Crew | None, found: Sequence[Figure]
) -> Iterator[Figure]:
    """Yield the time for clearing cores and for hauling sand, on each green and in all.

    Parameters
    ----------
    work, greens, crew
        The work, the greens of the course, and who does it.
    found
        The figures of the work so far: what is removed and what is brought.
    """
    if (clearing := clearing_of(work, crew)) is not None:
        hands, given = clearing
        for figure in found:
            if figure.quantity != "material removed" or figure.value is None:
                continue
            yield CLEARING_TIME.of(
                work.id,
                work_time.minutes_to_clear(figure.value, hands.people, hands.m3_per_person_hour),
                {
                    "volume_m3": figure.value,
                    "people": hands.people,
                    "m3_per_person_hour": hands.m3_per_person_hour,
                },
                green=None if figure.green == ALL else greens[figure.green],
                default_used=figure.default_used or not given,
            )
    if (hauling := hauling_of(work, crew)) is not None:
        for name in dict.fromkeys(f.quantity for f in found if _is_dressing(f.quantity)):
            brought = [f for f in found if f.quantity == name and f.green != ALL]
            label = name.removeprefix("sand")
            yield from _hauled(work, greens, hauling, brought, label)


def _is_dressing(quantity: str) -> bool:
    return quantity.startswith("sand, dressing ")


def _hauled(
    work: Work,
    greens: Mapping[str, Green],
    hauling: tuple[Hauling, bool],
    brought: Sequence[Figure],
    label: str,
) -> Iterator[Figure]:
    pace, given = hauling
    quantity = replace(HAULING_TIME, name=f"{HAULING_TIME.name}{label}")
    total = 0
    for figure in brought:
        volume = figure.value or 0.0
        count = work_time.loads(volume, pace.m3_per_load)
        total += count
        yield quantity.of(
            work.id,
            work_time.minutes_to_haul(volume, pace.m3_per_load, pace.minutes_per_load),
            {
                "volume_m3": volume,
                "m3_per_load": pace.m3_per_load,
                "loads": count,
                "minutes_per_load": pace.minutes_per_load,
            },
            green=greens[figure.green],
            default_used=figure.default_used or not given,
        )
    yield quantity.of(
        work.id,
        total * pace.minutes_per_load,
        {
            "m3_per_load": pace.m3_per_load,
            "loads": total,
            "minutes_per_load": pace.minutes_per_load,
        },
        formula=HAULING_ALL,
        default_used=not given or any(figure.default_used for figure in brought),
    )


def figures_of_days(timetables: Iterable[DayTimetable]) -> Iterator[Figure]:
    """Yield the length of each day's work, from the first start to the last finish."""
    for day in timetables:
        quantity = replace(LENGTH_OF_DAY, name=f"{LENGTH_OF_DAY.name}, {day.date}")
        yield quantity.of(
            ALL,
            day.last_finish - day.first_start,
            {
                "day": day.date.isoformat(),
                "start_minutes": day.first_start,
                "finish_minutes": day.last_finish,
                "start": clock(day.first_start),
                "finish": clock(day.last_finish),
                "rest": f"{clock(day.rest[0])} to {clock(day.rest[1])}",
                "people": day.people,
                "drying_minutes": day.drying,
                "limited_by": day.limited_by.value,
                "light": day.light or None,
            },
            default_used=day.default_used,
        )
