"""Findings about a plan: one record for faults, doubts and remarks alike."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass, field, replace


class Weight(enum.StrEnum):
    """Weight of a finding. Only the first stops a build."""

    CANNOT_BUILD = "cannot be built"
    THINK_AGAIN = "think again"
    INFORMATION = "for your information"


@dataclass(frozen=True, slots=True)
class Place:
    """A spot in a file; lines and columns count from 1."""

    file: str
    line: int | None = None
    column: int | None = None
    text: str = field(default="", repr=False, compare=False)
    """The line itself; in a workbook the row, cell by cell."""
    sheet: str = ""
    """Sheet of a workbook, in which line and column are those of a cell; empty in other files."""
    mark: int | None = field(default=None, repr=False, compare=False)
    """Position of the spot in the text, if it differs from the column."""

    @property
    def cell(self) -> str:
        """Name of the cell, such as C7; empty outside a workbook."""
        if not self.sheet or self.line is None or self.column is None:
            return ""
        return f"{column_letters(self.column)}{self.line}"

    def __str__(self) -> str:
        if self.sheet:
            plain = self.sheet.isalnum()
            sheet = self.sheet if plain else f"'{self.sheet}'"
            return f"{self.file}:{sheet}{'!' if self.cell else ''}{self.cell}"
        return ":".join(
            str(part) for part in (self.file, self.line, self.column) if part is not None
        )


def column_letters(number: int) -> str:
    """Return the name of a column in a sheet: A for 1, Z for 26, AA for 27."""
    letters = ""
    while number > 0:
        number, digit = divmod(number - 1, 26)
        letters = chr(ord("A") + digit) + letters
    return letters


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing a person should know about the plan, with its place and a remedy."""

    code: str
    """Short name in kebab case, by which a club can accept the finding."""
    weight: Weight
    message: str
    """Description of the problem, as one sentence without a full stop at the end."""
    suggestion: str = ""
    """Remedy, as one sentence without a full stop at the end."""
    path: tuple[str | int, ...] = ()
    """Path through the plan to the spot, such as ("works", 0, "dates")."""
    place: Place | None = None
    work: str = ""
    """ID of the work that the finding is about; empty if it is about none."""
    greens: tuple[str, ...] = ()
    dates: tuple[dt.date, ...] = ()

    def at(self, place: Place | None) -> Finding:
        """Return the finding with its place in the file filled in."""
        return replace(self, place=place)

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place else ""
        return where + " ".join(ended(part) for part in (self.message, self.suggestion) if part)


def ended(sentence: str) -> str:
    """Return the sentence with a full stop, unless it already ends in a mark such as "?"."""
    return sentence if sentence.endswith((".", "?", "!", "…")) else f"{sentence}."
