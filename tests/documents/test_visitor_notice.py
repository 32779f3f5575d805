"""Visitors are told what is affected, and each visiting party how it will find its own day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping

import pytest

from notices.documents.counter_handout import counter_handout
from notices.documents.model import Document
from notices.documents.visitor_notice import visitor_notice, visitor_notices
from notices.rendering.text import plain_text
from notices.wording import circumstances
from notices.wording.blocks import KeyFacts
from notices.wording.words import Words
from tests.documents.one_page import assert_one_page_says_all
from tests.wording.small_plans import plan, words, work


@pytest.fixture(scope="module")
def told() -> Words:
    fixtures = [
        {"name": "Old Millers", "date": "2027-08-10", "kind": "society"},
        {"name": "Open Week", "date": "2027-10-04", "kind": "open"},
        {"name": "Open Week", "date": "2027-10-05", "kind": "open"},
        {"name": "Medal", "date": "2027-08-11", "kind": "competition"},
        {"name": "Last Winter’s Guests", "date": "2027-02-01", "kind": "visitors"},
    ]
    return words(
        plan(work("hollow tining", "2027-08-09 to 2027-08-11", greens="1-18"), fixtures=fixtures)
    )


@pytest.fixture(scope="module")
def documents(told: Words) -> dict[str, Document]:
    items = visitor_notices(told.programme).items
    return {item.document.name: item.document for item in items if hasattr(item, "document")}


def test_each_party_that_is_still_to_come_has_its_own(documents: dict[str, Document]) -> None:
    assert list(documents) == [
        "visitor-notice",
        "visitor-notice-old-millers",
        "visitor-notice-open-week",
    ]


def test_a_party_reads_of_its_own_days_alone(documents: dict[str, Document]) -> None:
    days = {
        name: sorted({day for fact in document.facts for day in fact.dates})
        for name, document in documents.items()
    }
    assert days["visitor-notice-old-millers"] == [dt.date(2027, 8, 10)]
    assert days["visitor-notice-open-week"] == [dt.date(2027, 10, 4), dt.date(2027, 10, 5)]


def test_every_fact_stands_in_each_form(told: Words) -> None:
    for item in visitor_notices(told.programme).items:
        assert_one_page_says_all(item)


def test_who_meets_no_work_is_not_troubled_with_it(documents: dict[str, Document]) -> None:
    met = plain_text(documents["visitor-notice-old-millers"], "")
    spared = plain_text(documents["visitor-notice-open-week"], "")
    assert "waved you on" in met
    assert "depend on the weather" in met
    assert "waved you on" not in spared
    assert "depend on the weather" not in spared
    assert "All holes can be played." in spared


@pytest.mark.parametrize(
    ("club", "said"),
    [
        (
            {"reply_to": "office@fallow.example", "contact": "Ask the greenkeeper."},
            "About your booking, please write to office@fallow.example.",
        ),
        # Once is enough.
        ({"reply_to": "a@fallow.example", "contact": "Write to a@fallow.example."}, ""),
        ({"contact": "Ask the greenkeeper."}, ""),
        (
            {"reply_to": "office@fallow.example", "language": "en-US"},
            "About your tee time, please write to office@fallow.example.",
        ),
    ],
)
def test_who_has_booked_is_sent_to_the_office(club: dict[str, str], said: str) -> None:
    data = plan(work("hollow tining", "2027-08-09"), club=club)
    assert circumstances.booking(words(data)) == said
    text = " ".join(plain_text(visitor_notice(words(data).programme), "").split())
    assert said in text
    assert ("please write to" in text) is bool(said)


def test_visitors_read_of_every_work_what_rain_does_to_it() -> None:
    """Two works with days kept free, and neither can be taken for the other."""
    data = plan(
        work("hollow tining", "2027-05-03 to 2027-05-04", reserve_dates="2027-05-05"),
        work("scarifying", "2027-09-06", reserve_dates="2027-09-07"),
    )
    text = " ".join(plain_text(visitor_notice(words(data).programme), "").split())
    assert "If it rains: we catch up on Wednesday 5 May." in text
    assert "If it rains: we catch up on Tuesday 7 September." in text
    handout = " ".join(plain_text(counter_handout(words(data).programme), "").split())
    # The tining leads, and is named, since there is another.
    assert "If rain stops hollow tining, we catch up on Wednesday 5 May." in handout
    assert "If it rains: we catch up on Tuesday 7 September." in handout


def test_that_grass_does_not_grow_in_winter_is_said_once() -> None:
    def said(*works: Mapping[str, object]) -> str:
        return plain_text(visitor_notice(words(plan(*works)).programme), "")

    late = work("solid tining", "2027-11-08", id="november")
    later = work("slitting", "2027-12-07", id="december")
    several = said(late, later)
    assert several.lower().count("grass does not grow in winter") == 1
    assert several.index("Grass does not grow") < several.index("Solid tining, all greens")
    assert " ".join(several.split()).count("Putting well: Expect all by ") == 2
    assert "Putting well: Grass does not grow in winter. Expect all by " in " ".join(
        said(later).split()
    )


def test_the_only_work_is_told_answer_by_answer() -> None:
    """The second of two dressings comes a week after the first by default."""
    data = plan(
        work("top dressing", "2027-08-09", settings={"dressings": 2}, reserve_dates="2027-08-10")
    )
    (dates,) = (s for s in visitor_notice(words(data).programme).sections if s.name == "dates")
    (facts,) = dates.blocks
    assert isinstance(facts, KeyFacts)
    said = {row.label: row.text for row in facts.rows}
    assert list(said) == [
        *("What we do", "When", "Greens", "Your game", "Putting well", "Sand again", "If it rains")
    ]
    assert said["When"] == "Monday 9 August 2027."
    assert "Monday 16 August" in said["Sand again"]
    assert said["If it rains"] == "We catch up on Tuesday 10 August."
