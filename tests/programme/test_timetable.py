"""The day's timetable: who is where from when to when, and what the day gives."""

from __future__ import annotations

import datetime as dt
import itertools
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.plan.load import load_plan
from notices.plan.model import Club, Crew, Plan, Position
from notices.programme.model import DayTimetable, Limit, Programme, clock
from notices.programme.work_out import work_out
from notices.programme.working_day import NO_PLACE, people_for_works, working_day
from tests.documents.building import changed
from tests.programme.strategies import plan_data, read

ProgrammeOf = Callable[..., Programme]

EXAMPLE = Path(__file__).parents[2] / "examples" / "withy-hollow" / "plan.yaml"
ISSUED = dt.date(2026, 1, 5)
MONDAY = dt.date(2026, 6, 1)

# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; and 12 between greens make an hour.
AN_HOUR = "width: 1 m, speed: 1 km/h, efficiency: 60 %, minutes_between_greens: 12"
CORING_AND_SAND = f"""
course:
  greens: [{{green: 1-2, area: 480 m2}}]
crew:
  people: PEOPLE
  working_day: 07:00 to 17:00
  kept_back: 0
  machines:
    - {{operation: hollow tining, {AN_HOUR}, people: 1}}
    - {{operation: top dressing, {AN_HOUR}, people: 1}}
  clearing_cores: {{people: 2, m3_per_person_hour: 1.8}}
  hauling_sand: {{people: 1, m3_per_load: 2, minutes_per_load: 20}}
works:
  - operation: hollow tining
    dates: 2026-06-01
    services_checked: true
    settings: {{tine_diameter: 13 mm, inside_diameter: 10 mm, spacing: 50 x 50 mm, depth: 75 mm}}
  - operation: top dressing
    dates: 2026-06-01
    settings: {{rate: 2 kg/m2}}
"""


def told(day: DayTimetable) -> list[tuple[str, str, str, str]]:
    return [(task.green, task.name, task.start, task.finish) for task in day.tasks]


def test_a_day_by_hand(programme_of: ProgrammeOf) -> None:
    # Cores: 1.131 m³ a green (test_figures), two people at 1.8 m³ an hour: 18.85 minutes, 19 on the
    # clock. Sand: 2 kg/m² ÷ 1.6 t/m³ = 1.25 mm, 0.6 m³, one load of 20 minutes. Rest 11:30 to 12:30.
    # Four people are enough for all: the machine goes 07:00, 08:00, 09:00; each green is cleared
    # in 19 minutes after it; sand not before 09:00.
    (day,) = programme_of(CORING_AND_SAND.replace("PEOPLE", "4")).timetables.values()
    assert told(day) == [
        ("1", "hollow tining", "07:00", "08:00"),
        ("1", "hauling sand", "07:00", "07:20"),
        ("2", "hauling sand", "07:20", "07:40"),
        ("1", "clearing cores", "08:00", "08:19"),
        ("2", "hollow tining", "08:00", "09:00"),
        ("1", "top dressing", "09:00", "10:00"),
        ("2", "clearing cores", "09:00", "09:19"),
        ("2", "top dressing", "10:00", "11:00"),
    ]
    assert day.limited_by is Limit.DEW
    assert (day.first_start, day.last_finish, day.too_long_by) == (420, 660, 0)
    assert day.busiest == "hollow tining"
    assert day.busiest_minutes == pytest.approx(120)


