"""Sections that several documents share, each with the facts that it carries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from notices.documents.model import Fact, Section
from notices.programme.model import Period, Programme, Work
from notices.wording import circumstances, visit
from notices.wording.blocks import (
    Block,
    Bullets,
    Folded,
    Heading,
    KeyFact,
    KeyFacts,
    Paragraph,
    Photo,
    Picture,
    Table,
)
from notices.wording.dates import MOST_RUNS, runs_of_days
from notices.wording.period import PeriodWords
from notices.wording.rules import COMMITTEE, rules
from notices.wording.words import Words

PLAY_SAFETY = (
    "The team on the course has priority.",
    "Please wait until they have seen you, moved aside and waved you on.",
    "They may wear ear protection and not hear you shout.",
    "If there is no flag in the hole, please do not play to that green.",
)
"""Common practice across clubs; the club's own rules come first."""


def at_a_glance(period_words: PeriodWords) -> KeyFacts:
    """What, when, which greens, your game, open again, putting well: the first screen."""
    rows = [
        KeyFact("What", period_words.what()),
        KeyFact("When", f"{period_words.when()}.", period_words.when()),
        KeyFact("Greens", period_words.which()),
        KeyFact("Your game", period_words.status_while_working()),
        *good_again(period_words),
    ]
    return KeyFacts(tuple(rows))


def good_again(period_words: PeriodWords, *, brief: bool = False) -> Iterator[KeyFact]:
    """Yield when greens are open again, where they were not, and when they putt well.

    Briefly where what else is done to them stands on the same sheet.
    """
    if not period_words.stays_open():
        yield KeyFact("Open again", period_words.open_again(), period_words.open_again_by())
    well = f"{period_words.putting_well(brief=brief)} {period_words.marks()}".strip()
    yield KeyFact("Putting well", well, period_words.putting_well_by())


def period_facts(period_words: PeriodWords) -> Iterator[Fact]:
    """Yield what at_a_glance says as facts."""
    period = period_words.period
    yield Fact("when", period_words.when(), period.days, period.greens)
    yield from (Fact("good again", row.text) for row in good_again(period_words))
    if reserve := period_words.reserve():
        yield Fact("besides", reserve)


def days_table(words: Words, period: Period) -> Table:
    """Days with their greens."""
    return Table(
        "Which green on which day",
        ("Day", "Greens"),
        tuple(
            (words.dates.days(days), words.greens(greens, short=True))
            for days, greens in words.days_of(period)
        ),
    )


def days_facts(words: Words, period: Period) -> Iterator[Fact]:
    """Yield each day with its greens."""
    for days, greens in words.days_of(period):
        yield Fact("day", words.dates.days(days), days, greens)


def other_dates(words: Words, periods: Sequence[Period]) -> KeyFacts:
    """Name what else is planned, each with its days and greens."""
    return KeyFacts(
        tuple(
            KeyFact(told.name(), days_and_greens(told), words.dates.days(told.period.days))
            for told in (PeriodWords(words, period) for period in periods)
        )
    )


def days_and_greens(told: PeriodWords) -> str:
    """Say when and on which greens, and how long these are away where that is longer."""
    when, greens = told.words.dates.days(told.period.days), told.words.greens(told.period.greens)
    return f"{when}, {greens}. {told.away_until()}".rstrip()


EACH_ALONE = (
    "Each time below is for one job alone. The dates above are for all of the jobs together."
)
"""Why the weeks of single works are fewer than those until the day that is promised."""


def operation_story(words: Words, work: Work) -> Iterator[Block]:
    """Yield what a work is, why it is done, what you see of it and how long."""
    text = words.operation(work)
    yield Heading(text.title)
    for names in (("what we do", "why"), ("what you will see", "your game", "how long")):
        yield text.joined(names)
    if known := circumstances.own_record(words, work.operation.name):
        yield Paragraph.of(known)
    for own in filter(None, (work.why, work.note)):
        yield Paragraph.of(own)
    yield from photos(words, work)


def operation_stories(words: Words, works: Sequence[Work]) -> Iterator[tuple[Block, ...]]:
    """Yield the story of each work; what is done again in the same words is told once."""
    yield from dict.fromkeys(tuple(operation_story(words, work)) for work in works)


