"""The greens and holes of a course, and what lies below its turf."""

from __future__ import annotations

import enum
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Green:
    """One green of the course, or the putting green."""

    key: str
    """Its number or name, as the plan has it: "7", "2/16", "Oak 7", "Putting green"."""
    number: int | None
    """Number of its hole, the lowest where it has several."""
    area_m2: float
    area_given: bool
    slug: str = ""
    """How figures name it: small letters and hyphens, like that of no other green."""
    course: str = ""
    """Name of the course that it belongs to, where the plan names one."""
    shared_with: tuple[int, ...] = ()
    """Numbers of further holes that are played to it: a double green has one."""

    @property
    def holes(self) -> tuple[int, ...]:
        """Numbers of the holes that are played to it; none for a putting green."""
        return () if self.number is None else (self.number, *self.shared_with)

    @property
    def name(self) -> str:
        """Its name where it has no number: the key without the course."""
        return "" if self.number is not None else self.key.removeprefix(f"{self.course} ")


Hole = tuple[str, int]
"""A course by its name, empty where it has none, and the number of a hole."""


NINE = 9
"""Holes of a short round, and of half a course."""


class Subsoil(enum.Enum):
    """What a green stands on."""

    CLAY = "clay"
    SAND = "sand"
    SOIL = "soil"


@dataclass(frozen=True, slots=True)
class Profile:
    """What lies below the turf: as measured or stated where the plan says so, else as is usual."""

    subsoil: Subsoil
    thatch_mm: float
    """Depth of its lower edge; the greatest where several greens were measured [mm]."""
    thatch_measured: tuple[str, ...]
    """Greens on which it was measured; none where the depth is a typical one."""
    root_zone_mm: float | None
    """Depth to which the root zone typically goes; None where sand goes right down [mm]."""
    drains: str = ""
    """Drain or ditch of the greens, in the club's words; empty where the plan names none."""
    mown_mm: float = 3.5
    """Height to which the grass is mown; the usual one where the plan names none [mm]."""


USUAL_PROFILE = Profile(Subsoil.SOIL, thatch_mm=13.0, thatch_measured=(), root_zone_mm=150.0)
"""A green of which nothing is known (common practice, no published source)."""
