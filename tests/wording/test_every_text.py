"""Every kind of work, told in every language and on every occasion, reads well.

For one green on one day without any optional setting, and for eighteen over three days with all of
them. Each plan is worked out once; the language changes only how it is told.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import pytest

from notices.operations import CATALOGUE
from notices.programme.model import Moment, Programme
from notices.wording.audience import Audience
from notices.wording.moments import messages, short_messages
from notices.wording.questions import questions
from notices.wording.reading_ease import measure
from notices.wording.said import lines_of
from notices.wording.words import Words
from tests.wording.lint import faults_in, lines
from tests.wording.small_plans import plan, programme, work

LANGUAGES = ("en-GB", "en-US")

ONE_DAY, THREE_DAYS = "2027-09-06", "2027-09-06 to 2027-09-08"

SETTINGS = {
    "feeding": {"product": "a slow feed"},
    "wetting agent": {"product": "a wetter"},
    "overseeding": {"seed": "browntop bent"},
    "turfing": {"area": "40 m2"},
    "top dressing": {"dressings": 3},
}
"""Settings that the catalogue leaves empty, or at one."""

MEMBERS, COMMITTEE = 8, 11
"""The hardest grades."""


@cache
def made(name: str, *, whole: bool) -> Programme:
    if not whole:
        return programme(plan(work(name, ONE_DAY), greens="1"))
    return programme(
        plan(
            work(
                name,
                THREE_DAYS,
                settings=SETTINGS.get(name, {}),
                reserve_dates="2027-09-09",
                note="We have done this before.",
            ),
            club={
                "sender": {"email": "course@fallow.example"},
                "answers": "within two working days",
                "contact": "Ask at the office",
            },
            fixtures=[{"name": "September Cup", "date": "2027-09-11"}],
            decision={"by": "the head of the course", "when": "noon", "where": "the board"},
            approval={"by": "the committee", "date": "2027-02-01"},
        )
    )


def in_language(name: str, language: str, *, whole: bool) -> Words:
    worked_out = made(name, whole=whole)
    return Words(replace(worked_out, club=replace(worked_out.club, language=language)))


def told(words: Words) -> Iterator[tuple[str, list[str], int]]:
    """Yield what each text says, line by line, with its name and the hardest grade it may have."""
    for one in words.programme.works:
        text = words.operation(one)
        told_of_it = [piece for part in text.sections.values() for piece in lines(part)]
        yield one.id, [text.line, *told_of_it], MEMBERS
    for period in words.programme.periods:
        yield "story", list(lines(words.story(period))), MEMBERS
        for moment in Moment:
            for audience, message in messages(words, period, moment).items():
                hardest = COMMITTEE if audience is Audience.COMMITTEE else MEMBERS
                said = lines_of((*message.opening, *message.next))
                yield f"{moment.value} {audience.value}", [f"{message.subject}.", *said], hardest
            yield f"{moment.value} short", list(short_messages(words, period, moment)), MEMBERS
    for question in questions(words):
        hardest = COMMITTEE if question.audience is Audience.COMMITTEE else MEMBERS
        yield question.slug, [question.question, *lines(question.answer)], hardest


@pytest.mark.parametrize("name", CATALOGUE)
def test_every_text_on_a_kind_of_work_reads_well(name: str) -> None:
    for language in LANGUAGES:
        for whole in (False, True):
            words = in_language(name, language, whole=whole)
            for what, said, hardest in told(words):
                about = (language, whole, what)
                assert said, about
                assert [(about, fault) for one in said for fault in faults_in(one, language)] == []
                counted = measure("\n\n".join(said))
                # A message of a few words is hard by one of them.
                if counted.words >= 40:
                    assert counted.grade <= hardest, (about, counted.grade)
                    assert counted.average <= 18, (about, counted.average)
