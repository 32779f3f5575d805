"""Days kept free for rain: plans that bring each finding, and plans that just do not."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.findings import Finding, Weight
from notices.programme.model import Programme
from tests.documents.building import BuiltPack, of

ProgrammeOf = Callable[..., Programme]

COURSE = "course: {greens: [{green: 1-3, area: 480 m2}]}\n"
RESERVE = "reserve_dates: 2026-06-17"
CORES = f"hollow tining, dates: 2026-06-15 to 2026-06-16, {RESERVE}"
SAND = "top dressing, dates: 2026-06-15 to 2026-06-16"
BRUSH = "brushing, dates: 2026-06-15 to 2026-06-16"


def works(*lines: str) -> str:
    listed = "".join(f"  - {{operation: {line}}}\n" for line in lines)
    return f"{COURSE}works:\n{listed}"


def found(programme: Programme, code: str) -> list[Finding]:
    return [finding for finding in programme.findings if finding.code == code]


@pytest.mark.parametrize(
    ("plan", "message"),
    [
        (
            works(CORES, SAND, BRUSH),
            (
                "top dressing and brushing have no reserve date, and go on the same days and greens "
                "as hollow tining, with 2026-06-17 in reserve"
            ),
        ),
        (
            works(CORES, f"{SAND}, {RESERVE}", BRUSH),
            (
                "brushing has no reserve date, and goes on the same days and greens as "
                "hollow tining and top dressing, with 2026-06-17 in reserve"
            ),
        ),
    ],
)
def test_what_cannot_move_with_the_rest_is_named(
    programme_of: ProgrammeOf, plan: str, message: str
) -> None:
    (finding,) = found(programme_of(plan), "reserve-of-some")
    assert (finding.message, finding.weight) == (message, Weight.INFORMATION)
    assert finding.path == ("works", 2 if message.startswith("brushing") else 1, "dates")
    assert finding.dates == (dt.date(2026, 6, 17),)


@pytest.mark.parametrize(
    "plan",
    [
        works(CORES, f"{SAND}, {RESERVE}"),
        works(SAND, BRUSH),  # nothing is kept free at all
        # Mowing is raised a week before, and stays so whatever the rain does.
        works(CORES, "raising the height of cut, dates: 2026-06-08"),
        works(f"{CORES}, greens: 1-2", f"{SAND}, greens: 3"),
    ],
)
def test_what_can_move_together_is_not_named(programme_of: ProgrammeOf, plan: str) -> None:
    assert not found(programme_of(plan), "reserve-of-some")


def test_a_reserve_day_with_work_of_its_own_is_named(programme_of: ProgrammeOf) -> None:
    """A day later the third green is dressed once more: two dressings, two days apart."""
    twice = "top dressing, dates: 2026-06-15, greens: 3, settings: {dressings: 2, days_between: 2}"
    code = "reserve-day-with-work"
    (finding,) = found(programme_of(works(CORES, twice)), code)
    assert finding.message == (
        "2026-06-17, kept free in case rain stops hollow tining, has work already: "
        "top dressing again on green 3"
    )
    assert finding.path == ("works", 0, "reserve_dates")
    assert (finding.greens, finding.weight) == (("3",), Weight.INFORMATION)
    both = found(programme_of(works(CORES, twice, "brushing, dates: 2026-06-17, greens: 3")), code)
    assert [one.message.partition(": ")[2] for one in both] == [
        "top dressing again and brushing on green 3"
    ]
    later = twice.replace("days_between: 2", "days_between: 3")
    assert not found(programme_of(works(CORES, later)), code)


@of("withy-hollow")
def test_a_renovation_moves_whole_and_its_second_dressing_is_seen(pack: BuiltPack) -> None:
    """Dressed from 23 August on, and again seven days later: greens 4 to 9 on 31 August and 1 September."""
    assert not found(pack.programme, "reserve-of-some")
    (finding,) = found(pack.programme, "reserve-day-with-work")
    assert finding.greens == tuple("456789")
    assert finding.dates == (dt.date(2027, 8, 31), dt.date(2027, 9, 1))
