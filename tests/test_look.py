"""A club's colour becomes a look in which everything can be read (WCAG 2.2, 1.4.3)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.look import DARK_GROUND, HOUSE, LEAST_CONTRAST, contrast, is_darkened, look_of

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def test_the_formula() -> None:
    """Black on white is 21:1; #767676 is the lightest grey that passes on white (WebAIM)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#ffffff", "#767676") == pytest.approx(4.54, abs=0.005)


@given(colours)
def test_everything_can_be_read_in_any_colour(colour: str) -> None:
    look = look_of(colour)
    for ground in (look.paper, look.sand, look.ground):
        for text in (look.ink, look.quiet, look.accent, look.warn):
            assert contrast(text, ground) >= LEAST_CONTRAST, (text, ground)
    assert contrast("#ffffff", look.head) >= LEAST_CONTRAST
    assert contrast(look.on_head, look.head) >= LEAST_CONTRAST
    assert contrast(look.accent_in_the_dark, DARK_GROUND) >= LEAST_CONTRAST


def test_a_dark_colour_stays_as_it_is_and_a_light_one_does_not() -> None:
    assert look_of("#1b4d3e").accent == look_of("#1b4d3e").head == "#1b4d3e"
    assert not is_darkened("#1b4d3e")
    assert is_darkened("#ffd200")
    assert look_of("#ffd200").rule == "#ffd200"


def test_our_own_look_passes_too() -> None:
    assert contrast(HOUSE.accent_in_the_dark, DARK_GROUND) >= LEAST_CONTRAST
    assert contrast(HOUSE.on_head, HOUSE.head) >= LEAST_CONTRAST
