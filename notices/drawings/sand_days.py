"""Sand by day: the amount for each day of dressing, with different bars for top-ups."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from itertools import groupby

from notices.drawings.chart import Explained, box, drawing, hatching, key, line
from notices.drawings.lettering import width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import LINE, LOAM, PAPER, QUIET
from notices.drawings.scale import Amounts, marks_to
from notices.drawings.sizes import PAGE
from notices.drawings.svg import text
from notices.programme.sand_order import SandDay, SandOrder
from notices.wording import amounts
from notices.wording.lists import counted
from notices.wording.measures import mass
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
LEFT = 44.0
HIGH = 110.0
"""Height of the highest bar."""
MOST = 24
"""Most days in a row."""
WIDEST, GAP = 44.0, 12.0
"""Largest width of a day, and gap between days that do not follow one another."""
FOOT = 48.0
"""Height below the bars, for weekday, day and month."""


def sand_by_day(words: Words) -> Drawing | None:
    """Draw a bar for each day on which sand is spread, waste included; None without sand."""
    order = words.programme.sand_order
    if order is None:
        return None
    units = words.programme.club.units
    rows = list(_rows(order.days))
    most = max(mass(day.mass_t, units)[0] for day in order.days)
    unit = mass(0.0, units)[1]
    parts = [
        text(f"Sand by day, in {'tonnes' if unit == 't' else unit}", (0, 12), SIZE, bold=True),
        text(_total(words, order), (PAGE.width, 12), SIZE, anchor="end"),
    ]
    y = 34.0
    for row in rows:
        parts += _row(words, row, most, y)
        y += HIGH + FOOT + 20
    explained, foot = key(_explained(words, order), y - 12, PAGE.width)
    return drawing(
        "sand-by-day",
        "Sand by day",
        _in_words(words, order),
        (PAGE.width, foot),
        [*parts, *explained],
    )


def _rows(days: Sequence[SandDay]) -> Iterator[Sequence[SandDay]]:
    """Yield days in rows of about the same length."""
    count = -(-len(days) // MOST)
    length = -(-len(days) // count)
    for begin in range(0, len(days), length):
        yield days[begin : begin + length]


def _row(words: Words, days: Sequence[SandDay], most: float, top: float) -> Iterator[str]:
    units = words.programme.club.units
    amounts = Amounts.up_to(most, top + HIGH, top)
    places = _places(days)
    for amount in marks_to(most):
        y = amounts.at(amount)
        yield line(LEFT, y, places[-1][1] + 6, y, stroke=QUIET if amount == 0 else LINE)
        yield text(f"{amount:g}", (LEFT - 8, y + 4), SMALL, anchor="end", fill=QUIET)
    for day, (left, right) in zip(days, places, strict=True):
        amount = mass(day.mass_t, units)[0]
        y, middle, thick = amounts.at(amount), (left + right) / 2, min(26.0, right - left - 6)
        yield _bar(middle - thick / 2, y, thick, top + HIGH - y, top_up=day.top_up)
        yield text(f"{amount:.1f}", (middle, y - 4), SMALL, anchor="middle")
        weekday = words.dates.weekday(day.date).replace(str(day.date.day), "").strip()
        below = top + HIGH
        yield text(weekday, (middle, below + 15), SMALL, anchor="middle", fill=QUIET)
        yield text(str(day.date.day), (middle, below + 29), SMALL, anchor="middle")
    for _, group in groupby(
        zip(days, places, strict=True), lambda item: (item[0].date.year, item[0].date.month)
    ):
        own = list(group)
        (left, _), (_, right) = own[0][1], own[-1][1]
        yield line(left + 3, top + HIGH + 34, right - 3, top + HIGH + 34, stroke=QUIET)
        yield text(_month(words, own[0][0].date, right - left), (left + 3, top + HIGH + 47), SMALL)


def _month(words: Words, day: dt.date, room: float) -> str:
    name = f"{words.dates.month(day)} {day.year}"
    if width_of(name, SMALL) <= room:
        return name
    return words.dates.month_day(day).replace(str(day.day), "").strip()


def _places(days: Sequence[SandDay]) -> list[tuple[float, float]]:
    """Return left and right x of each day, with gaps where days do not follow one another."""
    apart = [
        bool(place) and (day.date - days[place - 1].date).days > 1 for place, day in enumerate(days)
    ]
    room = PAGE.width - LEFT - 12 - GAP * sum(apart)
    wide = min(WIDEST, room / len(days))
    places = []
    x = LEFT + 6
    for gap in apart:
        x += GAP * gap
        places.append((x, x + wide))
        x += wide
    return places


def _total(words: Words, order: SandOrder) -> str:
    total = amounts.mass(order.mass_t, words.programme.club.units)
    loads = counted(order.lorry_loads, "load")
    return f"In all {total}, {loads}, there by {words.dates.short_day(order.deliver_by)}"


def _explained(words: Words, order: SandOrder) -> Iterator[Explained]:
    """Yield key entries for the bars that are drawn."""
    for top_up, said in (
        (False, f"first {words.language.terms.dressing}"),
        (True, words.language.terms.top_up),
    ):
        if any(day.top_up is top_up for day in order.days):
            yield Explained(_bar(0.5, 3, 21, 12, top_up=top_up), 22.0, said)


def _bar(x: float, y: float, wide: float, high: float, *, top_up: bool) -> str:
    ground = box(x, y, wide, high, fill=PAPER if top_up else LOAM, stroke=LOAM)
    return ground + hatching(x, y, wide, high, stroke=LOAM) if top_up else ground


def _in_words(words: Words, order: SandOrder) -> str:
    """Return in words everything that the drawing shows."""
    told = []
    for day in order.days:
        amount, unit = mass(day.mass_t, words.programme.club.units)
        kind = (
            words.language.terms.top_up if day.top_up else f"first {words.language.terms.dressing}"
        )
        told.append(f"{words.dates.day(day.date)}, {kind}: {amount:.1f} {unit}.")
    return " ".join([f"{_total(words, order)}.", *told])
