"""What the sheets for staff share: a page a day, set as large as what it holds allows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notices.documents.day_heights import DRAFT, HEAD, HIGH, SIZES, height_of
from notices.documents.model import MANY, Document, Fact, Section, Sheet
from notices.programme.model import Programme
from notices.wording.blocks import Block

SPARE = 0.985
"""How much of a page is counted on: letters that are drawn together, and lines, come out a little off."""


@dataclass(frozen=True, slots=True)
class DayPage:
    """The page of a day, or of days that are the same, with the facts that it carries."""

    name: str
    heading: str
    blocks: Sequence[Block]
    facts: Sequence[Fact] = ()
    works: frozenset[str] = frozenset()
    """What is worked on: days of the same works are set in one size."""

    @property
    def section(self) -> Section:
        """The page before its size is known."""
        return Section(self.name, tuple(self.blocks), self.heading)


def day_sheet(
    programme: Programme, name: str, title: str, summary: str, pages: Sequence[DayPage]
) -> Document:
    """Make a document of pages, each in a size that it fits in."""
    document = Document.of(
        programme,
        name=name,
        title=title,
        summary=summary,
        sections=(page.section for page in pages),
        facts=(fact for page in pages for fact in page.facts),
    )
    head = HEAD + (DRAFT if document.draft else 0)
    places = [_place(page, 0 if n else head) for n, page in enumerate(pages)]
    of_works: dict[frozenset[str], int] = {}
    for page, place in zip(pages, places, strict=True):
        of_works[page.works] = max(place, of_works.get(page.works, 0))
    sized = (
        replace(page.section, style=SIZES[of_works[page.works] if page.works else place].style)
        for page, place in zip(pages, places, strict=True)
    )
    return replace(document, sections=tuple(sized))


def on_paper(document: Document) -> Sheet:
    """Put a document of days on paper."""
    return Sheet(document, "day-sheet", pages=MANY)


def _place(page: DayPage, head: float) -> int:
    """Return the place among the sizes of the largest in which a day has room on its page."""
    notes = page.name.startswith("day")
    room = SPARE * HIGH - head
    return next(
        (
            place
            for place, size in enumerate(SIZES)
            if height_of(page.section, size, to_write_on=notes) <= room
        ),
        len(SIZES) - 1,
    )
