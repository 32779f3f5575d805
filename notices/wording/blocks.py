"""Building blocks of a text, free of markup, for web pages, paper and plain text alike."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of words in one style."""

    text: str
    strong: bool = False
    emphasis: bool = False
    link: str = ""


Runs = tuple[Run, ...]

_ADDRESS = re.compile(r"https://[^\s<>\"]*[^\s<>\".,;:!?)]|[\w.+-]+@[\w-]+(?:\.[\w-]+)+")


def linked(text: str) -> Runs:
    """Return plain words as runs, with web and email addresses as links."""
    runs: list[Run] = []
    end = 0
    for match in _ADDRESS.finditer(text):
        if match.start() > end:
            runs.append(Run(text[end : match.start()]))
        found = match[0]
        link = found if found.startswith("https://") else f"mailto:{found}"
        runs.append(Run(found, link=link))
        end = match.end()
    if end < len(text):
        runs.append(Run(text[end:]))
    return tuple(runs)


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph."""

    runs: Runs

    @classmethod
    def of(cls, text: str) -> Paragraph:
        """Return a paragraph of plain words, in which addresses become links."""
        return cls(linked(text))

    @property
    def text(self) -> str:
        """Words of the paragraph without styles and links."""
        return "".join(run.text for run in self.runs)


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list whose order does not matter."""

    items: tuple[Runs, ...]
    to_tick: bool = False
    """Whether each item has a box to tick on paper."""

    @classmethod
    def of(cls, *items: str, to_tick: bool = False) -> Bullets:
        """Return a list of plain sentences."""
        return cls(tuple((Run(item),) for item in items), to_tick)


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading inside a section; the section's own heading is level 2."""

    text: str
    level: int = 3


@dataclass(frozen=True, slots=True)
class KeyFact:
    """A short label with its answer."""

    label: str
    text: str
    stands_out: str = ""
    """Words of the text that are seen first: the date that people look for."""

    @property
    def runs(self) -> Runs:
        """The text, with the words that stand out in a run of their own."""
        if not self.stands_out:
            return (Run(self.text),)
        before, found, after = self.text.partition(self.stands_out)
        return tuple(run for run in (Run(before), Run(found, strong=True), Run(after)) if run.text)


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
    numbers: tuple[int, ...] = ()
    """Columns of numbers, counted from 0, which are aligned to the right."""
    halves: bool = False
    """Whether its rows are set in two halves side by side on paper, for many short ones."""

    def without_empty_columns(self) -> Table:
        """Return the table without the columns that are empty in every row."""
        kept = [n for n in range(len(self.head)) if any(row[n] for row in self.rows)]
        return replace(
            self,
            head=tuple(self.head[n] for n in kept),
            rows=tuple(tuple(row[n] for n in kept) for row in self.rows),
            numbers=tuple(place for place, n in enumerate(kept) if n in self.numbers),
        )


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing, by its name among the document's drawings."""

    name: str
    on: str = ""
    """"wide" or "narrow" for a drawing for such screens only; empty for one for all screens."""


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph."""

    name: str
    """Name that no other photograph in the document has."""
    data: str = field(repr=False)
    """JPEG in a data URL (RFC 2397)."""
    shows: str
    """Description for people who cannot see it."""
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Notes:
    """Numbered notes in small letters, such as the sources of a table."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Folded:
    """Details that a reader opens to know more; on paper they are always shown."""

    label: str
    blocks: tuple[Block, ...]


Block = Paragraph | Bullets | Heading | KeyFacts | Table | Picture | Photo | Notes | Folded


def by_heading(blocks: Iterable[Block], level: int = 0) -> dict[str, list[Block]]:
    """Return the blocks under each heading, by the words of the heading.

    Only headings of ``level`` count, or all if it is 0. Blocks before the first one are under "".
    """
    found: dict[str, list[Block]] = {}
    name = ""
    for block in blocks:
        if isinstance(block, Heading) and level in (0, block.level):
            name = block.text
            found[name] = []
        else:
            found.setdefault(name, []).append(block)
    return found


def with_links(block: Block) -> Block:
    """Return a block in which addresses among plain words are links."""
    match block:
        case Paragraph(runs):
            return Paragraph(_linked(runs))
        case Bullets(items):
            return Bullets(tuple(map(_linked, items)))
        case _:
            return block


def _linked(runs: Runs) -> Runs:
    plain = Run("")
    return tuple(
        one
        for run in runs
        for one in (linked(run.text) if replace(run, text="") == plain else (run,))
    )
