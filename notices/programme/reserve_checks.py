"""What a course manager should know of days that are kept free in case of rain.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from notices.findings import Finding, Weight
from notices.plan.model import Plan
from notices.programme.green_names import plan_greens
from notices.programme.model import Period, Programme, Work
from notices.programme.time_checks import name_days


def reserve_of_some(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Some works of a day can move when it rains, and others that go with them cannot.

    What golfers read, "if rain stops us, we catch up on", is said of all of them.
    """
    for period in programme.periods:
        kept = [work for work in period.opening_works if work.reserve_dates]
        without = [
            work
            for work in period.works
            if not work.reserve_dates and any(_go_together(work, other) for other in kept)
        ]
        if without:
            first, many = without[0], len(without) > 1
            days = {day for work in kept for day in work.reserve_dates}
            yield Finding(
                "reserve-of-some",
                Weight.INFORMATION,
                f"{_names(without)} {'have' if many else 'has'} no reserve date, and "
                f"{'go' if many else 'goes'} on the same days and greens as {_names(kept)}, "
                f"with {name_days(days)} in reserve",
                f"Give {'each of them' if many else 'it'} the same reserve_dates, "
                "so that all move together when it rains",
                ("works", first.plan_index, "dates"),
                work=first.id,
                greens=first.greens,
                dates=tuple(sorted(days)),
            )


def reserve_day_with_work(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A day that is kept free for rain has work of its own."""
    for period in programme.periods:
        reserved = set(period.reserve_dates)
        busy = [
            (work, visits)
            for work in programme.works
            if (visits := [visit for visit in work.visits if visit.date in reserved])
        ]
        if not busy:
            continue
        lead = _lead(period)
        visits = [visit for _, own in busy for visit in own]
        greens = tuple(dict.fromkeys(green for visit in visits for green in visit.greens))
        days = tuple(sorted({visit.date for visit in visits}))
        done = _listed(
            f"{work.operation.name}{' again' if all(one.ordinal > 1 for one in own) else ''}"
            for work, own in busy
        )
        yield Finding(
            "reserve-day-with-work",
            Weight.INFORMATION,
            f"{name_days(days)}, kept free in case rain stops {lead.operation.name}, "
            f"{'have' if len(days) > 1 else 'has'} work already: {done} on {plan_greens(programme.greens, greens)}",
            "See that people and machines can do both, or choose other days",
            ("works", lead.plan_index, "reserve_dates"),
            work=lead.id,
            greens=greens,
            dates=days,
        )


def _go_together(work: Work, other: Work) -> bool:
    return bool(set(work.dates) & set(other.dates) and set(work.greens) & set(other.greens))


def _lead(period: Period) -> Work:
    return next(work for work in period.works if work.reserve_dates)


def _names(works: Iterable[Work]) -> str:
    return _listed(work.operation.name for work in works)


def _listed(names: Iterable[str]) -> str:
    *before, last = dict.fromkeys(names)
    return f"{', '.join(before)} and {last}" if before else last


RESERVE_CHECKS = (reserve_of_some, reserve_day_with_work)
