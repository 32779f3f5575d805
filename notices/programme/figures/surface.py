"""What a work does to the surface: holes, slits, channels, trenches, new turf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from notices.agronomy import holes, moles, slits
from notices.agronomy.loads import TRAILER_M3, WHEELBARROW_M3, whole_loads
from notices.operations import Opening
from notices.programme.figures.quantity import Quantity, by_area
from notices.programme.model import Figure, Green, Work
from notices.programme.sand import core_diameter_mm, diameter_setting, hole_diameter_mm, passes

HOLES_PER_M2 = Quantity(
    "holes per m2",
    "1/m2",
    "1,000,000 ÷ (spacing along × spacing across) × passes",
    ("definition", "woods2009"),
)
HOLES = Quantity("holes", "holes", f"{HOLES_PER_M2.formula} × area", HOLES_PER_M2.source)
HOLES_DISTURBED = Quantity(
    "surface disturbed",
    "percent",
    "100 × (π × diameter² ÷ 4) ÷ (spacing along × spacing across) × passes",
    ("definition", "woods2009"),
)
CORES_REMOVED = Quantity(
    "material removed",
    "m3",
    "(π × core diameter² ÷ 4) ÷ (spacing along × spacing across) × depth ÷ 1000 × passes × area",
    ("definition", "woods2021"),
)
MASS_OF_CORES = Quantity(
    "mass of material removed",
    "t",
    f"{CORES_REMOVED.formula} × dry bulk density of the root zone",
    ("definition", "woods2021"),
)
BARROWS = Quantity(
    "barrows of material removed",
    "wheelbarrows",
    "volume removed ÷ 0.08 m³ of a wheelbarrow, rounded up; volume as it lay in the ground",
    ("definition", "common_practice"),
)
TRAILERS = Quantity(
    "trailers of material removed",
    "trailer loads",
    "volume removed ÷ 1.5 m³ of a trailer, rounded up; volume as it lay in the ground",
    ("definition", "common_practice"),
)
SLITS_DISTURBED = Quantity(
    "surface disturbed",
    "percent",
    "100 × blade width ÷ blade spacing × passes",
    ("definition", "ervin_nichols"),
)
SLIT_LENGTH = Quantity(
    "slit length", "m", "area ÷ (blade spacing ÷ 1000) × passes", ("definition",)
)
SLITS_REMOVED = Quantity(
    "material removed",
    "m3",
    "blade width ÷ blade spacing × depth ÷ 1000 × passes × area",
    ("definition",),
)
CHANNEL_LENGTH = Quantity("channel length", "m", "area ÷ spacing", ("definition",))
TRENCH_LENGTH = Quantity("trench length", "m", "area ÷ spacing", ("definition",))
TRENCHES_DISTURBED = Quantity(
    "surface disturbed", "percent", "100 × width ÷ spacing, of the area drained", ("definition",)
)
TRENCHES_REMOVED = Quantity(
    "material removed", "m3", "width ÷ spacing × depth × area", ("definition",)
)
TURF_LAID = Quantity("turf laid", "m2", "area", ("definition",))


def figures_of_surface(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    """Yield what a work does to the surface."""
    match work.operation.opening:
        case Opening.HOLES:
            yield from _holes(work, greens)
            if work.operation.removes_core:
                yield from _cores(work, greens)
        case Opening.SLITS:
            yield from _slits(work, greens)
        case Opening.CHANNELS:
            spacing = work.settings.number("spacing") / 1000
            yield from by_area(
                CHANNEL_LENGTH,
                work,
                greens,
                moles.channel_length_m(1.0, spacing),
                {"spacing_m": spacing},
                default_used=work.settings.rests_on_default("spacing"),
            )
        case Opening.TRENCHES:
            yield from _trenches(work, greens)
        case Opening.BARE:
            whole = work.settings.values.get("area") is None
            yield from by_area(TURF_LAID, work, greens, 1.0, {}, default_used=whole)
        case _:
            return


def _passes_given(work: Work) -> tuple[str, ...]:
    """Name the passes among the settings of a figure, where the work has them."""
    return ("passes",) if "passes" in work.settings.values else ()


def _holes(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    along, across = work.settings.pair("spacing")
    diameter, count = hole_diameter_mm(work), passes(work)
    pattern = {"along_mm": along, "across_mm": across, "passes": count}
    each = holes.holes_per_m2(along, across) * count
    assumed = work.settings.rests_on_default("spacing", *_passes_given(work))
    yield HOLES_PER_M2.of(work.id, each, pattern, default_used=assumed)
    yield from by_area(HOLES, work, greens, each, pattern, default_used=assumed)
    yield HOLES_DISTURBED.of(
        work.id,
        holes.surface_percent(diameter, along, across, count),
        {"diameter_mm": diameter, **pattern},
        default_used=assumed or work.settings.rests_on_default(diameter_setting(work)),
    )


def _cores(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    """Yield what comes out of the holes.

    Without an inside diameter the core is taken to be as wide as the hole, which is more
    than comes out, and says so by resting on a default.
    """
    along, across = work.settings.pair("spacing")
    depth, count = work.settings.number("depth"), passes(work)
    core = core_diameter_mm(work)
    # A drill has no inside: all of its hole comes out.
    width = "inside_diameter" if "inside_diameter" in work.settings.values else "hole_diameter"
    volume = holes.volume_l_per_m2(core, depth, along, across, count)
    inputs = {
        "core_diameter_mm": core,
        "depth_mm": depth,
        "along_mm": along,
        "across_mm": across,
        "passes": count,
    }
    assumed = work.settings.rests_on_default(width, "spacing", "depth", *_passes_given(work))
    removed = list(
        by_area(CORES_REMOVED, work, greens, volume / 1000, inputs, default_used=assumed)
    )
    yield from removed
    yield from _loads(removed, greens)
    yield from by_area(
        MASS_OF_CORES,
        work,
        greens,
        holes.core_mass_kg_per_m2(volume) / 1000,
        {**inputs, "bulk_density_t_m3": holes.BULK_DENSITY_OF_CORES_T_M3},
        default_used=True,  # nobody has weighed these greens
    )


def _loads(removed: Sequence[Figure], greens: Mapping[str, Green]) -> Iterator[Figure]:
    """Yield what is to be carried away in barrows and in trailers, by green and in all."""
    for quantity, load in ((BARROWS, WHEELBARROW_M3), (TRAILERS, TRAILER_M3)):
        for figure in removed:
            yield quantity.of(
                figure.work,
                float(whole_loads(figure.value or 0.0, load)),
                {"volume_m3": figure.value, "load_m3": load},
                green=greens.get(figure.green),
                default_used=True,  # the plan does not say what the club's barrow holds
            )


def _slits(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    width, apart = work.settings.number("blade_width"), work.settings.number("blade_spacing")
    depth, count = work.settings.number("depth"), passes(work)
    rests = work.settings.rests_on_default
    inputs = {"blade_width_mm": width, "blade_spacing_mm": apart, "passes": count}
    yield SLITS_DISTURBED.of(
        work.id,
        slits.surface_percent(width, apart, count),
        inputs,
        default_used=rests("blade_width", "blade_spacing", "passes"),
    )
    yield from by_area(
        SLIT_LENGTH,
        work,
        greens,
        slits.length_m(1.0, apart, count),
        {"blade_spacing_mm": apart, "passes": count},
        default_used=rests("blade_spacing", "passes"),
    )
    if work.operation.removes_core:
        removed = list(
            by_area(
                SLITS_REMOVED,
                work,
                greens,
                slits.volume_l_per_m2(width, depth, apart, count) / 1000,
                {**inputs, "depth_mm": depth},
                default_used=rests("blade_width", "blade_spacing", "depth", "passes"),
            )
        )
        yield from removed
        yield from _loads(removed, greens)


def _trenches(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    width, apart, depth = (
        work.settings.number(name) / 1000 for name in ("width", "spacing", "depth")
    )
    rests = work.settings.rests_on_default
    whole = work.settings.values.get("area") is None  # the whole green is taken to be drained
    yield TRENCHES_DISTURBED.of(
        work.id,
        100 * width / apart,
        {"width_m": width, "spacing_m": apart},
        default_used=rests("width", "spacing"),
    )
    yield from by_area(
        TRENCH_LENGTH,
        work,
        greens,
        1 / apart,
        {"spacing_m": apart},
        default_used=whole or rests("spacing"),
    )
    yield from by_area(
        TRENCHES_REMOVED,
        work,
        greens,
        width / apart * depth,
        {"width_m": width, "spacing_m": apart, "depth_m": depth},
        default_used=whole or rests("width", "spacing", "depth"),
    )
