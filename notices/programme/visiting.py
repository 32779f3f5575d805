"""Parties that visit: on which days they come, and which of those were told to them before."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from notices.programme.model import Programme
from notices.programme.slugs import distinct_slugs

VISITING = frozenset({"visitors", "society", "open"})
"""Kinds of fixture that bring people who are not members."""


def days_of_parties(programme: Programme) -> dict[str, tuple[dt.date, ...]]:
    """Return on which days each visiting party comes, as far as they are still to come."""
    days: dict[str, list[dt.date]] = {}
    for fixture in programme.fixtures:
        if fixture.kind in VISITING and fixture.is_on and fixture.date >= programme.issued:
            days.setdefault(fixture.name, []).append(fixture.date)
    return {name: tuple(dict.fromkeys(dates)) for name, dates in days.items()}


@dataclass(frozen=True, slots=True)
class PartyDays:
    """The days of a visiting party that were told to it and lie ahead, and those that it has now."""

    name: str
    slug: str
    before: tuple[dt.date, ...]
    now: tuple[dt.date, ...]

    @property
    def lost(self) -> tuple[dt.date, ...]:
        """Days on which it does not come any more."""
        return tuple(day for day in self.before if day not in self.now)

    @property
    def gained(self) -> tuple[dt.date, ...]:
        """Days on which it was not to come before."""
        return tuple(day for day in self.now if day not in self.before)


def told_parties(old: Programme, new: Programme) -> Iterator[PartyDays]:
    """Yield the parties to which an earlier notice told a day that is still to come."""
    before, now = days_of_parties(old), days_of_parties(new)
    slugs = distinct_slugs((*now, *(name for name in before if name not in now)), "party")
    for name, days in before.items():
        if ahead := tuple(day for day in days if day >= new.issued):
            yield PartyDays(name, slugs[name], ahead, now.get(name, ()))
