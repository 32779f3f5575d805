"""The sand of a top dressing: by dressing and in all, by green and in all, and what it costs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notices.agronomy import sand
from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Green, SandOnGreen, Work
from notices.programme.sand import WASTE
from notices.programme.slugs import ALL

FILLING = "volume of the open holes per area ÷ 1000 × share of the fill × (1 + waste) × area"
FILLING_ALL = "volume of the open holes of all greens × share of the fill × (1 + waste)"
COVERING = "rate ÷ density ÷ 1000 × number of dressings × area"

SAND = Quantity("sand", "m3", FILLING, ("definition", "common_practice"))
MASS = Quantity("mass of sand", "t", "volume × density", ("definition", "daniels2018"))
COST = Quantity("cost of sand", "money", "mass × price per tonne", ("definition",))


@dataclass(frozen=True, slots=True)
class SandPrice:
    """What the plan says of the sand."""

    density_t_m3: float
    density_given: bool
    price_per_tonne: float | None
    currency: str


def figures_of_sand(
    work: Work, needs: Sequence[SandOnGreen], greens: Mapping[str, Green], bought: SandPrice
) -> Iterator[Figure]:
    """Yield the sand of one work: what each dressing brings, and all of them together."""
    if not needs:
        return
    dressings = range(1, len(needs[0].shares) + 1)
    for dressing in dressings:
        yield from _of_visits(work, needs, greens, bought, (dressing,), f", dressing {dressing}")
    yield from _of_visits(work, needs, greens, bought, dressings, "")


def figures_of_order(works: Sequence[Figure], bought: SandPrice) -> Iterator[Figure]:
    """Yield the sand of the whole plan, to be ordered, from that of its works.

    Parameters
    ----------
    works
        The figures "sand" over all greens, one for each dressing work.
    bought
        What the plan says of the sand.
    """
    if works:
        volume = sum(figure.value or 0.0 for figure in works)
        assumed = any(figure.default_used for figure in works)
        inputs = {figure.work: figure.value for figure in works}
        formula = "sum of the sand of all works [m³]"
        yield SAND.of(ALL, volume, inputs, formula=formula, default_used=assumed)
        yield from _weighed(ALL, "", volume, bought, default_used=assumed)


def _of_visits(
    work: Work,
    needs: Sequence[SandOnGreen],
    greens: Mapping[str, Green],
    bought: SandPrice,
    visits: Sequence[int],
    label: str,
) -> Iterator[Figure]:
    """Yield the sand of one dressing, or of all, on each green and in all."""
    quantity = replace(SAND, name=f"sand{label}")
    made = [
        _filling(quantity, need, greens[need.green], visits)
        if _fills(work, need)
        else _covering(quantity, work, need, greens[need.green], bought, visits)
        for need in needs
    ]
    yield from made
    volume = sum(figure.value or 0.0 for figure in made)
    assumed = any(figure.default_used for figure in made)
    formula, inputs = _summed(work, needs, greens, bought, visits)
    yield quantity.of(work.id, volume, inputs, formula=formula, default_used=assumed)
    yield from _weighed(work.id, label, volume, bought, default_used=assumed)


def _fills(work: Work, need: SandOnGreen) -> bool:
    """Whether a dressing is to fill holes on a green, even where none are open."""
    return bool(need.fills) or "fill" in work.settings.given


def _filling(quantity: Quantity, need: SandOnGreen, green: Green, visits: Sequence[int]) -> Figure:
    share = sum(need.shares[visit - 1] for visit in visits)
    return quantity.of(
        need.work,
        sand.fill_volume_m3(need.depth_mm * share, green.area_m2, WASTE),
        {
            "open_l_per_m2": need.depth_mm,
            "fills": ", ".join(need.fills) or None,
            "share": share,
            "waste": WASTE,
            "area_m2": green.area_m2,
        },
        green=green,
        default_used=True,  # the plan cannot say what is wasted
    )


def _covering(
    quantity: Quantity,
    work: Work,
    need: SandOnGreen,
    green: Green,
    bought: SandPrice,
    visits: Sequence[int],
) -> Figure:
    depth = sum(need.depth_of(visit) for visit in visits)
    return quantity.of(
        need.work,
        sand.fill_volume_m3(depth, green.area_m2, waste_fraction=0.0),
        _rate(work, bought, visits) | {"area_m2": green.area_m2},
        green=green,
        formula=COVERING,
        default_used=_rate_assumed(work, bought, visits, need) or not green.area_given,
    )


def _rate(
    work: Work, bought: SandPrice, visits: Sequence[int]
) -> dict[str, float | int | str | None]:
    return {
        "rate_kg_m2": work.settings.number("rate"),
        "density_t_m3": bought.density_t_m3,
        "dressings": len(visits),
    }


def _rate_assumed(work: Work, bought: SandPrice, visits: Sequence[int], need: SandOnGreen) -> bool:
    counted = len(visits) == len(need.shares)  # how many there are matters to their sum only
    return (
        not bought.density_given
        or work.settings.rests_on_default("rate")
        or (counted and work.settings.rests_on_default("dressings"))
    )


def _summed(
    work: Work,
    needs: Sequence[SandOnGreen],
    greens: Mapping[str, Green],
    bought: SandPrice,
    visits: Sequence[int],
) -> tuple[str, dict[str, float | int | str | None]]:
    """Return the formula of the sum over the greens, and what goes into it."""
    formulas: list[str] = []
    inputs: dict[str, float | int | str | None] = {}
    if filled := [need for need in needs if _fills(work, need)]:
        formulas.append(FILLING_ALL)
        inputs |= {
            "open_m3": sum(need.depth_mm * greens[need.green].area_m2 for need in filled) / 1000,
            "share": sum(filled[0].shares[visit - 1] for visit in visits),
            "waste": WASTE,
        }
    if covered := [need for need in needs if not _fills(work, need)]:
        formulas.append(COVERING)
        inputs |= _rate(work, bought, visits)
        inputs["area_m2"] = sum(greens[need.green].area_m2 for need in covered)
    return " + ".join(formulas), inputs


def _weighed(
    work: str, label: str, volume_m3: float, bought: SandPrice, *, default_used: bool
) -> Iterator[Figure]:
    """Yield the mass of a volume of sand, and the price of the whole of it."""
    mass = sand.mass_t(volume_m3, bought.density_t_m3)
    assumed = default_used or not bought.density_given
    yield replace(MASS, name=f"mass of sand{label}").of(
        work,
        mass,
        {"volume_m3": volume_m3, "density_t_m3": bought.density_t_m3},
        default_used=assumed,
    )
    if bought.price_per_tonne is not None and not label:
        yield replace(COST, unit=bought.currency or COST.unit).of(
            work,
            mass * bought.price_per_tonne,
            {"mass_t": mass, "price_per_tonne": bought.price_per_tonne},
            default_used=assumed,
        )
