"""What a document holds before it is set: sentences, tables, drawings and the facts it carries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Self

from notices.drawings.model import Drawing
from notices.look import HOUSE, Look
from notices.programme.model import Edition, Programme
from notices.wording.blocks import Block, Photo
from notices.wording.language import LANGUAGES
from notices.wording.typography import in_language


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
class Imprint:
    """Which of the club's notices a document belongs to: the last that changed a word of it."""

    edition: Edition
    replaces: Edition | None = None
    """The notice of the one in whose place it comes; None where there was none but a draft."""

    @classmethod
    def of(cls, programme: Programme) -> Self:
        """Return that of a document which is new with a notice."""
        before = programme.replaces
        return cls(programme.edition, before if before and not before.draft else None)

    @classmethod
    def numbered(cls, number: str, replaces: str = "") -> Self:
        """Return one from the numbers that are printed; raises ValueError where one is none."""
        return cls(Edition.numbered(number), Edition.numbered(replaces) if replaces else None)


BLANK = Imprint(Edition(dt.date.min))
"""Of a document whose words are looked at, whichever notice it belongs to."""


@dataclass(frozen=True, slots=True)
class Document:
    """One document for one kind of reader, in the order in which it is read."""

    name: str
    """Also, with an ending, the name of its file."""
    title: str
    language: str
    club: str
    imprint: Imprint
    summary: str
    """One sentence for previews and descriptions."""
    sections: tuple[Section, ...]
    facts: tuple[Fact, ...]
    drawings: tuple[Drawing, ...] = ()
    draft: bool = False
    look: Look = HOUSE
    logo: str = field(default="", repr=False)
    """The club's own, a PNG in a data URL (RFC 2397); empty where it has none."""

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
        """Return a document with what all documents of a programme share: club, logo, language, date."""
        document = cls(
            name=name,
            title=title,
            language=programme.club.language,
            club=programme.club.name,
            imprint=Imprint.of(programme),
            summary=summary,
            sections=tuple(sections),
            facts=tuple(facts),
            drawings=tuple(drawings),
            draft=programme.draft,
        )
        written = in_language(document, LANGUAGES[document.language])
        return replace(written, logo=programme.club.logo)

    @property
    def issued(self) -> dt.date:
        """The day of the notice that it belongs to."""
        return self.imprint.edition.issued

    @property
    def photos(self) -> tuple[Photo, ...]:
        """The photographs in it."""
        blocks = (block for section in self.sections for block in section.blocks)
        return tuple(block for block in blocks if isinstance(block, Photo))

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
    imprint: Imprint
    organizer: tuple[str, str]
    entries: tuple[CalendarEntry, ...]
    fallen_away: str = "Called off"
    """What stands before the name of an entry that an earlier notice had and this one has not."""

    @property
    def issued(self) -> dt.date:
        """The day of the notice that it belongs to."""
        return self.imprint.edition.issued


@dataclass(frozen=True, slots=True)
class Letter:
    """A document that is sent: the document and what goes on its envelope."""

    document: Document
    subject: str
    sender: tuple[str, str]
    to: tuple[str, str]
    reply_to: tuple[str, str] | None
    identity: str
    """Like no other's in one notice of the club."""
    list_id: str
    unsubscribe: str
    template: str = "letter"
    """Of ``templates/mail``."""
    calendar: str = ""
    """Name of the calendar that travels with it, if any."""

    @property
    def domain(self) -> str:
        """Where it comes from."""
        return self.sender[1].rpartition("@")[2]

    @property
    def message_id(self) -> str:
        """Like no other message's (RFC 5322 section 3.6.4)."""
        return f"<{self.identity}.{self.document.imprint.edition.number}@{self.domain}>"


@dataclass(frozen=True, slots=True)
class Fit:
    """One way to set a sheet: the styles of its body and the sections that go for it."""

    styles: str = ""
    left_out: frozenset[str] = frozenset()
    pages: int | None = None
    """How many it may take; None for as many as the sheet may."""
    room: float = 1.0
    """About how much it takes of what the first way does: what is tried next is guessed from it."""


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
    movable: frozenset[str] = frozenset()
    """Sections of drawings that may stand a little later, where a page would be left half empty."""
    letters: int | None = None
    """Number of letters that about fill a page in the first way, from which the way to try first is
    guessed; None where nothing is known."""


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


CHANGE_NOTICE, VISITORS_CHANGE = "Change notice", "Change notice for visitors"
CHANGE_NOTICES = (CHANGE_NOTICE, VISITORS_CHANGE)
"""Titles of the entries that come before all others to the office, and never stand unchanged."""

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
    again: str = ""
    """What the secretary does with it where a later notice has left it as it was."""

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


def imprint_of(item: Item) -> Imprint:
    """Return which of the club's notices an item belongs to."""
    return item.imprint if isinstance(item, CalendarDocument) else item.document.imprint


def with_imprint(item: Item, imprint: Imprint) -> Item:
    """Return the item as one of another notice, the same word for word."""
    if isinstance(item, CalendarDocument):
        return replace(item, imprint=imprint)
    return replace(item, document=replace(item.document, imprint=imprint))
