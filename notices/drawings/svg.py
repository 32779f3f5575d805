"""Basic shapes as SVG that browsers, resvg and WeasyPrint draw alike.

Only features that all three support are used: no pattern, clip path, marker or filter. Textures
are single paths of many strokes, and arrow heads are drawn.
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
"""Part of a line of text that is placed at its point."""

LINE = 1.2
"""Line height of text, as a multiple of its font size."""


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Lower edge."""
        return self.y + self.height


def number(value: float) -> str:
    """Write a number to three decimals, without trailing zeros."""
    written = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def attributes(**named: object) -> str:
    """Write attributes; underscores in names become hyphens, and None leaves an attribute out."""
    return "".join(
        f" {name.rstrip('_').replace('_', '-')}={quoteattr(_plain(value))}"
        for name, value in named.items()
        if value is not None
    )


def _plain(value: object) -> str:
    return number(value) if isinstance(value, float) else str(value)


def rect(box: Rect, **named: object) -> str:
    """Draw a rectangle."""
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
    """Return the path data of a line through points."""
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in points)


def strokes(lines: Iterable[tuple[Point, Point]]) -> str:
    """Return the path data of many separate strokes, to a tenth, for textures and fine lines."""
    return "".join(
        f"M{_tenth(x)} {_tenth(y)}l{_tenth(u - x)} {_tenth(v - y)}" for (x, y), (u, v) in lines
    )


def dots(points: Iterable[Point]) -> str:
    """Return the path data of many dots, to be drawn with round line caps."""
    return "".join(f"M{_tenth(x)} {_tenth(y)}h.01" for x, y in points)


def _tenth(value: float) -> str:
    written = f"{value:.1f}".removesuffix(".0")
    return "0" if written == "-0" else written


def head(tip: Point, angle: float, size: float) -> str:
    """Return the path data of an arrow head; the angle is clockwise, with 0 to the right."""
    sides = [angle - 0.42, angle + 0.42]
    left, right = (
        (tip[0] - size * math.cos(side), tip[1] - size * math.sin(side)) for side in sides
    )
    return f"{polyline([left, tip, right])}Z"


def measure(start: Point, end: Point) -> str:
    """Draw a line with an arrow head at each end, or with none if it is too short for two."""
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
    """Write one line of text, which must stay within ``box``, on a rectangle of colour ``on``."""
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
    """Write lines of text one below the other, with the baseline of the first at a point."""
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
    """Wrap shapes in an SVG document.

    Parameters
    ----------
    width, height
        Size of the view box [CSS pixels].
    title, content
        Title, and the shapes.
    description
        Description for people who cannot see it; empty if the title says it all.
    size
        Attributes in place of width and height, if those are not in pixels.
    ground
        Colour behind the shapes; None for a transparent drawing.
    **named
        Further attributes of the root.
    """
    told = f"<desc>{escape(description)}</desc>" if description else ""
    given = size or attributes(width=float(width), height=float(height))
    sheet = rect(Rect(0, 0, width, height), fill=ground) if ground else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}"'
        f'{given} role="img" font-family="Notices Sans"{attributes(**named)}>'
        f"<title>{escape(title)}</title>{told}{sheet}{content}</svg>"
    )
