"""The same works laid out in other ways."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass

from notices.programme.model.works import Promise


class Layout(enum.Enum):
    """How the same works could be spread over days, from most golf lost at once to least."""

    ALL_AT_ONCE = "all greens at once"
    NINE_A_DAY = "nine a day"
    AS_PLANNED = "as planned"
    SPREAD = "spread over weeks"


@dataclass(frozen=True, slots=True)
class Pattern:
    """The main works of a plan under one layout: what it costs golfers, team and greens.

    Greens with a hole count; other works and closures of the plan are left out of account.
    """

    layout: Layout
    works: tuple[str, ...]
    """The works that are laid out, by their identities."""
    days: tuple[tuple[dt.date, int], ...]
    """Each day on which the surface is opened or covered, with how many greens."""
    green_days_closed: int
    """Greens closed, summed over the days."""
    green_days_temporary: int
    """Greens with a temporary one, summed over the days."""
    days_under_nine: int | None
    """Days with fewer than nine holes to their own greens from morning to evening; None on a
    shorter course."""
    days_under_eighteen: int | None
    """Days with fewer than eighteen; None on a shorter course."""
    mixed_days: int
    """Days on which a round on one course meets greens that recover and greens still to be done."""
    person_hours: float | None
    """Hours of people, later dressings included; None where the plan does not say who works."""
    hire_days: int | None
    """Days on which something or somebody hired is there; None where nothing is hired."""
    too_long: tuple[dt.date, ...]
    """Days whose work does not fit into the working day and its light."""
    longest_minutes_over: float
    """By how much the worst of them is too long [min]."""
    open_again: Promise
    putting_well: Promise
    fully_healed: Promise
    fixtures_on_closed: tuple[str, ...]
    """Fixtures that meet greens out of play."""
    fixtures_in_recovery: tuple[str, ...]
    """Fixtures that come before greens putt well."""

    @property
    def dates(self) -> tuple[dt.date, ...]:
        """The days of work."""
        return tuple(day for day, _ in self.days)

    @property
    def fits(self) -> bool | None:
        """Whether every day's work fits; None where the plan does not say who works."""
        return None if self.person_hours is None else not self.too_long
