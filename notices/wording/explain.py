"""One figure as a person would work it out by hand, in plain text."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from notices.programme.figure_names import find_figure
from notices.programme.model import Figure, Input, Programme
from notices.programme.slugs import ALL
from notices.references import REFERENCES
from notices.wording.club_units import in_inches

WIDTH = 88

WRITTEN = {
    "1": "",
    "percent": "%",
    "m2": "m²",
    "m3": "m³",
    "1/m2": "per m²",
    "L/m2": "L/m²",
    "kg/m2": "kg/m²",
    "t/m3": "t/m³",
}
"""Units that are written otherwise than figures have them."""


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


def _lines(programme: Programme, figure: Figure) -> Iterator[str]:
    result = _result(programme, figure)
    yield f"{_capital(figure.quantity)}: {result}"
    yield f"  {_scope(programme, figure)}"
    yield ""
    yield from _part("How", figure.formula)
    put_in = _put_in(figure)
    if put_in != figure.formula:
        inches = programme.club.units == "imperial"
        yield from _part(
            f"Put in{', in the metric units of the formula' if inches else ''}", put_in
        )
    yield "With"
    for given in figure.worked_from:
        yield from textwrap.wrap(
            f"{given.words}: {_in_both(programme, given)}",
            WIDTH,
            initial_indent="  ",
            subsequent_indent="    ",
            break_on_hyphens=False,
        )
    yield from _part("Result", result)
    if figure.value is not None:
        yield from _part("Unrounded", f"{figure.value!r} {_written(figure.unit)}".rstrip())
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
    unit = _written((figure.value == 1 and figure.unit_of_one) or figure.unit)
    said = f"{_rounded(figure.value)} {unit}".rstrip() + until
    own = in_inches(figure.value, unit, digits=3) if programme.club.units == "imperial" else ""
    return f"{own} ({said})" if own else said


def _written(unit: str) -> str:
    return WRITTEN.get(unit, unit)


def _rounded(value: float) -> str:
    """Write three figures, or all of a whole number."""
    if value == int(value):
        return f"{int(value):,}"
    if abs(value) >= 100:
        return f"{value:,.0f}"
    return f"{value:.3g}" if abs(value) >= 0.001 else f"{value:.2e}"


def _measured(given: Input) -> str:
    if given.value is None:
        return "none"
    if isinstance(given.value, str):
        return f"{given.value} {_written(given.unit)}".rstrip()
    return f"{given.value:,.10g} {_written(given.unit)}".rstrip().replace("-", "−")


def _in_both(programme: Programme, given: Input) -> str:
    """Return an input as it is put in, before it what it is in the inches of a club that has them."""
    measured = _measured(given)
    if programme.club.units != "imperial" or given.value is None:
        return measured
    unit = _written(given.unit)
    numbers = given.value.split(", ") if isinstance(given.value, str) else [given.value]
    try:
        own = [in_inches(float(one), unit, apart=given.is_difference) for one in numbers]
    except ValueError:
        return measured  # words
    if not all(own):
        return measured
    said = own[0].partition(" ")[2]
    return f"{', '.join(one.partition(' ')[0] for one in own)} {said} ({measured})"


def _put_in(figure: Figure) -> str:
    """Return the formula with numbers for all inputs that stand in it, or the parts of a sum."""
    if figure.summed:
        return " + ".join(map(_measured, figure.worked_from)).replace("+ −", "− ")
    said = {
        given.name: given.words if isinstance(given.value, str | None) else _measured(given)
        for given in figure.worked_from
    }
    for name, number in said.items():
        if f"{{{name}}}²" in figure.recipe and " " in number:
            said[name] = f"({number})"  # the unit is squared too
    return figure.recipe.format_map(said)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
