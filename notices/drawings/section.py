"""A section through a green to scale, before and after the work.

One work alone fills its picture and carries its measures; several stand together, with labels at
the side and the way of the water. Each picture has one scale, the same across and down, and says
it on its root: ``data-scale`` is units of the drawing to a millimetre. The blades of grass and what
lies below a broken edge are not to scale.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from notices.drawings import lettering, water
from notices.drawings.ground import BROKEN, STRIP, Frame, Placed, below_the_break, ground
from notices.drawings.labels import DETAIL, NAME, Label, draw_labels, height_of
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, QUIET
from notices.drawings.places import Place, places, spans
from notices.drawings.ruler import ruler
from notices.drawings.svg import (
    LINE,
    Point,
    Rect,
    document,
    lines,
    measure,
    path,
    strokes,
    text,
)
from notices.operations import Opening
from notices.programme.model import Profile, Work
from notices.programme.openings import Cut, cuts
from notices.wording import below_ground as say
from notices.wording.words import Words

WIDTH = 480.0
"""A phone shows it at seven tenths; letters of 14 are then as small as may be."""

_HEAD = 17.0
_RULER = 40.0
_BEFORE = 84.0
"""Widths of the ruler, and of the panel before the work."""
_EDGE, _LABELS = 10.0, 134.0
"""Several works: room between the panels, and for the labels."""
_MEASURE = 92.0
"""One work: room between the panels, where its depth is written."""
_LARGEST = 12.0
"""Largest scale: beyond it a picture shows no more [units/mm]."""
_MOST = 60
"""How many openings of a kind are drawn at most; only lines closer than a picture shows are more."""
_MANY = 5
"""Beyond so many kinds of opening a label says only how deep each goes."""
_FEW = frozenset({Opening.CHANNELS, Opening.TRENCHES})
"""What lies so far apart that several works together show only one of it."""


@dataclass(frozen=True, slots=True)
class _Picture:
    content: str
    height: float
    scale: float


def cross_section(words: Words, works: Sequence[Work], name: str = "section") -> Drawing | None:
    """Draw a section through a green, before and after works.

    Parameters
    ----------
    words
        How the programme is put into words.
    works
        One work, drawn as large as it fits and with its measures; or several, drawn together.
    name
        Name of the drawing.

    Returns
    -------
    Drawing or None
        None where nothing of the works opens the ground.
    """
    found = cuts(works, words.programme)
    if not found:
        return None
    sanded = any(work.operation.opening is Opening.SAND for work in works)
    if len(found) == 1 and not sanded:
        title = f"{say.name_of(words, found[0].work)}: below the green"
        caption = say.caption_of_one(words, found[0])
        picture = _alone(words, found[0])
    else:
        title = "Below the green, before and after"
        caption = say.caption(words, found, sanded=sanded)
        picture = _together(words, found, sanded=sanded)
    description = say.description(words, found, caption, sanded=sanded)
    svg = document(
        WIDTH,
        picture.height,
        title,
        picture.content,
        description=description,
        data_scale=f"{picture.scale:.6f}",
    )
    return Drawing(name, title, description, svg, WIDTH, picture.height, caption)


def _heads(frame: Frame) -> str:
    return text("Before", (frame.before.x, _HEAD), _HEAD, bold=True) + text(
        "After", (frame.after.x, _HEAD), _HEAD, bold=True
    )


# One work alone


def _alone(words: Words, cut: Cut) -> _Picture:
    left = _RULER + _BEFORE + _MEASURE
    room = WIDTH - left - 1
    scale = min(room / _seen_alone(cut), 250 / cut.bottom, _LARGEST)
    height = max(1.3 * cut.bottom * scale, 120.0)
    top = _HEAD + 62
    frame = Frame(Rect(_RULER, top, _BEFORE, height), Rect(left, top, room, height), scale)
    placed = Placed(cut, places(cut, room / scale, (), most=_MOST))
    key = lettering.lines_of(say.in_words(words, cut), WIDTH - 4, DETAIL)
    foot = frame.after.bottom + 24
    parts = [
        _heads(frame),
        ruler(_RULER - 6, frame.surface, height, scale, words.programme.club.units),
        ground(frame, words.programme.profile, [placed], sanded=False),
        _depth(frame, words, placed),
        _spacing(frame, words, placed),
        lines(key, (2, foot), DETAIL),
    ]
    return _Picture("".join(parts), foot + (len(key) - 1) * LINE * DETAIL + 8, scale)


def _seen_alone(cut: Cut) -> float:
    """Return the width of ground in which the openings of one work are seen: two of them at least."""
    times = 1.3 if cut.kind in _FEW else 2.3
    return times * cut.across + max(cut.width, cut.channel)


def _depth(frame: Frame, words: Words, placed: Placed) -> str:
    """Draw an arrow as long as the openings are deep, and write the depth beside it."""
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
    return (
        path(guides, stroke=INK, stroke_width=0.8, stroke_dasharray="1.5 2.5", fill="none")
        + measure((x, frame.surface), (x, low))
        + lines(told, (x + 9, start), NAME)
    )


def _spacing(frame: Frame, words: Words, placed: Placed) -> str:
    """Draw an arrow from one opening to the next of the same pass, the distance above it."""
    left, right = (frame.across(place.middle) for place in _neighbours(placed.places))
    y = frame.surface - 24
    told = f"{say.length(words, placed.cut.across)} apart"
    half = lettering.width_of(told, NAME) / 2
    middle = min(max((left + right) / 2, frame.after.x + half), WIDTH - half - 1)
    ends = strokes([((x, y - 6), (x, frame.surface - 12)) for x in (left, right)])
    return (
        path(ends, stroke=INK, stroke_width=0.8, fill="none")
        + measure((left, y), (right, y))
        + text(told, (middle, y - 10), NAME, anchor="middle")
    )


def _neighbours(found: Sequence[Place]) -> tuple[Place, Place]:
    """Return two openings side by side that one pass makes."""
    first = found[0]
    return first, next(place for place in found[1:] if place.turn == first.turn)


# Several works together


def _together(words: Words, found: Sequence[Cut], *, sanded: bool) -> _Picture:
    profile = words.programme.profile
    left = _RULER + _BEFORE + _EDGE
    room = WIDTH - _LABELS - 14 - left
    deepest = max(cut.bottom for cut in found)
    scale = min(room / max(_seen_together(cut) for cut in found), 380 / deepest, _LARGEST)
    drained = _is_drained(found, profile)
    extra = BROKEN + STRIP if drained else 0.0
    top = _HEAD + 82
    labelled = sum(height_of(label) for label in _Labels(words, found, sanded).all(drained=drained))
    height = max(1.12 * deepest * scale, 190.0, labelled - extra - 44)
    frame = Frame(Rect(_RULER, top, _BEFORE, height), Rect(left, top, room, height), scale)
    placed = _placed_together(found, frame)
    bottom = frame.after.bottom + extra
    drain = (_above_drain(frame, placed), bottom - STRIP / 2) if drained else None
    labels = _Labels(words, found, sanded, frame, tuple(placed)).all(drained=drained, drain=drain)
    note = lettering.lines_of(say.scale_note(profile, drained=drained), WIDTH - 4, DETAIL)
    foot = bottom + 24
    parts = [
        _heads(frame),
        ruler(_RULER - 6, frame.surface, height, scale, words.programme.club.units),
        ground(frame, profile, placed, sanded=sanded),
        below_the_break(frame, profile, drain) if drain else "",
        _rain(frame, words, placed, drain),
        draw_labels(labels, x=WIDTH - _LABELS, top=top - 20, bottom=bottom),
        lines(note, (2, foot), DETAIL, fill=QUIET),
    ]
    return _Picture("".join(parts), foot + (len(note) - 1) * LINE * DETAIL + 8, scale)


def _seen_together(cut: Cut) -> float:
    """Return the width of ground in which openings are seen beside others."""
    if cut.kind in _FEW:
        return 1.8 * cut.width if cut.kind is Opening.TRENCHES else 3 * cut.channel
    return 2.2 * cut.across + cut.width


def _is_drained(found: Sequence[Cut], profile: Profile) -> bool:
    """Whether a drain is drawn below: channels lead to one, and a plan may name one."""
    kinds = {cut.kind for cut in found}
    if Opening.TRENCHES in kinds:  # it has its pipe, to scale
        return False
    return Opening.CHANNELS in kinds or (bool(profile.drains) and Opening.HOLES in kinds)


def _placed_together(found: Sequence[Cut], frame: Frame) -> list[Placed]:
    """Return where all openings fall, the deepest first: few and wide ones choose their place first."""
    room = frame.after.width / frame.scale
    taken: list[tuple[float, float]] = []
    placed = []
    for cut in sorted(found, key=lambda cut: (cut.kind not in _FEW, -cut.across)):
        if cut.kind in _FEW:
            share = 0.7 if cut.kind is Opening.TRENCHES and len(found) > 1 else 0.5
            middle = min(room * share, room - max(cut.width, cut.channel) / 2)
            where: tuple[Place, ...] = (Place(middle, 0),)
        else:
            where = places(cut, room, taken, most=_MOST, spare=1)
        taken += spans(cut, where)
        placed.append(Placed(cut, where))
    order = {id(cut): place for place, cut in enumerate(found)}
    return sorted(placed, key=lambda each: order[id(each.cut)])


def _above_drain(frame: Frame, placed: Sequence[Placed]) -> float:
    """Return below what the drain is drawn: a channel, else the middle one of the deepest holes."""
    of_channel = [each for each in placed if each.cut.channel]
    where = (of_channel or placed)[0].places
    return frame.across(where[len(where) // 2].middle)


def _rain(frame: Frame, words: Words, placed: Sequence[Placed], drain: Point | None) -> str:
    """Draw what becomes of rain before and after, where the works change it, and say it."""
    if not say.lets_water_down(words, [each.cut for each in placed]):
        return ""
    y = _HEAD + LINE * DETAIL
    stays = say.rain_before(words.programme.profile)
    return (
        water.standing(frame.before)
        + lines(stays, (frame.before.x, y), DETAIL)
        + water.ways(frame, placed, drain)
        + water.key((frame.after.x, y - 5))
        + text("way of the water", (frame.after.x + 42, y), DETAIL)
    )


@dataclass(frozen=True, slots=True)
class _Labels:
    """The labels of a picture; without a frame only to see how high they are."""

    words: Words
    found: Sequence[Cut]
    sanded: bool
    frame: Frame | None = None
    placed: tuple[Placed, ...] = ()

    def all(self, *, drained: bool, drain: Point | None = None) -> list[Label]:
        """Return them in the order in which they stand, from top to bottom."""
        labels = [self._of(cut) for cut in self.found]
        labels.append(self._label("Thatch", [self._thatch()], self._in_thatch()))
        if self.sanded:
            labels.append(self._label("Sand", ["in the grass"], self._right_edge(-3)))
        if drained:
            edge = (drain[0] + 9, drain[1]) if drain else (0.0, 0.0)
            labels.append(self._label("Drain", ["not to scale"], edge))
        return sorted(labels, key=lambda label: label.target[1])

    def _label(self, name: str, details: Sequence[str], target: Point) -> Label:
        return Label.of(name, details, target, _LABELS)

    def _of(self, cut: Cut) -> Label:
        sizes = (
            say.sizes(self.words, cut) if len(self.found) <= _MANY else [say.depth(self.words, cut)]
        )
        details = [*sizes, *filter(None, [say.filling(self.words, cut)])]
        return self._label(say.name_of(self.words, cut.work), details, self._in_cut(cut))

    def _thatch(self) -> str:
        return say.thatch(self.words, self.words.programme.profile)

    def _in_cut(self, cut: Cut) -> Point:
        """Return a point in the last opening of a work, towards its lower end."""
        if self.frame is None:
            return (0.0, 0.0)
        last = next(each for each in self.placed if each.cut is cut).places[-1]
        x = self.frame.across(last.middle)
        if cut.channel:
            return (x + 0.3 * cut.channel * self.frame.scale, self.frame.down(cut.depth))
        aside = 0.4 * cut.width * self.frame.scale if cut.kind is Opening.TRENCHES else 0.0
        return (x + aside, self.frame.down(cut.depth * 0.9))

    def _in_thatch(self) -> Point:
        if self.frame is None:
            return (0.0, 0.0)
        low = min(
            self.words.programme.profile.thatch_mm * self.frame.scale, self.frame.after.height
        )
        return self._right_edge(low / 2)

    def _right_edge(self, below: float) -> Point:
        if self.frame is None:
            return (0.0, 0.0)
        return (self.frame.after.right - 3, self.frame.surface + below)
