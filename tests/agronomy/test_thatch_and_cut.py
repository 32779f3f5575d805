"""Thatch that a work passes, and a cut that comes down again."""

from __future__ import annotations

import datetime as dt
import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy import cut, thatch
from notices.agronomy.recovery import DateRange

heights = st.floats(1.5, 30)


@pytest.mark.parametrize(
    ("depth_mm", "thatch_mm", "below_mm", "passes"),
    [(35, 22, 13, True), (32, 22, 10, True), (31.9, 22, 9.9, False), (20, 22, -2, False)],
)
def test_thatch(depth_mm: float, thatch_mm: float, below_mm: float, passes: bool) -> None:
    # Common practice, no published source: 10 to 15 mm below the thatch.
    assert thatch.depth_below_mm(depth_mm, thatch_mm) == pytest.approx(below_mm)
    assert thatch.passes_thatch(depth_mm, thatch_mm) is passes


@pytest.mark.parametrize(
    ("raised_mm", "usual_mm", "expected"),
    [
        (5.0, 3.5, (4.5, 4.0, 3.5)),
        (5.2, 3.5, (4.7, 4.2, 3.7, 3.5)),
        (4.1, 3.6, (3.6,)),
        (3.5, 3.5, ()),
        (3.0, 3.5, ()),
    ],
)
def test_the_cut_comes_down_by_half_a_millimetre(
    raised_mm: float, usual_mm: float, expected: tuple[float, ...]
) -> None:
    # Common practice, no published source: 0.5 mm at a time.
    assert cut.heights_on_the_way_down(raised_mm, usual_mm) == pytest.approx(expected)


def test_days_of_a_step() -> None:
    # Common practice: 4 to 7 days a step; the third is due 12 to 21 days after putting smoothly,
    # in the middle 16.5, rounded up to 17.
    smooth = DateRange(dt.date(2026, 9, 1), dt.date(2026, 9, 4), dt.date(2026, 9, 10))
    assert cut.days_of_step(3, smooth) == DateRange(
        dt.date(2026, 9, 13), dt.date(2026, 9, 21), dt.date(2026, 10, 1)
    )
    open_ended = DateRange(dt.date(2026, 9, 1), dt.date(2026, 9, 1), None)
    assert cut.days_of_step(1, open_ended).late is None
    with pytest.raises(ValueError, match="number"):
        cut.days_of_step(0, smooth)


@given(heights, heights)
def test_heights_fall_to_the_usual_one_and_no_further(raised_mm: float, usual_mm: float) -> None:
    found = (raised_mm, *cut.heights_on_the_way_down(raised_mm, usual_mm))
    if raised_mm > usual_mm:
        assert found[-1] == pytest.approx(usual_mm, abs=1e-6)
        for before, after in itertools.pairwise(found):
            assert 0 < before - after <= 0.5 + 1e-6
    else:
        assert len(found) == 1
