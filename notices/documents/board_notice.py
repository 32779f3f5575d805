"""The sheet for the notice board: read from two metres, from further away, or in large print."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from notices.documents import phrases
from notices.documents.model import MANY, Document, Entry, Fact, Fit, Section, Sheet
from notices.drawings.course import green_strip
from notices.drawings.model import Drawing
from notices.programme.model import Period, Programme
from notices.programme.news import last_day_of_news
from notices.wording import circumstances, visit
from notices.wording.blocks import KeyFact, KeyFacts, Paragraph, Run, Table, linked
from notices.wording.dates import in_brief, unbroken
from notices.wording.lists import sentence
from notices.wording.period import PeriodWords
from notices.wording.rules import lost_scores
from notices.wording.words import Words

FITS = (
    Fit("grand"),
    Fit("ample", room=0.79),
    Fit("roomy", room=0.65),
    Fit("tight", room=0.59),
    Fit("tight close", room=0.56),
    Fit("tight", frozenset({"why"}), room=0.53),
    Fit("tight close", frozenset({"why"}), room=0.5),
    Fit("tight close slim", frozenset({"why"}), room=0.46),
    Fit("tight close dense", frozenset({"why"}), room=0.44),
    Fit("tight close dense", frozenset({"why", "weather"}), room=0.42),
)
"""Ways to set the sheet.

