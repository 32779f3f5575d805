"""Changes in words, as a course manager would say them to a member's face."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest
from hypothesis import given, settings

import notices
from notices.changing import postpone
from notices.plan.model import Plan
from notices.programme.changes import compare
from notices.programme.model import Programme, Promise
from notices.programme.work_out import work_out
from notices.wording.changes import ChangeWords
from notices.wording.dates import DateWords
from tests.documents.building import EXAMPLES, ISSUED, changed
from tests.programme.strategies import plans

DATES = DateWords("en-GB", dt.date(2027, 7, 19))


def worked_out(path: Path) -> Programme:
    plan = notices.load_plan(path).plan
    return notices.work_out(plan, plan.issued or ISSUED)


def renovation(programme: Programme) -> Promise:
    """Return when the greens of the renovation putt well."""
    return next(p for p in programme.periods if len(p.opening_works) > 2).putting_well


def said(folder: Path, example: str, *replaced: tuple[str, str]) -> tuple[str, ...]:
    """Change the text of an example and say what has changed."""
    after = changed(example, folder, *replaced)
    programmes = worked_out(EXAMPLES / example / "plan.yaml"), worked_out(after)
    return ChangeWords.of(*programmes, compare(*programmes)).sentences()


def test_one_day_of_three_moves(tmp_path: Path) -> None:
    told = said(
        tmp_path,
        "marlpit-common",
        ("2026-10-13: 7-12", "2026-10-15: 7-12"),
        (
            "dates: 2026-10-12 to 2026-10-14\n    reserve_dates: 2026-10-15",
            "dates: 2026-10-12, 2026-10-14 to 2026-10-15\n    reserve_dates: 2026-10-16",
        ),
    )
    assert told[:2] == (
        "Hollow tining on greens 7 to 12 moves from Tuesday 13 to Thursday 15 October.",
        (
            "If rain stops hollow tining, we catch up on Friday 16 October, "
            "not on Thursday 15 October."
        ),
    )


def test_works_that_move_together_are_told_together(tmp_path: Path) -> None:
    told = said(tmp_path, "withy-hollow", ("2027-08-23 to 2027-08-29", "2027-08-24 to 2027-08-30"))
    # The first of three dressings ends on 30 August; the others follow 7 and 14 days later.
    assert told[0] == (
        "The greens renovation is now from Tuesday 24 to Monday 30 August, "
        "not from Monday 23 to Sunday 29 August. "
        "We now spread sand again from Tuesday 31 August to Monday 13 September."
    )
    # Brushing goes along with the sand, and is told with it.
    assert not [text for text in told if "rushing" in text]
    assert told[-1] == (
        "The restriction on buggies is now from Tuesday 24 to Monday 30 August, "
        "not from Monday 23 to Sunday 29 August."
    )


def test_a_closure_that_moves_is_told(tmp_path: Path) -> None:
    moved = ("2027-08-20 to 2027-09-12", "2027-08-21 to 2027-09-12")
    (told,) = said(tmp_path, "withy-hollow", moved)
    assert told == (
        "The closure of the practice ground is now from Saturday 21 August to Sunday 12 September, "
        "not from Friday 20 August to Sunday 12 September."
    )


def test_one_day_of_a_renovation_moves_as_one(tmp_path: Path) -> None:
    """Eight kinds of work go along; sand follows 7 and 14 days after the first, on these greens."""
    after = changed("withy-hollow", tmp_path)
    put_off = postpone(
        after, "hollow-tining-1", None, dt.date(2027, 8, 25), today=ISSUED, alone=False
    )
    told = ChangeWords.of(put_off.before, put_off.after, compare(put_off.before, put_off.after))
    assert told.sentences()[:2] == (
        (
            "The greens renovation on greens 7 to 9 moves from Wednesday 25 to Tuesday 31 August. "
            "We now spread sand there again on Tuesday 7 September and on Tuesday 14 September."
        ),
        (
            "If rain stops us, we catch up on Wednesday 1 September, "
            "not on Tuesday 31 August and Wednesday 1 September."
        ),
    )
    was, now = (renovation(of) for of in (put_off.before, put_off.after))
    # The worst had the reserve dates in it already, and only the other date moves.
    assert was.at_worst == now.at_worst
    assert was.at_worst
    assert was.expect_by < now.expect_by
    name = DATES.day
    opening, putting = told.sentences()[2:]
    # The last greens are worked on on the 31st, not the 29th; the last reserve day, after which all
    # are open even if it rains, stays the 1st of September.
    assert opening == (
        "After the greens renovation, all greens are now open by Wednesday 1 September, "
        "not Monday 30 August. If it rains, it is still Thursday 2 September."
    )
    # On the 31st greens 4 to 6 get their second sand while 7 to 9 are closed, but for an hour or two:
    # three are shut all day, as on the other days, so nothing is said of holes.
    assert not any("holes to play" in sentence for sentence in told.sentences())
    assert putting == (
        f"After the greens renovation, we now expect the greens to putt well by "
        f"{name(now.expect_by)}, not {name(was.expect_by)}. "
        f"At worst it is still {name(was.at_worst)}."
    )


def test_the_reason_for_new_days_follows_them(tmp_path: Path) -> None:
    put_off = postpone(
        changed("withy-hollow", tmp_path),
        "hollow-tining-1",
        None,
        dt.date(2027, 8, 25),
        today=ISSUED,
        reason="Heavy rain.",
    )
    told = ChangeWords.of(put_off.before, put_off.after, compare(put_off.before, put_off.after))
    first, *others = told.sentences()
    assert first.startswith(
        "The greens renovation on greens 7 to 9 moves from Wednesday 25 to Tuesday 31 August. "
        "The reason: heavy rain. We now spread sand there again on "
    )
    # Said once: eight kinds of work move along.
    assert not [sentence for sentence in others if "rain." in sentence.partition("If rain")[0]]


def test_both_dates_of_a_promise_are_told_as_they_were_and_are(tmp_path: Path) -> None:
    later = changed(
        "withy-hollow",
        tmp_path,
        ("2027-08-23 to 2027-08-29", "2027-08-24 to 2027-08-30"),
        ("2027-08-31 to 2027-09-01", "2027-09-01 to 2027-09-02"),
    )
    before, after = worked_out(EXAMPLES / "withy-hollow" / "plan.yaml"), worked_out(later)
    was, now = renovation(before), renovation(after)
    assert was.at_worst
    assert now.at_worst
    assert was.at_worst < now.at_worst
    name = DATES.day
    (told,) = (
        sentence
        for sentence in ChangeWords.of(before, after, compare(before, after)).sentences()
        if "putt well" in sentence
    )
    assert told == (
        f"After the greens renovation, we now expect the greens to putt well by "
        f"{name(now.expect_by)}, not {name(was.expect_by)}. "
        f"At worst it is now {name(now.at_worst)}, not {name(was.at_worst)}."
    )


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            "  - {name: Summer Bowl, date: 2027-08-14, kind: competition}\n",
            "",
            "Summer Bowl, Saturday 14 August, falls away.",
        ),
        (
            "September Medal, date: 2027-09-18",
            "September Medal, date: 2027-10-02",
            "September Medal moves from Saturday 18 September to Saturday 2 October.",
        ),
        (
            "while_working: temporary green",
            "while_working: closed",
            (
                "Drain trenching: while we work, greens are closed; before, the plan was that "
                "you play to temporary greens."
            ),
        ),
        (
            "reopen: 14 days later",
            "reopen: 10 days later",
            "Drain trenching: greens open again after ten days, not after 14 days.",
        ),
        (
            "reason: the sand is stored there",
            "reason: the lorries turn there",
            "The reason for closing the practice ground is now: the lorries turn there.",
        ),
        (
            "tine_diameter: 18 mm",
            "tine_diameter: 19 mm",
            "Deep solid tining: the tine diameter is 19 mm, not 18 mm.",
        ),
        (
            "dates: 2027-11-09 to 2027-11-12\n    reserve_dates: 2027-11-16\n",
            "dates: 2027-11-09 to 2027-11-12\n",
            "Drain trenching has no reserve day any more.",
        ),
        (
            "by: the Course Manager, when: 16:00",
            "by: the Head Greenkeeper, when: 16:00",
            (
                "Who decides on the day, and where you hear of it, is now: the Head Greenkeeper, "
                "16:00 the day before, the clubhouse board and the website."
            ),
        ),
    ],
    ids=lambda text: text.strip()[:25],
)
def test_one_thing_changes(tmp_path: Path, old: str, new: str, sentence: str) -> None:
    assert sentence in said(tmp_path, "withy-hollow", (old, new))


@settings(max_examples=15, deadline=None)
@given(plans(), plans())
def test_every_change_is_told_in_whole_sentences(one: Plan, other: Plan) -> None:
    programmes = work_out(one, ISSUED), work_out(other, ISSUED)
    changes = compare(*programmes)
    told = ChangeWords.of(*programmes, changes).sentences()
    assert bool(told) is bool(changes)
    for sentence in told:
        assert sentence[0].isupper(), sentence
        assert sentence.endswith("."), sentence
        assert not [slip for slip in ("  ", "..", "None", " ,", "()") if slip in sentence], sentence


def test_nothing_changes(tmp_path: Path) -> None:
    assert said(tmp_path, "tansy-down") == ()


def test_american_dates(tmp_path: Path) -> None:
    before = tmp_path / "before.yaml"
    after = tmp_path / "after.yaml"
    plan = (
        "issued: 2026-01-05\nclub: {name: Live Oak, language: en-US}\n"
        "course: {greens: [{green: 1-9}]}\n"
        "works: [{operation: brushing, dates: 2026-10-13}]\n"
    )
    before.write_text(plan, encoding="utf-8")
    after.write_text(plan.replace("10-13", "10-15"), encoding="utf-8")
    programmes = worked_out(before), worked_out(after)
    assert ChangeWords.of(*programmes, compare(*programmes)).sentences() == (
        "Brushing moves from Tuesday, October 13 to Thursday, October 15.",
    )
