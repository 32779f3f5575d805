"""Axes that turn days and amounts into coordinates, with their marks."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator
from dataclasses import dataclass

from notices.drawings.chart import line
from notices.drawings.lettering import width_of
from notices.drawings.palette import LINE, QUIET
from notices.drawings.svg import text
from notices.wording.words import Words

STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)
"""Steps between the marks of an axis, to be multiplied by a power of ten."""

SIZE = 12.0


@dataclass(frozen=True, slots=True)
class Amounts:
    """An axis of amounts, by default from 0; its end may be the smaller coordinate."""

    highest: float
    begin: float
    end: float
    lowest: float = 0.0

    def at(self, amount: float) -> float:
        """Return the coordinate of an amount; one beyond the axis is moved to its end."""
        inside = min(self.highest, max(self.lowest, amount))
        share = (inside - self.lowest) / (self.highest - self.lowest)
        return self.begin + (self.end - self.begin) * share

    @classmethod
    def up_to(cls, most: float, begin: float, end: float, marks: int = 4) -> Amounts:
        """Return an axis that ends at the first mark not below ``most``."""
        step = step_for(most, marks)
        return cls(step * math.ceil(most / step - 1e-9), begin, end)


def step_for(most: float, marks: int) -> float:
    """Return the step between marks that gives an axis about ``marks`` of them."""
    rough = most / marks
    power = 10.0 ** math.floor(math.log10(rough))
    return power * next(step for step in STEPS if step * power >= rough - 1e-9)


def marks_to(most: float, marks: int = 4) -> list[float]:
    """Return the marks of an axis from 0 to the first not below ``most``."""
    step = step_for(most, marks)
    return [step * number for number in range(math.ceil(most / step - 1e-9) + 1)]


@dataclass(frozen=True, slots=True)
class Days:
    """An axis of days."""

    first: dt.date
    last: dt.date
    left: float
    right: float

    @property
    def wide(self) -> float:
        """Width of one day."""
        return (self.right - self.left) / ((self.last - self.first).days + 1)

    def begin(self, day: dt.date) -> float:
        """Return the x at which a day begins; a day off the axis is moved to its end."""
        return min(self.right, max(self.left, self.left + (day - self.first).days * self.wide))

    def noon(self, day: dt.date) -> float:
        """Return the x of the middle of a day."""
        return min(self.right, max(self.left, self.begin(day) + self.wide / 2))

    def months(self) -> Iterator[tuple[dt.date, float, float]]:
        """Yield the first day of each month on the axis, and the x where the month begins and ends."""
        day = self.first
        while day <= self.last:
            after = (day.replace(day=1) + dt.timedelta(days=32)).replace(day=1)
            yield day, self.begin(day), self.begin(min(after, self.last + dt.timedelta(days=1)))
            day = after


def month_axis(words: Words, days: Days, base: float, foot: float) -> Iterator[str]:
    """Yield names of months on a baseline, years below them, and fine lines down to ``foot``."""
    months = list(days.months())
    wide = min((right - left for _, left, right in months[1:-1]), default=days.right - days.left)
    every = 1 if wide >= 30 else 2 if wide >= 16 else 3 if wide >= 10 else 6
    ends = -1.0
    for place, (day, left, _) in enumerate(months):
        if place:
            yield line(left, base - 11, left, foot)
        name = short_month(words, day)
        begin, end = left + 3, left + 3 + width_of(name, SIZE)
        # A first month of a few days must not crowd out the name of the next.
        fits = place > 0 or len(months) == 1 or end + 4 <= months[1][1] + 3
        if place % every == 0 and fits and begin > ends and end <= days.right:
            yield text(name, (begin, base), SIZE, fill=QUIET)
            ends = end + 2
    years = -1.0
    for place, (day, left, _) in enumerate(months):
        named = place == 0 or day.month == 1
        wide = width_of(str(day.year), SIZE, bold=True)
        if named and left + 3 > years and left + 3 + wide <= days.right:
            yield text(str(day.year), (left + 3, base + 14), SIZE, bold=True, fill=QUIET)
            years = left + 3 + wide + 6


def short_month(words: Words, day: dt.date) -> str:
    """Return the name of a month in a few letters."""
    return words.dates.month_day(day).replace(str(day.day), "").strip()


def level(left: float, right: float, y: float) -> str:
    """Draw a fine horizontal line at a mark."""
    return line(left, y, right, y, stroke=LINE)
