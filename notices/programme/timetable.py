"""The timetable of every day with work on greens: what is done where, from when to when."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from notices.agronomy.timetable import Slot, Stage, end_of_day, timetable
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.model import DayTimetable, Limit, Programme, Task, Visit, Work
from notices.programme.pace import ClubPace, clearing_of, club_paces, hauling_of, pace_of
from notices.programme.working_day import WorkingDay, drying, working_day

CLEARING, HAULING = "clearing cores", "hauling sand"

MOST_OF_IT = 0.5
"""What must be won of the time too long before people, dew, drying or light are named, and not the
machine that is at work longest (judgement)."""

A_MINUTE = 1.0
"""What is won must come to so much to be named [min] (judgement)."""


@dataclass(frozen=True, slots=True)
class _Row:
    """One stage of the day, with the time that it takes on each of its greens."""

    work: Work
    visit: Visit
    name: str
    people: int
    minutes: Mapping[str, float]
    sanding: bool = False
    beside: bool = False
    default_used: bool = False


def timetables(programme: Programme, plan: Plan) -> dict[dt.date, DayTimetable]:
    """Return the timetable of every day with work that goes by time, later dressings included.

    Parameters
    ----------
    programme
        With its figures: the times on each green are among them.
    plan
        The plan; without a crew there are no timetables.
    """
    if plan.crew is None:
        return {}
    paces = club_paces(plan.crew)
    by_day: dict[dt.date, list[tuple[Work, Visit]]] = {}
    for work in sorted(programme.works, key=lambda w: (w.operation.order, w.plan_index)):
        for visit in work.visits:
            by_day.setdefault(visit.date, []).append((work, visit))
    found = {}
    for day, visits in sorted(by_day.items()):
        rows = [row for work, visit in visits for row in _rows(programme, plan, paces, work, visit)]
        if rows := [row for row in rows if row.minutes]:
            given = working_day(plan.crew, plan.club, day)
            found[day] = _timetable(rows, given, drying(plan.crew, plan.sand))
    return found


def _rows(
    programme: Programme,
    plan: Plan,
    paces: Mapping[str, ClubPace],
    work: Work,
    visit: Visit,
) -> Iterator[_Row]:
    """Yield the machine of one visit, and the work by hand before and after it."""
    crew = plan.crew
    row = _Row(work, visit, "", 1, {})
    hauling = hauling_of(work, crew)
    if hauling is not None:
        quantity = f"hauling time, dressing {visit.ordinal}"
        times, assumed = _times(programme, quantity, work, visit)
        yield replace(
            row,
            name=HAULING,
            people=hauling[0].people,
            minutes=times,
            beside=True,
            default_used=assumed,
        )
    machine = pace_of(work, paces)
    if machine is not None:
        times, assumed = _times(programme, "work time", work, visit)
        sanding = work.operation.opening is Opening.SAND
        yield replace(
            row,
            name=work.operation.name,
            people=machine.pace.people,
            minutes=times,
            sanding=sanding,
            default_used=assumed or (sanding and not _says_when_to_sand(plan)),
        )
    clearing = clearing_of(work, crew)
    if clearing is not None:
        times, assumed = _times(programme, "clearing time", work, visit)
        yield replace(
            row, name=CLEARING, people=clearing[0].people, minutes=times, default_used=assumed
        )


def _says_when_to_sand(plan: Plan) -> bool:
    """Whether the club says when the dew is off, and how long sand dries."""
    crew = plan.crew
    if crew is None or crew.dew_off is None:
        return False
    return crew.drying is not None or plan.sand.kiln_dried


def _times(
    programme: Programme, quantity: str, work: Work, visit: Visit
) -> tuple[dict[str, float], bool]:
    """Return the time on each green that day; a job over several days takes its part on each."""
    times, assumed = {}, False
    for green in visit.greens:
        figure = programme.figure(quantity, work.id, green)
        if figure is not None and figure.value:
            times[green] = figure.value / len(work.days_on(green, visit.ordinal))
            assumed = assumed or figure.default_used
    return times, assumed


@dataclass(frozen=True, slots=True)
class _Day:
    """A day's work, ready to be laid out under one set of circumstances or another."""

    rows: Sequence[_Row]
    greens: Sequence[str]
    given: WorkingDay
    drying: float

    def slots(
        self, *, people: int | None, start: float, dew_off: float, drying: float
    ) -> tuple[Slot, ...]:
        """Lay the day out; a task that takes more people than there are takes everybody."""
        stages = [
            Stage(
                machine=row.name,
                people=row.people if people is None else min(row.people, people),
                earliest=dew_off if row.sanding else 0.0,
                beside=row.beside,
                wait=drying if row.sanding else 0.0,
            )
            for row in self.rows
        ]
        minutes = [[row.minutes.get(green) for row in self.rows] for green in self.greens]
        return timetable(minutes, stages, people, start, [self.given.rest])

    @property
    def gone_on_after_sand(self) -> bool:
        """Whether a green that is sanded has more done to it that day."""
        return any(
            row.sanding and not later.beside and not row.minutes.keys().isdisjoint(later.minutes)
            for stage, row in enumerate(self.rows)
            for later in self.rows[stage + 1 :]
        )

    def tasks(self, slots: Sequence[Slot]) -> tuple[Task, ...]:
        """Say of a day that is laid out what is done where."""
        return tuple(
            Task(
                work=self.rows[slot.stage].work.id,
                green=self.greens[slot.green],
                name=self.rows[slot.stage].name,
                ordinal=self.rows[slot.stage].visit.ordinal,
                people=self.rows[slot.stage].people,
                start_minutes=slot.start,
                finish_minutes=slot.finish,
            )
            for slot in slots
        )


