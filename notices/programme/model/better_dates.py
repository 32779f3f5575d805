"""Other dates for works that clash."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from notices.findings import Finding


@dataclass(frozen=True, slots=True)
class BetterDate:
    """One start that clears the clash."""

    start: dt.date
    move: int
    """Days later than planned; earlier where negative."""
    putting_days: int | None
    """Days more until greens putt well at worst, fewer where negative; None where not known."""
    healing_days: int | None
    """The same until nothing is left to see."""
    weekend: tuple[dt.date, ...]
    """Days of work that fall on a Saturday or a Sunday."""


@dataclass(frozen=True, slots=True)
class BetterDates:
    """What was found for the works of one period."""

    works: tuple[str, ...]
    kinds: tuple[str, ...]
    """Kinds of work, those that open the surface first."""
    days: tuple[dt.date, ...]
    clashes: tuple[Finding, ...]
    options: tuple[BetterDate, ...]
    """The nearest first; of two equally near the earlier."""
    tried: int
    good: int
    """How many of those tried clear the clash."""
    failed: Mapping[str, int]
    """Why the others do not, each counted once for its gravest reason."""
    not_tried: int = 0
    """Other starts in the month that nobody looked at, as there were too many in the whole plan."""
