"""Labels in a column beside a picture, each with a line to the thing it names."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notices.drawings import lettering
from notices.drawings.palette import INK, PAPER, QUIET
from notices.drawings.svg import LINE, Point, Rect, circle, lines, path, polyline, text

NAME, DETAIL = 15.0, 14.0
"""Font sizes of a name and of the details below it."""
GAP = 9.0
"""Least distance between two labels."""


@dataclass(frozen=True, slots=True)
class Label:
    """A name with a few words below it, and the point that it names."""

    name: tuple[str, ...]
    details: tuple[str, ...]
    target: Point
    of: str = ""
    """ID of the work that it names; empty if it names none."""

    @classmethod
    def fitted(
        cls, name: str, details: Sequence[str], target: Point, room: float, of: str = ""
    ) -> Label:
        """Return a label with name and details broken into lines no wider than ``room``."""
        broken = [
            line for detail in details for line in lettering.lines_of(detail, room, DETAIL, most=2)
        ]
        heading = lettering.lines_of(name, room, NAME, bold=True, most=2)
        return cls(tuple(heading), tuple(broken), target, of)


def height_of(label: Label) -> float:
    """Return the height of a label, with the gap to the next."""
    return LINE * (len(label.name) * NAME + len(label.details) * DETAIL) + GAP


def numbered(labels: Sequence[Label]) -> list[Label]:
    """Return the labels with numbers in place of words, for pictures without room beside them."""
    return [replace(label, name=(str(n),), details=()) for n, label in enumerate(labels, 1)]


def draw_key(labels: Sequence[Label], box: Rect) -> tuple[str, float]:
    """Return the key of the numbered labels, set in a box, and the y at which it ends."""
    parts, y = [], box.y
    for place, label in enumerate(labels, 1):
        told = ": ".join(filter(None, [" ".join(label.name), ", ".join(label.details)]))
        rows = lettering.lines_of(lettering.unbroken(told), box.width - _NUMBER, DETAIL)
        parts.append(text(str(place), (box.x, y + DETAIL), DETAIL, bold=True))
        parts.append(lines(rows, (box.x + _NUMBER, y + DETAIL), DETAIL))
        y += len(rows) * LINE * DETAIL + 3
    return "".join(parts), y


_NUMBER = 20.0
"""Width for a number in a key."""


def draw_labels(labels: Sequence[Label], *, x: float, top: float, bottom: float) -> str:
    """Draw labels, in the order of their targets from the top, each near its target if possible."""
    parts = []
    for label, y in zip(labels, _tops(labels, top, bottom), strict=True):
        foot = y + NAME
        end = label.target
        line = polyline([(x - 4, foot - 5), end])
        parts.append(path(line, stroke=PAPER, stroke_width=3, fill="none"))
        parts.append(path(line, stroke=INK, stroke_width=1, fill="none"))
        parts.append(circle(end, 2.6, fill=INK, stroke=PAPER, stroke_width=1))
        parts.append(lines(label.name, (x, foot), NAME, bold=True))
        below = foot + LINE * (NAME * (len(label.name) - 1) + DETAIL)
        parts.append(lines(label.details, (x, below), DETAIL, fill=QUIET))
    return "".join(parts)


def _tops(labels: Sequence[Label], top: float, bottom: float) -> list[float]:
    """Return the top of each label, so that none overlaps another or passes an end."""
    tops: list[float] = []
    least = top
    for label in labels:
        tops.append(max(least, label.target[1] - 10))
        least = tops[-1] + height_of(label)
    most = bottom + GAP
    for place in range(len(labels) - 1, -1, -1):
        tops[place] = min(tops[place], most - height_of(labels[place]))
        most = tops[place]
    return tops
