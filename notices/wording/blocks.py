"""What a text is made of, free of any markup: the same blocks serve page, paper and plain text."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of words in one style."""

    text: str
    strong: bool = False
    emphasis: bool = False
    link: str = ""


Runs = tuple[Run, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph."""

    runs: Runs

    @classmethod
    def of(cls, text: str) -> Paragraph:
        """Make a paragraph of plain words."""
        return cls((Run(text),))

    @property
    def text(self) -> str:
        """The words alone."""
        return "".join(run.text for run in self.runs)


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list whose order does not matter."""

    items: tuple[Runs, ...]

    @classmethod
    def of(cls, *items: str) -> Bullets:
        """Make a list of plain sentences."""
        return cls(tuple((Run(item),) for item in items))


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading inside a section; the section's own heading is level 2."""

    text: str
    level: int = 3


@dataclass(frozen=True, slots=True)
class KeyFact:
    """A short label and what it says."""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class KeyFacts:
    """Labels with their answers, read at a glance."""

    rows: tuple[KeyFact, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A small table with a head; the first cell of a row is its header."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing, by its name among the document's drawings."""

    name: str


Block = Paragraph | Bullets | Heading | KeyFacts | Table | Picture
