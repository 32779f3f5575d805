"""Time on each green: the machine, the cores and the sand by hand; and the length of each day."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from notices.agronomy import work_time
from notices.operations import Hauling
from notices.plan.model import Crew
from notices.programme.figures.quantity import Quantity, area_of
from notices.programme.model import DayTimetable, Figure, Green, Input, Work, clock
from notices.programme.pace import ClubPace, clearing_of, hauling_of, pace_of
from notices.programme.sand import passes
from notices.programme.slugs import ALL

ON_AREA = "60 × {area_m2} ÷ (1000 × {speed_km_h} × {width_m} × {efficiency}) × {passes}"
WORK_TIME = Quantity(
    "work time",
    "minutes",
    f"{ON_AREA} + {{minutes_between_greens}}, for one visit",
    ("iowa_pm696", "judgement"),
    "minute",
)
FOR_ALL = f"{ON_AREA} + {{minutes_between_greens}} × {{greens}}, for one visit to each"
CLEARING_TIME = Quantity(
    "clearing time",
    "minutes",
    "60 × {volume_m3} ÷ ({people} × {m3_per_person_hour})",
    ("definition", "common_practice"),
    "minute",
)
HAULING_TIME = Quantity(
    "hauling time",
    "minutes",
    "{volume_m3} ÷ {m3_per_load}, rounded up to whole loads, × {minutes_per_load}",
    ("definition", "common_practice"),
    "minute",
)
HAULING_ALL = "whole loads to each green, summed over the greens, × {minutes_per_load}"
LENGTH_OF_DAY = Quantity(
    "length of the day",
    "minutes",
    "end of the last task − start of the first; each starts when its machine is free, the work "
    "before it has left the green and its people are free, not before light, sand not before the "
    "dew is off, and nothing on a sanded green before the sand is dry; a rest in between counts",
    ("johnson1954", "mitten1959", "graham1969", "common_practice"),
    "minute",
)


def figures_of_time(
    work: Work, greens: Mapping[str, Green], paces: Mapping[str, ClubPace]
) -> Iterator[Figure]:
    """Yield the machine's time on each green and in all; none for work by hand."""
    own = pace_of(work, paces)
    if own is None:
        return
    pace, count = own.pace, passes(work)
    inputs = (
        Input("width_m", pace.width_m, "width", "m"),
        Input("speed_km_h", pace.speed_km_h, "speed", "km/h"),
        Input("efficiency", pace.efficiency),
        Input("minutes_between_greens", pace.minutes_between_greens),
        Input("passes", count),
    )
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
            (*inputs, area_of(green.area_m2)),
            green=green,
            default_used=assumed or not green.area_given,
        )
    worked = [greens[key] for key in work.greens]
    yield WORK_TIME.of(
        work.id,
        total,
        (
            *inputs,
            area_of(sum(green.area_m2 for green in worked)),
            Input("greens", len(worked), "number of greens"),
        ),
        recipe=FOR_ALL,
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
                (
                    Input("volume_m3", figure.value, "material removed", "m3"),
                    Input("people", hands.people),
                    Input(
                        "m3_per_person_hour",
                        hands.m3_per_person_hour,
                        "volume that one clears in an hour",
                        "m3",
                    ),
                ),
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
    load = Input("m3_per_load", pace.m3_per_load, "volume of a load", "m3")
    each = Input("minutes_per_load", pace.minutes_per_load)
    for figure in brought:
        volume = figure.value or 0.0
        count = work_time.loads(volume, pace.m3_per_load)
        total += count
        yield quantity.of(
            work.id,
            work_time.minutes_to_haul(volume, pace.m3_per_load, pace.minutes_per_load),
            (
                Input("volume_m3", volume, "volume of sand", "m3"),
                load,
                Input("loads", count),
                each,
            ),
            green=greens[figure.green],
            default_used=figure.default_used or not given,
        )
    yield quantity.of(
        work.id,
        total * pace.minutes_per_load,
        (load, Input("loads", total), each),
        recipe=HAULING_ALL,
        default_used=not given or any(figure.default_used for figure in brought),
    )


def figures_of_days(timetables: Iterable[DayTimetable]) -> Iterator[Figure]:
    """Yield the length of each day's work, from the first start to the last finish."""
    for day in timetables:
        quantity = replace(LENGTH_OF_DAY, name=f"{LENGTH_OF_DAY.name}, {day.date}")
        yield quantity.of(
            ALL,
            day.last_finish - day.first_start,
            (
                Input("day", day.date.isoformat()),
                Input("start_minutes", day.first_start),
                Input("finish_minutes", day.last_finish),
                Input("start", clock(day.first_start)),
                Input("finish", clock(day.last_finish)),
                Input("rest", f"{clock(day.rest[0])} to {clock(day.rest[1])}"),
                Input("people", day.people),
                Input("drying_minutes", day.drying),
                Input("limited_by", day.limited_by.value),
                Input("light", day.light or None),
            ),
            default_used=day.default_used,
        )
