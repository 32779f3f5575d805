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
    """The line itself, as it stands in the file."""

    def __str__(self) -> str:
        return ":".join(
            str(part) for part in (self.file, self.line, self.column) if part is not None
        )


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
