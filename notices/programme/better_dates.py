"""Better dates for works that clash: every start in the same month is tried, and the nearest kept.

Nothing is guessed: for each start the whole plan is worked out anew with the works of one period
moved, and what follows them moved too. A start is good where the clash is gone and nothing else
came up that a course manager should think about again.
"""

from __future__ import annotations

import calendar
import datetime as dt
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import chain

from notices.findings import Finding, Weight
from notices.plan.days import DayRange, all_days
from notices.plan.green_choice import GreenChoice
from notices.plan.model import Plan
from notices.plan.model import Work as WrittenWork
from notices.programme.accepting import reason_to_accept
from notices.programme.checks import fixture_in_recovery, fixture_on_closed_greens
from notices.programme.climate import club_climate
from notices.programme.fixtures import met_by
from notices.programme.lay_out import head_of
from notices.programme.model import (
    BetterDate,
    BetterDates,
    Period,
    PlayStatus,
    Programme,
    Promise,
    Work,
)
from notices.programme.periods import group_works, make_period
from notices.programme.play import Statuses, play_status, worst
from notices.programme.promises import put_off
from notices.programme.recovery import RecoveryModel, recover_works
from notices.programme.sand import sand_of
from notices.programme.season_checks import days_out_of_season
from notices.programme.work_out import work_out

CLASHES = ("fixture-in-closure", "fixture-in-recovery", "out-of-season", "day-too-long")
"""Findings that other dates may clear, the gravest first."""

BEFORE_ISSUE = "before the date of issue"
OTHER_WORK = "other works in the way"
REASONS: Mapping[str, str] = {
    "fixture-in-closure": "a fixture with greens out of play",
    "fixture-in-recovery": "a fixture before greens putt well again",
    "out-of-season": "out of season",
    "day-too-long": "a day too long",
    "recovery-into-winter": "recovery into winter",
}
"""What a start that will not do runs into; other findings go by their code."""

MOST_OFFERED = 3

MOST_WORKED_OUT = 12 * 31
"""So many starts of one plan are worked out whole, a year of months: it must end, and a month may
hold an answer on its last day."""


def better_dates(plan: Plan, programme: Programme) -> tuple[BetterDates, ...]:
    """Return better dates for each period that clashes, in the order of the programme.

    Parameters
    ----------
    plan
        The plan.
    programme
        What follows from it, with its findings; a clash that the club accepts is none.
    """
    search = _Search(plan, programme)
    found = []
    for period in programme.periods:
        clashes = _clashes(programme, period)
        if clashes:
            found.append(search.of_period(period, clashes))
    return tuple(found)


class _Search:
    """Tries other starts: first on what days, recovery and fixtures show, then worked out whole."""

    def __init__(self, plan: Plan, programme: Programme) -> None:
        self.plan = plan
        self.programme = programme
        # It remembers what has grown from which day to which, and days come again and again.
        self.model = RecoveryModel(club_climate(plan).climate, programme.records)
        self.doubts = _doubts(programme)
        self.left = MOST_WORKED_OUT

    def of_period(self, period: Period, clashes: tuple[Finding, ...]) -> BetterDates:
        """Try every other start in the month in which a period begins, the nearest first."""
        first = period.days[0]
        length = calendar.monthrange(first.year, first.month)[1]
        moves = [number - first.day for number in range(1, length + 1) if number != first.day]
        others = self._without(period)
        failed: Counter[str] = Counter()
        options = []
        not_tried = 0
        for move in sorted(moves, key=lambda days: (abs(days), days)):
            outcome = self._try(period, others, dt.timedelta(days=move))
            if outcome is None:
                not_tried += 1
            elif isinstance(outcome, str):
                failed[outcome] += 1
            else:
                options.append(outcome)
        kinds = dict.fromkeys(w.operation.name for w in (*period.opening_works, *period.works))
        return BetterDates(
            works=tuple(work.id for work in period.works),
            kinds=tuple(kinds),
            days=period.days,
            clashes=clashes,
            options=tuple(options[:MOST_OFFERED]),
            tried=len(moves) - not_tried,
            good=len(options),
            failed=dict(sorted(failed.items(), key=lambda item: (-item[1], item[0]))),
            not_tried=not_tried,
        )

    def _without(self, period: Period) -> Statuses:
        """Return what every green is on each day but for a period."""
        names = {work.id for work in period.works}
        return play_status(
            self.programme.greens,
            [work for work in self.programme.works if work.id not in names],
            [one for one in self.programme.periods if one is not period],
            self.programme.closures,
        )

    def _try(self, period: Period, others: Statuses, by: dt.timedelta) -> BetterDate | str | None:
        """Return what a move brings, or why it will not do; None where nobody can look at it."""
        if min(work.dates[0] for work in period.works) + by < self.programme.issued:
            return BEFORE_ISSUE
        # Most starts fail for what a first look shows; the rest are worked out whole.
        seen = self._first_look(period, others, by)
        if isinstance(seen, str):
            return seen
        if self.left == 0:
            return None
        self.left -= 1
        moved = work_out(_moved(self.plan, period, by), self.programme.issued)
        names = {work.id for work in period.works}
        there = next(one for one in moved.periods if {work.id for work in one.works} == names)
        if left := _clashes(moved, there):
            return REASONS[left[0].code]
        if new := _doubts(moved) - self.doubts:
            code = min(new)
            return REASONS.get(code, code)
        return BetterDate(
            start=there.days[0],
            move=by.days,
            putting_days=_more(period, period.putting_well, there, there.putting_well),
            healing_days=_more(period, period.fully_healed, there, there.fully_healed),
            weekend=tuple(day for day in there.days if day.weekday() >= 5),
        )

    def _first_look(self, period: Period, others: Statuses, by: dt.timedelta) -> str | None:
        """Return why a move will not do, as far as days, recovery and fixtures show it."""
        heads = _heads(self.plan, period)
        every = tuple(
            _moved_on(work, by) if head_of(self.plan, work.plan_index)[0] in heads else work
            for work in self.programme.works
        )
        names = {work.id for work in period.works}
        groups = group_works(every)
        group = next((one for one in groups if {work.id for work in one} == names), None)
        if group is None:
            return OTHER_WORK
        needs = sand_of(self.plan, every)
        recoveries = recover_works(group, needs, self.model, every)
        there = make_period(group, every, recoveries, needs, self.model)
        own = play_status(self.programme.greens, group, [there], ())
        greens = self.programme.greens
        fixtures = tuple(
            met_by(fixture, greens, _worst_of(greens, fixture.date, own, others))
            for fixture in self.programme.fixtures
        )
        looked_at = replace(
            self.programme, works=every, periods=(there,), fixtures=fixtures, findings=()
        )
        left = _clashes(replace(looked_at, findings=self._found(looked_at, group)), there)
        return REASONS[left[0].code] if left else None

    def _found(self, moved: Programme, group: Sequence[Work]) -> tuple[Finding, ...]:
        """Return the findings that need no figures and that nobody accepts."""
        checks = (fixture_on_closed_greens, fixture_in_recovery)
        findings = list(chain.from_iterable(check(moved, self.plan) for check in checks))
        findings += [
            Finding("out-of-season", Weight.THINK_AGAIN, "", work=work.id, dates=away)
            for work in group
            if (away := days_out_of_season(work, self.plan))
        ]
        return tuple(f for f in findings if reason_to_accept(f, moved, self.plan) is None)


