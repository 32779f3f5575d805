"""The notices for visitors: one for anybody who comes, and one for each party that has its date."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator, Sequence

from notices.documents import phrases
from notices.documents.model import Document, Entry, Fact, Fit, Page, PlainText, Section, Sheet
from notices.programme.model import Period, Programme
from notices.programme.slugs import distinct_slugs
from notices.programme.visiting import days_of_parties
from notices.wording import circumstances, visit
from notices.wording.blocks import Block, Bullets, KeyFact, KeyFacts, Paragraph, Table
from notices.wording.period import PeriodWords
from notices.wording.rules import lost_scores_said
from notices.wording.words import Words

FITS = (
    Fit("roomy"),
    Fit(room=0.87),
    Fit("close", room=0.73),
    Fit("close closer", room=0.69),
    Fit("close closer closest", room=0.62),
)
"""Ways to set the sheet: one page in the largest letters that fit it."""

WELCOME = "Thank you for coming to play with us."

WINTER = "Grass does not grow in winter, so the greens take longer."


def visitor_notices(programme: Programme) -> Entry:
    """Return the notices for visitors with what to do with them."""
    documents = (visitor_notice(programme), *parties(programme))
    todo = (
        "Send visitor-notice.html or .txt to whoever books, or hand out the PDF at the shop."
        if len(documents) == 1
        else "Send the party its own notice a week before its day. Send visitor-notice.html or "
        ".txt to all others who book, or hand out the PDF at the shop."
    )
    return Entry(
        "Notices for visitors",
        "Visitors and groups",
        todo,
        tuple(item for document in documents for item in forms(document)),
        again="No need to send or print it again.",
    )


def forms(document: Document) -> Iterator[Page | PlainText | Sheet]:
    """Yield what visitors get of a document: to read on a screen, to send on, to hold."""
    yield Page(document)
    yield PlainText(document)
    yield Sheet(document, "reading", FITS)


def visitor_notice(programme: Programme) -> Document:
    """Write the notice for anybody who comes to play: what is affected, and on which days."""
    words = Words(programme)
    sections, facts = _dates(words)
    game, said = _your_visit(words)
    sections += game
    facts += said
    return Document.of(
        programme,
        name="visitor-notice",
        title="For our visitors: work on the course",
        summary="Which days are affected, and what you will meet.",
        sections=(
            Section("welcome", (Paragraph.of(f"{WELCOME} {_what_this_is(words)}"),)),
            *sections,
            *on_the_day(words, met=phrases.may_meet_the_team(words), in_doubt=True),
        ),
        facts=facts,
    )


def _what_this_is(words: Words) -> str:
    if words.programme.works:
        return "Here are the days on which we work on the greens, and when they putt well again."
    return "Here are the days on which a part of the course is closed."


def _dates(words: Words) -> tuple[list[Section], list[Fact]]:
    periods = words.programme.periods
    if not periods:
        return [], []
    blocks, facts = work_on_greens(words, periods)
    return [Section("dates", blocks, "Which days are affected")], facts


def work_on_greens(words: Words, periods: Sequence[Period]) -> tuple[tuple[Block, ...], list[Fact]]:
    """Tell by date what is done on which greens, and what one meets there."""
    every = [PeriodWords(words, period) for period in periods]
    if len(every) == 1:
        return _the_only_work(every[0])
    rows, facts = [], []
    # What is true of several dates is said once, above them.
    above = [WINTER] if sum(bool(told.winter()) for told in every) > 1 else []
    for told in every:
        period = told.period
        when = words.dates.short_days(period.days)
        rows.append(
            (
                when,
                f"{told.name()}, {words.greens_briefly(period.greens)}",
                " ".join(filter(None, _what_one_meets(told))),
                _good_again(told, winter=not above),
            )
        )
        facts.append(Fact("when", when, period.days, period.greens))
    head = ("When", "What we do", "What you meet", "Putting well")
    table = Table("Work on the greens", head, tuple(rows))
    return (*map(Paragraph.of, above), table), facts


def _the_only_work(told: PeriodWords) -> tuple[tuple[Block, ...], list[Fact]]:
    """Answer one after the other what stands side by side where there are several works."""
    (*_, well) = phrases.good_again(told, brief=True)
    reserve = told.reserve_days() if told.period.reserve_dates else ""
    rows = (
        KeyFact("What we do", f"{told.name()}."),
        KeyFact("When", f"{told.when()}.", told.when()),
        KeyFact("Greens", told.which()),
        KeyFact("Your game", told.status_while_working()),
        well,
        KeyFact("Sand again", told.later_dressings()),
        KeyFact("If it rains", reserve),
    )
    facts = [Fact("when", told.when(), told.period.days, told.period.greens)]
    return (KeyFacts(tuple(row for row in rows if row.text)),), facts


def _what_one_meets(told: PeriodWords) -> Iterator[str]:
    """Say what is closed, when sand is spread again, and what rain does."""
    yield told.status_while_working()
    yield told.later_dressings()
    if told.period.reserve_dates:
        yield f"If it rains: {told.reserve_days()[:1].lower()}{told.reserve_days()[1:]}"


def _good_again(told: PeriodWords, *, winter: bool) -> str:
    # The other works stand in the same table.
    return f"{told.putting_well(brief=True, winter=winter)} {told.marks()}".strip()


def _your_visit(words: Words) -> tuple[list[Section], list[Fact]]:
    """Collect what else visitors plan by: the best days, days without a round, closures, limits."""
    said: list[str] = []
    facts: list[Fact] = []
    main = words.main_period()
    if main is not None:
        best, days = visit.best_days(words, main)
        if best:
            said.append(best)
            facts.append(Fact("best days", best, days))
    said += visit.without_a_round(words)
    said += [circumstances.closure(words, closed) for closed in words.programme.closures]
    said += circumstances.restrictions(words)
    lost = lost_scores_said(words)
    said += [rule.text for rule in lost]
    facts += [Fact("scores", rule.text, rule.dates) for rule in lost]
    if not said:
        return [], []
    facts += [Fact("your visit", text) for text in said if text not in {f.text for f in facts}]
    title = "For planning your visit" if words.programme.works else "What is closed"
    return [Section("your visit", (Bullets.of(*said),), title)], facts


def on_the_day(words: Words, *, met: bool, in_doubt: bool) -> list[Section]:
    """Say how to meet the team on the course where it is ``met``, and whom to ask."""
    sections = []
    if met:
        sections.append(Section("safety", (phrases.safety(words),), "When you meet our team"))
    lines = [circumstances.decision(words)] if in_doubt else []
    lines.append(f"{circumstances.booking(words)} {circumstances.contact(words)}".strip())
    if words.programme.club.website:
        lines.append(f"The latest is always here: {words.programme.club.website}")
    blocks = tuple(Paragraph.of(line) for line in lines if line)
    sections.append(Section("closing", blocks, "Whom to ask"))
    return sections


def parties(programme: Programme) -> Iterator[Document]:
    """Yield a notice for each visiting party whose day is still to come."""
    days = days_of_parties(programme)
    slugs = distinct_slugs(days, "party")
    for name, dates in days.items():
        yield _party(Words(programme), slugs[name], name, dates)


def _party(words: Words, slug: str, name: str, dates: tuple[dt.date, ...]) -> Document:
    """Write the notice for one party: its day or days, the greens, where to start, whom to ask."""
    several = len(dates) > 1
    sections, facts = [], []
    for day in dates:
        when = words.dates.day(day)
        rows = rows_of_day(words, day)
        heading = when if several else "On your day"
        sections.append(Section(f"day {day.isoformat()}", (KeyFacts(rows),), heading))
        facts += [Fact("day", when, (day,)), *(Fact("your day", row.text) for row in rows)]
    welcome = f"{WELCOME} This is how you will find the course on {words.dates.days(dates)}."
    return Document.of(
        words.programme,
        name=f"visitor-notice-{slug}",
        title=f"{name}: how you will find the course",
        summary="What is open on your day, and what the greens will be like.",
        sections=(Section("welcome", (Paragraph.of(welcome),)), *sections, *on_days(words, dates)),
        facts=facts,
    )


def on_days(words: Words, dates: Collection[dt.date]) -> list[Section]:
    """Say how to meet the team on some days, where it may be about, and whom to ask."""
    programme = words.programme
    met = any(one.date in dates for work in programme.works for one in work.visits)
    kept = any(day in dates for period in programme.periods for day in period.reserve_dates)
    in_doubt = met or kept or any(day in programme.play for day in dates)
    return on_the_day(words, met=met or kept, in_doubt=in_doubt)


def rows_of_day(words: Words, day: dt.date) -> tuple[KeyFact, ...]:
    """Answer what a party asks about its day."""
    rows = [
        KeyFact("Open", visit.what_is_open(words, day)),
        KeyFact("The greens", visit.what_the_greens_are_like(words, day)),
        KeyFact("Where to start", visit.where_to_start(words, day)),
        KeyFact("Please note", " ".join(_besides(words, day))),
        KeyFact("If it rains", visit.kept_free(words, day)),
    ]
    return tuple(row for row in rows if row.text)


def _besides(words: Words, day: dt.date) -> list[str]:
    """Tell of closures besides greens, and of what one goes without that day."""
    closed = [
        circumstances.closure(words, one)
        for one in words.programme.closures
        if day in one.dates and not one.greens and not one.whole_course
    ]
    return [*closed, *visit.restrictions_on(words, day)]
