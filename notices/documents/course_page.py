"""The page for the club's own site: what is done by date, what it means for a round, and why."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from notices.documents import phrases
from notices.documents.model import Document, Entry, Fact, Page, Section
from notices.documents.questions_and_answers import facts_of
from notices.drawings.course import greens_by_day
from notices.drawings.course_days import course_day_by_day
from notices.drawings.model import Drawing
from notices.drawings.of_period import drawings_of, name_of_slice, slice_of
from notices.drawings.sizes import PAGE, PHONE
from notices.operations import WhileWorking
from notices.programme.model import Period, Programme, Work
from notices.wording import circumstances, visit
from notices.wording.audience import Audience
from notices.wording.blocks import (
    Block,
    Bullets,
    Folded,
    Heading,
    Paragraph,
    Picture,
    Table,
)
from notices.wording.period import PeriodWords
from notices.wording.questions import questions
from notices.wording.words import Words

Row = tuple[tuple[dt.date, ...], str, str, str]
"""Days, how they are said, what is done or closed, and what it means for a round."""


def course_pages(programme: Programme) -> Entry:
    """Return the page with what to do with it."""
    return Entry(
        "Page for the club’s site",
        "Members and visitors",
        "Put course-page.html on the club’s website as it is: it is one file and needs no other. "
        "Put the new one in its place when the plan changes.",
        (Page(course_page(programme), "contents"),),
        again="Leave the one that is on the website.",
    )


def course_page(programme: Programme) -> Document:
    """Write the page: the days first, then a golfer's round, then the reasons."""
    words = Words(programme)
    main = words.main_period()
    by_day = [
        (drawing, on)
        for sizes, on in ((PAGE, "wide"), (PHONE, "narrow"))
        for drawing in course_day_by_day(words, sizes)
    ]
    parts = [
        *_at_a_glance(words, main),
        _by_date(words, tuple(Picture(drawing.name, on) for drawing, on in by_day)),
        *_your_game(words, main),
        *_putting_well(words),
        *_rules(words),
        *_why(words),
        *_asked(words),
        _closing(words),
    ]
    drawings = (*_drawings(words, main), *(drawing for drawing, _ in by_day))
    shown = {drawing.name for drawing in drawings}
    return Document.of(
        programme,
        name="course-page",
        title=phrases.title(words, main),
        summary="What is done on the course, day by day, and what it means for your game.",
        sections=(phrases.as_drawn(section, shown) for section, _ in parts),
        facts=(fact for _, facts in parts for fact in facts),
        drawings=drawings,
    )


Part = tuple[Section, list[Fact]]


def _drawings(words: Words, main: Period | None) -> Iterator[Drawing]:
    if main is not None:
        if _has_days(main):
            for sizes in (PAGE, PHONE):
                yield greens_by_day(words, PeriodWords(words, main), sizes)
        for sizes in (PAGE, PHONE):
            yield from drawings_of(words, main, sizes)
            for period, work in _explained(words, main):
                name = name_of_slice(words, period, work)
                if period is not main and (drawn := slice_of(words, work, name, sizes)):
                    yield drawn


def _has_days(period: Period) -> bool:
    return len(period.days) > 1 and len(period.greens) > 1


def _at_a_glance(words: Words, main: Period | None) -> Iterator[Part]:
    if main is None:
        return
    told = PeriodWords(words, main)
    blocks: tuple[Block, ...] = (phrases.at_a_glance(told),)
    if _has_days(main):
        blocks = (*blocks, *_in_both_sizes("greens-by-day"))
    yield Section("glance", blocks), list(phrases.period_facts(told))


def _by_date(words: Words, seen: tuple[Picture, ...]) -> Part:
    """List by date what is done, closed or kept free: a member looks up the day of a round."""
    if not words.programme.periods:
        closed, said = phrases.closures(words)
        return Section("days", (closed,), "Day by day"), said
    rows = sorted(_rows(words), key=lambda row: row[0][0])
    table = Table(
        "Work, closures and days kept free",
        ("Date", "What", "Your game"),
        tuple((said, what, game) for _, said, what, game in rows),
    )
    facts = [Fact("day", said, days) for days, said, _, _ in rows]
    picture = (Folded("Every green on every day", seen),) if seen else ()
    return Section("days", (table, *picture), "Day by day"), facts


def _rows(words: Words) -> Iterator[Row]:
    for period in words.programme.periods:
        told = PeriodWords(words, period)
        for days, greens in words.days_of(period):
            what = f"{told.name()}: {words.greens(greens)}"
            game = told.away_until() or visit.closed_for(words, days[0], greens)
            yield days, words.dates.short_days(days), what, game
        yield from _later_dressings(words, period)
        if period.reserve_dates:
            days = period.reserve_dates
            kept = f"{words.language.reserve_days(len(days))}: {told.name().lower()}"
            them = "them" if len(days) > 1 else "it"
            game = f"We use {them} only if rain stops us before."
            yield days, words.dates.short_days(days), kept, game
    for closed in words.programme.closures:
        thing = circumstances.closed_thing(words, closed)
        game = circumstances.instead(closed)
        if closed.instead and not game:
            game = circumstances.temporary_is(closed, many=len(closed.greens) > 1)
        yield closed.dates, words.dates.short_days(closed.dates), thing, game
    for limit in words.programme.restrictions:
        but = f"Except {limit.exception.rstrip('.')}." if limit.exception else ""
        yield limit.dates, words.dates.short_days(limit.dates), f"No {limit.what}", but


