"""What a green is to a golfer on a day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.model import PlayStatus, Programme

ProgrammeOf = Callable[..., Programme]

LETTERS = {
    PlayStatus.OPEN: "o",
    PlayStatus.RECOVERING: "r",
    PlayStatus.TEMPORARY: "t",
    PlayStatus.CLOSED: "c",
}

COURSE = """
course:
  greens: [{green: "1-2, Putting green"}]
  optimum_temperature: 20 C
  monthly_mean_temperature: [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]
"""


def week(programme: Programme, green: str, days: int = 7) -> str:
    """A letter for each day from 1 June 2026."""
    return "".join(
        LETTERS[programme.status_on(dt.date(2026, 6, 1) + dt.timedelta(days=n), green)]
        for n in range(days)
    )


# A light dressing recovers for up to three days, so a dressing alone gives "crro".
CASES = [
    ("rolling, dates: 2026-06-01", "ooooooo"),
    ("top dressing, dates: 2026-06-01", "crroooo"),
    ("top dressing, dates: 2026-06-01, while_working: temporary green", "trroooo"),
    ("top dressing, dates: 2026-06-01, while_working: open", "rrroooo"),
    ("top dressing, dates: 2026-06-01, reopen: when finished", "crroooo"),
    ("top dressing, dates: 2026-06-01, reopen: 5 days later", "cccccoo"),
    ("top dressing, dates: 2026-06-01, settings: {dressings: 2, days_between: 3}", "crrcrro"),
    ("rolling, dates: 2026-06-01, while_working: closed, reopen: 2 days later", "ccooooo"),
    ("rolling, dates: 2026-06-01, reopen: 2 days later", "ooooooo"),
]


@pytest.mark.parametrize(("work", "expected"), CASES)
def test_one_work(programme_of: ProgrammeOf, work: str, expected: str) -> None:
    programme = programme_of(f"{COURSE}\nworks: [{{operation: {work}}}]\n")
    assert week(programme, "1") == expected
    assert week(programme, "Putting green") == "ooooooo"


def test_the_worst_of_two_works_counts(programme_of: ProgrammeOf) -> None:
    # The first closes the green for longer than the gap to the next work.
    programme = programme_of(f"""{COURSE}
works:
  - {{operation: top dressing, dates: 2026-06-01, reopen: 4 days later}}
  - {{operation: top dressing, dates: 2026-06-03, while_working: open}}
""")
    assert week(programme, "1") == "ccccroo"


# What is done on the 2nd and the 3rd to a green that has been turfed on the 1st, or closed by the club.
ON_TEMPORARY = [
    # The green is opened only on the 6th, and the work until the next morning closes nothing.
    ("turfing, dates: 2026-06-01, reopen: 5 days later", "", "tttttr"),
    # Out of its temporary green on the 3rd, it is closed like any other.
    ("turfing, dates: 2026-06-01, reopen: 2 days later", "", "ttcrrr"),
    # One that is replaced for the hours of the work alone is closed for the longer one.
    (
        "brushing, dates: 2026-06-02, while_working: temporary green, reopen: when finished",
        "",
        "occr",
    ),
    ("rolling, dates: 2026-06-01", "green 1, dates: 2026-06-02, instead: temporary green", "otcr"),
    # The club closes the hole itself.
    ("turfing, dates: 2026-06-01, reopen: 5 days later", "hole 1, dates: 2026-06-02", "tctttr"),
]


@pytest.mark.parametrize(("first", "closed", "expected"), ON_TEMPORARY)
def test_work_closes_no_hole_that_has_a_temporary_green(
    programme_of: ProgrammeOf, first: str, closed: str, expected: str
) -> None:
    shut = f"closures: [{{what: {closed}}}]" if closed else ""
    programme = programme_of(f"""{COURSE}
works:
  - {{operation: {first}, greens: 1}}
  - {{operation: scarifying, dates: 2026-06-02 to 2026-06-03, greens: {{2026-06-02: 1, 2026-06-03: 2}},
      reopen: 2 days later}}
{shut}
""")
    assert week(programme, "1", len(expected)) == expected
    assert week(programme, "2", 4)[2:] == "cc"


def test_a_green_recovers_from_the_first_work_of_a_period_on(programme_of: ProgrammeOf) -> None:
    # Scarified on the 1st, dressed on the 3rd, other greens in between: it is not "open" on the
    # 2nd. On the 3rd it is dressed; scarified turf needs days to close.
    programme = programme_of(f"""{COURSE}
works:
  - {{operation: scarifying, dates: 2026-06-01 to 2026-06-02}}
  - {{operation: top dressing, dates: 2026-06-03 to 2026-06-04}}
""")
    assert week(programme, "1")[:3] == "crc"
    assert week(programme, "2")[:4] == "ocrc"


CLOSED = [
    ("course", "", "ccc"),
    ("the whole course", "", "ccc"),
    ("course", "temporary greens", "ttt"),
    ("greens 1-2", "", "cco"),
    ("green 1", "Temporary Green", "too"),
    ("hole 2", "", "oco"),
    ("holes 1, 2", "", "cco"),
    ("Putting green", "", "ooc"),
    ("the putting green", "", "ooc"),
    ("practice ground", "", "ooo"),
]


@pytest.mark.parametrize(("what", "instead", "expected"), CLOSED)
def test_a_closure(programme_of: ProgrammeOf, what: str, instead: str, expected: str) -> None:
    extra = f", instead: {instead}" if instead else ""
    programme = programme_of(
        f'{COURSE}\nclosures: [{{what: "{what}", dates: 2026-06-02{extra}}}]\n'
    )
    found = "".join(week(programme, green)[1] for green in ("1", "2", "Putting green"))
    assert found == expected
    assert week(programme, "1")[0] == "o"
    assert programme.closures[0].whole_course is ("course" in what)


def test_every_green_has_its_status_on_a_day_that_is_told(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}
works: [{{operation: top dressing, dates: 2026-06-01, greens: 1}}]
""")
    assert list(programme.status) == [dt.date(2026, 6, number) for number in (1, 2, 3)]
    for on_day in programme.status.values():
        assert list(on_day) == ["1", "2", "Putting green"]


def test_where_it_may_never_come_back_a_green_recovers_as_long_as_can_be_said(
    programme_of: ProgrammeOf,
) -> None:
    cold = ", ".join(["-40"] * 12)
    programme = programme_of(f"""
        course: {{greens: [{{green: 1}}], monthly_mean_temperature: [{cold}]}}
        works: [{{operation: hollow tining, dates: 2026-06-01}}]
    """)
    assert week(programme, "1") == "crrrrrr"
    assert max(programme.status) == dt.date(2026, 6, 1) + dt.timedelta(days=729)
