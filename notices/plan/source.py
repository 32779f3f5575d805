"""A plan file as plain data that remembers where each part of it stands, whatever the file is."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from notices.findings import Finding, Place
from notices.plan.yaml_complaints import Position

MOST_ENTRIES = 1_000
"""Of one list or block: no club has so many works or fixtures, and each takes time to check."""
MOST_FAULTS = 1_000
"""A file of nothing but faults would fill the memory with them; nobody reads so many."""

PlanPath = tuple[str | int, ...]
PlainData = dict[str, Any] | list[Any] | str | int | float | bool | None

INVISIBLE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]"
)
"""What nobody can see, and so nobody meant to type."""


@dataclass(slots=True)
class Spot:
    """Where one value stands, and, if it belongs to a key, where the key does."""

    line: int
    column: int
    typed: str | None = None
    key: Position | None = None
    children: dict[str, Spot] | list[Spot] | None = None
    place: Place | None = None
    """Given where a part of the plan stands in a cell, or in another file than the rest."""
    key_place: Place | None = None


@dataclass(frozen=True, slots=True)
class PlanSource:
    """The content of a plan file, and the place of every part of it."""

    data: Any
    """Dicts, lists, text, numbers, truth values and None; the topmost is a dict."""
    file: str
    """Name of the file as the user gave it."""
    root: Spot = field(repr=False, compare=False)
    lines: Sequence[str] = field(default=(), repr=False, compare=False)
    """The file line by line."""
    findings: tuple[Finding, ...] = field(default=(), repr=False, compare=False)
    """What is wrong with single values before the plan is looked at."""
    sheets: tuple[str, ...] = field(default=(), repr=False, compare=False)
    """Sheets of a workbook, in their order."""

    tables: bool = field(default=False, repr=False, compare=False)
    """Whether works of it stand in tables beside it."""

    def place(self, path: Sequence[str | int], *, key: bool = False) -> Place:
        """Return where the part at the end of the path stands.

        Parameters
        ----------
        path
            Keys and list positions from the top. Steps that lead nowhere are passed over, because
            the paths of pydantic name alternatives too; so for a missing key the place is that
            of the block that misses it.
        key
            Ask for the key itself rather than for its value.
        """
        steps = list(self._steps(path))
        spot = steps[-1][1] if steps else self.root
        if key and steps and steps[-1][0] == len(path) - 1:
            if spot.key_place:
                return spot.key_place
            if spot.key:
                return placed(self.file, spot.key, self.lines)
        return spot.place or placed(self.file, (spot.line, spot.column), self.lines)

    def typed(self, path: Sequence[str | int]) -> str | None:
        """Return the letters of a single value as typed, "1.50" for the number 1.5.

        None when the path does not lead to a single value.
        """
        steps = list(self._steps(path))
        return steps[-1][1].typed if steps and len(steps) == len(path) else None

    def order(self, finding: Finding) -> tuple[int, int, int]:
        """Return by what findings are sorted: as their places follow one another in the file."""
        place = finding.place or Place("")
        sheet = self.sheets.index(place.sheet) if place.sheet in self.sheets else -1
        return sheet, place.line or 0, place.column or 0

    def _steps(self, path: Sequence[str | int]) -> Iterator[tuple[int, Spot]]:
        spot = self.root
        for index, step in enumerate(path):
            match spot.children:
                case dict() as by_key if str(step) in by_key:
                    spot = by_key[str(step)]
                case list() as items if isinstance(step, int) and 0 <= step < len(items):
                    spot = items[step]
                case _:
                    continue
            yield index, spot


def placed(file: str, at: Position, lines: Sequence[str]) -> Place:
    """Return the place of a line and a column, with the line itself."""
    line, column = at
    return Place(file, line, column, lines[line - 1] if line <= len(lines) else "")
