"""Working days: hours of work, compared with the crew's hours and with daylight."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator, Sequence

from notices.drawings.chart import Explained, box, drawing, hatching, key, line, shape
from notices.drawings.lettering import width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, LINE, LOAM, PAPER, QUIET
from notices.drawings.scale import Amounts
from notices.drawings.sizes import PAGE
from notices.drawings.svg import text
from notices.programme.crew_days import CrewDays, crew_days
from notices.programme.model import DayTimetable
from notices.wording.lists import counted, sentence
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
ROW, APART = 20.0, 7.0
"""Height of a day, and gap between days that do not follow one another."""
HEAD = 40.0
GAP = 12.0
"""Gap between the words of a row and its line of hours."""
MOST = 36
"""Most rows in one drawing."""
HOUR, DAY = 60.0, 1440.0
LATEST = DAY + 6 * HOUR
"""Latest end of a line of hours [minutes]; only the words tell of work beyond it."""


CAPTION = "Black is work. It should lie within the hours of the crew, and in daylight."
LONGEST = "Where several days stand together, the longest of them is drawn."


def work_hours(words: Words) -> tuple[Drawing, ...]:
    """Draw each working day as a line of hours; no drawings if the plan names no crew.

    Days with the same work share a line.
    """
    entries = crew_days(words.programme)
    if not entries:
        return ()
    count = -(-len(entries) // MOST)
    length = -(-len(entries) // count)
    return tuple(
        _draw(words, entries[begin : begin + length], place)
        for place, begin in enumerate(range(0, len(entries), length), 1)
    )


def _draw(words: Words, entries: Sequence[CrewDays], place: int) -> Drawing:
    days = [entry.longest for entry in entries]
    names = [words.dates.short_days(entry.dates) for entry in entries]
    told = [_told(words, day) for day in days]
    left = max(width_of(name, SMALL) for name in names) + GAP
    right = PAGE.width - max(width_of(said, SMALL, bold=True) for said in told) - GAP
    hours = _hours(days, left, right)
    rows: list[str] = []
    grounds: list[str] = []
    y = HEAD
    before: dt.date | None = None
    for entry, name, said in zip(entries, names, told, strict=True):
        day = entry.longest
        if before is not None and (entry.dates[0] - before).days > 1:
            y += APART
        before = entry.dates[-1]
        grounds += _night(day, hours, y)
        rows += _row(name, day, hours, y)
        rows.append(text(said, (right + GAP, y + 14), SMALL, bold=day.too_long_by > 0))
        y += ROW
    parts = [
        text("Hours of work on the greens", (0, 12), SIZE, bold=True),
        *grounds,
        *_axis(words, hours, y),
        *rows,
    ]
    explained, foot = key(_explained(days), y + 8, PAGE.width)
    return drawing(
        f"work-hours-{place}",
        "Hours of work, of the crew and of light",
        _in_words(words, entries),
        (PAGE.width, foot),
        [*parts, *explained],
        " ".join([CAPTION, *_joined(entries), *_drying(days)]),
    )


def _hours(days: Sequence[DayTimetable], left: float, right: float) -> Amounts:
    """Return an axis of minutes from midnight that covers everything drawn."""
    starts = [
        min(day.begins, day.begins if day.light_from is None else day.light_from) for day in days
    ]
    ends = [
        max(
            day.ends,
            day.last_finish,
            day.ends if day.light_until is None else min(DAY, day.light_until),
        )
        for day in days
    ]
    return Amounts(
        min(LATEST, HOUR * math.ceil(max(ends) / HOUR)),
        left,
        right,
        lowest=HOUR * math.floor(max(0.0, min(starts)) / HOUR),
    )


def _night(day: DayTimetable, hours: Amounts, y: float) -> Iterator[str]:
    """Yield the dark before dawn and after dusk."""
    if day.light_from is not None:
        yield box(hours.begin, y, hours.at(day.light_from) - hours.begin, ROW + 0.3, fill=LINE)
    if day.light_until is not None:
        left = hours.at(day.light_until)
        yield box(left, y, hours.end - left, ROW + 0.3, fill=LINE)


def _axis(words: Words, hours: Amounts, foot: float) -> Iterator[str]:
    """Yield names of hours at regular steps, with a fine line down from each."""
    wide = width_of(_clock(words, 22 * HOUR, short=True), SMALL) + GAP
    steps = (step * HOUR for step in (2, 3, 4, 6))
    step = next(
        s for s in steps if hours.at(hours.lowest + s) - hours.begin >= wide or s == 6 * HOUR
    )
    minute = step * math.ceil(hours.lowest / step)
    while minute <= hours.highest:
        x = hours.at(minute)
        yield line(x, HEAD - 4, x, foot)
        said = _clock(words, minute, short=True)
        half = width_of(said, SMALL) / 2
        if x - half >= hours.begin - 20 and x + half <= PAGE.width:
            yield text(said, (x, HEAD - 9), SMALL, anchor="middle", fill=QUIET)
        minute += step


def _row(name: str, day: DayTimetable, hours: Amounts, y: float) -> Iterator[str]:
    """Yield the name of a day, the crew's hours as an outline, and the work as black bars."""
    yield text(name, (0, y + 14), SMALL)
    left, right = hours.at(day.begins), hours.at(day.ends)
    yield box(left, y + 3, right - left, ROW - 6, fill=PAPER, stroke=QUIET)
    begin, end = day.first_start, day.last_finish
    in_time = max(begin, min(end, day.work_until))
    for first, last in day.waits:
        if first < in_time:
            yield _wait(hours.at(first), hours.at(min(last, in_time)), y + ROW / 2)
    for first, last in day.at_work:
        if first < in_time:
            x = hours.at(first)
            yield box(x, y + 5.5, hours.at(min(last, in_time)) - x, ROW - 11, fill=INK)
    if end > in_time:
        x = hours.at(in_time)
        yield _late(x, y + 3, hours.at(end) - x, ROW - 6)
    if day.dew_off is not None and day.dew_off > begin:
        x = hours.at(day.dew_off)
        yield _dew(x, y + 1.5)


