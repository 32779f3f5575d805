"""The front page of a pack: every file, whom it is for, what to do with it, what is still open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from notices.documents.model import Document, Entry, Imprint, Section
from notices.documents.standing import (
    News,
    marks,
    new_documents,
    old_one,
    standing_of,
    what_is_new,
)
from notices.documents.to_do import to_do
from notices.findings import Finding, Weight
from notices.programme.duties import DutyKind, DutySubject
from notices.programme.duties_again import ON_PAPER, asked_again
from notices.programme.model import Programme
from notices.wording import circumstances
from notices.wording.accepted import accepted_in_words
from notices.wording.blocks import KeyFact, KeyFacts, Paragraph
from notices.wording.duties import duty_in_words
from notices.wording.finding_words import finding_in_words
from notices.wording.lists import and_list, counted, sentence
from notices.wording.period import PeriodWords
from notices.wording.typography import in_language
from notices.wording.words import Words


@dataclass(frozen=True, slots=True)
class Listed:
    """A file, and whether it is new where others beside it are not."""

    name: str
    unseen: str = ""
    """The beginning of its name, where another file of the document shows that before it."""
    mark: str = ""

    @property
    def shown(self) -> str:
        """What the eye needs of its name; the rest is for those who hear a list of links."""
        return self.name.removeprefix(self.unseen)


@dataclass(frozen=True, slots=True)
class Forms:
    """The files that one document comes in; one picture shows what all of them look like."""

    document: str
    files: tuple[Listed, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """One thing to send, print or keep, with the documents and files that it comes in."""

    title: str
    whom: str
    todo: str
    documents: tuple[Forms, ...]
    standing: str = ""
    """Whether it has changed since the notice before; empty in a first notice."""


@dataclass(frozen=True, slots=True)
class Todo:
    """One line of the secretary's sheet, with a box to tick."""

    when: str
    what: str
    whom: str
    """Whom it goes to; empty where nothing is sent or shown."""


@dataclass(frozen=True, slots=True)
class Index:
    """The front page: the document, the files, and the findings that stay open."""

    document: Document
    news: tuple[News, ...]
    """What is new and what stands, where the notice replaces another."""
    todo: tuple[Todo, ...]
    todo_note: str
    cards: tuple[Card, ...]
    findings: tuple[KeyFact, ...]
    accepted: tuple[KeyFact, ...]


OFFICE = {
    DutyKind.SEND,
    DutyKind.PRINT,
    DutyKind.PUT_UP,
    DutyKind.TAKE_DOWN,
    DutyKind.ORDER,
    DutyKind.DELIVER,
}
"""What the secretary sees to."""

OF_CHANGES = {
    "change-notice": "Members",
    "change-notice-a4": "Members",
    "change-slip": "The starter",
}
"""Whom each part of a change notice is for."""

ON_SCREENS = ("course-page.html", "calendar.ics", "team-calendar.ics")
"""What stays where people look, until another takes its place."""

TAKE_DOWN = "When you put a new sheet up, take the old one down."
ONLY_NEW = "This list asks for what is new: what still holds stays where it is."

FIGURES = Card(
    "Figures and plan",
    "Course manager and committee",
    "Keep them. programme.json says how each figure was worked out and from what. "
    "plan.json is the plan, and can be built again.",
    tuple(Forms(name, (Listed(f"{name}.json"),)) for name in ("programme", "plan", "manifest")),
)


