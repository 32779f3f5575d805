from __future__ import annotations

import datetime as dt
import re
from typing import Any

import pytest
from pydantic import ValidationError

from notices.operations import CATALOGUE, WhileWorking
from notices.plan.green_choice import GreenChoice, day_lines, read_choice, write_choice
from notices.plan.model import Fixture, Plan, Work

AUGUST_16, AUGUST_17 = dt.date(2027, 8, 16), dt.date(2027, 8, 17)


def plan(**parts: object) -> Plan:
    smallest: dict[str, Any] = {
        "club": {"name": "Tansy Down"},
        "course": {"greens": [{"green": "1-9"}]},
        "works": [{"operation": "hollow tining", "dates": "2027-08-16 to 2027-08-17"}],
    }
    return Plan.model_validate(smallest | parts)


def of_work(**keys: object) -> Any:
    return plan(works=[{"operation": "hollow tining", "dates": "2027-08-16", **keys}]).works[0]


def faults(**parts: object) -> list[tuple[tuple[str | int, ...], str]]:
    with pytest.raises(ValidationError) as caught:
        plan(**parts)
    return [
        (e["loc"], str(e.get("ctx", {}).get("error", e["type"]))) for e in caught.value.errors()
    ]


def test_what_is_left_out_has_the_defaults_of_the_brief() -> None:
    smallest = plan()
    assert smallest.notices == 1
    assert (smallest.club.language, smallest.club.units) == ("en-GB", None)
    assert smallest.course.grass == "cool-season"
    assert smallest.crew is None
    assert smallest.works[0].greens is None
    assert smallest.works[0].services_checked is False
    assert smallest.closures == ()
    assert smallest.fixtures == ()


def test_a_plan_cannot_be_changed() -> None:
    with pytest.raises(ValidationError):
        plan().club.name = "Other"  # type: ignore[misc]


@pytest.mark.parametrize("name", sorted(CATALOGUE))
def test_every_operation_can_be_planned(name: str) -> None:
    for typed in (name, name.upper(), f" {name.replace(' ', '_')} ", name.replace(" ", "  ")):
        assert of_work(operation=typed).operation == name


@pytest.mark.parametrize("typed", ["hollow", 5, None, ["brushing"], ""])
def test_other_operations_cannot(typed: object) -> None:
    (fault,) = faults(works=[{"operation": typed, "dates": "2027-08-16"}])
    assert fault[0] == ("works", 0, "operation")
    assert "there is no operation" in fault[1]


@pytest.mark.parametrize(
    ("typed", "days"),
    [
        ("when finished", 0),
        ("Next morning", 1),
        ("1 day later", 1),
        ("2 days later", 2),
        ("14  days later", 14),
    ],
)
def test_reads_when_greens_reopen(typed: str, days: int) -> None:
    assert of_work(reopen=typed).reopen == days


@pytest.mark.parametrize(
    ("days", "written"), [(0, "when finished"), (1, "next morning"), (14, "14 days later")]
)
def test_writes_when_greens_reopen(days: int, written: str) -> None:
    work = of_work(reopen=f"{days} days later")
    assert work.model_dump(mode="json")["reopen"] == written


@pytest.mark.parametrize("typed", ["soon", 2, "2 weeks later", "1000 days later", True])
def test_refuses_other_words_for_reopening(typed: object) -> None:
    (fault,) = faults(works=[{"operation": "rolling", "dates": "2027-08-16", "reopen": typed}])
    assert fault[0] == ("works", 0, "reopen")
    assert "is not understood" in fault[1]


@pytest.mark.parametrize("choice", list(WhileWorking))
def test_reads_what_a_green_is_while_work_goes_on(choice: WhileWorking) -> None:
    assert of_work(while_working=f" {choice.value.title()} ").while_working is choice


def test_greens_may_be_named_day_by_day() -> None:
    work = of_work(
        dates="2027-08-16 to 2027-08-17", greens={"2027-08-17": "6-9", "2027-08-16": "5, 1-4"}
    )
    assert work.greens == GreenChoice(
        by_day=((AUGUST_16, (5, 1, 2, 3, 4)), (AUGUST_17, (6, 7, 8, 9)))
    )
    assert write_choice(work.greens) == {"2027-08-16": "5, 1-4", "2027-08-17": "6-9"}
    assert read_choice(work.greens) is work.greens


@pytest.mark.parametrize(
    ("typed", "words", "at_key"),
    [
        ({"2027-08-16 to 2027-08-17": "1"}, "is several days: give each day its own line", True),
        ({"16 August": "1"}, "has no year", True),
        ({"2027-08-16": ""}, "this names no green", False),
        ({"2027-08-16": "1", "2027-08-16 ": "2"}, "2027-08-16 stands here twice", True),
    ],
)
def test_a_day_with_greens_at_fault_is_told(
    typed: dict[str, object], words: str, *, at_key: bool
) -> None:
    (line,) = (line for line in day_lines(typed) if line.fault)
    assert words in str(line.fault)
    assert line.at_key is at_key
    with pytest.raises(ValueError, match=words):
        read_choice(typed)


def test_a_day_by_day_choice_has_days() -> None:
    with pytest.raises(ValueError, match="no day is given"):
        read_choice({})


WORK = {"operation": "hollow tining", "dates": "2027-08-16 to 2027-08-17"}


