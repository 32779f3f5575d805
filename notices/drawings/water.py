"""The way of the water in a section: a dashed line from the rain to the edge or a drain."""

from __future__ import annotations

from collections.abc import Sequence

from notices.drawings.ground import Frame, Placed, pipe_radius
from notices.drawings.palette import PAPER, WATER
from notices.drawings.svg import Point, Rect, arrow, number, path, polyline
from notices.operations import Opening

Route = tuple[Point, ...]

_ABOVE = 22.0
"""Height above the surface at which it begins."""


def ways(frame: Frame, placed: Sequence[Placed], drain: Point | None) -> str:
    """Draw the way of rain from the surface through openings, and on to a drain if there is one."""
    routes = _routes(frame, placed, drain)
    lines = [_water(route, tip=place == 0) for place, route in enumerate(routes)]
    return "".join(lines) + "".join(drop(route[0]) for route in routes)


def _routes(frame: Frame, placed: Sequence[Placed], drain: Point | None) -> list[Route]:
    """Return the ways of the water, of which the first is drawn with an arrow head."""
    upright = [each for each in placed if each.cut.kind in (Opening.HOLES, Opening.SLITS)]
    gathers = _gathering(frame, placed)
    rest: Route = (drain,) if drain else ()
    if not upright:
        return [_from_above(frame, gathers[0], *rest)] if gathers else []
    deepest = upright[0]
    low = frame.down(deepest.cut.depth)
    goal = gathers[0] if gathers else drain or (frame.after.x + frame.after.width / 2, low)
    slot = any(each.cut.channel for each in placed)
    beside = 12 if slot else 0  # a line of its own, beside the one down the slot
    middles = [frame.across(place.middle) for place in deepest.places]
    x = min(middles, key=lambda middle: (abs(middle - goal[0]) < beside, abs(middle - goal[0])))
    if gathers or drain:
        routes = [_from_above(frame, (x, low), *gathers, *rest)]
    else:
        routes = [_from_above(frame, (x, min(low + 34, frame.after.bottom - 4)))]
    return [*routes, _from_above(frame, gathers[0])] if slot else routes


def _gathering(frame: Frame, placed: Sequence[Placed]) -> Route:
    """Return the point where water gathers, in a pipe or else a channel; empty without either."""
    for each in placed:
        if each.cut.kind is Opening.TRENCHES:
            low = frame.down(each.cut.depth) - 2 * pipe_radius(frame, each.cut) - 2
            return ((frame.across(each.places[0].middle), low),)
    return tuple(
        (frame.across(each.places[0].middle), frame.down(each.cut.depth))
        for each in placed
        if each.cut.channel
    )[:1]


def _from_above(frame: Frame, first: Point, *then: Point) -> Route:
    return ((first[0], frame.surface - _ABOVE), first, *then)


def _water(route: Route, *, tip: bool) -> str:
    """Draw a dashed line on a light one, to be visible on every layer."""
    width, joined = 2.2, {"stroke_linejoin": "round", "fill": "none"}
    below = path(polyline(route), stroke=PAPER, stroke_width=width + 2.2, **joined)
    if tip:
        return below + arrow(route, 11, WATER, stroke_width=width, stroke_dasharray=DASHES)
    dashed = path(
        polyline(route), stroke=WATER, stroke_width=width, stroke_dasharray=DASHES, **joined
    )
    return below + dashed


DASHES = "6 3.5"


def key(at: Point) -> str:
    """Draw a short piece of the line, for a key."""
    x, y = at
    return arrow([(x, y), (x + 34, y)], 10, WATER, stroke_width=2.2, stroke_dasharray=DASHES)


def standing(panel: Rect) -> str:
    """Draw rain that stays on top of a panel."""
    left, right = panel.x + 12, panel.right - 12
    top = f"Q{number(panel.x + panel.width / 2)} {number(panel.y - 14)} {number(right)} {number(panel.y)}"
    puddle = path(f"M{number(left)} {number(panel.y)}{top}Z", fill=WATER)
    return puddle + "".join(
        drop((panel.x + panel.width * part, panel.y - _ABOVE)) for part in (0.25, 0.5, 0.75)
    )


def drop(foot: Point) -> str:
    """Draw a drop of rain with its foot at a point."""
    x, y = foot
    d = f"M{number(x)} {number(y - 12)}c2 4 4 6 4 9a4 4 0 0 1 -8 0c0 -3 2 -5 4 -9Z"
    return path(d, fill=WATER)