def index(programme: Programme, entries: Sequence[Entry]) -> Index:
    """Write the front page of a pack."""
    words = Words(programme)
    main = words.main_period()
    rows = [KeyFact("Issued", f"{words.dates.date(programme.issued)}.")]
    planned: dict[str, list[str]] = {}
    for period in programme.periods:
        told = PeriodWords(words, period)
        planned.setdefault(told.name(), []).append(f"{told.when()}. {told.which()}")
    # What is done several times has one entry: a list of terms names each once.
    rows += [KeyFact(name, " ".join(times)) for name, times in planned.items()]
    if main is not None:
        rows.append(KeyFact("Putting well", PeriodWords(words, main).putting_well()))
    if recorded := circumstances.own_record_in_figures(words):
        rows.append(KeyFact("Our own record", " ".join(recorded)))
    note = (
        "This is a draft: the plan still awaits approval. Please send and put up nothing yet."
        if programme.draft
        else "Everything here was made from the plan. Change the plan and build again "
        "rather than changing a file."
    )
    document = Document.of(
        programme,
        name="index",
        title="Notices to send and put up",
        summary="Every file of this pack, whom it is for and what to do with it.",
        sections=(Section("what", (Paragraph.of(note), KeyFacts(tuple(rows))), "What is planned"),),
    )
    return Index(
        document,
        tuple(what_is_new(words, entries)),
        tuple(_todo(words, entries)),
        f"{TAKE_DOWN} {ONLY_NEW if programme.replaces else ''}".strip(),
        (*(_card(words, entry) for entry in entries), FIGURES),
        in_language(tuple(_finding(words, found) for found in programme.findings), words.language),
        in_language(
            tuple(
                KeyFact(
                    f"Accepted by {one.by}",
                    f"{' '.join(text for text, _ in one.what)} {sentence(one.why)}",
                )
                for one in accepted_in_words(words, programme.accepted)
            ),
            words.language,
        ),
    )


def _todo(words: Words, entries: Sequence[Entry]) -> Iterator[Todo]:
    """Yield what the office does, by date: what the team decides and looks at is in its calendar."""
    whom = {_document_of(name): entry.whom for entry in entries for name in entry.files}
    whom |= OF_CHANGES
    issued = words.programme.issued
    new = new_documents(words.programme, entries)
    shown = _on_screens(words, entries, new)
    for duty in asked_again(words.programme, to_do(words.programme), new):
        if shown and duty.first > issued:
            yield shown
            shown = None
        # What was over before this notice is in the one that it replaces.
        ahead = duty.last >= issued
        if ahead and (duty.kind in OFFICE or duty.subject is DutySubject.APPROVAL):
            days = {max(duty.first, issued), duty.last}
            when = words.dates.short_days_without_year(sorted(days)[:1])
            if len(days) > 1:
                when = f"{when} to {words.dates.short_days_without_year(sorted(days)[1:])}"
            said = duty_in_words(words, duty)
            if duty.kind in ON_PAPER and duty.first <= issued:
                hangs = duty.kind is DutyKind.PUT_UP
                said = f"{said} {old_one(words, new.get(duty.document), hangs=hangs)}".strip()
            yield Todo(when, said, whom.get(duty.document, ""))
    if shown:
        yield shown


def _on_screens(words: Words, entries: Sequence[Entry], new: Mapping[str, Imprint]) -> Todo | None:
    """Ask for what stands on the website and in calendars, where a notice before put it there."""
    before = words.programme.replaces
    files = [
        name
        for entry in entries
        for name in entry.files
        if name in ON_SCREENS and _document_of(name) in new
    ]
    if before is None or before.draft or not files:
        return None
    when = words.dates.short_days_without_year([words.programme.issued])
    old = "the old one" if len(files) == 1 else "the old ones"
    return Todo(when, f"Put {and_list(files)} in place of {old}.", "Everybody who looks there")


def _card(words: Words, entry: Entry) -> Card:
    return Card(
        entry.title,
        entry.whom,
        entry.todo,
        tuple(_forms(entry.files, marks(words, entry))),
        standing_of(words, entry),
    )


def _forms(files: Sequence[str], marked: Mapping[str, str]) -> Iterator[Forms]:
    """Yield each document with its files, the first under its whole name, the rest by their endings.

    Files that follow one another with the same mark share it.
    """
    for document, of_one in groupby(files, key=_document_of):
        names = list(of_one)
        yield Forms(
            document,
            tuple(
                Listed(
                    name,
                    document if place else "",
                    "" if marked.get(following) == marked[name] else marked[name],
                )
                for place, (name, following) in enumerate(zip(names, [*names[1:], ""], strict=True))
            ),
        )


def _document_of(file: str) -> str:
    return file.rpartition(".")[0]


def _finding(words: Words, found: Finding) -> KeyFact:
    label = {Weight.THINK_AGAIN: "Think again"}.get(found.weight, "For your information")
    about = f" ({counted(len(found.greens), 'green')})" if found.greens and found.work else ""
    work = f"{found.work}{about}: " if found.work else ""
    return KeyFact(
        label, f"{work}{finding_in_words(words, found)} {sentence(found.suggestion)}".strip()
    )
