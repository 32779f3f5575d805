"""What is different between two programmes, as a course manager would tell it.

Works, closures, restrictions and fixtures are known again by their identities, whatever became of
their dates, greens and settings; see "Identity" in `DEVELOPERS.md`. A change says what was and
what is, so that it can be read both ways and carried out. Words for it are in
``wording/changes.py``.
"""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import zip_longest
from typing import TypeVar

from notices.operations import Kind, SettingValue, WhileWorking
from notices.plan.settings import write_value
from notices.programme.model import (
    Aspect,
    Change,
    ChangeKind,
    Changes,
    Fixture,
    Move,
    Period,
    Programme,
    Promise,
    Subject,
    Work,
)
from notices.programme.model.changes import HOLES_LEFT, OPEN_AGAIN, PUTTING_WELL

Days = tuple[dt.date, ...]
Spot = tuple[str, int]
"""A green, or nothing for what has none, and the ordinal of the visit."""
Calendar = Mapping[Subject, Mapping[str, Mapping[Spot, Days]]]
"""Every date of a programme: what it is of, its identity, where, and on which days."""

Key = TypeVar("Key", bound=Hashable)


def compare(old: Programme, new: Programme) -> Changes:
    """Return what is different in the new programme; the dates of issue do not count."""
    works = {work.id: work for work in old.works}, {work.id: work for work in new.works}
    found = [
        *_of_works(*works),
        *_of_periods(old, new),
        *_of_dated(Subject.CLOSURE, _closures(old), _closures(new)),
        *_of_dated(Subject.RESTRICTION, _restrictions(old), _restrictions(new)),
        *_of_fixtures(old.fixtures, new.fixtures),
        *_of_club(old, new),
    ]
    touched = {change.id for change in found if change.subject is Subject.WORK}
    stands = tuple(key for key in works[1] if key in works[0] and key not in touched)
    return Changes(tuple(found), stands)


def calendar_of(programme: Programme) -> Calendar:
    """Return every date of the works, closures, restrictions and fixtures of a programme."""
    whole: Spot = ("", 1)
    return {
        Subject.WORK: {work.id: _days_of(work) for work in programme.works},
        Subject.CLOSURE: {key: {whole: one.dates} for key, one in _closures(programme).items()},
        Subject.RESTRICTION: {
            key: {whole: one.dates} for key, one in _restrictions(programme).items()
        },
        Subject.FIXTURE: {
            name: {whole: tuple(sorted(dates))}
            for name, dates in _by_name(programme.fixtures).items()
        },
    }


def _days_of(work: Work) -> dict[Spot, Days]:
    found: dict[Spot, list[dt.date]] = {}
    for visit in work.visits:
        for green in visit.greens:
            found.setdefault((green, visit.ordinal), []).append(visit.date)
    return {spot: tuple(sorted(days)) for spot, days in found.items()}


def _both(old: Iterable[Key], new: Iterable[Key]) -> list[Key]:
    """Return the keys of both: the new ones in their order, and then those that fell away."""
    return list(dict.fromkeys((*new, *old)))


def _of_works(old: Mapping[str, Work], new: Mapping[str, Work]) -> Iterator[Change]:
    for key in _both(old, new):
        was, now = old.get(key), new.get(key)
        if was is not None and now is not None and was.operation.name == now.operation.name:
            yield from _of_work(was, now)
            continue
        if was is not None:
            yield _of_whole_work(ChangeKind.DROPPED, was, _moves(_days_of(was), {}))
        if now is not None:
            yield _of_whole_work(ChangeKind.ADDED, now, _moves({}, _days_of(now)))


def _of_whole_work(kind: ChangeKind, work: Work, moves: tuple[Move, ...]) -> Change:
    return Change(kind, Subject.WORK, work.id, work.operation.name, moves)


