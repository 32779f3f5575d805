"""The same works laid out in other ways: all greens at once, a nine a day, a visit a week.

Nothing is guessed: the days of each green are moved, and recovery, timetable and holes in play
are worked out anew. Only the main works are looked at, those of the period that golfers notice
most; later dressings move with their greens, and what prepares all greens beforehand stays.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from notices.operations import Noticed
from notices.plan.days import DayRange, all_days
from notices.plan.model import Plan
from notices.programme.climate import club_climate
from notices.programme.cost import hours_of_people
from notices.programme.holes_in_play import days_of_play
from notices.programme.hours import stretches_by_day
from notices.programme.model import (
    NINE,
    Layout,
    Pattern,
    Period,
    PlayStatus,
    Programme,
    Visit,
    Work,
)
from notices.programme.periods import make_period
from notices.programme.play import play_status
from notices.programme.recovery import RecoveryModel, recover_works
from notices.programme.time_checks import A_MINUTE
from notices.programme.timetable import timetables

FEW = 3
"""Greens of one visit, where the plan does all of them on one day and gives no smaller share."""

NO_DAYS, A_DAY, A_WEEK = dt.timedelta(0), dt.timedelta(days=1), dt.timedelta(days=7)

DaysOfGreens = Mapping[str, dt.date]
"""The day on which each green is first opened or covered."""


def with_patterns(programme: Programme, plan: Plan) -> Programme:
    """Return the programme with its main works laid out in other ways."""
    return replace(programme, patterns=patterns(plan, programme))


def patterns(plan: Plan, programme: Programme) -> tuple[Pattern, ...]:
    """Return what each layout of the main works comes to, the plan's own among them.

    Parameters
    ----------
    plan
        The plan.
    programme
        What follows from it, with its figures.

    Returns
    -------
    tuple of Pattern
        In the order of `Layout`; none where there is nothing to lay out otherwise.
    """
    period = main_period(programme)
    if period is None:
        return ()
    own = _first_days(period)
    if len(own) < 2:
        return ()
    layouts = {
        Layout.ALL_AT_ONCE: dict.fromkeys(own, period.days[0]),
        Layout.NINE_A_DAY: _nine_a_day(programme, own, period.days[0]),
        Layout.AS_PLANNED: own,
        Layout.SPREAD: _a_visit_a_week(own),
    }
    club = _Club(plan, programme, RecoveryModel(club_climate(plan).climate, programme.records))
    found: dict[tuple[dt.date, ...], Pattern] = {}
    # The plan's own goes first, so that what comes to the same is called by its name.
    for layout in sorted(layouts, key=lambda one: one is not Layout.AS_PLANNED):
        days = layouts[layout]
        key = tuple(days[green] for green in own)
        if key not in found:
            found[key] = club.pattern(layout, period, {g: days[g] - own[g] for g in own})
    order = list(Layout)
    return tuple(sorted(found.values(), key=lambda pattern: order.index(pattern.layout)))


def main_period(programme: Programme) -> Period | None:
    """Return the period that golfers notice most; of those with as many greens the longest."""
    opening = [period for period in programme.periods if period.opening_works]
    return max(
        opening,
        key=lambda p: (
            p.noticed,
            len(p.greens),
            sum(w.operation.noticed is Noticed.CLEARLY for w in p.works),
        ),
        default=None,
    )


def _first_days(period: Period) -> dict[str, dt.date]:
    """Return when each green is first opened or covered, in the order in which that is done."""
    visits = chain.from_iterable(work.main_visits for work in period.opening_works)
    found: dict[str, dt.date] = {}
    for visit in sorted(visits, key=lambda visit: visit.date):
        for green in visit.greens:
            found.setdefault(green, visit.date)
    return found


def _nine_a_day(programme: Programme, own: DaysOfGreens, first: dt.date) -> dict[str, dt.date]:
    """Give each nine a day; what has no hole goes with the last, so that a putting green stays."""
    place = {hole: number for number, nine in enumerate(programme.nines) for hole in nine}
    found = {}
    for key in own:
        green = programme.greens[key]
        found[key] = min((place[green.course, hole] for hole in green.holes), default=-1)
    nines = {number: index for index, number in enumerate(sorted({*found.values()} - {-1}))}
    last = max(len(nines) - 1, 0)
    return {key: first + dt.timedelta(days=nines.get(n, last)) for key, n in found.items()}


def _a_visit_a_week(own: DaysOfGreens) -> dict[str, dt.date]:
    """Put what the plan does on one day a week after what it does on the day before."""
    days = sorted(set(own.values()))
    if len(days) > 1:
        return {green: days[0] + A_WEEK * days.index(day) for green, day in own.items()}
    return {green: days[0] + A_WEEK * (index // FEW) for index, green in enumerate(own)}


@dataclass(frozen=True, slots=True)
class _Club:
    """What all layouts share."""

    plan: Plan
    programme: Programme
    model: RecoveryModel

    def pattern(self, layout: Layout, period: Period, shift: Mapping[str, dt.timedelta]) -> Pattern:
        """Return what a layout comes to: every green so many days later than the plan has it."""
        own = {work.id for work in period.works}
        begins = period.days[0]
        every = tuple(
            _moved(work, shift, begins) if work.id in own else work for work in self.programme.works
        )
        works = [work for work in every if work.id in own]
        recoveries = recover_works(works, self.programme.sand, self.model, every)
        laid_out = make_period(
            sorted(works, key=lambda w: [p.id for p in period.works].index(w.id)),
            every,
            recoveries,
            self.programme.sand,
            self.model,
        )
        days = {visit.date for work in works for visit in work.visits}
        timetabled = timetables(
            replace(self.programme, works=_on(days, every)),
            _hired_on(self.plan, period.days, laid_out.days),
        )
        alone = replace(
            self.programme,
            works=tuple(works),
            periods=(laid_out,),
            closures=(),
            timetables={day: timetabled[day] for day in sorted(days & timetabled.keys())},
            status=play_status(self.programme.greens, works, [laid_out], ()),
        )
        return self._counted(layout, replace(alone, stretches=stretches_by_day(alone)))

    def _counted(self, layout: Layout, alone: Programme) -> Pattern:
        (period,) = alone.periods
        played = [key for key, green in alone.greens.items() if green.holes]
        by_status = [on_day[green] for on_day in alone.status.values() for green in played]
        open_holes = [len(day.all_day.open) for day in days_of_play(alone).values()]
        too_long = [day for day in alone.timetables.values() if day.too_long_by >= A_MINUTE]
        closed, recovering = self._fixtures(alone)
        return Pattern(
            layout=layout,
            works=tuple(work.id for work in period.works),
            days=tuple((day, len(period.greens_on(day))) for day in period.days),
            green_days_closed=by_status.count(PlayStatus.CLOSED),
            green_days_temporary=by_status.count(PlayStatus.TEMPORARY),
            days_under_nine=_days_under(NINE, alone, open_holes),
            days_under_eighteen=_days_under(2 * NINE, alone, open_holes),
            mixed_days=_mixed_days(alone, period),
            person_hours=self._hours(alone),
            hire_days=self._hire_days(alone, period),
            too_long=tuple(day.date for day in too_long),
            longest_minutes_over=max((day.too_long_by for day in too_long), default=0.0),
            open_again=period.open_again,
            putting_well=period.putting_well,
            fully_healed=period.fully_healed,
            fixtures_on_closed=closed,
            fixtures_in_recovery=recovering,
        )

    def _hours(self, alone: Programme) -> float | None:
        if self.plan.crew is None:
            return None
        own = {work.id for work in alone.works}
        return sum(
            hours_of_people(day, task)
            for day in alone.timetables.values()
            for task in day.tasks
            if task.work in own
        )

    def _hire_days(self, alone: Programme, period: Period) -> int | None:
        """Count the days of works that the plan has a hire for; with hired people, all days."""
        hired = [w for w in alone.works if self.plan.works[w.plan_index].hire is not None]
        if hired:
            return len({day for work in hired for day in work.dates})
        crew = self.plan.crew
        return len(period.days) if crew is not None and crew.hired_people else None

    def _fixtures(self, alone: Programme) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Name the fixtures that meet greens out of play, and those that meet healing ones."""
        away, healing = [], []
        for fixture in self.programme.fixtures:
            on_day = alone.status.get(fixture.date, {})
            statuses = {s for green, s in on_day.items() if fixture.meets(alone.greens[green])}
            if statuses & {PlayStatus.CLOSED, PlayStatus.TEMPORARY}:
                away.append(fixture.name)
            elif PlayStatus.RECOVERING in statuses:
                healing.append(fixture.name)
        return tuple(away), tuple(healing)


