"""The pieces of a chart as SVG: texts, boxes, lines, textures, and the sheet that holds them.

Textures are drawn line by line, not filled with a ``<pattern>``: so they look the same in a page,
in print and in a picture, and a page with several drawings needs no names for them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal
from xml.sax.saxutils import escape

from notices.drawings.model import Drawing
from notices.drawings.palette import INK, LINE, PAPER, QUIET

Anchor = Literal["start", "middle", "end"]
Point = tuple[float, float]


def number(value: float) -> str:
    """Write a coordinate to the hundredth."""
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def text(
    x: float,
    y: float,
    words: str,
    size: float,
    *,
    anchor: Anchor = "start",
    bold: bool = False,
    fill: str = INK,
) -> str:
    """Letters on a line."""
    weight = ' font-weight="bold"' if bold else ""
    held = f' text-anchor="{anchor}"' if anchor != "start" else ""
    return (
        f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}"{weight}{held} '
        f'fill="{fill}">{escape(words)}</text>'
    )


def box(
    x: float,
    y: float,
    width: float,
    height: float,
    *,
    fill: str = "none",
    stroke: str = "",
    round_by: float = 0.0,
    thick: float = 1.0,
    dashes: str = "",
) -> str:
    """A rectangle."""
    rounded = f' rx="{number(round_by)}"' if round_by else ""
    return (
        f'<rect x="{number(x)}" y="{number(y)}" width="{number(max(width, 0.0))}" '
        f'height="{number(max(height, 0.0))}"{rounded} '
        f'fill="{fill}"{_stroke(stroke, thick, dashes)}/>'
    )


def line(
    x1: float,
    y1: float,
    x2: float,
    y2: float,
    *,
    stroke: str = LINE,
    thick: float = 1.0,
    dashes: str = "",
) -> str:
    """A straight line."""
    return (
        f'<line x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"'
        f"{_stroke(stroke, thick, dashes)}/>"
    )


def shape(
    points: Sequence[Point],
    *,
    fill: str = "none",
    stroke: str = "",
    thick: float = 1.0,
    closed: bool = True,
) -> str:
    """Points joined by straight lines."""
    way = "L".join(f"{number(x)} {number(y)}" for x, y in points)
    return f'<path d="M{way}{"Z" if closed else ""}" fill="{fill}"{_stroke(stroke, thick, "")}/>'


def disc(
    x: float, y: float, radius: float, *, fill: str, stroke: str = "", thick: float = 1.5
) -> str:
    """A circle."""
    return (
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}" '
        f'fill="{fill}"{_stroke(stroke, thick, "")}/>'
    )


def pill(
    place: tuple[float, float, float, float], fill: str, stroke: str, *, left: bool, right: bool
) -> str:
    """A bar with round ends; an end that goes on beyond the sheet is left open."""
    x, y, width, height = place
    reach = min(height / 2, width / 2)
    begin, end = x + reach * left, x + width - reach * right
    across, back = number(end), number(begin)
    bow = f"A{number(reach)} {number(height / 2)} 0 0 1 "
    way = f"M{back} {number(y)}H{across}"
    way += f"{bow}{across} {number(y + height)}" if right else f"M{across} {number(y + height)}"
    way += f"H{back}"
    if left:
        way += f"{bow}{back} {number(y)}"
    ground = "" if right else box(begin, y, end - begin, height, fill=fill)
    return f'{ground}<path d="{way}" fill="{fill}"{_stroke(stroke, 0.8, "")}/>'


def hatching(
    x: float, y: float, width: float, height: float, *, step: float = 5.0, stroke: str = QUIET
) -> str:
    """Slanting lines that fill a rectangle."""
    way = []
    reach = step / 2
    while reach < width + height:
        left, bottom = x + max(0.0, reach - height), y + min(reach, height)
        right, top = x + min(reach, width), y + max(0.0, reach - width)
        way.append(f"M{number(left)} {number(bottom)}L{number(right)} {number(top)}")
        reach += step
    return f'<path d="{"".join(way)}" fill="none"{_stroke(stroke, 1.1, "")}/>'


def flag(x: float, foot: float, *, filled: bool, colour: str) -> str:
    """A flag on its stick, 14 high; filled for a competition, else hollow."""
    return line(x, foot - 14, x, foot, stroke=colour, thick=1.4) + shape(
        [(x, foot - 13.5), (x + 9, foot - 10.5), (x, foot - 7.5)],
        fill=colour if filled else PAPER,
        stroke=colour,
        thick=1.2,
    )


def diamond(x: float, y: float, reach: float, *, fill: str, stroke: str) -> str:
    """A square on its corner."""
    return shape(
        [(x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y)],
        fill=fill,
        stroke=stroke,
        thick=1.5,
    )


def drawing(name: str, title: str, description: str, size: Point, parts: Iterable[str]) -> Drawing:
    """Put the pieces on a sheet."""
    width, height = size
    content = "".join(parts)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}" '
        f'width="{number(width)}" height="{number(height)}" role="img" '
        f'font-family="Notices Sans"><title>{escape(title)}</title>{content}</svg>'
    )
    return Drawing(name, title, description, svg, width, height)


def _stroke(colour: str, thick: float, dashes: str) -> str:
    if not colour:
        return ""
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f' stroke="{colour}" stroke-width="{number(thick)}"{dashed}'
