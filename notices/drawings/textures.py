"""Textures of turf and soil: each layer is told by its strokes, so that black and white is enough.

A texture is one path, clipped by arithmetic. Where a stroke falls comes from a sequence that fills
an area evenly; there is no chance in it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from notices.drawings.palette import (
    GRAIN,
    INK,
    LOAM,
    PAPER,
    QUIET,
    ROOT_ZONE,
    SAND,
    SUBSOIL,
    THATCH,
    TURF,
)
from notices.drawings.svg import Point, Rect, circle, dots, path, rect, strokes
from notices.programme.model import Subsoil


def scattered(area: Rect, each: float, edge: float = 1.0) -> Iterator[Point]:
    """Yield points that fill an area evenly, about one for so much of it, none at its very edge.

    One stands somewhere in each square of a grid.
    """
    wide, high = area.width - 2 * edge, area.height - 2 * edge
    if wide <= 0 or high <= 0:
        return
    columns, rows = (max(1, round(length / math.sqrt(each))) for length in (wide, high))
    for place in range(columns * rows):
        row, column = divmod(place, columns)
        yield (
            area.x + edge + wide * (column + _part(column, row, 0)) / columns,
            area.y + edge + high * (row + _part(column, row, 1)) / rows,
        )


def _part(column: int, row: int, salt: int) -> float:
    """Return a part of 1 that looks like chance and is the same everywhere."""
    mixed = (column * 73856093) ^ (row * 19349663) ^ (salt * 83492791)
    mixed = (mixed ^ (mixed >> 13)) * 1274126177 % 4294967296
    return ((mixed >> 12) % 1000) / 1000


def thatch(area: Rect) -> str:
    """Draw a felt of dead growth: short strokes that lie."""
    points = scattered(area, 38, 1.5)
    felt = strokes(
        ((max(area.x, x - 3), y), (min(area.right, x + 3), y + (0.8 if x % 2 < 1 else -0.8)))
        for x, y in points
    )
    return rect(area, fill=THATCH) + path(felt, stroke=LOAM, stroke_width=0.8, fill="none")


def root_zone(area: Rect) -> str:
    """Draw crumbs of soil: few dots."""
    grains = dots(scattered(area, 75, 2))
    return rect(area, fill=ROOT_ZONE) + path(
        grains, stroke=QUIET, stroke_width=1.5, stroke_linecap="round"
    )


def roots(area: Rect) -> str:
    """Draw new turf: fine roots that go down, close together."""
    threads = strokes(
        ((x, y), (x + (1.2 if y % 2 < 1 else -1.2), min(area.bottom, y + 8)))
        for x, y in scattered(area, 30, 1.5)
    )
    return rect(area, fill=THATCH) + path(threads, stroke=LOAM, stroke_width=0.9, fill="none")


def subsoil(area: Rect, kind: Subsoil) -> str:
    """Draw what the green stands on: clay hatched, sand dotted, other soil in short strokes."""
    match kind:
        case Subsoil.CLAY:
            return rect(area, fill=SUBSOIL) + path(
                strokes(_hatch(area, 8)), stroke=LOAM, stroke_width=0.6, fill="none"
            )
        case Subsoil.SAND:
            return sand(area, each=42)
        case _:
            ticks = strokes(((x, y), (x + 2, y + 2)) for x, y in scattered(area, 60, 2.5))
            return rect(area, fill=SUBSOIL) + path(
                ticks, stroke=LOAM, stroke_width=0.8, fill="none"
            )


def sand(area: Rect, each: float = 16, **named: object) -> str:
    """Draw sand: many dots on a light ground."""
    size = min(1.4, area.width / 2.5, area.height / 2.5)
    return rect(area, fill=SAND, **named) + path(
        dots(scattered(area, each, size * 0.7)),
        stroke=GRAIN,
        stroke_width=float(size),
        stroke_linecap="round",
    )


def stone(area: Rect) -> str:
    """Draw drain stone: round pebbles in rows."""
    radius = min(3.6, area.width / 5)
    found: list[str] = []
    y, row = area.y + radius + 0.5, 0
    while y + radius <= area.bottom:
        x = area.x + radius + (radius if row % 2 else 0.3)
        while x + radius <= area.right:
            found.append(_ring((x, y), 0.85 * radius))
            x += 2 * radius
        y += 1.75 * radius
        row += 1
    pebbles = path("".join(found), fill=PAPER, stroke=QUIET, stroke_width=0.7)
    return rect(area, fill=SAND) + pebbles


def _ring(centre: Point, radius: float) -> str:
    """Return the path of a circle."""
    x, y = centre
    half = f"a{radius:.2f} {radius:.2f} 0 1 0 "
    return f"M{x - radius:.1f} {y:.1f}{half}{2 * radius:.2f} 0{half}{-2 * radius:.2f} 0"


def grass(left: float, right: float, surface: float, bare: Sequence[tuple[float, float]]) -> str:
    """Draw blades of grass along a surface, but not over openings."""
    blades = []
    x, place = left + 1.5, 1
    while x < right - 1:
        if not any(low - 0.5 < x < high + 0.5 for low, high in bare):
            lean = 2.4 * _part(place, 0, 0) - 1.2
            blades.append(((x, surface), (x + lean, surface - 5.5 - 3.5 * _part(place, 0, 1))))
        x, place = x + 2.6, place + 1
    return path(strokes(blades), stroke=TURF, stroke_width=1.1, stroke_linecap="round", fill="none")


def mown_grass(area: Rect, bare: Sequence[tuple[float, float]], **named: object) -> str:
    """Draw blades of grass to scale, all mown to the upper edge of an area."""
    blades = []
    apart = min(5.0, max(2.6, area.height / 6))
    x, place = area.x + 2, 1
    while x < area.right - 2:
        lean = (0.3 * _part(place, 0, 0) - 0.15) * area.height
        tip = min(max(x + lean, area.x + 1), area.right - 1)
        if not any(low - 1 < x < high + 1 or low - 1 < tip < high + 1 for low, high in bare):
            blades.append(((x, area.bottom), (tip, area.y)))
        x, place = x + apart, place + 1
    return path(
        strokes(blades),
        stroke=TURF,
        stroke_width=float(min(1.8, apart / 2.4)),
        fill="none",
        **named,
    )


def pipe(centre: Point, radius: float, **named: object) -> str:
    """Draw a drain pipe, seen from its end."""
    return circle(centre, radius, fill=PAPER, stroke=INK, stroke_width=2, **named)


def _hatch(area: Rect, apart: float) -> Iterable[tuple[Point, Point]]:
    """Yield slanting lines across an area, from lower left to upper right."""
    # The lines are those on which x + y is a whole multiple of their distance, so that the hatch
    # of two areas side by side meets.
    total = (int((area.x + area.y) / apart) + 1) * apart
    while total < area.right + area.bottom:
        low = max(area.x, total - area.bottom)
        high = min(area.right, total - area.y)
        if high > low:
            yield (low, total - low), (high, total - high)
        total += apart


def grains(area: Rect, each: float = 5, scale: float = 1.0) -> str:
    """Draw grains of sand among blades of grass, about one for so much of the area in true size."""
    return path(
        dots(scattered(area, each * scale**2, 0.8)),
        stroke=GRAIN,
        stroke_width=2.0 * scale,
        stroke_linecap="round",
    )


def sand_disc(centre: Point, radius: float, **named: object) -> str:
    """Draw a hole full of sand, seen from above."""
    x, y = centre
    square = Rect(x - radius, y - radius, 2 * radius, 2 * radius)
    inside = (p for p in scattered(square, 28) if math.dist(p, centre) < radius - 1.2)
    edge = max(0.9, min(1.5, radius / 3))  # the smallest is still a dot
    return circle(centre, radius, fill=SAND, stroke=INK, stroke_width=edge, **named) + path(
        dots(inside), stroke=GRAIN, stroke_width=1.5, stroke_linecap="round"
    )
