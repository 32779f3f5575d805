"""Figures with their formula and source, the sand of each green, and what was measured."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from notices.agronomy.sand import on_surface_mm


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
