"""Messages for each occasion, from the announcement to the day when all is as before.

The texts are in ``templates/LANGUAGE/moments/``, one for each moment, with a part for each kind
of reader and a list of short messages, the longest first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from notices.programme.model import Moment, Period
from notices.wording.audience import Audience
from notices.wording.blocks import Block, by_heading
from notices.wording.moment_facts import News, Occasion, known_in_moment, moment_facts
from notices.wording.said import Said, lines_of, told_in
from notices.wording.words import Words

__all__ = ["Message", "News", "message", "messages", "short_messages"]

AS_PLANNED = News()

_SHORT = "short"


@dataclass(frozen=True, slots=True)
class Message:
    """A message to one kind of reader on one occasion."""

    moment: Moment
    audience: Audience
    subject: str
    opening: tuple[Block, ...]
    heading: str
    """Heading above ``next``."""
    next: tuple[Block, ...]
    facts: tuple[Said, ...]
    """Facts of the programme and the news that it states, with the days that they name."""


def messages(
    words: Words, period: Period, moment: Moment, news: News = AS_PLANNED
) -> Mapping[Audience, Message]:
    """Return the messages about a period on an occasion, by kind of reader.

    Parameters
    ----------
    words
        Wording of the programme.
    period
        Period that the messages are about.
    moment
        Occasion of the messages.
    news
        Events that a plan cannot know.
    """
    occasion = Occasion(words, period, moment, news)
    facts = moment_facts(occasion)
    known = tuple(known_in_moment(occasion, facts))
    head, sections = _text(words, moment, facts)
    found = {}
    for audience in Audience:
        parts = by_heading(sections[audience.value], level=3)
        opening = tuple(parts.pop("", []))
        heading, following = next(iter(parts.items()), ("", []))
        found[audience] = Message(
            moment=moment,
            audience=audience,
            subject=head["subject"],
            opening=opening,
            heading=heading,
            next=tuple(following),
            facts=told_in((*opening, *following), known),
        )
    return found


def message(
    words: Words,
    period: Period,
    moment: Moment,
    audience: Audience = Audience.MEMBERS,
    news: News = AS_PLANNED,
) -> Message:
    """Return the message to one kind of reader; see `messages`."""
    return messages(words, period, moment, news)[audience]


def short_messages(
    words: Words, period: Period, moment: Moment, news: News = AS_PLANNED
) -> tuple[str, ...]:
    """Return one-sentence messages for phones and screens, the longest first."""
    facts = moment_facts(Occasion(words, period, moment, news))
    return tuple(lines_of(_text(words, moment, facts)[1][_SHORT]))


def text_of(moment: Moment) -> str:
    """Return the name of the text for a moment, without its ending."""
    return f"moments/{moment.value.replace(' ', '-')}"


def _text(
    words: Words, moment: Moment, facts: dict[str, object]
) -> tuple[dict[str, str], dict[str, list[Block]]]:
    head, blocks = words.text(text_of(moment), facts)
    sections = {title.lower(): found for title, found in by_heading(blocks, level=2).items()}
    return dict(head), sections
