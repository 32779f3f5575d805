"""A square of the green from above, in true size or a stated part of it.

Its width and height are in millimetres, so printed at 100 % it is as large as it says.
``data-scale`` on its root gives the units of the drawing for a millimetre of green.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Self

from notices.drawings import lettering, textures
from notices.drawings.model import Drawing
from notices.drawings.palette import GAP, INK, LAWN, QUIET, SUBSOIL, TURF
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
    polyline,
    rect,
    strokes,
    text,
)
from notices.operations import Opening
from notices.programme.model import Period
from notices.programme.openings import Cut, StageOfHealing, closed, cuts
from notices.units import MM_PER_INCH
from notices.wording import below_ground as say
from notices.wording.lists import and_list
from notices.wording.words import Words

SIDE_MM = {"metric": 150.0, "imperial": 6 * MM_PER_INCH}
"""How much of the green is shown."""

BAR_MM = {"metric": 100.0, "imperial": 4 * MM_PER_INCH}
"""Length of the bar that shows whether a printer kept the size."""

PX_PER_MM = 96 / MM_PER_INCH
"""Units of a drawing to a millimetre on paper: one unit is a CSS pixel, 96 of them an inch."""

LETTERS = 15.0
"""Size of the letters below a square, unless it is told another."""

_EDGE = 1.0


@dataclass(frozen=True, slots=True)
class _Spread:
    """The openings of one work in the square, with their places across and along."""

    cut: Cut
    across: tuple[Place, ...]
    along: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class _Seen:
    """The openings that the works of a period have made, and how far each has closed by a moment."""

    made: tuple[Cut, ...]
    """Those of the moment just after the work, the finest first; each keeps its place as it closes."""
    closed: Mapping[str, float]
    """How far the openings of each work have closed, from 0 to 1."""
    gone: tuple[Cut, ...]
    """Those that have closed entirely."""
    moment: StageOfHealing

    @classmethod
    def of(cls, words: Words, period: Period, moment: StageOfHealing) -> Self:
        found = cuts(period.works, words.programme)[::-1]
        at_first, now = (
            {cut.work.id: closed(cut, period, each, words.programme) for cut in found}
            for each in (StageOfHealing.AFTER, moment)
        )
        return cls(
            tuple(cut for cut in found if at_first[cut.work.id] < 1),
            now,
            tuple(cut for cut in found if now[cut.work.id] == 1),
            moment,
        )

    @property
    def left(self) -> tuple[Cut, ...]:
        """The openings that can still be seen."""
        return tuple(cut for cut in self.made if self.closed[cut.work.id] < 1)

    def width(self, cut: Cut) -> float:
        """Return how wide openings still are [mm]; for a trench, the strip between its seams."""
        if cut.kind is Opening.TRENCHES:
            return cut.width
        return cut.width * (1 - self.closed[cut.work.id])


def surface(
    words: Words,
    period: Period,
    moment: StageOfHealing,
    name: str = "surface",
    scale: float = 1.0,
    side_mm: float | None = None,
    *,
    keyed: bool = True,
    letters: float = LETTERS,
) -> Drawing | None:
    """Draw a square of the green as it looks from above.

    Parameters
    ----------
    words
        How the programme is put into words.
    period
        Its works that open or cover the surface are drawn together.
    moment
        The moment that the drawing shows.
    name
        Name of the drawing.
    scale
        Its size: 1 is true size, 0.5 half of it.
    side_mm
        How much of the green is shown; 15 cm or 6 inches if not given.
    keyed
        Whether to draw the key below; if not, ``signs`` draws it separately. The size is then said
        only of a square in true size.
    letters
        Size of the letters below it.

    Returns
    -------
    Drawing or None
        None where nothing is opened or covered.
    """
    seen = _Seen.of(words, period, moment)
    sanded = any(work.operation.opening is Opening.SAND for work in period.works)
    if not seen.made and not sanded:
        return None
    side = side_mm or SIDE_MM[words.programme.club.units]
    unit = scale * PX_PER_MM
    patch = Rect(_EDGE, _EDGE, side * unit, side * unit)
    width = patch.width + 2 * _EDGE
    told = [_entry(words, seen, cut, side) for cut in seen.left]
    caption = say.surface_caption(words, moment, side, seen.left, seen.gone, sanded=sanded)
    note, low = "", patch.bottom + _EDGE
    if keyed or scale == 1:
        note, low = _size_note(words, patch, scale, letters)
    key = ""
    if keyed:
        sanding = _sanding(words, period, moment)
        key, low = _key(seen.left, told, Rect(patch.x, low, patch.width, 0), sanding, letters)
        if not told and not sanding:
            key += text("Nothing is left to see.", (2, low + 12), letters)
            low += 24
    content = (
        _turf(patch, scale)
        + (textures.grains(patch, 170, scale) if sanded and moment is StageOfHealing.AFTER else "")
        + "".join(_opened(spread, patch, unit, seen) for spread in _spread(seen.made, side))
        + rect(patch, fill="none", stroke=INK, stroke_width=1.2, class_="patch")
        + note
        + key
    )
    title = f"The green from above: {_TITLES[moment]}"
    description = " ".join(filter(None, [caption, *(f"{entry.told}." for entry in told)]))
    svg = document(
        width,
        low,
        title,
        content,
        description=description,
        size=f' width="{number(width / PX_PER_MM)}mm" height="{number(low / PX_PER_MM)}mm"',
        data_scale=f"{unit:.6f}",
    )
    return Drawing(name, title, description, svg, width, low, caption)


def as_it_heals(
    words: Words, period: Period, name: str, scale: float, *, keyed: bool = True
) -> tuple[Drawing, ...]:
    """Draw the same square when it putts smoothly, and once healed where that looks different.

    Parameters
    ----------
    words, period, scale, keyed
        As for the square just after the work.
    name
        Beginning of the names of the drawings.

    Returns
    -------
    tuple of Drawing
        Empty where nothing was opened; one where nothing is left to see once it putts smoothly.
    """
    seen = _Seen.of(words, period, StageOfHealing.SMOOTH)
    if not seen.made:
        return ()
    moments = (
        (StageOfHealing.SMOOTH, StageOfHealing.HEALED) if seen.left else (StageOfHealing.SMOOTH,)
    )
    found = (
        surface(words, period, moment, f"{name}{_NAMES[moment]}", scale, keyed=keyed)
        for moment in moments
    )
    return tuple(drawing for drawing in found if drawing is not None)


_NAMES = {StageOfHealing.SMOOTH: "smooth", StageOfHealing.HEALED: "healed"}
_TITLES = {
    StageOfHealing.AFTER: "just after the work",
    StageOfHealing.SMOOTH: "putting smoothly",
    StageOfHealing.HEALED: "healed",
}


def _spread(found: Sequence[Cut], side: float) -> Iterator[_Spread]:
    """Place the openings: those furthest apart choose first, and fine lines lie on top."""
    taken: list[tuple[float, float]] = []
    for cut in sorted(found, key=lambda cut: (-cut.across, cut.work.plan_index)):
        across = places(cut, side, taken) or _one_in(cut, side)
        taken += spans(cut, across)
        along = places(cut, side, (), apart=cut.along) if cut.along else ()
        yield _Spread(cut, across, along)


def _one_in(cut: Cut, side: float) -> tuple[Place, ...]:
    """Return the place of the single opening shown where they are further apart than the square is wide."""
    return (Place(min(side / 4, side - cut.width / 2) if cut.width < side / 2 else side / 2, 0),)


def _size_note(words: Words, patch: Rect, scale: float, letters: float) -> tuple[str, float]:
    """Say how large a square is, with a bar to check true size by; return that and its bottom edge."""
    bar_mm = BAR_MM[words.programme.club.units]
    bar, y = "", patch.bottom + _EDGE
    if scale == 1:
        y += 8
        left, right = patch.x, patch.x + bar_mm * PX_PER_MM
        ends = [((x, y - 5), (x, y + 5)) for x in (left, right)]
        bar = path(
            polyline([(left, y), (right, y)]) + strokes(ends),
            fill="none",
            stroke=INK,
            stroke_width=1.0,
            class_="bar",
        )
        y += 4
    said = lettering.lines_of(say.size_note(words, scale, bar_mm), patch.width - 2, letters)
    note = lines(said, (0, y + letters), letters, fill=QUIET)
    return bar + note, y + len(said) * LINE * letters + 6


def _turf(patch: Rect, scale: float) -> str:
    """Draw mown grass, its blades as much smaller as the square is."""
    blades = strokes(
        ((x, y), (x + scale, y - 4 * scale))
        for x, y in textures.scattered(patch, 340 * scale**2, 4 * scale)
    )
    return rect(patch, fill=LAWN) + path(
        blades, stroke=TURF, stroke_width=0.8 * scale, stroke_linecap="round", fill="none"
    )


def _opened(spread: _Spread, patch: Rect, unit: float, seen: _Seen) -> str:
    cut = spread.cut
    if cut not in seen.left:
        return ""
    wide = seen.width(cut) * unit
    if spread.along:
        shapes = [
            _hole(cut, patch.x + x.middle * unit, patch.y + y.middle * unit, wide, x.turn)
            for x in spread.across
            for y in spread.along
            if x.turn == y.turn
        ]
    else:
        thick = 2 - seen.closed[cut.work.id]  # of seams, which grow faint
        shapes = [_line(cut, patch, x.middle * unit, (wide, thick), x.turn) for x in spread.across]
    named = attributes(class_=f"cut {cut.kind.value}", data_work=cut.work.id)
    return f"<g{named}>{''.join(shapes)}</g>"


def _hole(cut: Cut, x: float, y: float, wide: float, turn: int) -> str:
    named = {"class_": "opening", "data_pass": turn}
    if not cut.filled:
        return circle((x, y), wide / 2, fill=GAP, **named)
    return textures.sand_disc((x, y), wide / 2, **named)


def _line(cut: Cut, patch: Rect, middle: float, size: tuple[float, float], turn: int) -> str:
    """Draw a slit or a seam from edge to edge, cut off at the sides of the square."""
    wide, thick = size
    left, right = (min(max(middle + part * wide, 0), patch.width) for part in (-0.5, 0.5))
    box = Rect(patch.x + left, patch.y, right - left, patch.height)
    named = {"class_": "opening", "data_pass": turn}
    if cut.kind is Opening.TRENCHES:  # the turf is put back, and only its seams show
        seen = [x for x in (middle - wide / 2, middle + wide / 2) if 0 < x < patch.width]
        return rect(box, fill="none", **named) + _seams(patch, [patch.x + x for x in seen], thick)
    return _pressed(box, **named) if cut.channel else rect(box, fill=GAP, **named)


def _seams(box: Rect, where: Iterable[float], thick: float) -> str:
    """Draw seams of the turf above a drain, from the top of a box to its bottom."""
    sides = [((x, box.y), (x, box.bottom)) for x in where]
    return path(strokes(sides), stroke=GAP, stroke_width=thick, stroke_dasharray="7 4")


def _pressed(box: Rect, **named: object) -> str:
    """Draw the slot above a channel: the turf beside it is pressed together, and a seam is left."""
    seam = Rect(box.x + box.width * 0.42, box.y, box.width * 0.16, box.height)
    return rect(box, fill=SUBSOIL, **named) + rect(seam, fill=GAP)


@dataclass(frozen=True, slots=True)
class _Entry:
    """A line of the key."""

    words: str
    share: str = ""
    """How much of the surface a work opens; empty where that is not said."""

    @property
    def told(self) -> str:
        """All of it in words."""
        return f"{self.words}, {self.share} {say.OF_THE_SURFACE}" if self.share else self.words


def _entry(words: Words, seen: _Seen, cut: Cut, side: float) -> _Entry:
    """Say what is seen of one work: how wide and how far apart its openings are, or how far closed."""
    name = say.name_of(words, cut.work)
    if seen.moment is StageOfHealing.AFTER:
        seen_of_it = ", ".join(say.on_top(words, cut, side))
        return _Entry(f"{name}: {seen_of_it}", say.share(words, cut.work))
    return _Entry(f"{name}: {say.later(cut, seen.closed[cut.work.id])}")


def _sanding(words: Words, period: Period, moment: StageOfHealing) -> str:
    """Name the works whose sand lies in the grass; empty where none does."""
    if moment is not StageOfHealing.AFTER:
        return ""
    dressings = [work for work in period.works if work.operation.opening is Opening.SAND]
    names = dict.fromkeys(say.name_of(words, work) for work in dressings)
    return f"{and_list(list(names))}: sand in the grass" if names else ""


def signs(
    words: Words, period: Period, width: float, name: str = "signs", *, letters: float = LETTERS
) -> Drawing | None:
    """Draw the key for the square just after the work, with each work's share of the surface.

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
    letters
        Size of its letters.

    Returns
    -------
    Drawing or None
        None where nothing is opened or covered.
    """
    seen = _Seen.of(words, period, StageOfHealing.AFTER)
    side = SIDE_MM[words.programme.club.units]
    entries = [_entry(words, seen, cut, side) for cut in seen.left]
    sanding = _sanding(words, period, StageOfHealing.AFTER)
    if not entries and not sanding:
        return None
    key, low = _key(seen.left, entries, Rect(0, -12, width, 0), sanding, letters)
    told = [entry.told for entry in entries]
    description = " ".join(f"{each}." for each in [*told, *filter(None, [sanding])])
    title = "The marks on the green"
    svg = document(width, low, title, key, description=description)
    return Drawing(name, title, description, svg, width, low)


def _key(
    found: Sequence[Cut], entries: Sequence[_Entry], above: Rect, sanding: str, letters: float
) -> tuple[str, float]:
    """Draw the key; return it and its bottom edge."""
    parts, y = [], above.bottom + 12
    samples: list[Callable[[Rect], str]] = [
        partial(_sample, cut, _size(cut, found)) for cut in found
    ]
    rows = [
        *zip(samples, entries, strict=False),
        *([(_sample_of_sand, _Entry(sanding))] if sanding else []),
    ]
    wide = max((lettering.width_of(entry.share, letters) for entry in entries), default=0.0)
    if wide:
        wide += letters
        head = (above.right, y + letters - 4)
        parts.append(text(say.OF_THE_SURFACE, head, letters, anchor="end", fill=QUIET))
        y += LINE * letters
    for sample, entry in rows:
        words = lettering.unbroken(entry.words)
        told = lettering.lines_of(words, above.width - 36 - wide, letters)
        base = y + 14
        parts.append(sample(Rect(above.x + 2, y, 22, 18)))
        parts.append(lines(told, (above.x + 34, base), letters))
        if entry.share:
            parts.append(text(entry.share, (above.right, base), letters, anchor="end"))
        y += max(22.0, len(told) * LINE * letters + 4)
    return "".join(parts), y + 2


def _sample_of_sand(box: Rect) -> str:
    return rect(box, fill=LAWN) + textures.grains(box, 40)


def _size(cut: Cut, found: Sequence[Cut]) -> float:
    """Return the width of an opening as a part of the widest of its kind, so that samples differ."""
    return cut.width / max(other.width for other in found if other.kind is cut.kind)


def _sample(cut: Cut, size: float, box: Rect) -> str:
    """Draw a small sample of the marks of one work; wider openings have wider samples."""
    x, y = box.x + box.width / 2, box.y + box.height / 2
    if cut.along:
        radius = max(3.0, 8.5 * size)
        disc = circle((x, y), radius, fill=GAP)
        return textures.sand_disc((x, y), radius) if cut.filled else disc
    if cut.kind is Opening.TRENCHES:
        return rect(box, fill=LAWN) + _seams(box, (box.x + 5, box.right - 5), 2)
    if cut.channel:
        return _pressed(Rect(box.x + 5, box.y, box.width - 10, box.height))
    wide = max(0.8, 3.6 * size)
    return "".join(
        rect(Rect(box.x + box.width * part - wide / 2, box.y, wide, box.height), fill=GAP)
        for part in (0.2, 0.5, 0.8)
    )
