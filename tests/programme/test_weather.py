"""What the weather must be for the works that are planned."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from notices.operations import Weather
from notices.programme.model import Programme

ProgrammeOf = Callable[..., Programme]

# June is warm, November is not; in May it is just too warm for frost to be spoken of.
COURSE = """
course:
  greens: [{green: 1-9}]
  soil: {clay: 47 %, sand: 18 %}
  monthly_mean_temperature: [4, 4, 6, 8, 12, 14, 16, 16, 13, 11.9, 7, 4]
"""

CASES = [
    ("hollow tining", "06-01", {"GROUND_NOT_WET"}),
    ("hollow tining", "11-02", {"NO_FROST", "GROUND_NOT_WET"}),
    ("rolling", "05-01", {"GROUND_NOT_WET"}),
    ("rolling", "10-01", {"NO_FROST", "GROUND_NOT_WET"}),
    ("top dressing", "06-01", {"DRY"}),
    ("scarifying", "06-01", set()),
    ("scarifying", "03-02", {"NO_FROST"}),
    ("feeding", "03-02", {"LABEL"}),
    ("wetting agent", "06-01", {"LABEL"}),
    # ahdb_moles: plastic at depth, firm on top.
    ("mole ploughing", "06-01", {"MOULDED_BELOW"}),
]


@pytest.mark.parametrize(("operation", "day", "expected"), CASES)
def test_what_stops_a_work(
    programme_of: ProgrammeOf, operation: str, day: str, expected: set[str]
) -> None:
    programme = programme_of(f"{COURSE}works: [{{operation: {operation}, dates: 2026-{day}}}]\n")
    assert {limit.name for limit in programme.weather} == expected


def test_each_limit_names_its_works(programme_of: ProgrammeOf) -> None:
    # The first is done when it is warm; its reserve day is in the cold.
    programme = programme_of(f"""{COURSE}
works:
  - {{operation: rolling, dates: 2026-09-30, reserve_dates: 2026-10-01}}
  - {{operation: hollow tining, dates: 2026-06-01}}
  - {{operation: top dressing, dates: 2026-06-01, settings: {{dressings: 2, days_between: 60}}}}
""")
    assert programme.weather == {
        Weather.NO_FROST: ("rolling-1",),
        Weather.GROUND_NOT_WET: ("rolling-1", "hollow-tining-1"),
        Weather.DRY: ("top-dressing-1",),
    }
