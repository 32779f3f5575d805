"""What the starter reads of a day with few holes, or with holes that close one after the other."""

from __future__ import annotations

from notices.documents.starter_sheet import HOLES_CLOSE_LATER, starter_sheet
from notices.programme.model import Programme
from notices.wording.blocks import KeyFacts, Paragraph
from tests.wording.small_plans import plan, programme, work


def start_from(made: Programme) -> list[str]:
    """From which tees play begins, day by day."""
    return [
        row.text
        for section in starter_sheet(made).sections
        for block in section.blocks
        if isinstance(block, KeyFacts)
        for row in block.rows
        if row.label == "Start from"
    ]


def test_a_course_of_nine_with_few_holes_has_a_tee_to_start_from() -> None:
    """Five of nine holes are closed, and then the other four."""
    days = {"2027-06-01": "1-5", "2027-06-02": "6-9"}
    made = programme(
        plan(work("hollow tining", "2027-06-01 to 2027-06-02", greens=days), greens="1-9")
    )
    assert start_from(made) == ["Hole 6 (four holes).", "Hole 1 (five holes)."]


def test_of_eighteen_holes_it_is_said_that_no_nine_are_left() -> None:
    # Holes 1 to 11 and 17 are closed: 12 to 16 are five in a row, and 18 leads to hole 1.
    shut = [{"what": "holes 1-11, 17", "dates": "2027-06-01"}]
    assert start_from(programme(plan(closures=shut))) == [
        "Hole 12 (five holes): no nine in a row are in play."
    ]
    every = [{"what": "holes 1-18", "dates": "2027-06-01"}]
    assert start_from(programme(plan(closures=every))) == ["No tee, since no hole is in play."]


def test_the_starter_is_told_that_holes_close_later() -> None:
    machine = {
        "operation": "verticutting",
        "width": "1 m",
        "speed": "1 km/h",
        "efficiency": "60 %",
        "minutes_between_greens": 12,
    }
    crew = {"people": 2, "working_day": "07:00 to 15:30", "machines": [machine]}
    works = work("verticutting", "2027-06-01", greens="1-3", reopen="when finished")
    (page,) = starter_sheet(programme(plan(works, crew=crew))).sections
    assert HOLES_CLOSE_LATER in [b.text for b in page.blocks if isinstance(b, Paragraph)]
