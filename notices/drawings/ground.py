"""The ground of a section: its layers and the openings in it, all to one scale."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from notices.drawings import lettering, textures
from notices.drawings.labels import DETAIL
from notices.drawings.palette import INK, PAPER
from notices.drawings.places import Place
from notices.drawings.svg import Point, Rect, attributes, circle, number, path, rect, text
from notices.operations import Opening
from notices.programme.model import Profile
from notices.programme.openings import Cut, Sand
from notices.wording.below_ground import SUBSOIL

LARGEST = 12.0
"""Largest scale of a section; a larger one would show no more [units/mm]."""
MOST = 60
"""Most openings of a kind that are drawn; only lines too close to tell apart exceed it."""
FEW = frozenset({Opening.CHANNELS, Opening.TRENCHES})
"""Openings so far apart that a section of several works shows only one of each."""
BROKEN, STRIP = 12.0, 54.0
"""Heights of the broken edge, and of the ground below it, which is not to scale."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Geometry of a section: its two panels and its scale."""

    before: Rect
    after: Rect
    scale: float
    """Units of the drawing to a millimetre."""
    left: float = 0.0
    """Distance from the left edge of the ground to that of the panel after the work [mm]."""
    near: bool = False
    """Whether it is a close-up of another section."""

    @property
    def surface(self) -> float:
        """Vertical position of the surface."""
        return self.after.y

    def down(self, mm: float) -> float:
        """Return the vertical position of a depth."""
        return self.surface + mm * self.scale

    def across(self, mm: float) -> float:
        """Return the x, in the panel after the work, of a distance from the left edge."""
        return self.after.x + (mm - self.left) * self.scale


@dataclass(frozen=True, slots=True)
class Placed:
    """Openings of one work, with their places in the panel after the work."""

    cut: Cut
    places: tuple[Place, ...]


def ground(
    frame: Frame,
    profile: Profile,
    placed: Sequence[Placed],
    sand: Sand | None = None,
    worn: Sequence[tuple[float, float]] = (),
) -> str:
    """Draw the layers and the turf of both panels, and then the openings in the second.

    ``worn`` lists the stretches without grass before the work.
    """
    root_zone = depth_of_root_zone(profile, placed)
    parts = []
    for panel in (frame.before, frame.after):
        gaps = bare(frame, placed) if panel is frame.after else worn
        parts.append(layers(panel, frame.scale, profile, root_zone))
        parts.append(textures.grass(panel.x, panel.right, panel.y, gaps))
    if sand is not None:
        high = max(4.0, sand.on_surface * frame.scale)
        top = Rect(frame.after.x, frame.surface - high, frame.after.width, high)
        parts.append(textures.grains(top))
    parts += [opened(frame, each) for each in placed]
    parts.append(layer_names(frame, profile, root_zone))
    return "".join(parts)


def bare(frame: Frame, placed: Sequence[Placed]) -> list[tuple[float, float]]:
    """Return the stretches without grass after the work, as left and right x."""
    return [
        (
            frame.across(place.middle - each.cut.width / 2),
            frame.across(place.middle + each.cut.width / 2),
        )
        for each in placed
        if each.cut.kind is not Opening.TRENCHES  # their turf is put back
        for place in each.places
    ]


def depth_of_root_zone(profile: Profile, placed: Sequence[Placed]) -> float | None:
    """Return the depth to which the root zone is drawn: above channels, which lie in clay [mm]."""
    if profile.root_zone_mm is None:
        return None
    tops = [each.cut.depth - each.cut.channel for each in placed if each.cut.channel]
    return max(profile.thatch_mm + 10, min([profile.root_zone_mm, *tops]))


def layers(
    panel: Rect,
    scale: float,
    profile: Profile,
    root_zone: float | None,
    name: str = "panel",
) -> str:
    """Draw the layers below the turf in one panel."""
    thatch = min(profile.thatch_mm * scale, panel.height)
    roots = min(root_zone * scale if root_zone is not None else thatch, panel.height)
    parts = [textures.thatch(Rect(panel.x, panel.y, panel.width, thatch))]
    if roots > thatch:
        middle = Rect(panel.x, panel.y + thatch, panel.width, roots - thatch)
        parts.append(textures.root_zone(middle))
    if panel.height > roots:
        low = Rect(panel.x, panel.y + roots, panel.width, panel.height - roots)
        parts.append(textures.subsoil(low, profile.subsoil))
    edge = rect(panel, fill="none", stroke=INK, stroke_width=0.8, class_=name)
    return "".join(parts) + edge


def layer_names(frame: Frame, profile: Profile, root_zone: float | None) -> str:
    """Return the names of layers high enough for them, in the panel before the work."""
    panel, parts = frame.before, []
    for name, top, low in _layers_seen(frame, profile, root_zone):
        if low - top >= _NAMED:
            wide = lettering.width_of(name, DETAIL) + 8
            middle = panel.y + (top + low) / 2
            box = Rect(panel.x + (panel.width - wide) / 2, middle - 10, wide, 20)
            parts.append(text(name, (box.x + 4, middle + 5), DETAIL, box=box, on=PAPER))
    return "".join(parts)


_NAMED = 26.0
"""Least height of a layer that has its name written in it."""


