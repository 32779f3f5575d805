"""Who does the work: what a plan may say of the crew, and what it may not."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from notices.operations import CLEARING_CORES, HAULING_SAND
from notices.plan.model import Crew


def test_what_is_left_out_is_common_practice() -> None:
    crew = Crew.model_validate({"people": 5, "clearing_cores": {}, "hauling_sand": {}})
    assert (crew.breaks, crew.kept_back, crew.dew_off) == (60, None, None)
    assert crew.clearing_cores is not None
    assert crew.hauling_sand is not None
    assert crew.clearing_cores.people == CLEARING_CORES.people
    assert crew.clearing_cores.m3_per_person_hour == CLEARING_CORES.m3_per_person_hour
    assert crew.hauling_sand.people == HAULING_SAND.people
    assert crew.hauling_sand.m3_per_load == HAULING_SAND.m3_per_load
    assert crew.hauling_sand.minutes_per_load == HAULING_SAND.minutes_per_load


def test_it_is_written_as_it_is_read() -> None:
    written: dict[str, Any] = {
        "people": 5,
        "working_day": "06:30 to 15:30",
        "kept_back": 2,
        "breaks": 45,
        "dew_off": "09:30",
        "drying": 30,
        "clearing_cores": {"people": 3, "m3_per_person_hour": 0.8},
        "hauling_sand": {"people": 2, "m3_per_load": 0.6, "minutes_per_load": 12},
    }
    crew = Crew.model_validate(written)
    assert crew.model_dump(mode="json", exclude_unset=True) == written
    assert Crew.model_validate(crew.model_dump(mode="json")) == crew


@pytest.mark.parametrize(
    ("crew", "message"),
    [
        ({"people": 2, "kept_back": 2}, "2 are kept back and there are only 2: leave somebody"),
        ({"people": 1, "hired_people": 1, "kept_back": 3}, "3 are kept back"),
        ({"people": 2, "kept_back": -1}, "greater than or equal to 0"),
        ({"people": 2, "breaks": 241}, "less than or equal to 240"),
        ({"people": 2, "dew_off": "9:30"}, "24-hour clock"),
        ({"people": 2, "drying": -1}, "greater than or equal to 0"),
        ({"people": 2, "drying": 481}, "less than or equal to 480"),
        ({"people": 2, "clearing_cores": {"people": 0}}, "greater than or equal to 1"),
        ({"people": 2, "clearing_cores": {"m3_per_person_hour": 0}}, "greater than or equal"),
        ({"people": 2, "hauling_sand": {"m3_per_load": 0}}, "greater than or equal"),
        ({"people": 2, "hauling_sand": {"loads": 3}}, "Extra inputs"),
    ],
)
def test_what_makes_no_sense_is_refused(crew: dict[str, Any], message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        Crew.model_validate(crew)


def test_hired_people_may_do_the_work_while_all_others_are_kept_back() -> None:
    assert Crew.model_validate({"people": 2, "hired_people": 1, "kept_back": 2}).kept_back == 2
