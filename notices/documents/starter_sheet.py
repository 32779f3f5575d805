"""The starter's sheet: a page a day with what is open from when to when, and what to tell people."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.calendar_days import ONE_DAY
from notices.documents.day_sheets import DayPage, day_sheet, on_paper
from notices.documents.model import Document, Entry, Fact
from notices.programme.hours import days_asked_about
from notices.programme.model import Programme
from notices.programme.news import days_ahead
from notices.wording import circumstances, hours, visit
from notices.wording.blocks import Block, Bullets, Heading, KeyFact, KeyFacts, Paragraph, Table
from notices.wording.lists import sentence
from notices.wording.rules import COMMITTEE, rules
from notices.wording.words import Words


def starter_sheets(programme: Programme) -> Entry | None:
    """Return the sheet with what to do with it; None where no day differs from any other."""
    document = starter_sheet(programme)
    if not document.sections:
        return None
    return Entry(
        "Starter’s sheet",
        "The starter and the shop",
        "Print it the day before the work begins: each day has its page. Days that are the same "
        "share one. When a date moves, build again and throw the old pages away.",
        (on_paper(document),),
        again="Pages that are printed already still hold.",
    )


HOLES_CLOSE_LATER = "So many holes are open when a group starts. Tell it, too, which of them close later in its round."

ONE_BY_ONE = 8
"""From so many greens of one work that come back one by one, they are listed in two halves."""


@dataclass(frozen=True, slots=True)
class _Day:
    """What the page of one day says; days that say the same share a page."""

    key_facts: tuple[KeyFact, ...]
    greens: tuple[hours.GreensOfDay, ...]
    holes: tuple[hours.HolesOfHours, ...]
    visitors: tuple[str, ...]


def starter_sheet(programme: Programme) -> Document:
    """Write the starter's sheet; without sections where no day differs."""
    words = Words(programme)
    return day_sheet(
        programme,
        "starter-sheet",
        "Starter’s sheet",
        "Day by day: what is open from when to when, where to start, what to tell people.",
        [_page(words, days, told) for days, told in _runs(words)],
    )


def _runs(words: Words) -> list[tuple[tuple[dt.date, ...], _Day]]:
    """Return the days that differ from a usual one; neighbours that say the same are one entry."""
    runs: list[tuple[tuple[dt.date, ...], _Day]] = []
    for day in days_ahead(days_asked_about(words.programme), words.programme.issued):
        told = _day(words, day)
        if runs and runs[-1][1] == told and day - runs[-1][0][-1] == ONE_DAY:
            runs[-1] = ((*runs[-1][0], day), told)
        else:
            runs.append(((day,), told))
    return runs


def _day(words: Words, day: dt.date) -> _Day:
    holes = hours.holes_of_day(words, day)
    rows = []
    if len(holes) == 1:
        (all_day,) = holes
        rows.append(KeyFact("Holes in play", f"{all_day.in_play}."))
        if all_day.temporary:
            rows.append(KeyFact("Temporary greens", f"{all_day.temporary}."))
        rows.append(KeyFact("Start from", f"{all_day.starts}."))
    elif same := _all_day(holes):
        rows.append(KeyFact("Temporary greens", f"{same} all day."))
    label = words.language.terms.fixture
    rows += [KeyFact(label, f"{fixture.name}.") for fixture in words.programme.fixtures_on(day)]
    return _Day(
        tuple(rows),
        hours.greens_of_day(words, day),
        holes if len(holes) > 1 else (),
        tuple(_visitors(words, day)),
    )


def _all_day(holes: Sequence[hours.HolesOfHours]) -> str:
    """Return the holes with temporary greens, where they are the same from morning to night."""
    found = {told.temporary for told in holes}
    return found.pop() if len(found) == 1 else ""