def test_with_two_people_who_clears_does_not_haul(programme_of: ProgrammeOf) -> None:
    # The machine and the trailer at first; at 08:00 both people clear green 1, the earlier green,
    # and the machine waits until 08:19. From 09:00 the spreader is on green 1, so that the two who
    # clear green 2 are free only at 10:00, and spreading there waits for them.
    (day,) = programme_of(CORING_AND_SAND.replace("PEOPLE", "2")).timetables.values()
    assert told(day) == [
        ("1", "hollow tining", "07:00", "08:00"),
        ("1", "hauling sand", "07:00", "07:20"),
        ("2", "hauling sand", "07:20", "07:40"),
        ("1", "clearing cores", "08:00", "08:19"),
        ("2", "hollow tining", "08:19", "09:19"),
        ("1", "top dressing", "09:00", "10:00"),
        ("2", "clearing cores", "10:00", "10:19"),
        ("2", "top dressing", "10:19", "11:19"),
    ]
    # Two people more would end it at 11:00, 19 minutes sooner. Without dew green 1 is spread from
    # 08:19 to 09:19, green 2 cleared until 09:38 and spread until 10:38: 41 minutes sooner.
    assert day.limited_by is Limit.DEW


def test_a_task_for_more_than_there_are_takes_everybody(programme_of: ProgrammeOf) -> None:
    (day,) = programme_of(CORING_AND_SAND.replace("PEOPLE", "1")).timetables.values()
    spells = sorted((task.start_minutes, task.finish_minutes) for task in day.tasks)
    for (_, finish), (start, _) in itertools.pairwise(spells):
        assert finish <= start
    assert {task.people for task in day.on("1")} == {1, 2}


def test_without_a_crew_there_is_no_timetable(programme_of: ProgrammeOf) -> None:
    assert not programme_of("""
        course: {greens: [{green: 1-2, area: 480 m2}]}
        works: [{operation: rolling, dates: 2026-06-01}]
    """).timetables


def test_what_goes_by_no_machine_has_no_timetable(programme_of: ProgrammeOf) -> None:
    assert not programme_of("""
        course: {greens: [{green: 1-2, area: 480 m2}]}
        crew: {people: 4}
        works: [{operation: drain trenching, dates: 2026-06-01}]
    """).timetables


def test_every_dressing_has_its_day_and_only_the_sand_it_brings(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1, area: 480 m2}]}
        crew: {people: 4, hauling_sand: {m3_per_load: 0.3, minutes_per_load: 10}}
        works:
          - operation: top dressing
            dates: 2026-06-01
            settings: {rate: 0.8 kg/m2, dressings: 2, days_between: 7}
    """)
    # 0.8 ÷ 1.6 = 0.5 mm on 480 m² are 0.24 m³: one load each time.
    assert list(programme.timetables) == [MONDAY, MONDAY + dt.timedelta(days=7)]
    for ordinal, day in enumerate(programme.timetables.values(), 1):
        assert {task.ordinal for task in day.tasks} == {ordinal}
        (hauling,) = (task for task in day.tasks if task.name == "hauling sand")
        assert hauling.finish_minutes - hauling.start_minutes == 10


# An hour of spreading a green and an hour of brushing, no dew, no rest, and the sand is there.
SAND_AND_BRUSH = f"""
course: {{greens: [{{green: 1-2, area: 480 m2}}]}}
crew:
  people: 4
  working_day: 07:00 to 12:00
  breaks: 0
  dew_off: 07:00
  hauling_sand: {{people: 1, m3_per_load: 50, minutes_per_load: 0}}
  machines:
    - {{operation: top dressing, {AN_HOUR}, people: 1}}
    - {{operation: brushing, {AN_HOUR}, people: 1}}
works:
  - {{operation: top dressing, dates: 2026-06-01, reopen: when finished}}
  - {{operation: brushing, dates: 2026-06-01, reopen: when finished, settings: {{passes: 1}}}}
