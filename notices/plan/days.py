"""Days and times of day as they stand in a plan: "2026-10-12 to 2026-10-14", "06:30".

Dates have one order, year-month-day, because 12/10/2026 is two different days on the two sides of
the Atlantic. What is written in another order is refused, with the right spelling wherever only
one day can be meant.
"""

from __future__ import annotations

import calendar
import datetime as dt
import itertools
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal

LONGEST_RANGE = 366
FIRST_YEAR, LAST_YEAR = 1900, 2200

# Own names, because those of the calendar module change with the computer's language.
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
_ONE = "year-month-day, such as 2026-10-12"
_WEEKDAYS = "(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?"
_RANGE_SIGN = "[ ]+to[ ]+|[ ]+-[ ]+|[ ]*[\u2013\u2014][ ]*"


@dataclass(frozen=True, slots=True)
class DayRange:
    """The days from the first to the last, both included."""

    first: dt.date
    last: dt.date

    def __post_init__(self) -> None:
        if self.last < self.first:
            raise Refusal(
                f"{self.first} to {self.last} runs backwards",
                f'write "{self.last} to {self.first}" if that is meant',
            )

    def __iter__(self) -> Iterator[dt.date]:
        return (self.first + dt.timedelta(days=n) for n in range(len(self)))

    def __len__(self) -> int:
        return (self.last - self.first).days + 1

    def __contains__(self, day: object) -> bool:
        return isinstance(day, dt.date) and self.first <= day <= self.last

    def __str__(self) -> str:
        return f"{self.first}" if self.first == self.last else f"{self.first} to {self.last}"


def parse_days(value: object) -> tuple[DayRange, ...]:
    """Read one or more days.

    Parameters
    ----------
    value
        Text such as "2026-10-12, 2026-10-14 to 2026-10-16", a date, or a list of such.

    Returns
    -------
    tuple of DayRange
        In the order of the calendar, no day in two of them; ranges stay as they were written.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    parts = value if isinstance(value, list | tuple) else [value]
    ranges = [found for part in parts for found in _ranges_of_part(part)]
    if not ranges:
        raise Refusal("no date is written here", f"write {_ONE}")
    ranges.sort(key=lambda r: r.first)
    for earlier, later in itertools.pairwise(ranges):
        if later.first <= earlier.last:
            raise Refusal(f"{later.first} stands here twice", "name each day once")
    return tuple(ranges)


def all_days(ranges: Iterable[DayRange]) -> tuple[dt.date, ...]:
    """Return every day of the ranges, in the order of the calendar."""
    return tuple(sorted(day for days in ranges for day in days))


def format_days(ranges: Iterable[DayRange]) -> str:
    """Write days so that `parse_days` reads the same again: "2026-10-12, 2026-10-14 to 2026-10-16"."""
    return ", ".join(str(days) for days in ranges)


def parse_clock(value: object) -> dt.time:
    """Read a time of day on the 24-hour clock, such as "06:30".

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    if isinstance(value, dt.time):
        return value.replace(second=0, microsecond=0, tzinfo=None)
    text = value.strip() if isinstance(value, str) else quoted(value).strip('"')
    time = re.fullmatch("([0-9]{2}):([0-9]{2})", text)
    if time:
        hour, minute = int(time[1]), int(time[2])
        if hour > 23 or minute > 59:
            raise Refusal(f"{quoted(text)} does not exist", "the day runs from 00:00 to 23:59")
        return dt.time(hour, minute)
    loose = re.fullmatch(
        "([0-9]{1,2})(?:[:.h]([0-9]{2}))?[ ]?([ap]\\.?m\\.?)?", text, re.IGNORECASE
    )
    if loose:
        hour, minute, half = int(loose[1]), int(loose[2] or 0), (loose[3] or "")[:1].lower()
        if half and not 1 <= hour <= 12:
            half = "" if half == "p" and hour < 24 else half
        elif half:
            hour = hour % 12 + (12 if half == "p" else 0)
        if hour < 24 and minute < 60:
            either = f"{hour:02}:{minute:02}"
            # Nobody says which half of the day "4:30" is in.
            if not half and 1 <= hour < 12:
                either = f'{either}" or "{hour + 12:02}:{minute:02}'
            raise Refusal(f"{quoted(text)} is not on the 24-hour clock", f'write "{either}"')
    raise Refusal(f"{quoted(text)} is not a time of day", 'write one such as "06:30"')