def _of_work(was: Work, now: Work) -> Iterator[Change]:
    before, after = _days_of(was), _days_of(now)
    both = set(was.greens) & set(now.greens)
    moves = _moves(
        {spot: days for spot, days in before.items() if spot[0] in both},
        {spot: days for spot, days in after.items() if spot[0] in both},
    )
    if moves:
        lengths = len(was.dates), len(now.dates)
        kind = _longer(*lengths) if set(was.greens) == set(now.greens) else ChangeKind.MOVED
        yield _of_whole_work(kind, now, moves)
    for kind, days in (
        (ChangeKind.GREENS_ADDED, ({}, after)),
        (ChangeKind.GREENS_LEFT_OUT, (before, {})),
    ):
        left = [
            {spot: dates for spot, dates in side.items() if spot[0] not in both} for side in days
        ]
        if others := _moves(*left):
            yield _of_whole_work(kind, now, others)
    if was.reserve_dates != now.reserve_dates:
        move = (Move(was.reserve_dates, now.reserve_dates),)
        yield Change(ChangeKind.RESERVE, Subject.WORK, now.id, now.operation.name, move)
    yield from _of_play(was, now)
    yield from _of_settings(was, now)


def _longer(before: int, after: int) -> ChangeKind:
    if before == after:
        return ChangeKind.MOVED
    return ChangeKind.EXTENDED if after > before else ChangeKind.SHORTENED


def _moves(before: Mapping[Spot, Days], after: Mapping[Spot, Days]) -> tuple[Move, ...]:
    """Return the moves from some days to others, greens that go together in one."""
    groups: dict[tuple[int, Days, Days], list[str]] = {}
    for green, ordinal in sorted(_both(before, after), key=lambda spot: spot[1]):
        days = before.get((green, ordinal), ()), after.get((green, ordinal), ())
        if days[0] != days[1]:
            groups.setdefault((ordinal, *days), []).append(green)
    moves = (
        Move(was, now, tuple(sorted(filter(None, greens), key=_as_numbered)), ordinal)
        for (ordinal, was, now), greens in groups.items()
    )
    # By the earlier of the days, so that the way back has the same order.
    return tuple(sorted(moves, key=lambda m: (m.ordinal, min(m.before + m.after), m.greens)))


def _as_numbered(green: str) -> tuple[bool, int, str]:
    return (not green.isdigit(), int(green) if green.isdigit() else 0, green)


_HARDSHIP = {WhileWorking.OPEN: 0, WhileWorking.TEMPORARY: 1, WhileWorking.CLOSED: 2}


def _of_play(was: Work, now: Work) -> Iterator[Change]:
    """What golfers meet on the day, and for how long."""
    for aspect, harder, before, after in (
        (
            Aspect.WHILE_WORKING,
            _HARDSHIP[now.while_working] - _HARDSHIP[was.while_working],
            was.while_working.value,
            now.while_working.value,
        ),
        (
            Aspect.REOPEN,
            now.reopen_days - was.reopen_days,
            str(was.reopen_days),
            str(now.reopen_days),
        ),
    ):
        if harder:
            kind = ChangeKind.WORSE if harder > 0 else ChangeKind.BETTER
            yield Change(
                kind,
                Subject.WORK,
                now.id,
                now.operation.name,
                aspect=aspect,
                before=before,
                after=after,
            )


def _of_settings(was: Work, now: Work) -> Iterator[Change]:
    """Settings that are others, in the words in which one types them."""
    for setting in now.operation.settings:
        before, after = (work.settings.values.get(setting.name) for work in (was, now))
        if before != after:
            yield Change(
                ChangeKind.OTHERWISE,
                Subject.WORK,
                now.id,
                now.operation.name,
                setting=setting.name,
                before=_typed(setting.kind, before),
                after=_typed(setting.kind, after),
            )
    if was.note != now.note:
        yield Change(
            ChangeKind.OTHERWISE,
            Subject.WORK,
            now.id,
            now.operation.name,
            aspect=Aspect.NOTE,
            before=was.note,
            after=now.note,
        )


def _typed(kind: Kind, value: SettingValue | None) -> str:
    return "" if value is None else str(write_value(kind, value))


