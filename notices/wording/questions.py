"""Questions that members and committees ask, each with an answer ready to be pasted.

The texts are in ``templates/LANGUAGE/questions/``. A question whose answer comes out empty,
because nothing of the kind is planned, is left out.
"""

from __future__ import annotations

from dataclasses import dataclass

from notices.wording.audience import Audience
from notices.wording.blocks import Block
from notices.wording.question_facts import known_facts, question_facts
from notices.wording.said import Said, told_in
from notices.wording.words import Words

QUESTIONS = (
    "why-not-leave-them-alone",
    "why-now",
    "why-not-another-season",
    "why-bumpy",
    "when-fast-again",
    "why-sand",
    "sand-on-my-shoes",
    "lift-and-place",
    "putting-on-a-fairway",
    "why-my-competition",
    "what-if-it-rains",
    "it-took-longer",
    "the-other-club",
    "who-approved-it",
    "money-off",
    "who-answers-me",
    "how-sure-are-the-dates",
    "what-it-costs",
)
"""Names of the texts, in the order in which people ask."""


@dataclass(frozen=True, slots=True)
class Question:
    """One question with its answer."""

    slug: str
    """Name of its text; the same whatever the answer."""
    question: str
    answer: tuple[Block, ...]
    audience: Audience
    """Members, or the committee."""
    facts: tuple[Said, ...]
    """Facts of the programme that the answer states, with the days that they name."""


def questions(words: Words) -> tuple[Question, ...]:
    """Return every question that the programme gives rise to, with its answer."""
    facts = question_facts(words)
    known = tuple(known_facts(words))
    found = []
    for slug in QUESTIONS:
        head, answer = words.text(f"questions/{slug}", facts)
        if answer:
            audience = Audience(head["audience"])
            found.append(Question(slug, head["question"], answer, audience, told_in(answer, known)))
    return tuple(found)
