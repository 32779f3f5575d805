"""Visitors hear of what was told to them and is another now, a party of its own day alone."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

import pytest

from notices.documents.model import Document, Entry, PlainText
from notices.documents.visitor_change import visitor_changes
from notices.programme.model import Programme
from notices.rendering.text import plain_text
from notices.wording.blocks import Block, Bullets, KeyFacts, Paragraph, Table
from notices.wording.reading_ease import measure
from tests.documents.building import days_of
from tests.documents.dates_in_words import days_in, read_dates
from tests.documents.one_page import assert_one_page_says_all
from tests.wording.lint import faults_in
from tests.wording.small_plans import plan, programme, work

CORES = "2027-08-09 to 2027-08-10"
GREENS = {"2027-08-09": "1-9", "2027-08-10": "10-18"}
MILLERS = {"name": "Old Millers", "date": "2027-08-09", "kind": "society"}
TAVERN = {"name": "The Tavern", "date": "2027-07-06", "kind": "visitors"}
BUGGIES = {"what": "buggies", "dates": CORES, "ask": "the shop"}
LATER = dt.date(2027, 8, 2)

PLAN: dict[str, Any] = {
    "works": [work("hollow tining", CORES, greens=GREENS, services_checked=True)],
    "fixtures": [MILLERS, {"name": "Medal", "date": "2027-09-04", "kind": "competition"}],
    "closures": [{"what": "practice ground", "dates": "2027-08-20", "reason": "it is sown"}],
    "restrictions": [BUGGIES],
}
A_WEEK_ON = work(
    "hollow tining",
    "2027-08-16 to 2027-08-17",
    greens={"2027-08-16": "1-9", "2027-08-17": "10-18"},
    services_checked=True,
)


def built(language: str = "en-GB", issued: dt.date = LATER, **changed: Any) -> Programme:
    found = {**PLAN, **changed}
    works = found.pop("works")
    return programme(plan(*works, club={"language": language}, **found), issued)


def after(language: str = "en-GB", **changed: Any) -> Programme:
    """The small plan with something else in it, as the notice that follows."""
    old = built(language, dt.date(2027, 7, 1))
    new = built(language, **changed)
    return replace(new, replaces=old.edition, earlier=old)


def told(entry: Entry | None) -> dict[str, str]:
    """What each document says, by its name."""
    assert entry is not None
    return {
        item.document.name: " ".join(plain_text(item.document, "").split())
        for item in entry.items
        if isinstance(item, PlainText)
    }


# What has changed, which documents tell of it, and what the general one or the party's says.
GENERAL, PARTY = "visitor-change", "visitor-change-old-millers"
CASES: list[tuple[dict[str, Any], list[str], dict[str, str]]] = [
    (
        {"works": [A_WEEK_ON]},
        [GENERAL, PARTY],
        {
            GENERAL: "Hollow tining is now on Monday 16 and Tuesday 17 August, not on Monday 9",
            PARTY: "Open: All holes can be played. We had said: “Holes 1 to 9 are closed all day.",
        },
    ),
    (
        {"fixtures": [{**MILLERS, "date": "2027-08-31"}]},
        [PARTY],
        {PARTY: "Your day is now Tuesday 31 August, in place of Monday 9 August."},
    ),
    (
        {"fixtures": [MILLERS, {**MILLERS, "date": "2027-08-31"}]},
        [PARTY],
        {PARTY: "We now expect you on Tuesday 31 August too."},
    ),
    (
        {"fixtures": []},
        [PARTY],
        {PARTY: "Your day, Monday 9 August, cannot go ahead. What you can do"},
    ),
    (
        {"restrictions": []},
        [GENERAL, PARTY],
        {
            GENERAL: "The restriction on buggies, Monday 9 and Tuesday 10 August, falls away.",
            PARTY: "This no longer holds: “No buggies that day. Please ask the shop.”",
        },
    ),
    (
        {"restrictions": [{**BUGGIES, "ask": "the starter"}]},
        [GENERAL, PARTY],
        {
            GENERAL: "About the restriction on buggies, please now ask the starter.",
            PARTY: "No buggies that day. Please ask the starter. We had said: “No buggies",
        },
    ),
    (
        {
            "closures": [
                {
                    "what": "practice ground",
                    "dates": "2027-08-20 to 2027-08-21",
                    "reason": "it is sown",
                }
            ]
        },
        [GENERAL],
        {GENERAL: "The closure of the practice ground is now on Friday 20 and Saturday 21 August"},
    ),
    (
        {"works": [{**PLAN["works"][0], "while_working": "temporary green"}]},
        [GENERAL, PARTY],
        {
            GENERAL: "while we work, you play to temporary greens; before, the plan was that",
            PARTY: "Holes 1 to 9 have temporary greens. The other nine holes are open. We had said",
        },
    ),
    (
        {"works": [{**PLAN["works"][0], "reopen": "2 days later"}]},
        [GENERAL],
        {GENERAL: "greens open again after two days, not the next morning"},
    ),
]


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize(("changed", "names", "says"), CASES)
def test_each_change_reaches_whom_it_touches_and_says_it(
    language: str, changed: dict[str, Any], names: list[str], says: dict[str, str]
) -> None:
    new = after(language, **changed)
    entry = visitor_changes(new)
    texts = told(entry)
    assert list(texts) == names
    assert new.earlier is not None
    known = days_of(new) | days_of(new.earlier)
    for name, text in texts.items():
        assert set(days_in(read_dates(text, new.issued))) <= known
        assert "Whom to ask" in text
        assert measure(text).grade <= 8
        if language == "en-GB":
            assert says.get(name, "") in text


def sentences(blocks: Iterable[Block]) -> Iterator[str]:
    for block in blocks:
        match block:
            case Paragraph():
                yield block.text
            case Bullets(items):
                yield from ("".join(run.text for run in item) for item in items)
            case KeyFacts(rows):
                yield from (row.text.removesuffix("”") for row in rows)  # what was said, quoted
            case _:  # the table of the visitor notice, which is read there
                assert isinstance(block, Table)


def documents(entry: Entry | None) -> dict[str, Document]:
    assert entry is not None
    return {i.document.name: i.document for i in entry.items if isinstance(i, PlainText)}


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
def test_it_is_said_as_to_their_face(language: str) -> None:
    for changed, _, _ in CASES[:4]:
        for document in documents(visitor_changes(after(language, **changed))).values():
            said = [text for section in document.sections for text in sentences(section.blocks)]
            assert len(said) >= 3
            assert [fault for text in said for fault in faults_in(text, language)] == []


@pytest.mark.parametrize(
    "changed",
    [
        {},
        {"fixtures": [MILLERS]},  # the club's own medal
        {"closures": [{**PLAN["closures"][0], "reason": "it is seeded"}]},
        {"works": [{**PLAN["works"][0], "settings": {"tine_diameter": "12 mm"}}]},
        {"fixtures": [*PLAN["fixtures"], TAVERN]},  # told nothing yet, and over
        {"approval": "pending"},
    ],
)
def test_what_was_not_told_to_visitors_is_no_news_to_them(changed: dict[str, Any]) -> None:
    # A narrower hole heals sooner at worst, so that visitors hear of that and of nothing else.
    entry = visitor_changes(after(**changed))
    if "works" in changed:
        assert list(told(entry)) == ["visitor-change"]
        assert (
            "After hollow tining, we still expect the greens to putt well by"
            in told(entry)["visitor-change"]
        )
        assert "12 mm" not in told(entry)["visitor-change"]
    else:
        assert entry is None


def test_what_is_over_is_not_told() -> None:
    gone = [{**PLAN["closures"][0], "dates": "2027-07-20"}]
    old = built(issued=dt.date(2027, 7, 1), closures=gone)
    new = built(closures=[])
    assert visitor_changes(replace(new, replaces=old.edition, earlier=old)) is None


def test_a_first_notice_has_none() -> None:
    assert visitor_changes(built()) is None


def test_a_day_like_any_other_asks_for_nothing() -> None:
    party = told(visitor_changes(after(works=[A_WEEK_ON], restrictions=[])))[PARTY]
    assert "You need to do nothing. We look forward to seeing you." in party
    assert "another day" not in party
    assert "depend on the weather" not in party
    worse = told(visitor_changes(after(restrictions=[BUGGIES, {**BUGGIES, "what": "trolleys"}])))
    assert "If you would rather come on another day, please tell us." in worse[PARTY]


def test_the_secretary_hears_whom_to_ring_and_whom_to_write() -> None:
    both = visitor_changes(after(works=[A_WEEK_ON]))
    own = visitor_changes(after(fixtures=[]))
    general = visitor_changes(after(works=[{**PLAN["works"][0], "reopen": "2 days later"}]))
    assert both is not None
    assert own is not None
    assert general is not None
    assert both.todo.startswith("Send each party its own, and ring it if its day is near. Send v")
    assert own.todo == "Send each party its own, and ring it if its day is near."
    assert general.todo.startswith("Send visitor-change.html or .txt to everybody who has booked")


def test_every_fact_stands_in_each_form() -> None:
    entry = visitor_changes(after(works=[A_WEEK_ON]))
    assert entry is not None
    assert [name.rpartition(".")[2] for name in entry.files] == ["html", "txt", "pdf"] * 2
    for item in entry.items:
        assert_one_page_says_all(item)
