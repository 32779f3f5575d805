"""The members' email: one screen says it all, the rest explains."""

from __future__ import annotations

from notices.documents import phrases
from notices.documents.letters import letter
from notices.documents.model import Document, Fact, Letter, Section
from notices.drawings.course import greens_by_day
from notices.drawings.of_period import whole_of
from notices.drawings.sizes import PHONE
from notices.programme.model import Period, Programme
from notices.wording import circumstances
from notices.wording.blocks import Block, Bullets, Paragraph, Picture
from notices.wording.period import PeriodWords
from notices.wording.words import Words


def member_email(programme: Programme) -> Letter:
    """Write the first announcement to members.

    It leads with the period that golfers notice most; what else is planned follows by date.
    """
    words = Words(programme)
    main = words.main_period()
    sections: list[Section] = []
    facts: list[Fact] = []
    drawings = []
    if main is None:
        closed, said = phrases.closures(words)
        summary = "What is closed, when and why."
        sections.append(Section("closures", (closed,)))
        facts += said
    else:
        told = PeriodWords(words, main)
        summary = f"{told.what()} {told.which()}"
        sections.append(Section("at a glance", (phrases.at_a_glance(told),)))
        facts += phrases.period_facts(told)
        if len(main.days) > 1 and len(main.greens) > 1:
            by_day = greens_by_day(words, told, PHONE)
            drawings.append(by_day)
            sections.append(
                Section(
                    "days",
                    (phrases.days_table(words, main), Picture(by_day.name)),
                    "Which green on which day",
                )
            )
            facts += phrases.days_facts(words, main)
    others = words.other_periods()
    if others:
        also = phrases.other_dates(words, others)
        sections.append(Section("other dates", (also,), "Also planned"))
        facts += (Fact("other dates", row.text) for row in also.rows)
    game = phrases.your_game(words, PeriodWords(words, main) if main else None)
    if game:
        sections.append(Section("your game", (Bullets.of(*game),), "What it means for your game"))
        facts += (Fact("your game", text) for text in game)
    sections.append(Section("safety", (phrases.safety(words),), "On the course"))
    sections += phrases.rules_section(words)
    facts += phrases.rules_facts(words)
    if main is not None:
        below = whole_of(words, main, "below-ground", PHONE)
        drawings += [below] if below else []
        sections += _explained(words, main, () if below is None else (Picture(below.name),))
    for period in others:
        section, carried = _also_planned(words, period)
        sections.append(section)
        facts += carried
    sections.append(_closing(words))
    document = Document.of(
        programme,
        name="member-email",
        title=phrases.title(words, main),
        summary=summary,
        sections=sections,
        facts=facts,
        drawings=drawings,
    )
    return letter(document, programme, calendar="calendar")


def _explained(words: Words, period: Period, shown: tuple[Picture, ...]) -> list[Section]:
    stories = list(phrases.operation_stories(words, period.works))
    many = len(stories) > 1
    steps: list[Block] = [Paragraph.of(phrases.EACH_ALONE)] if many else []
    for story in stories:
        steps += story
    return [
        Section("why", (*words.story(period), *shown, *phrases.photos(words)), "Why we do it"),
        Section("steps", tuple(steps), "What we do, step by step" if many else "What we do"),
    ]


def _also_planned(words: Words, period: Period) -> tuple[Section, list[Fact]]:
    told = PeriodWords(words, period)
    blocks: list[Block] = [phrases.at_a_glance(told)]
    besides = [text for text in (told.raised_cut(), told.later_dressings(), told.reserve()) if text]
    if len(period.days) > 1 and len(period.greens) > 1:
        blocks.append(phrases.days_table(words, period))
    if besides:
        blocks.append(Bullets.of(*besides))
    for story in phrases.operation_stories(words, period.works):
        blocks += story
    section = Section(
        "also planned",
        tuple(blocks),
        told.title(),
    )
    facts = [*phrases.period_facts(told), *(Fact("besides", text) for text in besides)]
    if len(period.days) > 1 and len(period.greens) > 1:
        facts += phrases.days_facts(words, period)
    return section, facts


def _closing(words: Words) -> Section:
    programme = words.programme
    lines = [
        circumstances.decision(words),
        circumstances.go_or_no_go(words),
        circumstances.contact(words),
    ]
    if programme.club.website:
        lines.append(f"The latest is always here: {programme.club.website}")
    lines.append(circumstances.approval(words))
    blocks: list[Block] = [Paragraph.of(line) for line in lines if line]
    blocks.append(Paragraph.of(circumstances.sign_off(words)))
    return Section("closing", tuple(blocks), phrases.closing_title(programme))
