"""How fast the club gets over a green: its own machine, else the catalogue's pace."""

from __future__ import annotations

from collections.abc import Mapping

from notices.operations import Pace
from notices.plan.model import Crew
from notices.programme.model import Work


def club_paces(crew: Crew | None) -> dict[str, Pace]:
    """Return the paces that the club has given, by operation."""
    return {
        machine.operation: Pace(
            machine.width,
            machine.speed,
            machine.efficiency / 100,
            machine.people,
            machine.minutes_between_greens,
        )
        for machine in (crew.machines if crew else ())
    }


def pace_of(work: Work, paces: Mapping[str, Pace]) -> Pace | None:
    """Return the pace of a work; None for a work that goes by no machine's width."""
    return paces.get(work.operation.name, work.operation.pace)
