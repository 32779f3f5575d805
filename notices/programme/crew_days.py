"""The working days as a committee reads them: one after the other, like ones told together."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from notices.calendar_days import ONE_DAY
from notices.programme.model import DayTimetable, Programme
from notices.programme.rounds import only_again_on


@dataclass(frozen=True, slots=True)
class CrewDays:
    """One working day, or several in a row on which the same is done again."""

    days: tuple[DayTimetable, ...]
    works: tuple[str, ...]
    """By identity, in the order in which they start."""
    again: bool
    """Whether nothing is done but later dressings, and what goes along with them."""

    @property
    def dates(self) -> tuple[dt.date, ...]:
        """The days."""
        return tuple(day.date for day in self.days)

    @property
    def told_start(self) -> float:
        """When the first task of the longest day begins, as people are told it [min]."""
        return self.longest.told_start

    @property
    def told_finish(self) -> float:
        """When the last task of the longest day ends, as people are told it [min]."""
        return self.longest.told_finish

    @property
    def hours_of_people(self) -> float:
        """What the works take, all days together [h]."""
        return sum(day.hours_of_people for day in self.days)

    @property
    def hours_there(self) -> float:
        """What the people could give, all days together [h]."""
        return sum(day.hours_there for day in self.days)

    @property
    def longest(self) -> DayTimetable:
        """The day on which the last task ends latest."""
        return max(self.days, key=lambda day: day.last_finish)

    @property
    def too_long_by(self) -> float:
        """Minutes by which the longest day is too long; 0 where all fits."""
        return max(day.too_long_by for day in self.days)

    @property
    def greens(self) -> tuple[str, ...]:
        """What is worked on, in the order in which it is."""
        return tuple(dict.fromkeys(task.green for day in self.days for task in day.tasks))


def crew_days(programme: Programme) -> tuple[CrewDays, ...]:
    """Return the working days; days of later dressings that follow one another are one entry."""
    found: list[CrewDays] = []
    for day in programme.timetables.values():
        one = _of(programme, day)
        last = found[-1] if found else None
        if last and one.again and _follows(last, one):
            found[-1] = CrewDays((*last.days, day), last.works, again=True)
        else:
            found.append(one)
    return tuple(found)


def _of(programme: Programme, day: DayTimetable) -> CrewDays:
    return CrewDays(
        (day,),
        tuple(dict.fromkeys(task.work for task in day.tasks)),
        again=only_again_on(programme, day.date),
    )


def _follows(last: CrewDays, one: CrewDays) -> bool:
    return (
        last.again
        and last.works == one.works
        and one.dates[0] - last.dates[-1] == ONE_DAY
        and _ordinals(last.days) == _ordinals(one.days)
    )


def _ordinals(days: Sequence[DayTimetable]) -> set[int]:
    return {task.ordinal for day in days for task in day.tasks}
