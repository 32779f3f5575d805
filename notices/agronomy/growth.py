"""How fast grass grows at a temperature, how warm a day of the year is, and when growth stops."""

from __future__ import annotations

import datetime as dt
import enum
import math
from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import chain, count, islice

from notices.agronomy.limits import between, finite, fraction

ANNUAL_MEADOW_GRASS_OPTIMUM_C = 18.0
"""Used for annual meadow-grass and fine fescue in England and Canada [meadow_grass_optimum]_."""

GROWTH_EXTREMELY_LIMITED = 0.1
"""At it and below growth is extremely limited [pace_turf]_."""

LASTING_DAYS = 7
"""So many days on end growth must stop or be back: one cold night is no winter [judgement]_."""

DAYS_IN_MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
DAYS_IN_YEAR = sum(DAYS_IN_MONTHS)
_FIRST_DAYS = tuple(sum(DAYS_IN_MONTHS[:month]) for month in range(12))

HIGHEST_MEAN_C = 60.0
"""No place on Earth comes near such a mean, of a month or of a day; °F taken for °C do [judgement]_."""


class Grass(enum.StrEnum):
    """The two kinds of turf grass, which differ in the warmth they like."""

    COOL_SEASON = "cool-season"
    WARM_SEASON = "warm-season"

    @property
    def optimum_c(self) -> float:
        """Temperature of best growth [°C] [gelernter_stowell2005]_."""
        return 20.0 if self is Grass.COOL_SEASON else 31.0

    @property
    def spread_c(self) -> float:
        """How far from the optimum growth falls to 61 % [°C] [gelernter_stowell2005]_."""
        return 5.5 if self is Grass.COOL_SEASON else 7.0


def growth_potential(temperature_c: float, grass: Grass, optimum_c: float | None = None) -> float:
    r"""Growth as a fraction of the best that the temperature could allow.

    .. math:: GP = \exp\left(-\tfrac12 \left(\frac{t - t_{opt}}{v}\right)^2\right)

    ============  =============  =======  ==================================
    grass         optimum [°C]   v [°C]   above the optimum
    ============  =============  =======  ==================================
    cool-season   20             5.5      falls again
    warm-season   31             7        stays at 1
    ============  =============  =======  ==================================

    Temperature alone: drought, shade, frost and wear are not in it.

    Parameters
    ----------
    temperature_c : float
        Mean air temperature of the day or month. [°C]
    grass : Grass
        Cool-season or warm-season.
    optimum_c : float, optional
        Optimum to use in place of the published one; the spread stays. [°C]

    Returns
    -------
    float
        Growth potential, 0 to 1.

    Raises
    ------
    ValueError
        If a temperature is not finite.

    References
    ----------
    [gelernter_stowell2005]_
    """
    optimum = grass.optimum_c if optimum_c is None else finite("optimum_c", optimum_c)
    distance = (finite("temperature_c", temperature_c) - optimum) / grass.spread_c
    if grass is Grass.WARM_SEASON and distance > 0:
        return 1.0
    return math.exp(-0.5 * distance * distance)


def mean_of_day(lowest_c: float, highest_c: float) -> float:
    """Mean temperature of a day from its lowest and highest: half of their sum.

    Parameters
    ----------
    lowest_c, highest_c : float
        Lowest and highest air temperature of the day. [°C]

    Returns
    -------
    float
        Mean. [°C]

    Raises
    ------
    ValueError
        If a temperature is not finite, or the lowest is above the highest.

    References
    ----------
    [common_practice]_ of weather stations.
    """
    if finite("lowest_c", lowest_c) > finite("highest_c", highest_c):
        raise ValueError(f"The lowest, {lowest_c:g} °C, is above the highest, {highest_c:g} °C.")
    return (lowest_c + highest_c) / 2


