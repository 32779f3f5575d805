"""Which holes are in play on a day, and from which tees at least nine of them follow one another."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from notices.programme.hours import AWAY, to_half_hours
from notices.programme.model import (
    NINE,
    WHOLE_DAY,
    DayOfPlay,
    Hole,
    HolesInPlay,
    PlayStatus,
    Programme,
    Start,
    Stretch,
)

HourByHour = Mapping[Hole, Sequence[Stretch]]
"""For each hole the stretches of one day, to the half hour."""


def days_of_play(programme: Programme) -> dict[dt.date, DayOfPlay]:
    """Return every day on which a hole is closed or has a temporary green, if only for an hour.

    Parameters
    ----------
    programme
        With its stretches.
    """
    # A green that only recovers, as it may for months, closes no hole: those days have no hours.
    days = set(programme.stretches) | {day for shut in programme.closures for day in shut.dates}
    found = {}
    for day in sorted(days):
        hours = _hour_by_hour(programme, day)
        if any(stretch.status in AWAY for told in hours.values() for stretch in told):
            found[day] = _day_of_play(programme, day, hours)
    return found


@lru_cache(maxsize=256)  # the same holes are closed hour after hour
def starts(
    holes: tuple[Hole, ...], in_play: frozenset[Hole], least: int = NINE
) -> tuple[Start, ...]:
    """Return the tees from which enough holes in play follow one another.

    They are the first tees of the nines, and those where play begins after a gap. A course that
    is given whole, from hole 1 on, is a loop: after its last hole comes its first.

    Parameters
    ----------
    holes
        Those of one course or of several, course by course and by number.
    in_play
        Those that can be played.
    least
        How many are enough; for a round, nine.
    """
    found = []
    for course in dict.fromkeys(course for course, _ in holes):
        numbers = [number for name, number in holes if name == course]
        for place, number in enumerate(numbers):
            before = _neighbour(numbers, place, -1)
            first = (number - 1) % NINE == 0
            run = _run(course, numbers, place, in_play)
            if len(run) >= least and (first or (course, before) not in in_play):
                found.append(Start((course, number), run))
    return tuple(found)


def _neighbour(numbers: Sequence[int], place: int, step: int) -> int | None:
    """Return the hole before or after one; None where there is none, or the plan leaves it out."""
    whole = numbers[0] == 1 and numbers[-1] == len(numbers)
    number = numbers[(place + step) % len(numbers)] if whole else numbers[place] + step
    return number if number in numbers else None


def _run(
    course: str, numbers: Sequence[int], place: int, in_play: frozenset[Hole]
) -> tuple[Hole, ...]:
    """Return the holes that are played from one on, none of them twice."""
    run: list[Hole] = []
    number: int | None = numbers[place]
    while number is not None and (course, number) in in_play and (course, number) not in run:
        run.append((course, number))
        number = _neighbour(numbers, numbers.index(number), +1)
    return tuple(run)


def _hour_by_hour(programme: Programme, day: dt.date) -> HourByHour:
    """Return what each hole is; one that is closed with its tees and all is so all day."""
    shut = set(programme.holes_shut_on(day))
    closed = (Stretch(*WHOLE_DAY, PlayStatus.CLOSED),)
    found: dict[Hole, Sequence[Stretch]] = {}
    for key, green in programme.greens.items():
        lasting = [
            replace(stretch, status=PlayStatus.OPEN) if stretch.passing else stretch
            for stretch in programme.stretches_on(day, key)
        ]
        told = to_half_hours(lasting, programme.work_from(day))
        for number in green.holes:
            hole = (green.course, number)
            found[hole] = closed if hole in shut else told
    return found


def _day_of_play(programme: Programme, day: dt.date, hours: HourByHour) -> DayOfPlay:
    cuts = {minute for told in hours.values() for s in told for minute in (s.begins, s.ends)}
    by_hour: list[HolesInPlay] = []
    for begins, ends in pairwise(sorted(cuts)):
        found = _between(programme, hours, begins, ends)
        if by_hour and replace(by_hour[-1], ends=ends) == replace(found, begins=by_hour[-1].begins):
            by_hour[-1] = replace(by_hour[-1], ends=ends)
        else:
            by_hour.append(found)
    one = len(by_hour) == 1
    all_day = by_hour[0] if one else _between(programme, hours, *WHOLE_DAY)
    return DayOfPlay(day, all_day, tuple(by_hour))


def _between(programme: Programme, hours: HourByHour, begins: float, ends: float) -> HolesInPlay:
    """Return the holes by what they are at worst in some hours of the day."""
    met = {
        hole: [s for s in hours[hole] if s.begins < ends and begins < s.ends]
        for hole in programme.holes
    }
    closed = [h for h, told in met.items() if any(s.status is PlayStatus.CLOSED for s in told)]
    temporary = [
        hole
        for hole, told in met.items()
        if hole not in closed and any(s.status is PlayStatus.TEMPORARY for s in told)
    ]
    away = {*closed, *temporary}
    in_play = frozenset(programme.holes) - set(closed)
    return HolesInPlay(
        begins,
        ends,
        open=tuple(hole for hole in programme.holes if hole not in away),
        temporary=tuple(temporary),
        closed=tuple(closed),
        part_of_day=tuple(h for h in closed if not all(s.hours_known for s in met[h])),
        starts=starts(programme.holes, in_play),
    )
