"""When worked turf comes back: the model, its ranges, and what several works do together.

The model is fitted, not published: say so wherever a number from it is shown
[recovery_model]_. It rests on these findings:

- half-inch cores heal in half the time of aggressive verticutting, quarter-inch cores in half
  the time of half-inch ones, and the spacing of holes makes no difference [landreth2007]_;
- 7 to 10 days with good timing, a month or more in a bad season [mcclellan_moeller]_, which
  nitrogen does not mend in cool soil [moeller2012]_;
- quality is down for about four weeks [atkinson2012]_, three to four [miller_brotherton2020]_,
  while the surface is 85 to 90 % green after seven days [horttechnology2022]_: a green looks
  right before it is;
- needle tining often cannot be seen the same day [usga2024]_.

Three promises are never mixed: back in play, putting smoothly, fully healed.
"""

from __future__ import annotations

import datetime as dt
import math
import statistics
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import islice
from typing import NamedTuple

from notices.agronomy.growth import Climate
from notices.agronomy.limits import count, finite, non_negative, positive


class Range(NamedTuple):
    """A figure known only roughly."""

    low: float
    middle: float
    high: float

    def each(self, of: Callable[[float], float]) -> Range:
        """Return the range of what rises with this figure."""
        return Range(of(self.low), of(self.middle), of(self.high))

    def reversed(self, of: Callable[[float], float]) -> Range:
        """Return the range of what falls as this figure rises: its lowest comes of the highest."""
        return Range(of(self.high), of(self.middle), of(self.low))


@dataclass(frozen=True, slots=True)
class DateRange:
    """From when on a promise may be kept, when it is to be expected, and by when at the latest."""

    early: dt.date
    """At best: growth at its fastest, in the kindest of the years."""
    expected: dt.date
    """In a usual year, at middling growth: what people are told to expect."""
    late: dt.date | None
    """At worst; None where growth does not get there in the time looked at."""

    def __post_init__(self) -> None:
        if self.expected < self.early or (self.late is not None and self.late < self.expected):
            raise ValueError(
                f"A range of dates runs on from day to day: {self.early}, {self.expected} and "
                f"{self.late} do not."
            )

    @property
    def days(self) -> tuple[dt.date, dt.date, dt.date | None]:
        """All three, from the earliest on."""
        return self.early, self.expected, self.late

    @classmethod
    def on(cls, day: dt.date) -> DateRange:
        """Return the range that is one day."""
        return cls(day, day, day)


SIDEWAYS_GROWTH_MM_PER_DAY = Range(low=0.45, middle=0.6, high=0.75)
"""How far one edge of an opening grows in a day at growth potential 1 [recovery_model]_."""

HALF_INCH_CORE_MM = 12.7
AGGRESSIVE_SLIT_WIDTH_MM = 3.0
AGGRESSIVE_SLIT_DEPTH_MM = 19.0

COLD_TO_WARM_YEAR_C = (-1.0, 0.0, 1.0)
"""Cold, usual and warm year, as differences from the mean [°C] [judgement]_."""

HORIZON_DAYS = 730
"""Two years: an opening not closed by then has met a wrong temperature, not slow grass."""


def growth_days_for_opening(width_mm: float, rate_mm_per_day: float) -> float:
    r"""Days at growth potential 1 in which an opening closes from both edges.

    .. math:: R = D / (2 r)

    Spacing and share of the surface do not enter.

    Parameters
    ----------
    width_mm : float
        Width of the opening in the turf (outside diameter of the tine), 0 or more. [mm]
    rate_mm_per_day : float
        Sideways growth of one edge at growth potential 1, above 0; see
        `SIDEWAYS_GROWTH_MM_PER_DAY`. [mm/day]

    Returns
    -------
    float
        Growth days until fully healed. [day]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [recovery_model]_, after [landreth2007]_.
    """
    return non_negative("width_mm", width_mm) / (2 * positive("rate_mm_per_day", rate_mm_per_day))


def growth_days_for_slit(width_mm: float, depth_mm: float, rate_mm_per_day: float) -> float:
    r"""Days at growth potential 1 in which scarified or verticut turf closes.

    .. math:: R = 2 R_{12.7} \cdot \min\left(1, \frac{w}{3} \cdot \frac{d}{19}\right)

    Twice a half-inch core for 3 mm blades 19 mm deep is published [landreth2007]_; the
    proportion below that is a [judgement]_.

    Parameters
    ----------
    width_mm : float
        Width of a slit, 0 or more. [mm]
    depth_mm : float
        Depth of a slit, 0 or more. [mm]
    rate_mm_per_day : float
        Sideways growth of one edge at growth potential 1, above 0. [mm/day]

    Returns
    -------
    float
        Growth days until fully healed. [day]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [recovery_model]_, after [landreth2007]_.
    """
    width = non_negative("width_mm", width_mm) / AGGRESSIVE_SLIT_WIDTH_MM
    depth = non_negative("depth_mm", depth_mm) / AGGRESSIVE_SLIT_DEPTH_MM
    return 2 * growth_days_for_opening(HALF_INCH_CORE_MM, rate_mm_per_day) * min(1, width * depth)


