"""What is to be done with a notice that comes after another: only what the other did not ask for.

What hangs and says the same as before stays where it is. What has changed is printed on the day of
issue, whenever it was first printed: what hangs is wrong until then. Nothing is announced twice:
the change notice tells what is different.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from notices.programme.duties import Duty, DutyKind
from notices.programme.model import Programme
from notices.programme.news import last_day_of_news
from notices.programme.slugs import slug

ON_PAPER = frozenset({DutyKind.PRINT, DutyKind.PUT_UP})

OF_CHANGES = (
    ("change-notice", DutyKind.SEND),
    ("change-notice-a4", DutyKind.PUT_UP),
    ("change-slip", DutyKind.PRINT),
)
"""What tells of changes, and what is done with it on the day of issue."""

TO_VISITORS = "visitor-change"
"""What tells visitors of changes; the name of a party follows where it is for one alone."""


def asked_again(
    programme: Programme, duties: Iterable[Duty], changed: Collection[str]
) -> Iterator[Duty]:
    """Yield what there is to do with a notice: what tells of changes first, the rest in its order.

    Parameters
    ----------
    programme
        The plan, worked out.
    duties
        All that there is to do, whichever notice asked for it.
    changed
        Names of the documents that are new with this notice, or not what they were.
    """
    issued = programme.issued
    visitors = sorted(name for name in changed if name.startswith(TO_VISITORS))
    for document, kind in (*OF_CHANGES, *((name, DutyKind.SEND) for name in visitors)):
        if document in changed:
            name = f"{slug(kind.value)}-{document}"
            yield Duty(name, kind, issued, issued, document=document)
    again: set[str] = set()
    for duty in duties:
        if not _asked_before(programme, duty):
            yield duty
        elif (
            duty.kind in ON_PAPER
            and duty.document in changed
            and duty.document not in again
            and _of_use_until(programme, duty) >= issued
        ):
            again.add(duty.document)
            yield replace(duty, first=issued, last=issued)


def _asked_before(programme: Programme, duty: Duty) -> bool:
    """Whether the notice before asked for it and time has come for it since."""
    before = programme.replaces
    if before is None or before.draft:
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
