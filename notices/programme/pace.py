"""How fast the club gets over a green: its own machine and hands, else the catalogue's."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from notices.operations import Clearing, Hauling, Pace
from notices.plan.model import Crew, Machine
from notices.programme.model import Work

_OF_PACE = {"width", "speed", "efficiency", "minutes_between_greens"}
_OF_CLEARING = {"people", "m3_per_person_hour"}
_OF_HAULING = {"m3_per_load", "minutes_per_load"}


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


def clearing_of(work: Work, crew: Crew | None) -> tuple[Clearing, bool] | None:
    """Return how fast cores are cleared, and whether the club said so; None where nobody need."""
    usual = work.operation.clearing
    own = crew.clearing_cores if crew else None
    if usual is None or own is None:
        return None if usual is None else (usual, False)
    return Clearing(own.people, own.m3_per_person_hour), own.model_fields_set >= _OF_CLEARING


def hauling_of(work: Work, crew: Crew | None) -> tuple[Hauling, bool] | None:
    """Return how fast sand is hauled, and whether the club said so; None where none is."""
    usual = work.operation.hauling
    own = crew.hauling_sand if crew else None
    if usual is None or own is None:
        return None if usual is None else (usual, False)
    pace = Hauling(own.people, own.m3_per_load, own.minutes_per_load)
    return pace, own.model_fields_set >= _OF_HAULING


def _pace(machine: Machine) -> Pace:
    return Pace(
        machine.width,
        machine.speed,
        machine.efficiency / 100,
        machine.people,
        machine.minutes_between_greens,
    )
