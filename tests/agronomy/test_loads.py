"""Loads: whole ones, and a hair of rounding is none."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy.loads import LORRY_T, TRAILER_M3, WHEELBARROW_M3, whole_loads

amounts = st.floats(0, 1e6)


@pytest.mark.parametrize(
    ("amount", "load", "expected"),
    [
        (0, WHEELBARROW_M3, 0),
        (0.08, WHEELBARROW_M3, 1),
        (0.081, WHEELBARROW_M3, 2),
        (3, TRAILER_M3, 2),
        (60, LORRY_T, 3),
        (60.5, LORRY_T, 4),
        (0.1 + 0.2, 0.1, 3),  # 0.30000000000000004 is not a fourth load
    ],
)
def test_whole_loads(amount: float, load: float, expected: int) -> None:
    assert whole_loads(amount, load) == expected


@given(amounts, st.floats(0.01, 100))
def test_loads_hold_all_and_one_less_does_not(amount: float, load: float) -> None:
    loads = whole_loads(amount, load)
    assert loads * load >= amount * (1 - 1e-6) - 1e-6
    assert (loads - 1) * load <= amount
