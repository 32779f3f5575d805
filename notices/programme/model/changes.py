"""What is different between two programmes, in records that can be read both ways."""

from __future__ import annotations

import datetime as dt
import enum
from dataclasses import dataclass


class Subject(enum.Enum):
    """What a change is about."""

    WORK = "work"
    CLOSURE = "closure"
    RESTRICTION = "restriction"
    FIXTURE = "fixture"
    PERIOD = "recovery"
    CLUB = "club"


class ChangeKind(enum.Enum):
    """What has become of it."""

    ADDED = "added"
    DROPPED = "dropped"
    MOVED = "moved"
    EXTENDED = "extended"
    SHORTENED = "shortened"
    GREENS_ADDED = "greens added"
    GREENS_LEFT_OUT = "greens left out"
    RESERVE = "reserve dates changed"
    WORSE = "worse for play"
    BETTER = "better for play"
    LATER = "good again later"
    SOONER = "good again sooner"
    IN_THE_WAY = "fixture newly in the way"
    CLEAR = "fixture clear again"
    OTHERWISE = "otherwise changed"


class Aspect(enum.Enum):
    """Which circumstance of a work, closure, restriction or fixture, or of the club, is another."""

    WHILE_WORKING = "while working"
    REOPEN = "reopen"
    NOTE = "note"
    INSTEAD = "instead"
    TEMPORARY = "temporary"
    REASON = "reason"
    EXCEPT = "except"
    ASK = "ask"
    CLOSED = "closed"
    """A fixture meets greens out of play."""
    RECOVERING = "open and recovering"
    """A fixture meets greens that still heal."""
    DECISION = "decision"
    CONTACT = "contact"
    DRAFT = "draft"


OPEN_AGAIN, PUTTING_WELL, HOLES_LEFT = "open again", "putting well", "holes left"
"""What is promised of a period, and may be another date or number."""


@dataclass(frozen=True, slots=True)
class Move:
    """Greens, or what has none, that all go from some days to others."""

    before: tuple[dt.date, ...]
    after: tuple[dt.date, ...]
    greens: tuple[str, ...] = ()
    ordinal: int = 1
    """1 for the work itself; a second dressing is 2, and so on."""


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that is different."""

    kind: ChangeKind
    subject: Subject
    id: str
    """Identity of the work, closure, restriction or fixture; else the name of what changed."""
    name: str
    """Kind of work, or what is closed or played."""
    moves: tuple[Move, ...] = ()
    aspect: Aspect | None = None
    """Which circumstance is another, where it is no date."""
    setting: str = ""
    """Which setting of a work is another."""
    before: str = ""
    after: str = ""
    greens: tuple[str, ...] = ()
    """Greens that a fixture meets closed or healing."""


@dataclass(frozen=True, slots=True)
class Changes:
    """Everything that is different, in the order in which one tells it."""

    changes: tuple[Change, ...]
    stands: tuple[str, ...] = ()
    """Works of both of which nothing is different."""

    def __bool__(self) -> bool:
        return bool(self.changes)

    def of(self, *kinds: ChangeKind) -> tuple[Change, ...]:
        """Return the changes of some kinds."""
        return tuple(change for change in self.changes if change.kind in kinds)

    def about(self, *subjects: Subject) -> tuple[Change, ...]:
        """Return the changes of some subjects."""
        return tuple(change for change in self.changes if change.subject in subjects)
