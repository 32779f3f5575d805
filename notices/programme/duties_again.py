"""What is to be done with a notice that comes after another: only what the other did not ask for.

What hangs and says the same as before stays where it is. What has changed is printed now, whichever
day it was first printed on. Nothing is announced twice: the change notice tells what is different.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from notices.programme.duties import Duty, DutyKind
from notices.programme.model import Programme
from notices.programme.news import last_day_of_news

ON_PAPER = frozenset({DutyKind.PRINT, DutyKind.PUT_UP})


def asked_again(
    programme: Programme, duties: Iterable[Duty], changed: Collection[str]
) -> Iterator[Duty]:
    """Yield what there is to do with a notice, in the order of the duties.

    Parameters
    ----------
    programme
        The plan, worked out.
    duties
        All that there is to do, whichever notice asked for it.
    changed
        Names of the documents that are new with this notice, or not what they were.
    """
    again: set[str] = set()
    for duty in duties:
        if not _asked_before(programme, duty):
            yield duty
        elif (
            duty.kind in ON_PAPER
            and duty.document in changed
            and duty.document not in again
            and _of_use_until(programme, duty) >= programme.issued
        ):
            again.add(duty.document)
            yield replace(duty, first=programme.issued, last=programme.issued)


def _asked_before(programme: Programme, duty: Duty) -> bool:
    """Whether the notice before asked for it and time has come for it since."""
    before, earlier = programme.replaces, programme.earlier
    if before is None or (earlier is not None and earlier.draft):
        return False
    if duty.kind not in ON_PAPER and duty.kind is not DutyKind.SEND:
        return False
    return duty.first < programme.issued or duty.first <= before.issued


def _of_use_until(programme: Programme, duty: Duty) -> dt.date:
    """Return the last day on which anybody reads a sheet: of the period that it is printed for."""
    for period in programme.periods:
        if duty.works and duty.works[0] in {work.id for work in period.works}:
            return period.days[-1]
    return last_day_of_news(programme)
