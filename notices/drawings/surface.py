"""A square of the green from above, in true size or a stated part of it.

It is as large as it says when it is printed at 100 %: its width and height are in millimetres.
``data-scale`` on its root is units of the drawing to a millimetre of green.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from notices.drawings import lettering, textures
from notices.drawings.model import Drawing
from notices.drawings.palette import GAP, INK, LAWN, PAPER, QUIET, SUBSOIL, TURF
from notices.drawings.places import Place, places, spans
from notices.drawings.svg import (
    LINE,
    Rect,
    attributes,
    circle,
    document,
    lines,
    number,
    path,
    rect,
    strokes,
    text,
)
from notices.operations import Opening
from notices.programme.model import Period
from notices.programme.openings import Cut, Moment, cuts
from notices.units import MM_PER_INCH
from notices.wording import below_ground as say
from notices.wording.lists import and_list
from notices.wording.words import Words

SIDE_MM = {"metric": 150.0, "imperial": 6 * MM_PER_INCH}
"""How much of the green is shown."""

PX_PER_MM = 96 / MM_PER_INCH
"""Units of a drawing to a millimetre on paper: one unit is a CSS pixel, 96 of them an inch."""

_SIZE, _SMALL = 15.0, 14.0
_EDGE = 1.0


@dataclass(frozen=True, slots=True)
class _Spread:
    """Openings of one work in the square: where they are across and along."""

    cut: Cut
    across: tuple[Place, ...]
    along: tuple[Place, ...]


def surface(
    words: Words,
    period: Period,
    moment: Moment,
    name: str = "surface",
    scale: float = 1.0,
    side_mm: float | None = None,
    *,
    keyed: bool = True,
) -> Drawing | None:
    """Draw a square of the green as it looks from above.

    Parameters
    ----------
    words
        How the programme is put into words.
    period
        Its works that open or cover the surface are drawn together.
    moment
        When one looks.
    name
        Name of the drawing.
    scale
        Its size: 1 is true size, 0.5 half of it.
    side_mm
        How much of the green is shown; 15 cm or 6 inches if not given.
    keyed
        Whether what is what stands below it; else what is beside it says so (``signs``), and how
        large it is where that is not true size.

    Returns
    -------
    Drawing or None
        None where nothing is opened or covered.
    """
    found = cuts(period.works, words.programme)
    sanded = any(work.operation.opening is Opening.SAND for work in period.works)
    if not found and not sanded:
        return None
    side = side_mm or SIDE_MM[words.programme.club.units]
    unit = scale * PX_PER_MM
    patch = Rect(_EDGE, _EDGE, side * unit, side * unit)
    width = patch.width + 2 * _EDGE
    entries = [_entry(words, cut, moment, side) for cut in reversed(found)]
    caption = say.surface_caption(words, moment, side, found, sanded=sanded)
    told = entries if moment is not Moment.HEALED else []
    key, low = "", patch.bottom + _EDGE
    if keyed:
        sanding = _sanding(words, period, moment)
        key, low = _key(found, told, patch, sanding)
        if moment is Moment.HEALED:
            key += text("Nothing is left to see.", (2, low + 12), _SIZE)
            low += 24
    told_size = say.size_note(scale) if keyed or scale == 1 else ""
    note = lettering.lines_of(told_size, width - 4, _SMALL) if told_size else []
    height = low + (len(note) * LINE * _SMALL + 6 if note else 0)
    content = (
        _turf(patch)
        + (textures.grains(patch, each=170) if sanded and moment is Moment.AFTER else "")
        + "".join(_opened(spread, patch, unit, moment) for spread in _spread(found, side))
        + rect(patch, fill="none", stroke=INK, stroke_width=1.2, class_="patch")
        + key
        + lines(note, (2, low + _SMALL), _SMALL, fill=QUIET)
    )
    title = f"The green from above: {_TITLES[moment]}"
    description = " ".join(filter(None, [caption, *(f"{entry}." for entry in told)]))
    svg = document(
        width,
        height,
        title,
        content,
        description=description,
        size=f' width="{number(width / PX_PER_MM)}mm" height="{number(height / PX_PER_MM)}mm"',
        data_scale=f"{unit:.6f}",
    )
    return Drawing(name, title, description, svg, width, height, caption)


_TITLES = {
    Moment.AFTER: "just after the work",
    Moment.SMOOTH: "putting smoothly",
    Moment.HEALED: "healed",
}


def _spread(found: tuple[Cut, ...], side: float) -> Iterator[_Spread]:
    """Yield where the openings fall: the far apart choose first, the fine lines lie on top."""
    taken: list[tuple[float, float]] = []
    for cut in sorted(found, key=lambda cut: (-cut.across, cut.work.plan_index)):
        across = places(cut, side, taken) or _one_in(cut, side)
        taken += spans(cut, across)
        along = places(cut, side, (), apart=cut.along) if cut.along else ()
        yield _Spread(cut, across, along)


def _one_in(cut: Cut, side: float) -> tuple[Place, ...]:
    """Return the one opening that is shown of what lies further apart than the square is wide."""
    return (Place(min(side / 4, side - cut.width / 2) if cut.width < side / 2 else side / 2, 0),)


def _turf(patch: Rect) -> str:
    blades = strokes(((x, y), (x + 1, y - 4)) for x, y in textures.scattered(patch, 340, 4))
    return rect(patch, fill=LAWN) + path(
        blades, stroke=TURF, stroke_width=0.8, stroke_linecap="round", fill="none"
    )


def _opened(spread: _Spread, patch: Rect, unit: float, moment: Moment) -> str:
    cut, wide = spread.cut, spread.cut.width_at(moment) * unit
    if not wide:
        return ""
    if spread.along:
        shapes = [
            _hole(cut, patch.x + x.middle * unit, patch.y + y.middle * unit, wide, x.turn)
            for x in spread.across
            for y in spread.along
            if x.turn == y.turn
        ]
    else:
        shapes = [_line(cut, patch, x.middle * unit, wide, x.turn) for x in spread.across]
    named = attributes(class_=f"cut {cut.kind.value}", data_work=cut.work.id)
    return f"<g{named}>{''.join(shapes)}</g>"


def _hole(cut: Cut, x: float, y: float, wide: float, turn: int) -> str:
    named = {"class_": "opening", "data_pass": turn}
    if not cut.filled:
        return circle((x, y), wide / 2, fill=GAP, **named)
    return textures.sand_disc((x, y), wide / 2, **named)


def _line(cut: Cut, patch: Rect, middle: float, wide: float, turn: int) -> str:
    """Draw a slit or a seam from edge to edge; what is wider than the square is cut off."""
    left, right = (min(max(middle + part * wide, 0), patch.width) for part in (-0.5, 0.5))
    box = Rect(patch.x + left, patch.y, right - left, patch.height)
    named = {"class_": "opening", "data_pass": turn}
    if cut.kind is Opening.TRENCHES:  # the turf is put back, and its seams are seen
        return rect(box, fill="none", stroke=GAP, stroke_width=2, stroke_dasharray="7 4", **named)
    return _pressed(box, **named) if cut.channel else rect(box, fill=GAP, **named)


def _pressed(box: Rect, **named: object) -> str:
    """Draw the slot above a channel: the turf beside it is pressed together, and a seam is left."""
    seam = Rect(box.x + box.width * 0.42, box.y, box.width * 0.16, box.height)
    return rect(box, fill=SUBSOIL, **named) + rect(seam, fill=GAP)


def _entry(words: Words, cut: Cut, moment: Moment, side: float) -> str:
    """Say of one work what is seen: its name, how wide, what share of the surface."""
    name = say.name_of(words, cut.work)
    if moment is Moment.AFTER:
        return f"{name}: {', '.join(say.on_top(words, cut, side))}"
    return f"{name}: {say.later(cut)}"


def _sanding(words: Words, period: Period, moment: Moment) -> str:
    """Say whose sand lies in the grass; empty where none does."""
    if moment is not Moment.AFTER:
        return ""
    dressings = [work for work in period.works if work.operation.opening is Opening.SAND]
    names = dict.fromkeys(say.name_of(words, work) for work in dressings)
    return f"{and_list(list(names))}: sand in the grass" if names else ""


def signs(words: Words, period: Period, width: float, name: str = "signs") -> Drawing | None:
    """Say what is what in a square of the surface just after the work, with the share of each.

    Parameters
    ----------
    words
        How the programme is put into words.
    period
        The same as in the square.
    width
        Width of the drawing, in CSS pixels.
    name
        Name of the drawing.

    Returns
    -------
    Drawing or None
        None where nothing is opened or covered.
    """
    found = cuts(period.works, words.programme)
    side = SIDE_MM[words.programme.club.units]
    entries = [_entry(words, cut, Moment.AFTER, side) for cut in reversed(found)]
    sanding = _sanding(words, period, Moment.AFTER)
    if not entries and not sanding:
        return None
    key, low = _key(found, entries, Rect(0, -12, width, 0), sanding)
    description = " ".join(f"{entry}." for entry in [*entries, *filter(None, [sanding])])
    title = "What is what on the green"
    svg = document(width, low, title, key, description=description)
    return Drawing(name, title, description, svg, width, low)


def _key(
    found: Sequence[Cut], entries: Sequence[str], above: Rect, sanding: str
) -> tuple[str, float]:
    """Write what is what below a square; returns where that ends, too."""
    parts, y = [], above.bottom + 12
    samples: list[Callable[[Rect], str]] = [
        partial(_sample, cut, _size(cut, found)) for cut in reversed(found)
    ]
    rows = [
        *zip(samples, entries, strict=False),
        *([(_sample_of_sand, sanding)] if sanding else []),
    ]
    for sample, entry in rows:
        told = lettering.lines_of(lettering.unbroken(entry), above.width - 36, _SIZE)
        parts.append(sample(Rect(above.x + 2, y, 22, 18)))
        parts.append(lines(told, (above.x + 34, y + 14), _SIZE))
        y += max(22.0, len(told) * LINE * _SIZE + 4)
    return "".join(parts), y + 2


def _sample_of_sand(box: Rect) -> str:
    return rect(box, fill=LAWN) + textures.grains(box, each=40)


def _size(cut: Cut, found: Sequence[Cut]) -> float:
    """Return how wide an opening is in parts of the widest of its kind, so that signs differ."""
    return cut.width / max(other.width for other in found if other.kind is cut.kind)


def _sample(cut: Cut, size: float, box: Rect) -> str:
    """Draw a small sign of what one work leaves; among holes, and among slits, wide is wider."""
    x, y = box.x + box.width / 2, box.y + box.height / 2
    if cut.along:
        radius = max(3.0, 8.5 * size)
        disc = circle((x, y), radius, fill=GAP)
        return textures.sand_disc((x, y), radius) if cut.filled else disc
    if cut.kind is Opening.TRENCHES:
        seams = Rect(box.x + 4, box.y, box.width - 8, box.height)
        return rect(seams, fill=PAPER, stroke=GAP, stroke_width=2, stroke_dasharray="7 4")
    if cut.channel:
        return _pressed(Rect(box.x + 5, box.y, box.width - 10, box.height))
    wide = max(0.8, 3.6 * size)
    return "".join(
        rect(Rect(box.x + box.width * part - wide / 2, box.y, wide, box.height), fill=GAP)
        for part in (0.2, 0.5, 0.8)
    )
