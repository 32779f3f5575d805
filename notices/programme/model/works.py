"""The planned works with their days, and the periods that they form."""

from __future__ import annotations

import datetime as dt
import enum
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property, reduce

from notices.operations import Opening, Operation, SettingValue, WhileWorking
from notices.programme.model.recovery import Recovery


@dataclass(frozen=True, slots=True)
class Settings:
    """Settings of a work, those of the club and those of the catalogue told apart."""

    values: Mapping[str, SettingValue | None]
    given: frozenset[str]

    def number(self, name: str) -> float:
        """Return a setting that is one number.

        Raises
        ------
        TypeError
            When it is not: a catalogue entry and its formulas disagree.
        """
        value = self.values[name]
        if not isinstance(value, float | int):
            raise TypeError(f"{name} is not a number: {value!r}")
        return value

    def pair(self, name: str) -> tuple[float, float]:
        """Return a setting that is a spacing along and across."""
        value = self.values[name]
        if not isinstance(value, tuple):
            raise TypeError(f"{name} is not a spacing: {value!r}")
        return value

    def words(self, name: str) -> str:
        """Return a setting in free words, empty when there are none."""
        return str(self.values.get(name) or "")

    def rests_on_default(self, *names: str) -> bool:
        """Whether any of these settings is the catalogue's and not the club's."""
        return any(name not in self.given for name in names)


@dataclass(frozen=True, slots=True)
class Visit:
    """One day of a work, with the greens it is done on."""

    date: dt.date
    greens: tuple[str, ...]
    ordinal: int = 1
    """1 for the work itself; a second dressing is 2, and so on."""


@dataclass(frozen=True)
class Work:
    """One planned work with its days laid out."""

    id: str
    operation: Operation
    plan_index: int
    settings: Settings
    visits: tuple[Visit, ...]
    reserve_dates: tuple[dt.date, ...]
    while_working: WhileWorking
    reopen_days: int
    services_checked: bool
    note: str
    why: str = ""
    """Why the club does it, in its own words."""
    put_off_because: str = ""
    """Why its dates are others than before, in the club's words."""
    reopen_given: bool = True
    """Whether the plan says when the green reopens, and not the catalogue."""
    temporary: str = ""
    """Where its temporary greens lie and how good they are, in the club's words."""

    @cached_property
    def main_visits(self) -> tuple[Visit, ...]:
        """The work itself, without later dressings."""
        return tuple(visit for visit in self.visits if visit.ordinal == 1)

    @property
    def follow_ups(self) -> tuple[Visit, ...]:
        """Later dressings."""
        return tuple(visit for visit in self.visits if visit.ordinal > 1)

    @cached_property
    def dates(self) -> tuple[dt.date, ...]:
        """Days of the work itself."""
        return tuple(visit.date for visit in self.main_visits)

    @cached_property
    def greens(self) -> tuple[str, ...]:
        """Greens in the order in which they are done."""
        return tuple(dict.fromkeys(g for visit in self.main_visits for g in visit.greens))

    def days_on(self, green: str, ordinal: int = 1) -> tuple[dt.date, ...]:
        """Days of the work itself, or of a later dressing, on a green."""
        return self._days.get((green, ordinal), ())

    def every_day_on(self, green: str) -> tuple[dt.date, ...]:
        """Days on which anything of the work is done on a green, later dressings included."""
        return self._every_day.get(green, ())

    def last_day_on(self, green: str) -> dt.date:
        """Last day on which the work itself is done on a green."""
        return max(self.days_on(green))

    def last_visit_to(self, green: str) -> dt.date:
        """Last day on which anything of the work is done on a green, later dressings included."""
        return max(self.every_day_on(green))

    @cached_property
    def _every_day(self) -> dict[str, tuple[dt.date, ...]]:
        found: dict[str, list[dt.date]] = {}
        for visit in self.visits:
            for green in visit.greens:
                found.setdefault(green, []).append(visit.date)
        return {green: tuple(days) for green, days in found.items()}

    @cached_property
    def _days(self) -> dict[tuple[str, int], tuple[dt.date, ...]]:
        """Days by green and ordinal: a course may have hundreds of greens, each asked for often."""
        found: dict[tuple[str, int], list[dt.date]] = {}
        for visit in self.visits:
            for green in visit.greens:
                found.setdefault((green, visit.ordinal), []).append(visit.date)
        return {key: tuple(days) for key, days in found.items()}


