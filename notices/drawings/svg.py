"""The shapes that drawings are made of, as SVG that browsers, resvg and WeasyPrint draw alike.

Only what all three know: no pattern, clip path, marker or filter. Textures are single paths of
many strokes, arrow heads are drawn.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal
from xml.sax.saxutils import escape, quoteattr

from notices.drawings.palette import INK, PAPER

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]
"""Which part of a line of text stands at its point."""

LINE = 1.2
"""Height of a line of text in parts of its size."""


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright box."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.y + self.height


def number(value: float) -> str:
    """Write a number to a thousandth, without zeros that say nothing."""
    written = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def attributes(**named: object) -> str:
    """Write attributes; an underscore stands for a hyphen, None for no attribute."""
    return "".join(
        f" {name.rstrip('_').replace('_', '-')}={quoteattr(_plain(value))}"
        for name, value in named.items()
        if value is not None
    )


def _plain(value: object) -> str:
    return number(value) if isinstance(value, float) else str(value)


def rect(box: Rect, **named: object) -> str:
    """Draw a box."""
    place = attributes(x=box.x, y=box.y, width=box.width, height=box.height)
    return f"<rect{place}{attributes(**named)}/>"


def circle(centre: Point, radius: float, **named: object) -> str:
    """Draw a circle."""
    place = attributes(cx=float(centre[0]), cy=float(centre[1]), r=float(radius))
    return f"<circle{place}{attributes(**named)}/>"


def path(d: str, **named: object) -> str:
    """Draw a path."""
    return f'<path d="{d}"{attributes(**named)}/>'


def polyline(points: Sequence[Point]) -> str:
    """Return the path through points."""
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in points)


def strokes(lines: Iterable[tuple[Point, Point]]) -> str:
    """Return one path of many separate strokes, to a tenth: it is for textures and fine lines."""
    return "".join(
        f"M{_tenth(x)} {_tenth(y)}l{_tenth(u - x)} {_tenth(v - y)}" for (x, y), (u, v) in lines
    )


def dots(points: Iterable[Point]) -> str:
    """Return one path of many dots; to be drawn with round ends."""
    return "".join(f"M{_tenth(x)} {_tenth(y)}h.01" for x, y in points)


def _tenth(value: float) -> str:
    written = f"{value:.1f}".removesuffix(".0")
    return "0" if written == "-0" else written


def head(tip: Point, angle: float, size: float) -> str:
    """Return the path of an arrow head; the angle is its way, 0 to the right and clockwise."""
    sides = [angle - 0.42, angle + 0.42]
    left, right = (
        (tip[0] - size * math.cos(side), tip[1] - size * math.sin(side)) for side in sides
    )
    return f"{polyline([left, tip, right])}Z"


def measure(start: Point, end: Point) -> str:
    """Draw a line with a head at each end, or with none where it is too short for two."""
    line = path(polyline([start, end]), stroke=INK, stroke_width=1.0, fill="none", class_="measure")
    if math.dist(start, end) < 16:
        return line
    turn = math.atan2(end[1] - start[1], end[0] - start[0])
    return line + path(head(end, turn, 7) + head(start, turn + math.pi, 7), fill=INK)


def arrow(points: Sequence[Point], size: float, colour: str, **named: object) -> str:
    """Draw a line that ends in an arrow head."""
    (x0, y0), (x1, y1) = points[-2:]
    angle = math.atan2(y1 - y0, x1 - x0)
    short = (x1 - 0.8 * size * math.cos(angle), y1 - 0.8 * size * math.sin(angle))
    line = path(polyline([*points[:-1], short]), fill="none", stroke=colour, **named)
    return line + path(head((x1, y1), angle, size), fill=colour)


def text(
    words: str,
    at: Point,
    size: float,
    *,
    bold: bool = False,
    anchor: Anchor = "start",
    fill: str = INK,
    box: Rect | None = None,
    on: str | None = None,
) -> str:
    """Write one line; a box is what it must stay within, on the colour that it is laid on."""
    below = rect(box, fill=on, rx=2) if box is not None and on is not None else ""
    held = (
        f"{number(box.x)} {number(box.y)} {number(box.width)} {number(box.height)}" if box else None
    )
    named = attributes(
        x=at[0],
        y=at[1],
        font_size=size,
        font_weight="bold" if bold else None,
        text_anchor=None if anchor == "start" else anchor,
        fill=fill,
        data_box=held,
    )
    return f"{below}<text{named}>{escape(words)}</text>"


def lines(
    words: Sequence[str], at: Point, size: float, *, bold: bool = False, fill: str = INK
) -> str:
    """Write lines one below the other, the first with its foot at a point."""
    x, y = at
    return "".join(
        text(line, (x, y + place * LINE * size), size, bold=bold, fill=fill)
        for place, line in enumerate(words)
    )


def document(
    width: float,
    height: float,
    title: str,
    content: str,
    *,
    description: str = "",
    size: str = "",
    ground: str | None = PAPER,
    **named: object,
) -> str:
    """Wrap shapes as a drawing.

    Parameters
    ----------
    width, height
        Of the view box, in CSS pixels.
    title, content
        What it is, and the shapes.
    description
        What it shows; left out where the title says it all.
    size
        Stands for width and height where those are no pixels.
    ground
        Colour behind the shapes; None where the drawing stands on whatever it is laid on.
    **named
        Further attributes of the whole.
    """
    told = f"<desc>{escape(description)}</desc>" if description else ""
    given = size or attributes(width=float(width), height=float(height))
    sheet = rect(Rect(0, 0, width, height), fill=ground) if ground else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}"'
        f'{given} role="img" font-family="Notices Sans"{attributes(**named)}>'
        f"<title>{escape(title)}</title>{told}{sheet}{content}</svg>"
    )
