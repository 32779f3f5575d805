"""One figure as a person would work it out by hand, in plain text."""

from __future__ import annotations

import datetime as dt
import difflib
import re
import textwrap
from collections.abc import Iterator, Mapping, Sequence

from notices.errors import UnknownFigure
from notices.programme.club_units import in_inches
from notices.programme.model import Figure, Programme
from notices.programme.slugs import ALL
from notices.references import REFERENCES

WIDTH = 88
MOST_NEAR = 6
"""So many other figures are offered where a name fits none or several."""

UNITS = {
    "kg_per_m2": "kg/m²",
    "mm_per_day": "mm/day",
    "l_per_m2": "L/m²",
    "kg_m2": "kg/m²",
    "t_m3": "t/m³",
    "km_h": "km/h",
    "percent": "%",
    "mm": "mm",
    "m2": "m²",
    "m3": "m³",
    "m": "m",
    "t": "t",
    "c": "°C",
    "kg": "kg",
    "days": "days",
    "years": "years",
}
"""The unit that an input's name ends with, as it is written; longer ones first."""

UNITS_OF_FIGURES = {"percent": "%", "m2": "m²", "m3": "m³", "1/m2": "per m²", "kg/m2": "kg/m²"}

PHRASES: Mapping[str, tuple[str, ...]] = {
    "along_mm": ("spacing along",),
    "across_mm": ("spacing across",),
    "lorry_t": ("load of a lorry",),
    "mass_t": ("mass of sand", "mass"),
    "share": ("share of the fill",),
    "open_m3": ("volume of the open holes of all greens",),
    "open_l_per_m2": (
        "volume of the open holes per area",
        "volume of the holes still open per area",
    ),
    "brought_kg_m2": ("what all dressings bring",),
    "most_kg_m2": ("the most of one dressing",),
    "sideways_growth_mm_per_day": ("sideways growth of an edge",),
    "opening_mm": ("opening",),
    "volume_m3": ("volume removed", "material removed", "volume of sand"),
    "m3_per_person_hour": ("volume that one clears in an hour",),
    "m3_per_load": ("volume of a load",),
    "bulk_density_t_m3": ("dry bulk density of the root zone",),
    "dressing_mm": ("depth of a dressing",),
    "dressings": ("number of dressings",),
    "depth_mm": ("depth on the surface",),
    "step": ("number of the step",),
}
"""What formulas call an input otherwise than by its own name."""

ONE_OF = {
    "days": "day",
    "dressings": "dressing",
    "holes": "hole",
    "lorry loads": "lorry load",
    "minutes": "minute",
    "trailer loads": "trailer load",
    "wheelbarrows": "wheelbarrow",
    "years": "year",
}
"""Units of figures, and one of them."""

DIFFERENCES = {"spread_c"}
"""Inputs in degrees that are no temperatures."""

NOT_PUT_IN = {
    *("growth days needed", "greens", "years", "seasons on record", "loads", "reserve delay"),
    *("raised", "usual", "height"),
}
"""Inputs that stand in a formula as words, and are not reckoned with there."""


def explain(programme: Programme, name: str) -> str:
    """Return how one figure of a programme was worked out.

    Parameters
    ----------
    programme
        A programme.
    name
        Identity of the figure as in programme.json, or an ending or some words of it that no
        other figure has.

    Raises
    ------
    UnknownFigure
        Where no figure has it, or several do.
    """
    figure = find_figure(programme.figures, name)
    return "\n".join(_lines(programme, figure))


def find_figure(figures: Sequence[Figure], name: str) -> Figure:
    """Return the one figure that a name means.

    Raises
    ------
    UnknownFigure
        Where no figure has it, or several do; with those that come near.
    """
    asked = name.strip().casefold()
    words = re.findall(r"[a-z0-9]+", asked)
    for fits in (
        [figure for figure in figures if figure.id == asked],
        [figure for figure in figures if asked and figure.id.endswith(f"/{asked.lstrip('/')}")],
        [figure for figure in figures if words and _has(figure, words)],
    ):
        if len(fits) == 1:
            return fits[0]
        if fits:
            raise UnknownFigure(f"{len(fits)} figures have this name:\n{_listed(fits)}")
    # One green stands for all of them: nine like figures would help nobody.
    of_a_kind = {figure.id.rpartition("/")[0]: figure.id for figure in reversed(figures)}
    near = difflib.get_close_matches(asked, of_a_kind.values(), n=MOST_NEAR, cutoff=0)
    by_id = {figure.id: figure for figure in figures}
    raise UnknownFigure(
        f'there is no figure "{name}". Near it are:\n{_listed([by_id[each] for each in near])}'
    )


def _has(figure: Figure, words: Sequence[str]) -> bool:
    own = set(re.findall(r"[a-z0-9]+", figure.id))
    return own.issuperset(words)


def _listed(figures: Sequence[Figure]) -> str:
    # Figures over all greens first: they are what is asked for more often than not.
    first = sorted(figures, key=lambda figure: figure.green != ALL)[:MOST_NEAR]
    return "\n".join(f"  {figure.id}" for figure in first) + (
        f"\n  and {len(figures) - MOST_NEAR} more" if len(figures) > MOST_NEAR else ""
    )


