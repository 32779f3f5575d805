"""What figures of one quantity have in common, and how one of them is made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from notices.programme.model import Figure, Green, Work
from notices.programme.slugs import ALL, slug

Inputs = Mapping[str, float | int | str | None]


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity with its unit, its formula in plain words and its sources."""

    name: str
    unit: str
    formula: str
    source: tuple[str, ...]

    def of(
        self,
        work: str,
        value: float | None,
        inputs: Inputs,
        *,
        default_used: bool,
        green: Green | None = None,
        formula: str = "",
    ) -> Figure:
        """Return one figure; without a green it is about all greens of the work."""
        return Figure(
            id=f"{work}/{_slug(self.name)}/{green.slug if green else ALL}",
            quantity=self.name,
            work=work,
            green=green.key if green else ALL,
            value=value,
            unit=self.unit,
            formula=formula or self.formula,
            source=self.source,
            inputs=inputs,
            default_used=default_used,
        )


@cache
def _slug(name: str) -> str:
    return slug(name)  # a few dozen names, thousands of times


def by_area(
    quantity: Quantity,
    work: Work,
    greens: Mapping[str, Green],
    each_m2: float,
    inputs: Inputs,
    *,
    default_used: bool,
) -> Iterator[Figure]:
    """Yield a quantity that goes by area: one figure for each green, and their sum.

    Where the work has an area of its own, that is what is worked on each green.
    """
    own = work.settings.values.get("area")
    areas = {
        key: own if isinstance(own, float | int) else greens[key].area_m2 for key in work.greens
    }
    assumed = {key: own is None and not greens[key].area_given for key in work.greens}
    for key, area in areas.items():
        yield quantity.of(
            work.id,
            each_m2 * area,
            {**inputs, "area_m2": area},
            green=greens[key],
            default_used=default_used or assumed[key],
        )
    yield quantity.of(
        work.id,
        sum(each_m2 * area for area in areas.values()),
        {**inputs, "area_m2": sum(areas.values())},
        formula=f"{quantity.formula}, summed over the greens",
        default_used=default_used or any(assumed.values()),
    )
