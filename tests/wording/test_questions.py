"""Questions that people ask: only those that the plan gives rise to, answered from the plan."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from functools import cache

import pytest

from notices.paths import templates_folder
from notices.wording.audience import Audience
from notices.wording.blocks import Paragraph
from notices.wording.questions import QUESTIONS, Question, questions
from notices.wording.reading_ease import measure
from notices.wording.said import lines_of
from notices.wording.words import Words
from tests.wording.lint import faults_in, lines
from tests.wording.small_plans import plan, programme, work

LANGUAGES = ("en-GB", "en-US")

CLUB = {
    "sender": {"email": "course@fallow.example"},
    "contact": "Ask the Course Manager, or write to course@fallow.example",
    "currency": "GBP",
}

RENOVATION = (
    work("raising the height of cut", "2027-08-02"),
    work("scarifying", "2027-08-09 to 2027-08-11"),
    work("hollow tining", "2027-08-09 to 2027-08-11", reserve_dates="2027-08-12"),
    work("top dressing", "2027-08-09 to 2027-08-11", settings={"fill": "holes", "dressings": 2}),
    work("brushing", "2027-08-09 to 2027-08-11"),
    work("rolling", "2027-08-09 to 2027-08-11"),
)

PLANS: Mapping[str, Mapping[str, object]] = {
    "all of it, 18 greens": plan(
        *RENOVATION,
        club={**CLUB, "answers": "within two working days"},
        sand={"price_per_tonne": 50},
        closures=[
            {"what": "greens 3-4", "dates": "2027-11-02", "instead": "temporary greens"},
        ],
        fixtures=[{"name": "August Cup", "date": "2027-08-14"}],
        approval={"by": "the Greens Committee", "date": "2027-02-01"},
        decision={"by": "the Course Manager", "when": "noon", "where": "the board"},
        observed=[{"operation": "hollow tining", "done": "2026-08-10", "healed": "2026-09-07"}],
    ),
    "one green, one day, nothing else": plan(work("hollow tining", "2027-10-20"), greens="1"),
    "a drain in winter": plan(
        work("drain trenching", "2027-11-09", greens="12", while_working="temporary green"),
        approval="pending",
    ),
    "spring": plan(work("scarifying", "2027-05-03 to 2027-05-04")),
    "sand alone": plan(work("top dressing", "2027-06-07", settings={"dressings": 3})),
    "pricks that nobody notices": plan(work("needle tining", "2027-06-07")),
    "closures alone": plan(
        works=[],
        closures=[{"what": "green 5", "dates": "2027-11-02", "instead": "a temporary green"}],
    ),
}


@cache
def asked(name: str, language: str = "en-GB") -> Mapping[str, Question]:
    data = dict(PLANS[name])
    club = data["club"]
    assert isinstance(club, dict)
    made = programme(data | {"club": {**club, "language": language}})
    return {question.slug: question for question in questions(Words(made))}


def answer(name: str, slug: str) -> str:
    return " ".join(lines_of(asked(name)[slug].answer))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", PLANS)
def test_answers_read_well(name: str, language: str) -> None:
    for question in asked(name, language).values():
        pieces = list(lines(question.answer))
        said = (question.question, *pieces)
        assert [(question.slug, f) for piece in said for f in faults_in(piece, language)] == []
        assert question.question.endswith("?")
        counted = measure("\n\n".join(pieces))
        hardest = 8 if question.audience is Audience.MEMBERS else 11
        assert counted.grade <= hardest, question.slug
        assert counted.average <= 18, question.slug
        # What is too long to be pasted into a reply is no answer.
        assert counted.words <= 160, question.slug


def test_every_text_is_a_question_and_every_question_has_its_text() -> None:
    for language in LANGUAGES:
        folder = templates_folder() / language / "questions"
        assert {path.stem for path in folder.glob("*.md")} == set(QUESTIONS)
    assert len(QUESTIONS) == len(set(QUESTIONS))


def test_a_full_plan_gives_rise_to_every_question() -> None:
    assert tuple(asked("all of it, 18 greens")) == QUESTIONS


# Nothing of the kind is planned or known.
@pytest.mark.parametrize(
    ("name", "absent"),
    [
        (
            "one green, one day, nothing else",
            ("why-sand", "putting-on-a-fairway", "why-my-competition", "what-it-costs"),
        ),
        ("sand alone", ("why-not-leave-them-alone", "it-took-longer")),
        ("pricks that nobody notices", ("why-bumpy", "when-fast-again", "why-sand")),
        ("closures alone", ("why-now", "what-if-it-rains", "the-other-club", "who-approved-it")),
    ],
)
def test_nothing_is_asked_that_the_plan_does_not_give_rise_to(
    name: str, absent: tuple[str, ...]
) -> None:
    assert set(absent) & set(asked(name)) == set()


@pytest.mark.parametrize("name", PLANS)
def test_everybody_learns_who_answers_and_who_decides_about_money(name: str) -> None:
    assert "money-off" in asked(name)
    assert "The club decides about fees" in answer(name, "money-off")
    assert "who-answers-me" in asked(name)


def test_by_when_one_is_answered_is_said_only_where_the_club_says_it() -> None:
    assert "You get an answer within two working days." in answer(
        "all of it, 18 greens", "who-answers-me"
    )
    assert "You get an answer" not in answer("a drain in winter", "who-answers-me")


def test_temporary_greens_with_their_days() -> None:
    said = answer("all of it, 18 greens", "putting-on-a-fairway")
    assert "Greens 3 and 4 have temporary greens on Tuesday 2 November." in said
    (fact,) = [
        fact for fact in asked("all of it, 18 greens")["putting-on-a-fairway"].facts if fact.greens
    ]
    assert (fact.dates, fact.greens) == ((dt.date(2027, 11, 2),), ("3", "4"))


def test_the_clubs_own_record_is_told_with_both_days() -> None:
    """From 10 August to 7 September are 28 days, four weeks."""
    said = answer("all of it, 18 greens", "it-took-longer")
    assert (
        "Hollow tining on 10 August 2026: healed on 7 September 2026, after about four weeks."
        in said
    )
    assert "estimate" in answer("one green, one day, nothing else", "it-took-longer")


def test_the_cost_goes_to_the_committee_alone() -> None:
    question = asked("all of it, 18 greens")["what-it-costs"]
    assert question.audience is Audience.COMMITTEE
    assert "£" in answer("all of it, 18 greens", "what-it-costs")
    members = [
        " ".join(lines_of(q.answer))
        for q in asked("all of it, 18 greens").values()
        if q.audience is Audience.MEMBERS
    ]
    assert not any("£" in text for text in members)


def test_a_plan_that_awaits_approval_says_so() -> None:
    assert answer("a drain in winter", "who-approved-it").startswith(
        "Nobody has approved the plan yet."
    )
    assert "The Greens Committee approved the plan on 1 February 2027." in answer(
        "all of it, 18 greens", "who-approved-it"
    )


def test_slow_growth_is_owned_up_to() -> None:
    assert "slowly" in answer("one green, one day, nothing else", "why-now")
    assert "grows well" in answer("all of it, 18 greens", "why-now")


def test_the_clubs_own_reason_is_told() -> None:
    data = plan(work("hollow tining", "2027-08-09", why="the society week is in September"))
    made = questions(Words(programme(data)))
    (why,) = [question for question in made if question.slug == "why-now"]
    assert lines_of(why.answer)[-1] == "The society week is in September."


@pytest.mark.parametrize(
    "words", ["*stars* and _lines_", "1. one", "[here](https://x.example)", "a\\b `c` <d> # e"]
)
def test_the_clubs_words_stand_as_they_are(words: str) -> None:
    data = plan(work("hollow tining", "2027-08-09"), club={"contact": f"Ask {words} please"})
    (who,) = [q for q in questions(Words(programme(data))) if q.slug == "who-answers-me"]
    assert lines_of(who.answer)[0] == f"Ask {words} please."


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
def test_when_an_answer_comes_is_asked_where_it_is_known(language: str) -> None:
    for answers, asked_of in (({"answers": "within two days"}, True), ({}, False)):
        cores = work("hollow tining", "2027-08-09")
        data = plan(cores, club={"language": language, "contact": "Ask us", **answers})
        (who,) = [q for q in questions(Words(programme(data))) if q.slug == "who-answers-me"]
        assert ("by when" in who.question) is asked_of
        assert any("You get an answer" in line for line in lines_of(who.answer)) is asked_of


def test_an_address_can_be_followed() -> None:
    (paragraph, *_) = asked("all of it, 18 greens")["who-answers-me"].answer
    assert isinstance(paragraph, Paragraph)
    assert "mailto:course@fallow.example" in [run.link for run in paragraph.runs]


def test_the_reserve_days_of_every_work_answer_what_happens_if_it_rains() -> None:
    cores = work("hollow tining", "2027-08-09", greens="1-9", reserve_dates="2027-08-12")
    drain = work("drain trenching", "2027-11-09", greens="4", reserve_dates="2027-11-16")
    told = Words(programme(plan(cores, drain, greens="1-9")))
    (said,) = (q for q in questions(told) if q.slug == "what-if-it-rains")
    text = " ".join(block.text for block in said.answer if isinstance(block, Paragraph))
    assert "If rain stops hollow tining, we catch up on Thursday 12 August." in text
    assert "If rain stops drain trenching, we catch up on Tuesday 16 November." in text