def _of_periods(old: Programme, new: Programme) -> Iterator[Change]:
    """When greens are open and putt well again after works that belong together in both."""
    before, after = (_led(programme.periods) for programme in (old, new))
    for key in _both(before, after):
        was, now = before.get(key), after.get(key)
        if was is None or now is None:
            continue
        if _is_away(was) and _is_away(now):
            yield from _of_promise(key, OPEN_AGAIN, was.open_again, now.open_again)
            yield from _of_holes(key, _fewest_holes(old, was), _fewest_holes(new, now))
        promises = was.putts_well_after_all, now.putts_well_after_all
        yield from _of_promise(key, PUTTING_WELL, *promises)


def _is_away(period: Period) -> bool:
    """Whether a day is named on which all are open: not where each opens when it is finished."""
    return any(
        work.while_working is not WhileWorking.OPEN for work in period.opening_works
    ) and any(one.back_in_play.early > one.done for one in period.recoveries)


def _fewest_holes(programme: Programme, period: Period) -> int | None:
    """Return how many holes the day with fewest of them leaves; None where all are open."""
    days = (programme.play[day] for day in period.days if day in programme.play)
    return min((len(programme.holes) - len(day.closed_throughout) for day in days), default=None)


def _of_holes(key: str, was: int | None, now: int | None) -> Iterator[Change]:
    if was is not None and now is not None and was != now:
        kind = ChangeKind.WORSE if now < was else ChangeKind.BETTER
        yield Change(kind, Subject.PERIOD, key, HOLES_LEFT, before=str(was), after=str(now))


def _of_promise(key: str, name: str, was: Promise, now: Promise) -> Iterator[Change]:
    days = _said(was), _said(now)
    if days[0] != days[1]:
        # The later date decides; no such day within two years is later than any.
        ends = [(day is None, day or dt.date.max) for _, day in days]
        later = (ends[1], days[1][0]) > (ends[0], days[0][0])
        moves = (Move(_known(days[0]), _known(days[1])),)
        kind = ChangeKind.LATER if later else ChangeKind.SOONER
        yield Change(kind, Subject.PERIOD, key, name, moves)


def _led(periods: Iterable[Period]) -> dict[str, Period]:
    """Know a period by the first of the works that open its surface."""
    return {p.opening_works[0].id: p for p in periods if p.noticed and p.opening_works}


def _said(promise: Promise) -> tuple[dt.date, dt.date | None]:
    return promise.expect_by, promise.at_worst


def _known(days: tuple[dt.date, dt.date | None]) -> Days:
    return tuple(day for day in days if day is not None)


@dataclass(frozen=True, slots=True)
class _Dated:
    """Something that holds on some days, and its circumstances in words."""

    name: str
    dates: Days
    aspects: Mapping[Aspect, str]


def _closures(programme: Programme) -> dict[str, _Dated]:
    return {
        shut.id: _Dated(
            shut.what,
            shut.dates,
            {
                Aspect.INSTEAD: shut.instead,
                Aspect.TEMPORARY: shut.temporary,
                Aspect.REASON: shut.reason,
            },
        )
        for shut in programme.closures
    }


def _restrictions(programme: Programme) -> dict[str, _Dated]:
    """Know a restriction by what it is of, and its ordinal where there are several of that."""
    counts: Counter[str] = Counter()
    found = {}
    for one in programme.restrictions:
        counts[one.what] += 1
        key = f"{one.what} {counts[one.what]}" if counts[one.what] > 1 else one.what
        found[key] = _Dated(
            one.what, one.dates, {Aspect.EXCEPT: one.exception, Aspect.ASK: one.ask}
        )
    return found


def _of_dated(
    subject: Subject, old: Mapping[str, _Dated], new: Mapping[str, _Dated]
) -> Iterator[Change]:
    for key in _both(old, new):
        was, now = old.get(key), new.get(key)
        if was is not None and now is not None:
            yield from _of_days(subject, key, now.name, was.dates, now.dates)
            for aspect, after in now.aspects.items():
                before = was.aspects[aspect]
                yield from _of_words(subject, key, now.name, aspect, before, after)
        elif was is not None:
            yield from _of_days(subject, key, was.name, was.dates, ())
        elif now is not None:
            yield from _of_days(subject, key, now.name, (), now.dates)


