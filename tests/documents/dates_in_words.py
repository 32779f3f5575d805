"""Reads dates and greens in words, without a line of what wrote them."""

from __future__ import annotations

import calendar
import datetime as dt
import itertools
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

MONTHS = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]
WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]

_MONTH = "|".join([*MONTHS, "Sept", *(month[:3] for month in MONTHS)])
_WEEKDAY = "|".join([*WEEKDAYS, *(day[:3] for day in WEEKDAYS)])
_POINT = re.compile(
    rf"(?<![\w:.-])(?:(?P<weekday>{_WEEKDAY}) )?(?P<day>\d{{1,2}})(?![\w:.])"
    # "1 May I lift my ball?" is the end of one line and the begin of another.
    rf"(?: (?P<month>{_MONTH})\b(?! I\b)(?: (?P<year>\d{{4}})\b)?)?"
)
_THIRD = re.compile(rf"\b(?P<part>early |mid-|late )(?P<month>{_MONTH})\b(?: (?P<year>\d{{4}}))?")
_AMERICAN = re.compile(
    rf"(?:\b(?P<weekday>{_WEEKDAY}), )?\b(?P<month>{_MONTH}) (?P<day>\d{{1,2}})(?!\d)"
    r"(?:, (?P<year>\d{4})\b)?"
)
_PARTS = {
    "early ": (1, 10),
    "mid-": (11, 20),
    "late ": (21, 31),
}
_ISO = re.compile(r"\b\d{4}-\d\d-\d\d\b")


class UnreadableError(AssertionError):
    """The words name a day that the calendar does not have, or not with that weekday."""


@dataclass(frozen=True)
class Said:
    """What one stretch of words names: every day of a run, or all days that "mid-June" may mean."""

    text: str
    days: tuple[dt.date, ...]
    rough: bool = False


@dataclass
class _Point:
    match: re.Match[str]
    month: int | None
    year: int | None
    date: dt.date | None = None


def read_dates(text: str, issued: dt.date, head: dt.date | None = None) -> list[Said]:
    """Return all that a text says of dates.

    Parameters
    ----------
    text
        Blanks of any kind count as one.
    issued
        A date without a year is of this year.
    head
        A day of the month that stands over a column of days, as in "August: Mon 23"; where the
        heading says the year alone, the first day of those below it.
    """
    text = _as_in_britain(" ".join(text.split()))
    if match := _ISO.search(text):
        raise UnreadableError(f"a date for machines: {match[0]}")
    points = [
        _Point(match, _number(match["month"]), int(match["year"]) if match["year"] else None)
        for match in _POINT.finditer(text)
        if match["weekday"] or match["month"]
    ]
    joints = [
        text[one.match.end() : other.match.start()] for one, other in itertools.pairwise(points)
    ]
    for index in reversed(range(len(points))):
        joined = index < len(joints) and joints[index] in (" to ", " and ")
        following = points[index + 1] if joined else None
        run = joined and joints[index] == " to "
        points[index].date = _date(points[index], following, issued, head, run=run)
    return [*_runs(points, joints, text), *_rough(text, issued)]


def _as_in_britain(text: str) -> str:
    """Turn "Monday, August 23, 2027" round, in a text that has such a date at all."""
    if not any(match["weekday"] or match["year"] for match in _AMERICAN.finditer(text)):
        return text  # where "Mon 30 Aug 1 to 3" is a row of a table
    order = ("weekday", "day", "month", "year")
    return _AMERICAN.sub(lambda match: " ".join(filter(None, map(match.group, order))), text)


def _number(month: str | None) -> int | None:
    if month is None:
        return None
    return next(n for n, name in enumerate(MONTHS, 1) if name.startswith(month[:3]))


def _date(
    point: _Point,
    following: _Point | None,
    issued: dt.date,
    head: dt.date | None,
    *,
    run: bool,
) -> dt.date:
    later = following.date if following else None
    day = int(point.match["day"])
    month = point.month
    if month is None:
        frame = later or head
        if frame is None:
            raise UnreadableError(f"{point.match[0]}: of which month?")
        years, month = [frame.year], frame.month
    elif point.year is not None:
        years = [point.year]
    elif run and later:
        years = [later.year if (month, day) <= (later.month, later.day) else later.year - 1]
    else:
        years = [issued.year, *([later.year] if later else [])]
        years += [head.year, head.year + 1] if head else []
    there = [year for year in years if day <= calendar.monthrange(year, month)[1]]
    if not there:
        raise UnreadableError(f"{point.match[0]}: there is no such day")
    for year in there:
        date = dt.date(year, month, day)
        weekday = point.match["weekday"]
        if weekday is None or WEEKDAYS[date.weekday()].startswith(weekday):
            return date
    raise UnreadableError(f"{point.match[0]}: {years} has another weekday")


