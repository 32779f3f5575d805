"""The working day: who does what, where and when."""

from __future__ import annotations

import datetime as dt
import enum
import itertools
import math
from dataclasses import dataclass

HALF_HOUR = 30.0
"""What people are told times to [min]."""

FIVE = 5.0
"""What the team is told times to [min]."""

_A_MOMENT = 1e-6
"""A sum of minutes may miss the half hour by so much [min]."""


class Limit(enum.Enum):
    """What decides when a day's work ends."""

    MACHINE = "a machine"
    PEOPLE = "people"
    DEW = "dew"
    DRYING = "drying"
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


SHORT_WAIT = 5.0
"""Less than that is no wait but the way to the next green [min]."""


@dataclass(frozen=True, slots=True)
class DayTimetable:
    """The works of one day from task to task; times are minutes from midnight, local time."""

    date: dt.date
    tasks: tuple[Task, ...]
    """In the order in which they start."""
    people: int
    """Who is there for them: the club's own and hired, less those kept back."""
    kept_back: int
    """Who does the routine work on the course meanwhile."""
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
    drying: float | None
    """How long sand dries before the green is gone on again, where it is that day [min]."""
    limited_by: Limit
    """What decides when it ends."""
    busiest: str
    """Task with the most time that day, of those that take turns at one machine or gang."""
    busiest_minutes: float
    default_used: bool
    """Whether hours, rest, dew, drying, people or paces are not all the club's own."""

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
    def at_work(self) -> tuple[tuple[float, float], ...]:
        """From when to when anybody is at a task, without the rest; between, all wait."""
        found: list[tuple[float, float]] = []
        for task in sorted(self.tasks, key=lambda task: task.start_minutes):
            begin, end = task.start_minutes, task.finish_minutes
            if found and begin - found[-1][1] < SHORT_WAIT:
                begin, end = found[-1][0], max(end, found.pop()[1])
            found.append((begin, end))
        rests, goes_on = self.rest
        parts = [
            part
            for begin, end in found
            for part in ((begin, min(end, rests)), (max(begin, goes_on), end))
        ]
        return tuple((begin, end) for begin, end in parts if end > begin)

    @property
    def waits(self) -> tuple[tuple[float, float], ...]:
        """From when to when nobody is at a task, though the work goes on later."""
        rests, goes_on = self.rest
        return tuple(
            (left, back)
            for (_, left), (back, _) in itertools.pairwise(self.at_work)
            if (left, back) != (rests, goes_on)
        )

    @property
    def too_long_by(self) -> float:
        """Minutes by which the last task ends too late; 0 where all fits."""
        return max(0.0, self.last_finish - self.work_until)

    @property
    def told_start(self) -> float:
        """When the first task begins, as people are told it."""
        return told_from(self.first_start, self.work_from)

    @property
    def told_finish(self) -> float:
        """When the last task ends, as people are told it."""
        return told_until(self.last_finish)

    @property
    def busy_at_most(self) -> int:
        """How many of the people are at the tasks when most of them are."""
        at_once = (
            sum(
                t.people
                for t in self.tasks
                if t.start_minutes <= task.start_minutes < t.finish_minutes
            )
            for task in self.tasks
        )
        return min(self.people, max(at_once, default=0))

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


def told_from(minutes: float, earliest: float = 0.0) -> float:
    """Return the half hour before a beginning, but no time at which nobody is at work yet.

    Parameters
    ----------
    minutes
        When it begins.
    earliest
        When work can begin that day; what begins in the half hour after it is told to the minute,
        rounded up so that it is never told for the dark.
    """
    half_hour = HALF_HOUR * math.floor((minutes + _A_MOMENT) / HALF_HOUR)
    return max(half_hour, float(math.ceil(min(earliest, minutes) - _A_MOMENT)))


def told_until(minutes: float) -> float:
    """Return the half hour after an end."""
    return HALF_HOUR * math.ceil((minutes - _A_MOMENT) / HALF_HOUR)


def to_five(minutes: float, earliest: float = 0.0) -> float:
    """Return a time to the nearest five minutes, as the team reads it: one task ends as the next begins.

    Parameters
    ----------
    minutes
        When a task begins or ends.
    earliest
        When work can begin that day: nobody is sent out before it, in the dark.
    """
    nearest = FIVE * math.floor(minutes / FIVE + 0.5)
    return max(nearest, FIVE * math.ceil((earliest - _A_MOMENT) / FIVE))


def clock(minutes: float) -> str:
    """Write minutes from midnight as a time of day: 490 is "08:10".

    Hours run on after midnight, as in a railway's timetable: 1510 is "25:10".
    """
    whole = math.floor(minutes + 0.5)
    return f"{whole // 60:02}:{whole % 60:02}"
