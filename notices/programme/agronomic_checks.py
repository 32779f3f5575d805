"""What an agronomist would say of a programme: holes, channels, sand, thatch, records.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

from notices.agronomy import moles, sand, thatch
from notices.findings import Finding, Weight
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.channels import holes_over_channels
from notices.programme.climate import club_climate
from notices.programme.green_names import plan_greens
from notices.programme.measured import values_of
from notices.programme.model import Figure, Programme, SandOnGreen, Work
from notices.programme.thatch import through_thatch
from notices.references import REFERENCES

TOO_COLD_FOR_SAND = 0.15
"""Growth potential under which no sand may stay on the surface (judgement)."""

A_HAIR_MM = 1e-6
"""Less sand than this is the rounding of a sum."""


def soil_for_moles(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Mole channels hold in clay only; where every published limit says no, nothing is built."""
    for work in _ploughed(programme):
        path = ("works", work.plan_index, "operation")
        soil = plan.course.soil
        if soil is None:
            yield Finding(
                "soil-not-stated",
                Weight.THINK_AGAIN,
                "mole channels hold only in clay, and the plan does not say what the soil is",
                "Add course: soil: with its clay and sand",
                path,
                work=work.id,
            )
            continue
        verdicts = moles.soil_verdicts(soil.clay, soil.sand)
        met, missed = [v for v in verdicts if v.passes], [v for v in verdicts if not v.passes]
        what = f"a soil with {soil.clay:g} % clay and {soil.sand:g} % sand"
        if not met:
            yield Finding(
                "soil-unsuitable-for-moles",
                Weight.CANNOT_BUILD,
                f"{what} meets none of the published limits for mole channels, which would not "
                f"hold: {_limits(missed)}",
                "Leave mole ploughing out, or correct course: soil:",
                path,
                work=work.id,
                greens=work.greens,
                dates=work.dates,
            )
        elif missed:
            yield Finding(
                "soil-unsuitable-for-moles",
                Weight.INFORMATION,
                f"{what} meets some of the published limits for mole channels and misses others; "
                f"it meets {_limits(met)}; it misses {_limits(missed)}",
                "",
                path,
                work=work.id,
            )