Only the reasons may go, and at the very last what the weather must be, never a fact: where even that
is too much, a second page follows.
"""

LARGE_FITS = (Fit(), Fit("close", room=0.83))
"""Ways to set the large print: closer where that saves a page of a few lines."""


def board_notices(programme: Programme) -> Entry:
    """Return the sheets for the notice board with what to do with them."""
    words = Words(programme)
    down = words.dates.day(last_day_of_news(programme))
    terms = words.language.terms
    sheet = board_notice(programme)
    boards = programme.club.boards
    hang = f"hang copies here: {boards}" if boards else "put it up now"
    large = replace(sheet, name="board-notice-large-print", drawings=())
    return Entry(
        terms.notice_board,
        "Everyone at the club",
        f"Print it on {terms.paper}, in {terms.colour} or black and white, and {hang}. "
        f"Take {terms.large_paper} for a large board. Keep the large print at the counter, for whoever asks. "
        f"Take them down after {down}.",
        (
            Sheet(sheet, "board-notice", FITS),
            Sheet(replace(sheet, name="board-notice-a3"), "board-notice-a3", FITS),
            Sheet(large, "large-print", LARGE_FITS, pages=MANY),
        ),
        again="Leave it up: no need to print it again.",
    )


def board_notice(programme: Programme) -> Document:
    """Write the sheet for the notice board.

    Dates and greens come first and large; why and whom to ask stand at the foot.
    """
    words = Words(programme)
    main = words.main_period()
    sections: list[Section] = []
    facts: list[Fact] = []
    drawings: list[Drawing] = []
    if main is None:
        title = "Closures"
        summary = "What is closed, when and why."
    else:
        told = PeriodWords(words, main)
        title = told.name()
        # Each day stands in the table.
        when = in_brief(main.days)
        heading = words.dates.days_with_year(when)
        summary = f"{words.dates.days(when)}. {told.putting_well(brief=True)}"
        days = words.days_of(main)
        one_month = len({day.month for day in main.days}) == 1
        head = words.dates.month(main.days[0]) if one_month else "Day"
        name_days = words.dates.days_of_month if one_month else words.dates.short_days_without_year
        rows = tuple((name_days(dates), words.greens(greens, short=True)) for dates, greens in days)
        drawings = [green_strip(words, greens, f"day-{n}") for n, (_, greens) in enumerate(days)]
        sections.append(
            Section(
                "days",
                (
                    Paragraph.of(unbroken(heading)),
                    Table(told.what(), (head, "Greens"), rows),
                ),
            )
        )
        facts.append(Fact("when", heading, tuple(when), main.greens))
        facts += (Fact("day", name_days(dates), dates, greens) for dates, greens in days)
        sections.append(Section("good again", (_good_again(told),)))
        facts += (Fact("good again", row.text) for row in _good_again(told).rows)
    others = [(words.dates.short_days(days), days, what) for days, what in _other_dates(words)]
    if others and main is None:
        in_full = KeyFacts(tuple(KeyFact(when, sentence(what)) for when, _, what in others))
        sections.append(Section("dates", (in_full,)))
        facts += (Fact("besides", row.text) for row in in_full.rows)
    elif others:
        listed = KeyFacts(tuple(KeyFact(what, when) for when, _, what in others))
        sections.append(Section("also", (listed,)))
    facts += (Fact("also", when, days) for when, days, _ in others)
    besides = visit.without_a_round(words)
    if main is not None:
        besides.append(PeriodWords(words, main).later_dressings(brief=True))
    # What a closure means for a fixture stands beside its date, where there is no work to tell of.
    fixtures = circumstances.fixtures(words, brief=True) if main is not None else []
    paragraphs = [*map(Paragraph.of, filter(None, besides)), *map(_of_fixture, fixtures)]
    if paragraphs:
        sections.append(Section("besides", tuple(paragraphs)))
        facts += (Fact("besides", paragraph.text) for paragraph in paragraphs)
    if main is not None:
        sections.append(Section("why", words.story(main)[:1], "Why"))
    sections += _foot(words)
    down = words.dates.day(last_day_of_news(programme))
    sections.append(Section("take down", (Paragraph.of(f"Take down after {down}."),)))
    return Document.of(
        programme,
        name="board-notice-a4",
        title=title,
        summary=summary,
        sections=sections,
        facts=facts,
        drawings=drawings,
    )


def _foot(words: Words) -> list[Section]:
    """Weather, decision and whom to ask; the first has the heading, where a sheet shows one."""
    said = {
        "decision": circumstances.decision(words),
        "weather": circumstances.go_or_no_go(words),
        "ask": circumstances.contact(words),
    }
    shown = [(name, Paragraph.of(text)) for name, text in said.items() if text]
    title = phrases.closing_title(words.programme)
    return [
        Section(name, (block,), "" if place else title) for place, (name, block) in enumerate(shown)
    ]


def _good_again(told: PeriodWords) -> KeyFacts:
    rows = [
        KeyFact("On the day", told.status_while_working()),
        *phrases.good_again(told, brief=True),
    ]
    if told.period.reserve_dates:
        rows.append(KeyFact("If it rains", told.reserve_days()))
    return KeyFacts(tuple(rows))


def _of_fixture(said: str) -> Paragraph:
    """Let the fixture and its day stand out, where a sentence begins with them."""
    name, colon, means = said.partition(": ")
    if not colon:
        return Paragraph.of(said)
    return Paragraph((Run(f"{name}:", strong=True), *linked(f" {means}")))


def _other_dates(words: Words) -> list[tuple[tuple[dt.date, ...], str]]:
    """Say by date what else is done, what is closed, and what golfers go without.

    Where there is no work, closures are what the sheet is about, and each is told in full.
    """
    listed = [_other_period(words, period) for period in words.other_periods()]
    listed += [
        (
            closed.dates,
            circumstances.closed_thing(words, closed)
            if words.programme.works
            else circumstances.closure(words, closed, dated=False),
        )
        for closed in words.programme.closures
    ]
    listed += [
        (limit.dates, circumstances.gone_without(replace(limit, ask="")).removesuffix("."))
        for limit in dict.fromkeys(words.programme.restrictions)
    ]
    listed += [
        (days, score.replace("no score", "No handicap score")) for score, days in lost_scores(words)
    ]
    return sorted(listed, key=lambda entry: entry[0][0])


def _other_period(words: Words, period: Period) -> tuple[tuple[dt.date, ...], str]:
    """Return the days of a period and what it is; of greens that are away for long, for how long."""
    told = PeriodWords(words, period)
    if away := told.days_away():
        return away, told.away()
    return period.days, f"{told.name()}: {words.greens_briefly(period.greens)}"
