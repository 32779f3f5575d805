"""Short messages for phones and screens: one for each occasion, in two lengths."""

from __future__ import annotations

from collections.abc import Iterator

from notices.documents.model import Document, Entry, Fact, PlainText, Section
from notices.programme.model import Moment, Period, Programme
from notices.programme.news import has_begun
from notices.wording.blocks import Block, Heading, Paragraph
from notices.wording.lists import counted, sentence
from notices.wording.moments import short_messages as candidates
from notices.wording.period import PeriodWords
from notices.wording.text_message import (
    ONE_PART,
    ONE_PART_UCS2,
    characters,
    first_within,
    for_phones,
    is_default,
    parts,
)
from notices.wording.words import Words

SCREEN = 280
"""Characters that most screens and feeds take (common practice)."""


def short_messages(programme: Programme) -> Entry | None:
    """Return the short messages with what to do with them; None where only closures are planned."""
    if not programme.periods:
        return None
    return Entry(
        "Short messages",
        "Members, on phones and screens",
        "Copy the one for the day. The number says how many characters a phone counts: up to "
        f"{ONE_PART} go as one message.",
        (PlainText(_document(programme), wrapped=False),),
    )


CALLED = {Moment.STOPPED: "Work stopped"}
"""What an occasion is called where the plan's own term is not one for every reader."""


BEFOREHAND = (Moment.ANNOUNCEMENT, Moment.REMINDER)
"""What is of no use once the work has begun."""


def _document(programme: Programme) -> Document:
    words = Words(programme)
    sections, facts = [], []
    for period in [p for p in programme.periods if p.noticed] or programme.periods:
        told = PeriodWords(words, period)
        name = told.title()
        blocks: list[Block] = []
        begun = has_begun(programme, period)
        for moment in Moment:
            if begun and moment in BEFOREHAND:
                continue
            texts = list(dict.fromkeys(_messages(words, period, moment)))
            if texts:
                blocks.append(Heading(CALLED.get(moment, sentence(moment.value)[:-1])))
            for text in texts:
                blocks += [Paragraph.of(text), Paragraph.of(_length(text))]
                facts.append(Fact(moment.value, text))
        sections.append(Section(f"period {period.works[0].id}", tuple(blocks), name))
    return Document.of(
        programme,
        name="short-messages",
        title="Short messages",
        summary="Messages for phones and screens, one for each occasion.",
        sections=sections,
        facts=facts,
    )


def _messages(words: Words, period: Period, moment: Moment) -> Iterator[str]:
    """Yield the fullest wording for a screen, and the fullest that a phone sends as one message."""
    draft = "DRAFT: " if words.programme.draft else ""
    found = [f"{draft}{for_phones(text)}" for text in candidates(words, period, moment)]
    for limit in (SCREEN, ONE_PART):
        one_part = [text for text in found if limit != ONE_PART or parts(text) == 1]
        if text := first_within(one_part, limit):
            yield text


def _length(text: str) -> str:
    count = counted(characters(text), "character")
    if is_default(text):
        return f"({count}, {counted(parts(text), 'message')}.)"
    return (
        f"({count}, {counted(parts(text), 'message')}: with letters that phones do not know by "
        f"heart, a message holds {ONE_PART_UCS2}.)"
    )
