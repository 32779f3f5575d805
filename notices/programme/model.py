"""The programme: everything that follows from a plan, in records that nothing changes.

Documents choose from these records and word them; no figure is worked out later.
"""

from __future__ import annotations

import datetime as dt
import enum
import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from notices.agronomy.recovery import DateRange, Range
from notices.agronomy.sand import on_surface_mm
from notices.findings import Finding
from notices.operations import Opening, Operation, SettingValue, Weather, WhileWorking
from notices.plan.moments import Moment as Moment  # noqa: PLC0414, documents have it from here
from notices.plan.moments import Sending
from notices.programme.sand_order import SandOrder


@dataclass(frozen=True, slots=True)
class Green:
    """One green of the course, or the putting green."""

    key: str
    """Its number or name, as the plan has it: "7", "2/16", "Oak 7", "Putting green"."""
    number: int | None
    """Number of its hole, the lowest where it has several."""
    area_m2: float
    area_given: bool
    slug: str = ""
    """How figures name it: small letters and hyphens, like that of no other green."""
    course: str = ""
    """Name of the course that it belongs to, where the plan names one."""
    shared_with: tuple[int, ...] = ()
    """Numbers of further holes that are played to it: a double green has one."""

    @property
    def holes(self) -> tuple[int, ...]:
        """Numbers of the holes that are played to it; none for a putting green."""
        return () if self.number is None else (self.number, *self.shared_with)

    @property
    def name(self) -> str:
        """Its name where it has no number: the key without the course."""
        return "" if self.number is not None else self.key.removeprefix(f"{self.course} ")


Hole = tuple[str, int]
"""A course by its name, empty where it has none, and the number of a hole."""


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


class PlayStatus(enum.Enum):
    """What a green is to a golfer, from best to worst; of a day the worst hour counts."""

    OPEN = "open"
    RECOVERING = "open and recovering"
    TEMPORARY = "temporary green"
    CLOSED = "closed"

    def __init__(self, _words: str) -> None:
        self.rank = len(type(self).__members__)
        """Place in this list: the higher is the worse for a golfer."""


NINE = 9
"""Holes of a short round, and of half a course."""

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
class Recovery:
    """When one green comes back, after one work or after all works of a period."""

    green: str
    done: dt.date
    back_in_play: DateRange
    putting_smoothly: DateRange
    fully_healed: DateRange
    growth_stops: dt.date | None = None
    """First day without growth before all has healed, if there is one."""
    growth_returns: dt.date | None = None
    grows_to_putt: bool = False
    """Whether it is grass, and not sand alone, that makes it putt smoothly."""
    grows_to_heal: bool = False
    """Whether grass must grow before all has healed."""

    def on(self, green: str) -> Recovery:
        """Return the same of another green that was treated alike."""
        return Recovery(
            green,
            self.done,
            self.back_in_play,
            self.putting_smoothly,
            self.fully_healed,
            self.growth_stops,
            self.growth_returns,
            self.grows_to_putt,
            self.grows_to_heal,
        )


@dataclass(frozen=True, slots=True)
class GreensBack:
    """When all greens of one work have come back: the last of them counts."""

    work: str
    back_in_play: DateRange
    putting_smoothly: DateRange
    fully_healed: DateRange


@dataclass(frozen=True, slots=True)
class RestOfGrowth:
    """A stretch in which grass does not grow to speak of."""

    stops: dt.date | None
    """First day of it; None where it has begun before the season that is looked at."""
    returns: dt.date | None
    """First day on which it grows again; None where that is not within a year."""


@dataclass(frozen=True, slots=True)
class Season:
    """How grass grows from shortly before the first work until all has healed at worst."""

    growth: Mapping[dt.date, float]
    """Growth potential of every day, 0 to 1, in a usual year."""
    rests: tuple[RestOfGrowth, ...]
    rests_below: float
    """Growth potential below which grass is said to rest."""
    default_used: bool
    """Whether temperatures, optimum or kind of grass are not the club's own."""


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
    fully_healed: Promise

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

    def closes_holes_on(self, day: dt.date) -> bool:
        """Whether it takes its holes out of play that day, be their greens as they may."""
        away = self.part in ("holes", "course") and "temporary green" not in self.instead.lower()
        return away and day in self.dates


AWAY_MATCH = "away match"
"""Kind of fixture that is played elsewhere."""


class Decided(enum.Enum):
    """What a club has decided about a fixture that meets the work."""

    PLAY_ON = "play on"
    DOES_NOT_COUNT = "does not count"
    MOVED = "moved"
    CANCELLED = "cancelled"


