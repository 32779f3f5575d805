"""Figures with their formula and source, the sand of each green, and what was measured."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from notices.agronomy.sand import on_surface_mm

Value = float | int | str | None


class Input(NamedTuple):
    """Something that a figure was worked out from."""

    name: str
    """Its key in programme.json."""
    value: Value
    called: str = ""
    """What a formula calls it; empty where that is its name."""
    unit: str = "1"
    """Written as the unit of a figure is."""
    is_difference: bool = False
    """Whether it is the difference of two temperatures, and not a temperature."""

    @property
    def words(self) -> str:
        """What a formula calls it."""
        return self.called or self.name.replace("_", " ")


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
    unit_of_one: str
    """The unit in the singular where it is a word, such as "hole"; else empty."""
    recipe: str
    """How it was worked out, in words, with the name of an input in braces where one stands."""
    summed: bool
    """Whether it is the sum of all its inputs; a recipe in words then names none of them."""
    source: tuple[str, ...]
    """Keys of the bibliography in notices.references."""
    worked_from: tuple[Input, ...]
    default_used: bool

    @property
    def formula(self) -> str:
        """How it was worked out, in words."""
        return self.recipe.format_map({given.name: given.words for given in self.worked_from})

    @property
    def inputs(self) -> Mapping[str, Value]:
        """The values that it was worked out from, by their keys in programme.json."""
        return {given.name: given.value for given in self.worked_from}


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
