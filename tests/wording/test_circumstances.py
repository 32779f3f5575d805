"""What else golfers must know, in sentences."""

from __future__ import annotations

import datetime as dt
from typing import Any

import pytest

from notices.programme.model import PlayStatus
from notices.wording import circumstances
from tests.wording.small_plans import plan, words, work

WORK = work("hollow tining", "2027-08-09 to 2027-08-11")


@pytest.mark.parametrize(
    ("closure", "said", "listed"),
    [
        (
            {"what": "course", "dates": "2027-08-09"},
            "The course is closed on Monday 9 August.",
            "Course: closed",
        ),
        (
            {"what": "the whole course", "dates": "2027-08-09 to 2027-08-11"},
            "The course is closed from Monday 9 to Wednesday 11 August.",
            "Course: closed",
        ),
        (
            {
                "what": "greens 1-9",
                "dates": "2027-08-09 to 2027-08-10",
                "instead": "holes 10 to 18",
            },
            (
                "Greens 1 to 9 are closed on Monday 9 and Tuesday 10 August. "
                "Please use holes 10 to 18."
            ),
            "Greens 1 to 9: closed",
        ),
        (
            {"what": "green 7", "dates": "2027-08-09", "reason": "a drain"},
            "Green 7 is closed on Monday 9 August: a drain.",
            "Green 7: closed",
        ),
        (
            {"what": "practice ground", "dates": "2027-08-09"},
            "The practice ground is closed on Monday 9 August.",
            "Practice ground: closed",
        ),
        (
            {"what": "The nets", "dates": "2027-08-09"},
            "The nets are closed on Monday 9 August.",
            "The nets: closed",
        ),
        (
            {"what": "changing rooms", "dates": "2027-08-09"},
            "The changing rooms are closed on Monday 9 August.",
            "Changing rooms: closed",
        ),
        (
            {"what": "short course", "dates": "2027-08-09"},
            "The short course is closed on Monday 9 August.",
            "Short course: closed",
        ),
        # Two things, and then words in s that are one.
        (
            {"what": "driving range and grass", "dates": "2027-08-09"},
            "The driving range and grass are closed on Monday 9 August.",
            "Driving range and grass: closed",
        ),
        (
            {"what": "tennis", "dates": "2027-08-09"},
            "The tennis is closed on Monday 9 August.",
            "Tennis: closed",
        ),
        (
            {"what": "golf shop's terrace", "dates": "2027-08-09 to 2027-08-10, 2027-08-16"},
            (
                "The golf shop's terrace is closed on Monday 9 and Tuesday 10 August "
                "and on Monday 16 August."
            ),
            "Golf shop's terrace: closed",
        ),
        # Both a reason and something else to play.
        (
            {
                "what": "green 7",
                "dates": "2027-08-09",
                "reason": "a drain.",
                "instead": "the short course",
            },
            "Green 7 is closed on Monday 9 August: a drain. Please use the short course.",
            "Green 7: closed",
        ),
    ],
)
def test_closures(closure: dict[str, object], said: str, listed: str) -> None:
    told = words(plan(WORK, closures=[closure]))
    (closed,) = told.programme.closures
    assert circumstances.closure(told, closed) == said
    assert circumstances.closed_thing(told, closed) == listed


def test_temporary_greens_are_not_called_closed() -> None:
    """Golfers play the hole, to another green."""
    closure = {
        "what": "greens 1-9",
        "dates": "2027-11-01 to 2027-11-02",
        "instead": "temporary greens",
        "reason": "drain trenching",
    }
    told = words(plan(WORK, closures=[closure]))
    (closed,) = told.programme.closures
    assert circumstances.closed_thing(told, closed) == "Greens 1 to 9: temporary greens"
    assert circumstances.closure(told, closed) == (
        "Greens 1 to 9 have temporary greens on Monday 1 and Tuesday 2 November: drain trenching. "
        "Expect them to be rough."
    )