def growth_days_to_half_closed(growth_days: float) -> float:
    """Growth days until half the opening has closed: unfilled turf then putts smoothly.

    Parameters
    ----------
    growth_days : float
        Growth days until fully healed, 0 or more. [day]

    Returns
    -------
    float
        Growth days until putting smoothly. [day]

    Raises
    ------
    ValueError
        If the argument is outside its range.

    References
    ----------
    [recovery_model]_
    """
    return non_negative("growth_days", growth_days) / 2


def first_day_reaching(
    growth_days: float,
    done: dt.date,
    climate: Climate,
    offset_c: float = 0.0,
    horizon_days: int = HORIZON_DAYS,
) -> dt.date | None:
    """First day on which growth since the work adds up to what is needed.

    Daily growth potential is summed from the day after the work.

    Parameters
    ----------
    growth_days : float
        Growth days needed, 0 or more; at 0 the answer is `done` itself. [day]
    done : datetime.date
        Last day of the work.
    climate : Climate
        Temperatures and grass of the place.
    offset_c : float
        How much warmer than usual the year is. [°C]
    horizon_days : int
        Days looked at, at least 1.

    Returns
    -------
    datetime.date or None
        None where it is not reached within the days looked at.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [recovery_model]_
    """
    needed = non_negative("growth_days", growth_days)
    finite("offset_c", offset_c)
    count("horizon_days", horizon_days)
    if needed == 0:
        return done
    grown = 0.0
    days = islice(climate.growth_after(done, offset_c), horizon_days)
    for number, growth in enumerate(days, 1):
        grown += growth
        if grown >= needed:
            return done + dt.timedelta(days=number)
    return None


def span(growth_days: Range, done: dt.date, climate: Climate) -> DateRange:
    """Range of dates for fast to slow growth in a warm to a cold year.

    The usual year is tried with each, since near its optimum a cool-season grass may do best in
    neither a colder nor a warmer one. The expected date is that of middling growth in it.

    Parameters
    ----------
    growth_days : Range
        Growth days needed, 0 or more: few at fast sideways growth, many at slow. [day]
    done : datetime.date
        Last day of the work.
    climate : Climate
        Temperatures and grass of the place.

    Returns
    -------
    DateRange
        Its late date is None where some combination does not get there within
        `HORIZON_DAYS`; an early or expected date that is not reached is the last day looked
        at: not before then.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [recovery_model]_
    """
    horizon = done + dt.timedelta(days=HORIZON_DAYS)
    fast, slow = (
        [first_day_reaching(needed, done, climate, offset_c) for offset_c in COLD_TO_WARM_YEAR_C]
        for needed in (growth_days.low, growth_days.high)
    )
    return DateRange(
        min(day or horizon for day in fast),
        first_day_reaching(growth_days.middle, done, climate) or horizon,
        latest(slow),
    )


def latest(days: Iterable[dt.date | None]) -> dt.date | None:
    """Last of several days; None, which is never, comes after all others.

    Parameters
    ----------
    days : iterable of datetime.date or None
        At least one.

    References
    ----------
    [definition]_
    """
    reached = list(days)
    return None if None in reached else max(day for day in reached if day is not None)


def observed_rate_mm_per_day(
    width_mm: float, done: dt.date, healed: dt.date, climate: Climate
) -> float:
    r"""Sideways growth that a club's own record implies.

    .. math:: r = D / (2 \sum GP)

    Parameters
    ----------
    width_mm : float
        Width of the opening in the turf, above 0. [mm]
    done : datetime.date
        Last day of the work.
    healed : datetime.date
        Day on which the turf was seen to be closed, after `done`.
    climate : Climate
        Temperatures and grass of the place.

    Returns
    -------
    float
        Sideways growth of one edge at growth potential 1. [mm/day]

    Raises
    ------
    ValueError
        If `healed` is not after `done`, no growth lies between, or the width is not above 0.

    References
    ----------
    [recovery_model]_ turned round; a club's own record beats the book.
    """
    width = positive("width_mm", width_mm)
    days = (healed - done).days
    if days < 1:
        raise ValueError(f"Turf worked on {done} cannot have healed on {healed}.")
    grown = math.fsum(islice(climate.growth_after(done), days))
    return width / (2 * positive("Growth between work and recovery", grown))


