"""Findings for a committee: sentences of their own, dates as they are said, terms of the country."""

from __future__ import annotations

import datetime as dt

from notices.findings import Finding, Weight
from notices.wording.finding_words import finding_dates, finding_in_words, for_the_committee
from tests.wording.small_plans import plan, words, work


def found(message: str, code: str = "out-of-season") -> Finding:
    return Finding(code, Weight.THINK_AGAIN, message, "Write something: else")


def test_dates_are_said_and_the_remedy_of_the_plan_file_is_not() -> None:
    told = words(plan(work("hollow tining", "2027-08-09")))
    said = finding_in_words(
        told,
        found(
            "hollow tining from 2027-08-09 to 2027-08-11 is late (common practice); it begins at "
            "06:30: that's on 2028-01-03"
        ),
    )
    assert said == (
        "Hollow tining from Monday 9 to Wednesday 11 August is late. It begins at 06:30. "
        "That’s on Monday 3 January 2028."
    )


def test_an_american_reads_american_terms_and_times() -> None:
    told = words(plan(work("hollow tining", "2027-08-09"), club={"language": "en-US"}))
    said = finding_in_words(told, found("hollow tining on 2027-08-09 begins at 06:30"))
    assert said == "Core aerification on Monday, August 9 begins at 6:30 a.m."


def test_every_day_that_is_named_is_known() -> None:
    days = finding_dates(found("from 2027-08-09 to 2027-08-11, and on 2027-09-01"))
    assert days == (*(dt.date(2027, 8, day) for day in (9, 10, 11)), dt.date(2027, 9, 1))


def test_a_committee_is_not_troubled_with_the_plan_file() -> None:
    assert for_the_committee(found("a day is too long", "day-too-long"))
    assert not for_the_committee(found("the plan names no sender", "no-sender"))


def test_greens_are_named_as_golfers_name_them() -> None:
    told = words(plan(work("hollow tining", "2027-08-09"), greens="1-18, Putting green"))
    message = "no brushing follows the dressing on greens 1-3, 7 and the Putting green"
    few = Finding("a", Weight.THINK_AGAIN, message, greens=("1", "2", "3", "7", "Putting green"))
    assert finding_in_words(told, few) == (
        "No brushing follows the dressing on greens 1 to 3 and 7, and the putting green."
    )
    # Of greens that are only a part of all that it is about, the runs are written out.
    part = Finding("a", Weight.THINK_AGAIN, "greens 1-3 closed on 2027-08-09", greens=("1", "9"))
    assert finding_in_words(told, part) == "Greens 1 to 3 closed on Monday 9 August."
