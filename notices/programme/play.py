"""What each green is to a golfer on each day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from operator import attrgetter

from notices.operations import WhileWorking
from notices.programme.model import Closure, Green, Period, PlayStatus, Work

_OF_WORK = {
    WhileWorking.OPEN: PlayStatus.OPEN,
    WhileWorking.TEMPORARY: PlayStatus.TEMPORARY,
    WhileWorking.CLOSED: PlayStatus.CLOSED,
}

Statuses = dict[dt.date, dict[str, PlayStatus]]


@dataclass(frozen=True, slots=True)
class Spell:
    """Days running on which greens are something else than simply open, and why."""

    first: dt.date
    days: int
    greens: tuple[str, ...]
    status: PlayStatus
    because: tuple[str, ...]
    """Identities of the works, or of the closure, that bring it."""
    until_finished: bool = False
    """Whether it ends the same day, when the work on the green is finished."""

    @property
    def after(self) -> dt.date:
        """The day after its last."""
        return self.first + dt.timedelta(days=self.days)

    @property
    def dates(self) -> tuple[dt.date, ...]:
        """Its days."""
        return tuple(self.first + dt.timedelta(days=later) for later in range(self.days))


def play_status(
    greens: Mapping[str, Green],
    works: Sequence[Work],
    periods: Sequence[Period],
    closures: Sequence[Closure],
) -> Statuses:
    """Return every green's status on every day on which one is not simply open."""
    statuses: Statuses = {}
    for spell in spells(greens, works, periods, closures):
        for day in spell.dates:
            on_day = statuses.setdefault(day, {})
            for green in spell.greens:
                if (known := on_day.get(green)) is None or known.rank < spell.status.rank:
                    on_day[green] = spell.status
    return {
        day: {green: on_day.get(green, PlayStatus.OPEN) for green in greens}
        for day, on_day in sorted(statuses.items())
        if on_day
    }


def worst(*statuses: PlayStatus) -> PlayStatus:
    """Return the status that counts where several meet."""
    return max(statuses, key=_rank)


_rank = attrgetter("rank")


def spells(
    greens: Mapping[str, Green],
    works: Sequence[Work],
    periods: Sequence[Period],
    closures: Sequence[Closure],
) -> Iterator[Spell]:
    """Yield all that makes a green something else than simply open.

    Work on a green closes no hole that has a temporary green all day: golfers play on to that one.
    A hole that the club closes itself is closed.
    """
    of_works, shut = list(_while_working(works)), list(_closed(closures, greens))
    temporary = _temporary_all_day([*of_works, *shut])
    for spell in of_works:
        yield from _without(spell, temporary)
    yield from shut
    yield from _recovering(periods)


def _temporary_all_day(found: Iterable[Spell]) -> Mapping[dt.date, set[str]]:
    """Return the greens that temporary ones replace from morning to evening, by day."""
    by_day: dict[dt.date, set[str]] = {}
    for spell in found:
        if spell.status is PlayStatus.TEMPORARY and not spell.until_finished:
            for day in spell.dates:
                by_day.setdefault(day, set()).update(spell.greens)
    return by_day


def _without(spell: Spell, temporary: Mapping[dt.date, set[str]]) -> Iterator[Spell]:
    """Yield what a closed spell comes to where temporary greens are played anyhow."""
    met = [temporary.get(day, set()).intersection(spell.greens) for day in spell.dates]
    if spell.status is not PlayStatus.CLOSED or not any(met):
        yield spell
        return
    for day, on_temporary in zip(spell.dates, met, strict=True):
        if left := tuple(green for green in spell.greens if green not in on_temporary):
            yield replace(spell, first=day, days=1, greens=left)


def _while_working(works: Sequence[Work]) -> Iterator[Spell]:
    """A green closed for the work stays so until it reopens.

    A later dressing is light: the green opens as soon as it is done (common practice).
    """
    for work in works:
        status = _OF_WORK[work.while_working]
        for visit in work.visits if status is not PlayStatus.OPEN else ():
            yield Spell(
                visit.date,
                max(1, work.reopen_days) if visit.ordinal == 1 else 1,
                visit.greens,
                status,
                (work.id,),
                until_finished=work.reopen_days == 0 or visit.ordinal > 1,
            )


def _closed(closures: Sequence[Closure], greens: Mapping[str, Green]) -> Iterator[Spell]:
    for closure in closures:
        status = PlayStatus.TEMPORARY if closure.has_temporary else PlayStatus.CLOSED
        concerned = tuple(greens) if closure.whole_course else closure.greens
        for day in closure.dates if concerned else ():
            yield Spell(day, 1, concerned, status, (closure.id,))


def _recovering(periods: Sequence[Period]) -> Iterator[Spell]:
    """A green recovers from the first work that opens it until it putts smoothly at the latest."""
    for period in periods:
        begun, opening = _first_days(period), period.opening_works
        alike: dict[tuple[dt.date, dt.date, tuple[str, ...]], list[str]] = {}
        for recovery in period.recoveries if begun else ():
            green, smooth = recovery.green, recovery.putting_smoothly
            # Where it may never get there, the expected day is all that can be said.
            until = smooth.late or smooth.expected
            because = tuple(work.id for work in opening if work.days_on(green))
            alike.setdefault((begun[green], until, because), []).append(green)
        for (first, until, because), greens in alike.items():
            yield Spell(first, (until - first).days, tuple(greens), PlayStatus.RECOVERING, because)


def _first_days(period: Period) -> dict[str, dt.date]:
    """Return the day on which each green is first opened or covered."""
    visits = (visit for work in period.opening_works for visit in work.main_visits)
    first: dict[str, dt.date] = {}
    for visit in sorted(visits, key=lambda visit: visit.date):
        for green in visit.greens:
            first.setdefault(green, visit.date)
    return first