def daily_temperatures(monthly_means: Sequence[float]) -> tuple[float, ...]:
    """Temperatures of the 365 days of a year that have exactly the given monthly means.

    The year is a closed line of twelve straight pieces with its corners in mid-month. A line
    through the means themselves would be too low in summer and too high in winter, where its
    corners are cut; so the corners are solved for (twelve linear equations) instead.

    Parameters
    ----------
    monthly_means : sequence of float
        Twelve monthly means, January first, each from −60 to 60. [°C]

    Returns
    -------
    tuple of float
        365 daily means, 1 January first. [°C]

    Raises
    ------
    ValueError
        If there are not twelve of them, or one is no temperature in °C.

    References
    ----------
    [definition]_
    """
    if len(monthly_means) != 12:
        raise ValueError(f"There must be 12 monthly means, not {len(monthly_means)}.")
    for mean in monthly_means:
        between(
            "A monthly mean temperature in °C",
            mean,
            -HIGHEST_MEAN_C,
            HIGHEST_MEAN_C,
        )
    weights, equations = _line_of_year()
    corners = _solve(equations, monthly_means)
    return tuple(sum(weight * corners[corner] for corner, weight in pair) for pair in weights)


def temperature_on(daily: Sequence[float], day: dt.date) -> float:
    """Temperature of a date; 29 February takes that of 28 February.

    Parameters
    ----------
    daily : sequence of float
        365 daily means, 1 January first. [°C]
    day : datetime.date
        Any date.

    Returns
    -------
    float
        Mean air temperature of that day. [°C]

    Raises
    ------
    ValueError
        If there are not 365 values.

    References
    ----------
    [definition]_
    """
    if len(daily) != DAYS_IN_YEAR:
        raise ValueError(f"There must be {DAYS_IN_YEAR} daily temperatures, not {len(daily)}.")
    day_of_month = min(day.day, DAYS_IN_MONTHS[day.month - 1])
    return daily[_FIRST_DAYS[day.month - 1] + day_of_month - 1]


@dataclass(frozen=True, slots=True)
class Climate:
    """What decides growth at one place: its usual year and the grass that grows there."""

    daily: tuple[float, ...]
    """365 daily mean temperatures, 1 January first. [°C]"""
    grass: Grass
    optimum_c: float
    """Temperature of best growth. [°C]"""
    known: Mapping[dt.date, float] = field(default_factory=dict, hash=False)
    """Daily means of single days, measured or forecast, in place of those of the usual year. [°C]"""

    def __post_init__(self) -> None:
        if len(self.daily) != DAYS_IN_YEAR:
            raise ValueError(
                f"There must be {DAYS_IN_YEAR} daily temperatures, not {len(self.daily)}."
            )
        for temperature in (*self.daily, *self.known.values()):
            finite("A daily temperature", temperature)
        finite("optimum_c", self.optimum_c)

    @classmethod
    def from_monthly_means(
        cls,
        monthly_means: Sequence[float],
        grass: Grass,
        optimum_c: float | None = None,
        known: Mapping[dt.date, float] | None = None,
    ) -> Climate:
        """Make a climate of twelve monthly means [°C], January first, and of single known days.

        Without `optimum_c` the published optimum of the grass is used.
        """
        optimum = grass.optimum_c if optimum_c is None else optimum_c
        return cls(daily_temperatures(monthly_means), grass, optimum, known or {})

    def temperature_on(self, day: dt.date) -> float:
        """Mean temperature of a date [°C]: that of the day itself where known, else the usual."""
        known = self.known.get(day)
        return temperature_on(self.daily, day) if known is None else known

    def growth_on(self, day: dt.date, offset_c: float = 0.0) -> float:
        """Growth potential of a date in a year warmer by `offset_c` [°C] than usual."""
        temperature = self.temperature_on(day) + offset_c
        return growth_potential(temperature, self.grass, self.optimum_c)

    def growth_in(self, year: int, offset_c: float = 0.0) -> tuple[float, ...]:
        """Growth potential of each day of a calendar year, `offset_c` [°C] warmer than usual."""
        first = dt.date(year, 1, 1)
        days = (dt.date(year, 12, 31) - first).days + 1
        return tuple(self.growth_on(first + dt.timedelta(day), offset_c) for day in range(days))

    def growth_after(self, day: dt.date, offset_c: float = 0.0) -> Iterator[float]:
        """Growth potential of the days after a date, one after another without end."""
        past = (day - dt.date(day.year, 1, 1)).days + 1
        years = (self.growth_in(year, offset_c) for year in count(day.year))
        return islice(chain.from_iterable(years), past, None)