"""


@pytest.mark.parametrize(
    ("crew", "sand", "brushed", "allowed"),
    [
        # Spread 07:00 to 08:00 and 08:00 to 09:00. An hour where the plan is silent.
        ("", "", ["09:00", "10:00"], 60),
        ("", "kiln_dried: true", ["08:00", "09:00"], 0),
        ("drying: 45", "", ["08:45", "09:45"], 45),
        # What the club says of its own day counts, whatever the sand.
        ("drying: 90", "kiln_dried: true", ["09:30", "10:30"], 90),
        ("drying: 0", "", ["08:00", "09:00"], 0),
    ],
)
def test_sand_dries_before_it_is_brushed(
    programme_of: ProgrammeOf, crew: str, sand: str, brushed: list[str], allowed: float
) -> None:
    text = SAND_AND_BRUSH.replace("  breaks: 0", f"  breaks: 0\n  {crew}")
    programme = programme_of(text + f"sand: {{{sand}}}\n")
    day = programme.timetables[MONDAY]
    spread = [task.start for task in day.tasks if task.name == "top dressing"]
    assert spread == ["07:00", "08:00"]  # the spreader does not wait
    assert [task.start for task in day.tasks if task.name == "brushing"] == brushed
    assert day.drying == allowed
    # The green is back when it is brushed, an hour after that began.
    shut, again = programme.stretches_on(MONDAY, "1")[1:]
    (brushing,) = (task for task in day.on("1") if task.name == "brushing")
    assert (shut.start, again.start) == ("07:00", brushing.finish)
    assert day.default_used is True  # the rest of the crew's hours is the book's
    length = programme.figure(f"length of the day, {MONDAY}", "all")
    assert length is not None
    assert length.inputs["drying_minutes"] == allowed


def test_drying_is_named_where_it_makes_the_day_too_long(programme_of: ProgrammeOf) -> None:
    # Dry at 11:00, brushed until 12:00 and until 13:00; without drying until 10:00.
    text = SAND_AND_BRUSH.replace("  breaks: 0", "  breaks: 0\n  drying: 180")
    programme = programme_of(text)
    day = programme.timetables[MONDAY]
    assert (day.limited_by, day.too_long_by) == (Limit.DRYING, 60)
    (found,) = (one for one in programme.findings if one.code == "day-too-long")
    assert "sand dries for 3.0 hours before a green is brushed or rolled" in found.message
    assert "brush and roll the next morning" in found.suggestion


def test_sand_that_nobody_goes_on_that_day_dries_by_itself(programme_of: ProgrammeOf) -> None:
    next_day = SAND_AND_BRUSH.replace("brushing, dates: 2026-06-01", "brushing, dates: 2026-06-02")
    days = programme_of(next_day).timetables
    assert [day.drying for day in days.values()] == [None, None]
    assert days[MONDAY].last_finish == 9 * 60


def test_a_dressing_with_nothing_to_fill_hauls_nothing(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1, area: 480 m2}]}
        crew: {people: 4}
        works: [{operation: top dressing, dates: 2026-06-01, settings: {fill: holes}}]
    """)
    assert [task.name for task in programme.timetables[MONDAY].tasks] == ["top dressing"]