def channels_without_outfall(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A channel that runs into nothing holds its water."""
    if plan.course.drains is None:
        for work in _ploughed(programme):
            yield Finding(
                "no-outfall-for-channels",
                Weight.THINK_AGAIN,
                "mole channels drain only into something, and the plan names no drain or ditch that "
                "they run into",
                "Add course: drains: in your own words, such as a tile drain behind each green",
                ("works", work.plan_index),
                work=work.id,
                greens=work.greens,
                dates=work.dates,
            )


def deep_tining_into_channels(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Few deep holes meet a channel, and none that stop short: nothing more may be promised."""
    for meeting in holes_over_channels(programme.works):
        depth, percent = meeting.holes.settings.number("depth"), meeting.percent
        share = (
            f"about {percent:.2g} % of its holes meet a channel"
            if percent
            else f"no hole meets a channel, since holes end at {depth:g} mm and the top of the "
            f"channels lies at {meeting.channel_top_mm:g} mm"
        )
        yield Finding(
            "deep-tining-into-channels",
            Weight.INFORMATION,
            f"{meeting.holes.operation.name} follows mole ploughing on "
            f"{plan_greens(programme.greens, meeting.greens)}: "
            f"{share}; the water's way is the slot of the plough and the cracks beside it",
            "",
            ("works", meeting.holes.plan_index),
            work=meeting.holes.id,
            greens=meeting.greens,
            dates=meeting.holes.dates,
        )


def surface_against_targets(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """How much of the surface the holes of a year open, beside what has been published."""
    slits = dict(_years(programme, "surface cut by slits, year "))
    for year, figure in _years(programme, "surface opened by holes, year "):
        apart = f", and slits cut {_span(slits[year], '%')} besides" if year in slits else ""
        yield Finding(
            "surface-against-targets",
            Weight.INFORMATION,
            f"in {year} the holes of this plan open {_span(figure, '%')} of the surface of the "
            f"greens worked on{apart}; published for coring are 15 to 20 % a year (Hartwiger and O’Brien 2001) and at "
            "least 10 %, ideally 20 % (Woods 2009), and since 2019 Woods names no percentage and "
            "lets measured organic matter decide: for comparison, not as a target to reach",
            "",
            ("works", _first(programme, Opening.HOLES).plan_index),
        )


def sand_against_totals(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """How much sand a year brings, beside what has been published."""
    low, high = sand.YEAR_TOTAL_KG_M2
    published = ", ".join(
        f"{from_mm:g} to {to_mm:g} mm ({REFERENCES[key].text.split(',')[0]})"
        for key, (from_mm, to_mm) in sand.YEAR_TOTALS_MM.items()
    )
    for year, figure in _years(programme, "sand in the year "):
        mass = (figure.value or 0.0) * plan.sand.density
        yield Finding(
            "sand-against-totals",
            Weight.INFORMATION,
            f"in {year} the dressings of this plan bring {_span(figure, 'mm')} of sand, on average "
            f"{mass:.1f} kg/m²; published for a whole year are {published} and {low:g} to {high:g} "
            "kg/m² (British trade press): for comparison, not as a target to reach",
            "",
            ("works", _first(programme, Opening.SAND).plan_index),
        )


def dressing_too_heavy(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A single dressing of more than about 3 kg/m² is hard to work in."""
    density, most = plan.sand.density, plan.sand.most_per_dressing
    for work, needs in _dressings(programme):
        heaviest = max(needs, key=lambda need: max(need.shares) * need.depth_mm)
        rate = sand.mass_kg_per_m2(max(heaviest.shares) * heaviest.depth_mm, density)
        if round(rate, 6) <= most:
            continue
        whole = sand.mass_kg_per_m2(heaviest.brought_mm, density)
        needed = sand.dressings_needed(whole, most)
        how = (
            f"Write sand: most_per_dressing: {most:g} kg/m2 and dressings: {needed}; the first then "
            "brings no more than that"
            if heaviest.fills
            else f"Spread it over {needed} dressings"
        )
        yield Finding(
            "dressing-too-heavy",
            Weight.THINK_AGAIN,
            f"a single dressing brings {rate:.1f} kg/m², and more than {most:g} kg/m² at a time is "
            f"hard to work in; {whole:.1f} kg/m² in all take {needed} dressings",
            how,
            ("works", work.plan_index, "settings"),
            work=work.id,
            greens=tuple(need.green for need in needs),
            dates=work.dates,
        )


def sand_on_surface(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Sand that holes do not take lies on the leaf: not too much, and none without growth."""
    density = plan.sand.density
    climate = cache(lambda: club_climate(plan).climate)  # asked for only where sand stays on top
    for work, needs in _dressings(programme):
        heaviest, coldest = 0.0, 1.0
        for need in needs:
            for dressing in range(1, len(need.shares) + 1):
                layer = need.on_surface_of(dressing)
                if layer <= A_HAIR_MM:
                    continue
                heaviest = max(heaviest, sand.mass_kg_per_m2(layer, density))
                day = max(work.days_on(need.green, dressing))
                coldest = min(coldest, climate().growth_on(day))
        cold = coldest < TOO_COLD_FOR_SAND
        if cold or round(heaviest, 6) > sand.MOST_ON_THE_SURFACE_KG_M2:
            why = (
                f"while growth potential is down to {coldest:.2f}, under {TOO_COLD_FOR_SAND:g}"
                if cold
                else f"and more than about {sand.MOST_ON_THE_SURFACE_KG_M2:g} kg/m² smothers it"
            )
            yield Finding(
                "sand-on-surface",
                Weight.THINK_AGAIN,
                f"a dressing leaves {heaviest:.1f} kg/m² on the grass beyond what the open holes "
                f"take, {why}",
                "Bring less at a time, or dress while the grass grows",
                ("works", work.plan_index, "settings"),
                work=work.id,
                greens=tuple(need.green for need in needs),
                dates=work.dates,
            )


def coring_and_thatch(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Whether the works reach through the thatch that was measured."""
    by_work: dict[str, dict[tuple[str, str], list[str]]] = {}
    low, high = thatch.USUAL_DEPTH_BELOW_MM
    for each in through_thatch(programme.works, plan):
        where = (
            f"{each.below_mm:g} mm below"
            if each.below_mm >= 0
            else f"{-each.below_mm:g} mm short of"
        )
        matter = each.measurement.organic_matter
        pores = (
            f", with {matter:g} % organic matter where pore space starts to fall at "
            f"{thatch.PORES_FALL_AT_PERCENT[0]:g} to {thatch.PORES_FALL_AT_PERCENT[1]:g} %"
            if matter is not None
            else ""
        )
        # Greens of which the same is to be said are named together.
        said = (
            f"{where} the {each.thatch_mm:g} mm of thatch measured on",
            f"on {each.measurement.date}{pores}{'' if each.passes else ', less than is usual'}",
        )
        by_work.setdefault(each.work.id, {}).setdefault(said, []).append(each.green)
    for work in programme.works:
        if work.id in by_work:
            reach = "; ".join(
                f"{before} {plan_greens(programme.greens, greens)} {after}"
                for (before, after), greens in by_work[work.id].items()
            )
            does = "takes material out" if work.operation.removes_core else "only opens the turf"
            yield Finding(
                "coring-and-thatch",
                Weight.INFORMATION,
                f"{work.operation.name} {work.settings.number('depth'):g} mm deep {does} and ends "
                f"{reach}; usual is {low:g} to {high:g} mm below",
                "",
                ("works", work.plan_index),
                work=work.id,
            )


def nothing_measured(_programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A measurement without a value that can be set beside others."""
    for index, measurement in enumerate(plan.measurements):
        if not any(values_of(measurement)):
            yield Finding(
                "nothing-measured",
                Weight.INFORMATION,
                f"the measurement of {measurement.date} has no value with a number",
                "Add thatch_depth, organic_matter, speed, or firmness with its unit, such as 105 g",
                ("measurements", index),
            )


def records_not_used(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A record of an earlier season that says nothing of how fast greens come back."""
    for index, reason in programme.unused_records:
        yield Finding(
            "record-not-used",
            Weight.INFORMATION,
            f"this record does not change the estimate: {reason}",
            "",
            ("observed", index),
        )


def _ploughed(programme: Programme) -> list[Work]:
    return [work for work in programme.works if work.operation.opening is Opening.CHANNELS]


def _limits(verdicts: Sequence[moles.SoilVerdict]) -> str:
    return "; ".join(f"{v.limit_text} ({REFERENCES[v.source_key].text})" for v in verdicts)


def _dressings(programme: Programme) -> Iterator[tuple[Work, list[SandOnGreen]]]:
    for work in programme.works:
        if needs := [need for need in programme.sand if need.work == work.id]:
            yield work, needs


def _years(programme: Programme, begins: str) -> list[tuple[str, Figure]]:
    return [
        (figure.quantity.removeprefix(begins), figure)
        for figure in programme.figures
        if figure.quantity.startswith(begins) and figure.green == "all" and figure.value
    ]


def _span(figure: Figure, unit: str) -> str:
    """Say a mean over the greens, and from what to what they differ."""
    low, high = (figure.inputs[name] for name in ("lowest", "highest"))
    mean = f"about {figure.value:.1f} {unit}"
    if isinstance(low, float) and isinstance(high, float) and f"{low:.1f}" != f"{high:.1f}":
        return f"{mean} ({low:.1f} to {high:.1f} {unit} by green)"
    return mean


def _first(programme: Programme, *openings: Opening) -> Work:
    return next(work for work in programme.works if work.operation.opening in openings)


AGRONOMIC_CHECKS = (
    soil_for_moles,
    channels_without_outfall,
    deep_tining_into_channels,
    surface_against_targets,
    sand_against_totals,
    dressing_too_heavy,
    sand_on_surface,
    coring_and_thatch,
    nothing_measured,
    records_not_used,
)
