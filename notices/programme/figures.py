"""The figures of a programme: every number with its formula, its inputs and its source."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from notices.agronomy import holes, moles, sand, slits, work_time
from notices.agronomy.growth import Climate, temperature_on
from notices.operations import Opening, Pace
from notices.programme.model import Figure, Green, Recovery, SandOnGreen, Work
from notices.programme.pace import pace_of
from notices.programme.sand import WASTE, hole_diameter_mm, passes

ALL = "all"


def figure(  # noqa: D103, see Figure
    quantity: str,
    work: str,
    value: float | None,
    unit: str,
    formula: str,
    source: tuple[str, ...],
    inputs: Mapping[str, float | int | str | None],
    *,
    green: str = ALL,
    default_used: bool,
) -> Figure:
    name = quantity.replace(" ", "-")
    return Figure(
        id=f"{work}/{name}/{green.replace(' ', '-').lower()}",
        quantity=quantity,
        work=work,
        green=green,
        value=value,
        unit=unit,
        formula=formula,
        source=source,
        inputs=inputs,
        default_used=default_used,
    )


def per_area(
    quantity: str,
    work: Work,
    greens: Mapping[str, Green],
    each_m2: float,
    unit: str,
    formula: str,
    source: tuple[str, ...],
    inputs: Mapping[str, float | int | str | None],
    *,
    default_used: bool,
) -> Iterator[Figure]:
    """Yield a quantity that goes by area: one figure for each green, and their sum."""
    total = 0.0
    for key in work.greens:
        green = greens[key]
        value = each_m2 * green.area_m2
        total += value
        yield figure(
            quantity,
            work.id,
            value,
            unit,
            formula,
            source,
            {**inputs, "area_m2": green.area_m2},
            green=key,
            default_used=default_used or not green.area_given,
        )
    area = sum(greens[key].area_m2 for key in work.greens)
    yield figure(
        quantity,
        work.id,
        total,
        unit,
        f"{formula}, summed over the greens",
        source,
        {**inputs, "area_m2": area},
        default_used=default_used or not all(greens[key].area_given for key in work.greens),
    )


def figures_of_surface(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    """Yield what a work does to the surface: holes, slits, channels or trenches."""
    kind = work.operation.opening
    if kind is Opening.HOLES:
        yield from _holes(work, greens)
    elif kind is Opening.SLITS:
        yield from _slits(work, greens)
    elif kind is Opening.CHANNELS:
        spacing = work.settings.number("spacing") / 1000
        yield from per_area(
            "channel length",
            work,
            greens,
            moles.channel_length_m(1.0, spacing),
            "m",
            "area ÷ spacing",
            ("definition",),
            {"spacing_m": spacing},
            default_used=work.settings.rests_on_default("spacing"),
        )


def _holes(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    along, across = work.settings.pair("spacing")
    diameter, depth, count = hole_diameter_mm(work), work.settings.number("depth"), passes(work)
    names = tuple(n for n in ("tine_diameter", "hole_diameter") if n in work.settings.values)
    rests = work.settings.rests_on_default
    inputs = {"along_mm": along, "across_mm": across, "passes": count}
    each = holes.holes_per_m2(along, across) * count
    yield figure(
        "holes per m2",
        work.id,
        each,
        "1/m2",
        "1,000,000 ÷ (along × across) × passes",
        ("definition", "woods2009"),
        inputs,
        default_used=rests("spacing"),
    )
    yield from per_area(
        "holes",
        work,
        greens,
        each,
        "holes",
        "holes per m² × area",
        ("definition",),
        inputs,
        default_used=rests("spacing"),
    )
    yield figure(
        "surface disturbed",
        work.id,
        holes.surface_percent(diameter, along, across, count),
        "percent",
        "100 × (π × diameter² ÷ 4) ÷ (along × across) × passes",
        ("definition", "woods2009"),
        {"diameter_mm": diameter, **inputs},
        default_used=rests(*names, "spacing"),
    )
    if not work.operation.removes_core:
        return
    inside = work.settings.values.get("inside_diameter")
    core = inside if isinstance(inside, float) else diameter
    volume = holes.volume_l_per_m2(core, depth, along, across, count)
    removed = {"core_diameter_mm": core, "depth_mm": depth, **inputs}
    # Without an inside diameter the core is taken as wide as the hole: an upper bound.
    assumed = rests(*names, "spacing", "depth") or (
        "inside_diameter" in work.settings.values and inside is None
    )
    yield from per_area(
        "material removed",
        work,
        greens,
        volume / 1000,
        "m3",
        "(π × core diameter² ÷ 4) ÷ (along × across) × depth × passes × area",
        ("definition", "woods2021"),
        removed,
        default_used=assumed,
    )
    yield from per_area(
        "mass of material removed",
        work,
        greens,
        holes.core_mass_kg_per_m2(volume) / 1000,
        "t",
        "volume removed × bulk density of the root zone",
        ("woods2021",),
        {**removed, "bulk_density_t_m3": holes.BULK_DENSITY_OF_CORES_T_M3},
        default_used=True,
    )


def _slits(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    width = work.settings.number("blade_width")
    apart = work.settings.number("blade_spacing")
    depth, count = work.settings.number("depth"), passes(work)
    rests = work.settings.rests_on_default
    inputs = {"blade_width_mm": width, "blade_spacing_mm": apart, "passes": count}
    yield figure(
        "surface disturbed",
        work.id,
        slits.surface_percent(width, apart, count),
        "percent",
        "100 × blade width ÷ blade spacing × passes",
        ("definition", "ervin_nichols"),
        inputs,
        default_used=rests("blade_width", "blade_spacing"),
    )
    yield from per_area(
        "slit length",
        work,
        greens,
        slits.length_m(1.0, apart, count),
        "m",
        "area ÷ blade spacing × passes",
        ("definition",),
        {"blade_spacing_mm": apart, "passes": count},
        default_used=rests("blade_spacing"),
    )
    if work.operation.removes_core:
        yield from per_area(
            "material removed",
            work,
            greens,
            slits.volume_l_per_m2(width, depth, apart, count) / 1000,
            "m3",
            "blade width ÷ blade spacing × depth × passes × area",
            ("definition",),
            {**inputs, "depth_mm": depth},
            default_used=rests("blade_width", "blade_spacing", "depth"),
        )


def figures_of_sand(
    work: Work,
    needs: Sequence[SandOnGreen],
    greens: Mapping[str, Green],
    density_t_m3: float,
    *,
    density_given: bool,
) -> Iterator[Figure]:
    """Yield the sand of a top dressing: by dressing and in all, by green and in all."""
    filling = any(need.fills for need in needs)
    waste = WASTE if filling else 0.0
    formula = (
        "volume of the open holes × share of this dressing × (1 + waste)"
        if filling
        else "rate ÷ density × area"
    )
    source = ("definition", "common_practice")
    totals: dict[str, float] = {}
    count = len(needs[0].shares) if needs else 0
    for dressing in range(1, count + 1):
        label = f"sand, dressing {dressing}"
        for need in needs:
            depth = need.depth_of(dressing)
            area = greens[need.green].area_m2
            volume = sand.fill_volume_m3(depth, area, waste)
            totals[label] = totals.get(label, 0.0) + volume
            totals["sand"] = totals.get("sand", 0.0) + volume
            yield figure(
                label,
                work.id,
                volume,
                "m3",
                formula,
                source,
                {
                    "depth_mm": depth,
                    "waste": waste,
                    "area_m2": area,
                    "fills": ", ".join(need.fills) or None,
                },
                green=need.green,
                default_used=True if filling else not greens[need.green].area_given,
            )
    for label, volume in totals.items():
        yield figure(
            label,
            work.id,
            volume,
            "m3",
            f"{formula}, summed",
            source,
            {"waste": waste, "greens": len(needs)},
            default_used=filling or work.settings.rests_on_default("rate"),
        )
        yield figure(
            label.replace("sand", "mass of sand", 1),
            work.id,
            sand.mass_t(volume, density_t_m3),
            "t",
            "volume × density",
            ("definition", "daniels2018"),
            {"volume_m3": volume, "density_t_m3": density_t_m3},
            default_used=filling or not density_given,
        )


def figures_of_growth(work: Work, climate: Climate, *, default_used: bool) -> Iterator[Figure]:
    """Yield the growth potential on the first day of a work."""
    first = work.dates[0]
    yield figure(
        "growth potential",
        work.id,
        climate.growth_on(first),
        "1",
        "exp(−½ × ((t − optimum) ÷ spread)²)",
        ("gelernter_stowell2005",),
        {
            "day": first.isoformat(),
            "temperature_c": temperature_on(climate.daily, first),
            "optimum_c": climate.optimum_c,
        },
        default_used=default_used,
    )


def figures_of_recovery(
    work: Work, recoveries: Sequence[Recovery], *, default_used: bool
) -> Iterator[Figure]:
    """Yield the three promises, early and late, as days after the work on each green."""
    for recovery in recoveries:
        for quantity, span in (
            ("back in play", recovery.back_in_play),
            ("putting smoothly", recovery.putting_smoothly),
            ("fully healed", recovery.fully_healed),
        ):
            for end, day in (("early", span.early), ("late", span.late)):
                yield figure(
                    f"{quantity}, {end}",
                    work.id,
                    None if day is None else float((day - recovery.done).days),
                    "days after the work",
                    "first day on which the growth potential since the work adds up to the need",
                    ("recovery_model", "common_practice"),
                    {"done": recovery.done.isoformat(), "day": day.isoformat() if day else None},
                    green=recovery.green,
                    default_used=default_used,
                )


def figures_of_time(
    work: Work, greens: Mapping[str, Green], machines: Mapping[str, Pace]
) -> Iterator[Figure]:
    """Yield the machine's time on each green and in all, moving between greens included."""
    pace = pace_of(work, machines)
    if pace is None:
        return
    total = 0.0
    inputs = {
        "width_m": pace.width_m,
        "speed_km_h": pace.speed_km_h,
        "efficiency": pace.efficiency,
        "minutes_between_greens": pace.minutes_between_greens,
        "passes": passes(work),
    }
    formula = "area ÷ (speed × width × efficiency) × passes + minutes between greens"
    for key in work.greens:
        value = pace.minutes_between_greens + work_time.minutes_for_area(
            greens[key].area_m2, pace.speed_km_h, pace.width_m, pace.efficiency, passes(work)
        )
        total += value
        yield figure(
            "work time",
            work.id,
            value,
            "minutes",
            formula,
            ("iowa_pm696", "judgement"),
            {**inputs, "area_m2": greens[key].area_m2},
            green=key,
            default_used=work.operation.name not in machines or not greens[key].area_given,
        )
    yield figure(
        "work time",
        work.id,
        total,
        "minutes",
        f"{formula}, summed over the greens",
        ("iowa_pm696", "judgement"),
        inputs,
        default_used=work.operation.name not in machines,
    )
