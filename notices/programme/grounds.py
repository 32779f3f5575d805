"""What a date of recovery rests on: sand that must settle, or grass that must grow.

Nothing here knows a climate: it says how much growth is needed, or how many days.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import NamedTuple

from notices.agronomy import recovery as model
from notices.agronomy.sand import MOST_ON_THE_SURFACE_KG_M2
from notices.operations import Opening
from notices.programme.model import FittedRate, Input, SandOnGreen, Work
from notices.programme.sand import diameter_setting, hole_diameter_mm

MOLE_SLOT_MM = 12.0
"""Width of the slot that the leg of a mole plough leaves (common practice, no published source)."""

GROWTH_DAYS_IN_A_WEEK = 7 * 0.75
"""Growth days in a week of good growth, which runs from growth potential 0.5 to 1 (judgement)."""

LAID_TURF_SMOOTH_WEEKS = (6, 10)
"""Laid turf: weeks in growth until it putts (common practice)."""

LAID_TURF_HEALED_WEEKS = (10, 17)
"""Weeks in growth until its seams are gone from sight (judgement)."""

TRENCH_HEALED_WEEKS = (10, 26)
"""Trench lines sink and want sand for a season, at most the half of the year in which grass grows
well (common practice)."""

HEAVY_DRESSING_KG_M2 = MOST_ON_THE_SURFACE_KG_M2
"""Beyond it sand stays to be seen (British trade press)."""


@dataclass(frozen=True, slots=True)
class Growth:
    """Grass must grow over an opening."""

    days: model.Range
    """Growth days needed: few where it grows fast, many where it grows slowly."""
    recipe: str
    """How the growth days follow from the opening, as in `Figure.recipe`."""
    inputs: tuple[Input, ...]
    source: tuple[str, ...]
    default_used: bool
    rates: model.Range | None = None
    """Sideways growth from which the growth days follow; None where they are by the book."""

    def halved(self) -> Growth:
        """Return what closes half of the opening, by when unfilled turf putts smoothly."""
        return Growth(
            self.days.each(model.growth_days_to_half_closed),
            f"half of {self.recipe}",
            self.inputs,
            self.source,
            self.default_used,
            self.rates,
        )


@dataclass(frozen=True, slots=True)
class Days:
    """So many days after the work, or after its last dressing."""

    since: dt.date
    span: model.DateRange
    recipe: str
    source: tuple[str, ...]
    default_used: bool


Ground = Growth | Days


class Filling(NamedTuple):
    """The dressing that fills the holes of a work on a green."""

    last: dt.date
    """Its last visit to the green."""
    default_used: bool
    """Whether that day follows from the catalogue."""


class Treatment(NamedTuple):
    """What one work did to one green, as far as it matters to recovery.

    Greens that one work treated alike come back alike.
    """

    done: dt.date
    """Last day of the work itself on the green."""
    last_visit: dt.date
    """The same with later dressings."""
    fills: bool
    """Whether the work is a dressing that fills holes there."""
    filling: Filling | None
    """None where nothing fills the holes of the work."""

    @classmethod
    def of(
        cls, work: Work, green: str, need: SandOnGreen | None, filling: Work | None
    ) -> Treatment:
        """Gather it from the work, the sand that it brings, and the dressing that fills its holes."""
        return cls(
            work.last_day_on(green),
            work.last_visit_to(green),
            need is not None and bool(need.fills),
            None
            if filling is None
            else Filling(filling.last_visit_to(green), dressings_rest_on_default(filling)),
        )


def ground_of_putting(work: Work, treatment: Treatment, record: FittedRate | None = None) -> Ground:
    """Return what it takes until a green putts smoothly after one work.

    Parameters
    ----------
    work
        The work; it need not open the surface.
    treatment
        What it did to the green.
    record
        How fast the openings of this kind of work close at this club, if it has a record.
    """
    if (filling := treatment.filling) is not None:
        return Days(
            filling.last,
            model.putting_smoothly_when_filled(filling.last),
            "days after the last dressing that fills the holes",
            ("common_practice",),
            filling.default_used,
        )
    if work.operation.opening in (Opening.TRENCHES, Opening.BARE):
        return _LAID_TURF_SMOOTH
    whole = ground_of_healing(work, treatment, record)
    return whole.halved() if isinstance(whole, Growth) else whole


def ground_of_healing(work: Work, treatment: Treatment, record: FittedRate | None = None) -> Ground:
    """Return what it takes until nothing of one work is left to see on a green."""
    match work.operation.opening:
        case Opening.HOLES:
            return _opening(
                hole_diameter_mm(work),
                work.settings.rests_on_default(diameter_setting(work)),
                record,
            )
        case Opening.CHANNELS:
            # The plan does not say how wide the leg is, so this is always the book's.
            return _opening(
                MOLE_SLOT_MM, default_used=True, record=record, source=("common_practice",)
            )
        case Opening.SLITS:
            return _slits(work, record)
        case Opening.TRENCHES | Opening.BARE as kind:
            return _BY_BOOK[kind]
        case Opening.SAND:
            return _sanded(work, treatment)
        case Opening.NONE:
            return Days(
                treatment.done,
                model.DateRange.on(treatment.done),
                "the day of the work, which does not open the surface",
                ("definition",),
                default_used=False,
            )


def dressings_rest_on_default(work: Work) -> bool:
    """Whether the day of the last dressing follows from the catalogue."""
    several = work.settings.number("dressings") > 1
    return work.settings.rests_on_default("dressings") or (
        several and work.settings.rests_on_default("days_between")
    )


def _is_heavy(work: Work, treatment: Treatment) -> bool:
    """Whether sand of a dressing stays to be seen: it fills holes, or is more than 1 kg/m²."""
    if treatment.fills:
        return True
    covers = "fill" not in work.settings.given
    return covers and work.settings.number("rate") > HEAVY_DRESSING_KG_M2


def _sanded(work: Work, treatment: Treatment) -> Days:
    heavy = _is_heavy(work, treatment)
    return Days(
        treatment.last_visit,
        model.sanded_surface(treatment.last_visit, heavy=heavy),
        f"days after the last {'heavy' if heavy else 'light'} dressing",
        ("common_practice", "judgement", "uk_trade_press"),
        dressings_rest_on_default(work)
        or (not treatment.fills and work.settings.rests_on_default("rate")),
    )


def effective_opening_mm(work: Work, width_mm: float | None = None) -> float | None:
    """Return the width that the recovery of a work goes by, for slits that of a hole as slow.

    None where no opening has to close. Another width than that of the work may be given.
    """
    match work.operation.opening:
        case Opening.HOLES:
            return width_mm or hole_diameter_mm(work)
        case Opening.CHANNELS:
            return width_mm or MOLE_SLOT_MM
        case Opening.SLITS:
            width, middle = (
                width_mm or work.settings.number("blade_width"),
                model.SIDEWAYS_GROWTH_MM_PER_DAY.middle,
            )
            days = model.growth_days_for_slit(width, work.settings.number("depth"), middle)
            return model.effective_opening_mm(days, middle)
        case _:
            return None


def _rated(record: FittedRate | None) -> tuple[model.Range, tuple[Input, ...], tuple[str, ...]]:
    """Return the rates to use, what a figure says of them, and their sources."""
    if record is None:
        return model.SIDEWAYS_GROWTH_MM_PER_DAY, (), ("recovery_model",)
    told = (
        Input("seasons_on_record", record.seasons),
        Input("fitted_rate_mm_per_day", record.rates.middle, "fitted rate", "mm/day"),
        Input("book_rate_mm_per_day", record.book.middle, "book rate", "mm/day"),
    )
    return record.rates, told, ("recovery_model", "club_record")


def _opening(
    width_mm: float, default_used: bool, record: FittedRate | None, source: tuple[str, ...] = ()
) -> Growth:
    rates, told, sources = _rated(record)
    return Growth(
        rates.reversed(lambda rate: model.growth_days_for_opening(width_mm, rate)),
        "{opening_mm} ÷ (2 × {sideways_growth_mm_per_day})",
        (Input("opening_mm", width_mm, "opening", "mm"), *told),
        (*sources, *source),
        default_used,
        rates,
    )


def _slits(work: Work, record: FittedRate | None) -> Growth:
    rates, told, sources = _rated(record)
    width, depth = work.settings.number("blade_width"), work.settings.number("depth")
    return Growth(
        rates.reversed(lambda rate: model.growth_days_for_slit(width, depth, rate)),
        "2 × 12.7 mm ÷ (2 × {sideways_growth_mm_per_day}) "
        "× the lesser of 1 and ({blade_width_mm} ÷ 3 mm) × ({depth_mm} ÷ 19 mm)",
        (
            Input("blade_width_mm", width, "blade width", "mm"),
            Input("depth_mm", depth, "depth", "mm"),
            *told,
        ),
        (*sources, "landreth2007", "judgement"),
        work.settings.rests_on_default("blade_width", "depth"),
        rates,
    )


def _by_book(weeks: tuple[int, int], what: str, *source: str) -> Growth:
    """Return what no figure of the club's own stands behind: so many weeks in growth."""
    fast, slow = weeks
    by_week = model.Range(fast, (fast + slow) / 2, slow)
    return Growth(
        by_week.each(lambda count: count * GROWTH_DAYS_IN_A_WEEK),
        f"weeks in growth by the book, for {what}, × 7 days × 0.75, the middle of good growth",
        (Input("weeks_least", fast), Input("weeks_most", slow)),
        (*source, "pace_turf"),
        default_used=True,
    )


_BY_BOOK = {
    Opening.TRENCHES: _by_book(
        TRENCH_HEALED_WEEKS, "the lines of trenches", "common_practice", "judgement"
    ),
    Opening.BARE: _by_book(LAID_TURF_HEALED_WEEKS, "the seams of turf", "judgement"),
}
_LAID_TURF_SMOOTH = _by_book(LAID_TURF_SMOOTH_WEEKS, "laid turf", "common_practice", "judgement")
