"""Closures and restrictions that stood for a work, and end before it now that it has moved.

A plan does not say which work a closure serves. The notice before does, as far as anything can:
there the work fell within it. Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

from notices.findings import Finding, Weight
from notices.plan.places import place_in_a_sentence
from notices.programme.changes import calendar_of
from notices.programme.model import Programme, Subject, Work

LEFT_BEHIND = "ends-before-its-work"


@dataclass(frozen=True, slots=True)
class _Kept:
    """What golfers go without for some days."""

    name: str
    dates: tuple[dt.date, ...]
    greens: tuple[str, ...]
    """Empty where it is no green that is closed."""
    path: tuple[str | int, ...]

    def may_serve(self, work: Work) -> bool:
        """Whether it seems to be there for a work, all of whose days lie within its own.

        What closes no green must begin or end with the work: a winter without buggies serves none.
        """
        first, last = self.dates[0], self.dates[-1]
        if not first <= work.dates[0] <= work.dates[-1] <= last:
            return False
        if self.greens:
            return not set(self.greens).isdisjoint(work.greens)
        return first == work.dates[0] or last in (work.dates[-1], *work.reserve_dates)


def left_behind(before: Programme, after: Programme) -> Iterator[Finding]:
    """Find what is as it was in the notice before, while its work goes on after its last day.

    Parameters
    ----------
    before
        What the notice before said.
    after
        What this one says.
    """
    known = _kept(after)
    for key, kept in _kept(before).items():
        now = known.get(key)
        if now is None or now.dates != kept.dates:
            continue
        served = {was.id for was in before.works if kept.may_serve(was)}
        for period in after.periods:
            works = [work for work in period.works if work.id in served]
            late = [work for work in works if work.dates[-1] > now.dates[-1]]
            if late:
                yield _left(now, late)


def _left(now: _Kept, works: Sequence[Work]) -> Finding:
    """Say once of works that go together that something ends before them."""
    first, *others = sorted(works, key=lambda work: work.plan_index)
    more = f" and {len(others)} more work{'s' if len(others) > 1 else ''}" if others else ""
    go, them = ("go", "these works") if others else ("goes", "this work")
    return Finding(
        LEFT_BEHIND,
        Weight.THINK_AGAIN,
        f"{now.name} ends on {now.dates[-1]}; {first.operation.name}{more} fell within it in the "
        f"last notice, and now {go} on until {max(work.dates[-1] for work in works)}",
        f"If it is there for {them}, move it too, or accept the finding with a reason",
        (*now.path, "dates"),
        work=first.id,
        greens=tuple(g for g in now.greens if any(g in work.greens for work in works)),
        dates=tuple(sorted({d for work in works for d in work.dates if d > now.dates[-1]})),
    )


def _kept(programme: Programme) -> dict[Hashable, _Kept]:
    """Return closures and restrictions, known again by what they are and which of that kind."""
    found: dict[Hashable, _Kept] = {
        (Subject.CLOSURE, shut.id): _Kept(
            f"the closure of {place_in_a_sentence(shut.what)}",
            shut.dates,
            tuple(programme.greens) if shut.whole_course else shut.greens,
            ("closures", shut.plan_index),
        )
        for shut in programme.closures
    }
    keys = calendar_of(programme)[Subject.RESTRICTION]
    for index, (key, limit) in enumerate(zip(keys, programme.restrictions, strict=True)):
        path = ("restrictions", index)
        found[Subject.RESTRICTION, key] = _Kept(
            f"the restriction on {limit.what}", limit.dates, (), path
        )
    return found
