"""What a work does to the surface: holes, slits, channels, trenches, new turf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from notices.agronomy import holes, moles, slits
from notices.agronomy.loads import TRAILER_M3, WHEELBARROW_M3, whole_loads
from notices.operations import Opening
from notices.programme.figures.quantity import Quantity, by_area, in_mm
from notices.programme.model import Figure, Green, Input, Work
from notices.programme.sand import core_diameter_mm, diameter_setting, hole_diameter_mm, passes

HOLES_PER_M2 = Quantity(
    "holes per m2",
    "1/m2",
    "1,000,000 ÷ ({along_mm} × {across_mm}) × {passes}",
    ("definition", "woods2009"),
)
HOLES = Quantity(
    "holes", "holes", f"{HOLES_PER_M2.recipe} × {{area_m2}}", HOLES_PER_M2.source, "hole"
)
HOLES_DISTURBED = Quantity(
    "surface disturbed",
    "percent",
    "100 × (π × {diameter_mm}² ÷ 4) ÷ ({along_mm} × {across_mm}) × {passes}",
    ("definition", "woods2009"),
)
CORES_REMOVED = Quantity(
    "material removed",
    "m3",
    "(π × {core_diameter_mm}² ÷ 4) ÷ ({along_mm} × {across_mm}) × {depth_mm} ÷ 1000 × {passes} "
    "× {area_m2}",
    ("definition", "woods2021"),
)
MASS_OF_CORES = Quantity(
    "mass of material removed",
    "t",
    f"{CORES_REMOVED.recipe} × {{bulk_density_t_m3}}",
    ("definition", "woods2021"),
)
BARROWS = Quantity(
    "barrows of material removed",
    "wheelbarrows",
    f"{{volume_m3}} ÷ {WHEELBARROW_M3:g} m³ of a wheelbarrow, rounded up; "
    "volume as it lay in the ground",
    ("definition", "common_practice"),
    "wheelbarrow",
)
TRAILERS = Quantity(
    "trailers of material removed",
    "trailer loads",
    f"{{volume_m3}} ÷ {TRAILER_M3:g} m³ of a trailer, rounded up; volume as it lay in the ground",
    ("definition", "common_practice"),
    "trailer load",
)
SLITS_DISTURBED = Quantity(
    "surface disturbed",
    "percent",
    "100 × {blade_width_mm} ÷ {blade_spacing_mm} × {passes}",
    ("definition", "ervin_nichols"),
)
SLIT_LENGTH = Quantity(
    "slit length", "m", "{area_m2} ÷ ({blade_spacing_mm} ÷ 1000) × {passes}", ("definition",)
)
SLITS_REMOVED = Quantity(
    "material removed",
    "m3",
    "{blade_width_mm} ÷ {blade_spacing_mm} × {depth_mm} ÷ 1000 × {passes} × {area_m2}",
    ("definition",),
)
CHANNEL_LENGTH = Quantity("channel length", "m", "{area_m2} ÷ {spacing_m}", ("definition",))
TRENCH_LENGTH = Quantity("trench length", "m", "{area_m2} ÷ {spacing_m}", ("definition",))
TRENCHES_DISTURBED = Quantity(
    "surface disturbed",
    "percent",
    "100 × {width_m} ÷ {spacing_m}, of the area drained",
    ("definition",),
)
TRENCHES_REMOVED = Quantity(
    "material removed", "m3", "{width_m} ÷ {spacing_m} × {depth_m} × {area_m2}", ("definition",)
)
TURF_LAID = Quantity("turf laid", "m2", "{area_m2}", ("definition",))


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
                (_spacing(spacing),),
                default_used=work.settings.rests_on_default("spacing"),
            )
        case Opening.TRENCHES:
            yield from _trenches(work, greens)
        case Opening.BARE:
            whole = work.settings.values.get("area") is None
            yield from by_area(TURF_LAID, work, greens, 1.0, (), default_used=whole)
        case _:
            return


def _passes_given(work: Work) -> tuple[str, ...]:
    """Name the passes among the settings of a figure, where the work has them."""
    return ("passes",) if "passes" in work.settings.values else ()


def _holes(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    along, across = work.settings.pair("spacing")
    diameter, count = hole_diameter_mm(work), passes(work)
    pattern = (*_apart(along, across), Input("passes", count))
    each = holes.holes_per_m2(along, across) * count
    assumed = work.settings.rests_on_default("spacing", *_passes_given(work))
    yield HOLES_PER_M2.of(work.id, each, pattern, default_used=assumed)
    yield from by_area(HOLES, work, greens, each, pattern, default_used=assumed)
    yield HOLES_DISTURBED.of(
        work.id,
        holes.surface_percent(diameter, along, across, count),
        (in_mm("diameter", diameter), *pattern),
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
    inputs = (
        in_mm("core diameter", core),
        in_mm("depth", depth),
        *_apart(along, across),
        Input("passes", count),
    )
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
        (
            *inputs,
            Input(
                "bulk_density_t_m3",
                holes.BULK_DENSITY_OF_CORES_T_M3,
                "dry bulk density of the root zone",
                "t/m3",
            ),
        ),
        default_used=True,  # nobody has weighed these greens
    )


def _loads(removed: Sequence[Figure], greens: Mapping[str, Green]) -> Iterator[Figure]:
    """Yield what is to be carried away in barrows and in trailers, by green and in all."""
    for quantity, load in ((BARROWS, WHEELBARROW_M3), (TRAILERS, TRAILER_M3)):
        for figure in removed:
            yield quantity.of(
                figure.work,
                float(whole_loads(figure.value or 0.0, load)),
                (
                    Input("volume_m3", figure.value, "volume removed", "m3"),
                    Input("load_m3", load, "load", "m3"),
                ),
                green=greens.get(figure.green),
                default_used=True,  # the plan does not say what the club's barrow holds
            )


def _slits(work: Work, greens: Mapping[str, Green]) -> Iterator[Figure]:
    width, apart = work.settings.number("blade_width"), work.settings.number("blade_spacing")
    depth, count = work.settings.number("depth"), passes(work)
    rests = work.settings.rests_on_default
    spaced = (in_mm("blade spacing", apart), Input("passes", count))
    inputs = (in_mm("blade width", width), *spaced)
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
        spaced,
        default_used=rests("blade_spacing", "passes"),
    )
    if work.operation.removes_core:
        removed = list(
            by_area(
                SLITS_REMOVED,
                work,
                greens,
                slits.volume_l_per_m2(width, depth, apart, count) / 1000,
                (*inputs, in_mm("depth", depth)),
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
    wide = Input("width_m", width, "width", "m")
    yield TRENCHES_DISTURBED.of(
        work.id,
        100 * width / apart,
        (wide, _spacing(apart)),
        default_used=rests("width", "spacing"),
    )
    yield from by_area(
        TRENCH_LENGTH,
        work,
        greens,
        1 / apart,
        (_spacing(apart),),
        default_used=whole or rests("spacing"),
    )
    yield from by_area(
        TRENCHES_REMOVED,
        work,
        greens,
        width / apart * depth,
        (wide, _spacing(apart), Input("depth_m", depth, "depth", "m")),
        default_used=whole or rests("width", "spacing", "depth"),
    )


def _apart(along: float, across: float) -> tuple[Input, Input]:
    return (
        Input("along_mm", along, "spacing along", "mm"),
        Input("across_mm", across, "spacing across", "mm"),
    )


def _spacing(metres: float) -> Input:
    return Input("spacing_m", metres, "spacing", "m")
