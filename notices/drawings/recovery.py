"""Recovery chart: when the greens come back after each work, and the dates promised to members."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass

from notices.drawings.chart import (
    Explained,
    box,
    diamond,
    drawing,
    explained_flags,
    fixture_flag,
    key,
    line,
    shape,
)
from notices.drawings.lanes import Marked, beside, in_lanes, lanes_of
from notices.drawings.lettering import fitted, lines_of, width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, LOAM, MEADOW, PAPER, QUIET, SAND, SHADE
from notices.drawings.scale import Days, month_axis
from notices.drawings.sizes import PAGE, Sizes
from notices.drawings.svg import circle, text
from notices.programme.model import Fixture, GreensBack, Period, Promise, RestOfGrowth, Season, Work
from notices.wording.lists import sentence
from notices.wording.period import PeriodWords
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
CURVE = 58.0
"""Height of the curve of growth at its peak."""
LANE = 19.0
NAMED_FIXTURES = 5
"""Most fixtures that are named; more are drawn as flags alone."""
BEFORE = dt.timedelta(days=10)

OPEN_AGAIN, PUTTING_WELL, HEALED = "Open again", "Putting well", "Fully healed"


@dataclass(frozen=True, slots=True)
class _Place:
    """Geometry of the chart."""

    sizes: Sizes
    days: Days

    @property
    def label(self) -> float:
        """Width of the column of names; 0 on a telephone, where they stand above the bars."""
        return self.days.left - 8 if self.sizes is PAGE else 0.0


@dataclass(frozen=True, slots=True)
class _Back:
    """A work with its name and the days on which all its greens are back."""

    title: str
    work: Work
    greens: GreensBack


CAPTION = (
    "Greens heal only while grass grows. Filled marks are the days that we expect, hollow ones the "
    "days at worst."
)


def recovery_chart(words: Words, period: Period, sizes: Sizes = PAGE) -> Drawing | None:
    """Draw when the greens of a period come back; None if nothing has to grow over.

    Each work has a bar for putting well and one for healing, from the earliest date to the
    latest on which all its greens have got there. Below are the promises for all works together,
    with expect-by marks filled and at-worst marks hollow.

    Parameters
    ----------
    words
        Wording of the programme.
    period
        Period of the programme.
    sizes
        Size of the drawing: page or telephone.
    """
    season = words.programme.season
    if season is None or not period.opening_works:
        return None
    place = _Place(sizes, _days(period, season, sizes))
    backs = [
        _Back(words.title(work), work, words.programme.greens_back[work.id])
        for work in period.opening_works
        if work.id in words.programme.greens_back
    ]
    top = 14.0
    axis = top + CURVE + 14
    flags, y = _fixtures(words, place, axis + 24)
    rows: list[str] = []
    for back in backs:
        own, y = _work(words, back, place, y)
        rows += own
    rows.append(line(0, y + 3, sizes.width, y + 3, stroke=QUIET))
    y += 8
    rows.append(text("All greens, all works together", (0, y + 14), SIZE, bold=True))
    y += 22
    for name, promise in _promises(period):
        own, y = _promise(words, name, promise, place, y)
        rows += own
    foot = y + 2
    kinds = {fixture.kind for fixture in _met_fixtures(words, place.days)}
    open_ended = any(
        late is None
        for back in backs
        for late in (back.greens.putting_smoothly.late, back.greens.fully_healed.late)
    ) or any(promise.at_worst is None for _, promise in _promises(period))
    entries = _explained(words, kinds, works=bool(backs), open_ended=open_ended)
    explained, y = key(entries, foot + 6, sizes.width)
    parts = [
        *_rests(words, season, place.days, top, foot),
        *month_axis(words, place.days, axis, foot),
        *_curve(season, place, top),
        *_said_of_rests(words, season, place.days, top),
        *flags,
        *rows,
        *explained,
    ]
    title = f"How the greens come back: {PeriodWords(words, period).name().lower()}"
    number = words.programme.periods.index(period) + 1
    return drawing(
        f"recovery{sizes.suffix}-{number}",
        title,
        _in_words(words, period, season, backs, place.days),
        (sizes.width, y),
        parts,
        CAPTION,
    )


def _days(period: Period, season: Season, sizes: Sizes) -> Days:
    """Return the line of days, with a little room after the last."""
    first = max(min(season.growth), min(period.days) - BEFORE)
    ends = [
        day
        for _, promise in _promises(period)
        for day in (promise.expect_by, promise.at_worst or max(season.growth))
    ]
    last = max(ends)
    spare = dt.timedelta(days=max(4, (last - first).days // 20))
    left = 150.0 if sizes is PAGE else 6.0
    return Days(first, last + spare, left, sizes.width - 6)


def _promises(period: Period) -> tuple[tuple[str, Promise], ...]:
    return (
        (OPEN_AGAIN, period.open_again),
        (PUTTING_WELL, period.putts_well_after_all),
        (HEALED, period.healed_after_all),
    )


def _curve(season: Season, place: _Place, top: float) -> Iterator[str]:
    """Yield growth by day as a hill, with the best day at full height."""
    days, foot = place.days, top + CURVE
    inside = [day for day in season.growth if days.first <= day <= days.last]
    # A point a week makes a smooth line, and the last day ends it.
    chosen = [*inside[::7], inside[-1]]
    points = [(days.noon(day), foot - CURVE * season.growth[day]) for day in chosen]
    yield shape([(points[0][0], foot), *points, (points[-1][0], foot)], fill=MEADOW)
    yield shape(points, stroke=QUIET, thick=1.3, closed=False)
    yield line(days.left, foot, days.right, foot, stroke=QUIET)
    if place.label:
        yield text("Growth of grass", (0, foot - 24), SIZE, bold=True)
        yield text("in a usual year", (0, foot - 8), SMALL, fill=QUIET)
        for share, said in ((1.0, "best"), (0.5, "half")):
            y = foot - CURVE * share
            yield line(days.left - 4, y, days.left, y, stroke=QUIET)
            yield text(said, (days.left - 8, y + 4), SMALL, anchor="end", fill=QUIET)
    else:
        yield text("Growth of grass in a usual year", (0, top - 3), SMALL, bold=True)


def _rests(words: Words, season: Season, days: Days, top: float, foot: float) -> Iterator[str]:
    """Yield shading behind each winter, over the whole height."""
    for left, right, _ in _winters(words, season, days):
        yield box(left, top, right - left, foot - top, fill=SHADE)
        for x in (left, right):
            if days.left < x < days.right:
                yield line(x, top, x, top + CURVE, stroke=QUIET, dashes="2 3", thick=0.8)


def _said_of_rests(words: Words, season: Season, days: Days, top: float) -> Iterator[str]:
    """Yield the words for each winter, above the flat part of the curve."""
    for left, right, said in _winters(words, season, days):
        lines = lines_of(said, right - left - 8, SMALL)
        if len(lines) > 3 or any(line.endswith("…") for line in lines):
            lines = lines_of("no growth", right - left - 4, SMALL)
        for number, words_of_line in enumerate(lines):
            y = top + 12 + number * 14
            yield text(words_of_line, ((left + right) / 2, y), SMALL, anchor="middle")


def _winters(words: Words, season: Season, days: Days) -> Iterator[tuple[float, float, str]]:
    """Yield each rest of growth as left x, right x and words."""
    for rest in _met(season, days):
        left = days.left if rest.stops is None else days.begin(rest.stops)
        right = days.right if rest.returns is None else days.begin(rest.returns)
        yield left, right, _rest_in_words(rest, words.dates.month_day)


def _met(season: Season, days: Days) -> Iterator[RestOfGrowth]:
    """Yield the rests of growth within the days shown."""
    for rest in season.rests:
        begun = rest.stops is None or rest.stops <= days.last
        if begun and (rest.returns is None or rest.returns > days.first):
            yield rest


def _rest_in_words(rest: RestOfGrowth, name: Callable[[dt.date], str]) -> str:
    if rest.stops is None:
        return f"No growth until about {name(rest.returns)}" if rest.returns else "No growth"
    again = f" and returns about {name(rest.returns)}" if rest.returns else ""
    return f"Growth stops about {name(rest.stops)}{again}"


def _met_fixtures(words: Words, days: Days) -> list[Fixture]:
    """Return the fixtures within the days shown."""
    return [f for f in words.programme.fixtures if f.is_on and days.first <= f.date <= days.last]


def _fixtures(words: Words, place: _Place, y: float) -> tuple[list[str], float]:
    """Return flags on the days of fixtures, with names if they are few, and the y below them."""
    days = place.days
    met = _met_fixtures(words, days)
    if not met:
        return [], y + 2
    named = len(met) <= NAMED_FIXTURES
    marks = [
        Marked(days.noon(f.date), days.noon(f.date) + 9, f.name if named else "", f.kind)
        for f in met
    ]
    if named:
        placed = in_lanes(marks, days.left, days.right, SMALL)
        spots = [(p.mark, p.lane) for p in placed]
        lanes = lanes_of(placed)
    else:
        placed, spots, lanes = [], [(mark, 0) for mark in marks], 1
    parts = [text(f"{words.language.terms.fixture}s", (0, y + 14), SIZE)] if place.label else []
    parts += [fixture_flag(mark.left, y + lane * LANE + 16, mark.kind) for mark, lane in spots]
    parts += [
        text(p.words, (p.x, y + p.lane_of_words * LANE + 13), SMALL, anchor=p.anchor)
        for p in placed
        if p.words
    ]
    return parts, y + lanes * LANE + 6


def _work(words: Words, back: _Back, place: _Place, y: float) -> tuple[list[str], float]:
    """Return the row of one work, with its days and two bars, and the y of the next row."""
    days, work = place.days, back.work
    when = _when(words, work)
    parts = []
    if place.label:
        parts.append(text(fitted(back.title, place.label - 6, SIZE), (0, y + 12), SIZE))
        parts.append(text(when, (0, y + 26), SMALL, fill=QUIET))
    else:
        room = place.sizes.width - width_of(f", {when}", SIZE)
        parts.append(text(f"{fitted(back.title, room, SIZE)}, {when}", (0, y + 12), SIZE))
        y += 15
    putts, heals = back.greens.putting_smoothly, back.greens.fully_healed
    left = days.begin(work.dates[0])
    wide = max(3.0, days.begin(work.dates[-1] + dt.timedelta(days=1)) - left)
    parts.append(box(left, y + 3, wide, 22, fill=INK))
    parts += _span(days, putts.expected, putts.late, y + 8, PUTTING_WELL)
    parts += _span(days, heals.expected, heals.late, y + 20, HEALED)
    return parts, y + 34


def _when(words: Words, work: Work) -> str:
    """Return the days of a work in the fewest words."""
    first, last = work.dates[0], work.dates[-1]
    if first.month == last.month and first != last:
        return words.dates.span_of_month(work.dates)
    days = dict.fromkeys((words.dates.month_day(first), words.dates.month_day(last)))
    return " to ".join(days)


def _span(days: Days, early: dt.date, late: dt.date | None, y: float, what: str) -> Iterator[str]:
    """Yield a bar from a filled mark to a hollow one, or to an arrow if it has no end."""
    left = days.noon(early)
    right = days.right - 7 if late is None else days.noon(late)
    ground = {OPEN_AGAIN: PAPER, PUTTING_WELL: SAND, HEALED: MEADOW}[what]
    if right > left:
        yield box(left, y - 2.5, right - left, 5, fill=ground, stroke=QUIET, thick=0.8)
    if late is None:
        yield _arrow(right, y)
    elif right - left > 1:
        yield _mark(right, y, what, filled=False)
    yield _mark(left, y, what, filled=True)


def _arrow(x: float, y: float) -> str:
    return shape([(x, y - 5), (x + 7, y), (x, y + 5)], fill=QUIET)


def _mark(x: float, y: float, what: str, *, filled: bool) -> str:
    fill = LOAM if filled else PAPER
    if what == OPEN_AGAIN:
        return box(x - 4, y - 4, 8, 8, fill=fill, stroke=LOAM, thick=1.5)
    if what == PUTTING_WELL:
        return circle((x, y), 4.5, fill=fill, stroke=LOAM, stroke_width=1.5)
    return diamond(x, y, 5.5, fill=fill, stroke=LOAM)


def _promise(
    words: Words, name: str, promise: Promise, place: _Place, y: float
) -> tuple[list[str], float]:
    """Return the row of one promise, with dates in words beside the marks, and the next row's y."""
    days = place.days
    said = told(words, promise)
    if not place.label:
        return _promise_in_a_column(name, promise, said, place, y)
    parts = [_mark(6, y + 10, name, filled=True), text(name, (18, y + 14.5), SIZE)]
    middle = y + 10
    parts += _span(days, promise.expect_by, promise.at_worst, middle, name)
    left = days.noon(promise.expect_by) - 6
    right = days.right if promise.at_worst is None else days.noon(promise.at_worst) + 6
    x, anchor, short = beside(Marked(left, right, said), days.left, days.right, SMALL)
    if short == said:
        parts.append(text(said, (x, middle + 4.2), SMALL, anchor=anchor))
        return parts, y + 22
    lines = lines_of(said, days.right - days.left, SMALL)
    for number, words_of_line in enumerate(lines):
        wide = width_of(words_of_line, SMALL)
        x = max(days.left, min(left, days.right - wide))
        parts.append(text(words_of_line, (x, middle + 19 + number * 14), SMALL))
    return parts, y + 24 + 14 * len(lines)