@dataclass(frozen=True, slots=True)
class Fixture:
    """A date of play, and what the greens are like on it."""

    name: str
    date: dt.date
    """The day on which it is played, or was to be where it is not."""
    kind: str
    closed_greens: tuple[str, ...] = ()
    recovering_greens: tuple[str, ...] = ()
    plan_index: int = 0
    course: str = ""
    """Course that it is played on, where the plan names one."""
    decided: Decided | None = None
    moved_from: dt.date | None = None
    """Its first day, where it is moved to a new one."""

    @property
    def is_on(self) -> bool:
        """Whether it is played on its date: not where it is called off, or moved to no day yet."""
        if self.decided is Decided.MOVED:
            return self.moved_from is not None
        return self.decided is not Decided.CANCELLED

    def meets(self, green: Green) -> bool:
        """Whether it is played here and to this green, as far as the plan says where."""
        here = self.is_on and self.kind != AWAY_MATCH
        return here and (not self.course or green.course.casefold() == self.course.casefold())

    @property
    def goes_ahead(self) -> bool:
        """Whether the club has decided to play it as it is."""
        return self.decided in (Decided.PLAY_ON, Decided.DOES_NOT_COUNT)


class Subsoil(enum.Enum):
    """What a green stands on."""

    CLAY = "clay"
    SAND = "sand"
    SOIL = "soil"


@dataclass(frozen=True, slots=True)
class Profile:
    """What lies below the turf: as measured or stated where the plan says so, else as is usual."""

    subsoil: Subsoil
    thatch_mm: float
    """Depth of its lower edge; the greatest where several greens were measured [mm]."""
    thatch_measured: tuple[str, ...]
    """Greens on which it was measured; none where the depth is a typical one."""
    root_zone_mm: float | None
    """Depth to which the root zone typically goes; None where sand goes right down [mm]."""
    drains: str = ""
    """Drain or ditch of the greens, in the club's words; empty where the plan names none."""


USUAL_PROFILE = Profile(Subsoil.SOIL, thatch_mm=13.0, thatch_measured=(), root_zone_mm=150.0)
"""A green of which nothing is known (common practice, no published source)."""


@dataclass(frozen=True, slots=True)
class Restriction:
    """Something that golfers go without for a while."""

    what: str
    dates: tuple[dt.date, ...]
    exception: str
    ask: str


@dataclass(frozen=True, slots=True)
class Decision:
    """Who decides on the day, and where golfers hear of it."""

    by: str
    when: str
    confirmed: dt.time | None
    where: str


class Figure(NamedTuple):
    """One number, traceable: how it was worked out, from what, on whose authority.

    ``value`` is unrounded, or None where there is no such day in the two years looked at.
    There are thousands, and a named tuple is made in a third of the time of a frozen dataclass.
    """

    id: str
    quantity: str
    work: str
    """A work, or "all" for the whole plan."""
    green: str
    """A green, or "all"."""
    value: float | None
    unit: str
    formula: str
    source: tuple[str, ...]
    """Keys of the bibliography in notices.references."""
    inputs: Mapping[str, float | int | str | None]
    default_used: bool


@dataclass(frozen=True, slots=True)
class SandOnGreen:
    """Sand of one work on one green, all its dressings together."""

    work: str
    green: str
    depth_mm: float
    """Volume per area, without waste [L/m² = mm]."""
    shares: tuple[float, ...]
    """Part of the depth that each dressing brings; more than 1 in all where each is a full rate."""
    fills: tuple[str, ...]
    """Works whose holes it fills; empty where it only covers the surface."""
    open_mm: float = 0.0
    """Volume of the holes that stand open on the green when the work comes to it [L/m² = mm]."""

    @property
    def brought_mm(self) -> float:
        """Depth of all dressings together [mm]."""
        return self.depth_mm * sum(self.shares)

    def depth_of(self, dressing: int) -> float:
        """Depth of one dressing, counted from 1 [mm]."""
        return self.depth_mm * self.shares[dressing - 1]

    def on_surface_of(self, dressing: int) -> float:
        """What one dressing leaves on the surface, beyond what open holes still take [mm]."""
        before = self.depth_mm * sum(self.shares[: dressing - 1])
        return on_surface_mm(self.depth_of(dressing), max(0.0, self.open_mm - before))


@dataclass(frozen=True, slots=True)
class SeasonOnRecord:
    """One time that the club's own greens came back, and the growth that it took."""

    done: dt.date
    seen: dt.date
    what: str
    """What was seen on that day: "healed" or "putting smoothly"."""
    opening_mm: float
    """Width that had closed by then; for slits, that of a hole that takes as long."""
    growth_days: float
    rate_mm_per_day: float
    forecast: DateRange
    """What the book would have said on the day of the work."""


@dataclass(frozen=True, slots=True)
class FittedRate:
    """How fast openings of one kind of work close at this club, by its own record."""

    operation: str
    rates: Range
    """Sideways growth of an edge at growth potential 1 [mm/day]."""
    book: Range
    """What it would be without a record [mm/day]."""
    records: tuple[SeasonOnRecord, ...]

    @property
    def seasons(self) -> int:
        """In how many years the work was watched."""
        return len({record.done.year for record in self.records})