def _runs(points: list[_Point], joints: list[str], text: str) -> Iterator[Said]:
    index = 0
    while index < len(points):
        first = points[index]
        last = first
        if index < len(joints) and joints[index] == " to ":
            last = points[index + 1]
            index += 1
        index += 1
        assert first.date is not None
        assert last.date is not None
        words = text[first.match.start() : last.match.end()]
        length = (last.date - first.date).days
        if length < 0:
            raise UnreadableError(f"{words}: ends before it starts")
        yield Said(words, tuple(first.date + dt.timedelta(days=n) for n in range(length + 1)))


def _rough(text: str, issued: dt.date) -> Iterator[Said]:
    for match in _THIRD.finditer(text):
        year = int(match["year"]) if match["year"] else issued.year
        month = _number(match["month"])
        first, last = _PARTS[match["part"]]
        assert month is not None
        days = (dt.date(year, month, 1) + dt.timedelta(days=n - 1) for n in range(first, last + 1))
        yield Said(match[0], tuple(day for day in days if day.month == month), rough=True)


def days_in(said: Iterable[Said]) -> tuple[dt.date, ...]:
    """Return all days named exactly, in order and once."""
    return tuple(sorted({day for one in said if not one.rough for day in one.days}))


_KEY = re.compile(r"(?:(?P<course>.+) )?(?P<holes>[0-9]+(?:/[0-9]+)*)")
_TOTALS = {
    "both": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
}
_KIND = re.compile(" (?:course|nine|loop|links)$")


def read_greens(words: str, course: Iterable[str]) -> set[str]:
    """Return the keys of the greens that the words name.

    "1, 2 and 5 to 7", "18, putting green", "Oak 1 to 9; Elm 4", "2/16", "all 18 greens of the Oak
    course and green 3 of the Elm course", "the putting green and all greens except green 4".
    """
    course = list(course)
    words, _, but = words.partition("all greens except ")
    if but:
        numbered = {key for key in course if _KEY.fullmatch(key.casefold().removeprefix("the "))}
        besides = words.removesuffix(" and ")
        return _greens_named(besides, course) | (numbered - _greens_named(but, course))
    return _greens_named(words, course)


def _greens_named(words: str, course: list[str]) -> set[str]:
    holes: dict[tuple[str, int], str] = {}
    names: dict[str, str] = {}
    for key in course:
        match = _KEY.fullmatch(key.casefold().removeprefix("the "))
        if match is None:
            names[key.casefold().removeprefix("the ")] = key
            continue
        for hole in match["holes"].split("/"):
            holes[_KIND.sub("", match["course"] or ""), int(hole)] = key
    courses = {name for name, _ in holes}
    alone = next(iter(courses)) if len(courses) == 1 else ""
    found: set[str] = set()
    for stretch in filter(None, words.strip().rstrip(".").casefold().split("; ")):
        of, waiting = alone, []
        for part in re.split(r",? and |, ", stretch):
            text = re.sub(r"^the (?:double |triple |shared )?|^greens? ", "", part)
            text = re.sub(r"^greens? (?:of )?", "", text)
            text, _, behind = text.partition(" of the ")
            before = next((name for name in courses if name and text.startswith(f"{name} ")), "")
            if before and text not in names:
                of, text = before, text.removeprefix(f"{before} ")
            if text in names:
                found.add(names[text])
            elif _KIND.sub("", part.removeprefix("the ")) in courses:
                of = _KIND.sub("", part.removeprefix("the "))
                found |= {key for (name, _), key in holes.items() if name == of}
            else:
                waiting.append(text)
            if behind:
                of = _KIND.sub("", behind)
                found |= _numbered(waiting, of, holes)
                waiting = []
        found |= _numbered(waiting, of, holes)
    return found


def _numbered(parts: list[str], of: str, holes: dict[tuple[str, int], str]) -> set[str]:
    found: set[str] = set()
    for part in parts:
        if match := re.fullmatch(r"(both|all [a-z]+|all \d+) greens", part):
            said = match[1].removeprefix("all ")
            total = _TOTALS[said] if said in _TOTALS else int(said)
            every = {key for (name, _), key in holes.items() if of in ("", name)}
            assert len(every) <= total, part
            assert of or len(every) == total, part
            found |= every
        elif match := re.fullmatch(r"(\d+) to (\d+)", part):
            found |= {holes[of, number] for number in range(int(match[1]), int(match[2]) + 1)}
        else:
            found |= {holes[of, int(number)] for number in part.split("/")}
    return found
