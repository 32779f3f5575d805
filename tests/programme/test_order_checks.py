"""Orders that undo a work, and greens left out: plans that bring each finding, and just do not."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from notices.findings import Weight
from notices.programme.model import Programme
from notices.programme.order_checks import ORDER_CHECKS
from tests.programme.finding_tables import assert_found, assert_quiet, found

ProgrammeOf = Callable[..., Programme]

COURSE = "course: {greens: [{green: 1-3, area: 480 m2}, {green: Putting green, area: 300 m2}]}\n"


def works(*lines: str) -> str:
    listed = "".join(f"  - {{operation: {line}}}\n" for line in lines)
    return f"{COURSE}works:\n{listed}"


CORES = "hollow tining, dates: 2026-06-15"
SAND = "top dressing, dates: 2026-06-15"
BRUSH = "brushing, dates: 2026-06-15"
ROLL = "rolling, dates: 2026-06-15"
SOLID = "solid tining, dates: 2026-06-15"
DEEP = "deep solid tining, dates: 2026-06-15"


def on(day: str, line: str) -> str:
    return line.replace("06-15", day)


# code, weight, plan with the finding, plan that just has not. The spans are judgement.
TABLE = [
    (
        # Fourteen days before is still fresh, and fifteen is not.
        "cored-after-dressing",
        Weight.THINK_AGAIN,
        works(on("06-01", SAND), CORES),
        works(on("05-31", SAND), CORES),
    ),
    (
        # On one day the cores come first.
        "cored-after-dressing",
        Weight.THINK_AGAIN,
        works(on("06-14", SAND), CORES),
        works(SAND, CORES),
    ),
    (
        "cored-after-dressing",
        Weight.THINK_AGAIN,
        works(on("06-14", SAND) + ", greens: 1-2", CORES + ", greens: 2-3"),
        works(on("06-14", SAND) + ", greens: 1", CORES + ", greens: 2-3"),
    ),
    (
        # The top-up of 2026-06-08 comes a week before the cores.
        "cored-after-dressing",
        Weight.THINK_AGAIN,
        works(on("05-25", SAND) + ", settings: {dressings: 3, days_between: 7}", CORES),
        works(on("05-25", SAND), CORES),
    ),
    (
        # 42 days and 43.
        "scarified-after-seed",
        Weight.THINK_AGAIN,
        works("overseeding, dates: 2026-05-04", "scarifying, dates: 2026-06-15"),
        works("overseeding, dates: 2026-05-03", "scarifying, dates: 2026-06-15"),
    ),
    (
        "scarified-after-seed",
        Weight.THINK_AGAIN,
        works("overseeding, dates: 2026-06-14", "scarifying, dates: 2026-06-15"),
        works("overseeding, dates: 2026-06-15", "scarifying, dates: 2026-06-15"),
    ),
    (
        "finished-before-dressing",
        Weight.THINK_AGAIN,
        works(SAND, on("06-14", BRUSH)),
        works(SAND, BRUSH),
    ),
    (
        "finished-before-dressing",
        Weight.THINK_AGAIN,
        works(SAND, on("06-14", ROLL)),
        works(SAND, on("06-14", ROLL), on("06-16", ROLL)),
    ),
    (
        "dressing-not-brushed",
        Weight.THINK_AGAIN,
        works(SAND),
        works(SAND, BRUSH),
    ),
    (
        # A week later is still in time.
        "dressing-not-brushed",
        Weight.THINK_AGAIN,
        works(SAND, on("06-23", BRUSH)),
        works(SAND, on("06-22", BRUSH)),
    ),
    (
        "dressing-not-brushed",
        Weight.THINK_AGAIN,
        works(SAND + ", greens: 1-3", BRUSH + ", greens: 1-2"),
        works(SAND + ", greens: 1-2", BRUSH + ", greens: 1-3"),
    ),
    (
        # Each top-up wants its own: the 15th, and the 22nd and 29th a week apart.
        "top-up-not-brushed",
        Weight.INFORMATION,
        works(SAND + ", settings: {dressings: 3, days_between: 7}", BRUSH, on("06-22", BRUSH)),
        works(
            SAND + ", settings: {dressings: 3, days_between: 7}",
            BRUSH,
            on("06-22", BRUSH),
            on("06-29", BRUSH),
        ),
    ),
    (
        "sand-before-solid-tining",
        Weight.INFORMATION,
        works(on("06-01", SAND), SOLID),
        works(on("05-31", SAND), SOLID),
    ),
    (
        "deep-tining-after-coring",
        Weight.INFORMATION,
        works(on("06-14", CORES), DEEP),
        works(CORES, on("06-14", DEEP)),
    ),
    (
        "deep-tining-before-coring",
        Weight.INFORMATION,
        works(on("06-14", DEEP), CORES),
        works(DEEP, on("06-14", CORES)),
    ),
    (
        # The putting green has no number and is left out on purpose.
        "green-left-out",
        Weight.THINK_AGAIN,
        works(CORES + ", greens: 1-2"),
        works(CORES + ", greens: 1-3"),
    ),
    (
        # Two of three are left out: a job on one green, not a slip.
        "green-left-out",
        Weight.THINK_AGAIN,
        works(CORES + ", greens: [1, 2, Putting green]"),
        works(CORES + ", greens: 1"),
    ),
    (
        # The third green has its cores on the next day.
        "green-left-out",
        Weight.THINK_AGAIN,
        works(CORES + ", greens: 1-2", on("06-16", SOLID) + ", greens: 1-3"),
        works(CORES + ", greens: 1-2", on("06-16", CORES) + ", greens: 3"),
    ),
    (
        "reserve-after-next-work",
        Weight.THINK_AGAIN,
        works(CORES + ", reserve_dates: 2026-06-17", on("06-16", SOLID)),
        works(CORES + ", reserve_dates: 2026-06-17", on("06-17", SOLID)),
    ),
    (
        "reserve-after-next-work",
        Weight.THINK_AGAIN,
        works(CORES + ", reserve_dates: 2026-06-17, greens: 1-2", on("06-16", SOLID)),
        works(
            CORES + ", reserve_dates: 2026-06-17, greens: 1-2", on("06-16", SOLID) + ", greens: 3"
        ),
    ),
    (
        # The cores have their own rolling; the one of the 16th is a second.
        "reserve-after-next-work",
        Weight.THINK_AGAIN,
        works(CORES + ", reserve_dates: 2026-06-17", on("06-16", ROLL)),
        works(CORES + ", reserve_dates: 2026-06-17", ROLL, on("06-16", ROLL)),
    ),
    (
        # What only feeds the grass may come first.
        "reserve-after-next-work",
        Weight.THINK_AGAIN,
        works(CORES + ", reserve_dates: 2026-06-17", on("06-16", ROLL)),
        works(CORES + ", reserve_dates: 2026-06-17", "feeding, dates: 2026-06-16"),
    ),
]


@pytest.mark.parametrize(("code", "weight", "plan", "_harmless"), TABLE)
def test_a_plan_that_brings_the_finding(
    programme_of: ProgrammeOf, code: str, weight: Weight, plan: str, _harmless: str
) -> None:
    finding = assert_found(programme_of(plan), code, weight)
    assert finding.path[0] == "works"
    assert bool(finding.suggestion) == (weight is Weight.THINK_AGAIN)


@pytest.mark.parametrize(("code", "_weight", "_plan", "harmless"), TABLE)
def test_a_plan_that_just_does_not(
    programme_of: ProgrammeOf, code: str, _weight: Weight, _plan: str, harmless: str
) -> None:
    assert_quiet(programme_of(harmless), code)


def test_every_check_is_in_the_table() -> None:
    # The orders that are fine have three codes, a dressing that nobody brushes in has two.
    assert len({row[0] for row in TABLE}) == len(ORDER_CHECKS) + 3


def test_overlapping_closures_are_fine(programme_of: ProgrammeOf) -> None:
    closed = "closures:\n" + 2 * "  - {what: greens 1-2, dates: 2026-06-15}\n"
    plain, both = programme_of(works(CORES)), programme_of(works(CORES) + closed)
    assert [f.code for f in both.findings] == [f.code for f in plain.findings]


def test_what_is_left_out_names_green_and_work(programme_of: ProgrammeOf) -> None:
    (finding,) = found(programme_of(works(CORES + ", greens: 1-2")), "green-left-out")
    assert finding.greens == ("3",)
    assert finding.message == "green 3 is left out of hollow tining, which all the others have"
