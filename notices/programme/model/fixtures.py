"""What is played, and what was decided about it."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass

from notices.programme.model.course import Green

AWAY_MATCH = "away match"
"""Kind of fixture that is played elsewhere."""


class Decided(enum.Enum):
    """What a club has decided about a fixture that meets the work."""

    PLAY_ON = "play on"
    DOES_NOT_COUNT = "does not count"
    MOVED = "moved"
    CANCELLED = "cancelled"


@dataclass(frozen=True, slots=True)
class Fixture:
    """A date of play, and what the greens are like on it."""

    name: str
    date: dt.date
    """The day on which it is played, or was to be where it is not."""
    kind: str
    closed_greens: tuple[str, ...] = ()
    recovering_greens: tuple[str, ...] = ()
    plan_index: int = 0
    course: str = ""
    """Course that it is played on, where the plan names one."""
    decided: Decided | None = None
    moved_from: dt.date | None = None
    """Its first day, where it is moved to a new one."""

    @property
    def is_on(self) -> bool:
        """Whether it is played on its date: not where it is called off, or moved to no day yet."""
        if self.decided is Decided.MOVED:
            return self.moved_from is not None
        return self.decided is not Decided.CANCELLED

    def meets(self, green: Green) -> bool:
        """Whether it is played here and to this green, as far as the plan says where."""
        here = self.is_on and self.kind != AWAY_MATCH
        return here and (not self.course or green.course.casefold() == self.course.casefold())

    @property
    def goes_ahead(self) -> bool:
        """Whether the club has decided to play it as it is."""
        return self.decided in (Decided.PLAY_ON, Decided.DOES_NOT_COUNT)
