"""Totals of a year's works beside published totals, which are for comparison and not targets."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from notices.drawings.chart import box, drawing, hatching, line
from notices.drawings.lettering import fitted
from notices.drawings.model import Drawing
from notices.drawings.palette import INK, LOAM, PAPER, QUIET
from notices.drawings.scale import Amounts, marks_to
from notices.drawings.sizes import PAGE
from notices.drawings.svg import text
from notices.programme.model import Figure
from notices.programme.published import SAND_MM, SURFACE_PERCENT, PublishedTotal
from notices.wording.measures import sand_in_year
from notices.wording.words import Words

SIZE, SMALL = 13.0, 12.0
LEFT, RIGHT = 190.0, 210.0
"""Width of the names on the left and of the amounts in words on the right."""
ROW = 22.0
COMPARE = "For comparison, not targets to reach."
RANGE = "The fine line is from the green with least to the green with most."
WOODS = "Since 2019 Woods names no percentage, and lets measured organic matter decide."


@dataclass(frozen=True, slots=True)
class _Panel:
    """One quantity, with the plan's total for each year and the published totals."""

    title: str
    unit: str
    years: tuple[tuple[str, float, float, float], ...]
    """Year, mean, least and greatest total of any green."""
    published: tuple[PublishedTotal, ...]
    convert: Callable[[float], float]

    def ends(self, total: PublishedTotal) -> tuple[float, float]:
        """Return the range that a source names, as published or converted to the panel's unit."""
        if self.unit == "" and total.cubic_feet is not None:
            return total.cubic_feet
        return self.convert(total.low), self.convert(total.high)

    @property
    def most(self) -> float:
        """Highest amount in the panel."""
        highest = [self.convert(top) for _, _, _, top in self.years]
        return max([*highest, *(self.ends(total)[1] for total in self.published)])


def year_totals(words: Words) -> Drawing | None:
    """Draw the surface opened and the sand brought in each year; None if there is neither."""
    panels = list(_panels(words))
    if not panels:
        return None
    parts: list[str] = []
    y = 0.0
    for panel in panels:
        own, y = _draw(panel, y)
        parts += own
        y += 14
    ranged = any(low != high for panel in panels for _, _, low, high in panel.years)
    notes = [
        f"{COMPARE} {RANGE}" if ranged else COMPARE,
        *([WOODS] if panels[0].published is SURFACE_PERCENT else []),
    ]
    for said in notes:
        parts.append(text(said, (0, y + 4), SMALL, fill=QUIET))
        y += 16
    told = " ".join(_in_words(panel) for panel in panels)
    return drawing(
        "year-totals",
        "Totals of the year beside published ones",
        f"{told} {' '.join(notes)}",
        (PAGE.width, y),
        parts,
    )


def _panels(words: Words) -> Iterator[_Panel]:
    units = words.programme.club.units
    if opened := _years(words, "surface opened by holes, year "):
        title = "Surface opened by holes, in percent"
        yield _Panel(title, " %", opened, SURFACE_PERCENT, lambda amount: amount)
    if slit := _years(words, "surface cut by slits, year "):
        title = "Surface cut by slits, in percent, which published totals do not count"
        yield _Panel(title, " %", slit, (), lambda amount: amount)
    brought = _years(words, "sand in the year ")
    if brought:
        unit = sand_in_year(0.0, units)[1]
        title = f"Sand in a year, in {unit}"
        # A long unit appears in the title only.
        short = " mm" if unit == "mm" else ""
        yield _Panel(title, short, brought, SAND_MM, lambda amount: sand_in_year(amount, units)[0])


def _years(words: Words, quantity: str) -> tuple[tuple[str, float, float, float], ...]:
    found = []
    for figure in words.programme.figures:
        year = re.fullmatch(re.escape(quantity) + r"(\d{4})", figure.quantity)
        if year and figure.green == "all" and figure.value is not None:
            found.append((year[1], figure.value, *_range(figure)))
    return tuple(found)


def _range(figure: Figure) -> tuple[float, float]:
    """Return the least and the most that any one green gets."""
    low, high = figure.inputs["lowest"], figure.inputs["highest"]
    if not isinstance(low, float | int) or not isinstance(high, float | int):
        raise TypeError(f"{figure.id} has no range")
    return low, high


def _draw(panel: _Panel, top: float) -> tuple[list[str], float]:
    amounts = Amounts.up_to(panel.most, LEFT, PAGE.width - RIGHT)
    foot = top + 30 + ROW * (len(panel.years) + len(panel.published))
    parts = [text(panel.title, (0, top + 13), SIZE, bold=True)]
    for amount in marks_to(panel.most):
        x = amounts.at(amount)
        parts.append(line(x, top + 24, x, foot))
        parts.append(text(f"{amount:g}", (x, foot + 14), SMALL, anchor="middle", fill=QUIET))
    y = top + 26
    for year in panel.years:
        parts += _year(panel, year, amounts, y)
        y += ROW
    for total in panel.published:
        parts += _published(panel, total, amounts, y)
        y += ROW
    return parts, foot + 20


def _year(
    panel: _Panel, year: tuple[str, float, float, float], amounts: Amounts, y: float
) -> Iterator[str]:
    name, mean, low, high = year
    x = amounts.at(panel.convert(mean))
    yield text(f"This plan, {name}", (0, y + 15), SIZE, bold=True)
    yield box(amounts.begin, y + 4, x - amounts.begin, 14, fill=INK)
    left, right = amounts.at(panel.convert(low)), amounts.at(panel.convert(high))
    if right - left > 1:
        # On the bar the line is light, beyond it dark.
        yield line(left, y + 11, min(x, right), y + 11, stroke=PAPER, thick=1.5)
        yield line(max(x, left), y + 11, right, y + 11, stroke=INK, thick=1.5)
        yield line(left, y + 7, left, y + 15, stroke=PAPER if left < x else INK, thick=1.5)
        yield line(right, y + 7, right, y + 15, stroke=INK, thick=1.5)
    yield text(
        _amounts(panel, mean, low, high), (PAGE.width, y + 15), SIZE, anchor="end", bold=True
    )


def _amounts(panel: _Panel, mean: float, low: float, high: float) -> str:
    said = f"{panel.convert(mean):.1f}{panel.unit}"
    first, last = (f"{panel.convert(end):.1f}" for end in (low, high))
    return said if first == last else f"{said} ({first} to {last})"


def _published(panel: _Panel, total: PublishedTotal, amounts: Amounts, y: float) -> Iterator[str]:
    low, high = (amounts.at(end) for end in panel.ends(total))
    yield text(fitted(total.by, LEFT - 8, SIZE), (0, y + 15), SIZE)
    yield box(low, y + 6, high - low, 10, fill=PAPER, stroke=LOAM)
    yield hatching(low, y + 6, high - low, 10, step=4, stroke=LOAM)
    yield text(_said(panel, total), (PAGE.width, y + 15), SIZE, anchor="end")


def _said(panel: _Panel, total: PublishedTotal) -> str:
    low, high = (f"{end:.3g}" for end in panel.ends(total))
    if total.open_ended:
        return f"at least {low}{panel.unit}, ideally {high}{panel.unit}"
    return f"{low} to {high}{panel.unit}"


def _in_words(panel: _Panel) -> str:
    own = [f"This plan, {name}: {_amounts(panel, *rest)}." for name, *rest in panel.years]
    others: Sequence[str] = [f"{total.by}: {_said(panel, total)}." for total in panel.published]
    return " ".join([f"{panel.title}.", *own, *others])
