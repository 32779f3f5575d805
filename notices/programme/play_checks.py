"""What a course manager should think about again for want of holes to play.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from notices.findings import Finding, Weight
from notices.plan.model import Plan
from notices.programme.hours import AWAY
from notices.programme.model import (
    NINE,
    WHOLE_DAY,
    DayOfPlay,
    HolesInPlay,
    PlayStatus,
    Programme,
    clock,
)
from notices.programme.time_checks import name_days


def fewer_than_nine_holes(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Closures that meet leave no round of nine holes; to close the whole course is no slip."""
    if len(programme.holes) < NINE:
        return
    found: dict[tuple[tuple[str, ...], tuple[float, float]], list[tuple[dt.date, int]]] = {}
    shut = {day for closure in programme.closures if closure.whole_course for day in closure.dates}
    for day in programme.play.values():
        if day.date in shut:
            continue
        fewest = min(day.by_hour, key=_playable)
        if _playable(fewest) < NINE:
            key = _closed_by(programme, day), _hours(day)
            found.setdefault(key, []).append((day.date, _playable(fewest)))
    for (because, hours), days in found.items():
        dates = tuple(date for date, _ in days)
        yield Finding(
            "fewer-than-nine-holes",
            Weight.THINK_AGAIN,
            f"{_named(programme, because)} leave{'s' if len(because) == 1 else ''} "
            f"{' and '.join(_left(days))}"
            f"{'' if hours == WHOLE_DAY else f', from about {clock(hours[0])} to {clock(hours[1])}'}",
            "Close fewer greens at once, or give temporary greens",
            _path(programme, because),
            work=next((work.id for work in programme.works if work.id in because), ""),
            greens=tuple(
                green
                for green in programme.greens
                if programme.greens[green].holes
                and any(programme.status_on(day, green) is PlayStatus.CLOSED for day in dates)
            ),
            dates=dates,
        )


def nowhere_to_putt(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A putting green is kept for another day, so that there is always one surface to putt on."""
    practice = [key for key, green in programme.greens.items() if not green.holes]
    shut = {day for closure in programme.closures if closure.whole_course for day in closure.dates}
    worked = {visit.date for work in programme.works for visit in work.visits}
    if not practice:
        return
    bare, together = [], []
    for day, on_day in programme.status.items():
        if day in shut or any(on_day[key] not in AWAY for key in practice):
            continue
        if all(status in AWAY for status in on_day.values()):
            bare.append(day)
        elif len(practice) > 1 and day in worked:
            together.append(day)
    for days, weight, what in (
        (bare, Weight.THINK_AGAIN, "no green and no putting green is left to putt on"),
        (together, Weight.INFORMATION, "all putting greens are away at once"),
    ):
        if days:
            because = _away_with(programme, practice, days)
            yield Finding(
                "nowhere-to-putt" if days is bare else "putting-greens-together",
                weight,
                f"{what} on {name_days(days)}",
                "Keep a putting green for another day",
                _path(programme, because),
                work=next((work.id for work in programme.works if work.id in because), ""),
                greens=tuple(practice),
                dates=tuple(days),
            )


def _away_with(
    programme: Programme, greens: Sequence[str], days: Sequence[dt.date]
) -> tuple[str, ...]:
    """Return the works and closures that take greens away, in the order of the plan."""
    return tuple(
        dict.fromkeys(
            name
            for day in days
            for green in greens
            for stretch in programme.stretches_on(day, green)
            if stretch.status in AWAY
            for name in stretch.because
        )
    )


def _playable(hours: HolesInPlay) -> int:
    """Count the holes in play, and those that may be: for all that is known they are not closed at once."""
    return len(hours.in_play) + len(hours.part_of_day)


def _hours(day: DayOfPlay) -> tuple[float, float]:
    """Return from when to when there are too few."""
    few = [hours for hours in day.by_hour if _playable(hours) < NINE]
    return few[0].begins, few[-1].ends


def _closed_by(programme: Programme, day: DayOfPlay) -> tuple[str, ...]:
    """Return the works and closures that close holes that day, in the order of the plan."""
    because = {
        name
        for key, green in programme.greens.items()
        for stretch in programme.stretches_on(day.date, key)
        if green.holes and stretch.status is PlayStatus.CLOSED and not stretch.passing
        for name in stretch.because
    }
    because |= {shut.id for shut in programme.closures if shut.closes_holes_on(day.date)}
    named = [*(work.id for work in programme.works), *(shut.id for shut in programme.closures)]
    return tuple(name for name in named if name in because)


def _named(programme: Programme, because: tuple[str, ...]) -> str:
    names = dict.fromkeys(w.operation.name for w in programme.works if w.id in because)
    names |= dict.fromkeys(
        f"the closure of {shut.what}" for shut in programme.closures if shut.id in because
    )
    listed = list(names)
    return " and ".join(filter(None, [", ".join(listed[:-1]), listed[-1]]))


def _path(programme: Programme, because: tuple[str, ...]) -> tuple[str | int, ...]:
    for work in programme.works:
        if work.id in because:
            return "works", work.plan_index, "dates"
    return next(
        ("closures", shut.plan_index, "dates") for shut in programme.closures if shut.id in because
    )


def _left(days: Sequence[tuple[dt.date, int]]) -> Iterator[str]:
    """Yield how many holes are left on which days, the fewest first."""
    for count in sorted({count for _, count in days}):
        yield f"{_holes(count)} in play on {name_days([day for day, left in days if left == count])}"


def _holes(count: int) -> str:
    return f"only {count} {'hole' if count == 1 else 'holes'}" if count else "no hole"
