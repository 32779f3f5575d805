"""The course and its days: which green is worked on which day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from notices.drawings.lettering import fitted
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, PAPER, QUIET, SAND
from notices.drawings.sizes import PAGE, PHONE, Sizes
from notices.drawings.svg import Rect, document, rect, text
from notices.programme.model import Green
from notices.wording.greens import course_phrase, courses_of, label
from notices.wording.period import PeriodWords
from notices.wording.words import Words


@dataclass(frozen=True, slots=True)
class _Boxes:
    """How many boxes stand in a row, how large they are, and the letters in them."""

    columns: int
    wide: int
    tall: int
    number: int
    """Size of the number of a green, which stands above its day."""
    day: int
    name: int
    """Size of what is no number: a putting green."""

    @property
    def width(self) -> int:
        """Width of a whole row."""
        return self.across(self.columns)

    def across(self, columns: int) -> int:
        """Width of a box that takes so many columns."""
        return columns * self.wide + (columns - 1) * GAP


GAP = 8
BOXES = {
    PAGE: _Boxes(columns=6, wide=92, tall=68, number=27, day=18, name=17),
    PHONE: _Boxes(columns=4, wide=76, tall=52, number=21, day=13, name=14),
}
"""The boxes for each width at which the drawing is seen."""

HEADING, HEADING_SIZE = 34, 20
"""Height of the row that names a course, and the size of its letters."""

SQUARE, SQUARE_GAP, SQUARES, NINE = 14, 5, 18, 9
"""Sides and distance of the squares of a strip, and how many stand in a row of one course or a nine."""

FLATTEST = 0.165
"""Height of a strip by its width, up to which its squares fill the width: a line of a table is no higher."""


@dataclass(frozen=True, slots=True)
class _Box:
    """One green: its name and the day it is worked on."""

    label: str
    day: str
    shaded: bool
    columns: int = 1


@dataclass(frozen=True, slots=True)
class _Group:
    """The boxes of one course, or those that belong to none."""

    heading: str
    boxes: tuple[_Box, ...]


def greens_by_day(words: Words, period_words: PeriodWords, sizes: Sizes = PAGE) -> Drawing:
    """Draw a box for each green, with the day on which it is worked.

    Neighbouring days take turns in shade, so that the groups are seen at once. Where there are
    several courses, each stands under its name.
    """
    boxes = BOXES[sizes]
    width = boxes.width
    parts: list[str] = []
    y = 0
    for group in _groups(words, period_words):
        if group.heading:
            parts.append(_draw_heading(group.heading, y, width))
            y += HEADING
        elif y:  # stands apart from the course above, to which it does not belong
            y += 2 * GAP
        column = 0
        for box in group.boxes:
            if column + box.columns > boxes.columns:
                column, y = 0, y + boxes.tall + GAP
            parts.append(_draw(box, boxes, column * (boxes.wide + GAP), y))
            column += box.columns
        y += boxes.tall + GAP
    height = y - GAP
    title = "Which green on which day"
    return Drawing(
        f"greens-by-day{sizes.suffix}",
        title,
        _in_words(words, period_words),
        document(width, height, title, "".join(parts), ground=None),
        width,
        height,
        f"{EACH_BOX} {TURNS}" if len(words.days_of(period_words.period)) > 1 else EACH_BOX,
    )


EACH_BOX = "Each box is a green, with the day on which we work on it."
TURNS = "The shading changes with each day."


def green_strip(words: Words, greens: Sequence[str], name: str) -> Drawing:
    """Draw the greens as rows of squares, those of one day filled.

    The front nine of the only course stands above its back nine. Of several courses each has a row,
    or two where it has more than eighteen greens. A putting green stands a little apart.
    """
    step = SQUARE + SQUARE_GAP
    rows = _strip_rows(words.programme.greens)
    parts = []
    width: float = 0
    for line, row in enumerate(rows):
        x = 0
        for place, green in enumerate(row):
            putting = not green.holes and (place == 0 or row[place - 1].holes != ())
            x += 2 * SQUARE_GAP if putting or (place == NINE and green.holes) else 0
            parts.append(_square(x + 1, line * step + 1, filled=green.key in greens))
            x += step
        width = max(width, x)
    height = len(rows) * step - SQUARE_GAP + 2
    # Few greens leave room beside them, so that a strip is not higher than its line.
    width = max(width - SQUARE_GAP + 2, min(height / FLATTEST, SQUARES * step))
    title = f"On the course: {words.greens(greens)}"
    return Drawing(
        name,
        title,
        title,
        document(width, height, title, "".join(parts), ground=None),
        width,
        height,
    )


def _strip_rows(greens: Mapping[str, Green]) -> list[list[Green]]:
    """Return the greens row by row; those without a number stand at the end of a row."""
    rows: list[list[Green]] = []
    courses = _by_course(greens)
    alone = len(courses) == 1
    for _, own in courses:
        numbered = [green for green in own if green.holes]
        names = [green for green in own if not green.holes]
        long = NINE if alone and len(numbered) <= SQUARES else SQUARES
        rows += [numbered[n : n + long] for n in range(0, len(numbered), long)]
        if rows and len(rows[-1]) + len(names) <= long + 2:
            rows[-1] = rows[-1] + names
        else:
            rows += [names[n : n + long] for n in range(0, len(names), long)]
    return rows


def _by_course(greens: Mapping[str, Green]) -> list[tuple[str, list[Green]]]:
    """Return the greens of each course, by number, and last those that belong to none."""
    courses = courses_of(greens)
    if len(courses) < 2:
        return [("", list(greens.values()))]
    groups: dict[str, list[Green]] = {course: [] for course in courses}
    for green in greens.values():
        groups.setdefault(green.course if green.course in courses else "", []).append(green)
    return [(course, sorted(own, key=_by_number)) for course, own in groups.items()]


def _by_number(green: Green) -> tuple[bool, int]:
    return (green.number is None, green.number or 0)


def _square(x: float, y: float, *, filled: bool) -> str:
    fill, stroke = (INK, INK) if filled else (PAPER, QUIET)
    return rect(Rect(x, y, SQUARE, SQUARE), rx=3, fill=fill, stroke=stroke, stroke_width=2)


def _groups(words: Words, period_words: PeriodWords) -> list[_Group]:
    """Return the boxes of each course; a course on which nothing is done is left out."""
    period = period_words.period
    months = {day.month for day in period.days}
    order = {day: index for index, (days, _) in enumerate(words.days_of(period)) for day in days}
    worked: dict[str, list[dt.date]] = {}
    for day in period.days:
        for key in period.greens_on(day):
            worked.setdefault(key, []).append(day)
    groups = []
    for course, greens in _by_course(words.programme.greens):
        boxes = []
        for green in greens:
            days = worked.get(green.key, [])
            shaded = bool(days) and order[days[0]] % 2 == 0
            if days:
                columns = 1 if green.holes else 2
                boxes.append(_Box(label(green), _label(words, days, months), shaded, columns))
            elif green.holes:
                boxes.append(_Box(label(green), "no work", shaded))
        if any(worked.get(green.key) for green in greens):
            heading = course_phrase(course).removeprefix("the ") if course else ""
            groups.append(_Group(heading[:1].upper() + heading[1:], tuple(boxes)))
    return groups


def _label(words: Words, days: Sequence[dt.date], months: set[int]) -> str:
    if len(days) > 1:
        return words.dates.span_of_month(days)
    return words.dates.weekday(days[0]) if len(months) == 1 else words.dates.month_day(days[0])


def _draw_heading(heading: str, y: float, width: float) -> str:
    name = fitted(heading, width - 2 * GAP, HEADING_SIZE, bold=True)
    return text(name, (width / 2, y + 23), HEADING_SIZE, bold=True, anchor="middle")


def _draw(box: _Box, boxes: _Boxes, x: int, y: int) -> str:
    wide = boxes.across(box.columns)
    middle = x + wide / 2
    quiet = QUIET if box.day == "no work" else INK
    size = boxes.number if box.columns == 1 and len(box.label) < 6 else boxes.name
    name = fitted(box.label, wide - 2 * GAP, size, bold=True)
    ground = SAND if box.shaded else PAPER
    frame = Rect(x + 1, y + 1, wide - 2, boxes.tall - 2)
    name_at, day_at = round(0.456 * boxes.tall), round(0.81 * boxes.tall)
    return (
        rect(frame, rx=6, fill=ground, stroke=quiet, stroke_width=1.5)
        + text(name, (middle, y + name_at), size, bold=True, anchor="middle")
        + text(box.day, (middle, y + day_at), boxes.day, anchor="middle", fill=quiet)
    )


def _in_words(words: Words, period_words: PeriodWords) -> str:
    return " ".join(
        f"{words.dates.days(days)}: {words.greens(greens)}."
        for days, greens in words.days_of(period_words.period)
    )
