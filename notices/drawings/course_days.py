"""The course day by day: each green on each day, with fixtures, reserve days, closures and limits.

Greens that fare alike share a row. Days alike but for recovery are drawn as one narrow column
that says how many they are. Days for which there is no room go on in a further drawing, and one
key below the last explains them all.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from notices.drawings.chart import (
    Explained,
    box,
    drawing,
    explained_flags,
    fixture_flag,
    hatching,
    key,
    line,
    pill,
)
from notices.drawings.lanes import Marked, in_lanes, lanes_of
from notices.drawings.lettering import lines_of, width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, LOAM, PAPER, QUIET, SAND, SHADE
from notices.drawings.sizes import PAGE, PHONE, Sizes
from notices.drawings.svg import text
from notices.programme.day_by_day import CourseDay, GreenDay, Stack, course_days
from notices.wording import circumstances
from notices.wording.circumstances import closed_thing
from notices.wording.dates import DateWords
from notices.wording.lists import sentence
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
ROW, BAR, LINE_OF_LABEL = 22.0, 16.0, 15.0
HEAD = 52.0
LANE = 19.0
NARROWEST, WIDEST, FOLD = 27.0, 84.0, 42.0
"""Width of the column of a day, at least and at most, and of that of several days."""

WORDS = {
    GreenDay.OPEN: "open",
    GreenDay.RECOVERING: "open and recovering",
    GreenDay.WAITS: "open, with short waits",
    GreenDay.PART_TEMPORARY: "temporary green part of the day",
    GreenDay.TEMPORARY: "temporary green",
    GreenDay.PART_CLOSED: "closed part of the day",
    GreenDay.CLOSED: "closed",
}
SHORTER = {GreenDay.RECOVERING: "recovering", GreenDay.TEMPORARY: "temporary"}
LETTERS = {
    GreenDay.RECOVERING: "R",
    GreenDay.WAITS: "w",
    GreenDay.PART_TEMPORARY: "t",
    GreenDay.TEMPORARY: "T",
    GreenDay.PART_CLOSED: "c",
    GreenDay.CLOSED: "C",
}
"""A capital letter for the whole day, a small one for a part of it."""

_ASIDE = {GreenDay.RECOVERING: 10.0, GreenDay.TEMPORARY: 14.0}
"""Room beside the words of a bar: for round ends, and for hatching on both sides of their plate."""

_SINGLE = frozenset({GreenDay.WAITS, GreenDay.PART_TEMPORARY, GreenDay.PART_CLOSED})
"""Drawn day by day, since each day has its own hours."""


_RANGE = re.compile(r"(\d+) to (\d+)")


@dataclass(frozen=True, slots=True)
class _Column:
    """A day, or several on which nothing changes, with its place."""

    stack: Stack
    left: float
    right: float

    @property
    def folded(self) -> bool:
        return len(self.stack) > 1

    def edge(self, place: int) -> float:
        """Return where a day of it begins; the place after its last is its end."""
        return self.left + (self.right - self.left) * place / len(self.stack)


@dataclass(frozen=True, slots=True)
class _Row:
    """Greens that fare alike on all days of a drawing."""

    greens: tuple[str, ...]
    label: tuple[str, ...]
    days: tuple[GreenDay, ...]
    before: GreenDay | None
    """What all of them were on the day before the first; None where there is no one word."""
    after: GreenDay | None
    """What all of them are on the day after the last."""

    @property
    def height(self) -> float:
        return max(ROW, len(self.label) * LINE_OF_LABEL + ROW - LINE_OF_LABEL)


@dataclass(frozen=True, slots=True)
class _Run:
    """Days running on which a row is one thing."""

    state: GreenDay
    left: float
    right: float
    from_before: bool
    """Whether it began before the first day of the drawing."""
    goes_on: bool
    """Whether it goes on after the last."""


def course_day_by_day(words: Words, sizes: Sizes = PAGE) -> tuple[Drawing, ...]:
    """Draw greens against days, in as many drawings as the days need; none without a day to tell.

    Parameters
    ----------
    words
        The programme's words.
    sizes
        For a printed page or a wide screen, or for a telephone.
    """
    stacks = course_days(words.programme)
    label = 84.0 if sizes is PHONE else 128.0
    parts = [None, *_split(stacks, sizes.width - label), None]
    # One key for all: it stands below the last.
    return tuple(
        _draw(words, _Part(part, before, after), label, sizes, number, () if after else stacks)
        for number, (before, part, after) in enumerate(
            zip(parts, parts[1:], parts[2:], strict=False), 1
        )
        if part is not None
    )


@dataclass(frozen=True, slots=True)
class _Part:
    """The days of one drawing, and those of its neighbours."""

    stacks: Sequence[Stack]
    earlier: Sequence[Stack] | None
    later: Sequence[Stack] | None

    @property
    def days(self) -> list[CourseDay]:
        return [day for stack in self.stacks for day in stack]

    def day_before(self, place: int) -> GreenDay | None:
        """Return what a green was on the day before the first."""
        return self.earlier[-1][-1].greens[place] if self.earlier else None

    def day_after(self, place: int) -> GreenDay | None:
        """Return what a green is on the day after the last."""
        return self.later[0][0].greens[place] if self.later else None


def _split(stacks: Sequence[Stack], room: float) -> Iterator[Sequence[Stack]]:
    """Cut the days where there is no more room, a little earlier where a long quiet time begins."""
    rest = list(stacks)
    while rest:
        used, fit = 0.0, 0
        while fit < len(rest) and used + _least(rest[fit]) <= room:
            used += _least(rest[fit])
            fit += 1
        if fit < len(rest):
            # All drawings get about as many days, and a quiet time ends one rather than begins one.
            pieces = -(-sum(map(_least, rest)) // room)
            even = max(1, min(fit, round(len(rest) / pieces)))
            near = range(max(1, even - 3), min(fit, even + 3) + 1)
            quiet = [n for n in near if len(rest[n - 1]) > 1]
            fit = min(quiet, key=lambda n: (abs(n - even), n)) if quiet else even
        yield rest[:fit]
        rest = rest[fit:]


def _least(stack: Stack) -> float:
    return FOLD if len(stack) > 1 else NARROWEST


def _columns(stacks: Sequence[Stack], left: float, right: float) -> list[_Column]:
    folds = sum(len(stack) > 1 for stack in stacks)
    single = len(stacks) - folds
    wide = min(WIDEST, (right - left - folds * FOLD) / single) if single else 0.0
    folded = min(WIDEST, (right - left - single * wide) / folds) if folds else 0.0
    columns = []
    for stack in stacks:
        ends = left + (folded if len(stack) > 1 else wide)
        columns.append(_Column(stack, left, ends))
        left = ends
    return columns


def _draw(
    words: Words,
    part: _Part,
    label: float,
    sizes: Sizes,
    number: int,
    explained: Sequence[Stack],
) -> Drawing:
    """Draw one part, and below it the key to some days where it has one."""
    stacks, days = part.stacks, part.days
    columns = _columns(stacks, label, sizes.width - 1)
    rows = _rows(words, part, label)
    top = HEAD
    foot = top + sum(row.height for row in rows)
    parts = [*_grid(words, columns, foot)]
    parts.append(text("Greens", (0, HEAD - 8), SIZE, bold=True))
    y = top
    for row in rows:
        parts += _draw_row(row, columns, y)
        y += row.height
    parts.append(line(0, foot, columns[-1].right, foot, stroke=QUIET))
    events, y = _draw_events(words, columns, foot + 6, sizes.width - 1)
    parts += events
    if explained:
        below, y = key(_explained(words, explained), y + 8, sizes.width)
        parts += below
    first, last = days[0].date, days[-1].date
    span = words.dates.short_days([first, last]) if first == last else _span(words, first, last)
    return drawing(
        f"course-day-by-day{sizes.suffix}-{number}",
        f"The course day by day, {span}",
        _in_words(words, rows, days, stacks),
        (sizes.width, y),
        parts,
        CAPTION if explained else "",
    )


CAPTION = "Each row is a group of greens, and each column a day."


def _span(words: Words, first: dt.date, last: dt.date) -> str:
    return f"{words.dates.short_day(first)} to {words.dates.short_day(last)}"


def _rows(words: Words, part: _Part, label: float) -> list[_Row]:
    """Return a row for all greens that fare alike, in the order of the first of them."""
    alike: dict[tuple[GreenDay, ...], list[int]] = {}
    for place in range(len(words.programme.greens)):
        alike.setdefault(tuple(day.greens[place] for day in part.days), []).append(place)
    keys = tuple(words.programme.greens)
    rows = []
    for fare, places in alike.items():
        greens = tuple(keys[place] for place in places)
        rows.append(
            _Row(
                greens,
                tuple(lines_of(_short(words, greens), label - 8, SIZE)),
                fare,
                _one_word(map(part.day_before, places)),
                _one_word(map(part.day_after, places)),
            )
        )
    return rows


def _one_word(states: Iterable[GreenDay | None]) -> GreenDay | None:
    different = set(states)
    return different.pop() if len(different) == 1 else None


def _short(words: Words, greens: Sequence[str]) -> str:
    """Name them as a label: "1 to 3 and 5 to 18", which breaks only between its parts."""
    said = _RANGE.sub("\\1\u00a0to\u00a0\\2", words.greens(greens, short=True))
    said = said.replace(" and ", " and\u00a0")
    return said[:1].upper() + said[1:]


def _grid(words: Words, columns: Sequence[_Column], foot: float) -> Iterator[str]:
    """Yield the head and, below it, weekends as grounds and quiet days between fine lines."""
    base = HEAD - 8
    for column in columns:
        first = column.stack[0].date
        middle = (column.left + column.right) / 2
        if column.folded:
            yield text(
                str(len(column.stack)), (middle, base - 15), SMALL, anchor="middle", fill=QUIET
            )
            yield text("days", (middle, base), SMALL, anchor="middle", fill=QUIET)
            yield from _fold_marks(column, foot)
            continue
        if _is_shaded(column.stack):
            yield box(
                column.left, HEAD - 4, column.right - column.left + 0.5, foot - HEAD + 4, fill=SHADE
            )
        day = words.dates.weekday(first).replace(str(first.day), "").strip()
        yield text(day, (middle, base - 15), SMALL, anchor="middle", fill=QUIET)
        yield text(str(first.day), (middle, base), SIZE, anchor="middle", bold=True)
    yield from _draw_months(words, columns)


def _is_shaded(stack: Stack) -> bool:
    """Whether it is a day of a weekend."""
    return len(stack) == 1 and stack[0].date.weekday() >= 5


def _fold_marks(column: _Column, foot: float) -> Iterator[str]:
    """Yield the edges of a quiet time: broken lines from head to foot."""
    return (_fold_edge(x, HEAD - 4, foot) for x in (column.left, column.right))


def _fold_edge(x: float, top: float, foot: float) -> str:
    return line(x, top, x, foot, stroke=QUIET, dashes="2 3", thick=0.8)


def _months(columns: Sequence[_Column]) -> Iterator[list[_Column]]:
    """Yield the columns month by month; a quiet time belongs to the month in which it begins."""
    for _, own in groupby(columns, lambda c: (c.stack[0].date.year, c.stack[0].date.month)):
        yield list(own)


def _draw_months(words: Words, columns: Sequence[_Column]) -> Iterator[str]:
    """Yield the name of each month, and how far a quiet time at the end goes."""
    last = columns[-1]
    until = f"to {_with_year(words, last.stack)}" if last.folded else ""
    for own in _months(columns):
        left, room = own[0].left, own[-1].right - own[0].left - 4
        yield line(left, 0, left, 15, stroke=QUIET, thick=0.8)
        names = _names_of_month(words, own[0].stack[0].date)
        beside = room - width_of(until, SMALL) - 8
        ends_here = (
            bool(until) and own[-1] is last and width_of(names[-1], SIZE, bold=True) <= beside
        )
        room = beside if ends_here else room
        name = next((n for n in names if width_of(n, SIZE, bold=True) <= room), "")
        if name:
            yield text(name, (left + 2, 12), SIZE, bold=True)
        if ends_here:
            yield text(until, (last.right, 12), SMALL, anchor="end", fill=QUIET)


def _with_year(words: Words, stack: Stack) -> str:
    """Write the last day of some; with its year where that is another than of the first."""
    last = stack[-1].date
    seen_from = DateWords(words.dates.language, stack[0].date)
    return words.dates.month_day(last) + seen_from.year_of(last)


def _names_of_month(words: Words, day: dt.date) -> tuple[str, ...]:
    """Return its name with the year, alone, and short."""
    name = words.dates.month(day)
    short = words.dates.month_day(day).replace(str(day.day), "").strip()
    return (f"{name} {day.year}", name, short)


def _draw_row(row: _Row, columns: Sequence[_Column], y: float) -> Iterator[str]:
    base = y + 15.5
    for number, words in enumerate(row.label):
        yield text(words, (0, base + number * LINE_OF_LABEL), SIZE)
    yield line(0, y, columns[-1].right, y)
    top = y + (row.height - BAR) / 2
    for run in _runs(row, columns):
        yield from _bar(run, top)


def _runs(row: _Row, columns: Sequence[_Column]) -> Iterator[_Run]:
    """Yield what the greens of a row are, and from where to where; a day of parts is one by itself."""
    places = [(day, column, n) for column in columns for n, day in enumerate(column.stack)]
    told = list(zip(row.days, places, strict=True))
    for (state, _), group in groupby(
        enumerate(told), key=lambda item: (item[1][0], item[0] if item[1][0] in _SINGLE else -1)
    ):
        members = [place for _, (_, place) in group]
        (_, begins, first), (_, ends, last) = members[0], members[-1]
        yield _Run(
            state,
            begins.edge(first),
            ends.edge(last + 1),
            from_before=members[0] == places[0] and row.before is state,
            goes_on=members[-1] == places[-1] and row.after is state,
        )


def _bar(run: _Run, top: float) -> Iterator[str]:
    """Yield one bar in its shape and texture, with its word or its letter."""
    state = run.state
    x = run.left + (0.0 if run.from_before else 1.5)
    wide = run.right - (0.0 if run.goes_on else 1.5) - x
    base, middle = top + BAR - 4.2, (run.left + run.right) / 2
    if state is GreenDay.OPEN or wide < 2:
        return
    said = _said(state, wide - _ASIDE.get(state, 5))
    match state:
        case GreenDay.CLOSED:
            yield box(x, top, wide, BAR, fill=INK)
            yield text(said, (middle, base), SMALL, anchor="middle", bold=True, fill=PAPER)
            return
        case GreenDay.RECOVERING:
            yield pill(
                (x, top, wide, BAR), SAND, QUIET, left=not run.from_before, right=not run.goes_on
            )
        case GreenDay.TEMPORARY:
            yield box(x, top, wide, BAR, fill=PAPER, stroke=LOAM)
            yield hatching(x, top, wide, BAR, stroke=LOAM)
            if said:
                plate = width_of(said, SMALL) + 4
                yield box(middle - plate / 2, top + 1, plate, BAR - 2, fill=PAPER)
        case GreenDay.WAITS:
            yield box(x, top, wide, BAR, fill=PAPER, stroke=QUIET, dashes="3 2")
        case _:
            # The filled half stands for the part of the day, whichever it is.
            yield box(x, top, wide, BAR, fill=PAPER, stroke=INK)
            half = min(wide * 0.45, wide - 11)
            if state is GreenDay.PART_CLOSED:
                yield box(x, top, half, BAR, fill=INK)
            else:
                yield hatching(x, top, half, BAR, step=4, stroke=LOAM)
            yield text(said, (x + (half + wide) / 2, base), SMALL, anchor="middle")
            return
    yield text(said, (middle, base), SMALL, anchor="middle")


def _said(state: GreenDay, room: float) -> str:
    """Return the longest that there is room for: words, fewer words, a letter, nothing."""
    if state in _SINGLE:
        return LETTERS[state]
    bold = state is GreenDay.CLOSED
    said = (WORDS[state], SHORTER.get(state, ""), LETTERS[state])
    return next((s for s in said if s and width_of(s, SMALL, bold=bold) <= room), "")


def _draw_events(
    words: Words, columns: Sequence[_Column], y: float, right: float
) -> tuple[list[str], float]:
    """Return what else is on, below the greens: a lane for each that would meet another."""
    marks = sorted(_events(words, columns), key=lambda mark: (mark.left, mark.words))
    placed = in_lanes(marks, 0, right, SIZE)
    parts: list[str] = []
    for own in placed:
        parts += _event_mark(own.mark, y + own.lane * LANE)
        base = y + own.lane_of_words * LANE + 14
        parts.append(text(own.words, (own.x, base), SIZE, anchor=own.anchor))
    return parts, y + lanes_of(placed) * LANE


def _event_mark(mark: Marked, top: float) -> Iterator[str]:
    match mark.kind:
        case "reserve":
            wide = mark.right - mark.left
            yield box(mark.left, top + 4, wide, 12, fill=PAPER, stroke=INK, dashes="2 2")
        case "closed":
            yield line(mark.left, top + 10, mark.right, top + 10, stroke=LOAM, thick=3)
            for x in (mark.left + 0.75, mark.right - 0.75):
                yield line(x, top + 5, x, top + 15, stroke=LOAM, thick=1.5)
        case "without":
            yield line(mark.left, top + 10, mark.right, top + 10, stroke=INK, dashes="5 3", thick=2)
        case kind:
            yield fixture_flag(mark.left, top + 16, kind)


def _events(words: Words, columns: Sequence[_Column]) -> Iterator[Marked]:
    for column in columns:
        for fixture in column.stack[0].fixtures:
            middle = (column.left + column.right) / 2
            kind = "" if fixture.kind in fixture.name.casefold() else f" ({fixture.kind})"
            said = f"{fixture.name}{kind}"
            yield Marked(middle - 4, middle + 5, said, fixture.kind)
    for left, right, own in _together(columns, [column.stack[0].reserve for column in columns]):
        kept = sum(len(column.stack) for column in own)
        yield Marked(left + 2, right - 2, words.language.reserve_days(kept), "reserve")
    for shut in dict.fromkeys(s for column in columns for s in column.stack[0].closures):
        on = [shut in column.stack[0].closures for column in columns]
        for left, right, _ in _together(columns, on):
            yield Marked(left + 2, right - 2, closed_thing(words, shut), "closed")
    days = [day for column in columns for day in column.stack]
    for limit in dict.fromkeys(limit for day in days for limit in day.restrictions):
        on = [limit in column.stack[0].restrictions for column in columns]
        for left, right, own in _together(columns, on):
            last = own[-1].stack[-1].date
            after = [day for day in limit.dates if day > last] if own[-1] is columns[-1] else []
            until = f", until {words.dates.short_day(after[-1])}" if after else ""
            yield Marked(left + 2, right - 2, f"No {limit.what}{until}", "without")


def _together(
    columns: Sequence[_Column], chosen: Sequence[bool]
) -> Iterator[tuple[float, float, list[_Column]]]:
    """Yield where columns that were chosen stand side by side."""
    for picked, group in groupby(zip(chosen, columns, strict=True), key=lambda item: item[0]):
        if picked:
            own = [column for _, column in group]
            yield own[0].left, own[-1].right, own


def _explained(words: Words, stacks: Sequence[Stack]) -> Iterator[Explained]:
    """Yield what the letters and the grounds mean; a bar as narrow as a day shows each letter."""
    used = {state for stack in stacks for day in stack for state in day.greens}
    for state in GreenDay:
        if state not in used:
            continue
        if state is GreenDay.OPEN:
            yield Explained("", 0.0, "Blank: open")
        else:
            sample = _bar(_Run(state, 0, 30, from_before=False, goes_on=False), 1)
            yield Explained("".join(sample), 30.0, WORDS[state])
    if any(map(_is_shaded, stacks)):
        yield Explained(box(0, 1, 22, BAR, fill=SHADE), 22.0, "weekend")
    if any(len(stack) > 1 for stack in stacks):
        edges = "".join(_fold_edge(x, 1, 1 + BAR) for x in (0.5, 21.5))
        yield Explained(edges, 22.0, "several days, alike but for recovery")
    kinds = [fixture.kind for stack in stacks for fixture in stack[0].fixtures]
    yield from explained_flags(kinds, words.language.terms.fixture)


def _in_words(
    words: Words, rows: Sequence[_Row], days: Sequence[CourseDay], stacks: Sequence[Stack]
) -> str:
    """Say all that the drawing shows."""
    said = [_row_in_words(words, row, days) for row in rows]
    for day in days:
        said += [f"{f.name} ({f.kind}): {words.dates.day(day.date)}." for f in day.fixtures]
    reserve = [day.date for day in days if day.reserve]
    if reserve:
        kept = words.language.reserve_days(len(reserve))
        said.append(f"{kept}: {words.dates.days(reserve)}.")
    for shut in dict.fromkeys(s for day in days for s in day.closures):
        on = [day.date for day in days if shut in day.closures]
        said.append(f"{closed_thing(words, shut)}, {words.dates.days(on)}.")
    said += circumstances.without(words, [limit for day in days for limit in day.restrictions])
    folded = [day.date for stack in stacks if len(stack) > 1 for day in stack]
    if folded:
        said.append(f"Drawn narrow, because nothing else changes: {words.dates.days(folded)}.")
    return " ".join(said)


def _row_in_words(words: Words, row: _Row, days: Sequence[CourseDay]) -> str:
    """Say of some greens when they are closed, recovering or something else."""
    told = []
    for state in reversed(GreenDay):
        on = [day.date for day, own in zip(days, row.days, strict=True) if own is state]
        if on and state is not GreenDay.OPEN:
            told.append(f"{WORDS[state]} {words.dates.on_days(on)}")
    if not told:
        return sentence(f"{words.greens(row.greens)}: open throughout")
    rest = "; else open" if GreenDay.OPEN in row.days else ""
    return sentence(f"{words.greens(row.greens)}: {'; '.join(told)}{rest}")