@dataclass(frozen=True, slots=True)
class Promise:
    """What a member is told: expect by, and at worst."""

    expect_by: dt.date
    at_worst: dt.date | None
    """None where growth does not get there in the two years looked at."""
    growth_stops: dt.date | None = None
    """First day without growth, where grass is needed and that comes before the later date.

    Where growth stops twice before then, it is the one after `expect_by`."""

    @property
    def through_winter(self) -> bool:
        """Whether a slow autumn would leave it until growth returns."""
        return self.growth_stops is not None and self.expect_by < self.growth_stops

    def together_with(self, other: Promise) -> Promise:
        """Return what is told of greens that come back from two things at once."""
        last = max(self, other, key=lambda promise: promise.at_worst or dt.date.max)
        return replace(last, expect_by=max(self.expect_by, other.expect_by))


class Meeting(enum.Enum):
    """How another period of work meets the greens of a period while these are to come back."""

    CAME_BEFORE = "came before"
    """Most of them still recover from it when this one begins."""
    FOLLOWS = "follows"
    """It comes to most of them before they putt well."""
    KEEPS_SOME = "keeps some"
    """It keeps a few of them for longer than the rest."""
    COMES_NEXT = "comes next"
    """It comes to most of them soon after they putt well."""


@dataclass(frozen=True, slots=True)
class OtherWork:
    """Another period of work on some of the greens of a period."""

    period: Period
    greens: tuple[str, ...]
    """Those that both have."""
    how: Meeting

    @property
    def days(self) -> tuple[dt.date, ...]:
        """Days on which it is done to those greens."""
        return tuple(
            day
            for day in self.period.days
            if not set(self.period.greens_on(day)).isdisjoint(self.greens)
        )


@dataclass(frozen=True, slots=True)
class Period:
    """Works that belong together: days that meet or overlap, and what prepares or follows them."""

    works: tuple[Work, ...]
    days: tuple[dt.date, ...]
    """Days on which the surface is opened or covered, later dressings apart."""
    greens: tuple[str, ...]
    noticed: bool
    """Whether a golfer clearly notices it."""
    reserve_dates: tuple[dt.date, ...]
    recoveries: tuple[Recovery, ...]
    open_again: Promise
    putting_well: Promise
    """After the works of the period alone, as `fully_healed` is."""
    fully_healed: Promise
    others: tuple[OtherWork, ...] = ()
    """What else is done to its greens until they putt well, and what comes next."""

    @property
    def putts_well_after_all(self) -> Promise:
        """When its greens putt well after everything that is done to most of them until then."""
        return reduce(
            Promise.together_with, (p.putting_well for p in self._at_once), self.putting_well
        )

    @property
    def healed_after_all(self) -> Promise:
        """When nothing is left to see after everything that is done to most of them until then."""
        return reduce(
            Promise.together_with, (p.fully_healed for p in self._at_once), self.fully_healed
        )

    @property
    def _at_once(self) -> tuple[Period, ...]:
        at_once = (Meeting.CAME_BEFORE, Meeting.FOLLOWS)
        return tuple(other.period for other in self.others if other.how in at_once)

    @property
    def opening_works(self) -> tuple[Work, ...]:
        """Works that open or cover the surface."""
        return tuple(w for w in self.works if w.operation.opening is not Opening.NONE)

    def greens_on(self, day: dt.date) -> tuple[str, ...]:
        """Greens that are worked on that day by the works of the period's own days."""
        works = self.opening_works or self.works
        return tuple(
            dict.fromkeys(
                g for w in works for v in w.main_visits if v.date == day for g in v.greens
            )
        )

    @property
    def away_until(self) -> dt.date | None:
        """The last day on which one of its greens is away, where that is after the work is done.

        None where every green is back by the morning after it was worked on.
        """
        away = [
            work.dates[-1] + dt.timedelta(days=work.reopen_days - 1)
            for work in self.opening_works or self.works
            if work.while_working is not WhileWorking.OPEN
        ]
        last = max(away, default=self.days[-1])
        return last if last > self.days[-1] else None