@pytest.mark.parametrize(
    ("parts", "loc", "words"),
    [
        ({"works": [], "closures": []}, (), "nothing is planned"),
        (
            {"works": [WORK | {"reserve_dates": "2027-08-15"}]},
            ("works", 0, "reserve_dates"),
            "comes before the work",
        ),
        (
            {"works": [WORK | {"reserve_dates": "2027-08-17"}]},
            ("works", 0, "reserve_dates"),
            "is a day of the work and a reserve date at once",
        ),
        (
            {"works": [WORK | {"greens": {"2027-08-18": "1"}}]},
            ("works", 0, "greens"),
            "not among the dates",
        ),
        (
            {"course": {"greens": [{"green": 1}], "soil": {"clay": "60 %", "sand": "41 %"}}},
            ("course", "soil", "sand"),
            "more than 100 %",
        ),
        ({"fixtures": [{"name": "x"}]}, ("fixtures", 0), "this fixture has no date"),
        ({"fixtures": [{}]}, ("fixtures", 0), "this fixture has no name and date"),
        (
            {"fixtures": [{"name": "x", "calendar": "x.ics"}]},
            ("fixtures", 0),
            "names a calendar and a fixture at once",
        ),
        (
            {
                "closures": [
                    {
                        "what": "green 1",
                        "dates": "2027-08-09",
                        "instead": "the nursery green",
                        "temporary": "rough",
                    }
                ]
            },
            ("closures", 0),
            "golfers use something else instead",
        ),
        ({"approval": "yes"}, ("approval",), 'write "pending"'),
        ({"approval": {}}, ("approval",), "nobody is named who approved"),
        (
            {
                "observed": [
                    {"operation": "rolling", "done": "2026-10-02", "putting_smoothly": "2026-10-01"}
                ]
            },
            ("observed", 0, "putting_smoothly"),
            "is before the work was done",
        ),
        ({"issued": "2027-08-16, 2027-08-18"}, ("issued",), "2 days are given"),
    ],
)
def test_refuses_what_contradicts_itself(
    parts: dict[str, object], loc: tuple[str | int, ...], words: str
) -> None:
    (fault,) = faults(**parts)
    assert fault[0] == loc
    assert words in fault[1]


def test_lets_pass_what_lies_on_the_edge() -> None:
    edge = plan(
        works=[WORK | {"reserve_dates": "2027-08-18", "greens": {"2027-08-17": "1"}}],
        course={"greens": [{"green": 1}], "soil": {"clay": "60 %", "sand": "40 %"}},
        observed=[{"operation": "rolling", "done": "2026-10-02", "healed": "2026-10-02"}],
        approval=" Pending ",
    )
    assert edge.approval
    assert edge.approval.pending


def test_reserve_dates_may_fall_between_the_days_of_the_work() -> None:
    assert of_work(dates="2027-08-16, 2027-08-19", reserve_dates="2027-08-17").reserve_dates


def test_a_fault_in_the_dates_raises_no_doubts_about_the_days_that_hang_on_them() -> None:
    broken = WORK | {"dates": "2027-08-32", "reserve_dates": "2027-08-01"}
    assert [loc for loc, _ in faults(works=[broken | {"greens": {"2027-08-18": "1"}}])] == [
        ("works", 0, "dates")
    ]


@pytest.mark.parametrize("address", ["course@tansydown.example", "O'Neil+greens@club.example"])
def test_reads_addresses(address: str) -> None:
    club = plan(club={"name": "x", "reply_to": f" {address} "}).club
    assert club.reply_to == address


@pytest.mark.parametrize(
    "address",
    ["course", "course@", "@x.example", "a b@x.example", "a@b@c.example", 5, None, [], ""],
)
def test_refuses_what_is_no_address(address: object) -> None:
    (fault,) = faults(club={"name": "x", "sender": {"email": address}})
    assert fault[0] == ("club", "sender", "email")
    assert "is not an email address: write one such as course@club.example" in fault[1]


@pytest.mark.parametrize(
    "zone", ["Europe/Lodnon", "", "../x", "/etc/hostname", "Europe", "a\0b", "x" * 5000, 5]
)
def test_refuses_what_is_no_time_zone(zone: object) -> None:
    place = {"latitude": 52, "longitude": -1, "timezone": zone}
    (fault,) = faults(club={"name": "x", "place": place})
    assert fault[0] == ("club", "place", "timezone")
    assert "time zone" in fault[1]


def test_a_number_may_be_a_name_and_a_truth_value_may_not_be_a_number() -> None:
    assert plan(club={"name": 1894}).club.name == "1894"
    assert faults(crew={"people": True}) == [
        (("crew", "people"), '"true" is not a number: write one such as 4')
    ]


@pytest.mark.parametrize(
    ("fixture", "message"),
    [
        ({"calendar": "x.ics", "decision": "play on"}, "a decision is about one fixture"),
        (
            {"name": "x", "date": "2026-06-01", "moved_to": "2026-06-02", "decision": "play on"},
            'this fixture has a new day, and "play on" is decided',
        ),
        (
            {"name": "x", "date": "2026-06-01", "moved_to": "2026-06-01"},
            "this fixture is moved to 2026-06-01, which is its day already",
        ),
    ],
)
def test_a_decision_about_a_fixture_makes_sense(fixture: dict[str, str], message: str) -> None:
    with pytest.raises(ValidationError, match=re.escape(message)):
        Fixture.model_validate(fixture)


def test_a_closed_green_has_no_temporary_ones() -> None:
    work = {"operation": "rolling", "dates": "2026-06-01", "temporary": "40 m short"}
    assert Work.model_validate(work).temporary == "40 m short"
    with pytest.raises(ValidationError, match="a green is closed while working"):
        Work.model_validate({**work, "while_working": "closed"})
