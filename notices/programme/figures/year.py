"""What a green goes through in all: by calendar year, and over the whole programme."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from notices.operations import Opening
from notices.programme.figures.quantity import Quantity, area_of
from notices.programme.figures.sand import SandPrice
from notices.programme.model import Figure, Green, Input, SandOnGreen, Work
from notices.programme.sand import disturbed_percent, removed_depth_mm
from notices.programme.slugs import ALL

HOLES = Quantity(
    "surface opened by holes, year",
    "percent",
    "sum of the surface disturbed by each work with holes on the green; "
    "where they cross, the overlap is ignored",
    ("definition", "hartwiger_obrien2001", "woods2009", "woods2019"),
)
SLITS = Quantity(
    "surface cut by slits, year",
    "percent",
    "sum of the surface disturbed by each work with slits on the green, however deep; "
    "where they cross, the overlap is ignored",
    ("definition", "ervin_nichols"),
)
"""Apart, because published totals of a year are of coring: they count holes."""

OPENED = {Opening.HOLES: HOLES, Opening.SLITS: SLITS}
BROUGHT = Quantity(
    "sand in the year",
    "mm",
    "sum of the depths of sand of all dressings on the green",
    ("definition", "obrien_hartwiger2003", "whitlark_thompson2019", "uk_trade_press"),
)
RISE = Quantity(
    "rise of the surface",
    "mm",
    "sum of the depths of sand brought − sum of the volumes per area of cores and cuttings removed; "
    "below 0 the surface sinks; settling and growth left out",
    ("definition", "woods2021"),
)
Parts = dict[str, float]
"""What each work adds."""


def figures_of_years(
    works: Sequence[Work],
    needs: Sequence[SandOnGreen],
    greens: Mapping[str, Green],
    bought: SandPrice,
) -> Iterator[Figure]:
    """Yield, for each green and on the mean of all that are worked, what the works add up to."""
    opened: dict[Opening, dict[int, dict[str, Parts]]] = {opening: {} for opening in OPENED}
    brought: dict[int, dict[str, Parts]] = {}
    rise: dict[str, Parts] = {}
    by_id = {work.id: work for work in works}
    for work in works:
        if work.operation.opening in OPENED:
            disturbed, removed = disturbed_percent(work), removed_depth_mm(work)
            for green in work.greens:
                number = min(work.days_on(green)).year
                of_year = opened[work.operation.opening].setdefault(number, {})
                of_year.setdefault(green, {})[work.id] = disturbed
                if removed:
                    rise.setdefault(green, {})[f"removed by {work.id}"] = -removed
    for need in needs:
        for dressing in range(1, len(need.shares) + 1):
            day = max(by_id[need.work].days_on(need.green, dressing))
            parts = brought.setdefault(day.year, {}).setdefault(need.green, {})
            parts[need.work] = parts.get(need.work, 0.0) + need.depth_of(dressing)
        if need.brought_mm:
            rise.setdefault(need.green, {})[f"brought by {need.work}"] = need.brought_mm
    assumed = {work.id for work in works if _assumed(work, bought)}
    by_year = [*((kind, opened[opening]) for opening, kind in OPENED.items()), (BROUGHT, brought)]
    for kind, years in by_year:
        for number, on_greens in sorted(years.items()):
            quantity = replace(kind, name=f"{kind.name} {number}")
            yield from _each_and_mean(quantity, on_greens, greens, assumed)
    yield from _each_and_mean(RISE, rise, greens, assumed)


def _assumed(work: Work, bought: SandPrice) -> bool:
    """Whether what a work opens or brings rests on a default; a filling on the holes it fills."""
    settings = work.settings
    if work.operation.opening is Opening.SAND:
        by_rate = "fill" not in settings.given
        return by_rate and (
            settings.rests_on_default("rate", "dressings") or not bought.density_given
        )
    sizes = [name for name in settings.values if name not in ("seed", "product")]
    return settings.rests_on_default(*sizes)


def _each_and_mean(
    quantity: Quantity,
    on_greens: Mapping[str, Parts],
    greens: Mapping[str, Green],
    assumed: set[str],
) -> Iterator[Figure]:
    """Yield the sum on each green, and the mean over them by area."""
    if not on_greens:
        return
    rests = {
        green: any(name.split()[-1] in assumed for name in parts)
        for green, parts in on_greens.items()
    }
    for key, parts in on_greens.items():
        yield quantity.sum_of(ALL, parts, green=greens[key], default_used=rests[key])
    area = sum(greens[key].area_m2 for key in on_greens)
    sums = [sum(parts.values()) for parts in on_greens.values()]
    whole = sum(sum(parts.values()) * greens[key].area_m2 for key, parts in on_greens.items())
    yield quantity.of(
        ALL,
        whole / area,
        (
            Input("sum_times_area", whole),
            area_of(area),
            Input("lowest", min(sums), unit=quantity.unit),
            Input("highest", max(sums), unit=quantity.unit),
        ),
        recipe=f"mean over the greens, by area, of the {quantity.recipe}",
        default_used=any(rests.values()) or not all(greens[key].area_given for key in on_greens),
    )
