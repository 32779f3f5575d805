"""Questions with answers: a page to look them up, a sheet to keep; each answer can be pasted."""

from __future__ import annotations

from collections.abc import Iterator

from notices.documents.model import Document, Entry, Fact, Fit, Page, Section, Sheet
from notices.programme.model import Programme
from notices.wording.blocks import Paragraph
from notices.wording.questions import Question, questions
from notices.wording.words import Words

FITS = (Fit(), Fit("close closer", room=0.79))
"""Ways to set the sheet: closer where that saves a page of a few lines."""


def questions_and_answers(programme: Programme) -> Entry:
    """Return the questions with their answers, and what to do with them."""
    document = question_list(programme)
    return Entry(
        "Questions and answers",
        "Whoever answers members",
        "Keep them at hand in the office, the shop and the clubhouse. When somebody writes, copy "
        "the answer from questions-and-answers.html into your reply.",
        (Page(document, "contents"), Sheet(document, "contents", FITS, pages=6)),
        again="No need to print it again.",
    )


def question_list(programme: Programme) -> Document:
    """Write the questions that the programme gives rise to, in the order in which people ask."""
    words = Words(programme)
    asked = questions(words)
    introduction = Paragraph.of(
        "Each answer stands by itself, so that you can copy it into a reply. "
        "Dates and greens in it are those of the plan."
    )
    return Document.of(
        programme,
        name="questions-and-answers",
        title="Questions and answers",
        summary="What members ask about the work on the course, with answers to copy.",
        sections=(
            Section("introduction", (introduction,)),
            *(Section(one.slug, one.answer, one.question) for one in asked),
        ),
        facts=tuple(fact for one in asked for fact in facts_of(one)),
    )


def facts_of(asked: Question) -> Iterator[Fact]:
    """Yield what an answer says of the programme."""
    yield from (Fact("answer", said.text, said.dates, said.greens) for said in asked.facts)
