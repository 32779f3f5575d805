"""What each green is to a golfer on a day with work, from hour to hour."""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import pairwise
from typing import NamedTuple

from notices.operations import WhileWorking
from notices.programme.model import (
    WHOLE_DAY,
    PlayStatus,
    Programme,
    Stretch,
    Task,
    told_from,
    told_until,
)
from notices.programme.play import Spell, spells, worst
from notices.programme.timetable import HAULING

AWAY = frozenset({PlayStatus.TEMPORARY, PlayStatus.CLOSED})
"""What a green is when nobody putts on it."""

StretchesByDay = dict[dt.date, dict[str, tuple[Stretch, ...]]]


def stretches_by_day(programme: Programme) -> StretchesByDay:
    """Return every green's day in stretches, for each day with work, and each with a green away.

    A green that comes back when the work is finished is away from the first task on it to the
    last; one that comes back later is away all day, and so is one that the club closes itself.
    While a machine is on a green that stays in play, golfers wait: for so long it is closed. Sand
    hauled to a green stands beside it.

    Parameters
    ----------
    programme
        With its timetables. A day without one has no hours: a green is what it is all day.
    """
    days = {visit.date for work in programme.works for visit in work.visits}
    days |= {
        day for day, on_day in programme.status.items() if not AWAY.isdisjoint(on_day.values())
    }
    by_day: dict[dt.date, dict[str, list[Spell]]] = {day: {} for day in sorted(days)}
    in_order = list(by_day)
    for spell in spells(programme.greens, programme.works, programme.periods, programme.closures):
        first, after = bisect_left(in_order, spell.first), bisect_left(in_order, spell.after)
        for day in in_order[first:after]:
            for green in spell.greens:
                by_day[day].setdefault(green, []).append(spell)
    open_throughout = {
        work.id for work in programme.works if work.while_working is WhileWorking.OPEN
    }
    alike = cache(_stretches)  # most greens have the day that others have
    found: StretchesByDay = {}
    for day, concerned in by_day.items():
        tasks = _tasks_on_greens(programme, day)
        found[day] = {
            green: alike(
                (
                    *_parts(concerned.get(green, ()), day, tasks.get(green, ())),
                    *_passing(tasks.get(green, ()), open_throughout),
                )
            )
            for green in programme.greens
        }
    return found


def is_usual(programme: Programme, day: dt.date) -> bool:
    """Whether nobody finds a green closed, busy or replaced that day."""
    return not any(
        stretch.status in AWAY
        for key in programme.greens
        for stretch in programme.stretches_on(day, key)
    )


def days_asked_about(programme: Programme) -> tuple[dt.date, ...]:
    """List the days on which people ask: of greens, of what is closed or not allowed, of play."""
    days = {day for closed in programme.closures for day in closed.dates}
    days |= {day for restriction in programme.restrictions for day in restriction.dates}
    days |= {one.date for one in programme.fixtures if one.is_on and one.recovering_greens}
    days |= {day for day in programme.stretches if not is_usual(programme, day)}
    return tuple(sorted(days | set(programme.play)))


def to_half_hours(stretches: Iterable[Stretch], earliest: float = 0.0) -> tuple[Stretch, ...]:
    """Return a day's stretches as people are told them, to the half hour.

    What takes a green from golfers is rounded outward: it begins no later and ends no earlier
    than in truth. A stretch that is left with no time is left out.

    Parameters
    ----------
    stretches
        Those of one green.
    earliest
        When work can begin that day: nothing is told to begin before it because of rounding.
    """
    whole = tuple(stretches)
    if len(whole) == 1:
        return whole
    told: list[Stretch] = []
    for stretch in whole:
        begins = told[-1].ends if told else stretch.begins
        if told and worst(told[-1].status, stretch.status) is not told[-1].status:
            begins = max(told[-1].begins, told_from(stretch.begins, earliest))
            told[-1] = replace(told[-1], ends=begins)
        elif told:
            begins = min(WHOLE_DAY[1], told_until(stretch.begins))
            told[-1] = replace(told[-1], ends=begins)
        told.append(replace(stretch, begins=begins, ends=max(begins, stretch.ends)))
    return _joined(stretch for stretch in told if stretch.ends > stretch.begins)