@pytest.mark.parametrize(
    ("what", "instead", "said", "listed"),
    [
        ("green 7", "a temporary green", "Green 7 has a temporary green", "temporary green"),
        (
            "green 7",
            "A temporary green on the fairway.",
            "Green 7 has a temporary green on the fairway",
            "temporary green",
        ),
        ("greens 1, 2", "Temporary greens", "Greens 1 and 2 have temporary greens", None),
        ("greens 1-18", "temporary greens", "All 18 greens have temporary greens", None),
        ("course", "temporary greens", "The course has temporary greens", None),
        ("the back nine", "temporary greens", "The back nine has temporary greens", None),
    ],
)
def test_one_closure_with_temporary_greens(
    what: str, instead: str, said: str, listed: str | None
) -> None:
    closure = {"what": what, "dates": "2027-11-01", "instead": instead}
    told = words(plan(WORK, closures=[closure]))
    (closed,) = told.programme.closures
    rough = f"Expect {'them' if 'greens' in instead else 'it'} to be rough."
    assert circumstances.closure(told, closed) == f"{said} on Monday 1 November. {rough}"
    state = circumstances.closed_thing(told, closed).partition(": ")[2]
    assert state == (listed or "temporary greens")


@pytest.mark.parametrize(
    ("date", "greens", "said"),
    [
        # The day of the work.
        ("2027-08-09", "1-18", ["Medal, Monday 9 August: greens 1 to 6 are out of play that day."]),
        ("2027-08-11", "12", ["Medal, Wednesday 11 August: green 12 is out of play that day."]),
        # Days after it, the greens open and not yet smooth.
        (
            "2027-08-13",
            "1-18",
            [
                (
                    "Medal, Friday 13 August: the greens will still be healing. "
                    "Putts will be slower and may wander."
                )
            ],
        ),
        (
            "2027-08-13",
            "12",
            [
                (
                    "Medal, Friday 13 August: green 12 will still be healing. "
                    "Putts will be slower and may wander."
                )
            ],
        ),
        # Long before and long after it, nothing is said.
        ("2027-07-01", "1-18", []),
        ("2028-07-01", "1-18", []),
    ],
)
def test_fixtures(date: str, greens: str, said: list[str]) -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-11", greens=greens),
            fixtures=[{"name": "Medal", "date": date}],
        )
    )
    assert circumstances.fixtures(told) == said


def test_a_fixture_after_the_expected_day_may_meet_healing_greens_and_will_not_for_certain() -> (
    None
):
    tined = work("hollow tining", "2027-08-09 to 2027-08-11")
    promise = words(plan(tined)).programme.periods[0].putting_well
    assert promise.at_worst
    assert promise.expect_by < promise.at_worst
    before = promise.expect_by - dt.timedelta(days=1)
    fixtures = [
        {"name": "Medal", "date": before.isoformat()},
        {"name": "Cup", "date": promise.expect_by.isoformat()},
    ]
    medal, cup = circumstances.fixtures(words(plan(tined, fixtures=fixtures)))
    assert medal.endswith("the greens will still be healing. Putts will be slower and may wander.")
    assert cup.endswith("the greens may still be healing. Putts may be slower and may wander.")
    played = [{**fixtures[1], "decision": "play on"}]
    (said,) = circumstances.fixtures(words(plan(tined, fixtures=played)))
    assert said.endswith("it goes ahead while the greens may still be healing.")


def test_a_fixture_that_is_over_is_told_no_more() -> None:
    """The committee reads a paper that is issued again in the middle of the work."""
    medal = {"name": "Medal", "date": "2027-08-10", "kind": "competition"}
    data = plan(WORK, fixtures=[medal])
    for issued, told in ((dt.date(2027, 8, 10), True), (dt.date(2027, 8, 11), False)):
        assert bool(circumstances.fixtures(words(data, issued=issued))) is told


def test_two_fixtures_that_meet_the_same_share_a_sentence() -> None:
    drain = {"what": "green 4", "dates": "2027-08-09 to 2027-08-31", "instead": "a temporary green"}
    fixtures = [
        {"name": "Winter League", "date": "2027-08-15"},
        {"name": "Turkey Stableford", "date": "2027-08-18"},
        {"name": "Captain’s Drive-in", "date": "2027-08-22"},
    ]
    feed = work("feeding", "2027-08-30")
    assert circumstances.fixtures(words(plan(feed, closures=[drain], fixtures=fixtures))) == [
        (
            "Winter League, Sunday 15 August, and Turkey Stableford, Wednesday 18 August: "
            "green 4 has a temporary green."
        ),
        "Captain’s Drive-in, Sunday 22 August: green 4 has a temporary green.",
    ]


