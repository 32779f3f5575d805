"""What a green is to a golfer from hour to hour, on a day with work."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.hours import to_half_hours
from notices.programme.model import PlayStatus, Programme, Stretch, clock

ProgrammeOf = Callable[..., Programme]

DAY = dt.date(2026, 6, 1)

# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; 12 between greens make it an hour.
# Everybody rests from 10:30 to 11:30, in the middle of the working day.
COURSE = """
course:
  greens: [{green: "1-2, Putting green", area: 480 m2}]
  optimum_temperature: 20 C
  monthly_mean_temperature: [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]
"""
HOURLY = "width: 1 m, speed: 1 km/h, efficiency: 60 %, minutes_between_greens: 12, people: 1"
CREW = f"""
crew:
  people: 4
  working_day: 07:00 to 15:00
  dew_off: 07:00
  hauling_sand: {{people: 1, m3_per_load: 50, minutes_per_load: 0}}
  machines:
    - {{operation: scarifying, {HOURLY}}}
    - {{operation: verticutting, {HOURLY}}}
    - {{operation: top dressing, {HOURLY}}}
    - {{operation: brushing, {HOURLY}}}
    - {{operation: rolling, {HOURLY}}}
"""

LETTERS = {
    PlayStatus.OPEN: "open",
    PlayStatus.RECOVERING: "recovering",
    PlayStatus.TEMPORARY: "temporary",
    PlayStatus.CLOSED: "closed",
}


def said(stretches: tuple[Stretch, ...]) -> str:
    """The stretches of a day as a line: when each begins, and what it is."""
    return ", ".join(
        f"{stretch.start} {'wait' if stretch.passing else LETTERS[stretch.status]}"
        for stretch in stretches
    )


def day_of(programme: Programme, green: str, day: dt.date = DAY) -> str:
    return said(programme.stretches_on(day, green))


# What is done on 1 June, and what green 2 is like then: its hour comes after that of green 1.
CASES = [
    ("verticutting", "next morning", "00:00 closed"),
    ("verticutting", "2 days later", "00:00 closed"),
    # Verticutting opens the turf: afterwards it recovers.
    ("verticutting", "when finished", "00:00 open, 08:00 closed, 09:00 recovering"),
    ("brushing, settings: {passes: 1}", "when finished", "00:00 open, 08:00 closed, 09:00 open"),
    (
        "verticutting, while_working: temporary green",
        "when finished",
        "00:00 open, 08:00 temporary, 09:00 recovering",
    ),
    # The club keeps it open: golfers only wait for the machine.
    ("rolling", "when finished", "00:00 open, 08:00 wait, 09:00 open"),
    (
        "verticutting, while_working: open",
        "when finished",
        "00:00 open, 08:00 wait, 09:00 recovering",
    ),
    # Nothing tells how long trenches take; a green with a temporary one has it all day.
    ("drain trenching", "when finished", "00:00 temporary"),
]


@pytest.mark.parametrize(("work", "reopen", "expected"), CASES)
def test_one_work(programme_of: ProgrammeOf, work: str, reopen: str, expected: str) -> None:
    programme = programme_of(
        f"{COURSE}{CREW}works: [{{operation: {work}, dates: 2026-06-01, reopen: {reopen}}}]\n"
    )
    assert day_of(programme, "2") == expected
    assert day_of(programme, "Putting green") == "00:00 open"


def test_the_putting_green_has_hours_of_its_own(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}{CREW}
works:
  - {{operation: verticutting, dates: 2026-06-01, greens: "1-2, Putting green",
      reopen: when finished}}
""")
    assert day_of(programme, "Putting green") == "00:00 open, 09:00 closed, 10:00 recovering"


def test_a_green_is_closed_from_the_first_task_to_the_last(programme_of: ProgrammeOf) -> None:
    # Green 1: verticut from 7, brushed from 8, rolled from 9 to 10: no minute open in between,
    # although golfers could play on while it is rolled.
    programme = programme_of(f"""{COURSE}{CREW}
works:
  - {{operation: verticutting, dates: 2026-06-01, greens: 1, reopen: when finished}}
  - {{operation: brushing, dates: 2026-06-01, greens: 1, settings: {{passes: 1}}}}
  - {{operation: rolling, dates: 2026-06-01, greens: 1}}
""")
    assert day_of(programme, "1") == "00:00 open, 07:00 closed, 10:00 recovering"
    (_, closed, _) = programme.stretches_on(DAY, "1")
    assert closed.because == ("verticutting-1", "brushing-1")


