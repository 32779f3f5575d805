"""What was forecast of greens after a work, and what came of it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from notices.agronomy.recovery import DateRange
from notices.programme.model import Programme, Recovery, Seen
from notices.programme.recovery import latest_of


@dataclass(frozen=True, slots=True)
class Outcome:
    """One forecast beside what happened."""

    operation: str
    work: str
    """The work, where it is one of this plan; empty for one of an earlier season."""
    done: dt.date
    what: str
    """What was seen: "putting smoothly" or "healed"."""
    forecast: DateRange
    """As promised for a work of this plan; by the book, without the record, for an earlier one."""
    actual: dt.date

    @property
    def days_off(self) -> int:
        """By how many days the forecast was missed: late is positive, early is negative."""
        if self.actual < self.forecast.early:
            return (self.actual - self.forecast.early).days
        if self.forecast.late is not None and self.actual > self.forecast.late:
            return (self.actual - self.forecast.late).days
        return 0


def outcomes(programme: Programme) -> tuple[Outcome, ...]:
    """Return every season on record beside its forecast, by the day of the work."""
    found = [
        Outcome(fitted.operation, "", season.done, season.what, season.forecast, season.seen)
        for fitted in programme.records.values()
        for season in fitted.records
    ]
    for work in programme.works:
        for seen in programme.seen.get(work.id, ()):
            back = [r for r in programme.recoveries[work.id] if r.green in seen.greens]
            found += _of_seen(work.operation.name, seen, back)
    return tuple(sorted(found, key=lambda one: (one.done, one.operation, one.actual)))


def _of_seen(operation: str, seen: Seen, back: list[Recovery]) -> Iterator[Outcome]:
    for what, actual, spans in (
        ("putting smoothly", seen.putting_smoothly, [r.putting_smoothly for r in back]),
        ("healed", seen.healed, [r.fully_healed for r in back]),
    ):
        if actual is not None and spans:
            # All of the greens had come back by that day, so the last of them counts.
            yield Outcome(operation, seen.work, seen.done, what, latest_of(spans), actual)