def _timetable(rows: Sequence[_Row], given: WorkingDay, drying_time: float) -> DayTimetable:
    day = _Day(rows, _in_order(rows), given, drying_time)
    sanded = any(row.sanding for row in rows)
    totals: dict[str, float] = {}
    for row in rows:
        totals[row.name] = totals.get(row.name, 0.0) + sum(row.minutes.values())
    busiest = max(totals, key=lambda name: totals[name])
    start = given.begins if given.light_from is None else max(given.begins, given.light_from)
    laid_out = DayTimetable(
        date=given.date,
        tasks=day.tasks(
            day.slots(people=given.people, start=start, dew_off=given.dew_off, drying=day.drying)
        ),
        people=given.people,
        kept_back=given.kept_back,
        begins=given.begins,
        ends=given.ends,
        light_from=given.light_from,
        light_until=given.light_until,
        light=given.light,
        rest=given.rest,
        dew_off=given.dew_off if sanded else None,
        drying=day.drying if day.gone_on_after_sand else None,
        limited_by=Limit.MACHINE,
        busiest=busiest,
        busiest_minutes=totals[busiest],
        default_used=given.default_used or any(row.default_used for row in rows),
    )
    return replace(laid_out, limited_by=_limit(day, laid_out))


def _in_order(rows: Sequence[_Row]) -> tuple[str, ...]:
    """Return the day's greens in the plan's own order: that of the work with the most of them."""
    longest = sorted(rows, key=lambda row: len(row.visit.greens), reverse=True)
    return tuple(dict.fromkeys(green for row in longest for green in row.visit.greens))


def _limit(day: _Day, found: DayTimetable) -> Limit:
    """Say what decides when a day ends, by laying it out again without each limit in turn.

    Where the day fits, it is whatever brings its end forward most. Where it does not, people, dew,
    drying or light must be to blame for most of what is too much; else it is the machines, one after
    another.
    """
    given, start = day.given, found.work_from
    as_it_is = partial(
        day.slots, people=given.people, start=start, dew_off=given.dew_off, drying=day.drying
    )
    without: list[tuple[Limit, float, tuple[Slot, ...]]] = []
    if sum(row.people for row in day.rows) > given.people:
        without.append((Limit.PEOPLE, found.work_until, as_it_is(people=None)))
    if found.dew_off is not None and found.dew_off > start:
        without.append((Limit.DEW, found.work_until, as_it_is(dew_off=0.0)))
    if found.drying:
        without.append((Limit.DRYING, found.work_until, as_it_is(drying=0.0)))
    if start > found.begins or found.work_until < found.ends:
        without.append((Limit.DAYLIGHT, found.ends, as_it_is(start=found.begins)))
    late = found.last_finish - found.work_until
    won = {limit: late - (end_of_day(slots) - until) for limit, until, slots in without}
    best = max(won, key=lambda limit: won[limit], default=Limit.MACHINE)
    worth = max(MOST_OF_IT * late, A_MINUTE)
    return best if won.get(best, 0.0) >= worth else Limit.MACHINE
