"""Duties in words, as the secretary reads them."""

from __future__ import annotations

import datetime as dt

import notices
from notices.documents.to_do import to_do
from notices.programme.duties import due
from notices.wording.duties import due_in_words
from notices.wording.words import Words
from tests.documents.building import EXAMPLES


def said(name: str, day: str) -> str:
    plan = notices.load_plan(EXAMPLES / name / "plan.yaml").plan
    assert plan.issued is not None
    words = Words(notices.work_out(plan, plan.issued))
    today = dt.date.fromisoformat(day)
    return due_in_words(words, due(to_do(words.programme), today), today)


def test_the_day_before_the_work() -> None:
    assert said("marlpit-common", "2026-10-11") == (
        "To do on Sunday 11 October:\n"
        "  Today: Print counter-handout.pdf.\n"
        "  Today: Print tee-sign.pdf. "
        "The team calendar says when each sign goes up and comes down.\n"
        "  Today: Print board-notice-a4.pdf and put it up.\n"
        "  Today: Send the reminder: hollow tining and top dressing (member-email-reminder).\n"
        "  Today: Print starter-sheet.pdf for hollow tining and top dressing.\n"
        "  Today: Print team-sheet.pdf for hollow tining and top dressing.\n"
        "  By Monday 12 October: Decide whether the work of Monday 12 October goes ahead "
        "(the Course Manager, 16:00 the day before), and say so: clubhouse board and website."
    )


def test_a_promise_that_passed_without_a_word_comes_first() -> None:
    # Greens open again by 2 September at worst; the renovation ends on 29 August.
    assert said("withy-hollow", "2027-09-03").startswith(
        "Promised, and not recorded:\n"
        "  All 18 greens and the putting green were to be open again by Thursday 2 September "
        "after the greens renovation. Nothing is recorded.\n"
        "  Look, record what you see, and tell members if it takes longer."
    )


def test_american_clubs_read_their_own_dates_and_tons() -> None:
    text = said("live-oak", "2027-06-11")
    assert "To do on Friday, June 11:" in text
    assert " tons of sand (three loads), to be here by Friday, July 9." in text


def test_signs_are_named_by_what_stands_on_them() -> None:
    """On 13 October the second day's sign and that of the practice ground go up."""
    assert (
        "  Today: Signs: put up “Greens 7 to 12 closed” and “Practice ground closed”; "
        "take down “Greens 1 to 6 closed”."
    ) in said("marlpit-common", "2026-10-13").splitlines()


def test_pages_of_closures_alone_are_printed_from_their_day_on() -> None:
    lines = said("marlpit-common", "2026-11-01").splitlines()
    assert "  Today: Print starter-sheet.pdf, from Monday 2 November on." in lines


def test_nothing_to_do() -> None:
    assert said("withy-hollow", "2027-08-14") == "Nothing is due on Saturday 14 August."
