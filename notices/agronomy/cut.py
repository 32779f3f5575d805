"""The height of cut: raised before the work, and brought down again step by step after it."""

from __future__ import annotations

import datetime as dt
import math

from notices.agronomy.limits import count, positive
from notices.agronomy.recovery import DateRange

STEP_MM = 0.5
"""How far the cut comes down at a time [mm] [common_practice]_."""

DAYS_AHEAD = (7, 14)
"""How many days before the work the cut goes up, at least and at most [common_practice]_."""

DAYS_PER_STEP = (4, 7)
"""How many days lie between two steps, at least and at most [common_practice]_."""


def heights_on_the_way_down(
    raised_mm: float, usual_mm: float, step_mm: float = STEP_MM
) -> tuple[float, ...]:
    r"""Heights of cut after each step from the raised one down to the usual one.

    .. math:: h_k = \max(h_{usual}, h_{raised} - k \cdot s)

    Parameters
    ----------
    raised_mm : float
        Height while the turf recovers, above 0. [mm]
    usual_mm : float
        Height to return to, above 0. [mm]
    step_mm : float
        Greatest step, above 0. [mm]

    Returns
    -------
    tuple of float
        Heights, the usual one last; empty where the raised one is no higher. [mm]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [common_practice]_
    """
    raised, usual = positive("raised_mm", raised_mm), positive("usual_mm", usual_mm)
    steps = math.ceil(round(max(0.0, raised - usual) / positive("step_mm", step_mm), 9))
    return tuple(max(usual, raised - number * step_mm) for number in range(1, steps + 1))


def days_of_step(number: int, smooth: DateRange) -> DateRange:
    """Dates on which a step down is due: so many times 4 to 7 days after putting smoothly.

    It is to be expected between the two, rounded up to a day.

    Parameters
    ----------
    number : int
        Which step, from 1.
    smooth : DateRange
        When the greens putt smoothly.

    Returns
    -------
    DateRange
        Its late date is None where that of putting smoothly is.

    Raises
    ------
    ValueError
        If the number is below 1.

    References
    ----------
    [common_practice]_
    """
    fewest, most = (count("number", number) * days for days in DAYS_PER_STEP)
    return DateRange(
        smooth.early + dt.timedelta(days=fewest),
        smooth.expected + dt.timedelta(days=math.ceil((fewest + most) / 2)),
        None if smooth.late is None else smooth.late + dt.timedelta(days=most),
    )
