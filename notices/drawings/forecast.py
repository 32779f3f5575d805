"""Forecast and record: how long greens should have taken each season, and how long they took."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.drawings.chart import Explained, box, diamond, drawing, key, line, shape
from notices.drawings.lettering import fitted, width_of
from notices.drawings.model import Drawing
from notices.drawings.palette import LOAM, PAPER, QUIET, SAND
from notices.drawings.scale import Amounts, marks_to
from notices.drawings.sizes import PAGE
from notices.drawings.svg import text
from notices.programme.outcomes import Outcome
from notices.wording.outcomes import name_of, off_by
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
LEFT = 232.0
ROW = 26.0
TWELVE_WEEKS = 84
"""Longest time counted in days; a longer one is counted in weeks."""

_SEEN = {"putting smoothly": "putting well"}


@dataclass(frozen=True, slots=True)
class _Span:
    """A unit of time that a golfer counts in."""

    name: str
    days: int

    def of(self, days: int) -> float:
        return days / self.days


_DAYS, _WEEKS = _Span("days", 1), _Span("weeks", 7)


@dataclass(frozen=True, slots=True)
class _Season:
    """One row of the chart, in days after the work."""

    outcome: Outcome
    name: str

    @property
    def low(self) -> int:
        return (self.outcome.forecast.early - self.outcome.done).days

    @property
    def high(self) -> int | None:
        """Latest day of the forecast, counted from the work; None if it had none."""
        late = self.outcome.forecast.late
        return None if late is None else (late - self.outcome.done).days

    @property
    def took(self) -> int:
        return (self.outcome.actual - self.outcome.done).days

    @property
    def longest(self) -> int:
        return max(self.low, self.high or 0, self.took)


def forecast_and_record(words: Words, seen: Sequence[Outcome]) -> Drawing | None:
    """Draw each season's forecast as a bar and its outcome as a mark; None without outcomes."""
    seasons = [_Season(one, _name(words, one)) for one in seen]
    if not seasons:
        return None
    most = max(1, *(season.longest for season in seasons))
    span = _DAYS if most <= TWELVE_WEEKS else _WEEKS
    said = [_said(season, span) for season in seasons]
    right = PAGE.width - max(width_of(words, SMALL) for words in said) - 14
    amounts = Amounts.up_to(span.of(most), LEFT, right)
    title = f"Forecast and what happened, in {span.name} after the work"
    foot = 28 + ROW * len(seasons)
    parts = [text(title, (0, 13), SIZE, bold=True)]
    for amount in marks_to(span.of(most)):
        x = amounts.at(amount)
        parts.append(line(x, 24, x, foot))
        parts.append(text(f"{amount:g}", (x, foot + 14), SMALL, anchor="middle", fill=QUIET))
    y = 26.0
    for season, told in zip(seasons, said, strict=True):
        parts += _row(season, told, span, amounts, y)
        y += ROW
    explained, end = key(_explained(seasons), foot + 22, PAGE.width)
    return drawing(
        "forecast-and-record",
        title,
        " ".join(f"{s.name}: forecast {told}." for s, told in zip(seasons, said, strict=True)),
        (PAGE.width, end),
        [*parts, *explained],
        "A mark on its bar came as forecast. One to the right of its bar came late.",
    )


def _name(words: Words, outcome: Outcome) -> str:
    seen = _SEEN.get(outcome.what, outcome.what)
    return f"{name_of(words, outcome)} {outcome.done.year}, {seen}"


def _row(season: _Season, told: str, span: _Span, amounts: Amounts, y: float) -> Iterator[str]:
    middle = y + ROW / 2
    yield text(fitted(season.name, LEFT - 12, SIZE), (0, middle + 4.5), SIZE)
    left = amounts.at(span.of(season.low))
    right = amounts.end - 7 if season.high is None else amounts.at(span.of(season.high))
    yield box(left, middle - 6, max(right - left, 1.0), 12, fill=SAND, stroke=QUIET)
    if season.high is None:
        yield shape([(right, middle - 7), (right + 7, middle), (right, middle + 7)], fill=QUIET)
    yield _came(amounts.at(span.of(season.took)), middle)
    yield text(told, (PAGE.width, middle + 4.2), SMALL, anchor="end")


def _said(season: _Season, span: _Span) -> str:
    """Return the forecast, the outcome and the error in words."""
    low, took = (round(span.of(days)) for days in (season.low, season.took))
    high = "or more" if season.high is None else f"to {span.of(season.high):.0f}"
    off = off_by(season.outcome) if season.outcome.days_off else "as forecast"
    return f"{low} {high} {span.name}, took {took}: {off}"


def _explained(seasons: Sequence[_Season]) -> Iterator[Explained]:
    yield Explained(box(0.5, 4, 27, 11, fill=SAND, stroke=QUIET), 28.0, "forecast")
    if any(season.high is None for season in seasons):
        tip = shape([(20, 2.5), (27, 9.5), (20, 16.5)], fill=QUIET)
        bar = box(0.5, 4, 20, 11, fill=SAND, stroke=QUIET)
        yield Explained(bar + tip, 28.0, "no latest day")
    yield Explained(_came(7, 9.5), 14.0, "what happened")


def _came(x: float, y: float) -> str:
    return diamond(x, y, 6.5, fill=LOAM, stroke=PAPER)
