"""How well grass grows when a work begins and when it ends."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace

from notices.programme.climate import ClubClimate
from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Input, Work

GROWTH = Quantity(
    "growth potential",
    "1",
    "exp(−½ × (({temperature_c} − {optimum_c}) ÷ {spread_c})²), "
    "at most 1 for warm-season grass above its optimum",
    ("gelernter_stowell2005",),
)
ON_LAST_DAY = replace(GROWTH, name="growth potential, last day")


def figures_of_growth(work: Work, climate: ClubClimate) -> Iterator[Figure]:
    """Yield the growth potential on the first day of a work, and on the last."""
    yield _on(GROWTH, work, work.dates[0], climate)
    if len(work.dates) > 1:
        yield _on(ON_LAST_DAY, work, work.dates[-1], climate)


def _on(quantity: Quantity, work: Work, day: dt.date, climate: ClubClimate) -> Figure:
    known = day in climate.climate.known
    inputs = (
        Input("day", day.isoformat()),
        Input("temperature_c", climate.climate.temperature_on(day), "temperature", "°C"),
        *climate.inputs,
    )
    return replace(quantity, source=climate.source).of(
        work.id,
        climate.climate.growth_on(day),
        inputs,
        default_used=climate.default_used_on_known_days if known else climate.default_used,
    )