def key_of_layers(
    frame: Frame,
    profile: Profile,
    placed: Sequence[Placed],
    at: Point,
    *,
    labelled: Collection[str] = (),
    drained: bool = False,
) -> tuple[str, float]:
    """Return a key of the layers too thin for their names, and its height.

    Layers in ``labelled`` have their names elsewhere. ``drained`` adds the lowest layer, which is
    drawn around a drain.
    """
    draw: dict[str, Callable[[Rect], str]] = {
        THATCH: textures.thatch,
        ROOT_ZONE: textures.root_zone,
        _below(profile): partial(textures.subsoil, kind=profile.subsoil),
    }
    seen = {
        name: low - top
        for name, top, low in _layers_seen(frame, profile, depth_of_root_zone(profile, placed))
    }
    if drained:
        seen.setdefault(_below(profile), 0.0)
    parts, x = [], at[0]
    for name, high in seen.items():
        if high < _NAMED and name not in labelled:
            swatch = Rect(x, at[1], 22, 14)
            parts.append(draw[name](swatch) + rect(swatch, fill="none", stroke=INK))
            parts.append(text(name, (x + 29, at[1] + 12), DETAIL))
            x += 45 + lettering.width_of(name, DETAIL)
    return "".join(parts), 24.0 if parts else 0.0


THATCH, ROOT_ZONE = "Thatch", "Root zone"


def _below(profile: Profile) -> str:
    return SUBSOIL[profile.subsoil].capitalize()


def _layers_seen(
    frame: Frame, profile: Profile, root_zone: float | None
) -> Iterator[tuple[str, float, float]]:
    """Yield the name of each layer in a panel, with its top and bottom."""
    named = [(THATCH, profile.thatch_mm)]
    if root_zone is not None:
        named.append((ROOT_ZONE, root_zone))
    named.append((_below(profile), frame.before.height / frame.scale))
    top = 0.0
    for name, mm in named:
        low = min(mm * frame.scale, frame.before.height)
        if low > top:  # however thin: a close-up may show it
            yield name, top, low
        top = max(top, low)


def opened(frame: Frame, placed: Placed) -> str:
    """Draw the openings of one work, in a group with its ID."""
    cut = placed.cut
    content = "".join(_opening(frame, cut, place) for place in placed.places)
    of = {"data_near" if frame.near else "data_work": cut.work.id}
    return f"<g{attributes(class_=f'cut {cut.kind.value}', **of)}>{content}</g>"


def _opening(frame: Frame, cut: Cut, place: Place) -> str:
    """Draw the part of an opening that lies in the panel."""
    x, wide = frame.across(place.middle), cut.width * frame.scale
    line: dict[str, Any] = {"stroke": INK, "stroke_width": min(1.0, wide / 5)}
    name = "near-{}" if frame.near else "{}"
    deep = (cut.depth - cut.channel / 2 if cut.channel else cut.depth) * frame.scale
    hole = within(Rect(x - wide / 2, frame.surface, wide, deep), frame.after)
    if hole is None:
        return ""
    if cut.channel:
        slot = rect(hole, fill=PAPER, class_=name.format("slot"), **line)
        middle, radius = (x, frame.down(cut.depth)), cut.channel / 2 * frame.scale
        if middle[1] + radius > frame.after.bottom:
            return slot
        ring = {
            "stroke": INK,
            "stroke_width": min(1.4, radius / 3),
            "class_": name.format("channel"),
        }
        return slot + circle(middle, radius, fill=PAPER, **ring)
    drawn = rect(hole, fill=PAPER, class_=name.format("opening"), data_pass=place.turn, **line)
    if cut.kind is Opening.TRENCHES:
        return drawn + _stone_and_pipe(frame, cut, hole)
    if cut.filled:
        sand = Rect(hole.x, hole.y, hole.width, cut.filled * frame.scale)
        inside = within(sand, frame.after)
        drawn += textures.sand(inside, class_=name.format("filled"), **line) if inside else ""
    return drawn


def within(box: Rect, panel: Rect) -> Rect | None:
    """Return the part of a box that lies in a panel; None if there is none."""
    left, top = max(box.x, panel.x), max(box.y, panel.y)
    right, bottom = min(box.right, panel.right), min(box.bottom, panel.bottom)
    return Rect(left, top, right - left, bottom - top) if right > left and bottom > top else None


def _stone_and_pipe(frame: Frame, cut: Cut, hole: Rect) -> str:
    turf = depth_over_stone(cut) * frame.scale
    radius = pipe_radius(frame, cut)
    return (
        textures.root_zone(Rect(hole.x, hole.y, hole.width, turf))
        + textures.stone(Rect(hole.x, hole.y + turf, hole.width, hole.height - turf))
        + rect(hole, fill="none", stroke=INK, stroke_width=1.0)
        + textures.pipe((hole.x + hole.width / 2, hole.bottom - radius - 1), radius)
    )


def depth_over_stone(cut: Cut) -> float:
    """Return the usual depth of turf and root zone above the stone of a trench [mm]."""
    return min(100.0, cut.depth / 3)


def pipe_radius(frame: Frame, cut: Cut) -> float:
    """Return the radius of the pipe in a trench, guessed because the plan does not give it."""
    return min(0.3 * cut.width, 0.1 * cut.depth) * frame.scale


def below_the_break(frame: Frame, profile: Profile, drain: Point) -> str:
    """Draw a drain below a broken edge, because its depth is not known."""
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