def photos(words: Words, work: Work | None = None) -> Iterator[Photo]:
    """Yield the photographs of a work, or those that belong to all; each but once in a document."""
    for number, photograph in enumerate(words.programme.photographs, 1):
        first = photograph.works[0] if photograph.works else None
        if first == (work.id if work else None):
            name = f"photograph-{number}"
            yield Photo(name, photograph.data, photograph.shows, photograph.caption)


def title(words: Words, main: Period | None) -> str:
    """Name the work that the notices lead with and its days, or the days on which all is closed."""
    if main is not None:
        return PeriodWords(words, main).title()
    closed = {day for closure in words.programme.closures for day in closure.dates}
    if len(runs_of_days(closed)) <= MOST_RUNS:
        return f"Closures, {words.dates.days(closed)}"
    return f"Closures from {words.dates.day(min(closed))}"


def closures(words: Words) -> tuple[KeyFacts, list[Fact]]:
    """List by date what is closed and what golfers go without, for a plan without works."""
    programme = words.programme
    listed = [
        *(
            (one.dates, circumstances.closure(words, one, dated=False))
            for one in programme.closures
        ),
        *(
            (limit.dates, circumstances.gone_without(limit))
            for limit in dict.fromkeys(programme.restrictions)
        ),
    ]
    by_days: dict[tuple[dt.date, ...], list[str]] = {}
    for days, said in sorted(listed, key=lambda entry: entry[0][0]):
        by_days.setdefault(days, []).append(said)
    rows: list[KeyFact] = []
    facts: list[Fact] = []
    for days, together in by_days.items():
        when = words.dates.short_days(days)
        rows.append(KeyFact(when, " ".join(together)))
        facts += [Fact("also", when, days), *(Fact("your game", said) for said in together)]
    return KeyFacts(tuple(rows)), facts


def your_game(words: Words, period_words: PeriodWords | None) -> list[str]:
    """Collect what the works mean for a golfer's plans, a sentence or two each.

    Without works, what is closed has its own list (`closures`).
    """
    # What costs a round altogether comes first.
    said = visit.without_a_round(words)
    if period_words is None:
        return said + circumstances.fixtures(words)
    said += [
        period_words.raised_cut(),
        period_words.later_dressings(),
        period_words.if_it_rains(),
    ]
    said += circumstances.fixtures(words)
    said += [circumstances.closure(words, closed) for closed in words.programme.closures]
    said += circumstances.restrictions(words)
    return [text for text in said if text]


def as_drawn(section: Section, shown: Collection[str]) -> Section:
    """Return a section without the pictures that there are none of."""
    return replace(section, blocks=tuple(_drawn(section.blocks, shown)))


def _drawn(blocks: Sequence[Block], shown: Collection[str]) -> Iterator[Block]:
    for block in blocks:
        match block:
            case Picture(name) if name not in shown:
                continue
            case Folded(label, inner):
                yield Folded(label, tuple(_drawn(inner, shown)))
            case _:
                yield block


def rules_section(words: Words) -> Iterator[Section]:
    """Yield what the rules of golf let a player do, where the works call up any."""
    said = rules(words)
    if said:
        blocks = (Paragraph.of(COMMITTEE), Bullets.of(*(rule.text for rule in said)))
        title = "Rules while we work" if words.programme.works else "Rules for temporary greens"
        yield Section("rules", blocks, title)


def rules_facts(words: Words) -> Iterator[Fact]:
    """Yield what rules_section says as facts."""
    yield from (Fact("rules", said.text, said.dates) for said in rules(words))


def safety(words: Words) -> Bullets:
    """How to meet the team on the course, and what is closed on it."""
    return Bullets.of(*PLAY_SAFETY, *([circumstances.KEEP_OUT] if _shut(words) else []))


def may_meet_the_team(words: Words) -> bool:
    """Whether golfers come by people at work: on the greens, or where something is closed."""
    return bool(words.programme.works) or _shut(words)


def _shut(words: Words) -> bool:
    return any(circumstances.shuts_people_out(closed) for closed in words.programme.closures)


def closing_title(programme: Programme) -> str:
    """Head the last part of a notice."""
    # A closure for a county final does not wait for the weather.
    return "Weather, and whom to ask" if programme.works else "Whom to ask"