def _wait(left: float, right: float, y: float) -> str:
    """Draw a thin line from one stretch of work to the next."""
    return line(left, y, right, y, stroke=INK, dashes="2 2", thick=1.5)


def _dew(x: float, y: float) -> str:
    """Draw a small triangle that points down."""
    return shape([(x - 4, y), (x + 4, y), (x, y + 7)], fill=LOAM, stroke=PAPER, thick=0.8)


def _told(words: Words, day: DayTimetable) -> str:
    """Return start and end of work in words, rounded outwards to the half hour."""
    begin, end = day.told_start, day.told_finish
    if end > DAY:
        return f"{_clock(words, begin)} on: far too long"
    late = ": too long" if day.too_long_by > 0 else ""
    return f"{_clock(words, begin)} to {_clock(words, end)}{late}"


def _clock(words: Words, minutes: float, *, short: bool = False) -> str:
    """Return a time of day in words; past midnight it counts from the new day."""
    said = words.language.clock_at(minutes)
    return said.replace(":00 ", " ") if short else said


def _explained(days: Sequence[DayTimetable]) -> Iterator[Explained]:
    """Yield key entries for the marks that are drawn."""
    yield Explained(box(0, 4, 22, 9, fill=INK), 22.0, "work")
    if any(day.waits for day in days):
        yield Explained(_wait(0, 22, 8.5), 22.0, "waiting for dew to go or sand to dry")
    yield Explained(box(0.5, 2, 21, 13, fill=PAPER, stroke=QUIET), 22.0, "hours of the crew")
    if any(day.light_from is not None or day.light_until is not None for day in days):
        yield Explained(box(0, 1, 22, 15, fill=LINE), 22.0, "dark")
    if any(day.dew_off is not None and day.dew_off > day.first_start for day in days):
        yield Explained(_dew(11, 5), 22.0, "dew is off, sand can be spread")
    if any(day.too_long_by > 0 for day in days):
        yield Explained(_late(0.5, 2, 21, 13), 22.0, "after the day’s end")


def _late(x: float, y: float, wide: float, high: float) -> str:
    """Draw the mark of work that goes on too long."""
    ground = box(x, y, wide, high, fill=PAPER, stroke=LOAM)
    return ground + hatching(x, y, wide, high, step=4, stroke=LOAM)


def _drying(days: Sequence[DayTimetable]) -> Iterator[str]:
    """Yield a sentence on how long sand dries, if work on a green waits for it."""
    if minutes := max((day.drying or 0.0 for day in days), default=0.0):
        dries = counted(round(minutes), "minute")
        yield f"Before a green is brushed or rolled, its sand has {dries} to dry."


def _joined(entries: Sequence[CrewDays]) -> Iterator[str]:
    if any(len(entry.days) > 1 for entry in entries):
        yield LONGEST


def _in_words(words: Words, entries: Sequence[CrewDays]) -> str:
    """Return in words everything that the drawing shows, a sentence for each row."""
    told = []
    for entry in entries:
        day = entry.longest
        light = ""
        if day.light_from is not None and day.light_until is not None:
            light = (
                f"; light from {_clock(words, day.light_from)} to {_clock(words, day.light_until)}"
            )
        dew = ""
        if day.dew_off is not None and day.dew_off > day.first_start:
            dew = f"; dew off at {_clock(words, day.dew_off)}"
        waits = "".join(
            f"; waiting from {_clock(words, first)} to {_clock(words, last)}"
            for first, last in day.waits
        )
        late = ""
        if day.too_long_by > 0:
            late = f"; too long by {day.too_long_by:.0f} minutes"
        told.append(
            sentence(
                f"{words.dates.days(entry.dates)}: work {_told(words, day).removesuffix(': too long')}; "
                f"crew {_clock(words, day.begins)} to {_clock(words, day.ends)}{light}{dew}{waits}{late}"
            )
        )
    return " ".join([*told, *_joined(entries), *_drying([entry.longest for entry in entries])])
