"""Which changes concern whom: golfers on the course, and visitors who have booked."""

from __future__ import annotations

from notices.programme.model import Aspect, Change, ChangeKind, Changes, Programme, Subject


def met_by_golfers(changes: Changes) -> Changes:
    """Return the changes that a golfer meets; how a work is done is for the team."""
    return Changes(tuple(filter(_is_met, changes.changes)), changes.stands)


def _is_met(change: Change) -> bool:
    return change.kind is not ChangeKind.OTHERWISE or change.subject is not Subject.WORK


def told_to_visitors(changes: Changes, new: Programme) -> Changes:
    """Return the changes to what visitors are told, as far as it lies ahead.

    Other people's fixtures, why something is closed and who approves the plan are not among it.
    """
    kept = (
        change
        for change in met_by_golfers(changes).changes
        if change.subject is not Subject.FIXTURE
        and change.aspect not in (Aspect.REASON, Aspect.DRAFT)
        and _is_ahead(change, new)
    )
    return Changes(tuple(kept), changes.stands)


def _is_ahead(change: Change, new: Programme) -> bool:
    """Whether it is about a day that is still to come, or about none."""
    days = [day for move in change.moves for day in (*move.before, *move.after)]
    if not days and change.subject is Subject.WORK:
        days = [day for work in new.works if work.id == change.id for day in work.dates]
    if not days and change.subject in (Subject.CLOSURE, Subject.RESTRICTION):
        days = [
            *(day for one in new.closures if one.id == change.id for day in one.dates),
            *(day for one in new.restrictions if one.what == change.name for day in one.dates),
        ]
    return not days or max(days) >= new.issued