def _promise_in_a_column(
    name: str, promise: Promise, said: str, place: _Place, y: float
) -> tuple[list[str], float]:
    """Return the row of one promise for a telephone, with dates above the marks."""
    parts = [_mark(6, y + 8, name, filled=True), text(name, (18, y + 12.5), SIZE, bold=True)]
    left = 18 + width_of(name, SIZE, bold=True) + 8
    if left + width_of(said, SIZE) <= place.sizes.width:
        lines = [said]
    else:
        left, y = 18.0, y + 16
        lines = lines_of(said, place.sizes.width - left, SIZE)
    for number, words_of_line in enumerate(lines):
        parts.append(text(words_of_line, (left, y + 12.5 + 16 * number), SIZE))
    y += 16 * len(lines)
    parts += _span(place.days, promise.expect_by, promise.at_worst, y + 9, name)
    return parts, y + 21


def told(words: Words, promise: Promise) -> str:
    """Return a promise in words as in the texts: to the day, or less exactly beyond a winter."""
    stops, worst = promise.growth_stops, promise.at_worst
    early = words.dates.promised(promise.expect_by, stops, short=True)
    if worst is None:
        return f"{early}, at worst later than we can say"
    late = words.dates.promised(worst, stops, short=True)
    return early if late == early else f"{early}, at worst {late}"


