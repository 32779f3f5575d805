"""The catalogue: one entry per kind of work, in the usual order of a renovation.

Default settings and paces are common practice, without a published source, unless a line
says otherwise. A figure that rests on one is marked ``default_used``.

To add a kind of work, add an entry here and a text of the same name in
``templates/LANGUAGE/operations/``. DEVELOPERS.md walks through an example.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from notices.operations.model import (
    Clearing,
    Hauling,
    Kind,
    Noticed,
    Opening,
    Operation,
    Pace,
    Setting,
    Weather,
    WhileWorking,
)

CLEARING_CORES = Clearing(people=2, m3_per_person_hour=1.0)
"""Two people clear 1.3 m³ of cores, a green of 480 m², in about 40 minutes (common practice)."""

HAULING_SAND = Hauling(people=1, m3_per_load=1.0, minutes_per_load=15)
"""A trailer of about a tonne and a half, from a heap on the course (common practice)."""


_ON_FIRM_GROUND = (Weather.NO_FROST, Weather.GROUND_NOT_WET)


def _passes(default: int = 1) -> Setting:
    return Setting("passes", Kind.COUNT, default, low=1, high=6)


def _tines(diameter: float, spacing: float, depth: float, deepest: float) -> tuple[Setting, ...]:
    return (
        Setting("tine_diameter", Kind.LENGTH, diameter, low=3, high=40),
        Setting("spacing", Kind.SPACING, (spacing, spacing), low=15, high=300),
        Setting("depth", Kind.LENGTH, depth, low=10, high=deepest),
        _passes(),
    )


def _blades(width: float, spacing: float, depth: float, deepest: float) -> tuple[Setting, ...]:
    return (
        Setting("blade_width", Kind.LENGTH, width, low=0.5, high=10),
        Setting("blade_spacing", Kind.LENGTH, spacing, low=5, high=400),
        Setting("depth", Kind.LENGTH, depth, low=0.5, high=deepest),
        _passes(),
    )


def _cut(from_mm: float, to_mm: float) -> tuple[Setting, ...]:
    return (
        Setting("from", Kind.LENGTH, from_mm, low=1.5, high=30),
        Setting("to", Kind.LENGTH, to_mm, low=1.5, high=30),
    )


_ENTRIES = (
    Operation(
        "raising the height of cut",
        order=10,
        opening=Opening.NONE,
        noticed=Noticed.A_LITTLE,
        settings=_cut(3.5, 5.0),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
    ),
    Operation(
        "feeding",
        order=15,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(Setting("product", Kind.WORDS),),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
        weather=(Weather.LABEL,),
    ),
    Operation(
        "wetting agent",
        order=16,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(Setting("product", Kind.WORDS),),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
        weather=(Weather.LABEL,),
    ),
    Operation(
        "scarifying",
        order=20,
        opening=Opening.SLITS,
        noticed=Noticed.CLEARLY,
        settings=_blades(3.0, 40.0, 20.0, deepest=50),
        pace=Pace(0.6, 2.5, 0.6, people=2, minutes_between_greens=8),
        removes_core=True,
    ),
    Operation(
        "verticutting",
        order=21,
        opening=Opening.SLITS,
        noticed=Noticed.A_LITTLE,
        settings=_blades(1.5, 12.0, 2.0, deepest=10),
        pace=Pace(1.5, 4.0, 0.6, people=1, minutes_between_greens=8),
        reopen_days=0,
        removes_core=True,
    ),
    Operation(
        "clean-up cut",
        order=25,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=_cut(5.0, 5.0),
        pace=Pace(0.55, 4.0, 0.6, people=1, minutes_between_greens=6),
        reopen_days=0,
    ),
    Operation(
        "mole ploughing",
        order=30,
        opening=Opening.CHANNELS,
        noticed=Noticed.CLEARLY,
        settings=(
            # Greens are shallower and closer than the farm figures of the drainage literature.
            Setting("spacing", Kind.LENGTH, 1000.0, low=400, high=3000),
            Setting("depth", Kind.LENGTH, 300.0, low=150, high=700),
            Setting("channel_diameter", Kind.LENGTH, 45.0, low=25, high=100),
        ),
        pace=Pace(1.0, 2.0, 0.5, people=2, minutes_between_greens=15),
        enters_ground=True,
        weather=(Weather.MOULDED_BELOW,),  # AHDB, on mole drains: plastic at depth, firm on top
    ),
    Operation(
        "slitting",
        order=35,
        opening=Opening.SLITS,
        noticed=Noticed.A_LITTLE,
        settings=_blades(5.0, 150.0, 100.0, deepest=250),
        pace=Pace(1.5, 4.0, 0.6, people=1, minutes_between_greens=8),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
        enters_ground=True,
    ),
    Operation(
        "deep solid tining",
        order=40,
        opening=Opening.HOLES,
        noticed=Noticed.CLEARLY,
        settings=_tines(18.0, 75.0, 225.0, deepest=450),
        pace=Pace(1.5, 1.5, 0.6, people=1, minutes_between_greens=10),
        filled=True,
        enters_ground=True,
        weather=_ON_FIRM_GROUND,
    ),
    Operation(
        "solid tining",
        order=42,
        opening=Opening.HOLES,
        noticed=Noticed.A_LITTLE,
        settings=_tines(10.0, 50.0, 75.0, deepest=150),
        pace=Pace(1.2, 2.0, 0.6, people=1, minutes_between_greens=8),
        reopen_days=0,
        filled=True,
        enters_ground=True,
        weather=_ON_FIRM_GROUND,
    ),
    Operation(
        "needle tining",
        order=44,
        opening=Opening.HOLES,
        noticed=Noticed.HARDLY,
        settings=_tines(6.0, 40.0, 75.0, deepest=150),
        pace=Pace(1.2, 2.5, 0.6, people=1, minutes_between_greens=8),
        reopen_days=0,
        filled=True,
        enters_ground=True,
        weather=_ON_FIRM_GROUND,
    ),
    Operation(
        "hollow tining",
        order=50,
        opening=Opening.HOLES,
        noticed=Noticed.CLEARLY,
        settings=(
            *_tines(13.0, 50.0, 75.0, deepest=150),
            # Without it the core is taken to be as wide as the hole, which overstates the material
            # that leaves the green; the figure says so.
            Setting("inside_diameter", Kind.LENGTH, None, low=2, high=40),
        ),
        pace=Pace(0.8, 1.2, 0.6, people=1, minutes_between_greens=8),
        clearing=CLEARING_CORES,
        filled=True,
        removes_core=True,
        enters_ground=True,
        weather=_ON_FIRM_GROUND,
    ),
    Operation(
        "drill and fill",
        order=55,
        opening=Opening.HOLES,
        noticed=Noticed.CLEARLY,
        settings=(
            Setting("hole_diameter", Kind.LENGTH, 20.0, low=8, high=50),
            Setting("spacing", Kind.SPACING, (150.0, 150.0), low=50, high=400),
            Setting("depth", Kind.LENGTH, 250.0, low=100, high=450),
        ),
        pace=Pace(1.0, 0.3, 0.6, people=3, minutes_between_greens=15),
        filled=True,
        removes_core=True,
        enters_ground=True,
    ),
    Operation(
        "drain trenching",
        order=60,
        opening=Opening.TRENCHES,
        noticed=Noticed.CLEARLY,
        settings=(
            Setting("area", Kind.AREA, None, low=1, high=5000),
            Setting("width", Kind.LENGTH, 100.0, low=30, high=600),
            Setting("spacing", Kind.LENGTH, 3000.0, low=500, high=10000),
            Setting("depth", Kind.LENGTH, 500.0, low=150, high=1200),
        ),
        while_working=WhileWorking.TEMPORARY,
        enters_ground=True,
    ),
    Operation(
        "turfing",
        order=65,
        opening=Opening.BARE,
        noticed=Noticed.CLEARLY,
        settings=(Setting("area", Kind.AREA, None, low=0.1, high=5000),),
        while_working=WhileWorking.TEMPORARY,
        reopen_days=42,
    ),
    Operation(
        "overseeding",
        order=70,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(
            Setting("seed", Kind.WORDS),
            Setting("rate", Kind.RATE, None, low=0.0005, high=0.1),
        ),
        pace=Pace(1.2, 4.0, 0.6, people=1, minutes_between_greens=8),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
    ),
    Operation(
        "top dressing",
        order=80,
        opening=Opening.SAND,
        noticed=Noticed.A_LITTLE,
        settings=(
            # Light dressing of a growing season, trade press 0.5 to 1 kg/m2.
            Setting("rate", Kind.RATE, 0.7, low=0.05, high=15),
            Setting("fill", Kind.FILL),
            Setting("dressings", Kind.COUNT, 1, low=1, high=8),
            Setting("days_between", Kind.COUNT, 7, low=1, high=60),
        ),
        pace=Pace(1.5, 5.0, 0.5, people=1, minutes_between_greens=15),
        hauling=HAULING_SAND,
        weather=(Weather.NO_FROST, Weather.DRY),
    ),
    Operation(
        "brushing",
        order=85,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(_passes(2),),
        pace=Pace(1.8, 4.0, 0.6, people=1, minutes_between_greens=6),
        reopen_days=0,
    ),
    Operation(
        "rolling",
        order=90,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(_passes(1),),
        pace=Pace(1.5, 5.0, 0.6, people=1, minutes_between_greens=6),
        while_working=WhileWorking.OPEN,
        reopen_days=0,
        weather=_ON_FIRM_GROUND,
    ),
)

CATALOGUE: Mapping[str, Operation] = MappingProxyType({entry.name: entry for entry in _ENTRIES})
"""Every kind of work by its trade term, in the usual order."""
