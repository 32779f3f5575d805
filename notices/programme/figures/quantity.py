"""What figures of one quantity have in common, and how one of them is made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from string import Formatter

from notices.programme.model import Figure, Green, Input, Value, Work
from notices.programme.slugs import ALL, slug


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity with its unit, its formula in plain words and its sources."""

    name: str
    unit: str
    recipe: str
    """The formula, with the name of an input in braces where one stands."""
    source: tuple[str, ...]
    unit_of_one: str = ""
    """The unit in the singular where it is a word, such as "hole"."""

    def of(
        self,
        work: str,
        value: float | None,
        inputs: Sequence[Input],
        *,
        default_used: bool,
        green: Green | None = None,
        recipe: str = "",
    ) -> Figure:
        """Return one figure; without a green it is about all greens of the work.

        Raises
        ------
        ValueError
            Where the recipe names what is none of the inputs.
        """
        return self._made(work, value, inputs, recipe, green, default_used=default_used)

    def sum_of(
        self,
        work: str,
        parts: Mapping[str, Value],
        *,
        default_used: bool,
        green: Green | None = None,
        recipe: str = "",
    ) -> Figure:
        """Return the sum of what the parts bring, each in the unit of the quantity itself."""
        inputs = [Input(name, value, name, self.unit) for name, value in parts.items()]
        value = sum(value for value in parts.values() if isinstance(value, float | int))
        return self._made(
            work, value, inputs, recipe, green, default_used=default_used, summed=True
        )

    def _made(
        self,
        work: str,
        value: float | None,
        inputs: Sequence[Input],
        recipe: str,
        green: Green | None,
        *,
        default_used: bool,
        summed: bool = False,
    ) -> Figure:
        how = recipe or self.recipe
        if missing := _named_in(how).difference(given.name for given in inputs):
            raise ValueError(
                f'"{self.name}" is not worked out from {", ".join(sorted(missing))}: "{how}"'
            )
        return Figure(
            id=f"{work}/{_slug(self.name)}/{green.slug if green else ALL}",
            quantity=self.name,
            work=work,
            green=green.key if green else ALL,
            value=value,
            unit=self.unit,
            unit_of_one=self.unit_of_one,
            recipe=how,
            summed=summed,
            source=self.source,
            worked_from=tuple(inputs),
            default_used=default_used,
        )


@cache
def _slug(name: str) -> str:
    return slug(name)  # a few dozen names, thousands of times


@cache
def _named_in(recipe: str) -> frozenset[str]:
    return frozenset(name for _, name, _, _ in Formatter().parse(recipe) if name is not None)


def area_of(m2: float) -> Input:
    """Return an area [m²] as an input."""
    return Input("area_m2", m2, "area", "m2")


def in_mm(words: str, value: float) -> Input:
    """Return a length [mm] as an input that is named as formulas call it."""
    return Input(f"{words.replace(' ', '_')}_mm", value, words, "mm")


def by_area(
    quantity: Quantity,
    work: Work,
    greens: Mapping[str, Green],
    each_m2: float,
    inputs: Sequence[Input],
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
            (*inputs, area_of(area)),
            green=greens[key],
            default_used=default_used or assumed[key],
        )
    yield quantity.of(
        work.id,
        sum(each_m2 * area for area in areas.values()),
        (*inputs, area_of(sum(areas.values()))),
        recipe=f"{quantity.recipe}, summed over the greens",
        default_used=default_used or any(assumed.values()),
    )