def _explained(
    words: Words, kinds: Collection[str], *, works: bool, open_ended: bool
) -> Iterator[Explained]:
    """Yield key entries for the marks that are drawn."""
    three = (OPEN_AGAIN, PUTTING_WELL, HEALED)
    if works:
        yield Explained(box(0, 3, 8, 12, fill=INK), 8.0, "days of work")
    yield Explained(_mark(6, 9, PUTTING_WELL, filled=True), 12.0, "putting well")
    yield Explained(_mark(6, 9, HEALED, filled=True), 12.0, "fully healed")
    for filled, said in ((True, "filled: expect by"), (False, "hollow: at worst")):
        marks = (_mark(6 + 13 * n, 9, what, filled=filled) for n, what in enumerate(three))
        yield Explained("".join(marks), 38.0, said)
    if open_ended:
        yield Explained(_arrow(0, 9), 7.0, "later than we can say")
    yield from explained_flags(kinds, words.language.terms.fixture)


def _in_words(
    words: Words,
    period: Period,
    season: Season,
    backs: Sequence[_Back],
    days: Days,
) -> str:
    """Return in words everything that the drawing shows."""
    said = []
    for name, promise in _promises(period):
        said.append(sentence(f"{name}, all greens: {told(words, promise)}"))
    for back in backs:
        putts, heals = (
            _from_to(words, span.expected, span.late)
            for span in (back.greens.putting_smoothly, back.greens.fully_healed)
        )
        when = words.dates.days(back.work.dates)
        said.append(f"{back.title}, {when}: putting well {putts}; fully healed {heals}.")
    said += [f"{_rest_in_words(rest, words.dates.day)}." for rest in _met(season, days)]
    shares = [
        f"{words.dates.month(day)} {day.year} {100 * season.growth[middle]:.0f} %"
        for day, _, _ in days.months()
        if (middle := day.replace(day=15)) in season.growth
    ]
    if shares:
        said.append(f"Growth in mid-month, of the best: {', '.join(shares)}.")
    said += [f"{f.name} ({f.kind}): {words.dates.day(f.date)}." for f in _met_fixtures(words, days)]
    return " ".join(said)


def _from_to(words: Words, early: dt.date, late: dt.date | None) -> str:
    if late is None:
        return f"from {words.dates.day(early)} at the earliest, with no date at worst"
    if late == early:
        return f"by {words.dates.day(early)}"
    return f"between {words.dates.day(early)} and {words.dates.day(late)}"
