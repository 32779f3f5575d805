"""How fast the club gets over a green: its own machine, else the catalogue's pace."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from notices.operations import Pace
from notices.plan.model import Crew, Machine
from notices.programme.model import Work

_OF_PACE = {"width", "speed", "efficiency", "minutes_between_greens"}


@dataclass(frozen=True, slots=True)
class ClubPace:
    """A pace, and whether the club gave all that the time rests on."""

    pace: Pace
    given: bool


def club_paces(crew: Crew | None) -> dict[str, ClubPace]:
    """Return the paces that the club has given, by operation; the last line counts."""
    return {
        machine.operation: ClubPace(_pace(machine), machine.model_fields_set >= _OF_PACE)
        for machine in (crew.machines if crew else ())
    }


def pace_of(work: Work, paces: Mapping[str, ClubPace]) -> ClubPace | None:
    """Return the pace of a work; None for a work that goes by no machine's width."""
    if (own := paces.get(work.operation.name)) is not None:
        return own
    usual = work.operation.pace
    return ClubPace(usual, given=False) if usual else None


def _pace(machine: Machine) -> Pace:
    return Pace(
        machine.width,
        machine.speed,
        machine.efficiency / 100,
        machine.people,
        machine.minutes_between_greens,
    )
