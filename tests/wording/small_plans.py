"""Small plans, worked out the whole way from a file: what the tests of the words speak about."""

from __future__ import annotations

import datetime as dt
import json
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from notices.plan.load import load_plan
from notices.programme.model import Programme
from notices.programme.work_out import work_out
from notices.wording.period import PeriodWords
from notices.wording.words import Words

ISSUED = dt.date(2027, 3, 1)
"""A Monday; every small plan is issued on it unless a test says otherwise."""

CENTRAL_ENGLAND = [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
"""The monthly means of the brief's own plan."""

MILD_WINTER = [14.0] * 12
"""A place where grass never stops growing."""


def work(operation: str, dates: str, **more: object) -> dict[str, object]:
    return {"operation": operation, "dates": dates, **more}


HOUR_A_GREEN = {
    "people": 1,
    "working_day": "06:30 to 15:30",
    "machines": [
        # 1 m x 1 km/h = 1000 m² an hour, and 60 % of it 600: an hour for a green of 600 m².
        {
            "operation": operation,
            "width": "1 m",
            "speed": "1 km/h",
            "efficiency": "60 %",
            "minutes_between_greens": 0,
            "people": 1,
        }
        for operation in ("verticutting", "top dressing")
    ],
}
"""A crew that needs an hour for a green of GREEN_OF_AN_HOUR."""

GREEN_OF_AN_HOUR = "600 m2"


def plan(
    *works: Mapping[str, object],
    greens: str = "1-18",
    temperatures: list[float] = CENTRAL_ENGLAND,
    club: Mapping[str, object] | None = None,
    **more: object,
) -> dict[str, Any]:
    """Return a plan as typed, with a club and a course around the works."""
    return {
        "club": {"name": "Fallow Mead Golf Club", **(club or {})},
        "course": {"greens": [{"green": greens}], "monthly_mean_temperature": temperatures},
        "works": list(works),
        **more,
    }


def programme(data: Mapping[str, object], issued: dt.date = ISSUED) -> Programme:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "plan.yaml"
        path.write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")
        return work_out(load_plan(path).plan, issued)


def words(data: Mapping[str, object], issued: dt.date = ISSUED) -> Words:
    return Words(programme(data, issued))


def period(data: Mapping[str, object], issued: dt.date = ISSUED) -> PeriodWords:
    """Return the words on the only period of a plan."""
    told = words(data, issued)
    (only,) = told.programme.periods
    return PeriodWords(told, only)
