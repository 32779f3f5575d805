"""The sand of a top dressing: by dressing and in all, by green and in all, and what it costs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notices.agronomy import sand
from notices.agronomy.loads import whole_loads
from notices.plan.model import Plan
from notices.programme.figures.quantity import Quantity, area_of
from notices.programme.model import Figure, Green, Input, SandOnGreen, Work
from notices.programme.sand import diameter_setting
from notices.programme.slugs import ALL

FILLING = "{open_l_per_m2} ÷ 1000 × {share} × (1 + {waste}) × {area_m2}"
FILLING_ALL = "{open_m3} × {share} × (1 + {waste})"
COVERING = "{rate_kg_m2} ÷ {density_t_m3} ÷ 1000 × {dressings} × {area_m2}"

SAND = Quantity("sand", "m3", FILLING, ("definition", "common_practice"))
MASS = Quantity("mass of sand", "t", "{volume_m3} × {density_t_m3}", ("definition", "daniels2018"))
LORRIES = Quantity(
    "lorry loads",
    "lorry loads",
    "{mass_t} ÷ {lorry_t}, rounded up",
    ("definition", "common_practice"),
    "lorry load",
)
ON_SURFACE = Quantity(
    "sand on the surface",
    "mm",
    "{dressing_mm} × {dressings} − {open_l_per_m2}, not below 0",
    ("definition",),
)
MASS_ON_SURFACE = Quantity(
    "mass of sand on the surface", "kg/m2", "{depth_mm} × {density_t_m3}", ("definition",)
)
NEEDED = Quantity(
    "dressings needed",
    "dressings",
    "{brought_kg_m2} ÷ {most_kg_m2}, rounded up, on the green that takes most",
    ("definition", "uk_trade_press"),
    "dressing",
)
COST = Quantity("cost of sand", "money", "{mass_t} × {price_per_tonne}", ("definition",))


@dataclass(frozen=True, slots=True)
class SandPrice:
    """What the plan says of the sand."""

    density_t_m3: float
    density_given: bool
    price_per_tonne: float | None
    currency: str
    waste: float
    """Share that misses the holes, as a fraction."""
    waste_given: bool
    lorry_t: float
    lorry_given: bool
    most_kg_m2: float
    """What a single dressing can work in."""
    most_given: bool
    assumed_holes: frozenset[str] = frozenset()
    """Works whose holes are, in part, of the catalogue's size and not the club's."""

    @classmethod
    def of(cls, plan: Plan) -> SandPrice:
        """Gather it from a plan."""
        sand, given = plan.sand, plan.sand.model_fields_set
        return cls(
            density_t_m3=sand.density,
            density_given="density" in given,
            price_per_tonne=sand.price_per_tonne,
            currency=plan.club.currency or "",
            waste=sand.waste / 100,
            waste_given="waste" in given,
            lorry_t=sand.lorry_load,
            lorry_given="lorry_load" in given,
            most_kg_m2=sand.most_per_dressing,
            most_given="most_per_dressing" in given,
        )


def figures_of_sand(
    work: Work,
    needs: Sequence[SandOnGreen],
    greens: Mapping[str, Green],
    bought: SandPrice,
    works: Sequence[Work],
) -> Iterator[Figure]:
    """Yield the sand of one work: what each dressing brings, and all of them together.

    Parameters
    ----------
    work
        A work; only a dressing has needs.
    needs
        The sand that it brings to each green.
    greens
        The greens of the course.
    bought
        What the plan says of the sand.
    works
        All works of the plan, some of which open the holes.
    """
    if not needs:
        return
    bought = replace(bought, assumed_holes=frozenset(w.id for w in works if _holes_assumed(w)))
    dressings = range(1, len(needs[0].shares) + 1)
    for dressing in dressings:
        yield from _of_visits(work, needs, greens, bought, (dressing,), f", dressing {dressing}")
    yield from _of_visits(work, needs, greens, bought, dressings, "")
    yield from _on_surface(work, needs, greens, bought)
    yield _needed(work, needs, bought)


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
        parts = {figure.work: figure.value for figure in works}
        recipe = "sum of the sand of all works [m³]"
        yield SAND.sum_of(ALL, parts, recipe=recipe, default_used=assumed)
        weighed = list(_weighed(ALL, "", volume, bought, default_used=assumed))
        yield from weighed
        mass = weighed[0]
        yield LORRIES.of(
            ALL,
            float(whole_loads(mass.value or 0.0, bought.lorry_t)),
            (
                Input("mass_t", mass.value, "mass of sand", "t"),
                Input("lorry_t", bought.lorry_t, "load of a lorry", "t"),
            ),
            default_used=mass.default_used or not bought.lorry_given,
        )


def _on_surface(
    work: Work, needs: Sequence[SandOnGreen], greens: Mapping[str, Green], bought: SandPrice
) -> Iterator[Figure]:
    """Yield what lies on each green beyond what its open holes take."""
    for need in needs:
        green = greens[need.green]
        depth = sum(need.on_surface_of(visit) for visit in range(1, len(need.shares) + 1))
        # What is open on the green may be of any work before it.
        assumed = (bool(need.open_mm) and bool(bought.assumed_holes)) or (
            not _fills(work, need)
            and (not bought.density_given or work.settings.rests_on_default("rate", "dressings"))
        )
        yield ON_SURFACE.of(
            work.id,
            depth,
            (
                Input(
                    "dressing_mm", need.brought_mm / len(need.shares), "depth of a dressing", "mm"
                ),
                Input("dressings", len(need.shares), "number of dressings"),
                Input(
                    "open_l_per_m2",
                    need.open_mm,
                    "volume of the holes still open per area",
                    "L/m2",
                ),
            ),
            green=green,
            default_used=assumed,
        )
        yield MASS_ON_SURFACE.of(
            work.id,
            sand.mass_kg_per_m2(depth, bought.density_t_m3),
            (Input("depth_mm", depth, "depth on the surface", "mm"), _density(bought)),
            green=green,
            default_used=assumed or not bought.density_given,
        )


def _needed(work: Work, needs: Sequence[SandOnGreen], bought: SandPrice) -> Figure:
    most = max(needs, key=lambda need: need.brought_mm)
    total = sand.mass_kg_per_m2(most.brought_mm, bought.density_t_m3)
    return NEEDED.of(
        work.id,
        float(sand.dressings_needed(total, bought.most_kg_m2)),
        (
            Input("green", most.green),
            Input("brought_kg_m2", total, "what all dressings bring", "kg/m2"),
            Input("most_kg_m2", bought.most_kg_m2, "the most of one dressing", "kg/m2"),
        ),
        default_used=not (bought.most_given and bought.density_given)
        or (not most.fills and work.settings.rests_on_default("rate", "dressings")),
    )


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
        _filling(quantity, work, need, greens[need.green], bought, visits)
        if _fills(work, need)
        else _covering(quantity, work, need, greens[need.green], bought, visits)
        for need in needs
    ]
    yield from made
    volume = sum(figure.value or 0.0 for figure in made)
    assumed = any(figure.default_used for figure in made)
    recipe, inputs = _summed(work, needs, greens, bought, visits)
    yield quantity.of(work.id, volume, inputs, recipe=recipe, default_used=assumed)
    yield from _weighed(work.id, label, volume, bought, default_used=assumed)


def _holes_assumed(work: Work) -> bool:
    """Whether the size of the holes that sand fills is not all the club's own."""
    if not work.operation.filled:
        return False
    several = ("passes",) if "passes" in work.settings.values else ()
    return work.settings.rests_on_default(diameter_setting(work), "spacing", "depth", *several)


