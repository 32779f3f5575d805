"""A section through the openings of one work, as large as fits and with its dimensions."""

from __future__ import annotations

from collections.abc import Sequence

from notices.drawings import lettering
from notices.drawings.close_up import close_up
from notices.drawings.columns import HEAD, RULER, Columns, Picture, heads
from notices.drawings.ground import FEW, LARGEST, MOST, Frame, Placed, ground, key_of_layers
from notices.drawings.labels import DETAIL, NAME
from notices.drawings.palette import INK
from notices.drawings.places import Place, places
from notices.drawings.ruler import ruler
from notices.drawings.svg import LINE, Rect, lines, measure, path, strokes, text
from notices.programme.openings import Cut
from notices.wording import below_ground as say
from notices.wording.words import Words


def of_one(words: Words, cut: Cut, columns: Columns) -> Picture:
    """Draw the openings of one work, with their depth and distance."""
    left = RULER + columns.before + columns.measure
    room = columns.width - left - 1
    scale = min(room / _seen(cut), 250 / cut.bottom, LARGEST)
    height = max(1.3 * cut.bottom * scale, 84.0 if cut.kind in FEW else 120.0)
    top = HEAD + 62
    frame = Frame(Rect(RULER, top, columns.before, height), Rect(left, top, room, height), scale)
    placed = Placed(cut, places(cut, room / scale, (), most=MOST))
    depth, below = _depth(frame, words, placed)
    ends = max(frame.after.bottom, below)
    near = close_up(words, frame, [placed], columns, ends + 10)
    key = lettering.lines_of(
        lettering.unbroken(say.in_words(words, cut)), columns.width - 4, DETAIL
    )
    low = near.bottom if near else ends
    layers, more = key_of_layers(frame, words.programme.profile, [placed], (2, low + 10))
    foot = low + 24 + more
    parts = [
        heads(frame),
        ruler(RULER - 6, frame.surface, height, scale, words.programme.club.units),
        ground(frame, words.programme.profile, [placed]),
        depth,
        _spacing(frame, words, placed, columns),
        near.content if near else "",
        layers,
        lines(key, (2, foot), DETAIL),
    ]
    whole = foot + (len(key) - 1) * LINE * DETAIL + 8
    return Picture("".join(parts), whole, scale, near.said if near else "")


def _seen(cut: Cut) -> float:
    """Return the width of ground needed to show openings of one work, at least two of them."""
    times = 1.3 if cut.kind in FEW else 2.3
    return times * cut.across + max(cut.width, cut.channel)


def _depth(frame: Frame, words: Words, placed: Placed) -> tuple[str, float]:
    """Draw an arrow as long as the openings are deep, with the depth in words beside or below it.

    Returns
    -------
    tuple of str and float
        Arrow with its words, and the y at which these end.
    """
    cut, first = placed.cut, frame.across(placed.places[0].middle)
    x, low = frame.before.right + 14, frame.down(cut.depth)
    reach = first - (0 if cut.channel else cut.width / 2 * frame.scale)
    room = frame.after.x - x - 14
    told = [*lettering.lines_of(say.length(words, cut.depth), room, NAME), "deep"]
    tall = len(told) * LINE * NAME
    beside = low - frame.surface > tall + 16
    start = (frame.surface + low - tall) / 2 + 13 if beside else low + 20
    guides = strokes(
        [((x - 6, frame.surface), (frame.after.x, frame.surface)), ((x - 6, low), (reach, low))]
    )
    drawn = (
        path(guides, stroke=INK, stroke_width=0.8, stroke_dasharray="1.5 2.5", fill="none")
        + measure((x, frame.surface), (x, low))
        + lines(told, (x + 9, start), NAME)
    )
    return drawn, start + tall - LINE * NAME + 4


def _spacing(frame: Frame, words: Words, placed: Placed, columns: Columns) -> str:
    """Draw an arrow from one opening to the next of the same pass, with the distance above it."""
    left, right = (frame.across(place.middle) for place in _neighbours(placed.places))
    y = frame.surface - 24
    told = f"{say.length(words, placed.cut.across)} apart"
    half = lettering.width_of(told, NAME) / 2
    middle = min(max((left + right) / 2, frame.after.x + half), columns.width - half - 1)
    ends = strokes([((x, y - 6), (x, frame.surface - 12)) for x in (left, right)])
    return (
        path(ends, stroke=INK, stroke_width=0.8, fill="none")
        + measure((left, y), (right, y))
        + text(told, (middle, y - 10), NAME, anchor="middle")
    )


def _neighbours(found: Sequence[Place]) -> tuple[Place, Place]:
    """Return two neighbouring openings of one pass."""
    first = found[0]
    return first, next(place for place in found[1:] if place.turn == first.turn)