def test_greens_go_in_the_order_of_the_work_with_the_most(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-3, area: 480 m2}]}
        crew: {people: 8}
        works:
          - {operation: scarifying, dates: 2026-06-01, greens: 3}
          - {operation: rolling, dates: 2026-06-01, greens: "2, 1, 3"}
    """)
    rolled = [t.green for t in programme.timetables[MONDAY].tasks if t.name == "rolling"]
    assert rolled == ["2", "1", "3"]


# What a day gives.

HOME = Club(name="Marl Hill")
MIDLANDS = Club(
    name="Marl Hill", place=Position(latitude=52.5, longitude=-1.6, timezone="Europe/London")
)
VICTORIA = Club(
    name="Ti Tree", place=Position(latitude=-38, longitude=145, timezone="Australia/Melbourne")
)
TROMSO = Club(
    name="Nordlys", place=Position(latitude=69.65, longitude=18.96, timezone="Europe/Oslo")
)
SVALBARD = Club(
    name="Is", place=Position(latitude=78, longitude=16, timezone="Arctic/Longyearbyen")
)


@pytest.mark.parametrize(
    ("people", "hired", "kept", "there"),
    [
        *[(1, 0, None, 1), (4, 0, None, 4), (5, 0, None, 4), (9, 4, None, 12), (10, 0, None, 8)],
        *[(5, 4, 0, 9), (5, 4, 3, 6), (2, 1, 2, 1)],
    ],
)
def test_one_in_five_is_kept_back_unless_the_club_says_how_many(
    people: int, hired: int, kept: int | None, there: int
) -> None:
    crew = Crew(people=people, hired_people=hired, kept_back=kept)
    assert people_for_works(crew, dt.date(2027, 8, 23)) == there


@pytest.mark.parametrize(("day", "there"), [(22, 4), (23, 8), (25, 8), (26, 4)])
def test_hired_people_count_only_on_the_days_on_which_they_are_there(day: int, there: int) -> None:
    crew = Crew.model_validate(
        {"people": 5, "hired_people": 4, "hired_dates": "2027-08-23 to 2027-08-25"}
    )
    assert people_for_works(crew, dt.date(2027, 8, day)) == there  # one of the five is kept back


@pytest.mark.parametrize(
    ("club", "month", "expected"),
    [
        *[(HOME, 8, 540), (HOME, 9, 600), (HOME, 11, 600), (HOME, 12, 540), (HOME, 4, 540)],
        *[(VICTORIA, 4, 600), (VICTORIA, 10, 540)],
    ],
)
def test_the_dew_is_off_later_in_autumn(club: Club, month: int, expected: float) -> None:
    day = dt.date(2026, month, 1)
    assert working_day(Crew(people=4), club, day).dew_off == expected
    own = Crew.model_validate({"people": 4, "dew_off": "11:15"})
    assert working_day(own, club, day).dew_off == 675


@pytest.mark.parametrize(
    ("breaks", "rest"), [(60, (645, 705)), (0, (675, 675)), (45, (652.5, 697.5))]
)
def test_the_rest_lies_in_the_middle_of_the_working_day(
    breaks: float, rest: tuple[float, float]
) -> None:
    # 07:00 to 15:30: the middle is at 11:15.
    assert working_day(Crew(people=4, breaks=breaks), HOME, MONDAY).rest == rest


def test_a_rest_is_no_longer_than_the_day() -> None:
    crew = Crew.model_validate({"people": 4, "working_day": "07:00 to 08:00", "breaks": 90})
    assert working_day(crew, HOME, MONDAY).rest == (420, 480)


def test_light_is_that_of_the_place() -> None:
    crew = Crew(people=4)
    assert working_day(crew, HOME, MONDAY).light == NO_PLACE
    winter = working_day(crew, MIDLANDS, dt.date(2026, 12, 1))
    # Sunrise in the Midlands on 1 December is a little before eight, sunset a little before four,
    # and civil twilight lasts some forty minutes (from memory).
    assert winter.light == ""
    assert winter.light_from == pytest.approx(7 * 60 + 18, abs=10)
    assert winter.light_until == pytest.approx(16 * 60 + 33, abs=10)


def test_light_that_came_the_evening_before_is_there_from_midnight() -> None:
    """A sign of the longitude that is wrong is a slip, and no reason to stop."""
    # At 179° W it is noon at 23:56 UTC, so light comes about six o’clock in London’s evening.
    place = Position(latitude=0, longitude=-179, timezone="Europe/London")
    day = working_day(Crew(people=4), Club(name="Far", place=place), dt.date(2026, 6, 6))
    assert day.light_from == 0
    assert day.light_until is not None
    assert day.light_until > 0


def test_light_near_the_poles_is_said_and_not_invented() -> None:
    crew = Crew(people=4)
    summer = working_day(crew, TROMSO, dt.date(2026, 6, 21))
    assert (summer.light_from, summer.light_until) == (None, None)
    assert summer.light == "the sun does not set"
    noon = working_day(crew, TROMSO, dt.date(2026, 12, 21))
    assert noon.light_from is not None
    assert "twilight about noon" in noon.light
    dark = working_day(crew, SVALBARD, dt.date(2026, 12, 21))
    assert (dark.light_from, dark.light_until) == (None, None)
    assert "does not get light" in dark.light


def test_dusk_after_midnight_counts_on() -> None:
    shetland = Club(
        name="Simmer Dim",
        place=Position(latitude=60.15, longitude=-1.15, timezone="Europe/London"),
    )
    until = working_day(Crew(people=4), shetland, dt.date(2026, 6, 21)).light_until
    assert until is not None
    assert until > 1440


@pytest.mark.parametrize(
    ("minutes", "shown"),
    [(0, "00:00"), (490, "08:10"), (489.5, "08:10"), (489.4, "08:09"), (1510, "25:10")],
)
def test_a_time_of_day_is_shown_to_the_minute(minutes: float, shown: str) -> None:
    assert clock(minutes) == shown


# The example.


def renovation(text: str) -> list[str]:
    return [line for line in text.splitlines() if "2027-08-23 to 2027-08-29" in line]


def test_three_greens_a_day_fit_and_four_do_not(tmp_path: Path) -> None:
    text = EXAMPLE.read_text("utf-8")
    seven = work_out(load_plan(EXAMPLE).plan, ISSUED)
    assert all(day.too_long_by == 0 for day in seven.timetables.values())
    assert renovation(text)
    shorter = changed("withy-hollow", tmp_path, ("2027-08-29", "2027-08-27"))
    five = work_out(load_plan(shorter).plan, ISSUED)
    # 19 greens over five days: four greens on four of them, three on the last.
    too_long = [day.date.day for day in five.timetables.values() if day.too_long_by]
    assert too_long == [23, 24, 25, 26]
    found = [f for f in five.findings if f.code == "day-too-long"]
    assert [f.dates[0].day for f in found] == too_long


# Whatever the plan.

slowly = settings(deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow])
CREWS = st.fixed_dictionaries(
    {"people": st.integers(1, 9)},
    optional={
        "hired_people": st.integers(0, 3),
        "kept_back": st.just(0),
        "breaks": st.sampled_from([0, 30, 90]),
        "dew_off": st.just("09:30"),
        "working_day": st.sampled_from(["06:30 to 15:30", "08:00 to 12:00"]),
        "clearing_cores": st.just({"people": 3}),
        "hauling_sand": st.just({"m3_per_load": 0.4}),
    },
)


@st.composite
def crewed(draw: st.DrawFn) -> Plan:
    return read({**draw(plan_data()), "crew": draw(CREWS)})


@slowly
@given(crewed())
def test_everything_that_goes_by_time_is_done_once(plan: Plan) -> None:
    programme = work_out(plan, dt.date(2024, 1, 1))
    for work in programme.works:
        for visit in work.visits:
            day = programme.timetables.get(visit.date)
            names = {} if day is None else {t.name: 0 for t in day.tasks if t.work == work.id}
            assert (work.operation.name in names) is (work.operation.pace is not None)
            for name in names:
                greens = [
                    task.green
                    for task in (day.tasks if day else ())
                    if (task.work, task.name, task.ordinal) == (work.id, name, visit.ordinal)
                ]
                assert sorted(greens) == sorted(visit.greens) or name == "hauling sand"


@slowly
@given(crewed())
def test_a_day_keeps_to_its_hours_its_people_and_its_greens(plan: Plan) -> None:
    for day in work_out(plan, dt.date(2024, 1, 1)).timetables.values():
        for task in day.tasks:
            assert day.work_from <= task.start_minutes < task.finish_minutes
            assert not day.rest[0] <= task.start_minutes < day.rest[1]
            if task.name == "top dressing":
                assert day.dew_off is not None
                assert task.start_minutes >= day.dew_off
            at_once = [
                t for t in day.tasks if t.start_minutes <= task.start_minutes < t.finish_minutes
            ]
            assert sum(min(t.people, day.people) for t in at_once) <= day.people
            on_green = [t for t in at_once if t.green == task.green and t.name != "hauling sand"]
            assert len(on_green) <= 1
            assert len({t.name for t in at_once}) == len(at_once)