def _fills(work: Work, need: SandOnGreen) -> bool:
    """Whether a dressing is to fill holes on a green, even where none are open."""
    return bool(need.fills) or "fill" in work.settings.given


def _filling(
    quantity: Quantity,
    work: Work,
    need: SandOnGreen,
    green: Green,
    bought: SandPrice,
    visits: Sequence[int],
) -> Figure:
    one_of_several = len(visits) < len(need.shares)
    share = sum(need.shares[visit - 1] for visit in visits)
    return quantity.of(
        need.work,
        sand.fill_volume_m3(need.depth_mm * share, green.area_m2, bought.waste),
        (
            Input("open_l_per_m2", need.depth_mm, "volume of the open holes per area", "L/m2"),
            Input("fills", ", ".join(need.fills) or None),
            Input("share", share, "share of the fill"),
            Input("waste", bought.waste),
            area_of(green.area_m2),
        ),
        green=green,
        default_used=not (bought.waste_given and green.area_given)
        or bool(bought.assumed_holes.intersection(need.fills))
        or (one_of_several and _share_assumed(work, need, bought)),
    )


def _share_assumed(work: Work, need: SandOnGreen, bought: SandPrice) -> bool:
    """Whether the share of one dressing follows from the book: half at first, or what goes in."""
    limited = need.shares[0] != need.shares[-1] and need.shares[0] < 0.5
    return work.settings.rests_on_default("dressings") or (
        limited and not (bought.most_given and bought.density_given)
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
        (*_rate(work, bought, visits), area_of(green.area_m2)),
        green=green,
        recipe=COVERING,
        default_used=_rate_assumed(work, bought, visits, need) or not green.area_given,
    )


