"""What members are told of a period: expect by, and at worst."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import replace

from notices.agronomy.recovery import DateRange, latest
from notices.programme.model import Promise, Recovery, SandOnGreen, Work
from notices.programme.recovery import RecoveryModel, recover_period, recover_works

LONGEST_SPAN = dt.timedelta(days=31)
"""A member is shown a span of a month at most; the earlier date gives way."""


def put_off(works: Sequence[Work], days: dt.timedelta) -> tuple[Work, ...]:
    """Return the works as rain would leave them: all visits so many days later."""
    return tuple(
        replace(work, visits=tuple(replace(v, date=v.date + days) for v in work.visits))
        for work in works
    )


def rain_delay(days: Sequence[dt.date], reserve: Sequence[dt.date]) -> dt.timedelta:
    """Return how much later a period ends when it needs its last reserve date."""
    if not reserve:
        return dt.timedelta(0)
    return max(max(reserve) - max(days), dt.timedelta(0))


def recover_after_rain(
    works: Sequence[Work],
    delay: dt.timedelta,
    needs: Sequence[SandOnGreen],
    recovery_model: RecoveryModel,
    others: Sequence[Work],
) -> tuple[Recovery, ...]:
    """Return when the greens of a period come back if its works end on the last reserve date.

    Other works, one of which may fill its holes, stay where they are.
    """
    later = put_off(works, delay)
    by_work = recover_works(later, needs, recovery_model, others)
    return recover_period(later, by_work, recovery_model)


def promise_of_play(recoveries: Sequence[Recovery], rained: Sequence[Recovery]) -> Promise:
    """Return when all greens are open again: grass has no part in it."""
    expect = max(r.back_in_play.early for r in recoveries)
    return Promise(expect, max(expect, *(r.back_in_play.early for r in rained)))


def promise_of_putting(
    recoveries: Sequence[Recovery], rained: Sequence[Recovery], recovery_model: RecoveryModel
) -> Promise:
    """Return when all greens putt well again."""
    waiting = [r for r in (*recoveries, *rained) if r.grows_to_putt]
    spans = {r.green: r.putting_smoothly for r in recoveries}
    lates = [r.putting_smoothly.late for r in rained]
    return _promise(spans, lates, waiting, recovery_model)


def promise_of_healing(
    recoveries: Sequence[Recovery], rained: Sequence[Recovery], recovery_model: RecoveryModel
) -> Promise:
    """Return when nothing is left to see on any green."""
    waiting = [r for r in (*recoveries, *rained) if r.grows_to_heal]
    spans = {r.green: r.fully_healed for r in recoveries}
    lates = [r.fully_healed.late for r in rained]
    return _promise(spans, lates, waiting, recovery_model)


def _promise(
    spans: Mapping[str, DateRange],
    lates: Sequence[dt.date | None],
    waiting: Sequence[Recovery],
    recovery_model: RecoveryModel,
) -> Promise:
    """Return what is told of several greens: all of them by then.

    Parameters
    ----------
    spans
        The range of each green as planned.
    lates
        The latest day of each green after rain; None where growth does not get there.
    waiting
        Greens for which grass must grow; they know when growth stops.
    recovery_model
        Knows when growth stops again.
    """
    expect = max(span.expected for span in spans.values())
    worst = latest([*lates, *(span.late for span in spans.values())])
    stop = _growth_stop_before(expect, worst, waiting, recovery_model)
    # Where growth stops in between, the span is told in words, not shortened.
    if worst is not None and (stop is None or expect >= stop):
        expect = max(expect, worst - LONGEST_SPAN)
    return Promise(expect, worst, stop)


def _growth_stop_before(
    expect: dt.date,
    worst: dt.date | None,
    waiting: Sequence[Recovery],
    recovery_model: RecoveryModel,
) -> dt.date | None:
    """Return when growth stops on the way to the later date, in the last winter if in several."""
    stops = [r.growth_stops for r in waiting if r.growth_stops is not None]
    if not stops or (worst is not None and min(stops) >= worst):
        return None
    first = min(stops)
    if expect < first:
        return first
    again = recovery_model.growth_stop(expect)
    return again if again is not None and (worst is None or again < worst) else first
