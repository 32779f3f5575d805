"""Fixtures: where they are played, what is decided about them, and what that does to a clash."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.findings import Finding, Weight
from notices.programme.changes import compare
from notices.programme.day_by_day import course_days
from notices.programme.model import Aspect, ChangeKind, Decided, Programme, Subject
from notices.wording import circumstances
from notices.wording.changes import ChangeWords
from notices.wording.words import Words

ProgrammeOf = Callable[..., Programme]

# A light dressing closes greens on its day and putts smoothly on the third day at the latest
# (common practice, no published source).
COURSE = "course: {greens: [{green: 1-2, area: 480 m2}]}\n"
WORKS = "works: [{operation: top dressing, dates: 2026-06-01}]\n"
TWO_COURSES = """\
course: {greens: [{green: 1-9, course: Oak}, {green: 1-9, course: Elm}]}
works: [{operation: top dressing, dates: 2026-06-01, greens: Oak 1-9}]
"""
CODES = ("fixture-in-closure", "fixture-in-recovery")


def medal(day: int, more: str = "") -> str:
    return f"fixtures: [{{name: June Medal, date: 2026-06-{day:02}{more}}}]\n"


def found(programme: Programme) -> list[Finding]:
    return [finding for finding in programme.findings if finding.code in CODES]


# What is written of the fixture, and the code and weight of what is found; nothing for none.
DECISIONS = [
    (1, "", ("fixture-in-closure", Weight.THINK_AGAIN)),
    (2, "", ("fixture-in-recovery", Weight.THINK_AGAIN)),
    (1, ", decision: play on", ("fixture-in-closure", Weight.INFORMATION)),
    (2, ", decision: does not count", ("fixture-in-recovery", Weight.INFORMATION)),
    (1, ", decision: moved", None),
    (1, ", decision: cancelled", None),
    (1, ", decision: canceled", None),
    (1, ", moved_to: 2026-06-20", None),
    (20, ", moved_to: 2026-06-02", ("fixture-in-recovery", Weight.THINK_AGAIN)),
    (1, ", kind: away match", None),
    (1, ", kind: match", ("fixture-in-closure", Weight.THINK_AGAIN)),
]


@pytest.mark.parametrize(("day", "more", "expected"), DECISIONS)
def test_a_decision_quietens_the_clash_or_ends_it(
    programme_of: ProgrammeOf, day: int, more: str, expected: tuple[str, Weight] | None
) -> None:
    findings = found(programme_of(COURSE + WORKS + medal(day, more)))
    assert [(f.code, f.weight) for f in findings] == ([expected] if expected else [])


def test_what_is_decided_is_said_in_the_finding(programme_of: ProgrammeOf) -> None:
    (played,) = found(programme_of(COURSE + WORKS + medal(1, ", decision: does not count")))
    assert played.message == (
        "June Medal on 2026-06-01 finds greens 1 and 2 closed; it goes ahead and does not count, "
        "as decided"
    )
    assert played.suggestion == ""
    (moved,) = found(programme_of(COURSE + WORKS + medal(20, ", moved_to: 2026-06-02")))
    assert moved.message.endswith("well again, and was moved there from 2026-06-20")


def test_golfers_read_of_closed_tees_and_of_a_higher_cut(programme_of: ProgrammeOf) -> None:
    tees = "closures: [{what: tees 1-2, dates: 2026-06-06, instead: the mats beside them}]\n"
    (said,) = circumstances.fixtures(Words(programme_of(COURSE + tees + medal(6))))
    assert said == (
        "June Medal, Saturday 6 June: the tees of both holes are closed. "
        "Please use the mats beside them."
    )
    cut = "works: [{operation: raising the height of cut, dates: 2026-06-05}]\n"
    assert circumstances.fixtures(Words(programme_of(COURSE + cut + medal(6)))) == [
        "June Medal, Saturday 6 June: we mow a little higher then, so putts are slower."
    ]
    # How long the cut stays up with no work to follow, nobody knows: told for 14 days.
    assert circumstances.fixtures(Words(programme_of(COURSE + cut + medal(19)))) == []


def test_tees_of_another_course_do_not_matter(programme_of: ProgrammeOf) -> None:
    both = TWO_COURSES + "closures: [{what: tees Oak 1-9, dates: 2026-06-20}]\n"
    for course, expected in ((", course: Oak", 1), (", course: elm", 0), ("", 1)):
        programme = programme_of(both + medal(20, course))
        codes = [f.code for f in programme.findings if f.code == "fixture-and-closure"]
        assert len(codes) == expected


def test_what_is_used_during_a_closure_stands_in_the_sentence(programme_of: ProgrammeOf) -> None:
    shut = [
        "{what: tees 1-2, dates: 2026-06-20, instead: the mats}",
        "{what: fairway 2, dates: 2026-06-20}",
    ]
    made = programme_of(COURSE + f"closures: [{', '.join(shut)}]\n" + medal(20))
    (message,) = (f.message for f in made.findings if f.code == "fixture-and-closure")
    assert message == (
        "June Medal on 2026-06-20 is planned during the closure of tees 1-2, with the mats instead, "
        "and of fairway 2"
    )


@pytest.mark.parametrize(
    ("course", "clashes"), [("", True), (", course: oak", True), (", course: Elm", False)]
)
def test_work_on_the_other_course_is_no_clash(
    programme_of: ProgrammeOf, course: str, *, clashes: bool
) -> None:
    programme = programme_of(TWO_COURSES + medal(1, course))
    assert bool(found(programme)) is clashes
    (fixture,) = programme.fixtures
    assert len(fixture.closed_greens) == (9 if clashes else 0)


SAID = [
    (1, ", decision: play on", "June Medal, Monday 1 June: it goes ahead. Both greens are out of play that day."),
    (2, ", decision: play on", "June Medal, Tuesday 2 June: it goes ahead while the greens are still healing."),
    (
        2,
        ", decision: does not count",
        "June Medal, Tuesday 2 June: it goes ahead while the greens are still healing, and scores will not count.",
    ),
    (1, ", decision: moved", "June Medal, Monday 1 June, is moved. We will tell you its new date."),
    (1, ", moved_to: 2026-07-04", "June Medal is moved to Saturday 4 July. It was to be on Monday 1 June."),
    (1, ", decision: cancelled", "June Medal, Monday 1 June, is called off."),
    # It meets nothing, and so nothing need be said.
    (20, ", decision: play on", None),
    (20, "", None),
]  # fmt: skip


@pytest.mark.parametrize(("day", "more", "sentence"), SAID)
def test_golfers_are_told_what_is_decided(
    programme_of: ProgrammeOf, day: int, more: str, sentence: str | None
) -> None:
    words = Words(programme_of(COURSE + WORKS + medal(day, more)))
    assert circumstances.fixtures(words) == ([sentence] if sentence else [])


def test_one_green_that_heals_is_named(programme_of: ProgrammeOf) -> None:
    text = COURSE + WORKS.replace("06-01", "06-01, greens: 2") + medal(2, ", decision: play on")
    (said,) = circumstances.fixtures(Words(programme_of(text)))
    assert said.endswith("it goes ahead while green 2 is still healing.")


def test_what_is_not_played_is_on_no_calendar_of_the_course(programme_of: ProgrammeOf) -> None:
    def events(more: str) -> list[dt.date]:
        stacks = course_days(programme_of(COURSE + WORKS + medal(1, more)))
        return [day.date for stack in stacks for day in stack if day.fixtures]

    assert events("") == [dt.date(2026, 6, 1)]
    assert events(", decision: cancelled") == []
    assert events(", moved_to: 2026-06-02") == [dt.date(2026, 6, 2)]


def test_two_editions_are_compared(programme_of: ProgrammeOf) -> None:
    def edition(more: str) -> Programme:
        return programme_of(COURSE + WORKS + medal(2, more))

    undecided = edition("")
    (off, clear) = compare(undecided, edition(", decision: cancelled")).changes
    assert (off.kind, off.subject) == (ChangeKind.DROPPED, Subject.FIXTURE)
    assert clear.kind is ChangeKind.CLEAR
    played = edition(", decision: does not count")
    (decided,) = compare(undecided, played).changes
    assert (decided.kind, decided.aspect) == (ChangeKind.OTHERWISE, Aspect.DECISION)
    assert (decided.before, decided.after) == ("", "does not count")
    said = ChangeWords.of(undecided, played, compare(undecided, played)).whole()
    assert "June Medal, Tuesday 2 June: it goes ahead, and scores will not count." in said


def test_it_is_known_in_what_state_a_fixture_is(programme_of: ProgrammeOf) -> None:
    (fixture,) = programme_of(COURSE + WORKS + medal(1, ", moved_to: 2026-06-20")).fixtures
    assert (fixture.decided, fixture.date) == (Decided.MOVED, dt.date(2026, 6, 20))
    assert fixture.moved_from == dt.date(2026, 6, 1)


ACCEPTED = "accepted:\n  - {finding: fixture-in-recovery, by: the committee, why: it is played}\n"
ABOUT = ACCEPTED.replace(", by", ", about: ABOUT, by")
TWO = """\
fixtures: [{name: June Medal, date: 2026-06-02}, {name: Summer Bowl, date: 2026-06-03}]
"""


def named(programme: Programme) -> tuple[list[str], list[str]]:
    """The fixtures whose finding is open, and those whose finding is accepted."""
    return (
        [finding.message.split(" on ")[0] for finding in found(programme)],
        [finding.message.split(" on ")[0] for finding, _, _ in programme.accepted],
    )


def test_a_reason_holds_for_the_fixture_that_it_is_about(programme_of: ProgrammeOf) -> None:
    plan = COURSE + WORKS + TWO
    assert named(programme_of(plan + ACCEPTED)) == ([], ["June Medal", "Summer Bowl"])
    one = programme_of(plan + ABOUT.replace("ABOUT", "summer bowl"))
    assert named(one) == (["June Medal"], ["Summer Bowl"])


def test_a_reason_of_its_own_counts_before_one_for_all(programme_of: ProgrammeOf) -> None:
    own = "  - {finding: fixture-in-recovery, about: Summer Bowl, by: us, why: a cup}\n"
    accepted = programme_of(COURSE + WORKS + TWO + ACCEPTED + own).accepted
    assert [(by, why) for _, by, why in accepted] == [
        ("the committee", "it is played"),
        ("us", "a cup"),
    ]


def test_a_reason_that_is_taken_for_several_is_pointed_out(programme_of: ProgrammeOf) -> None:
    def told(accepted: str) -> list[str]:
        programme = programme_of(COURSE + WORKS + TWO + accepted)
        return [f.message for f in programme.findings if f.code == "accepted-for-several"]

    assert told(ACCEPTED) == [
        "this reason is taken for June Medal on 2026-06-02 and Summer Bowl on 2026-06-03"
    ]
    assert told(ABOUT.replace("ABOUT", "summer bowl")) == []
    # With one of its own for the other, the reason for all is for one alone.
    assert told(ACCEPTED + ABOUT.replace("ABOUT", "summer bowl").partition("\n")[2]) == []


@pytest.mark.parametrize("about", ["services", "hollow tining"])
def test_a_reason_holds_for_the_work_that_it_is_about(
    programme_of: ProgrammeOf, about: str
) -> None:
    works = """\
works:
  - {operation: hollow tining, dates: 2026-04-01, id: services}
  - {operation: slitting, dates: 2026-06-01}
accepted: [{finding: services-not-checked, about: ABOUT, by: me, why: all is shallow}]
"""
    programme = programme_of(COURSE + works.replace("ABOUT", about))
    codes = [
        finding.work for finding in programme.findings if finding.code == "services-not-checked"
    ]
    assert codes == ["slitting-1"]
    assert [finding.work for finding, _, _ in programme.accepted] == ["services"]


@pytest.mark.parametrize("about", ["Spring Bowl", "top dressing"])
def test_what_accepts_nothing_is_told(programme_of: ProgrammeOf, about: str) -> None:
    programme = programme_of(COURSE + WORKS + TWO + ABOUT.replace("ABOUT", about))
    (finding,) = (f for f in programme.findings if f.code == "nothing-to-accept")
    assert finding.weight is Weight.INFORMATION
    assert finding.path == ("accepted", 0)
    assert f"fixture-in-recovery of {about}" in finding.message
    codes = {f.code for f in programme_of(COURSE + WORKS + TWO + ACCEPTED).findings}
    assert "nothing-to-accept" not in codes
