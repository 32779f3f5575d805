"""The handout at the counter: what the email says, on one sheet, for members who have no email."""

from __future__ import annotations

from notices.documents import phrases
from notices.documents.model import Document, Entry, Fact, Fit, Section, Sheet
from notices.programme.model import Period, Programme
from notices.wording import circumstances
from notices.wording.blocks import Bullets, KeyFact, KeyFacts, Paragraph
from notices.wording.period import PeriodWords
from notices.wording.words import Words

ONE_SIDE, BOTH_SIDES = 1, 2

FITS = tuple(
    Fit(styles, pages=pages, room=room)
    for pages in (ONE_SIDE, BOTH_SIDES)
    for styles, room in (("roomy", 1.0), ("", 0.87), ("close", 0.73), ("close closer", 0.71))
)
"""Ways to set the sheet: on one side if all goes there, else on both, in the largest letters."""


def counter_handouts(programme: Programme) -> Entry:
    """Return the handout with what to do with it."""
    terms = Words(programme).language.terms
    return Entry(
        "Handout for the counter",
        "Members without email",
        f"Print a pile on {terms.paper}, on both sides where it has two pages. Lay it out at the "
        "counter, and send one to whoever asks. It says what the email says.",
        (Sheet(counter_handout(programme), "handout", FITS),),
        again="No need to print it again.",
    )


def counter_handout(programme: Programme) -> Document:
    """Write the handout, in the order in which a member asks."""
    words = Words(programme)
    main = words.main_period()
    sections: list[Section] = []
    facts: list[Fact] = []
    if main is None:
        closed, said = phrases.closures(words)
        sections.append(Section("closures", (closed,)))
        facts += said
    else:
        told = PeriodWords(words, main)
        sections.append(Section("at a glance", (phrases.at_a_glance(told),)))
        facts += phrases.period_facts(told)
        if len(main.days) > 1 and len(main.greens) > 1:
            sections.append(Section("days", (phrases.days_table(words, main),)))
            facts += phrases.days_facts(words, main)
    others = [_other(words, period) for period in words.other_periods()]
    if others:
        sections.append(Section("other dates", (KeyFacts(tuple(others)),), "Also planned"))
        facts += (Fact("other dates", row.text) for row in others)
    game = phrases.your_game(words, PeriodWords(words, main) if main else None)
    if game:
        sections.append(Section("your game", (Bullets.of(*game),), "What it means for your game"))
        facts += (Fact("your game", text) for text in game)
    if main is not None:
        sections.append(Section("safety", (phrases.safety(words),), "On the course"))
        sections.append(Section("why", words.story(main)[:1], "Why we do it"))
    sections.append(_closing(words))
    return Document.of(
        programme,
        name="counter-handout",
        title=phrases.title(words, main),
        summary="What is planned, what it means for your game, and whom to ask.",
        sections=sections,
        facts=facts,
    )


def _other(words: Words, period: Period) -> KeyFact:
    """Say when and where another period is, what is closed, when it is good, what rain does to it."""
    told = PeriodWords(words, period)
    parts = [phrases.days_and_greens(told)]
    if not told.stays_open() and not told.days_away():
        parts.append(told.status_while_working())
    if not told.leaves_putts_alone():
        well = told.putting_well()
        parts.append(f"Putting well: {well[:1].lower()}{well[1:]}")
    if period.reserve_dates:
        parts.append(f"If it rains: {told.reserve_days()[:1].lower()}{told.reserve_days()[1:]}")
    return KeyFact(told.name(), " ".join(parts), words.dates.days(period.days))


def _closing(words: Words) -> Section:
    website = words.programme.club.website
    lines = (
        circumstances.decision(words),
        circumstances.go_or_no_go(words),
        circumstances.contact(words),
        f"The latest is always here: {website}" if website else "",
        circumstances.approval(words),
        circumstances.sign_off(words),
    )
    blocks = tuple(Paragraph.of(line) for line in lines if line)
    return Section("closing", blocks, phrases.closing_title(words.programme))
