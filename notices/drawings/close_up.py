"""A close-up below a section of things that are too thin to see in it, with its scale in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from notices.drawings import lettering, textures
from notices.drawings.columns import RULER, Columns
from notices.drawings.ground import (
    FEW,
    Frame,
    Placed,
    bare,
    depth_of_root_zone,
    depth_over_stone,
    layers,
    opened,
    pipe_radius,
)
from notices.drawings.labels import DETAIL, Label, draw_labels, height_of
from notices.drawings.palette import INK, PAPER
from notices.drawings.places import spans
from notices.drawings.ruler import ruler
from notices.drawings.svg import LINE, Rect, attributes, lines, rect
from notices.programme.openings import Sand
from notices.wording import below_ground as say
from notices.wording.words import Words

_THIN, _SHALLOW, _FILM = 3.0, 8.0, 3.0
"""Least width, depth and thickness of sand that can be seen in the section [units]."""
_PLAIN = 26.0
"""Width at which one sees the parts of a drain or a channel [units]."""
_SEEN = 2.4
"""Size of things in a close-up, as a multiple of the least that can be seen."""
_TALL, _LARGEST = 170.0, 40.0
"""Largest height [units] and scale [units/mm] of a close-up."""
_NAMES = 118.0
"""Width for the names of the parts of a drain [units]."""
_TIMES = (2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50)
"""Magnifications of a close-up: round numbers."""


@dataclass(frozen=True, slots=True)
class _Window:
    """The part of the panel after the work that is shown [mm], and its magnification."""

    left: float
    width: float
    depth: float
    times: int


@dataclass(frozen=True, slots=True)
class CloseUp:
    """A close-up, with the y at which it ends."""

    content: str
    bottom: float
    said: str
    """Description for people who cannot see it."""


def close_up(
    words: Words,
    frame: Frame,
    placed: Sequence[Placed],
    columns: Columns,
    top: float,
    sand: Sand | None = None,
    names: Mapping[str, str] = MappingProxyType({}),
) -> CloseUp | None:
    """Draw an enlargement of things too thin to see; None if everything can be seen without it.

    Parameters
    ----------
    words
        Wording of the programme.
    frame, placed
        Geometry of the section, and the openings in it.
    columns
        Widths of the parts of the section.
    top
        y at which the close-up may begin.
    sand
        Sand that dressings leave on the surface.
    names
        Labels beside the close-up by ID of the work; empty if it is clear without them.
    """
    whole = len(placed) == 1 and placed[0].cut.kind in FEW
    room = columns.width - RULER - 1 - (columns.labels + 14 if names else 0)
    window = (
        _on_the_whole(frame, placed[0], columns)
        if whole
        else _on_the_top(frame, placed, sand, room)
    )
    if window is None:
        return None
    scale = frame.scale * window.times
    told = lettering.lines_of(say.close_up(window.times), columns.width - 4, DETAIL)
    tall = words.programme.profile.mown_mm * scale
    film = (sand.on_surface if sand else 0.0) * scale
    surface = top + len(told) * LINE * DETAIL + max(tall, film, 20.0) + 12
    panel = Rect(RULER, surface, window.width * scale, window.depth * scale)
    near = Frame(panel, panel, scale, window.left, near=True)
    grass = Rect(panel.x, surface - tall, panel.width, tall)
    shown = [
        layers(panel, scale, words.programme.profile, _root_zone(words, placed), "near-panel"),
        layer_of_sand(panel, film),
        textures.mown_grass(grass, bare(near, placed)),
        *(opened(near, each) for each in placed),
    ]
    labels = (
        _parts(words, near, placed[0], columns)
        if whole
        else _thin_things(near, placed, frame, sand, names, columns)
    )
    content = [
        _mark(frame, window),
        lines(told, (2, top + DETAIL), DETAIL),
        f"<g{attributes(class_='close-up', data_scale=f'{scale:.6f}')}>{''.join(shown)}</g>",
        ruler(RULER - 6, surface, panel.height, scale, words.programme.club.units),
        draw_labels(labels, x=panel.right + 14, top=surface - 18, bottom=panel.bottom + 8),
    ]
    low = max(panel.bottom, surface - 18 + sum(map(height_of, labels)))
    return CloseUp("".join(content), low, say.close_up(window.times))


# Choice of the window


def _on_the_whole(frame: Frame, placed: Placed, columns: Columns) -> _Window | None:
    """Return a window on one whole drain or channel; None if it is large enough in the section."""
    cut = placed.cut
    if max(cut.width, cut.channel) * frame.scale >= _PLAIN:
        return None
    depth = min(1.15 * cut.bottom, frame.after.height / frame.scale)
    times = _said(_TALL / depth / frame.scale)
    if times is None:
        return None
    room = (columns.width - RULER - _NAMES) / (frame.scale * times)
    width = min(room, 0.9 * cut.across, frame.after.width / frame.scale)
    return _Window(max(0.0, placed.places[0].middle - width / 2), width, depth, times)


def _on_the_top(
    frame: Frame, placed: Sequence[Placed], sand: Sand | None, room: float
) -> _Window | None:
    """Return a window on the top of the ground with the thin things in it; None without any."""
    thin = [each for each in placed if _is_thin(frame, each)]
    film = _film(frame, sand)
    needed = [_SEEN * _FILM / film] if film else []
    for each in thin:
        needed += [_SEEN * _THIN / each.cut.width, _SEEN * _SHALLOW / each.cut.depth]
    if not needed:
        return None
    widest = max((each.cut.width for each in thin), default=0.1)
    most = min(_LARGEST, room / (1.5 * widest)) / frame.scale
    wanted = max(needed) / frame.scale
    times = _said(min(next((nice for nice in _TIMES if nice >= wanted), wanted), most))
    if times is None or times == min(_TIMES):  # not worth a picture of its own
        return None
    scale = frame.scale * times
    deepest = max((each.cut.depth for each in thin), default=0.0)
    depth = min(max(1.3 * deepest, 64 / scale), _TALL / scale, frame.after.height / frame.scale)
    width = min(room / scale, frame.after.width / frame.scale)
    return _Window(_left(frame, thin or placed, width), width, depth, times)


def _left(frame: Frame, thin: Sequence[Placed], width: float) -> float:
    """Return the left edge of the window that shows openings of the most works [mm]."""
    most = frame.after.width / frame.scale - width
    found = [
        (*span, number) for number, each in enumerate(thin) for span in spans(each.cut, each.places)
    ]

    def works_from(left: float) -> int:
        return len({of for low, high, of in found if left <= low and high <= left + width})

    tries = [min(max((low + high - width) / 2, 0.0), most) for low, high, _ in found]
    return max(tries, key=works_from, default=most / 2)


def _is_thin(frame: Frame, placed: Placed) -> bool:
    cut = placed.cut
    narrow, shallow = cut.width * frame.scale < _THIN, cut.depth * frame.scale < _SHALLOW
    return cut.kind not in FEW and (narrow or shallow)


def _film(frame: Frame, sand: Sand | None) -> float:
    """Return the depth of sand on the surface if it is too thin to see, else 0 [mm]."""
    deep = sand.on_surface if sand else 0.0
    return deep if say.LEAST_FILM_MM <= deep < _FILM / frame.scale else 0.0


def _said(times: float) -> int | None:
    """Return the largest round magnification up to a limit; None if there is none."""
    return max((nice for nice in _TIMES if nice <= times), default=None)


# Drawing


def _root_zone(words: Words, placed: Sequence[Placed]) -> float | None:
    return depth_of_root_zone(words.programme.profile, placed)


def layer_of_sand(panel: Rect, high: float) -> str:
    """Draw a layer of sand on the surface; nothing if its height is 0."""
    if not high:
        return ""
    layer = Rect(panel.x, panel.y - high, panel.width, high)
    return textures.sand(layer, each=9, class_="sand-layer", stroke=INK, stroke_width=0.6)


def _mark(frame: Frame, window: _Window) -> str:
    """Draw a frame in the section around the part that the close-up shows."""
    left, right = (frame.across(window.left + part * window.width) for part in (0, 1))
    top, low = frame.surface - 9, frame.down(window.depth)
    box = Rect(left, top, max(right - left, 6.0), low - top)
    return rect(box, fill="none", stroke=PAPER, stroke_width=4) + rect(
        box, fill="none", stroke=INK, stroke_width=1.8, class_="close-up-mark"
    )


def _thin_things(
    near: Frame,
    placed: Sequence[Placed],
    frame: Frame,
    sand: Sand | None,
    names: Mapping[str, str],
    columns: Columns,
) -> list[Label]:
    """Return labels for the things too thin to see in the section, from top to bottom."""
    panel, room = near.after, columns.labels
    found = []
    if sand is not None and _film(frame, sand) and sand.work.id in names:
        at = (panel.right - 3, near.surface - sand.on_surface * near.scale / 2)
        found.append(Label.fitted(names[sand.work.id], [], at, room))
    for each in placed:
        middles = [near.across(place.middle) for place in each.places]
        seen = [x for x in middles if panel.x < x < panel.right]
        if seen and _is_thin(frame, each) and each.cut.work.id in names:
            y = min(near.down(0.8 * each.cut.depth), panel.bottom - 5)
            found.append(Label.fitted(names[each.cut.work.id], [], (seen[-1], y), room))
    return sorted(found, key=lambda label: label.target[1])


def _parts(words: Words, near: Frame, placed: Placed, columns: Columns) -> list[Label]:
    """Return labels for the parts of a drain or a channel, from top to bottom."""
    cut, x = placed.cut, near.across(placed.places[0].middle)
    room = columns.width - near.after.right - 15
    aside = 0.3 * max(cut.width, cut.channel) * near.scale
    if cut.channel:
        slot, channel = say.PARTS_OF_A_CHANNEL
        wide = f"{say.length(words, cut.channel)} wide"
        return [
            Label.fitted(slot, [], (x, near.down(cut.depth / 2)), room),
            Label.fitted(channel, [wide], (x + aside, near.down(cut.depth)), room),
        ]
    turf, stone, pipe = say.parts_of_a_drain(words)
    above = depth_over_stone(cut)
    low = near.down(cut.depth) - pipe_radius(near, cut) - 1
    return [
        Label.fitted(turf, [], (x + aside, near.down(above / 2)), room),
        Label.fitted(stone, [], (x + aside, near.down((above + cut.depth) / 2)), room),
        Label.fitted(pipe, [], (x, low), room),
    ]
