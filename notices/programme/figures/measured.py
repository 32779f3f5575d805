"""What the club measured on its greens, and what has changed from the first date to the last."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from statistics import fmean

from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Green, Input, Measured
from notices.programme.slugs import ALL

SOURCE = ("club_measurement",)


def figures_of_measurements(
    measured: Iterable[Measured], greens: Mapping[str, Green]
) -> Iterator[Figure]:
    """Yield each value with its date and green, and the change where there are two dates."""
    for each in measured:
        green, days = greens[each.green], _days(each)
        for day, values in each.by_date.items():
            several = len(values) > 1
            yield Quantity(
                f"{_name(each)}, {day}",
                each.unit,
                "mean of what the club measured that day" if several else "as the club measured it",
                SOURCE,
            ).of(
                ALL,
                days[day],
                (
                    Input("measured", day.isoformat()),
                    *(
                        Input(f"reading {number}" if several else "reading", value, unit=each.unit)
                        for number, value in enumerate(values, 1)
                    ),
                ),
                green=green,
                default_used=False,
            )
        if len(days) > 1:
            first, last = min(days), max(days)
            yield Quantity(
                f"{_name(each)}, change",
                each.unit,
                "{value at last} − {value at first}",
                (*SOURCE, "definition"),
            ).of(
                ALL,
                days[last] - days[first],
                (
                    Input("value at first", days[first], unit=each.unit),
                    Input("value at last", days[last], unit=each.unit),
                    Input("first measured", first.isoformat()),
                    Input("last measured", last.isoformat()),
                    Input("works between", ", ".join(each.works_between) or None),
                ),
                green=green,
                default_used=False,
            )


def _name(each: Measured) -> str:
    """Name what was measured; firmness with its unit, since clubs measure it in several."""
    return f"firmness in {each.unit}" if each.what == "firmness" else each.what


def _days(each: Measured) -> dict[dt.date, float]:
    return {day: fmean(values) for day, values in each.by_date.items()}
