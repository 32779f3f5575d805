"""Pieces of a chart as SVG: boxes, lines, hatching, marks with their key, and the drawing itself.

They build on `notices.drawings.svg`. Hatching is drawn line by line and not with a ``<pattern>``,
so that it looks the same on a web page, in print and in a PNG, and several drawings on one page
need no ids for patterns.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from notices.drawings import svg
from notices.drawings.lettering import width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import LINE, LOAM, PAPER, QUIET
from notices.drawings.svg import Point, Rect, number, text

KEY_SIZE, KEY_LINE = 12.0, 19.0
"""Font size and line height of a key."""


def box(
    x: float,
    y: float,
    width: float,
    height: float,
    *,
    fill: str = "none",
    stroke: str = "",
    thick: float = 1.0,
    dashes: str = "",
) -> str:
    """Draw a rectangle."""
    return svg.rect(
        Rect(x, y, max(width, 0.0), max(height, 0.0)),
        fill=fill,
        **_stroke(stroke, thick, dashes),
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
    """Draw a straight line."""
    return svg.path(svg.polyline([(x1, y1), (x2, y2)]), **_stroke(stroke, thick, dashes))


def shape(
    points: Sequence[Point],
    *,
    fill: str = "none",
    stroke: str = "",
    thick: float = 1.0,
    closed: bool = True,
) -> str:
    """Draw a polygon, or an open line through the points."""
    way = svg.polyline(points) + ("Z" if closed else "")
    return svg.path(way, fill=fill, **_stroke(stroke, thick))


def pill(
    place: tuple[float, float, float, float], fill: str, stroke: str, *, left: bool, right: bool
) -> str:
    """Draw a bar with round ends; an end that goes on beyond the drawing is square and open."""
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
    return ground + svg.path(way, fill=fill, **_stroke(stroke, 0.8))


def hatching(
    x: float, y: float, width: float, height: float, *, step: float = 5.0, stroke: str = QUIET
) -> str:
    """Draw slanting lines that fill a rectangle."""
    lines = []
    reach = step / 2
    while reach < width + height:
        foot = (x + max(0.0, reach - height), y + min(reach, height))
        head = (x + min(reach, width), y + max(0.0, reach - width))
        lines.append((foot, head))
        reach += step
    return svg.path(svg.strokes(lines), fill="none", **_stroke(stroke, 1.1))


def flag(x: float, foot: float, *, filled: bool, colour: str) -> str:
    """Draw a flag on its stick, 14 units high, filled or hollow."""
    return line(x, foot - 14, x, foot, stroke=colour, thick=1.4) + shape(
        [(x, foot - 13.5), (x + 9, foot - 10.5), (x, foot - 7.5)],
        fill=colour if filled else PAPER,
        stroke=colour,
        thick=1.2,
    )


def fixture_flag(x: float, foot: float, kind: object) -> str:
    """Draw a flag for a fixture: filled and brown for a competition, else hollow and grey."""
    filled = kind == "competition"
    return flag(x, foot, filled=filled, colour=LOAM if filled else QUIET)


def explained_flags(kinds: Collection[object], fixture: str) -> Iterator[Explained]:
    """Yield key entries for those flags that are drawn, with the club's word for a fixture."""
    for kind, said in (("competition", "competition"), ("", f"another {fixture.lower()}")):
        if any((each == "competition") is (kind == "competition") for each in kinds):
            yield Explained(fixture_flag(1, 15, kind), 12.0, said)


def diamond(x: float, y: float, reach: float, *, fill: str, stroke: str) -> str:
    """Draw a square on its corner."""
    return shape(
        [(x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y)],
        fill=fill,
        stroke=stroke,
        thick=1.5,
    )


@dataclass(frozen=True, slots=True)
class Explained:
    """A mark with its meaning, for the key below a chart."""

    marks: str
    """SVG of the mark, from 0 to `wide` across and from 0 to 18 down."""
    wide: float
    words: str


def key(entries: Iterable[Explained], y: float, right: float) -> tuple[list[str], float]:
    """Return the parts of a key, with its lines broken at ``right``, and the y at which it ends."""
    parts: list[str] = []
    x = 0.0
    for entry in entries:
        begin = entry.wide + 6 if entry.wide else 0.0
        whole = begin + width_of(entry.words, KEY_SIZE)
        if x and x + whole > right:
            x, y = 0.0, y + KEY_LINE
        if entry.marks:
            parts.append(f'<g transform="translate({number(x)} {number(y)})">{entry.marks}</g>')
        parts.append(text(entry.words, (x + begin, y + 13), KEY_SIZE, fill=QUIET))
        x += whole + 16
    return parts, y + KEY_LINE


def drawing(
    name: str,
    title: str,
    description: str,
    size: Point,
    parts: Iterable[str],
    caption: str = "",
) -> Drawing:
    """Return a drawing made of SVG parts; the caption is printed below it."""
    width, height = size
    drawn = svg.document(width, height, title, "".join(parts), description=description)
    return Drawing(name, title, description, drawn, width, height, caption)


def _stroke(colour: str, thick: float, dashes: str = "") -> dict[str, object]:
    if not colour:
        return {}
    return {"stroke": colour, "stroke_width": float(thick), "stroke_dasharray": dashes or None}
