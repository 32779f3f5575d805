"""When greens come back, as far as it is forecast and as it is on record."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from notices.agronomy.recovery import DateRange, Range


@dataclass(frozen=True, slots=True)
class Recovery:
    """When one green comes back, after one work or after all works of a period."""

    green: str
    done: dt.date
    back_in_play: DateRange
    putting_smoothly: DateRange
    fully_healed: DateRange
    growth_stops: dt.date | None = None
    """First day without growth before all has healed, if there is one."""
    growth_returns: dt.date | None = None
    grows_to_putt: bool = False
    """Whether it is grass, and not sand alone, that makes it putt smoothly."""
    grows_to_heal: bool = False
    """Whether grass must grow before all has healed."""

    @property
    def opens_before_growth(self) -> bool:
        """Whether it is in play again before it putts well, and no grass grows for a time in between."""
        smooth = self.putting_smoothly.early
        stops = self.growth_stops
        return stops is not None and stops <= smooth and self.back_in_play.early < smooth

    def on(self, green: str) -> Recovery:
        """Return the same of another green that was treated alike."""
        return Recovery(
            green,
            self.done,
            self.back_in_play,
            self.putting_smoothly,
            self.fully_healed,
            self.growth_stops,
            self.growth_returns,
            self.grows_to_putt,
            self.grows_to_heal,
        )


@dataclass(frozen=True, slots=True)
class GreensBack:
    """When all greens of one work have come back: the last of them counts."""

    work: str
    back_in_play: DateRange
    putting_smoothly: DateRange
    fully_healed: DateRange


@dataclass(frozen=True, slots=True)
class RestOfGrowth:
    """A stretch in which grass does not grow to speak of."""

    stops: dt.date | None
    """First day of it; None where it has begun before the season that is looked at."""
    returns: dt.date | None
    """First day on which it grows again; None where that is not within a year."""


@dataclass(frozen=True, slots=True)
class Season:
    """How grass grows from shortly before the first work until all has healed at worst."""

    growth: Mapping[dt.date, float]
    """Growth potential of every day, 0 to 1, in a usual year."""
    rests: tuple[RestOfGrowth, ...]
    rests_below: float
    """Growth potential below which grass is said to rest."""
    default_used: bool
    """Whether temperatures, optimum or kind of grass are not the club's own."""


@dataclass(frozen=True, slots=True)
class SeasonOnRecord:
    """One time that the club's own greens came back, and the growth that it took."""

    done: dt.date
    seen: dt.date
    what: str
    """What was seen on that day: "healed" or "putting smoothly"."""
    opening_mm: float
    """Width that had closed by then; for slits, that of a hole that takes as long."""
    growth_days: float
    rate_mm_per_day: float
    forecast: DateRange
    """What the book would have said on the day of the work."""
    putting_smoothly: dt.date | None = None
    """Day on which the greens putted smoothly, where that is on record beside ``seen``."""


@dataclass(frozen=True, slots=True)
class FittedRate:
    """How fast openings of one kind of work close at this club, by its own record."""

    operation: str
    rates: Range
    """Sideways growth of an edge at growth potential 1 [mm/day]."""
    book: Range
    """What it would be without a record [mm/day]."""
    records: tuple[SeasonOnRecord, ...]

    @property
    def seasons(self) -> int:
        """In how many years the work was watched."""
        return len({record.done.year for record in self.records})


@dataclass(frozen=True, slots=True)
class Seen:
    """What the club has recorded of one of the works of this plan."""

    work: str
    greens: tuple[str, ...]
    done: dt.date
    putting_smoothly: dt.date | None
    healed: dt.date | None