class _Part(NamedTuple):
    """One thing that a green is for a part of the day; where several meet, the worst counts."""

    begins: float
    ends: float
    status: PlayStatus
    because: tuple[str, ...]
    passing: bool = False
    hours_known: bool = True


def _tasks_on_greens(programme: Programme, day: dt.date) -> dict[str, list[Task]]:
    """Return what is done on each green that day."""
    found: dict[str, list[Task]] = {}
    for task in programme.timetables[day].tasks if day in programme.timetables else ():
        if task.name != HAULING:
            found.setdefault(task.green, []).append(task)
    return found


def _parts(concerned: Sequence[Spell], day: dt.date, tasks: Sequence[Task]) -> Iterator[_Part]:
    """Yield what the spells of one green come to on one day."""
    for spell in concerned:
        own = [task.start_minutes for task in tasks if task.work in spell.because]
        if own and min(own) >= WHOLE_DAY[1]:
            own = []  # a day that is much too long: nobody knows when it will really be
        begins, ends = WHOLE_DAY
        known = True
        if spell.status is PlayStatus.RECOVERING and own and day == spell.first:
            begins = min(own)
        elif spell.until_finished and own:
            # Whatever else is done on it that day is part of the same job.
            begins, ends = min(own), max(task.finish_minutes for task in tasks)
        elif spell.until_finished:
            known = False
        yield _Part(begins, ends, spell.status, spell.because, hours_known=known)


def _passing(tasks: Sequence[Task], open_throughout: set[str]) -> Iterator[_Part]:
    """Yield when a machine is on a green that stays in play."""
    for task in tasks:
        if task.work in open_throughout:
            yield _Part(
                task.start_minutes,
                task.finish_minutes,
                PlayStatus.CLOSED,
                (task.work,),
                passing=True,
            )


def _stretches(parts: tuple[_Part, ...]) -> tuple[Stretch, ...]:
    """Cut the day where a part begins or ends, and let the worst of each piece count."""
    first, last = WHOLE_DAY
    cuts = {first, last}
    for part in parts:
        cuts |= {min(last, part.begins), min(last, part.ends)}
    return _joined(
        _piece(begins, ends, [p for p in parts if p.begins <= begins and ends <= min(last, p.ends)])
        for begins, ends in pairwise(sorted(cuts))
    )


def _piece(begins: float, ends: float, parts: Sequence[_Part]) -> Stretch:
    # That golfers wait for a machine is worth saying only on a green that is in play otherwise.
    lasting = [part for part in parts if not part.passing]
    status = worst(PlayStatus.OPEN, *(part.status for part in lasting))
    counting = [part for part in lasting if part.status is status]
    if status not in AWAY and len(lasting) < len(parts):
        status = PlayStatus.CLOSED
        counting = [part for part in parts if part.passing]
    because = dict.fromkeys(name for part in counting for name in part.because)
    return Stretch(
        begins,
        ends,
        status,
        tuple(because),
        passing=any(part.passing for part in counting),
        hours_known=not counting or any(part.hours_known for part in counting),
    )


def _joined(stretches: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """Join neighbours in which a green is the same thing."""
    told: list[Stretch] = []
    for stretch in stretches:
        last = told[-1] if told else None
        if last and (last.status, last.passing) == (stretch.status, stretch.passing):
            told[-1] = replace(
                last,
                ends=stretch.ends,
                because=tuple(dict.fromkeys((*last.because, *stretch.because))),
                hours_known=last.hours_known and stretch.hours_known,
            )
        else:
            told.append(stretch)
    return tuple(told)