@dataclass(frozen=True, slots=True)
class Seen:
    """What the club has recorded of one of the works of this plan."""

    work: str
    greens: tuple[str, ...]
    done: dt.date
    putting_smoothly: dt.date | None
    healed: dt.date | None


@dataclass(frozen=True, slots=True)
class Mailing:
    """A document that goes out on an occasion."""

    document: str
    moment: Moment
    send: Sending


@dataclass(frozen=True, slots=True)
class Reading:
    """One value that the club measured."""

    date: dt.date
    value: float


@dataclass(frozen=True, slots=True)
class Measured:
    """What the club measured of one thing on one green, in order of dates."""

    green: str
    what: str
    """depth of thatch, organic matter, firmness or green speed."""
    unit: str
    readings: tuple[Reading, ...]
    works_between: tuple[str, ...]
    """Works that opened or covered the green from the first date until before the last."""

    @property
    def by_date(self) -> Mapping[dt.date, tuple[float, ...]]:
        """What was measured on each day."""
        found: dict[dt.date, tuple[float, ...]] = {}
        for reading in self.readings:
            found[reading.date] = (*found.get(reading.date, ()), reading.value)
        return found


class Limit(enum.Enum):
    """What decides when a day's work ends."""

    MACHINE = "a machine"
    PEOPLE = "people"
    DEW = "dew"
    DAYLIGHT = "daylight"


@dataclass(frozen=True, slots=True)
class Task:
    """One thing done on, or for, one green on one day; times are minutes from midnight."""

    work: str
    green: str
    name: str
    """The operation, or the work by hand that goes with it."""
    ordinal: int
    """1 for the work itself; a second dressing is 2, and so on."""
    people: int
    """How many it takes."""
    start_minutes: float
    finish_minutes: float

    @property
    def start(self) -> str:
        """When it begins, such as "08:10"."""
        return clock(self.start_minutes)

    @property
    def finish(self) -> str:
        """When it ends, such as "10:40"."""
        return clock(self.finish_minutes)


@dataclass(frozen=True, slots=True)
class DayTimetable:
    """The works of one day from task to task; times are minutes from midnight, local time."""

    date: dt.date
    tasks: tuple[Task, ...]
    """In the order in which they start."""
    people: int
    """Who is there for them: the club's own and hired, less those kept back."""
    begins: float
    """Begin of the working day."""
    ends: float
    """End of the working day."""
    light_from: float | None
    """Civil dawn, where it is known and there is one."""
    light_until: float | None
    """Civil dusk, likewise; after midnight more than 1440."""
    light: str
    """Why the working day is not cut to the light, or sun and twilight are not as usual."""
    rest: tuple[float, float]
    """From when to when everybody rests."""
    dew_off: float | None
    """From when sand may be spread, where some is."""
    limited_by: Limit
    """What decides when it ends."""
    busiest: str
    """Task with the most time that day, of those that take turns at one machine or gang."""
    busiest_minutes: float
    default_used: bool
    """Whether hours, rest, dew, people or paces are not all the club's own."""

    @property
    def work_from(self) -> float:
        """When work can begin: with the working day, and not before light."""
        return self.begins if self.light_from is None else max(self.begins, self.light_from)

    @property
    def work_until(self) -> float:
        """When work must end: with the working day, and not after light."""
        return self.ends if self.light_until is None else min(self.ends, self.light_until)

    @property
    def first_start(self) -> float:
        """When the first task begins."""
        return min(task.start_minutes for task in self.tasks)

    @property
    def last_finish(self) -> float:
        """When the last task ends."""
        return max(task.finish_minutes for task in self.tasks)

    @property
    def too_long_by(self) -> float:
        """Minutes by which the last task ends too late; 0 where all fits."""
        return max(0.0, self.last_finish - self.work_until)

    def minutes_at(self, task: Task) -> float:
        """Return how long people are at a task: the rest in the middle of it is none."""
        begins, ends = self.rest
        rest = min(task.finish_minutes, ends) - max(task.start_minutes, begins)
        return task.finish_minutes - task.start_minutes - max(0.0, rest)

    @property
    def hours_of_people(self) -> float:
        """What the works of the day take [h]."""
        return sum(task.people * self.minutes_at(task) for task in self.tasks) / 60

    @property
    def hours_there(self) -> float:
        """What its people could give between light and light, without the rest [h]."""
        begins, ends = self.rest
        rest = max(0.0, min(ends, self.work_until) - max(begins, self.work_from))
        return self.people * max(0.0, self.work_until - self.work_from - rest) / 60

    def on(self, green: str) -> tuple[Task, ...]:
        """Return what is done on, or for, one green."""
        return tuple(task for task in self.tasks if task.green == green)


