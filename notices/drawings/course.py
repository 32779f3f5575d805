"""The course and its days: which green is worked on which day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from notices.drawings.model import Drawing
from notices.drawings.palette import INK, PAPER, QUIET, SAND
from notices.wording.period import PeriodWords
from notices.wording.words import Words

COLUMNS = 6
BOX, TALL, GAP = 92, 68, 8
NUMBER_SIZE, DAY_SIZE, NAME_SIZE = 27, 18, 17


@dataclass(frozen=True, slots=True)
class _Box:
    """One green: its name and the day it is worked on."""

    label: str
    day: str
    shaded: bool
    columns: int = 1


def greens_by_day(words: Words, period_words: PeriodWords) -> Drawing:
    """Draw a box for each green, with the day on which it is worked.

    Neighbouring days take turns in shade, so that the groups are seen at once.
    """
    boxes = _boxes(words, period_words)
    parts: list[str] = []
    column = row = 0
    for box in boxes:
        if column + box.columns > COLUMNS:
            column, row = 0, row + 1
        parts.append(_draw(box, column * (BOX + GAP), row * (TALL + GAP)))
        column += box.columns
    width = COLUMNS * BOX + (COLUMNS - 1) * GAP
    height = (row + 1) * TALL + row * GAP
    title = "Which green on which day"
    return Drawing(
        "greens-by-day",
        title,
        _in_words(words, period_words),
        _svg(width, height, title, "".join(parts)),
        width,
        height,
    )


def green_strip(words: Words, greens: Sequence[str], name: str) -> Drawing:
    """Draw the whole course as a row of squares, those of one day filled."""
    size, gap = 14, 5
    course = list(words.programme.greens)
    parts = []
    for index, key in enumerate(course):
        filled = key in greens
        x = index * (size + gap) + (2 * gap if words.programme.greens[key].number is None else 0)
        parts.append(
            f'<rect x="{x + 1}" y="1" width="{size}" height="{size}" rx="3" '
            f'fill="{INK if filled else PAPER}" stroke="{INK if filled else QUIET}" '
            f'stroke-width="1.5"/>'
        )
    width = len(course) * (size + gap) + 2 * gap + 2
    title = f"On the course: {words.greens(greens)}"
    return Drawing(
        name, title, title, _svg(width, size + 2, title, "".join(parts)), width, size + 2
    )


def _boxes(words: Words, period_words: PeriodWords) -> list[_Box]:
    period = period_words.period
    months = {day.month for day in period.days}
    order = {day: index for index, (days, _) in enumerate(words.days_of(period)) for day in days}
    boxes = []
    for key, green in words.programme.greens.items():
        days = [day for day in period.days if key in period.greens_on(day)]
        shaded = bool(days) and order[days[0]] % 2 == 0
        if green.number is None:
            if days:
                boxes.append(_Box(key, _label(words, days, months), shaded, columns=2))
        else:
            label = _label(words, days, months) if days else "no work"
            boxes.append(_Box(key, label, shaded))
    return boxes


def _label(words: Words, days: Sequence[dt.date], months: set[int]) -> str:
    if len(days) > 1:
        return words.dates.span_of_month(days)
    return words.dates.weekday(days[0]) if len(months) == 1 else words.dates.month_day(days[0])


def _draw(box: _Box, x: int, y: int) -> str:
    wide = box.columns * BOX + (box.columns - 1) * GAP
    middle = x + wide / 2
    idle = box.day == "no work"
    size = NUMBER_SIZE if box.columns == 1 else NAME_SIZE
    ground = SAND if box.shaded else PAPER
    return (
        f'<rect x="{x + 1}" y="{y + 1}" width="{wide - 2}" height="{TALL - 2}" rx="6" '
        f'fill="{ground}" stroke="{QUIET if idle else INK}" stroke-width="1.5"/>'
        f'<text x="{middle}" y="{y + 31}" font-size="{size}" font-weight="bold" '
        f'fill="{INK}">{escape(_short(box.label, wide))}</text>'
        f'<text x="{middle}" y="{y + 55}" font-size="{DAY_SIZE}" '
        f'fill="{QUIET if idle else INK}">{escape(box.day)}</text>'
    )


def _short(name: str, room: float) -> str:
    """Cut a name that is wider than its box; capitals and signs are taken to be wide."""
    if name.isdecimal():
        return name
    used = 0.0
    for length, sign in enumerate(name):
        used += NAME_SIZE * (0.54 if sign.islower() or sign == " " else 0.95)
        if used > room - 2 * GAP:
            return f"{name[: length - 1].rstrip()}…"
    return name


def _in_words(words: Words, period_words: PeriodWords) -> str:
    return " ".join(
        f"{words.dates.days(days)}: {words.greens(greens)}."
        for days, greens in words.days_of(period_words.period)
    )


def _svg(width: float, height: float, title: str, content: str) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:g} {height:g}" '
        f'width="{width:g}" height="{height:g}" role="img" font-family="Notices Sans" '
        f'text-anchor="middle"><title>{escape(title)}</title>{content}</svg>'
    )
