"""Whether the work of a day fits into it: machines that follow one another, and hands."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.agronomy import work_time
from notices.plan.model import Crew, Plan
from notices.programme.model import Programme, Visit, Work
from notices.programme.pace import club_paces, pace_of

BREAK_MINUTES = 60
"""Meals and rests in a working day (common practice)."""


@dataclass(frozen=True, slots=True)
class WorkingDay:
    """What the works of one day need, and what there is."""

    date: dt.date
    works: tuple[Work, ...]
    needed_minutes: float
    available_minutes: float
    people: int


def working_days(programme: Programme, plan: Plan) -> Iterator[WorkingDay]:
    """Yield every day on which something is done, later dressings included.

    Nothing where the plan does not say who works.
    """
    if plan.crew is None:
        return
    people = plan.crew.people + plan.crew.hired_people
    available = _available_minutes(plan.crew)
    by_day: dict[dt.date, list[tuple[Work, Visit]]] = {}
    for work in sorted(programme.works, key=lambda w: (w.operation.order, w.plan_index)):
        for visit in work.visits:
            by_day.setdefault(visit.date, []).append((work, visit))
    for day, visits in sorted(by_day.items()):
        needed = max(
            work_time.makespan_minutes(_minutes(programme, visits)),
            _labour_minutes(programme, plan.crew, visits) / people,
        )
        works = {work.id: work for work, _ in visits}
        yield WorkingDay(day, tuple(works.values()), needed, available, people)


def _available_minutes(crew: Crew) -> float:
    start, end = crew.working_day
    length = (end.hour - start.hour) * 60 + end.minute - start.minute
    return max(0, length - BREAK_MINUTES)


def _minutes(
    programme: Programme, visits: Sequence[tuple[Work, Visit]]
) -> list[list[float | None]]:
    """Return the time of each operation on each green, both in the order in which they are done.

    There is one machine of a kind, so two works of one operation share it.
    """
    operations = dict.fromkeys(work.operation.name for work, _ in visits)
    greens = dict.fromkeys(green for _, visit in visits for green in visit.greens)
    time: dict[tuple[str, str], float] = {}
    for work, visit in visits:
        for green in visit.greens:
            if (minutes := _time_on(programme, work, visit, green)) is not None:
                cell = (green, work.operation.name)
                time[cell] = time.get(cell, 0.0) + minutes
    return [[time.get((green, operation)) for operation in operations] for green in greens]


def _labour_minutes(
    programme: Programme, crew: Crew, visits: Sequence[tuple[Work, Visit]]
) -> float:
    paces = club_paces(crew)
    return sum(
        own.pace.people * (_time_on(programme, work, visit, green) or 0.0)
        for work, visit in visits
        if (own := pace_of(work, paces)) is not None
        for green in visit.greens
    )


def _time_on(programme: Programme, work: Work, visit: Visit, green: str) -> float | None:
    """Return the time on a green that day; a job over several days takes its part on each."""
    figure = programme.figure("work time", work.id, green)
    if figure is None or figure.value is None:
        return None
    return figure.value / len(work.days_on(green, visit.ordinal))