def _rate(work: Work, bought: SandPrice, visits: Sequence[int]) -> tuple[Input, ...]:
    return (
        Input("rate_kg_m2", work.settings.number("rate"), "rate", "kg/m2"),
        _density(bought),
        Input("dressings", len(visits), "number of dressings"),
    )


def _density(bought: SandPrice) -> Input:
    return Input("density_t_m3", bought.density_t_m3, "density", "t/m3")


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
) -> tuple[str, list[Input]]:
    """Return the recipe of the sum over the greens, and what goes into it."""
    recipes: list[str] = []
    inputs: list[Input] = []
    if filled := [need for need in needs if _fills(work, need)]:
        recipes.append(FILLING_ALL)
        opened = [need.depth_mm * greens[need.green].area_m2 / 1000 for need in filled]
        shares = [sum(need.shares[visit - 1] for visit in visits) for need in filled]
        brought = sum(each * share for each, share in zip(opened, shares, strict=True))
        # Greens with more to fill than can be worked in at first have a smaller first share.
        share = brought / sum(opened) if len(set(shares)) > 1 else shares[0]
        inputs += [
            Input("open_m3", sum(opened), "volume of the open holes of all greens", "m3"),
            Input("share", share, "share of the fill"),
            Input("waste", bought.waste),
        ]
    if covered := [need for need in needs if not _fills(work, need)]:
        recipes.append(COVERING)
        area = sum(greens[need.green].area_m2 for need in covered)
        inputs += [*_rate(work, bought, visits), area_of(area)]
    return " + ".join(recipes), inputs


def _weighed(
    work: str, label: str, volume_m3: float, bought: SandPrice, *, default_used: bool
) -> Iterator[Figure]:
    """Yield the mass of a volume of sand, and the price of the whole of it."""
    mass = sand.mass_t(volume_m3, bought.density_t_m3)
    assumed = default_used or not bought.density_given
    yield replace(MASS, name=f"mass of sand{label}").of(
        work,
        mass,
        (Input("volume_m3", volume_m3, "volume", "m3"), _density(bought)),
        default_used=assumed,
    )
    if bought.price_per_tonne is not None and not label:
        money = bought.currency or COST.unit
        yield replace(COST, unit=money).of(
            work,
            mass * bought.price_per_tonne,
            (
                Input("mass_t", mass, "mass", "t"),
                Input("price_per_tonne", bought.price_per_tonne, unit=money),
            ),
            default_used=assumed,
        )