def clock(minutes: float) -> str:
    """Write minutes from midnight as a time of day: 490 is "08:10".

    Hours run on after midnight, as in a railway's timetable: 1510 is "25:10".
    """
    whole = math.floor(minutes + 0.5)
    return f"{whole // 60:02}:{whole % 60:02}"


class Layout(enum.Enum):
    """How the same works could be spread over days, from most golf lost at once to least."""

    ALL_AT_ONCE = "all greens at once"
    NINE_A_DAY = "nine a day"
    AS_PLANNED = "as planned"
    SPREAD = "spread over weeks"


@dataclass(frozen=True, slots=True)
class Pattern:
    """The main works of a plan under one layout: what it costs golfers, team and greens.

    Greens with a hole count; other works and closures of the plan are left out of account.
    """

    layout: Layout
    works: tuple[str, ...]
    """The works that are laid out, by their identities."""
    days: tuple[tuple[dt.date, int], ...]
    """Each day on which the surface is opened or covered, with how many greens."""
    green_days_closed: int
    """Greens closed, summed over the days."""
    green_days_temporary: int
    """Greens with a temporary one, summed over the days."""
    days_under_nine: int | None
    """Days with fewer than nine holes to their own greens from morning to evening; None on a
    shorter course."""
    days_under_eighteen: int | None
    """Days with fewer than eighteen; None on a shorter course."""
    mixed_days: int
    """Days on which a round on one course meets greens that recover and greens still to be done."""
    person_hours: float | None
    """Hours of people, later dressings included; None where the plan does not say who works."""
    hire_days: int | None
    """Days on which something or somebody hired is there; None where nothing is hired."""
    too_long: tuple[dt.date, ...]
    """Days whose work does not fit into the working day and its light."""
    longest_minutes_over: float
    """By how much the worst of them is too long [min]."""
    open_again: Promise
    putting_well: Promise
    fully_healed: Promise
    fixtures_on_closed: tuple[str, ...]
    """Fixtures that meet greens out of play."""
    fixtures_in_recovery: tuple[str, ...]
    """Fixtures that come before greens putt well."""

    @property
    def dates(self) -> tuple[dt.date, ...]:
        """The days of work."""
        return tuple(day for day, _ in self.days)

    @property
    def fits(self) -> bool | None:
        """Whether every day's work fits; None where the plan does not say who works."""
        return None if self.person_hours is None else not self.too_long


@dataclass(frozen=True, slots=True)
class Sender:
    """Who signs the notices."""

    role: str
    """Empty where the plan names none; the language then has a word for it."""
    name: str
    email: str
    placeholder: bool
    """Whether the address was made up because the plan has none."""


@dataclass(frozen=True, slots=True)
class Club:
    """Who the notices come from."""

    name: str
    slug: str
    sender: Sender
    reply_to: str
    website: str
    contact: str
    language: str
    units: str
    answers: str = ""
    """By when a question is answered, in the club's words."""
    sign_off: str = ""
    """Last line of what is sent, in the club's words; empty for name, post and club."""
    colour: str = ""
    """Its own colour, such as "#1b4d3e"; empty for ours."""
    boards: str = ""
    """Where notices hang, in the club's words."""
    southern: bool = False
    """Whether it lies south of the equator, so that its seasons are half a year turned."""
    country: str = ""
    """ISO 3166 code, such as GB-ENG; empty where the plan names none."""


@dataclass(frozen=True, slots=True)
class Approval:
    """Who approved the work, if that is known."""

    pending: bool
    by: str
    date: dt.date | None
    reference: str


@dataclass(frozen=True, slots=True)
class Photograph:
    """A picture of the club's own."""

    data: str = field(repr=False)
    """A JPEG in a data URL (RFC 2397)."""
    shows: str
    caption: str
    works: tuple[str, ...]
    """Works that it belongs to; none where it belongs to all, or to nothing that is planned."""


@dataclass(frozen=True, slots=True)
class Edition:
    """One of the notices that a club issues one after the other, each in place of the last."""

    issued: dt.date
    version: int = 1
    """1 for the first; each that replaces another has the next."""
    first_issued: dt.date | None = None
    """When the first of them was issued; None where it is the first itself."""

    @property
    def begun(self) -> dt.date:
        """When golfers first heard of the work."""
        return self.first_issued or self.issued

    @property
    def number(self) -> str:
        """What is printed on every document, and by which the pack is found: "20260914-1"."""
        return f"{self.issued:%Y%m%d}-{self.version}"


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
    """Growth by day; None where nothing is worked on, and in an outline."""
    greens_back: Mapping[str, GreensBack] = field(default_factory=dict)
    """For each work, when all of its greens have come back; empty in an outline."""
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
            return Edition(self.issued)
        return Edition(self.issued, self.replaces.version + 1, self.replaces.begun)

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
