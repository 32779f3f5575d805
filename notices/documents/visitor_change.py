"""What is different for visitors: for all who have booked, and for each party that has its date.

Nobody is told of what was not said to them. A party hears of its own day alone, and whoever has no
date of their own hears of the works, closures and restrictions that visitors plan by.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping

from notices.documents.change_notice import NEW_DAYS, day_of_old
from notices.documents.model import (
    VISITORS_CHANGE,
    Document,
    Entry,
    Fact,
    Imprint,
    Section,
    with_imprint,
)
from notices.documents.visitor_notice import (
    forms,
    on_days,
    on_the_day,
    rows_of_day,
    work_on_greens,
)
from notices.programme.changes import compare
from notices.programme.changes_for import told_to_visitors
from notices.programme.model import PlayStatus, Programme, Subject
from notices.programme.visiting import PartyDays, told_parties
from notices.wording import visit
from notices.wording.blocks import Block, Bullets, KeyFact, KeyFacts, Paragraph
from notices.wording.changes import ChangeWords
from notices.wording.words import Words

STANDS = Paragraph.of("Everything else stands.")
WHAT_YOU_CAN_DO = "What you can do"
ANOTHER_DAY = "If you would rather come on another day, please tell us."


def visitor_changes(programme: Programme) -> Entry | None:
    """Return what tells visitors of changes, with what to do with it; None where none is touched."""
    earlier = programme.earlier
    if earlier is None:
        return None
    changes = told_to_visitors(compare(earlier, programme), programme)
    told = ChangeWords.of(earlier, programme, changes)
    own = list(changes_for_parties(programme, earlier))
    documents = [*([change_for_visitors(programme, told)] if told.changes else []), *own]
    if not documents:
        return None
    todo = ["Send each party its own, and ring it if its day is near."] if own else []
    if told.changes:
        booked = "all others who have" if own else "everybody who has"
        todo.append(
            f"Send visitor-change.html or .txt to {booked} booked, or hand out the PDF at the shop."
        )
    imprint = Imprint(programme.edition)
    return Entry(
        VISITORS_CHANGE,
        "Visitors and groups",
        " ".join(todo),
        tuple(with_imprint(item, imprint) for document in documents for item in forms(document)),
    )


def change_for_visitors(programme: Programme, told: ChangeWords) -> Document:
    """Write what has changed for anybody who has booked, how it is now, and what they can do."""
    words, said = told.new, told.sentences()
    day = day_of_old(told.old)
    sections = [
        Section(
            "opening",
            (
                Paragraph.of(
                    f"This changes our notice to visitors of {day}. "
                    "Please check whether it touches your day."
                ),
            ),
        ),
        Section("changed", (Bullets.of(*said), STANDS), "What has changed"),
    ]
    facts = [Fact("changed", text) for text in said]
    ids = {change.id for change in told.changes.about(Subject.WORK, Subject.PERIOD)}
    periods = [one for one in programme.periods if ids & {work.id for work in one.works}]
    if periods:
        on_greens, found = work_on_greens(words, periods)
        blocks: list[Block] = [*on_greens]
        facts += found
        main = words.main_period()
        if main in periods and main is not None:
            best, days = visit.best_days(words, main)
            blocks += [Paragraph.of(best)] if best else []
            facts += [Fact("best days", best, days)] if best else []
        sections.append(Section("now", tuple(blocks), "How it is now"))
    todo = f"If it does not touch your day, you need to do nothing. {ANOTHER_DAY}"
    moved = told.changes.of(*NEW_DAYS) or periods
    return Document.of(
        programme,
        name="visitor-change",
        title=f"For our visitors: {'some dates have' if moved else 'something has'} changed",
        summary=f"What has changed since our notice of {day}.",
        sections=[
            *sections,
            Section("what to do", (Paragraph.of(todo),), WHAT_YOU_CAN_DO),
            *on_the_day(words, met=False, in_doubt=bool(periods)),
        ],
        facts=facts,
    )


def changes_for_parties(programme: Programme, earlier: Programme) -> Iterator[Document]:
    """Yield the change for each party that had a notice of its own and whose day is another."""
    old, new = Words(earlier), Words(programme)
    for party in told_parties(earlier, programme):
        told = _days_that_differ(old, new, party)
        if told or party.lost:
            yield _of_party(old, new, party, told)


def _days_that_differ(
    old: Words, new: Words, party: PartyDays
) -> dict[dt.date, tuple[KeyFact, ...]]:
    """Return what is to be said of each day: all of a new one, else what is not as it was said."""
    told = {
        day: rows_of_day(new, day) if day in party.gained else _rows_that_differ(old, new, day)
        for day in party.now
    }
    return {day: rows for day, rows in told.items() if rows}


def _rows_that_differ(old: Words, new: Words, day: dt.date) -> tuple[KeyFact, ...]:
    """Say what holds of a day and was not said, and what was said instead."""
    was = {row.label: row.text for row in rows_of_day(old, day)}
    now = {row.label: row.text for row in rows_of_day(new, day)}
    return tuple(
        KeyFact(label, _instead(was.get(label, ""), now.get(label, "")))
        for label in dict.fromkeys((*now, *was))
        if was.get(label) != now.get(label)
    )


def _instead(was: str, now: str) -> str:
    if not was:
        return now
    return f"{now} We had said: “{was}”" if now else f"This no longer holds: “{was}”"


def _news(words: Words, party: PartyDays) -> str:
    """Say that a party has another day, one more or none; empty where its days are the same."""
    lost, gained = words.dates.days(party.lost), words.dates.days(party.gained)
    if party.lost and party.gained:
        are = "days are" if len(party.gained) > 1 else "day is"
        return f"Your {are} now {gained}, in place of {lost}."
    if party.lost:
        days = "days" if len(party.lost) > 1 else "day"
        return f"Your {days}, {lost}, cannot go ahead."
    return f"We now expect you on {gained} too." if party.gained else ""


def _of_party(
    old: Words, new: Words, party: PartyDays, told: Mapping[dt.date, tuple[KeyFact, ...]]
) -> Document:
    """Write the change for one party: its day, what was said of it, what holds, what it can do."""
    news = _news(new, party)
    changed = news or (
        f"Our notice to you of {day_of_old(old)} has changed for {new.dates.days(told)}."
    )
    sections = [Section("opening", (Paragraph.of(f"Thank you for booking with us. {changed}"),))]
    facts = [Fact("news", changed)]
    for day, rows in told.items():
        heading = new.dates.day(day)
        sections.append(Section(f"day {day.isoformat()}", (KeyFacts(rows),), heading))
        facts += [Fact("day", heading, (day,)), *(Fact("your day", row.text) for row in rows)]
    if told and not news:
        sections.append(Section("stands", (STANDS,)))
    todo = ANOTHER_DAY
    if not party.now:
        todo = "Please get in touch, and we will find another day together."
    elif not news and all(_is_as_usual(new, day) for day in told):
        todo = "You need to do nothing. We look forward to seeing you."
    return Document.of(
        new.programme,
        name=f"visitor-change-{party.slug}",
        title=f"{party.name}: what has changed",
        summary="What is different from what we told you.",
        sections=[
            *sections,
            Section("what to do", (Paragraph.of(todo),), WHAT_YOU_CAN_DO),
            *on_days(new, party.now),
        ],
        facts=facts,
    )


def _is_as_usual(words: Words, day: dt.date) -> bool:
    """Whether a day is like any other: all holes, greens as ever, nothing to note."""
    programme = words.programme
    greens = programme.status.get(day, {}).values()
    return (
        day not in programme.play
        and set(greens) <= {PlayStatus.OPEN}
        and not visit.kept_free(words, day)
        and not visit.restrictions_on(words, day)
    )
