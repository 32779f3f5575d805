"""A green that is away for longer than the work: every document says until when.

Green 12 is dug up from 9 to 12 November and opens 14 days after the last day, on the 26th.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator

import pytest

from notices.documents.board_notice import board_notice
from notices.documents.counter_handout import counter_handout
from notices.documents.course_page import course_page
from notices.documents.member_email import member_email
from notices.documents.model import Document
from notices.documents.visitor_notice import visitor_notice
from notices.programme.model import Programme
from notices.wording.blocks import Block, KeyFacts, Table
from tests.documents.dates_in_words import days_in, read_dates
from tests.wording.small_plans import ISSUED, period, plan, programme, work

CORES = work("hollow tining", "2027-08-09")
LAST = dt.date(2027, 11, 25)


def trench(**more: object) -> dict[str, object]:
    usual = {"greens": "12", "while_working": "temporary green", "reopen": "14 days later"}
    return work("drain trenching", "2027-11-09 to 2027-11-12", **(usual | more))


@pytest.fixture(scope="module")
def drained() -> Programme:
    return programme(plan(CORES, trench()))


def emailed(programme: Programme) -> Document:
    return member_email(programme).document


def rows(blocks: tuple[Block, ...]) -> Iterator[str]:
    for block in blocks:
        if isinstance(block, KeyFacts):
            yield from (f"{row.label} {row.text}" for row in block.rows)
        elif isinstance(block, Table):
            yield from (" ".join(cells) for cells in block.rows)


@pytest.mark.parametrize(
    "written", [board_notice, counter_handout, visitor_notice, course_page, emailed]
)
def test_every_document_says_until_when(
    drained: Programme, written: Callable[[Programme], Document]
) -> None:
    said = [
        row
        for section in written(drained).sections
        for row in rows(section.blocks)
        if "renching" in row or "Green 12:" in row
    ]
    assert said
    assert all(LAST in days_in(read_dates(row, ISSUED)) for row in said)


@pytest.mark.parametrize(
    ("trenched", "meets"),
    [
        (trench(), "You play to a temporary green until Thursday 25 November."),
        (
            trench(while_working="closed"),
            "The green and its hole are closed until Thursday 25 November.",
        ),
        (
            trench(greens="12, 13"),
            "You play to temporary greens where we work, the last of them until Thursday 25 November.",
        ),
        (
            trench(greens="12, 13", while_working="closed"),
            "Each green we work on stays closed for a while, the last until Thursday 25 November.",
        ),
        (
            trench(reopen="next morning"),
            "You play to a temporary green until the green opens again.",
        ),
    ],
)
def test_what_golfers_meet_lasts_until_a_day(trenched: dict[str, object], meets: str) -> None:
    assert period(plan(trenched)).status_while_working().startswith(meets)


def test_the_days_of_a_green_that_is_away_for_long() -> None:
    told = period(plan(trench()))
    assert told.away() == "Green 12: temporary green"
    assert (told.days_away()[0], told.days_away()[-1]) == (dt.date(2027, 11, 9), LAST)
    soon = period(plan(CORES))
    assert (soon.days_away(), soon.away_until()) == ((), "")
