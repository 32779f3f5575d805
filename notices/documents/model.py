"""What a document holds before it is set: sentences, tables, drawings and the facts it carries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from notices.drawings.model import Drawing
from notices.look import HOUSE, Look
from notices.programme.model import Programme
from notices.wording.blocks import Block


@dataclass(frozen=True, slots=True)
class Fact:
    """A fact that a document carries, in the very words in which it says it.

    A test reads the produced file back and finds the words, and no date but these.
    """

    subject: str
    text: str
    dates: tuple[dt.date, ...] = ()
    greens: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of a document under a heading of its own, or none."""

    name: str
    """What the section is for; templates and tests find it by this."""
    blocks: tuple[Block, ...]
    heading: str = ""
    style: str = ""
    """How densely it is set, where each has a page of its own."""


@dataclass(frozen=True, slots=True)
class Document:
    """One document for one kind of reader, in the order in which it is read."""

    name: str
    """Also, with an ending, the name of its file."""
    title: str
    language: str
    club: str
    issued: dt.date
    summary: str
    """One sentence for previews and descriptions."""
    sections: tuple[Section, ...]
    facts: tuple[Fact, ...]
    drawings: tuple[Drawing, ...] = ()
    draft: bool = False
    look: Look = HOUSE
    edition: str = ""
    """Which of the club's notices it is, in words."""
    replaces: str = ""
    """Which notice it replaces, in words; empty where it is the first."""

    @classmethod
    def of(
        cls,
        programme: Programme,
        *,
        name: str,
        title: str,
        summary: str,
        sections: Iterable[Section],
        facts: Iterable[Fact] = (),
        drawings: Iterable[Drawing] = (),
    ) -> Document:
        """Return a document with what all documents of a programme share: club, language, date."""
        return cls(
            name=name,
            title=title,
            language=programme.club.language,
            club=programme.club.name,
            issued=programme.issued,
            summary=summary,
            sections=tuple(sections),
            facts=tuple(facts),
            drawings=tuple(drawings),
            draft=programme.draft,
        )

    def section(self, name: str) -> Section | None:
        """Return a section by name, or None where this document has none."""
        return next((section for section in self.sections if section.name == name), None)

    def drawing(self, name: str) -> Drawing:
        """Return a drawing by name."""
        return next(drawing for drawing in self.drawings if drawing.name == name)


@dataclass(frozen=True, slots=True)
class CalendarEntry:
    """One all-day event of a calendar."""

    uid: str
    summary: str
    description: str
    first: dt.date
    last: dt.date
    tentative: bool = False
    category: str = ""


@dataclass(frozen=True, slots=True)
class CalendarDocument:
    """A calendar of the planned work."""

    name: str
    title: str
    language: str
    summary: str
    issued: dt.date
    organizer: tuple[str, str]
    entries: tuple[CalendarEntry, ...]
    fallen_away: str = "Called off"
    """What stands before the name of an entry that an earlier notice had and this one has not."""


@dataclass(frozen=True, slots=True)
class Letter:
    """A document that is sent: the document and what goes on its envelope."""

    document: Document
    subject: str
    sender: tuple[str, str]
    to: tuple[str, str]
    reply_to: tuple[str, str] | None
    message_id: str
    list_id: str
    unsubscribe: str
    template: str = "letter"
    """Of ``templates/mail``."""
    calendar: str = ""
    """Name of the calendar that travels with it, if any."""


@dataclass(frozen=True, slots=True)
class Fit:
    """One way to set a sheet: the styles of its body and the sections that go for it."""

    styles: str = ""
    left_out: frozenset[str] = frozenset()
    pages: int | None = None
    """How many it may take; None for as many as the sheet may."""


MANY = 10_000
"""More pages than any sheet takes: for those that may take as many as they need."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A document on paper."""

    document: Document
    template: str
    """Of ``templates/print``."""
    fits: tuple[Fit, ...] = (Fit(),)
    """Ways to set it, largest first, tried until it takes no more pages than it may."""
    pages: int = 1


@dataclass(frozen=True, slots=True)
class Page:
    """A document on a screen, which stands alone."""

    document: Document
    template: str = "page"
    """Of ``templates/web``."""


@dataclass(frozen=True, slots=True)
class PlainText:
    """A document as plain text."""

    document: Document
    wrapped: bool = True
    """Whether lines are broken for reading; not where a paragraph is copied as it is."""


CHANGE_NOTICE = "Change notice"
"""Title of the entry that comes before all others to the office."""

Item = Letter | Sheet | Page | PlainText | CalendarDocument
"""What becomes one file, or as a letter three."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing to send, print or keep, in the forms in which it comes."""

    title: str
    whom: str
    """Who reads it."""
    todo: str
    """What the secretary does with it."""
    items: tuple[Item, ...]

    @property
    def files(self) -> tuple[str, ...]:
        """Names of its files."""
        return tuple(name for item in self.items for name in file_names(item))


def file_names(item: Item) -> tuple[str, ...]:
    """Return the names of the files that an item becomes."""
    match item:
        case Letter(document=document):
            return tuple(f"{document.name}.{ending}" for ending in ("eml", "html", "txt"))
        case Sheet(document=document):
            return (f"{document.name}.pdf",)
        case Page(document=document):
            return (f"{document.name}.html",)
        case PlainText(document=document):
            return (f"{document.name}.txt",)
        case CalendarDocument(name=name):
            return (f"{name}.ics",)
