"""What the program has to say about a plan: one record for faults, doubts and remarks alike."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass, field, replace


class Weight(enum.StrEnum):
    """How much a finding matters. Only the first stops a build."""

    CANNOT_BUILD = "cannot be built"
    THINK_AGAIN = "think again"
    INFORMATION = "for your information"


@dataclass(frozen=True, slots=True)
class Place:
    """Where in a file something stands; lines and columns count from 1."""

    file: str
    line: int | None = None
    column: int | None = None
    text: str = field(default="", repr=False, compare=False)
    """The line itself, as it stands in the file; of a sheet its row, cell by cell."""
    sheet: str = ""
    """Sheet of a workbook: line and column are then those of a cell in it."""
    mark: int | None = field(default=None, repr=False, compare=False)
    """Where in the text the spot is, if that is not at the column."""

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
    """What is the matter, as one sentence without a full stop at the end."""
    suggestion: str = ""
    """What would be right, as one sentence without a full stop at the end."""
    path: tuple[str | int, ...] = ()
    """Way through the plan to the spot, such as ("works", 0, "dates")."""
    place: Place | None = None
    work: str = ""
    """Identity of the work, where the finding is about one."""
    greens: tuple[str, ...] = ()
    dates: tuple[dt.date, ...] = ()

    def at(self, place: Place | None) -> Finding:
        """Return the same finding with its place in the file filled in."""
        return replace(self, place=place)

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place else ""
        return where + " ".join(ended(part) for part in (self.message, self.suggestion) if part)


def ended(sentence: str) -> str:
    """Set the full stop, unless the sentence has an end of its own, such as a question mark."""
    return sentence if sentence.endswith((".", "?", "!", "…")) else f"{sentence}."