def test_a_fixture_on_recovering_greens_of_a_course_with_a_putting_green_that_is_not() -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-11", greens="1-18"),
            greens="1-18, Putting green",
            fixtures=[{"name": "Medal", "date": "2027-08-13"}],
        )
    )
    assert circumstances.fixtures(told) == [
        (
            "Medal, Friday 13 August: all 18 greens will still be healing. "
            "Putts will be slower and may wander."
        )
    ]


@pytest.mark.parametrize(
    ("restriction", "said"),
    [
        ({"what": "buggies", "dates": "2027-08-09"}, "No buggies on Monday 9 August."),
        (
            {
                "what": "buggies",
                "dates": "2027-08-09 to 2027-08-15",
                "except": "members with a medical exemption",
                "ask": "the shop",
            },
            (
                "No buggies from Monday 9 to Sunday 15 August "
                "(except members with a medical exemption). Please ask the shop."
            ),
        ),
        (
            {"what": "buggies", "dates": "2027-08-09", "except": "members who cannot walk."},
            "No buggies on Monday 9 August (except members who cannot walk).",
        ),
    ],
)
def test_restrictions(restriction: dict[str, object], said: str) -> None:
    assert circumstances.restrictions(words(plan(WORK, restrictions=[restriction]))) == [said]


@pytest.mark.parametrize(
    ("decision", "said"),
    [
        (None, "All dates depend on the weather."),
        (
            {"by": "the Course Manager", "when": "16:00 the day before"},
            "All dates depend on the weather. The Course Manager decides at 16:00 the day before.",
        ),
        (
            {
                "by": "the Course Manager",
                "when": "16:00 the day before",
                "where": "the clubhouse board",
            },
            (
                "All dates depend on the weather. The Course Manager decides at 16:00 the day before. "
                "For the latest word, look on the clubhouse board."
            ),
        ),
        (
            {
                "by": "the Course Manager",
                "when": "16:00 the day before",
                "confirmed": "06:30",
                "where": "the clubhouse board and the website",
            },
            (
                "All dates depend on the weather. The Course Manager decides at 16:00 the day before. "
                "For the final word, look on the clubhouse board and the website "
                "from 06:30 on the day."
            ),
        ),
    ],
)
def test_who_decides(decision: dict[str, str] | None, said: str) -> None:
    more: dict[str, Any] = {"decision": decision} if decision else {}
    assert circumstances.decision(words(plan(WORK, **more))) == said


def test_a_decision_told_nowhere_in_particular_still_has_its_time() -> None:
    decision = {"by": "the Secretary", "when": "16:00 the day before", "confirmed": "06:30"}
    said = circumstances.decision(words(plan(WORK, decision=decision)))
    assert said == (
        "All dates depend on the weather. The Secretary decides at 16:00 the day before. "
        "The final word comes at 06:30 on the day."
    )


@pytest.mark.parametrize(
    ("confirmed", "said"),
    [
        ({}, "The latest word comes by email."),
        ({"confirmed": "06:30"}, "The final word comes by email at 06:30 on the day."),
    ],
)
def test_nobody_looks_by_email(confirmed: dict[str, str], said: str) -> None:
    decision = {"by": "the Secretary", "when": "noon", "where": "by email", **confirmed}
    assert circumstances.decision(words(plan(WORK, decision=decision))) == (
        f"All dates depend on the weather. The Secretary decides at noon. {said}"
    )


def test_the_final_word_in_american() -> None:
    decision = {
        "by": "the superintendent",
        "when": "noon the day before",
        "where": "the bulletin board",
        "confirmed": "06:30",
    }
    told = words(plan(WORK, decision=decision, club={"language": "en-US"}))
    assert circumstances.decision(told).endswith(
        "For the final word, look on the bulletin board from 6:30 a.m. that day."
    )


@pytest.mark.parametrize(
    ("decision", "said"),
    [
        (None, ""),
        (
            {"by": "the Secretary", "when": "noon"},
            "The Secretary decides on any change at noon.",
        ),
        (
            {"by": "the Secretary", "when": "noon", "where": "the board", "confirmed": "06:30"},
            (
                "The Secretary decides on any change at noon. "
                "For the final word, look on the board from 06:30 on the day."
            ),
        ),
    ],
)
def test_closures_alone_do_not_wait_for_the_weather(
    decision: dict[str, str] | None, said: str
) -> None:
    more: dict[str, Any] = {"decision": decision} if decision else {}
    told = words(plan(closures=[{"what": "course", "dates": "2027-08-09"}], **more))
    assert circumstances.decision(told) == said


