"""Sand that stays on the surface, and the dressings that it takes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy import sand


@pytest.mark.parametrize(
    ("brought", "opened", "layer"), [(5, 3, 2), (3, 3, 0), (2, 3, 0), (1.5, 0, 1.5)]
)
def test_what_the_holes_do_not_take(brought: float, opened: float, layer: float) -> None:
    assert sand.on_surface_mm(brought, opened) == layer


@pytest.mark.parametrize(
    ("total", "most", "dressings"), [(0, 3, 1), (3, 3, 1), (3.1, 3, 2), (9, 3, 3), (10.4, 3, 4)]
)
def test_dressings_needed(total: float, most: float, dressings: int) -> None:
    assert sand.dressings_needed(total, most) == dressings


def test_the_first_dressing_brings_no_more_than_can_be_worked_in() -> None:
    # A share of 0.3 at most, and four visits: 0.3 first, then (1 − 0.3) ÷ 3 each.
    assert sand.dressing_shares(4, 0.3) == pytest.approx((0.3, 0.7 / 3, 0.7 / 3, 0.7 / 3))
    # Three visits of 0.3 do not bring it all, so the usual half stays.
    assert sand.dressing_shares(3, 0.3) == (0.5, 0.25, 0.25)
    assert sand.dressing_shares(4, 0.5) == sand.dressing_shares(4)
    assert sand.dressing_shares(1, 0.3) == (1.0,)


@given(st.integers(1, 12), st.floats(0.01, 2))
def test_shares_are_the_whole_and_keep_to_the_limit_where_they_can(
    dressings: int, largest: float
) -> None:
    shares = sand.dressing_shares(dressings, largest)
    assert len(shares) == dressings
    assert math.fsum(shares) == pytest.approx(1)
    if dressings > 1 and largest * dressings >= 1:
        assert max(shares) <= max(largest, 0.5) + 1e-9
        if largest < 0.5:
            assert max(shares) <= largest + 1e-9
