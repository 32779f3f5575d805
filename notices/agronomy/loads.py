"""What is carried away or brought in, counted in the loads that a team handles."""

from __future__ import annotations

import math

from notices.agronomy.limits import non_negative, positive

WHEELBARROW_M3 = 0.08
"""A builder's barrow, about 80 L heaped level [common_practice]_."""

TRAILER_M3 = 1.5
"""A small tipping trailer behind a utility vehicle [common_practice]_."""

LORRY_T = 20.0
"""A full tipper lorry of sand [common_practice]_."""


def whole_loads(amount: float, load: float) -> int:
    """Number of loads that an amount takes; a last one that is not full counts whole.

    Amount divided by load, rounded up. A hair above a whole number, as sums of decimals
    leave it, is not another load.

    Parameters
    ----------
    amount : float
        What is to be carried, 0 or more. [m³ or t]
    load : float
        What one load holds, above 0, in the same unit. [m³ or t]

    Returns
    -------
    int
        Loads.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    loads = non_negative("amount", amount) / positive("load", load)
    return math.ceil(round(loads, 9))
