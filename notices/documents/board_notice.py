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
from notices.wording.blocks import KeyFact, KeyFacts, Paragraph, Table
from notices.wording.dates import in_brief
from notices.wording.period import PeriodWords
from notices.wording.rules import lost_scores
from notices.wording.words import Words

FITS = (
    Fit("grand"),
    Fit("roomy", room=0.62),
    Fit("tight", room=0.55),
    Fit("tight close", room=0.52),
    Fit("tight", frozenset({"why"}), room=0.49),
    Fit("tight close", frozenset({"why"}), room=0.46),
    Fit("tight close", frozenset({"why", "weather"}), room=0.44),
    Fit("tight close slim", frozenset({"why"}), room=0.41),
    Fit("tight close dense", frozenset({"why"}), room=0.39),
    Fit("tight close dense", frozenset({"why", "weather"}), room=0.38),
)
"""Ways to set the sheet.

Only the reasons may go, and what the weather must be, never a fact: where even that is too much, a second page follows.
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
                    Paragraph.of(heading),
                    Table(told.what(), (head, "Greens"), rows),
                ),
            )
        )
        facts.append(Fact("when", heading, tuple(when), main.greens))
        facts += (Fact("day", name_days(dates), dates, greens) for dates, greens in days)
        sections.append(Section("good again", (_good_again(told),)))
        facts += (Fact("good again", row.text) for row in _good_again(told).rows)
    others = _other_dates(words)
    if others:
        sections.append(Section("also", (KeyFacts(tuple(row for row, _ in others)),)))
        facts += (Fact("also", row.text, days) for row, days in others)
    if main is not None:
        again = PeriodWords(words, main).later_dressings(brief=True)
        besides = [*visit.without_a_round(words), again, *circumstances.fixtures(words, brief=True)]
    else:
        besides = visit.without_a_round(words)
        besides += [circumstances.closure(words, closed) for closed in programme.closures]
    if besides := list(filter(None, besides)):
        sections.append(Section("besides", tuple(Paragraph.of(text) for text in besides)))
        facts += (Fact("besides", text) for text in besides)
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


def _other_dates(words: Words) -> list[tuple[KeyFact, tuple[dt.date, ...]]]:
    """Say by date what else is done, what is closed, and what golfers go without."""
    listed = [_other_period(words, period) for period in words.other_periods()]
    listed += [
        (closed.dates, circumstances.closed_thing(words, closed))
        for closed in words.programme.closures
    ]
    listed += [
        (limit.dates, circumstances.gone_without(replace(limit, ask="")).removesuffix("."))
        for limit in dict.fromkeys(words.programme.restrictions)
    ]
    listed += [
        (days, score.replace("no score", "No handicap score")) for score, days in lost_scores(words)
    ]
    return [
        (KeyFact(what, words.dates.short_days(days)), days)
        for days, what in sorted(listed, key=lambda entry: entry[0][0])
    ]


def _other_period(words: Words, period: Period) -> tuple[tuple[dt.date, ...], str]:
    """Return the days of a period and what it is; of greens that are away for long, for how long."""
    told = PeriodWords(words, period)
    if away := told.days_away():
        return away, told.away()
    return period.days, f"{told.name()}: {words.greens_briefly(period.greens)}"
