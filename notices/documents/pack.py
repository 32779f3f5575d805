"""All documents of a pack."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notices.documents.board_notice import board_notices
from notices.documents.calendar import calendars
from notices.documents.change_notice import change_notices
from notices.documents.committee_briefing import committee_briefings
from notices.documents.counter_handout import counter_handouts
from notices.documents.course_page import course_pages
from notices.documents.green_in_true_size import greens_in_true_size
from notices.documents.index import Index, index
from notices.documents.mailings import later_messages, member_emails, messages_in_case
from notices.documents.model import (
    CHANGE_NOTICES,
    CalendarDocument,
    Document,
    Entry,
    Imprint,
    Item,
    file_names,
    with_imprint,
)
from notices.documents.questions_and_answers import questions_and_answers
from notices.documents.short_messages import short_messages
from notices.documents.starter_sheet import starter_sheets
from notices.documents.team_calendar import team_calendars
from notices.documents.team_sheet import team_sheets
from notices.documents.tee_sign import tee_signs
from notices.documents.visitor_change import visitor_changes
from notices.documents.visitor_notice import visitor_notices
from notices.look import HOUSE, Look, look_of
from notices.programme.as_json import programme_as_json
from notices.programme.model import Programme
from notices.programme.news import what_is_ahead
from notices.wording.typography import set_programme

ENTRIES: tuple[Callable[[Programme], Entry | None], ...] = (
    change_notices,
    visitor_changes,
    member_emails,
    later_messages,
    messages_in_case,
    short_messages,
    board_notices,
    tee_signs,
    counter_handouts,
    greens_in_true_size,
    visitor_notices,
    questions_and_answers,
    course_pages,
    starter_sheets,
    team_sheets,
    committee_briefings,
    calendars,
    team_calendars,
)
"""What a pack holds, in the order in which the secretary meets it; None where a plan needs no such thing."""

OF_ALL = frozenset(
    (
        change_notices,
        later_messages,
        messages_in_case,
        short_messages,
        committee_briefings,
        calendars,
        team_calendars,
    )
)
"""What is written of the whole programme: of what changed, on occasions that may come late, for the
record. The rest tells golfers and team what is still ahead."""


@dataclass(frozen=True, slots=True)
class PackDocuments:
    """What goes into a pack, before it is rendered."""

    index: Index
    entries: tuple[Entry, ...]
    records: Mapping[str, Mapping[str, object]]
    """Files for machines, by name: plain data to be written as JSON."""

    @property
    def items(self) -> Iterator[Item]:
        """Everything that becomes a file, but the index and the records."""
        return (item for entry in self.entries for item in entry.items)

    @property
    def documents(self) -> Iterator[Document]:
        """Every document, each form of it."""
        return (item.document for item in self.items if not isinstance(item, CalendarDocument))

    def document(self, name: str) -> Document:
        """Return a document by name."""
        return next(document for document in self.documents if document.name == name)

    def calendar(self, name: str = "calendar") -> CalendarDocument:
        """Return a calendar by name."""
        return next(
            item for item in self.items if isinstance(item, CalendarDocument) and item.name == name
        )


def write_documents(programme: Programme, plan: Mapping[str, object]) -> PackDocuments:
    """Write every document of a pack.

    Parameters
    ----------
    programme
        The plan, worked out.
    plan
        The plan in canonical form; the pack carries it, so that it can be built again.
    """
    look = look_of(programme.club.colour) if programme.club.colour else HOUSE
    printed = set_programme(programme)
    ahead = what_is_ahead(printed)
    written = (write(printed if write in OF_ALL else ahead) for write in ENTRIES)
    entries = tuple(_in_its_look(entry, look) for entry in written if entry is not None)
    records = {"programme.json": programme_as_json(programme), "plan.json": plan}
    return PackDocuments(_front(printed, entries, look), entries, records)


def let_stand(
    documents: PackDocuments, programme: Programme, imprints: Mapping[str, Imprint]
) -> PackDocuments:
    """Give each document the notice that it belongs to, and write the front page by that.

    Parameters
    ----------
    documents
        As they were written, all of them new.
    programme
        What they were written from.
    imprints
        By the names of files of the notice before: where nothing has changed the imprint that the
        file had, else that of this notice and which one it replaces. What is not among them is new.
    """

    def standing(item: Item) -> Item:
        return with_imprint(item, imprints.get(file_names(item)[0], Imprint(programme.edition)))

    entries = tuple(
        entry
        if entry.title in CHANGE_NOTICES
        else replace(entry, items=tuple(map(standing, entry.items)))
        for entry in documents.entries
    )
    front = _front(set_programme(programme), entries, documents.index.document.look)
    return replace(documents, index=front, entries=entries)


def _front(programme: Programme, entries: Sequence[Entry], look: Look) -> Index:
    front = index(programme, entries)
    return replace(front, document=replace(front.document, look=look))


def _in_its_look(entry: Entry, look: Look) -> Entry:
    """Give every document the look of the club."""
    return replace(
        entry,
        items=tuple(
            item
            if isinstance(item, CalendarDocument)
            else replace(item, document=replace(item.document, look=look))
            for item in entry.items
        ),
    )