def _moved(work: Work, shift: Mapping[str, dt.timedelta], begins: dt.date) -> Work:
    """Move every visit with its greens; what prepares before the first green is opened stays.

    A green that would then have the same work twice on one day has it on the next free day.
    """
    by_day: dict[tuple[int, dt.date], list[str]] = {}
    taken = {(green, v.date) for v in work.visits if v.date < begins for green in v.greens}
    for visit in sorted(work.visits, key=lambda visit: visit.date):
        for green in visit.greens:
            day = visit.date
            if day >= begins:
                day += shift.get(green, NO_DAYS)
                while (green, day) in taken:
                    day += A_DAY
                taken.add((green, day))
            by_day.setdefault((visit.ordinal, day), []).append(green)
    visits = tuple(
        Visit(day, tuple(greens), ordinal) for (ordinal, day), greens in sorted(by_day.items())
    )
    moved = replace(work, visits=visits)
    by = moved.dates[-1] - work.dates[-1]
    return replace(moved, reserve_dates=tuple(day + by for day in work.reserve_dates))


def _on(days: Iterable[dt.date], works: Sequence[Work]) -> tuple[Work, ...]:
    """Return the works with those of their visits alone that fall on certain days."""
    wanted = set(days)
    cut = (replace(w, visits=tuple(v for v in w.visits if v.date in wanted)) for w in works)
    return tuple(work for work in cut if work.visits)


def _hired_on(plan: Plan, before: Sequence[dt.date], after: Sequence[dt.date]) -> Plan:
    """Return the plan with hired people there on the new days of work, if it says when they are."""
    crew = plan.crew
    if crew is None or not crew.hired_dates:
        return plan
    others = (day for day in all_days(crew.hired_dates) if day not in before)
    there = tuple(DayRange(day, day) for day in sorted({*others, *after}))
    return plan.model_copy(update={"crew": crew.model_copy(update={"hired_dates": there})})


def _days_under(holes: int, alone: Programme, open_holes: Sequence[int]) -> int | None:
    if len(alone.holes) < holes:
        return None
    return sum(count < holes for count in open_holes)


def _mixed_days(alone: Programme, period: Period) -> int:
    """Count the days on which one course has greens that recover and greens still to be done."""
    first = _first_days(period)
    courses: dict[str, list[str]] = {}
    for key in first:
        if alone.greens[key].holes:
            courses.setdefault(alone.greens[key].course, []).append(key)
    return sum(
        any(
            any(on_day[green] is PlayStatus.RECOVERING for green in greens)
            and any(first[green] > day for green in greens)
            for greens in courses.values()
        )
        for day, on_day in alone.status.items()
    )
