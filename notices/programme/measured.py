"""What the club measured on each green, date by date, and what lay between the first and the last.

Nobody has published how firm or how fast a green must be, so nothing is judged here: what the club
measured is set side by side.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from notices.operations import Opening
from notices.plan.model import Measurement, Plan
from notices.programme.lay_out import club_greens, green_keys
from notices.programme.model import Measured, Reading, Work

_NUMBER_AND_UNIT = re.compile(r"(\d+(?:[.,]\d+)?)\s*(\D.*)?")


def measured_on_greens(plan: Plan, works: Sequence[Work]) -> tuple[Measured, ...]:
    """Return what was measured, green by green in the plan's order, each in order of dates.

    What was measured in different units is not set side by side.

    Parameters
    ----------
    plan
        The plan.
    works
        Its works, some of which may lie between two measurements.
    """
    club = club_greens(plan)
    found: dict[str, dict[tuple[str, str], list[Reading]]] = {
        green.key: {} for green in club.greens
    }
    for measurement in sorted(plan.measurements, key=lambda each: each.date):
        for green in green_keys(measurement.green, club):
            for what, unit, value in values_of(measurement):
                readings = found[green].setdefault((what, unit), [])
                readings.append(Reading(measurement.date, value))
    return tuple(
        Measured(green, what, unit, tuple(readings), _between(works, green, readings))
        for green, of_green in found.items()
        for (what, unit), readings in of_green.items()
    )


def values_of(measurement: Measurement) -> Iterator[tuple[str, str, float]]:
    """Yield what was measured, its unit and its number."""
    if measurement.thatch_depth is not None:
        yield "depth of thatch", "mm", measurement.thatch_depth
    if measurement.organic_matter is not None:
        yield "organic matter", "percent", measurement.organic_matter
    if measurement.firmness is not None and (
        read := _NUMBER_AND_UNIT.fullmatch(measurement.firmness.strip())
    ):
        yield "firmness", (read[2] or "1").strip(), float(read[1].replace(",", "."))
    if measurement.speed is not None:
        yield "green speed", "m", measurement.speed


def _between(works: Sequence[Work], green: str, readings: Sequence[Reading]) -> tuple[str, ...]:
    """Return the works that opened or covered a green between its first and its last measurement."""
    first, last = readings[0].date, readings[-1].date
    return tuple(
        work.id
        for work in works
        if work.operation.opening is not Opening.NONE
        and any(first <= day < last for day in work.every_day_on(green))
    )
