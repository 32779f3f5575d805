"""Measured thatch, and the works that ought to reach through it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.agronomy import thatch
from notices.operations import Opening
from notices.plan.model import Measurement, Plan
from notices.programme.lay_out import club_greens, green_keys
from notices.programme.model import Work

NOT_MEANT_TO = "verticutting"
"""It only brushes the surface, whatever the thatch."""


@dataclass(frozen=True, slots=True)
class ThroughThatch:
    """One work on one green whose thatch was measured before it."""

    work: Work
    green: str
    measurement: Measurement
    thatch_mm: float

    @property
    def below_mm(self) -> float:
        """How far the work reaches below the thatch; negative where it stops short [mm]."""
        return thatch.depth_below_mm(self.work.settings.number("depth"), self.thatch_mm)

    @property
    def passes(self) -> bool:
        """Whether it passes the thatch by the usual least."""
        return thatch.passes_thatch(self.work.settings.number("depth"), self.thatch_mm)


def through_thatch(works: Sequence[Work], plan: Plan) -> Iterator[ThroughThatch]:
    """Yield each work with holes or slits on each green whose thatch is known by then."""
    known: dict[str, list[tuple[Measurement, float]]] = {}
    club = club_greens(plan)
    for measurement in sorted(plan.measurements, key=lambda each: each.date):
        if measurement.thatch_depth is not None:
            for green in green_keys(measurement.green, club):
                known.setdefault(green, []).append((measurement, measurement.thatch_depth))
    for work in works:
        if (
            work.operation.opening not in (Opening.HOLES, Opening.SLITS)
            or work.operation.name == NOT_MEANT_TO
        ):
            continue
        for green in work.greens:
            before = [
                each for each in known.get(green, ()) if each[0].date <= work.last_day_on(green)
            ]
            if before:
                yield ThroughThatch(work, green, *before[-1])
