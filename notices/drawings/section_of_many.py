"""A section through the openings of several works, with labels and the way of the water."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notices.drawings import lettering, water
from notices.drawings.close_up import close_up
from notices.drawings.columns import HEAD, RULER, Columns, Picture, heads
from notices.drawings.ground import (
    BROKEN,
    FEW,
    LARGEST,
    MOST,
    STRIP,
    THATCH,
    Frame,
    Placed,
    below_the_break,
    ground,
    key_of_layers,
)
from notices.drawings.labels import DETAIL, Label, draw_key, draw_labels, height_of, numbered
from notices.drawings.palette import QUIET
from notices.drawings.places import Place, places, spans
from notices.drawings.ruler import ruler
from notices.drawings.svg import LINE, Point, Rect, lines, text
from notices.operations import Opening
from notices.programme.model import Profile, Work
from notices.programme.openings import Cut, Sand, cuts, deepest_sand
from notices.wording import below_ground as say
from notices.wording.words import Words

_EDGE = 10.0
"""Gap between the panels."""
_MANY = 5
"""Most kinds of opening with full labels; of more, each label gives only the depth."""


def of_many(words: Words, works: Sequence[Work], columns: Columns) -> Picture:
    """Draw the openings of several works, and the way of rain before and after them."""
    found = cuts(works, words.programme)
    sand = deepest_sand(works, words.programme)
    profile = words.programme.profile
    left = RULER + columns.before + _EDGE
    room = columns.width - columns.labels - 14 - left
    deepest = max(cut.bottom for cut in found)
    scale = min(room / max(_seen(cut) for cut in found), columns.deepest / deepest, LARGEST)
    drained = _is_drained(found, profile)
    extra = BROKEN + STRIP if drained else 0.0
    top = HEAD + 82
    plan = _Labels(words, found, sand, columns)
    beside = numbered if columns.numbered else list[Label]
    labelled = sum(height_of(label) for label in beside(plan.all(drained=drained)))
    height = max(1.12 * deepest * scale, 190.0, labelled - extra - 44)
    frame = Frame(Rect(RULER, top, columns.before, height), Rect(left, top, room, height), scale)
    placed = _placed_together(found, frame)
    bottom = frame.after.bottom + extra
    drain = (_above_drain(frame, placed), bottom - STRIP / 2) if drained else None
    plan = replace(plan, frame=frame, placed=tuple(placed))
    labels = plan.all(drained=drained, drain=drain)
    key, below = "", bottom
    if columns.numbered:
        key, below = draw_key(labels, Rect(2, bottom + 10, columns.width - 4, 0))
    near = close_up(words, frame, placed, columns, below + 10, sand, _names(labels, columns))
    note = lettering.lines_of(say.scale_note(profile, drained=drained), columns.width - 4, DETAIL)
    low = near.bottom if near else below
    layers, more = key_of_layers(
        frame, profile, placed, (2, low + 10), labelled=[THATCH], drained=drained
    )
    foot = low + 24 + more
    parts = [
        heads(frame),
        ruler(RULER - 6, frame.surface, height, scale, words.programme.club.units),
        ground(frame, profile, placed, sand=sand),
        below_the_break(frame, profile, drain) if drain else "",
        _rain(frame, words, placed, drain),
        draw_labels(beside(labels), x=columns.width - columns.labels, top=top - 20, bottom=bottom),
        key,
        near.content if near else "",
        layers,
        lines(note, (2, foot), DETAIL, fill=QUIET),
    ]
    whole = foot + (len(note) - 1) * LINE * DETAIL + 8
    return Picture("".join(parts), whole, scale, near.said if near else "")


def _seen(cut: Cut) -> float:
    """Return the width of ground needed to show these openings beside others."""
    if cut.kind in FEW:
        return 1.8 * cut.width if cut.kind is Opening.TRENCHES else 3 * cut.channel
    return 2.2 * cut.across + cut.width


def _is_drained(found: Sequence[Cut], profile: Profile) -> bool:
    """Tell whether a drain is drawn below: channels lead to one, and a plan may name one."""
    kinds = {cut.kind for cut in found}
    if Opening.TRENCHES in kinds:  # a trench has its own pipe, to scale
        return False
    return Opening.CHANNELS in kinds or (bool(profile.drains) and Opening.HOLES in kinds)


def _placed_together(found: Sequence[Cut], frame: Frame) -> list[Placed]:
    """Return the places of all openings, in their order; few and wide ones choose first."""
    room = frame.after.width / frame.scale
    taken: list[tuple[float, float]] = []
    placed = []
    for cut in sorted(found, key=lambda cut: (cut.kind not in FEW, -cut.across)):
        if cut.kind in FEW:
            share = 0.7 if cut.kind is Opening.TRENCHES and len(found) > 1 else 0.5
            middle = min(room * share, room - max(cut.width, cut.channel) / 2)
            where: tuple[Place, ...] = (Place(middle, 0),)
        else:
            where = places(cut, room, taken, most=MOST, spare=1)
        taken += spans(cut, where)
        placed.append(Placed(cut, where))
    order = {id(cut): place for place, cut in enumerate(found)}
    return sorted(placed, key=lambda each: order[id(each.cut)])


def _above_drain(frame: Frame, placed: Sequence[Placed]) -> float:
    """Return the x of the drain: below a channel, else below the middle of the deepest holes."""
    of_channel = [each for each in placed if each.cut.channel]
    where = (of_channel or placed)[0].places
    return frame.across(where[len(where) // 2].middle)


def _rain(frame: Frame, words: Words, placed: Sequence[Placed], drain: Point | None) -> str:
    """Draw the way of rain before and after, with words, if the works change it."""
    if not say.lets_water_down(words, [each.cut for each in placed]):
        return ""
    y = HEAD + LINE * DETAIL
    stays = say.rain_before(words.programme.profile)
    return (
        water.standing(frame.before)
        + lines(stays, (frame.before.x, y), DETAIL)
        + water.ways(frame, placed, drain)
        + water.key((frame.after.x, y - 5))
        + text("way of the water", (frame.after.x + 42, y), DETAIL)
    )


def _names(labels: Sequence[Label], columns: Columns) -> dict[str, str]:
    """Return the label of each work in a close-up, its number or its name, by ID of the work."""
    shown = numbered(labels) if columns.numbered else labels
    return {label.of: " ".join(label.name) for label in shown if label.of}


@dataclass(frozen=True, slots=True)
class _Labels:
    """Labels of a picture; without a frame they only serve to find their height."""

    words: Words
    found: Sequence[Cut]
    sand: Sand | None
    columns: Columns
    frame: Frame | None = None
    placed: tuple[Placed, ...] = ()

    def all(self, *, drained: bool, drain: Point | None = None) -> list[Label]:
        """Return the labels in their order from top to bottom."""
        labels = [self._of(cut) for cut in self.found]
        labels.append(self._label(THATCH, [self._thatch()], self._in_thatch()))
        if self.sand is not None:
            lies = say.lying(self.words, self.sand)
            labels.append(self._label("Sand", [lies], self._right_edge(-3), self.sand.work.id))
        if drained:
            edge = (drain[0] + 9, drain[1]) if drain else (0.0, 0.0)
            labels.append(self._label("Drain", ["not to scale"], edge))
        return sorted(labels, key=lambda label: label.target[1])

    def _label(self, name: str, details: Sequence[str], target: Point, of: str = "") -> Label:
        room = self.columns.width if self.columns.numbered else self.columns.labels
        return Label.fitted(name, details, target, room, of)

    def _of(self, cut: Cut) -> Label:
        few = len(self.found) <= _MANY and not self.columns.numbered
        sizes = say.sizes(self.words, cut) if few else [say.depth(self.words, cut)]
        details = [*sizes, *filter(None, [say.filling(self.words, cut)])]
        name = say.name_of(self.words, cut.work)
        return self._label(name, details, self._in_cut(cut), cut.work.id)

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
