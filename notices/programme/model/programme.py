"""A plan, worked out: every record of it in one."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from notices.findings import Finding
from notices.operations import Weather, WhileWorking
from notices.programme.model.club import Approval, Club, Decision, Edition, Mailing, Photograph
from notices.programme.model.course import NINE, USUAL_PROFILE, Green, Hole, Profile
from notices.programme.model.figures import Figure, Measured, SandOnGreen
from notices.programme.model.fixtures import Fixture
from notices.programme.model.patterns import Pattern
from notices.programme.model.play import (
    WHOLE_DAY,
    Closure,
    DayOfPlay,
    PlayStatus,
    Restriction,
    RuleInPlay,
    ScoreDay,
    Stretch,
)
from notices.programme.model.recovery import FittedRate, GreensBack, Recovery, Season, Seen
from notices.programme.model.timetable import DayTimetable
from notices.programme.model.works import Period, Work
from notices.programme.sand_order import SandOrder


@dataclass(frozen=True)
class Programme:
    """A plan, worked out."""

    club: Club
    issued: dt.date
    greens: Mapping[str, Green]
    works: tuple[Work, ...]
    periods: tuple[Period, ...]
    closures: tuple[Closure, ...]
    fixtures: tuple[Fixture, ...]
    restrictions: tuple[Restriction, ...]
    decision: Decision | None
    approval: Approval | None
    status: Mapping[dt.date, Mapping[str, PlayStatus]]
    """Every green on every day on which at least one is not simply open."""
    figures: tuple[Figure, ...]
    recoveries: Mapping[str, tuple[Recovery, ...]]
    """For each work, when each of its greens comes back."""
    sand: tuple[SandOnGreen, ...]
    findings: tuple[Finding, ...] = field(default=())
    accepted: tuple[tuple[Finding, str, str], ...] = field(default=())
    """Findings that the club lives with: the finding, by whom, why."""
    timetables: Mapping[dt.date, DayTimetable] = field(default_factory=dict)
    """Every day with work that goes by time; empty where the plan does not say who works."""
    records: Mapping[str, FittedRate] = field(default_factory=dict)
    """By kind of work, the rate of recovery that rests on the club's own record."""
    unused_records: tuple[tuple[int, str], ...] = field(default=())
    """Records that say nothing of the rate: which, counted from 0, and why."""
    seen: Mapping[str, tuple[Seen, ...]] = field(default_factory=dict)
    """By work of this plan, what is on record of it already."""
    mailings: tuple[Mailing, ...] = field(default=())
    """What goes out and when, as the plan has it."""
    stretches: Mapping[dt.date, Mapping[str, tuple[Stretch, ...]]] = field(default_factory=dict)
    """Every green, hour by hour, on every day with work and on every day with a green away."""
    play: Mapping[dt.date, DayOfPlay] = field(default_factory=dict)
    """Every day on which a hole is closed or has a temporary green, if only for an hour."""
    weather: Mapping[Weather, tuple[str, ...]] = field(default_factory=dict)
    """What the weather must be, and for which works."""
    rules: tuple[RuleInPlay, ...] = field(default=())
    """Rules of golf that the works bring into play; the committee decides which it adopts."""
    scores: tuple[ScoreDay, ...] = field(default=())
    """Temporary greens as the handicap counts them; only in England, whose limits we know."""
    texts: Mapping[str, str] = field(default_factory=dict)
    """The club's own texts that take the place of ours, by their names."""
    sand_order: SandOrder | None = None
    """The sand to be ordered; None where nothing is dressed."""
    measured: tuple[Measured, ...] = field(default=())
    """What the club measured on its greens, for before and after."""
    replaces: Edition | None = None
    """The notice in whose place this one comes, if there is one."""
    earlier: Programme | None = field(default=None, repr=False)
    """What that notice said."""
    season: Season | None = None
    """Growth by day; None where nothing is worked on."""
    greens_back: Mapping[str, GreensBack] = field(default_factory=dict)
    """For each work, when all of its greens have come back."""
    photographs: tuple[Photograph, ...] = field(default=())
    """Pictures of the club's own."""
    profile: Profile = USUAL_PROFILE
    """What lies below the turf."""
    patterns: tuple[Pattern, ...] = field(default=())
    """The main works laid out in other ways, beside the plan's own; only where it was asked for."""

    @property
    def edition(self) -> Edition:
        """Which of the club's notices this is."""
        if self.replaces is None:
            return Edition(self.issued, draft=self.draft)
        before = self.replaces
        return Edition(self.issued, before.version + 1, before.begun, self.draft)

    @property
    def draft(self) -> bool:
        """Whether every file must say that it is a draft."""
        return self.approval is not None and self.approval.pending

    def fixtures_on(self, day: dt.date) -> tuple[Fixture, ...]:
        """Return what is played on a day."""
        return tuple(f for f in self.fixtures if f.date == day and f.is_on)

    def status_on(self, day: dt.date, green: str) -> PlayStatus:
        """Return what a green is to a golfer on a day."""
        return self.status.get(day, {}).get(green, PlayStatus.OPEN)

    def stretches_on(self, day: dt.date, green: str) -> tuple[Stretch, ...]:
        """Return what a green is to a golfer on a day, from midnight to midnight."""
        on_day = self.stretches.get(day)
        return on_day[green] if on_day else (Stretch(*WHOLE_DAY, self.status_on(day, green)),)

    def work_from(self, day: dt.date) -> float:
        """Return when work can begin on a day [min]; 0 where nobody knows."""
        timetable = self.timetables.get(day)
        return timetable.work_from if timetable else 0.0

    @cached_property
    def courses(self) -> tuple[str, ...]:
        """Names of the courses that have holes, in the order of the plan; none where none is named."""
        return tuple(dict.fromkeys(g.course for g in self.greens.values() if g.holes and g.course))

    @cached_property
    def holes(self) -> tuple[Hole, ...]:
        """Every hole that is played to a green, course by course and by number."""
        order = {course: place for place, course in enumerate(self.courses)}
        found = [(green.course, hole) for green in self.greens.values() for hole in green.holes]
        return tuple(sorted(found, key=lambda hole: (order.get(hole[0], -1), hole[1])))

    @cached_property
    def nines(self) -> tuple[tuple[Hole, ...], ...]:
        """Holes 1 to 9 and 10 to 18 of each course, as far as the plan has them."""
        found: dict[tuple[str, int], list[Hole]] = {}
        for course, number in self.holes:
            found.setdefault((course, (number - 1) // NINE), []).append((course, number))
        return tuple(tuple(holes) for holes in found.values())

    def holes_closed_on(self, day: dt.date) -> tuple[Hole, ...]:
        """Return the holes that cannot be played on a day; a closed double green closes two.

        A hole with a temporary green is played.
        """
        closed = {
            (green.course, hole)
            for key, green in self.greens.items()
            if self.status_on(day, key) is PlayStatus.CLOSED
            for hole in green.holes
        }
        closed |= set(self.holes_shut_on(day))
        return tuple(hole for hole in self.holes if hole in closed)

    def holes_shut_on(self, day: dt.date) -> tuple[Hole, ...]:
        """Return the holes that the club closes itself, greens or no greens."""
        return tuple(
            hole for shut in self.closures if shut.closes_holes_on(day) for hole in shut.holes
        )

    def kept_on_temporary(self, work: Work) -> tuple[str, ...]:
        """Return the greens that a work would close, and that have a temporary green all the while."""
        if work.while_working is not WhileWorking.CLOSED:
            return ()
        return tuple(
            green
            for green in work.greens
            if all(
                self.status_on(day, green) is PlayStatus.TEMPORARY for day in work.days_on(green)
            )
        )

    def is_filled(self, work: str) -> bool:
        """Whether a later dressing fills the holes of this work."""
        return any(work in need.fills for need in self.sand)

    def fills_holes(self, work: str) -> bool:
        """Whether this dressing fills holes."""
        return any(need.work == work and need.fills for need in self.sand)

    def figure(self, quantity: str, work: str, green: str = "all") -> Figure | None:
        """Return one figure, or None where the work has none of that kind."""
        return self._index.get((quantity, work, green))

    @cached_property
    def _index(self) -> dict[tuple[str, str, str], Figure]:
        return {(f.quantity, f.work, f.green): f for f in self.figures}
