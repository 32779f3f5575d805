"""What is different from the notice before: for members, on the board, on phones, for the starter.

Nobody is told of what does not touch them: members hear nothing of a tine that is a millimetre
wider, and the starter only of days on which a green is something else to golfers than was said.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace

from notices.documents import phrases
from notices.documents.letters import letter
from notices.documents.model import (
    CHANGE_NOTICE,
    Document,
    Entry,
    Fact,
    Fit,
    Imprint,
    Item,
    PlainText,
    Section,
    Sheet,
    with_imprint,
)
from notices.programme.changes import compare
from notices.programme.changes_for import met_by_golfers
from notices.programme.model import (
    ChangeKind,
    Changes,
    Period,
    PlayStatus,
    Programme,
    Subject,
)
from notices.wording import circumstances
from notices.wording.blocks import Block, Bullets, Paragraph, Table, with_links
from notices.wording.changes import ChangeWords
from notices.wording.edition import changed_in_words
from notices.wording.lists import and_list, sentence
from notices.wording.period import PeriodWords
from notices.wording.text_message import ONE_PART, first_within, for_phones
from notices.wording.words import Words

NEW_DAYS = (
    ChangeKind.ADDED,
    ChangeKind.DROPPED,
    ChangeKind.MOVED,
    ChangeKind.EXTENDED,
    ChangeKind.SHORTENED,
    ChangeKind.GREENS_ADDED,
    ChangeKind.GREENS_LEFT_OUT,
)

AWAY = {PlayStatus.TEMPORARY: "temporary", PlayStatus.CLOSED: "closed"}

FITS = (Fit("roomy"), Fit(room=0.87), Fit("close", room=0.73))


def change_notices(programme: Programme) -> Entry | None:
    """Return what tells of changes, with what to do with it; None where nobody is touched."""
    earlier = programme.earlier
    if earlier is None:
        return None
    changes = compare(earlier, programme)
    told = ChangeWords.of(earlier, programme, met_by_golfers(changes))
    items: list[Item] = []
    if told.changes:
        notice = change_notice(programme, told)
        items = [
            letter(notice, programme, calendar="calendar"),
            Sheet(replace(notice, name="change-notice-a4"), "handout", FITS),
            PlainText(short_change(programme, told), wrapped=False),
        ]
    paper = Words(programme).language.terms.paper
    whom, todo = [], []
    if items:
        whom.append("members")
        todo.append("Send change-notice.eml first.")
        todo.append(f"Print change-notice-a4 on {paper} and put it up beside the board notice.")
    if slip := starters_slip(programme, earlier):
        items.append(Sheet(slip, "handout", FITS))
        whom.append("the starter")
        todo.append(f"Print change-slip on {paper} for the starter.")
    if not items:
        return None
    # It comes beside the notice that it changes, and in place of nothing.
    imprint = Imprint(programme.edition)
    return Entry(
        CHANGE_NOTICE,
        sentence(and_list(whom)).rstrip("."),
        " ".join(todo),
        tuple(with_imprint(item, imprint) for item in items),
    )


def change_notice(programme: Programme, told: ChangeWords) -> Document:
    """Write what has changed, and what holds now."""
    words = told.new
    said = told.sentences()
    sections = [
        *_opening(told.old, _title(told)),
        Section("changed", (Bullets.of(*said), Paragraph.of("Everything else stands.")), "Changed"),
    ]
    facts = [Fact("changed", text) for text in said]
    for period in _touched(programme, told.changes):
        of_period = PeriodWords(words, period)
        blocks: list[Block] = [phrases.at_a_glance(of_period)]
        if reserve := of_period.reserve():
            blocks.append(Paragraph.of(reserve))
        facts += phrases.period_facts(of_period)
        sections.append(
            Section(f"now {period.works[0].id}", tuple(blocks), f"{of_period.name()}: now")
        )
        if len(period.days) > 1 and len(period.greens) > 1:
            table = phrases.days_table(words, period)
            sections.append(Section(f"days {period.works[0].id}", (table,)))
            facts += phrases.days_facts(words, period)
    lines = (
        circumstances.decision(words),
        circumstances.contact(words),
        circumstances.sign_off(words),
    )
    closing = tuple(with_links(Paragraph.of(line)) for line in lines if line)
    sections.append(Section("closing", closing, phrases.closing_title(programme)))
    return Document.of(
        programme,
        name="change-notice",
        title=_title(told),
        summary=f"What has changed since our notice of {day_of_old(told.old)}.",
        sections=sections,
        facts=facts,
    )


def _opening(old: Words, title: str) -> list[Section]:
    """Say first which notice it changes, where the title does not."""
    if day_of_old(old) in title:
        return []
    programme = old.programme
    said = changed_in_words(programme.edition, programme.club.language)
    return [Section("opening", (Paragraph.of(said),))]


def day_of_old(old: Words) -> str:
    """Name the day of the notice that has changed."""
    return old.dates.date(old.programme.issued)


def _title(told: ChangeWords) -> str:
    if told.changes.of(*NEW_DAYS) and told.changes.about(Subject.WORK):
        periods = list(_touched(told.new.programme, told.changes))
        if periods:
            names = [PeriodWords(told.new, period).inside() for period in periods[:2]]
            return f"New dates: {and_list(names)}"
    return f"Changes to our notice of {day_of_old(told.old)}"


def _touched(programme: Programme, changes: Changes) -> Iterator[Period]:
    """Yield the periods that golfers notice and that are not what they were."""
    ids = {change.id for change in changes.about(Subject.WORK, Subject.PERIOD)}
    for period in programme.periods:
        if period.noticed and ids & {work.id for work in period.works}:
            yield period


def short_change(programme: Programme, told: ChangeWords) -> Document:
    """Write the change for phones: the first change if it fits, else that there are some."""
    club = programme.club.name
    day = day_of_old(told.old)
    said = told.sentences()
    candidates = [
        f"{club}: {' '.join(said)}",
        f"{club}: {said[0]}" + (" More has changed: see our notice." if said[1:] else ""),
        *(
            f"{club}: {_first(said[0], count)}{more}"
            for count in (2, 1)
            for more in (" More has changed: see our notice.", "")
        ),
        f"{club}: {_title(told)}. Our notice of {day} no longer holds.",
        f"{club}: our notice of {day} has changed.",
    ]
    text = first_within([for_phones(one) for one in candidates], ONE_PART)
    return Document.of(
        programme,
        name="change-short-message",
        title="Short message",
        summary="The change in one message.",
        sections=(Section("message", (Paragraph.of(text or for_phones(candidates[-1])),)),),
    )


def _first(text: str, count: int) -> str:
    """Return where the days are now, and why; what follows from them can be read in the notice."""
    sentences = text.rstrip(".").split(". ")
    return f"{'. '.join(sentences[:count])}."


def starters_slip(programme: Programme, earlier: Programme) -> Document | None:
    """Write which greens are closed now on which day, and were to be; None where none differ."""
    words, before = Words(programme), Words(earlier)
    days = sorted({*programme.status, *earlier.status})
    rows: list[tuple[str, str, str]] = []
    facts: list[Fact] = []
    for day in days:
        was, now = _away(before, day), _away(words, day)
        if was != now and day >= programme.issued:
            rows.append((words.dates.day(day), was, now))
            facts.append(Fact("day", words.dates.day(day), (day,)))
    if not rows:
        return None
    return Document.of(
        programme,
        name="change-slip",
        title="Greens: what has changed",
        summary="Days on which other greens are in play than was said.",
        sections=(
            *_opening(before, ""),
            Section(
                "days",
                (
                    Table(
                        "Greens out of play, all day or part of it",
                        ("Day", "Before", "Now"),
                        tuple(rows),
                    ),
                ),
            ),
            Section("decision", (Paragraph.of(circumstances.decision(words)),)),
        ),
        facts=facts,
    )


def _away(words: Words, day: dt.date) -> str:
    """Name the greens that are closed or have a temporary one."""
    parts = []
    for status, said in AWAY.items():
        greens = [g for g, s in words.programme.status.get(day, {}).items() if s is status]
        if greens:
            parts.append(f"{words.greens(greens)} {said}")
    return sentence(and_list(parts)).rstrip(".") if parts else "All open"
