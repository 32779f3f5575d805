"""What lies below the turf: as the plan says, else as is usual."""

from __future__ import annotations

import pytest

from notices.programme.model import Profile, Subsoil
from tests.wording.small_plans import plan, programme, work

CORES = work("hollow tining", "2027-08-09")
MOLES = work("mole ploughing", "2027-08-09")


def profile(*works: dict[str, object], **course: object) -> Profile:
    data = plan(*works)
    data["course"] |= course
    return programme(data).profile


@pytest.mark.parametrize(
    ("clay", "sand", "subsoil"),
    [
        (47, 18, Subsoil.CLAY),
        (30, 30, Subsoil.CLAY),  # the least clay in which mole channels hold
        (29, 30, Subsoil.SOIL),
        (24, 48, Subsoil.SOIL),
        (5, 85, Subsoil.SAND),
        (3, 94, Subsoil.SAND),
        (5, 84, Subsoil.SOIL),
    ],
)
def test_the_soil_of_the_plan(clay: int, sand: int, subsoil: Subsoil) -> None:
    soil = {"clay": f"{clay} %", "sand": f"{sand} %"}
    found = profile(CORES, soil=soil)
    assert found.subsoil is subsoil
    assert (found.root_zone_mm is None) == (subsoil is Subsoil.SAND)


def test_without_a_soil_it_is_soil_or_what_channels_need() -> None:
    assert profile(CORES).subsoil is Subsoil.SOIL
    assert profile(CORES, MOLES).subsoil is Subsoil.CLAY


def test_thatch_is_the_deepest_of_the_last_measurements() -> None:
    measured = [
        {"date": "2026-08-20", "green": 7, "thatch_depth": "30 mm"},
        {"date": "2027-02-20", "green": 7, "thatch_depth": "22 mm"},  # overrides
        {"date": "2026-08-20", "green": 3, "thatch_depth": "18 mm"},
        {"date": "2026-08-20", "green": 4, "speed": "2.7 m"},
    ]
    found = programme(plan(CORES, measurements=measured)).profile
    assert found.thatch_mm == 22
    assert set(found.thatch_measured) == {"7", "3"}
    assert profile(CORES).thatch_measured == ()


def test_the_drain_in_the_words_of_the_club() -> None:
    assert profile(CORES, drains="a tile drain").drains == "a tile drain"
    assert profile(CORES).drains == ""