def _worst_of(
    greens: Iterable[str], day: dt.date, own: Statuses, others: Statuses
) -> dict[str, PlayStatus]:
    """Return what each green is on a day when two sets of works meet."""
    first, second = own.get(day, {}), others.get(day, {})
    if not first or not second:
        return first or second
    return {green: worst(first[green], second[green]) for green in greens}


def _moved_on(work: Work, by: dt.timedelta) -> Work:
    """Return a work that is laid out, some days later, reserve dates and all."""
    (moved,) = put_off([work], by)
    return replace(moved, reserve_dates=tuple(day + by for day in work.reserve_dates))


def _heads(plan: Plan, period: Period) -> set[int]:
    """Return the works of a plan that the works of a period follow, or that are among them."""
    return {head_of(plan, work.plan_index)[0] for work in period.works}


def _clashes(programme: Programme, period: Period) -> tuple[Finding, ...]:
    """Return the findings that the dates of one period bring about, the gravest first."""
    own = play_status(programme.greens, period.works, [period], ())
    works = {work.id for work in period.works}
    days = {visit.date for work in period.works for visit in work.visits}

    def concerns(finding: Finding) -> bool:
        if finding.code == "out-of-season":
            return finding.work in works
        if finding.code == "day-too-long":
            return bool(days.intersection(finding.dates))
        return any(
            own.get(day, {}).get(green, PlayStatus.OPEN) is not PlayStatus.OPEN
            for day in finding.dates
            for green in finding.greens
        )

    found = [
        one
        for one in programme.findings
        if one.code in CLASHES and one.weight is not Weight.INFORMATION and concerns(one)
    ]
    return tuple(sorted(found, key=lambda one: (CLASHES.index(one.code), one.dates, one.message)))


def _doubts(programme: Programme) -> Counter[str]:
    """Count what stops a build or should be thought about again, by code."""
    return Counter(one.code for one in programme.findings if one.weight is not Weight.INFORMATION)


def _moved(plan: Plan, period: Period, by: dt.timedelta) -> Plan:
    """Return the plan with the works of a period, and all that follow them, moved."""
    heads = _heads(plan, period)
    works = [
        _moved_work(work, by) if head_of(plan, index)[0] in heads else work
        for index, work in enumerate(plan.works)
    ]
    crew = plan.crew
    if crew is not None and crew.hired_dates:
        # The hired come with their machines.
        others = [day for day in all_days(crew.hired_dates) if day not in period.days]
        there = [day + by for day in all_days(crew.hired_dates) if day in period.days]
        hired = tuple(DayRange(day, day) for day in sorted({*others, *there}))
        crew = crew.model_copy(update={"hired_dates": hired})
    return plan.model_copy(update={"works": tuple(works), "crew": crew})


def _moved_work(work: WrittenWork, by: dt.timedelta) -> WrittenWork:
    def later(ranges: Sequence[DayRange]) -> tuple[DayRange, ...]:
        return tuple(DayRange(days.first + by, days.last + by) for days in ranges)

    greens = work.greens
    if greens is not None and greens.by_day:
        greens = GreenChoice(by_day=tuple((day + by, refs) for day, refs in greens.by_day))
    return work.model_copy(
        update={
            "dates": later(work.dates),
            "reserve_dates": later(work.reserve_dates),
            "greens": greens,
        }
    )


def _more(was: Period, before: Promise, now: Period, after: Promise) -> int | None:
    """Return how many days longer recovery takes from the last day of work."""
    if before.at_worst is None or after.at_worst is None:
        return None
    return ((after.at_worst - now.days[-1]) - (before.at_worst - was.days[-1])).days