def growth_stop(
    done: dt.date,
    climate: Climate,
    offset_c: float = 0.0,
    threshold: float = GROWTH_EXTREMELY_LIMITED,
) -> dt.date | None:
    """First day after the work from which growth is below the threshold for a week.

    Parameters
    ----------
    done : datetime.date
        Last day of the work; where growth has stopped already, the answer is the day after.
    climate : Climate
        Temperatures and grass of the place.
    offset_c : float
        How much warmer than usual the year is. [°C]
    threshold : float
        Growth potential, above 0 and at most 1.

    Returns
    -------
    datetime.date or None
        None where growth does not stop within a year.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [pace_turf]_
    """
    fraction("threshold", threshold)
    return _first_day_of_lasting_spell(done, climate, offset_c, lambda growth: growth < threshold)


def growth_returns(
    after: dt.date, climate: Climate, threshold: float = GROWTH_EXTREMELY_LIMITED
) -> dt.date | None:
    """First later day from which growth is at or above the threshold for a week.

    Parameters
    ----------
    after : datetime.date
        Day from which to look, such as the day growth stopped; not itself an answer.
    climate : Climate
        Temperatures and grass of the place.
    threshold : float
        Growth potential, above 0 and at most 1.

    Returns
    -------
    datetime.date or None
        None where growth does not return within a year.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [pace_turf]_
    """
    fraction("threshold", threshold)
    return _first_day_of_lasting_spell(after, climate, 0.0, lambda growth: growth >= threshold)


def _first_day_of_lasting_spell(
    after: dt.date, climate: Climate, offset_c: float, holds: Callable[[float], bool]
) -> dt.date | None:
    """First day within a year after `after` from which a condition holds for a week on end."""
    finite("offset_c", offset_c)
    run = 0
    days = islice(climate.growth_after(after, offset_c), DAYS_IN_YEAR + LASTING_DAYS - 1)
    for number, growth in enumerate(days, 1):
        run = run + 1 if holds(growth) else 0
        if run == LASTING_DAYS:
            return after + dt.timedelta(days=number - (LASTING_DAYS - 1))
    return None


_CornerWeights = tuple[tuple[int, float], tuple[int, float]]

_MIDDLES = tuple(
    first + length / 2 for first, length in zip(_FIRST_DAYS, DAYS_IN_MONTHS, strict=True)
)


@cache
def _line_of_year() -> tuple[tuple[_CornerWeights, ...], tuple[tuple[float, ...], ...]]:
    """Return each day's weights, and the equations that give the corners from monthly means.

    They are those of the calendar, the same for every place.
    """
    weights = tuple(_corner_weights(day) for day in range(DAYS_IN_YEAR))
    equations = []
    for first, length in zip(_FIRST_DAYS, DAYS_IN_MONTHS, strict=True):
        row = [0.0] * 12
        for day in range(first, first + length):
            for corner, weight in weights[day]:
                row[corner] += weight / length
        equations.append(tuple(row))
    return weights, tuple(equations)


def _corner_weights(day: int) -> _CornerWeights:
    """Return the two mid-month corners around a day's noon, each with its weight."""
    noon = day + 0.5
    after = bisect_right(_MIDDLES, noon) % 12
    before = (after - 1) % 12
    gap = (_MIDDLES[after] - _MIDDLES[before]) % DAYS_IN_YEAR
    share = (noon - _MIDDLES[before]) % DAYS_IN_YEAR / gap
    return (before, 1 - share), (after, share)


def _solve(matrix: Sequence[Sequence[float]], right_side: Sequence[float]) -> list[float]:
    """Solve linear equations by elimination; their diagonal dominates, so none is swapped."""
    rows = [[*row, value] for row, value in zip(matrix, right_side, strict=True)]
    size = len(rows)
    for pivot in range(size):
        rows[pivot] = [value / rows[pivot][pivot] for value in rows[pivot]]
        for other in range(size):
            if other != pivot:
                factor = rows[other][pivot]
                rows[other] = [
                    a - factor * b for a, b in zip(rows[other], rows[pivot], strict=True)
                ]
    return [row[size] for row in rows]
