"""Work put off: which dates of a plan become which, and where they stand in its text."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from notices.calendar_days import ONE_DAY
from notices.plan.days import DayRange, all_days, format_days, parse_days
from notices.plan.followers import leader_of, named_works
from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.load import LoadedPlan
from notices.plan.model import Plan, Work
from notices.plan.refusal import Refusal
from notices.plan.yaml_edits import PlanText


@dataclass(frozen=True, slots=True)
class PutOff:
    """Works whose days become others."""

    works: tuple[int, ...]
    """The work that was named, and those that go with it, counted from 0."""
    days: Mapping[dt.date, dt.date]
    """Each day of the work, and the one that takes its place."""

    def after(self, day: dt.date) -> dt.date:
        """Return what becomes of a day."""
        return self.days.get(day, day)


def put_off(
    plan: Plan, work: int, to: dt.date | None, day: dt.date | None, *, alone: bool
) -> PutOff:
    """Return which works move, and which of their days become which.

    Parameters
    ----------
    plan
        The plan as it is.
    work
        The work that is put off, counted from 0.
    to
        The first day on which it is to be done, or the day that takes the place of ``day``; None
        for the reserve dates.
    day
        The one day that is put off, or None for all of them.
    alone
        Whether works of the same dates stay where they are.

    Raises
    ------
    Refusal
        With a sentence for the person who asked for it.
    """
    named = plan.works[work]
    if named.after is not None:
        raise Refusal(
            f"{named.operation} follows {named.after.work}",
            f"postpone {named.after.work}, and it comes along",
        )
    own = all_days(named.dates)
    if day is not None and day not in own:
        raise Refusal(
            f"{named.operation} is not planned on {day}", f"its days are {format_days(named.dates)}"
        )
    moving = own if day is None else (day,)
    days = _onto_reserve(named, moving) if to is None else _shifted(moving, to)
    if all(old == new for old, new in days.items()):
        raise Refusal(f"{named.operation} is planned for {moving[0]} already", "name another day")
    same = [
        index
        for index, other in enumerate(plan.works)
        if index != work and other.after is None and all_days(other.dates) == own
    ]
    return PutOff((work,) if alone else (work, *same), days)


def _onto_reserve(work: Work, moving: Sequence[dt.date]) -> dict[dt.date, dt.date]:
    kept = all_days(work.reserve_dates)
    if not kept:
        raise Refusal(f"{work.operation} has no reserve dates", "name the new day with --to")
    if len(kept) < len(moving):
        raise Refusal(
            f"{work.operation} takes {len(moving)} days and keeps {len(kept)} in reserve",
            "name the day that was lost with --day, or the new first day with --to",
        )
    return dict(zip(moving, kept, strict=False))


def _shifted(moving: Sequence[dt.date], to: dt.date) -> dict[dt.date, dt.date]:
    return {old: to + (old - moving[0]) for old in moving}


def write_put_off(
    text: PlanText,
    loaded: LoadedPlan,
    move: PutOff,
    greens_on: Mapping[dt.date, str],
    reason: str = "",
) -> None:
    """Change the dates in the text of a plan.

    Parameters
    ----------
    text
        The text of the plan, which is changed.
    loaded
        The plan that was read from it.
    move
        What becomes of which days.
    greens_on
        Greens of each day of the work, as they are typed, where only some of its days move: the
        others then keep the greens that were announced for them. Empty where that needs no
        saying.
    reason
        Why, as it is told with the new dates; it stands at the work that was named. Empty to tell
        none: one that an earlier change had does not hold any more.
    """
    typed = loaded.source.data["works"]
    for index in move.works:
        work = loaded.plan.works[index]
        days = sorted({move.after(day) for day in all_days(work.dates)})
        text.set(("works", index, "dates"), format_days(runs(days)))
        _write_reserve(text, index, work, days)
        greens = typed[index].get("greens")
        if isinstance(greens, dict):
            _write_days_of_greens(text, index, greens, move)
        _write_reason(text, index, reason if index == move.works[0] else "")
    named = any(isinstance(typed[index].get("greens"), dict) for index in move.works)
    if greens_on and not named:
        _write_greens(text, loaded, move, greens_on)
    for index, wait in _followers(loaded.plan, move.works).items():
        work = loaded.plan.works[index]
        days = sorted({move.after(day - wait) + wait for day in all_days(work.dates)})
        _write_reserve(text, index, work, days)


def _write_reason(text: PlanText, index: int, reason: str) -> None:
    path = ("works", index, "put_off_because")
    if not text.has(path):
        if reason:
            text.add(path[:-1], path[-1], reason)
    elif reason:
        text.set(path, reason)
    else:
        text.remove(path)


def runs(days: Iterable[dt.date]) -> tuple[DayRange, ...]:
    """Return days as ranges without a gap."""
    found: list[DayRange] = []
    for day in sorted(days):
        if found and day == found[-1].last + ONE_DAY:
            found[-1] = DayRange(found[-1].first, day)
        else:
            found.append(DayRange(day, day))
    return tuple(found)


def _write_reserve(text: PlanText, index: int, work: Work, days: Sequence[dt.date]) -> None:
    """Keep the reserve dates that still are some: not worked on, and after the work has begun."""
    kept = all_days(work.reserve_dates)
    still = [day for day in kept if day not in days and day > days[0]]
    path = ("works", index, "reserve_dates")
    if len(still) == len(kept):
        return
    if still:
        text.set(path, format_days(runs(still)))
    else:
        text.remove(path)


def _write_days_of_greens(
    text: PlanText, index: int, greens: Mapping[str, object], move: PutOff
) -> None:
    """Change the days in a list that names greens for days."""
    day_of = {key: all_days(parse_days(key))[0] for key in greens}
    after = {key: move.after(day) for key, day in day_of.items()}
    path = ("works", index, "greens")
    if len(set(after.values())) == len(after):
        for key, day in after.items():
            if day != day_of[key]:
                text.rename((*path, key), day.isoformat())
        return
    text.set_block(path, _joined((day, greens[key]) for key, day in after.items()))


def _write_greens(
    text: PlanText, loaded: LoadedPlan, move: PutOff, greens_on: Mapping[dt.date, str]
) -> None:
    """Name the greens of each day at the first of the works, which the others follow."""
    entries = _joined((move.after(day), greens) for day, greens in sorted(greens_on.items()))
    index = move.works[0]
    if "greens" in loaded.source.data["works"][index]:
        text.set_block(("works", index, "greens"), entries)
    else:
        text.add_block(("works", index), "greens", entries)


def _joined(days: Iterable[tuple[dt.date, object]]) -> dict[str, str]:
    """Return greens by day as they are typed, those of one day in one list."""
    found: dict[str, list[GreenRef]] = {}
    for day, greens in days:
        found.setdefault(day.isoformat(), []).extend(parse_greens(greens))
    return {day: format_greens(found[day]) for day in sorted(found)}


def _followers(plan: Plan, heads: Sequence[int]) -> dict[int, dt.timedelta]:
    """Return the works that follow any of these, and how many days later."""
    named = named_works([(work.operation, work.id or "") for work in plan.works])
    found: dict[int, dt.timedelta] = {}
    for index, work in enumerate(plan.works):
        wait, leader = dt.timedelta(0), index
        while (after := plan.works[leader].after) is not None:
            wait += dt.timedelta(days=after.days)
            leader = leader_of(after, named)
        if work.after is not None and leader in heads:
            found[index] = wait
    return found
