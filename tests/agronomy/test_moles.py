"""Deep holes and mole channels, held to a simulation of holes thrown at random."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy import moles

STEPS = 2_000
GRAIN_MM = 0.05


def meets(
    offset_mm: float, hole_mm: float, depth_mm: float, channel_mm: float, z_mm: float
) -> bool:
    """Whether a hole that far aside cuts a channel: looks at points of it, one by one.

    A cylinder and a channel at right angles to it meet where some point of the cylinder lies
    in the circle of the channel, seen along the channel. The points nearest to the channel are
    those of the side that faces it, at every depth down to the end.
    """
    nearest = max(0.0, abs(offset_mm) - hole_mm / 2)
    steps = int(min(depth_mm, z_mm + channel_mm) / GRAIN_MM)
    return any(
        math.hypot(nearest, number * GRAIN_MM - z_mm) <= channel_mm / 2
        for number in range(max(0, int((z_mm - channel_mm) / GRAIN_MM)), steps + 1)
    )


@pytest.mark.parametrize(
    ("hole_mm", "depth_mm", "channel_mm", "z_mm", "spacing_m"),
    [
        (18, 300, 45, 300, 1.0),  # to the middle
        (18, 350, 45, 300, 1.0),  # through
        (18, 290, 45, 300, 0.5),  # between top and middle
        (12, 280, 50, 300, 0.5),  # just below the top at 275 mm
        (18, 270, 45, 300, 1.0),  # stops short of the top at 277.5 mm
        (40, 300, 60, 250, 0.4),
    ],
)
def test_simulation(
    hole_mm: float, depth_mm: float, channel_mm: float, z_mm: float, spacing_m: float
) -> None:
    # Holes at even distances across one spacing: the share that meets the channel in its middle.
    spacing = spacing_m * 1000
    offsets = [(number + 0.5) / STEPS * spacing - spacing / 2 for number in range(STEPS)]
    met = sum(meets(x, hole_mm, depth_mm, channel_mm, z_mm) for x in offsets)
    share = moles.holes_meeting_channels_percent(hole_mm, depth_mm, channel_mm, z_mm, spacing_m)
    # Two edges, each to one offset, and the chord to the grain of depths.
    assert share == pytest.approx(100 * met / STEPS, abs=0.4)


def test_a_few_percent() -> None:
    # Geometry: (18 + 45) mm in 1,000 mm.
    assert moles.holes_meeting_channels_percent(18, 300, 45, 300, 1.0) == pytest.approx(6.3)


def test_none_where_holes_stop_short() -> None:
    assert moles.channel_top_mm(300, 45) == 277.5
    assert moles.holes_meeting_channels_percent(18, 277.5, 45, 300, 1.0) == 0


def test_a_channel_cannot_lie_open() -> None:
    with pytest.raises(ValueError, match="cannot have its middle"):
        moles.channel_top_mm(20, 45)


@given(
    st.floats(0, 50),
    st.floats(0, 600),
    st.floats(1, 100),
    st.floats(50, 600),
    st.floats(0.05, 3),
)
def test_never_outside_the_whole_and_deeper_never_meets_fewer(
    hole: float, depth: float, channel: float, z: float, spacing: float
) -> None:
    share = moles.holes_meeting_channels_percent(hole, depth, channel, z, spacing)
    deeper = moles.holes_meeting_channels_percent(hole, depth + 10, channel, z, spacing)
    wider = moles.holes_meeting_channels_percent(hole, depth, channel, z, spacing * 2)
    assert 0 <= share <= 100
    assert share <= deeper + 1e-9
    assert wider <= share + 1e-9
