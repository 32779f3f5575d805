"""The ground of a section: its layers, and what works open in it, all to one scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from notices.drawings import lettering, textures
from notices.drawings.labels import DETAIL
from notices.drawings.palette import INK, PAPER
from notices.drawings.places import Place
from notices.drawings.svg import Point, Rect, attributes, circle, number, path, rect, text
from notices.operations import Opening
from notices.programme.model import Profile
from notices.programme.openings import Cut
from notices.wording.below_ground import SUBSOIL

BROKEN, STRIP = 12.0, 54.0
"""Height of the broken edge, and of the ground below it that is not to scale."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Where things stand in a section."""

    before: Rect
    after: Rect
    scale: float
    """Units of the drawing to a millimetre."""

    @property
    def surface(self) -> float:
        """Where the surface is."""
        return self.after.y

    def down(self, mm: float) -> float:
        """Return where a depth is."""
        return self.surface + mm * self.scale

    def across(self, mm: float) -> float:
        """Return where a distance from the left edge is, after the work."""
        return self.after.x + mm * self.scale


@dataclass(frozen=True, slots=True)
class Placed:
    """Openings of one work, and where they fall in the panel after the work."""

    cut: Cut
    places: tuple[Place, ...]


def ground(frame: Frame, profile: Profile, placed: Sequence[Placed], *, sanded: bool) -> str:
    """Draw the layers and the turf of both panels, and then the openings in the second."""
    root_zone = _root_zone(profile, placed)
    bare = [
        (
            frame.across(place.middle - each.cut.width / 2),
            frame.across(place.middle + each.cut.width / 2),
        )
        for each in placed
        if each.cut.kind is not Opening.TRENCHES  # their turf is put back
        for place in each.places
    ]
    parts = []
    for panel in (frame.before, frame.after):
        gaps = bare if panel is frame.after else []
        parts.append(_layers(panel, frame.scale, profile, root_zone))
        parts.append(textures.grass(panel.x, panel.right, panel.y, gaps))
    if sanded:
        parts.append(textures.grains(Rect(frame.after.x, frame.surface - 4, frame.after.width, 4)))
    parts += [_opened(frame, each) for each in placed]
    parts.append(_layer_names(frame, profile, root_zone))
    return "".join(parts)


def _root_zone(profile: Profile, placed: Sequence[Placed]) -> float | None:
    """Return to which depth the root zone is drawn: channels lie in the clay below it [mm]."""
    if profile.root_zone_mm is None:
        return None
    tops = [each.cut.depth - each.cut.channel for each in placed if each.cut.channel]
    return max(profile.thatch_mm + 10, min([profile.root_zone_mm, *tops]))


def _layers(panel: Rect, scale: float, profile: Profile, root_zone: float | None) -> str:
    thatch = min(profile.thatch_mm * scale, panel.height)
    roots = min(root_zone * scale if root_zone is not None else thatch, panel.height)
    parts = [textures.thatch(Rect(panel.x, panel.y, panel.width, thatch))]
    if roots > thatch:
        middle = Rect(panel.x, panel.y + thatch, panel.width, roots - thatch)
        parts.append(textures.root_zone(middle))
    if panel.height > roots:
        low = Rect(panel.x, panel.y + roots, panel.width, panel.height - roots)
        parts.append(textures.subsoil(low, profile.subsoil))
    edge = rect(panel, fill="none", stroke=INK, stroke_width=0.8, class_="panel")
    return "".join(parts) + edge


def _layer_names(frame: Frame, profile: Profile, root_zone: float | None) -> str:
    """Write the names of the layers into the panel before the work, where they are high enough."""
    panel = frame.before
    layers = [("Thatch", profile.thatch_mm)]
    if root_zone is not None:
        layers.append(("Root zone", root_zone))
    layers.append((SUBSOIL[profile.subsoil].capitalize(), panel.height / frame.scale))
    parts, top = [], 0.0
    for name, mm in layers:
        low = min(mm * frame.scale, panel.height)
        if low - top >= 26:
            wide = lettering.width_of(name, DETAIL) + 8
            middle = panel.y + (top + low) / 2
            box = Rect(panel.x + (panel.width - wide) / 2, middle - 10, wide, 20)
            parts.append(text(name, (box.x + 4, middle + 5), DETAIL, box=box, on=PAPER))
        top = low
    return "".join(parts)