@pytest.mark.parametrize(
    "when", ["at 16:00 the day before", "by noon", "before 16:00", "on the morning", "after dark"]
)
def test_a_time_that_brings_its_own_little_word(when: str) -> None:
    said = circumstances.decision(words(plan(WORK, decision={"by": "the Secretary", "when": when})))
    assert said == f"All dates depend on the weather. The Secretary decides {when}."


@pytest.mark.parametrize("where", ["on the club's site", "at the first tee", "in the shop"])
def test_a_place_that_brings_its_own_little_word(where: str) -> None:
    decision = {"by": "the Secretary", "when": "noon", "where": where}
    said = circumstances.decision(words(plan(WORK, decision=decision)))
    assert said.endswith(f" For the latest word, look {where}.")


@pytest.mark.parametrize(
    ("approval", "said"),
    [
        (None, ""),
        ("pending", ""),
        ({"by": "the Greens Committee"}, "The Greens Committee approved the plan."),
        (
            {"by": "the Greens Committee", "date": "2027-02-01", "reference": "minute 9"},
            "The Greens Committee approved the plan on 1 February 2027 (minute 9).",
        ),
    ],
)
def test_approval(approval: object, said: str) -> None:
    more: dict[str, Any] = {"approval": approval} if approval else {}
    assert circumstances.approval(words(plan(WORK, **more))) == said


@pytest.mark.parametrize(
    ("club", "said"),
    [
        ({}, "Any questions? Please ask at the club."),
        ({"contact": "ask the shop"}, "Ask the shop."),
        (
            {"sender": {"role": "Secretary", "email": "office@fallow.example"}},
            "Any questions? Please ask the Secretary, office@fallow.example.",
        ),
    ],
)
def test_whom_to_ask(club: dict[str, object], said: str) -> None:
    assert circumstances.contact(words(plan(WORK, club=club))) == said


NINE = [{"green": "1-9", "course": name} for name in ("Oak", "Elm")]


@pytest.mark.parametrize(
    ("what", "said", "listed"),
    [
        ("tees 1-9", "The tees of all nine holes are", "Tees of all nine holes: closed"),
        ("tees 1-3", "The tees of holes 1 to 3 are", "Tees of holes 1 to 3: closed"),
        ("tee 4", "The tee of hole 4 is", "Tee of hole 4: closed"),
        ("tees 4", "The tees of hole 4 are", "Tees of hole 4: closed"),
        ("white tees 1, 2", "The white tees of holes 1 and 2 are", None),
        ("fairway 7", "The fairway of hole 7 is", "Fairway of hole 7: closed"),
        ("fairway 7, 8", "The fairways of holes 7 and 8 are", None),
        ("the approach 2-4", "The approaches of holes 2 to 4 are", None),
        ("holes 1-3", "Holes 1 to 3 are", "Holes 1 to 3: closed"),
        ("hole 5", "Hole 5 is", "Hole 5: closed"),
        ("fairway mowing", "The fairway mowing is", "Fairway mowing: closed"),
    ],
)
def test_parts_of_a_course_that_are_closed(what: str, said: str, listed: str | None) -> None:
    told = words(plan(WORK, greens="1-9", closures=[{"what": what, "dates": "2027-08-09"}]))
    (closed,) = told.programme.closures
    assert circumstances.closure(told, closed) == f"{said} closed on Monday 9 August."
    if listed is not None:
        assert circumstances.closed_thing(told, closed) == listed


@pytest.mark.parametrize(
    ("what", "said", "listed"),
    [
        ("course Oak", "The Oak course is", "Oak course: closed"),
        ("the Oak course", "The Oak course is", "Oak course: closed"),
        ("Elm", "The Elm course is", "Elm course: closed"),
        # All that the club has.
        (
            "course",
            "The Oak course and the Elm course are",
            "Oak course and the Elm course: closed",
        ),
        ("holes Oak 1-3", "Holes 1 to 3 on the Oak course are", None),
        ("tees Oak", "The tees of all nine holes on the Oak course are", None),
        (
            "greens Oak 9, Elm 1",
            "Green 9 of the Oak course and green 1 of the Elm course are",
            None,
        ),
        ("practice ground", "The practice ground is", "Practice ground: closed"),
    ],
)
def test_closures_at_a_club_of_two_courses(what: str, said: str, listed: str | None) -> None:
    data = plan(closures=[{"what": what, "dates": "2027-08-09"}])
    data["course"]["greens"] = NINE
    told = words(data)
    (closed,) = told.programme.closures
    assert circumstances.closure(told, closed) == f"{said} closed on Monday 9 August."
    if listed is not None:
        assert circumstances.closed_thing(told, closed) == listed