def test_a_rest_in_the_middle_of_a_green_keeps_it_closed(programme_of: ProgrammeOf) -> None:
    # The fourth hour of work begins at 10:00 and rests from 10:30 to 11:30.
    course = COURSE.replace("1-2", "1-5")
    programme = programme_of(f"""{course}{CREW}
works: [{{operation: verticutting, dates: 2026-06-01, reopen: when finished}}]
""")
    assert day_of(programme, "4") == "00:00 open, 10:00 closed, 12:00 recovering"


def test_a_green_that_recovers_is_worked_on_again(programme_of: ProgrammeOf) -> None:
    # Scarified on the 1st until the next morning, brushed on the 2nd.
    programme = programme_of(f"""{COURSE}{CREW}
works:
  - {{operation: scarifying, dates: 2026-06-01, greens: 1}}
  - {{operation: brushing, dates: 2026-06-02, greens: 1, settings: {{passes: 1}}}}
""")
    assert day_of(programme, "1") == "00:00 closed"
    after = day_of(programme, "1", dt.date(2026, 6, 2))
    assert after == "00:00 recovering, 07:00 closed, 08:00 recovering"


def test_a_closure_of_the_clubs_own_lasts_all_day(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}{CREW}
works: [{{operation: verticutting, dates: 2026-06-01, reopen: when finished}}]
closures:
  - {{what: green 1, dates: 2026-06-01}}
  - {{what: green 2, dates: 2026-06-01, instead: temporary green}}
""")
    assert day_of(programme, "1") == "00:00 closed"
    # The green is closed while it is verticut, but its hole is played to the temporary one.
    assert day_of(programme, "2") == "00:00 temporary"
    assert programme.stretches_on(DAY, "2")[0].because == ("closure-green-2-1",)


def test_a_temporary_green_keeps_the_hole_in_play_while_its_green_is_worked_on(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(f"""{COURSE}{CREW}
works:
  - {{operation: turfing, dates: 2026-05-25, greens: 2, reopen: 28 days later}}
  - {{operation: verticutting, dates: 2026-06-01, reopen: when finished}}
""")
    assert day_of(programme, "1") == "00:00 open, 07:00 closed, 08:00 recovering"
    assert day_of(programme, "2") == "00:00 temporary"
    assert programme.play[DAY].all_day.temporary == (("", 2),)
    assert programme.play[DAY].all_day.closed == (("", 1),)


def test_without_a_crew_nobody_knows_the_hours(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}
works: [{{operation: verticutting, dates: 2026-06-01, reopen: when finished}}]
""")
    (closed,) = programme.stretches_on(DAY, "1")
    assert closed.all_day
    assert not closed.hours_known
    (overnight,) = programme_of(f"""{COURSE}
works: [{{operation: verticutting, dates: 2026-06-01, reopen: next morning}}]
""").stretches_on(DAY, "1")
    assert overnight.hours_known


def test_sand_is_hauled_beside_a_green(programme_of: ProgrammeOf) -> None:
    # The sand of the first green lies ready at 7 in any case, but is spread from 9 on.
    crew = CREW.replace("dew_off: 07:00", "dew_off: 09:00").replace(
        "minutes_per_load: 0", "minutes_per_load: 60"
    )
    programme = programme_of(f"""{COURSE}{crew}
works: [{{operation: top dressing, dates: 2026-06-01, greens: 1, reopen: when finished}}]
""")
    assert day_of(programme, "1") == "00:00 open, 09:00 closed, 10:00 recovering"


def test_a_day_without_work_is_one_stretch(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"{COURSE}works: [{{operation: scarifying, dates: 2026-06-01}}]\n")
    assert set(programme.stretches) == {DAY}
    assert day_of(programme, "1", dt.date(2026, 6, 2)) == "00:00 recovering"
    assert day_of(programme, "1", dt.date(2026, 5, 31)) == "00:00 open"


def test_a_green_that_stays_away_says_why_on_the_days_after(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}{CREW}
works: [{{operation: turfing, dates: 2026-06-01, greens: 1, reopen: 3 days later}}]
closures: [{{what: green 2, dates: 2026-06-09}}]
""")
    days = [dt.date(2026, 6, day) for day in (1, 2, 3, 9)]
    assert list(programme.stretches) == days
    (stretch,) = programme.stretches_on(days[2], "1")
    assert stretch == Stretch(0, 1440, PlayStatus.TEMPORARY, ("turfing-1",))
    assert programme.stretches_on(days[3], "2")[0].because == ("closure-green-2-1",)


def test_a_green_whose_turn_would_come_after_midnight_is_away_all_day(
    programme_of: ProgrammeOf,
) -> None:
    # Twenty hours a green: that of the second begins in the small hours.
    crew = CREW.replace("speed: 1 km/h", "speed: 0.05 km/h")
    programme = programme_of(f"""{COURSE}{crew}