LOOSE_SAND = "Some loose sand on the greens."


def _later_dressings(words: Words, period: Period) -> Iterator[Row]:
    for work in period.works:
        for ordinal in sorted({v.ordinal for v in work.follow_ups}):
            days = tuple(sorted({v.date for v in work.follow_ups if v.ordinal == ordinal}))
            what = f"{words.title(work)} again: {words.greens_briefly(work.greens)}"
            shut = work.while_working is WhileWorking.CLOSED
            game = f"{'Each green is closed while we spread sand. ' if shut else ''}{LOOSE_SAND}"
            yield days, words.dates.short_days(days), what, game


def _your_game(words: Words, main: Period | None) -> Iterator[Part]:
    said = phrases.your_game(words, PeriodWords(words, main) if main else None)
    blocks: list[Block] = [Bullets.of(*said)] if said else []
    if phrases.may_meet_the_team(words):
        blocks += [Heading("When you meet our team"), phrases.safety(words)]
    if blocks:
        facts = [Fact("your game", text) for text in said]
        yield Section("your game", tuple(blocks), "What it means for your game"), facts


def _putting_well(words: Words) -> Iterator[Part]:
    """Say of each other period when its greens are good again; the main one leads the page."""
    others = words.other_periods()
    if not others:
        return
    blocks: list[Block] = []
    facts: list[Fact] = []
    for period in others:
        told = PeriodWords(words, period)
        name = told.title()
        besides = [t for t in (told.raised_cut(), told.later_dressings(), told.reserve()) if t]
        glance: tuple[Block, ...] = (phrases.at_a_glance(told),)
        blocks.append(Folded(name, (*glance, *map(Paragraph.of, besides))))
        facts += phrases.period_facts(told)
    yield Section("also planned", tuple(blocks), "Also planned"), facts


def _rules(words: Words) -> Iterator[Part]:
    for section in phrases.rules_section(words):
        yield section, list(phrases.rules_facts(words))


def _why(words: Words) -> Iterator[Part]:
    """Give the reasons, and behind a heading for each kind of work what it is."""
    main = words.main_period()
    if main is None:
        return
    place = words.programme.periods.index(main) + 1
    below = _in_both_sizes(f"section-{place}")
    blocks: list[Block] = [*words.story(main), *below, *phrases.photos(words)]
    explained = list(_explained(words, main))
    if len(explained) > 1:
        blocks.append(Paragraph.of(phrases.EACH_ALONE))
    for period, work in explained:
        heading, *story = phrases.operation_story(words, work)
        if isinstance(heading, Heading):
            slices = _in_both_sizes(name_of_slice(words, period, work))
            blocks.append(Folded(heading.text, (*story, *slices)))
    later = (Picture(f"surface-{place}-{moment}") for moment in ("smooth", "healed"))
    from_above = (*_in_both_sizes(f"surface-{place}-after"), *later)
    blocks.append(Folded("The green from above: after the work, later and healed", from_above))
    yield Section("why", tuple(blocks), "Why we do it, and how"), []


def _explained(words: Words, main: Period) -> Iterator[tuple[Period, Work]]:
    """Yield the first work of each kind, with its period; the main one leads."""
    told: set[str] = set()
    for period in (main, *words.other_periods()):
        for work in period.works:
            if work.operation.name not in told:
                told.add(work.operation.name)
                yield period, work


def _in_both_sizes(name: str) -> tuple[Picture, Picture]:
    return Picture(name + PAGE.suffix, "wide"), Picture(name + PHONE.suffix, "narrow")


def _asked(words: Words) -> Iterator[Part]:
    """Answer what members ask; what the committee asks stands in its briefing."""
    asked = [one for one in questions(words) if one.audience is not Audience.COMMITTEE]
    if asked:
        blocks = tuple(Folded(one.question, one.answer) for one in asked)
        facts = [fact for one in asked for fact in facts_of(one)]
        yield Section("questions", blocks, "Questions"), facts


def _closing(words: Words) -> Part:
    lines = [
        circumstances.decision(words),
        circumstances.go_or_no_go(words),
        circumstances.contact(words),
        circumstances.approval(words),
    ]
    blocks = tuple(Paragraph.of(line) for line in lines if line)
    title = "Weather, and whom to ask" if words.programme.works else "Whom to ask"
    return Section("ask", blocks, title), []