def _opened(frame: Frame, placed: Placed) -> str:
    """Draw the openings of one work; the group says which work that is."""
    cut = placed.cut
    content = "".join(_opening(frame, cut, place) for place in placed.places)
    return f"<g{attributes(class_=f'cut {cut.kind.value}', data_work=cut.work.id)}>{content}</g>"


def _opening(frame: Frame, cut: Cut, place: Place) -> str:
    x, wide = frame.across(place.middle), cut.width * frame.scale
    line: dict[str, Any] = {"stroke": INK, "stroke_width": min(1.0, wide / 5)}
    if cut.channel:
        high = (cut.depth - cut.channel / 2) * frame.scale
        slot = rect(
            Rect(x - wide / 2, frame.surface, wide, high), fill=PAPER, class_="slot", **line
        )
        middle, radius = (x, frame.down(cut.depth)), cut.channel / 2 * frame.scale
        ring = {"stroke": INK, "stroke_width": min(1.4, radius / 3), "class_": "channel"}
        return slot + circle(middle, radius, fill=PAPER, **ring)
    hole = Rect(x - wide / 2, frame.surface, wide, cut.depth * frame.scale)
    drawn = rect(hole, fill=PAPER, class_="opening", data_pass=place.turn, **line)
    if cut.kind is Opening.TRENCHES:
        return drawn + _stone_and_pipe(frame, cut, hole)
    if cut.filled:
        inside = Rect(hole.x, hole.y, wide, cut.filled * frame.scale)
        drawn += textures.sand(inside, class_="filled", **line)
    return drawn


def _stone_and_pipe(frame: Frame, cut: Cut, hole: Rect) -> str:
    turf = min(100.0, cut.depth / 3) * frame.scale
    radius = pipe_radius(frame, cut)
    return (
        textures.root_zone(Rect(hole.x, hole.y, hole.width, turf))
        + textures.stone(Rect(hole.x, hole.y + turf, hole.width, hole.height - turf))
        + rect(hole, fill="none", stroke=INK, stroke_width=1.0)
        + textures.pipe((hole.x + hole.width / 2, hole.bottom - radius - 1), radius)
    )


def pipe_radius(frame: Frame, cut: Cut) -> float:
    """Return how large the pipe in a trench is drawn; the plan does not say how large it is."""
    return min(0.3 * cut.width, 0.1 * cut.depth) * frame.scale


def below_the_break(frame: Frame, profile: Profile, drain: Point) -> str:
    """Draw a drain below a broken edge: how deep it lies is not known."""
    y = frame.after.bottom
    parts = []
    for panel in (frame.before, frame.after):
        strip = Rect(panel.x, y + BROKEN, panel.width, STRIP)
        gap = Rect(panel.x - 1, y - 1, panel.width + 2, BROKEN + 1)
        parts.append(textures.subsoil(strip, profile.subsoil))
        parts.append(rect(gap, fill=PAPER))
        waves = [_wave(panel.x, panel.right, y), _wave(panel.x, panel.right, y + BROKEN)]
        parts.append(path("".join(waves), fill="none", stroke=INK, stroke_width=0.9))
    parts.append(textures.pipe(drain, 10, class_="drain"))
    return "".join(parts)


def _wave(left: float, right: float, y: float) -> str:
    count = round((right - left) / 14)
    step = (right - left) / count
    first = f"M{number(left)} {number(y)}q{number(step / 2)} -5 {number(step)} 0"
    return first + f"t{number(step)} 0" * (count - 1)
