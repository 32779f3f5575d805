"""A whole plan, from file to programme: what is neither day nor sand nor figure."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from notices.plan.load import load_plan
from notices.programme.model import Programme
from notices.programme.slugs import distinct_slugs, slug
from notices.programme.work_out import work_out

ProgrammeOf = Callable[..., Programme]

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/plan.yaml"))
ISSUED = dt.date(2026, 9, 14)

COURSE = "course: {greens: [{green: 1-2, area: 480 m2}]}\n"
WORK = "works: [{operation: rolling, dates: 2026-10-12}]\n"


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_examples_work_out(path: Path) -> None:
    programme = work_out(load_plan(path).plan, ISSUED)
    assert programme.issued == ISSUED
    assert programme.works or programme.closures
    assert bool(programme.works) == bool(programme.periods)
    assert {work.id for work in programme.works} == set(programme.recoveries)
    told = [work.id for period in programme.periods for work in period.works]
    assert sorted(told) == sorted(work.id for work in programme.works)


def test_the_plan_of_the_brief() -> None:
    (path,) = (path for path in EXAMPLES if path.parent.name == "marlpit-common")
    programme = work_out(load_plan(path).plan, ISSUED)
    coring, dressing = programme.works
    assert coring.id == "autumn-cores"
    # The dressing follows the coring's own days, six greens on each.
    assert [visit.greens for visit in dressing.main_visits] == [
        visit.greens for visit in coring.main_visits
    ]
    # By hand: 13 mm at 50 × 50 mm, 50 mm deep: π × 42.25 ÷ 2,500 × 50 = 2.6547 L/m²; 17 greens of
    # 480 m² and one of 610 m² are 8,770 m²; 5 % is wasted; 1.55 t/m³ at 48.
    volume = programme.figure("sand", "top-dressing-1")
    cost = programme.figure("cost of sand", "all")
    assert volume is not None
    assert cost is not None
    assert volume.value == pytest.approx(2.6547 * 8.770 * 1.05, rel=1e-4)
    assert cost.value == pytest.approx(2.6547 * 8.770 * 1.05 * 1.55 * 48, rel=1e-4)
    assert [fixture.name for fixture in programme.fixtures][:1] == ["Autumn Medal"]
    # The medal on the 18th is accepted by the plan.
    assert "fixture-in-recovery" in {finding.code for finding, _, _ in programme.accepted}


def test_without_a_sender_the_address_can_never_be_delivered_to(
    programme_of: ProgrammeOf,
) -> None:
    club = programme_of("club: {name: Ål & Øst Golf}\n" + COURSE + WORK).club
    assert club.sender.placeholder
    assert club.sender.email.endswith(".invalid")  # RFC 2606
    assert club.sender.role == ""  # wording has the usual post in each language


def test_a_sender_signs(programme_of: ProgrammeOf) -> None:
    club = programme_of(
        "club: {name: Marl Hill, sender: {role: Secretary, name: J. Doe, email: j@marl.example}}\n"
        + COURSE
        + WORK
    ).club
    assert (club.sender.role, club.sender.name, club.sender.email) == (
        "Secretary",
        "J. Doe",
        "j@marl.example",
    )
    assert not club.sender.placeholder


def test_fixtures_stand_in_the_order_of_the_calendar_with_their_greens(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(
        COURSE
        + "closures: [{what: greens 1, dates: 2026-10-12, instead: temporary greens}]\n"
        + "fixtures:\n"
        + "  - {name: Late, date: 2026-10-13}\n"
        + "  - {name: Early, date: 2026-10-12, kind: society}\n"
    )
    early, late = programme.fixtures
    assert (early.name, early.kind, early.closed_greens) == ("Early", "society", ("1",))
    assert early.plan_index == 1
    assert (late.closed_greens, late.recovering_greens) == ((), ())


def test_closures_alone_are_a_programme(programme_of: ProgrammeOf) -> None:
    programme = programme_of(COURSE + "closures: [{what: course, dates: 2026-10-12}]\n")
    assert not programme.works
    assert not programme.periods
    assert not programme.figures
    assert programme.closures[0].whole_course


def test_closures_of_one_thing_are_counted(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        COURSE
        + "closures:\n"
        + "  - {what: practice ground, dates: 2026-10-12}\n"
        + "  - {what: Practice Ground, dates: 2026-11-12}\n"
        + "  - {what: 练习场, dates: 2026-11-12}\n"
    )
    assert [closure.id for closure in programme.closures] == [
        "closure-practice-ground-1",
        "closure-practice-ground-2",
        "closure-place-1",
    ]


def test_an_approval_still_pending_makes_a_draft(programme_of: ProgrammeOf) -> None:
    assert programme_of(COURSE + WORK + "approval: pending\n").draft
    assert not programme_of(COURSE + WORK).draft
    approved = programme_of(
        COURSE + WORK + "approval: {by: Greens committee, date: 2026-01-02, reference: minute 14}\n"
    )
    assert not approved.draft
    assert approved.approval is not None
    assert approved.approval.reference == "minute 14"


def test_decision_and_restrictions_come_along(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        COURSE
        + WORK
        + "decision: {by: the Course Manager, when: 16:00 the day before, confirmed: '06:30'}\n"
        + "restrictions: [{what: buggies, dates: 2026-10-12 to 2026-10-13, except: medical}]\n"
    )
    assert programme.decision is not None
    assert programme.decision.confirmed == dt.time(6, 30)
    (restriction,) = programme.restrictions
    assert restriction.dates == (dt.date(2026, 10, 12), dt.date(2026, 10, 13))
    assert (restriction.exception, restriction.ask) == ("medical", "")


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Marlpit Common Golf Club", "marlpit-common-golf-club"),
        ("  St. André’s  ", "st-andres"),
        ("St. André's", "st-andres"),
        ("高尔夫", "club"),
    ],
)
def test_slugs(name: str, expected: str) -> None:
    assert slug(name) == expected


def test_slugs_of_several_names_never_meet() -> None:
    assert distinct_slugs(["a b", "a-b", "a b 2", "all"], "x") == {
        "a b": "a-b",
        "a-b": "a-b-2",
        "a b 2": "a-b-2-2",
        "all": "all-2",
    }
