"""The sand to be ordered: in all, by day, and by when it must lie there."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SandDay:
    """What is spread on one day, waste included."""

    date: dt.date
    volume_m3: float
    mass_t: float
    top_up: bool
    """Whether it is a second or later dressing, and no work of its own that day."""
    trailer_loads: int = 0
    """Trips from the heap to the greens, a part of a load being one too; 0 where nobody hauls."""


@dataclass(frozen=True, slots=True)
class SandOrder:
    """What to order of the merchant, unrounded."""

    volume_m3: float
    mass_t: float
    lorry_loads: int
    deliver_by: dt.date
    """Last day from Monday to Friday before the first need."""
    days: tuple[SandDay, ...]

    @property
    def top_ups(self) -> tuple[dt.date, ...]:
        """Days of second and later dressings."""
        return tuple(day.date for day in self.days if day.top_up)


@dataclass(frozen=True, slots=True)
class SandRun:
    """What is spread on days that follow one another, all of them first dressings or none."""

    dates: tuple[dt.date, ...]
    mass_t: float
    least_t: float
    """On one day."""
    most_t: float
    top_up: bool


def runs_of_sand(order: SandOrder) -> tuple[SandRun, ...]:
    """Return the days of an order in runs; a day without sand parts them, and so does a top-up."""
    runs: list[list[SandDay]] = []
    for day in order.days:
        last = runs[-1][-1] if runs else None
        if last and last.top_up == day.top_up and (day.date - last.date).days == 1:
            runs[-1].append(day)
        else:
            runs.append([day])
    return tuple(
        SandRun(
            tuple(day.date for day in run),
            sum(day.mass_t for day in run),
            min(day.mass_t for day in run),
            max(day.mass_t for day in run),
            run[0].top_up,
        )
        for run in runs
    )
