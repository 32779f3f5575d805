"""Forecast and record: how long it was to take, season by season, and how long it took."""

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
from notices.programme.season import beside_the_book
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
LEFT = 210.0
ROW = 26.0
HALF_A_DAY = 0.5
OF_GROWTH = "in days of best growth"
"""Unit of `seasons_on_record`: poor weather takes several days for one of these."""

_SEEN = {"putting smoothly": "putting well"}


@dataclass(frozen=True, slots=True)
class ForecastAndActual:
    """One season, or one work in it; all in days, from the work on or of growth."""

    season: str
    """What it is called: "Hollow tining 2026, putting well"."""
    low: float
    high: float | None
    """None where the forecast had no latest day."""
    actual: float | None
    """None where nobody has written it down yet."""


def forecast_and_record(
    seasons: Sequence[ForecastAndActual], unit: str = "in days after the work"
) -> Drawing | None:
    """Draw each season's forecast as a bar and what came of it as a mark; None without any."""
    if not seasons:
        return None
    said = [_said(season) for season in seasons]
    right = PAGE.width - max(width_of(words, SMALL) for words in said) - 14
    most = max(max(s.low, s.high or 0.0, s.actual or 0.0) for s in seasons)
    amounts = Amounts.up_to(max(most, 1.0), LEFT, right)
    foot = 28 + ROW * len(seasons)
    parts = [text(f"Forecast and record, {unit}", (0, 13), SIZE, bold=True)]
    for amount in marks_to(max(most, 1.0)):
        x = amounts.at(amount)
        parts.append(line(x, 24, x, foot))
        parts.append(text(f"{amount:g}", (x, foot + 14), SMALL, anchor="middle", fill=QUIET))
    y = 26.0
    for season, words in zip(seasons, said, strict=True):
        parts += _row(season, words, amounts, y)
        y += ROW
    explained, end = key(_explained(), foot + 22, PAGE.width)
    return drawing(
        "forecast-and-record",
        f"Forecast and record, {unit}",
        " ".join(f"{s.season}: {words}." for s, words in zip(seasons, said, strict=True)),
        (PAGE.width, end),
        [*parts, *explained],
    )


def seasons_on_record(words: Words) -> tuple[ForecastAndActual, ...]:
    """Return the seasons on record beside the book, in days of growth as good as the best."""
    titles = {work.operation.name: words.title(work) for work in words.programme.works}
    return tuple(
        ForecastAndActual(
            f"{titles[season.operation]} {season.done.year}, {_SEEN.get(season.what, season.what)}",
            season.book_low,
            season.book_high,
            season.took,
        )
        for season in beside_the_book(words.programme)
    )


def _row(season: ForecastAndActual, said: str, amounts: Amounts, y: float) -> Iterator[str]:
    middle = y + ROW / 2
    yield text(fitted(season.season, LEFT - 12, SIZE), (0, middle + 4.5), SIZE)
    left = amounts.at(season.low)
    right = amounts.end - 7 if season.high is None else amounts.at(season.high)
    yield box(left, middle - 6, max(right - left, 1.0), 12, fill=SAND, stroke=QUIET)
    if season.high is None:
        yield shape([(right, middle - 7), (right + 7, middle), (right, middle + 7)], fill=QUIET)
    if season.actual is not None:
        yield _came(amounts.at(season.actual), middle)
    yield text(said, (PAGE.width, middle + 4.2), SMALL, anchor="end")


def _said(season: ForecastAndActual) -> str:
    """Say the forecast, what came of it, and how far off it was."""
    low = f"{season.low:.0f}"
    span = (
        f"forecast {low} days or more"
        if season.high is None
        else f"forecast {low} to {season.high:.0f} days"
    )
    if season.actual is None:
        return f"{span}; not yet known"
    return f"{span}; took {season.actual:.0f}{_verdict(season, season.actual)}"


def _verdict(season: ForecastAndActual, actual: float) -> str:
    # Whole days are told, so that what is nearly a day counts as one and less does not.
    if season.low - actual >= HALF_A_DAY:
        return f", {season.low - actual:.0f} sooner"
    if season.high is not None and actual - season.high >= HALF_A_DAY:
        return f", {actual - season.high:.0f} later"
    return ""


def _explained() -> Iterator[Explained]:
    yield Explained(box(0.5, 4, 27, 11, fill=SAND, stroke=QUIET), 28.0, "forecast")
    yield Explained(_came(7, 9.5), 14.0, "what came of it")


def _came(x: float, y: float) -> str:
    return diamond(x, y, 6.5, fill=LOAM, stroke=PAPER)