def _visitors(words: Words, day: dt.date) -> Iterator[str]:
    """Yield what to tell people who ask, in words to say aloud."""
    yield visit.what_is_open(words, day)
    play = words.programme.play.get(day)
    if (
        play is not None
        and play.first_start is None
        and (no_round := visit.where_to_start(words, day))
    ):
        yield no_round
    if visit.recovering_on(words, day):
        yield visit.what_the_greens_are_like(words, day)
    yield from (
        circumstances.closure(words, closed)
        for closed in words.programme.closures
        if day in closed.dates
    )
    if any(
        circumstances.shuts_people_out(closed)
        for closed in words.programme.closures
        if day in closed.dates
    ):
        yield circumstances.KEEP_OUT
    yield from visit.restrictions_on(words, day)
    if kept := visit.kept_free(words, day):
        yield kept
    if any(day == one.date for work in words.programme.works for one in work.visits):
        yield "Our team is at work. Please wait until they have seen you and waved you on."


def _by_hour(holes: Sequence[hours.HolesOfHours]) -> Table:
    head = ["When", "Holes in play", "Closed", "Start from (so many holes)"]
    rows = [[h.when, h.in_play, h.closed or "None", h.starts] for h in holes]
    if any(h.temporary for h in holes) and not _all_day(holes):
        head.insert(2, "Temporary greens")
        for row, found in zip(rows, holes, strict=True):
            row.insert(2, found.temporary or "None")
    return Table("Holes, hour by hour", tuple(head), tuple(map(tuple, rows)))


def _greens(words: Words, greens: Sequence[hours.GreensOfDay]) -> tuple[list[Block], list[Fact]]:
    """List the greens; many that are worked on one after the other stand close together."""
    name = {g: _capital(words.greens(g.greens, short=True)) for g in greens}
    alike: dict[tuple[str, str], list[hours.GreensOfDay]] = {}
    for g in greens:
        if g.away:
            alike.setdefault((g.why, g.then), []).append(g)
    blocks: list[Block] = []
    facts, close = [], set()
    for (why, then), ones in alike.items():
        if len(ones) < ONE_BY_ONE:
            continue
        rows = tuple((name[g], g.away) for g in ones)
        blocks += [
            Table("Greens, one by one", ("Greens", "What they are"), rows, halves=True),
            Paragraph.of(sentence(f"{why}. After its hours each green is {then}")),
        ]
        facts += [Fact("greens", f"{name[g]} {g.away}", (), g.greens) for g in ones]
        close |= set(ones)
    others = [g for g in greens if g not in close]
    if others:
        head: tuple[str, ...] = ("Greens", "What they are", "Why")
        rows_of_others: tuple[tuple[str, ...], ...] = tuple(
            (name[g], g.status, g.why) for g in others
        )
        if not any(g.why for g in others):
            head, rows_of_others = head[:2], tuple(row[:2] for row in rows_of_others)
        blocks.append(Table("Other greens" if close else "Greens", head, rows_of_others))
        facts += [Fact("greens", f"{name[g]} {g.status}", (), g.greens) for g in others]
    return blocks, facts


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _page(words: Words, days: Sequence[dt.date], told: _Day) -> DayPage:
    heading = words.dates.days(days)
    rows = list(told.key_facts)
    blocks: list[Block] = []
    facts = [Fact("day", heading, tuple(days))]
    if len(days) > 1:
        blocks.append(Paragraph.of("This page is good for each of these days."))
    if rows:
        blocks.append(KeyFacts(tuple(rows)))
        facts += (Fact("play", row.text) for row in rows)
    if told.holes:
        blocks += [_by_hour(told.holes), Paragraph.of(HOLES_CLOSE_LATER)]
        facts += (Fact("hours", f"{h.when} {h.in_play}") for h in told.holes)
    listed, carried = _greens(words, told.greens)
    blocks += listed
    facts += carried
    blocks += [Heading("What to tell people"), Bullets.of(*told.visitors)]
    facts += (Fact("visitors", text) for text in told.visitors)
    if said := rules(words, days):
        blocks += [Heading("Rules of play"), Bullets.of(COMMITTEE, *(rule.text for rule in said))]
        facts += (Fact("rules", rule.text, rule.dates) for rule in said)
    blocks += [
        Heading("Go or no go, and whom to ask"),
        Paragraph.of(
            " ".join(filter(None, (circumstances.decision(words), circumstances.contact(words))))
        ),
    ]
    works = frozenset(
        work.id for work in words.programme.works for one in work.visits if one.date in days
    )
    return DayPage(f"day {days[0].isoformat()}", heading, blocks, facts, works)
