"""What a green, a hole and a score are to a golfer, from hour to hour."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass

from notices.programme.model.course import Hole
from notices.programme.model.timetable import clock


class PlayStatus(enum.Enum):
    """What a green is to a golfer, from best to worst; of a day the worst hour counts."""

    OPEN = "open"
    RECOVERING = "open and recovering"
    TEMPORARY = "temporary green"
    CLOSED = "closed"

    def __init__(self, _words: str) -> None:
        self.rank = len(type(self).__members__)
        """Place in this list: the higher is the worse for a golfer."""


WHOLE_DAY = (0.0, 1440.0)
"""From midnight to midnight [min]."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of one day in which a green is one thing to a golfer.

    The stretches of a green follow one another from midnight to midnight; times are minutes from
    midnight, local time.
    """

    begins: float
    ends: float
    status: PlayStatus
    because: tuple[str, ...] = ()
    """Works and closures that bring it, by their identities."""
    passing: bool = False
    """Whether the green stays in play that day, and golfers only wait for a machine to leave it."""
    hours_known: bool = True
    """False where the green comes back the same day, and the plan does not tell the hours."""

    @property
    def all_day(self) -> bool:
        """Whether it lasts the whole day."""
        return (self.begins, self.ends) == WHOLE_DAY

    @property
    def start(self) -> str:
        """When it begins, such as "08:10"."""
        return clock(self.begins)

    @property
    def finish(self) -> str:
        """When it ends, such as "10:40"."""
        return clock(self.ends)


@dataclass(frozen=True, slots=True)
class Start:
    """A tee from which a round may begin, with the holes that follow one another from there."""

    hole: Hole
    holes: tuple[Hole, ...]


@dataclass(frozen=True, slots=True)
class HolesInPlay:
    """Which holes are played at a time of the day, and where a starter may send people out.

    Times are minutes from midnight, to the half hour. A hole for which golfers only wait until a
    machine leaves its green is in play.
    """

    begins: float
    ends: float
    open: tuple[Hole, ...]
    """To their own greens, recovering or not."""
    temporary: tuple[Hole, ...]
    """To temporary greens."""
    closed: tuple[Hole, ...]
    part_of_day: tuple[Hole, ...]
    """Those of the closed ones that come back the same day, and nothing tells the hours."""
    starts: tuple[Start, ...]
    """Tees with at least nine holes in play from there on, by number; none where there are none."""

    @property
    def in_play(self) -> frozenset[Hole]:
        """Every hole that can be played."""
        return frozenset(self.open) | frozenset(self.temporary)


@dataclass(frozen=True, slots=True)
class DayOfPlay:
    """The holes of one day on which not all are played to their own greens."""

    date: dt.date
    all_day: HolesInPlay
    """What holds from morning to evening: a hole that is closed for an hour is not among the open."""
    by_hour: tuple[HolesInPlay, ...]
    """From midnight to midnight."""

    @property
    def closed_throughout(self) -> tuple[Hole, ...]:
        """Holes that are closed from morning to evening."""
        return tuple(
            hole
            for hole in self.all_day.closed
            if hole not in self.all_day.part_of_day
            and all(hole in hours.closed for hours in self.by_hour)
        )

    @property
    def first_start(self) -> HolesInPlay | None:
        """When at least nine holes in a row are first in play; None where they never are."""
        return next((hours for hours in self.by_hour if hours.starts), None)


class RuleOfGolf(enum.Enum):
    """A rule of golf, or a local rule that a committee may adopt, that works on greens call up."""

    RELIEF_FROM_HOLES = "Model Local Rule E-4"
    LOOSE_SAND = "Rule 13.1c(1)"
    HOLES_NOT_REPAIRED = "Rule 13.1c(2)"
    TEMPORARY_GREENS = "Model Local Rule D-2"
    WRONG_GREEN = "Rule 13.1f"


@dataclass(frozen=True, slots=True)
class RuleInPlay:
    """A rule, on the days and greens on which it matters."""

    rule: RuleOfGolf
    dates: tuple[dt.date, ...]
    greens: tuple[str, ...]
    works: tuple[str, ...]
    """Works that bring it into play; none where closures alone do."""
    source: tuple[str, ...]
    """Keys of the bibliography in notices.references."""


@dataclass(frozen=True, slots=True)
class ScoreDay:
    """The temporary greens that a score meets on one day, and how many a handicap bears."""

    date: dt.date
    holes: tuple[Hole, ...]
    """Those of the round: a course of eighteen, or a nine."""
    temporary: tuple[Hole, ...]
    limit: int
    preferred_lies: bool
    """Whether preferred lies leave a score counting on that day of the year."""
    source: tuple[str, ...]

    @property
    def within_limit(self) -> bool:
        """Whether a score can still count, as far as temporary greens go."""
        return len(self.temporary) <= self.limit


@dataclass(frozen=True, slots=True)
class Closure:
    """A closure that the club laid down itself."""

    id: str
    what: str
    greens: tuple[str, ...]
    """Greens out of play with it; empty when something else is closed."""
    whole_course: bool
    dates: tuple[dt.date, ...]
    instead: str
    reason: str
    plan_index: int
    part: str = ""
    """course, greens, holes or what is closed of holes, such as tees; empty for free words."""
    holes: tuple[Hole, ...] = ()
    """Holes named."""
    courses: tuple[str, ...] = ()
    """Courses closed as a whole, where they have names."""
    temporary: str = ""
    """Where the temporary greens lie and how good they are, in the club's words."""

    @property
    def has_temporary(self) -> bool:
        """Whether golfers play to a temporary green, or to several, in place of what is closed."""
        return "temporary green" in self.instead.lower()

    def closes_holes_on(self, day: dt.date) -> bool:
        """Whether it takes its holes out of play that day, be their greens as they may."""
        away = self.part in ("holes", "course") and not self.has_temporary
        return away and day in self.dates


@dataclass(frozen=True, slots=True)
class Restriction:
    """Something that golfers go without for a while."""

    what: str
    dates: tuple[dt.date, ...]
    exception: str
    ask: str