works: [{{operation: verticutting, dates: 2026-06-01, reopen: when finished}}]
""")
    assert day_of(programme, "1") == "00:00 open, 07:00 closed"
    (stretch,) = programme.stretches_on(DAY, "2")
    assert (stretch.status, stretch.hours_known) == (PlayStatus.CLOSED, False)


def stretches(text: str) -> tuple[Stretch, ...]:
    """Read "0 open, 430 closed, 445 open": minutes and what begins then."""
    found = [(float(part.split()[0]), part.split()[1]) for part in text.split(", ")]
    statuses = {word: status for status, word in LETTERS.items()}
    ends = [*(begins for begins, _ in found[1:]), 1440.0]
    return tuple(
        Stretch(begins, end, statuses[word])
        for (begins, word), end in zip(found, ends, strict=True)
    )


# 430 is 7:10, 445 is 7:25, 640 is 10:40.
ROUNDED = [
    ("0 open", "00:00 open"),
    ("0 open, 490 closed, 640 open", "00:00 open, 08:00 closed, 11:00 open"),
    ("0 open, 480 closed, 660 open", "00:00 open, 08:00 closed, 11:00 open"),
    ("0 open, 430 closed, 445 recovering", "00:00 open, 07:00 closed, 07:30 recovering"),
    # So short a while open in between that nobody can be told of it.
    ("0 open, 430 closed, 440 open, 445 closed, 455 open", "00:00 open, 07:00 closed, 08:00 open"),
    # What is worse grows at the cost of what is better.
    (
        "0 open, 430 temporary, 640 closed, 700 temporary, 730 open",
        "00:00 open, 07:00 temporary, 10:30 closed, 12:00 temporary, 12:30 open",
    ),
    ("0 open, 430 closed, 440 temporary, 445 open", "00:00 open, 07:00 closed, 07:30 open"),
    ("0 open, 10 closed, 1430 open", "00:00 closed"),
]


@pytest.mark.parametrize(("exact", "told"), ROUNDED)
def test_people_are_told_the_half_hour(exact: str, told: str) -> None:
    assert said(to_half_hours(stretches(exact))) == told


# What begins when the working day does, or soon after, and when that is: 435 is 7:15, 445 is 7:25.
BEGUN = [
    (435, "0 open, 435 closed, 480 open", "00:00 open, 07:15 closed, 08:00 open"),
    (435, "0 open, 445 closed, 480 open", "00:00 open, 07:15 closed, 08:00 open"),
    (435, "0 open, 450 closed, 480 open", "00:00 open, 07:30 closed, 08:00 open"),
    (450, "0 open, 450 closed, 480 open", "00:00 open, 07:30 closed, 08:00 open"),
    # First light at 7:22 and a half: nobody is told of half minutes, nor of a start in the dark.
    (442.5, "0 open, 442.5 closed, 480 open", "00:00 open, 07:23 closed, 08:00 open"),
    # What is over within the half hour ends with it.
    (435, "0 open, 435 closed, 440 open", "00:00 open, 07:15 closed, 07:30 open"),
    (435, "0 closed, 435 open", "00:00 closed, 07:30 open"),
]


@pytest.mark.parametrize(("earliest", "exact", "told"), BEGUN)
def test_nothing_is_told_to_begin_before_the_working_day(
    earliest: float, exact: str, told: str
) -> None:
    assert said(to_half_hours(stretches(exact), earliest)) == told


def test_holes_are_told_closed_from_the_beginning_of_the_working_day(
    programme_of: ProgrammeOf,
) -> None:
    crew = CREW.replace("working_day: 07:00", "working_day: 07:15")
    assert crew != CREW
    programme = programme_of(f"""{COURSE}{crew}
works: [{{operation: verticutting, dates: 2026-06-01, greens: 1, reopen: when finished}}]
""")
    # An hour's work from 7:15 to 8:15.
    assert [clock(hours.begins) for hours in programme.play[DAY].by_hour] == [
        *("00:00", "07:15", "08:30"),
    ]
    assert programme.timetables[DAY].told_start == 7 * 60 + 15
    assert programme.timetables[DAY].told_finish == 8 * 60 + 30


def test_a_sum_of_minutes_that_misses_the_half_hour_by_a_moment_is_on_it() -> None:
    exact = stretches(f"0 open, {480 - 1e-9} closed, {540 + 1e-9} open")
    assert said(to_half_hours(exact)) == "00:00 open, 08:00 closed, 09:00 open"
    assert clock(exact[1].begins) == "08:00"
