"""A committee is told what to decide, and nothing of money where the club gave no price."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator

from notices.documents.committee_briefing import FITS, committee_briefing
from notices.documents.model import Document
from notices.plan.load import load_plan
from notices.programme.outcomes import outcomes
from notices.programme.work_out import work_out
from notices.wording.blocks import Block, Folded, KeyFacts, Picture, Table
from notices.wording.reading_ease import measure
from notices.wording.said import lines_of
from tests.documents.building import EXAMPLES
from tests.wording.small_plans import plan, programme, work

TINING = work("hollow tining", "2027-08-09 to 2027-08-10", greens="1-18")
DRESSING = work("top dressing", "2027-08-09 to 2027-08-10", settings={"fill": "holes"})


def said(document: Document) -> str:
    return "\n".join(line for section in document.sections for line in _lines(section.blocks))


def _lines(blocks: tuple[Block, ...]) -> Iterator[str]:
    for block in blocks:
        match block:
            case KeyFacts(rows):
                yield from (f"{row.label}: {row.text}" for row in rows)
            case Table():
                yield from (" | ".join(row) for row in block.rows)
            case Folded():
                yield from _lines(block.blocks)
            case _:
                yield from lines_of([block])


def test_what_is_asked_depends_on_what_was_approved() -> None:
    asked = said(committee_briefing(programme(plan(TINING, approval="pending"))))
    assert asked.startswith("We ask you to approve the dates in this paper.")
    approval = {"by": "the Board", "date": "2027-02-01"}
    noted = said(committee_briefing(programme(plan(TINING, approval=approval))))
    assert noted.startswith("The Board approved the plan on 1 February 2027. This paper is")
    unknown = said(committee_briefing(programme(plan(TINING))))
    assert unknown.startswith("We ask you to agree the dates in this paper.")


def test_sand_that_should_lie_there_is_not_ordered_again() -> None:
    """9 August 2027 is a Monday, so it was to come by Friday 6 August."""
    before, after = (
        said(committee_briefing(programme(plan(TINING, DRESSING), dt.date(2027, 8, day))))
        for day in (6, 9)
    )
    assert "to be delivered by Friday 6 August" in before
    assert "deliver" not in after
    assert "It was due by Friday 6 August" in after


def test_no_price_no_word_of_money() -> None:
    free = committee_briefing(programme(plan(TINING, DRESSING, crew={"people": 4})))
    assert free.section("cost") is None
    assert "Cost: " not in said(free)
    priced = committee_briefing(
        programme(
            plan(
                TINING,
                DRESSING,
                club={"currency": "GBP"},
                crew={"people": 4, "hour_price": 20},
                sand={"price_per_tonne": 50},
            )
        )
    )
    cost = priced.section("cost")
    assert cost is not None
    (table,) = (block for block in cost.blocks if isinstance(block, Table))
    assert [row[0] for row in table.rows] == ["Sand", "Labour", "All that has a price"]
    assert all("£" in row[1] for row in table.rows)


def test_closures_alone_have_nothing_to_work_out() -> None:
    closed = plan(closures=[{"what": "practice ground", "dates": "2027-08-09"}])
    del closed["works"]
    document = committee_briefing(programme(closed))
    names = {section.name for section in document.sections}
    assert names <= {"decision", "closures", "course days", "risks", "rules", "questions"}
    assert {drawing.name for drawing in document.drawings} == {"course-day-by-day-sheet-1"}


def test_every_picture_is_drawn_and_only_pictures_may_go() -> None:
    document = committee_briefing(programme(plan(TINING, DRESSING, crew={"people": 4})))
    pictures = [b for s in document.sections for b in s.blocks if isinstance(b, Picture)]
    assert pictures
    assert {one.name for one in pictures} <= {drawing.name for drawing in document.drawings}
    may_go = set().union(*(fit.left_out for fit in FITS))
    for section in document.sections:
        if section.name in may_go:
            assert all(isinstance(block, Picture) for block in section.blocks)


def test_earlier_seasons_stand_beside_the_book_and_measurements_are_shown() -> None:
    plan_of = load_plan(EXAMPLES / "marlpit-common" / "plan.yaml").plan
    loaded = work_out(plan_of, dt.date(2026, 9, 14))
    document = committee_briefing(loaded)
    text = said(document)
    (season,) = (r for fitted in loaded.records.values() for r in fitted.records)
    assert "13 October 2025" in text
    assert "Healed on 24 November 2025 | Nothing" in text
    assert season.forecast.early > season.done
    assert "20 August 2026 | green 7 | depth of thatch | 22 mm" in text
    assert "20 August 2026 | green 7 | organic matter | 5.1 %" in text
    assert "forecast-and-record" in {drawing.name for drawing in document.drawings}
    # 50 mm deep, less 22 mm of thatch.
    assert "Hollow tining ends 28 mm below the thatch of green 7." in text
    # Prose of the briefing itself; what it shares with others is measured where it is made.
    own = "\n".join(line for line in text.splitlines() if " | " not in line)
    assert measure(own).grade <= 11


def test_nobody_is_asked_again_what_is_decided() -> None:
    def asked(decision: str) -> str:
        medal = {
            "name": "August Medal",
            "date": "2027-08-09",
            **({"decision": decision} if decision else {}),
        }
        return said(committee_briefing(programme(plan(TINING, fixtures=[medal]))))

    assert "August Medal: how it will be played." in asked("")
    assert "August Medal: how it will be played." not in asked("play on")


def test_columns_and_greens_that_say_nothing_are_left_out() -> None:
    both = {"greens": [{"green": "1-18, Putting green", "area": "480 m2"}]}
    works = (TINING, work("scarifying", "2027-08-09", greens="1-18, Putting green"))
    document = committee_briefing(programme(plan(*works, course=both)))
    tables = {
        block.caption: block
        for section in document.sections
        for block in section.blocks
        if isinstance(block, Table)
    }
    # Nobody is named who works, and no place with its light.
    assert tables["Each day with its work"].head == ("Day", "Work", "Greens")
    (what,) = (table for caption, table in tables.items() if caption.startswith("Each work"))
    greens = {row[0]: row[2] for row in what.rows}
    assert greens == {"Scarifying": "all greens", "Hollow tining": "all 18 greens"}


def test_no_line_ends_between_an_american_hour_and_its_half_of_the_day() -> None:
    plan_of = load_plan(EXAMPLES / "live-oak" / "plan.yaml").plan
    document = committee_briefing(work_out(plan_of, dt.date(2027, 6, 1)))
    (table,) = (
        block
        for section in document.sections
        if section.name == "days"
        for block in section.blocks
        if isinstance(block, Table)
    )
    hours = [cell for row in table.rows for cell in row if ".m." in cell]
    assert hours
    for cell in hours:
        assert re.fullmatch("\\S+\xa0[ap]\\.m\\. to \\S+\xa0[ap]\\.m\\.", cell), cell


def test_each_finding_that_the_club_lives_with_is_named() -> None:
    """A reason for one fixture leaves the other open; one for all names both."""
    fixtures = [
        {"name": "August Medal", "date": "2027-08-11"},
        {"name": "Summer Bowl", "date": "2027-08-12"},
    ]
    for about, listed, asked in (
        ({}, ["August Medal", "Summer Bowl"], []),
        ({"about": "Summer Bowl"}, ["Summer Bowl"], ["August Medal: how it will be played."]),
    ):
        accepted = [{"finding": "fixture-in-recovery", "by": "us", "why": "a cup", **about}]
        text = said(
            committee_briefing(programme(plan(TINING, fixtures=fixtures, accepted=accepted)))
        )
        (row,) = (line for line in text.splitlines() if line.endswith("| Us | A cup."))
        assert [name for name in ("August Medal", "Summer Bowl") if name in row] == listed
        assert [line for line in text.splitlines() if "will be played" in line] == asked


def test_a_forecast_that_was_missed_is_told_with_the_days_it_was_off() -> None:
    observed = [{"operation": "hollow tining", "done": "2027-08-09", "healed": "2027-12-03"}]
    missed = programme(plan(TINING, observed=observed))
    (outcome,) = outcomes(missed)
    assert outcome.forecast.late is not None
    days = (dt.date(2027, 12, 3) - outcome.forecast.late).days
    assert days > 1
    assert f"Healed on 3 December 2027 | {days} days late" in said(committee_briefing(missed))


def test_a_club_that_measures_in_inches_can_work_its_figures_out_again() -> None:
    """Live Oak Bend: 17 × 5,400 + 6,200 + 4,000 = 102,000 square feet of greens.

    Holes: 144 ÷ (2 × 2) × 102,000 = 3.7 million. Slits ½ inch apart: 102,000 ÷ (½ ÷ 12) feet,
    ÷ 5,280 = 464 miles. Cores of 3/8 inch, 3 inches deep: π × 0.375² ÷ 4 ÷ 4 × 3 ÷ 12 × 102,000 =
    704 cubic feet, ÷ 27 = 26 cubic yards.
    """
    loaded = load_plan(EXAMPLES / "live-oak" / "plan.yaml").plan
    section = committee_briefing(work_out(loaded, dt.date(2027, 6, 1))).section("figures")
    assert section is not None
    told = "\n".join(_lines(section.blocks))
    for row in (
        "Holes | 3.7 million* | 144 ÷ (spacing along × spacing across)",
        "Length of slits | 464 miles* | area ÷ (blade spacing ÷ 12)",
        "Material taken out | 26 cubic yards* | (pi × core diameter² ÷ 4)",
    ):
        assert row in told
    assert "1,000,000" not in told
    assert "A cubic yard is 27 cubic feet, and a ton is 2,000 pounds." in told