def effective_opening_mm(growth_days: float, rate_mm_per_day: float) -> float:
    """Width of the opening that closes in so many growth days: turns the model round.

    .. math:: D = 2 r R

    Parameters
    ----------
    growth_days : float
        Growth days needed, 0 or more. [day]
    rate_mm_per_day : float
        Sideways growth with which they were worked out, above 0. [mm/day]

    Returns
    -------
    float
        Width; for a slit, that of a hole that takes as long. [mm]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [recovery_model]_
    """
    days = non_negative("growth_days", growth_days)
    return 2 * positive("rate_mm_per_day", rate_mm_per_day) * days


def fitted_range(rates_mm_per_day: Sequence[float]) -> Range:
    """Sideways growth that a club's records imply: their median, and a range about it.

    The range keeps the proportions of the book's, a quarter either way, and reaches as far as the
    records themselves: a few good seasons promise nothing narrower than the book [judgement]_.

    Parameters
    ----------
    rates_mm_per_day : sequence of float
        One for each record, from `observed_rate_mm_per_day`, all above 0. [mm/day]

    Returns
    -------
    Range
        Sideways growth of one edge at growth potential 1. [mm/day]

    Raises
    ------
    ValueError
        If there is no record, or a rate is not above 0.

    References
    ----------
    [club_record]_, [judgement]_
    """
    if not rates_mm_per_day:
        raise ValueError("There must be at least one record to fit a rate to.")
    rates = [positive("A rate", rate) for rate in rates_mm_per_day]
    middle, book = statistics.median(rates), SIDEWAYS_GROWTH_MM_PER_DAY
    return Range(
        low=min(*rates, middle * book.low / book.middle),
        middle=middle,
        high=max(*rates, middle * book.high / book.middle),
    )


def putting_smoothly_when_filled(last_dressing: dt.date) -> DateRange:
    """Dates from which filled holes putt smoothly: 3 to 10 days after the last dressing.

    A week is to be expected, the middle of the two rounded up to a day.

    Parameters
    ----------
    last_dressing : datetime.date
        Day on which the last dressing is brushed in.

    Returns
    -------
    DateRange
        Never open-ended: the sand carries the ball, not the grass.

    References
    ----------
    [common_practice]_
    """
    return _days_after(last_dressing, 3, 7, 10)


def sanded_surface(day: dt.date, heavy: bool) -> DateRange:
    """Dates from which a sanded surface putts smoothly.

    1 to 3 days after a light dressing, 3 to 10 after a heavy one; a light one never the same
    day [judgement]_.

    Parameters
    ----------
    day : datetime.date
        Day of the dressing.
    heavy : bool
        Whether sand stays to be seen, as after filling holes.

    Returns
    -------
    DateRange
        Never open-ended.

    References
    ----------
    [common_practice]_, [judgement]_
    """
    return _days_after(day, 3, 7, 10) if heavy else _days_after(day, 1, 2, 3)


def combine(ranges: Sequence[DateRange], done: dt.date) -> DateRange:
    """Range of several operations on one green.

    The turf heals everything at once, so the green is as early as its slowest operation, and to
    be expected with it. At worst the operations hinder one another: the slowest and half of the next slowest, counted
    from the end of the work and rounded up to a day [judgement]_.

    Parameters
    ----------
    ranges : sequence of DateRange
        One for each operation, at least one.
    done : datetime.date
        Last day of all the work.

    Returns
    -------
    DateRange
        Its late date is None where that of any operation is.

    Raises
    ------
    ValueError
        If there is no range.

    References
    ----------
    [recovery_model]_, [judgement]_
    """
    if not ranges:
        raise ValueError("There must be at least one range of dates to combine.")
    early = max(each.early for each in ranges)
    expected = max(each.expected for each in ranges)
    lates = sorted((each.late for each in ranges if each.late is not None), reverse=True)
    if len(lates) < len(ranges):
        return DateRange(early, expected, None)
    next_slowest_days = max(0, (lates[1] - done).days) if len(lates) > 1 else 0
    late = lates[0] + dt.timedelta(days=math.ceil(next_slowest_days / 2))
    return DateRange(early, expected, late)


def _days_after(day: dt.date, *days: int) -> DateRange:
    early, expected, late = (day + dt.timedelta(days=each) for each in days)
    return DateRange(early, expected, late)