def _lines(programme: Programme, figure: Figure) -> Iterator[str]:
    result = _result(programme, figure)
    yield f"{_capital(figure.quantity)}: {result}"
    yield f"  {_scope(programme, figure)}"
    yield ""
    yield from _part("How", f"{figure.formula}")
    put_in = _put_in(programme, figure)
    if put_in != figure.formula:
        inches = programme.club.units == "imperial"
        yield from _part(
            f"Put in{', in the metric units of the formula' if inches else ''}", put_in
        )
    yield "With"
    for name, value in figure.inputs.items():
        yield from textwrap.wrap(
            f"{_name(programme, figure, name)}: {_in_both(programme, figure, name, value)}",
            WIDTH,
            initial_indent="  ",
            subsequent_indent="    ",
            break_on_hyphens=False,
        )
    yield from _part("Result", result)
    if figure.value is not None:
        yield from _part("Unrounded", f"{figure.value!r} {_unit(figure)}".rstrip())
    yield "Source"
    for key in figure.source:
        reference = REFERENCES[key]
        yield from textwrap.wrap(
            f"{reference.text} [{reference.status}]",
            WIDTH,
            initial_indent="  ",
            subsequent_indent="    ",
        )
    yield from _part(
        "Default",
        "something here rests on a default and not on what the plan says"
        if figure.default_used
        else "none: all of it rests on what the plan says",
    )
    yield f"Id\n  {figure.id}"


def _part(title: str, text: str) -> Iterator[str]:
    yield title
    yield from textwrap.wrap(
        text, WIDTH, initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False
    )


def _scope(programme: Programme, figure: Figure) -> str:
    where = "all greens" if figure.green == ALL else f"green {figure.green}"
    work = next((work for work in programme.works if work.id == figure.work), None)
    if work is None:
        return f"the whole plan, {where}"
    first, last = work.dates[0], work.dates[-1]
    days = f"{first}" if first == last else f"{first} to {last}"
    return f"{work.operation.name} ({work.id}), {days}, {where}"


def _result(programme: Programme, figure: Figure) -> str:
    if figure.value is None:
        return "not within the two years looked at"
    day = figure.inputs.get("day")
    until = f", that is {day}" if figure.unit.startswith("days after") and day else ""
    unit = _unit(figure)
    for many, one in ONE_OF.items() if figure.value == 1 else ():
        unit = re.sub(rf"^{many}\b", one, unit)
    said = f"{_rounded(figure.value)} {unit}".rstrip() + until
    own = in_inches(figure.value, unit, digits=3) if programme.club.units == "imperial" else ""
    return f"{own} ({said})" if own else said


def _unit(figure: Figure) -> str:
    return "" if figure.unit == "1" else UNITS_OF_FIGURES.get(figure.unit, figure.unit)


def _rounded(value: float) -> str:
    """Write three figures, or all of a whole number."""
    if value == int(value):
        return f"{int(value):,}"
    if abs(value) >= 100:
        return f"{value:,.0f}"
    return f"{value:.3g}" if abs(value) >= 0.001 else f"{value:.2e}"


def _split(name: str) -> tuple[str, str]:
    """Part the name of an input from its unit, which is at its end or stands first in a rate."""
    if name.startswith("m3_per_"):
        return name.removeprefix("m3_per_"), "m³"
    for ending, unit in UNITS.items():
        if name.endswith(f"_{ending}"):
            return name.removesuffix(f"_{ending}"), unit
    return name, ""


def _is_of_a_work(programme: Programme, name: str) -> bool:
    """Whether an input is what a work adds, in the unit of the figure itself."""
    return name.rsplit(" ", maxsplit=1)[-1] in {work.id for work in programme.works}


def _name(programme: Programme, figure: Figure, name: str) -> str:
    """Return what the formula of a figure calls an input, else the input's own name."""
    if "/" in name or _is_of_a_work(programme, name):
        return name
    said = (phrase for phrase in PHRASES.get(name, ()) if phrase in figure.formula)
    return next(said, _split(name)[0].replace("_", " "))


def _unit_of(programme: Programme, figure: Figure, name: str) -> str:
    if _is_of_a_work(programme, name):
        return _unit(figure)
    return "" if "/" in name else _split(name)[1]


def _measured(programme: Programme, figure: Figure, name: str, value: float | str | None) -> str:
    if value is None:
        return "none"
    unit = _unit_of(programme, figure, name)
    if isinstance(value, str):
        return value if _is_date(value) else f"{value} {unit}".rstrip()
    return f"{value:,.10g} {unit}".rstrip().replace("-", "−")


def _in_both(programme: Programme, figure: Figure, name: str, value: float | str | None) -> str:
    """Return an input as it is put in, before it what it is in the inches of a club that has them."""
    measured = _measured(programme, figure, name, value)
    if programme.club.units != "imperial" or value is None or _is_date(str(value)):
        return measured
    unit = _unit_of(programme, figure, name)
    numbers = value.split(", ") if isinstance(value, str) else [value]
    try:
        own = [in_inches(float(one), unit, apart=name in DIFFERENCES) for one in numbers]
    except ValueError:
        return measured  # words
    if not all(own):
        return measured
    said = own[0].partition(" ")[2]
    return f"{', '.join(one.partition(' ')[0] for one in own)} {said} ({measured})"


def _is_date(value: str) -> bool:
    try:
        dt.date.fromisoformat(value)
    except ValueError:
        return False
    return True


def _put_in(programme: Programme, figure: Figure) -> str:
    """Return the formula with each of its words that is an input replaced by the number."""
    numbers = {
        _name(programme, figure, name): _measured(programme, figure, name, value)
        for name, value in figure.inputs.items()
        if isinstance(value, float | int)
    }
    if numbers and all(_is_of_a_work(programme, name) for name in figure.inputs):
        return " + ".join(numbers.values()).replace("+ −", "− ")
    longest = sorted(numbers.keys() - NOT_PUT_IN, key=lambda words: (-len(words), words))
    if not longest:
        return figure.formula
    either = "|".join(re.escape(words) for words in longest)
    pattern = rf"(?<![a-z])(?<!its )({either})(?![a-z])(²?)"

    def number(found: re.Match[str]) -> str:
        value = numbers[found[1]]
        return f"({value})²" if found[2] else value

    return re.sub(pattern, number, figure.formula)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