def _of_days(subject: Subject, key: str, name: str, before: Days, after: Days) -> Iterator[Change]:
    if before == after:
        return
    if not before or not after:
        kind = ChangeKind.ADDED if after else ChangeKind.DROPPED
    else:
        kind = _longer(len(before), len(after))
    yield Change(kind, subject, key, name, (Move(before, after),))


def _of_words(
    subject: Subject, key: str, name: str, aspect: Aspect, before: str, after: str
) -> Iterator[Change]:
    if before != after:
        yield Change(
            ChangeKind.OTHERWISE, subject, key, name, aspect=aspect, before=before, after=after
        )


def _of_fixtures(old: Iterable[Fixture], new: Iterable[Fixture]) -> Iterator[Change]:
    """Pair the dates of one name that fell away with those that came, in their order."""
    before, after = _by_name(old), _by_name(new)
    for name in _both(before, after):
        was, now = before.get(name, {}), after.get(name, {})
        lost, gained = sorted(was.keys() - now.keys()), sorted(now.keys() - was.keys())
        pairs = [(day, day) for day in sorted(was.keys() & now.keys())]
        for one, other in [*pairs, *zip_longest(lost, gained)]:
            days = ((one,) if one else ()), ((other,) if other else ())
            yield from _of_days(Subject.FIXTURE, name, name, *days)
            first, second = was.get(one) if one else None, now.get(other) if other else None
            yield from _of_the_way(name, first, second)
            yield from _of_decision(name, first, second)


def _by_name(fixtures: Iterable[Fixture]) -> dict[str, dict[dt.date, Fixture]]:
    found: dict[str, dict[dt.date, Fixture]] = {}
    for fixture in fixtures:
        if fixture.is_on:
            found.setdefault(fixture.name, {})[fixture.date] = fixture
    return found


def _of_the_way(name: str, was: Fixture | None, now: Fixture | None) -> Iterator[Change]:
    """Whether a fixture meets more greens closed or healing than before."""
    before, after = _hindered(was), _hindered(now)
    if before == after:
        return
    worse = (len(after[0]), len(after[1])) > (len(before[0]), len(before[1]))
    better = (len(after[0]), len(after[1])) < (len(before[0]), len(before[1]))
    if worse or better:
        kind, met, fixture = (
            (ChangeKind.IN_THE_WAY, after, now) if worse else (ChangeKind.CLEAR, before, was)
        )
        state = Aspect.CLOSED if met[0] else Aspect.RECOVERING
        days = ((was.date,) if was else ()), ((now.date,) if now else ())
        greens = met[0] or met[1]
        if fixture is not None:
            yield Change(kind, Subject.FIXTURE, name, name, (Move(*days),), state, greens=greens)


def _of_decision(name: str, was: Fixture | None, now: Fixture | None) -> Iterator[Change]:
    """Whether something else is decided about a fixture that is played either way."""
    before, after = (
        one.decided.value if one and one.decided and one.goes_ahead else "" for one in (was, now)
    )
    if was and now and before != after:
        move = Move((was.date,), (now.date,))
        yield Change(
            ChangeKind.OTHERWISE,
            Subject.FIXTURE,
            name,
            name,
            (move,),
            Aspect.DECISION,
            before=before,
            after=after,
        )


def _hindered(fixture: Fixture | None) -> tuple[tuple[str, ...], tuple[str, ...]]:
    return (fixture.closed_greens, fixture.recovering_greens) if fixture else ((), ())


def _of_club(old: Programme, new: Programme) -> Iterator[Change]:
    """Whom to ask, who decides, and whether it is approved."""
    for aspect, before, after in (
        (Aspect.CONTACT, old.club.contact, new.club.contact),
        (Aspect.DECISION, _decided(old), _decided(new)),
        (Aspect.DRAFT, "draft" if old.draft else "", "draft" if new.draft else ""),
    ):
        yield from _of_words(Subject.CLUB, aspect.value, aspect.value, aspect, before, after)


def _decided(programme: Programme) -> str:
    decision = programme.decision
    if decision is None:
        return ""
    return ", ".join(filter(None, (decision.by, decision.when, decision.where)))