def test_a_green_that_has_a_name_is_listed_without_an_article() -> None:
    told = words(
        plan(
            greens="1-18, Putting green",
            closures=[{"what": "green Putting green", "dates": "2027-08-09"}],
        )
    )
    (closed,) = told.programme.closures
    assert closed.greens == ("Putting green",)
    assert circumstances.closed_thing(told, closed) == "Putting green: closed"


def test_a_fixture_on_closed_and_on_temporary_greens() -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09", greens="1-3"),
            closures=[{"what": "green 7", "dates": "2027-08-09", "instead": "a temporary green"}],
            fixtures=[{"name": "Medal", "date": "2027-08-09"}],
        )
    )
    assert circumstances.fixtures(told) == [
        (
            "Medal, Monday 9 August: greens 1 to 3 are out of play that day "
            "and green 7 has a temporary green."
        )
    ]


WEATHER = [
    (("hollow tining",), "08", "We do not tine wet greens.", "We do not aerify wet greens."),
    (("rolling",), "08", "We do not roll wet greens.", "We do not roll wet greens."),
    (
        ("hollow tining", "needle tining", "rolling", "top dressing"),
        "11",
        (
            "We do not tine or roll wet greens, or work in frost or thaw. "
            "We spread sand only when it is dry."
        ),
        (
            "We do not aerify or roll wet greens, or work in frost or thaw. "
            "We topdress only when it is dry."
        ),
    ),
    (("scarifying",), "11", "We do not work in frost or thaw.", "We do not work in frost or thaw."),
    (("scarifying",), "08", "", ""),
    (
        ("mole ploughing",),
        "08",
        "We draw channels only when the clay is moist below and firm on top.",
        "We draw channels only when the clay is moist below and firm on top.",
    ),
    (
        ("feeding",),
        "08",
        "Where we use a product, we follow its label.",
        "Where we use a product, we follow its label.",
    ),
]


@pytest.mark.parametrize(("operations", "month", "british", "american"), WEATHER)
def test_the_weather_is_spoken_of_as_far_as_it_stops_what_is_planned(
    operations: tuple[str, ...], month: str, british: str, american: str
) -> None:
    works = [work(operation, f"2027-{month}-09") for operation in operations]
    assert circumstances.go_or_no_go(words(plan(*works))) == british
    club = {"language": "en-US"}
    assert circumstances.go_or_no_go(words(plan(*works, club=club))) == american


@pytest.mark.parametrize(
    ("closed", "expected"),
    [
        ({"what": "holes 1-9", "reason": "trees are felled"}, True),
        ({"what": "tees 1-9"}, True),
        ({"what": "green 4"}, True),
        ({"what": "green 4", "instead": "a temporary green"}, False),  # they play beside it
        ({"what": "practice ground"}, False),
        ({"what": "course", "reason": "a county final"}, False),  # nobody is out there
    ],
)
def test_people_are_kept_out_where_they_play_past_a_closure(
    closed: dict[str, object], *, expected: bool
) -> None:
    told = words(plan(closures=[{**closed, "dates": "2027-08-09"}]))
    (one,) = told.programme.closures
    assert circumstances.shuts_people_out(one) is expected


@pytest.mark.parametrize(
    ("closure", "said"),
    [
        (
            {"what": "greens 1-9", "instead": "temporary greens", "temporary": "40 m short, rough"},
            (
                "Greens 1 to 9 have temporary greens on Monday 9 August. "
                "Temporary greens: 40 m short, rough."
            ),
        ),
        (
            {"what": "green 7", "temporary": "Cut to 6 mm since July.", "reason": "a drain"},
            (
                "Green 7 has a temporary green on Monday 9 August: a drain. "
                "Temporary green: Cut to 6 mm since July."
            ),
        ),
    ],
)
def test_temporary_greens_are_described_in_the_clubs_words(
    closure: dict[str, str], said: str
) -> None:
    told = words(plan(WORK, closures=[{**closure, "dates": "2027-08-09"}]))
    assert circumstances.closure(told, told.programme.closures[0]) == said
    (day,) = told.programme.closures[0].dates
    assert told.programme.status_on(day, "7") is PlayStatus.TEMPORARY
