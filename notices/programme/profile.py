"""What lies below the turf, as far as the plan tells; the rest is as is usual."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.lay_out import club_greens, green_keys
from notices.programme.model import USUAL_PROFILE, Profile, Subsoil, Work

LEAST_CLAY_PERCENT = 30.0
"""From which a soil is called clay: the least in which mole channels hold [ahdb_moles]_."""

LEAST_SAND_PERCENT = 85.0
"""From which a soil is called sand, as the classes of texture have it [definition]_."""


def profile_of(plan: Plan, works: Sequence[Work]) -> Profile:
    """Return what lies below the turf of a club's greens."""
    subsoil = _subsoil(plan, works)
    thatch = _thatch(plan)
    return replace(
        USUAL_PROFILE,
        subsoil=subsoil,
        thatch_mm=max(thatch.values(), default=USUAL_PROFILE.thatch_mm),
        thatch_measured=tuple(thatch),
        root_zone_mm=None if subsoil is Subsoil.SAND else USUAL_PROFILE.root_zone_mm,
        drains=plan.course.drains or "",
        mown_mm=plan.course.mowing_height or USUAL_PROFILE.mown_mm,
    )


def _subsoil(plan: Plan, works: Sequence[Work]) -> Subsoil:
    soil = plan.course.soil
    if soil is None:
        # Nobody draws mole channels through anything else; a finding asks for the soil.
        ploughed = any(work.operation.opening is Opening.CHANNELS for work in works)
        return Subsoil.CLAY if ploughed else Subsoil.SOIL
    if soil.clay >= LEAST_CLAY_PERCENT:
        return Subsoil.CLAY
    return Subsoil.SAND if soil.sand >= LEAST_SAND_PERCENT else Subsoil.SOIL


def _thatch(plan: Plan) -> dict[str, float]:
    """Return the depth of the thatch as it was last measured, by green."""
    club = club_greens(plan)
    return {
        green: measured.thatch_depth
        for measured in sorted(plan.measurements, key=lambda each: each.date)
        if measured.thatch_depth is not None
        for green in green_keys(measured.green, club)
    }
