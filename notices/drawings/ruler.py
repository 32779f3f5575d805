"""A ruler beside a section, in the units of the club."""

from __future__ import annotations

from fractions import Fraction

from notices.drawings.lettering import width_of
from notices.drawings.palette import INK
from notices.drawings.svg import path, strokes, text
from notices.units import MM_PER_INCH

SIZE = 14
"""Font size of its figures."""
_LEAST = 30.0
"""Least distance between two figures."""
_MOST = 40
"""Most marks; no picture is high enough for more."""

_STEPS_MM = (*(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0), *(200.0, 500.0, 1000.0, 2000.0, 5000.0))
_STEPS_INCHES = tuple(Fraction(n) for n in ("1/8", "1/4", "1/2", 1, 2, 4, 8, 12, 24, 48, 96))
_FRACTIONS = {"1/2": "½", "1/4": "¼", "3/4": "¾"}


def ruler(
    x: float, surface: float, height: float, scale: float, units: str, above: float = 0.0
) -> str:
    """Draw a ruler down from the surface, with its line at ``x`` and its figures left of it.

    It may reach ``above`` the surface, too. ``scale`` is units of the drawing to a millimetre.
    """
    unit, marks = _marks(height, scale, units, above)
    lines = [((x, surface - above), (x, surface + height))]
    lines += [((x - 5, surface + mm * scale), (x, surface + mm * scale)) for mm, _ in marks]
    figures = [
        text(label, (x - 8, surface + mm * scale + 5), SIZE, anchor="end") for mm, label in marks
    ]
    # A long word begins at the edge of the picture instead of ending at the ruler.
    left = max(2.0, x + 2 - width_of(unit, SIZE))
    name = text(unit, (left, surface - above - 12), SIZE)
    return path(strokes(lines), stroke=INK, stroke_width=1.2, fill="none") + "".join(figures) + name


def _marks(
    height: float, scale: float, units: str, above: float
) -> tuple[str, list[tuple[float, str]]]:
    """Return the unit, and the depth of each mark [mm] with its figure."""
    if units == "imperial":
        inches = next(step for step in _STEPS_INCHES if float(step) * MM_PER_INCH * scale >= _LEAST)
        apart, unit = float(inches) * MM_PER_INCH, "inches"
        figures = [_in_inches(inches * n) for n in range(_MOST)]
    else:
        apart = next(step for step in _STEPS_MM if step * scale >= _LEAST)
        unit, part = ("mm", 1) if apart < 10 else ("cm", 10)
        figures = [f"{apart * n / part:g}" for n in range(_MOST)]
    down = [(apart * n, figure) for n, figure in enumerate(figures)]
    up = [(-mm, figure) for mm, figure in down[1:] if mm * scale <= above]
    return unit, [*reversed(up), *(each for each in down if each[0] * scale <= height - 4)]


def _in_inches(inches: Fraction) -> str:
    whole, rest = divmod(inches, 1)
    fraction = _FRACTIONS.get(str(rest), str(rest)) if rest else ""
    if whole and rest:
        return f"{whole}{fraction}" if fraction in _FRACTIONS.values() else f"{whole} {fraction}"
    return fraction if rest else str(whole)
