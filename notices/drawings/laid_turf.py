"""A section through new turf, laid in place of worn turf."""

from __future__ import annotations

from notices.drawings import lettering, textures
from notices.drawings.columns import HEAD, RULER, Picture, columns_for, framed, heads
from notices.drawings.ground import Frame, ground, key_of_layers
from notices.drawings.labels import DETAIL, NAME
from notices.drawings.model import Drawing
from notices.drawings.palette import INK
from notices.drawings.ruler import ruler
from notices.drawings.sizes import PAGE, Sizes
from notices.drawings.svg import LINE, Rect, lines, measure, path, rect, strokes
from notices.programme.model import Work
from notices.programme.openings import TURF_MM
from notices.wording import below_ground as say
from notices.wording.words import Words

_SHOWN, _DEEP = 140.0, 90.0
"""Width and depth of green shown after the work [mm]."""
_TUFT, _BARE = 9.0, 14.0
"""Widths of grass and of bare ground, by turns, in worn turf."""


def laid_turf(words: Words, work: Work, name: str = "turf", sizes: Sizes = PAGE) -> Drawing:
    """Draw worn turf, and new turf in its place with the seam between two pieces.

    Parameters
    ----------
    words
        Wording of the programme.
    work
        Work that lays the turf.
    name
        Name of the drawing without the suffix of its size.
    sizes
        Size of the drawing.
    """
    columns, profile = columns_for(sizes), words.programme.profile
    left = RULER + columns.before + columns.measure
    room = columns.width - left - 1
    scale = room / _SHOWN
    top, height = HEAD + 32, _DEEP * scale
    frame = Frame(Rect(RULER, top, columns.before, height), Rect(left, top, room, height), scale)
    key = say.in_words_of_turf(words, work, TURF_MM)
    said = lettering.lines_of(lettering.unbroken(key), columns.width - 4, DETAIL)
    layers, more = key_of_layers(frame, profile, [], (2, frame.after.bottom + 10))
    foot = frame.after.bottom + 24 + more
    parts = [
        heads(frame),
        ruler(RULER - 6, top, height, scale, words.programme.club.units),
        ground(frame, profile, [], worn=_worn(frame.before)),
        _pieces(frame),
        _thickness(frame, words),
        layers,
        lines(said, (2, foot), DETAIL),
    ]
    low = foot + (len(said) - 1) * LINE * DETAIL + 8
    title = f"{say.name_of(words, work)}: below the green"
    caption = say.caption_of_one(words, work)
    description = f"{caption} {key} {say.layers(words, profile)} A ruler beside it shows the depth."
    picture = Picture("".join(parts), low, scale)
    return framed(picture, columns, name + sizes.suffix, title, description, caption)


def _worn(panel: Rect) -> list[tuple[float, float]]:
    """Return the bare stretches of worn turf, as left and right x."""
    found, x = [], panel.x + _TUFT
    while x < panel.right:
        found.append((x, min(x + _BARE, panel.right)))
        x += _TUFT + _BARE
    return found


def _pieces(frame: Frame) -> str:
    """Draw two pieces of turf that meet a little right of the middle."""
    panel, high = frame.after, TURF_MM * frame.scale
    seam = panel.x + 0.6 * panel.width
    return "".join(
        textures.roots(Rect(x, panel.y, end - x, high))
        + rect(
            Rect(x, panel.y, end - x, high),
            fill="none",
            stroke=INK,
            stroke_width=1.4,
            class_="turf",
        )
        for x, end in ((panel.x, seam), (seam, panel.right))
    )


def _thickness(frame: Frame, words: Words) -> str:
    """Draw an arrow as long as the turf is thick, with the thickness in words below it."""
    x, low = frame.before.right + 14, frame.down(TURF_MM)
    room = frame.after.x - x - 10
    told = [*lettering.lines_of("typically", room, NAME)]
    told += lettering.lines_of(say.length(words, TURF_MM), room, NAME)
    guides = strokes([((x - 6, y), (frame.after.x, y)) for y in (frame.surface, low)])
    return (
        path(guides, stroke=INK, stroke_width=0.8, stroke_dasharray="1.5 2.5", fill="none")
        + measure((x, frame.surface), (x, low))
        + lines(told, (x, low + 20), NAME)
    )