def parse_working_day(value: object) -> tuple[dt.time, dt.time]:
    """Read when a working day starts and ends, such as "06:30 to 15:30".

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    example = 'write start and end such as "06:30 to 15:30"'
    if not isinstance(value, str):
        raise Refusal(f"{quoted(value)} is not a working day", example)
    parts = re.split("[ ]+to[ ]+|[ ]*[-\u2013\u2014][ ]*", value.strip())
    if len(parts) != 2 or not all(parts):
        raise Refusal(f"{quoted(value)} is not a working day", example)
    start, end = parse_clock(parts[0]), parse_clock(parts[1])
    if end <= start:
        raise Refusal(f"{quoted(value)} ends before it starts", example)
    return start, end


def format_clock(time: dt.time) -> str:
    """Write a time of day: "06:30"."""
    return f"{time:%H:%M}"


def format_working_day(hours: tuple[dt.time, dt.time]) -> str:
    """Write when a working day starts and ends: "06:30 to 15:30"."""
    return f"{format_clock(hours[0])} to {format_clock(hours[1])}"


def _ranges_of_part(part: object) -> list[DayRange]:
    if isinstance(part, DayRange):
        return [part]
    if isinstance(part, dt.datetime):
        part = part.date()
    if isinstance(part, dt.date):
        return [DayRange(part, part)]
    if isinstance(part, int) and not isinstance(part, bool):
        part = quoted(part).strip('"')
    if not isinstance(part, str):
        raise Refusal(f"{quoted(part)} is not a date", f"write {_ONE}")
    if not part.strip():
        raise Refusal("no date is written here", f"write {_ONE}")
    # The comma of "October 12, 2026" or of "Monday, 12 October 2026" does not part two dates.
    month = "|".join(name[:3] for name in _MONTHS)
    text = re.sub(
        rf"\b((?:{month})[a-z]*\.?[ ]+[0-9]{{1,2}}(?:st|nd|rd|th)?),(?=[ ]*[0-9]{{4}})",
        r"\1",
        part,
        flags=re.IGNORECASE,
    )
    text = re.sub(rf"\b({_WEEKDAYS}),", r"\1", text, flags=re.IGNORECASE)
    ranges = []
    for item in text.split(","):
        if not item.strip():
            raise Refusal(f"{quoted(part)} has a comma with no date beside it", "take it out")
        ranges.append(_range(" ".join(item.split())))
    return ranges


def _range(text: str) -> DayRange:
    ends = re.split(_RANGE_SIGN, text, flags=re.IGNORECASE)
    if len(ends) == 1:
        day = _day(text)
        return DayRange(day, day)
    if len(ends) > 2:
        raise Refusal(f"{quoted(text)} is not a range", 'write "2026-10-12 to 2026-10-14"')
    first, last = ends
    if not first or not last:
        missing = "first" if not first else "last"
        raise Refusal(
            f"{quoted(text)} has no {missing} day", "write a range such as 2026-10-12 to 2026-10-14"
        )
    start = _day(first) if re.fullmatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", first) else None
    if start and re.fullmatch("[0-9]{1,2}", last):
        raise Refusal(
            f"{quoted(text)} has no full last day",
            f'write "{first} to {start.year}-{start.month:02}-{int(last):02}"',
        )
    days = DayRange(start or _day(first), _day(last))
    if len(days) > LONGEST_RANGE:
        raise Refusal(
            f"{quoted(text)} is {len(days)} days", f"the longest range is {LONGEST_RANGE} days"
        )
    return days


def _day(text: str) -> dt.date:
    """Read one date, or refuse it with the right spelling where one can be told."""
    if re.fullmatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        year, month, day = (int(part) for part in text.split("-"))
        return _existing(year, month, day, text)
    meant = []
    for year, month, day in _readings(text):
        try:
            meant.append(_existing(year, month, day, text))
        except Refusal:
            continue
    if meant:
        either = " or ".join(sorted({day.isoformat() for day in meant}))
        raise Refusal(
            f"{quoted(text)} is not written year-month-day", f"write the date as {either}"
        )
    for reading in _readings(text):
        _existing(*reading, text)
    if without_year := named_day(f"{text} 2028"):  # a leap year, so that 29 February passes
        _, month, day = without_year
        raise Refusal(
            f"{quoted(text)} has no year",
            f"write year-month-day: the year, then -{month:02}-{day:02}",
        )
    raise Refusal(f"{quoted(text)} is not a date", f"write {_ONE}")


def _existing(year: int, month: int, day: int, typed: str) -> dt.date:
    if not FIRST_YEAR <= year <= LAST_YEAR:
        raise Refusal(
            f"{quoted(typed)} is not in our time",
            f"the year must lie between {FIRST_YEAR} and {LAST_YEAR}",
        )
    # The bare words, not in quotation marks: nothing is wrong with how the date is written.
    if not 1 <= month <= 12:
        raise Refusal(f"{typed} does not exist", "months go from 01 to 12, and stand in the middle")
    length = calendar.monthrange(year, month)[1]
    if not 1 <= day <= length:
        name = f"{_MONTHS[month - 1]} {year}" if month == 2 else _MONTHS[month - 1]
        raise Refusal(f"{typed} does not exist", f"{name} has {length} days")
    return dt.date(year, month, day)


def _readings(text: str) -> list[tuple[int, int, int]]:
    """Return every (year, month, day) that a date in another order can mean."""
    if parts := re.fullmatch("([0-9]{4})[-/. ]([0-9]{1,2})[-/. ]([0-9]{1,2})", text):
        return [(int(parts[1]), int(parts[2]), int(parts[3]))]
    if re.fullmatch("[0-9]{8}", text):
        return [(int(text[:4]), int(text[4:6]), int(text[6:]))]
    if parts := re.fullmatch("([0-9]{1,2})[-/. ]([0-9]{1,2})[-/. ]([0-9]{4})", text):
        one, other, year = int(parts[1]), int(parts[2]), int(parts[3])
        return [(year, other, one), (year, one, other)]
    named = named_day(text)
    return [named] if named else []


def named_day(text: str) -> tuple[int, int, int] | None:
    """Read a date with its month in letters: "Monday 12th October 2026", "Oct 12 2026"."""
    bare = re.sub(f"^{_WEEKDAYS}[. ]+(?:the )?", "", text, flags=re.IGNORECASE)
    day = "(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
    month = "(?P<month>[a-z]{3,9})"
    found = re.fullmatch(
        f"{day}[- ](?:of )?{month}[-. ]{{1,2}}(?P<year>[0-9]{{4}})", bare, re.IGNORECASE
    ) or re.fullmatch(f"{month}[. ]{{1,2}}{day} (?P<year>[0-9]{{4}})", bare, re.IGNORECASE)
    if not found:
        return None
    letters = found["month"].lower()
    for number, name in enumerate(_MONTHS, start=1):
        if name.lower().startswith(letters) or (number, letters) == (9, "sept"):
            return int(found["year"]), number, int(found["day"])
    return None
