"""Works outside their usual months, on public holidays and at weekends.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

from notices.findings import Finding, Weight
from notices.operations import Opening, WhileWorking
from notices.plan.model import Plan
from notices.programme.climate import club_climate, is_southern
from notices.programme.model import Programme, Recovery, Work
from notices.programme.promises import put_off
from notices.programme.public_holidays import holiday
from notices.programme.recovery import RecoveryModel, recover_works

MonthDay = tuple[int, int]
Season = tuple[MonthDay, MonthDay]
"""First and last day of a season; it may run over the new year."""

_SUMMER: Season = ((4, 1), (9, 30))
_WINTER: Season = ((10, 1), (2, 29))

USUAL: Mapping[str, tuple[Season, ...]] = {
    "scarifying": (_SUMMER,),
    "verticutting": (_SUMMER,),
    "hollow tining": (((3, 1), (4, 30)), ((8, 15), (9, 30))),
    "deep solid tining": (((9, 1), (3, 31)),),
    "mole ploughing": (((5, 1), (9, 30)),),
    "overseeding": (((8, 15), (9, 15)),),
    "drain trenching": (_WINTER,),
    "turfing": (_WINTER,),
}
"""Usual months on cool-season greens of the north temperate zone (common practice)."""

WARM_SEASON: Mapping[str, tuple[Season, ...]] = {
    **{name: seasons for name, seasons in USUAL.items() if name != "overseeding"},
    "hollow tining": (((5, 1), (8, 31)),),
}
"""The same on warm-season greens, which are cored while they grow (common practice)."""

_HALF_A_YEAR = 6
_A_YEAR = 366
_LAST_DAY = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)

# Own names, because those of the calendar module change with the computer's language.
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)

_ONLY_ON: Mapping[str, str] = {"deep solid tining": " on firm ground"}


def out_of_season(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A work is planned outside its usual months: unusual, and sometimes right."""
    model: RecoveryModel | None = None
    for work in programme.works:
        seasons = usual_seasons(work, plan)
        away = days_out_of_season(work, plan)
        if not away:
            continue
        model = model or RecoveryModel(club_climate(plan).climate, programme.records)
        move = _to_season(work.dates, seasons)
        cost = _cost(programme, work, move, model) if move else ""
        months = " or ".join(f"{_said(first)} to {_said(last)}" for first, last in seasons)
        span = (
            f"from {work.dates[0]} to {work.dates[-1]}" if len(work.dates) > 1 else f"on {away[0]}"
        )
        yield Finding(
            "out-of-season",
            Weight.THINK_AGAIN,
            f"{work.operation.name} {span} is outside its usual "
            f"time of year, {months}{_ONLY_ON.get(work.operation.name, '')} (common practice){cost}",
            "Move it if you can, or accept the finding with a reason",
            ("works", work.plan_index, "dates"),
            work=work.id,
            greens=work.greens,
            dates=away,
        )


def usual_seasons(work: Work, plan: Plan) -> tuple[Season, ...]:
    """Return the usual seasons of a work at this club; none where nothing is usual."""
    usual = USUAL if plan.course.grass == "cool-season" else WARM_SEASON
    seasons = usual.get(work.operation.name, ())
    return tuple(_turned(one) for one in seasons) if is_southern(plan.club) else seasons


def days_out_of_season(work: Work, plan: Plan) -> tuple[dt.date, ...]:
    """Return the days of a work that lie outside its usual months."""
    seasons = usual_seasons(work, plan)
    return tuple(day for day in work.dates if seasons and not _within(day, seasons))


def closed_on_days_off(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Greens are closed for work when most people have time to play."""
    country = plan.club.country
    for period in programme.periods:
        shut = [w for w in period.works if w.while_working is not WhileWorking.OPEN]
        shut = [w for w in shut if w.operation.opening is not Opening.NONE]
        days = sorted({visit.date for work in shut for visit in work.visits})
        if not days:
            continue
        named = {day: name for day in days if (name := holiday(day, country))}
        weekend = tuple(day for day in days if day.weekday() >= 5 and day not in named)
        path = ("works", shut[0].plan_index, "dates")
        if named:
            told = ", ".join(f"{day} ({name})" for day, name in named.items())
            yield Finding(
                "work-on-holiday",
                Weight.INFORMATION,
                f"work closes greens on a public holiday: {told}",
                "",
                path,
                work=shut[0].id,
                dates=tuple(named),
            )
        if weekend:
            yield Finding(
                "work-at-weekend",
                Weight.INFORMATION,
                f"work closes greens at a weekend: {', '.join(str(day) for day in weekend)}",
                "",
                path,
                work=shut[0].id,
                dates=weekend,
            )


def _turned(season: Season) -> Season:
    """Return a season half a year later; a month's last day stays its last."""
    return _six_months_on(season[0]), _six_months_on(season[1])


def _six_months_on(day: MonthDay) -> MonthDay:
    month = (day[0] - 1 + _HALF_A_YEAR) % 12 + 1
    last = day[1] == _LAST_DAY[day[0] - 1]
    return month, _LAST_DAY[month - 1] if last else day[1]


def _within(day: dt.date, seasons: Sequence[Season]) -> bool:
    here = (day.month, day.day)
    return any(
        first <= here <= last if first <= last else here >= first or here <= last
        for first, last in seasons
    )


def _to_season(days: Sequence[dt.date], seasons: Sequence[Season]) -> dt.timedelta | None:
    """Return the shortest move that brings every day into season, the earlier of two."""
    for distance in range(1, _A_YEAR):
        for move in (dt.timedelta(days=-distance), dt.timedelta(days=distance)):
            if all(_within(day + move, seasons) for day in days):
                return move
    return None


def _cost(programme: Programme, work: Work, move: dt.timedelta, model: RecoveryModel) -> str:
    """Say how many days more, or fewer, recovery takes than in the nearest usual season."""
    first = work.dates[0] + move
    if work.operation.opening is Opening.NONE:
        return f"; the nearest usual start is {first}"
    others = [other for other in programme.works if other.id != work.id]
    moved = recover_works(put_off([work], move), programme.sand, model, others)
    here = _days_to_heal(programme.recoveries[work.id])
    there = _days_to_heal(moved[work.id])
    if here is None or there is None:
        return f"; {_over(here)}, and from {first}, the nearest usual start, {_over(there)}"
    if here == there:
        return f"; recovery takes as long as from {first}, the nearest usual start"
    much = f"{_days(abs(here - there))} {'more' if here > there else 'less'}"
    return (
        f"; recovery takes up to {_days(here)}, {much} than from {first}, the nearest usual start"
    )


def _over(days: int | None) -> str:
    return "recovery is not over in two years" if days is None else f"it takes up to {_days(days)}"


def _days(number: int) -> str:
    return f"{number} {'day' if number == 1 else 'days'}"


def _said(day: MonthDay) -> str:
    return f"{'mid-' if day[1] == 15 else ''}{_MONTHS[day[0] - 1]}"


def _days_to_heal(recoveries: Sequence[Recovery]) -> int | None:
    """Return the days from the work until the slowest green has healed at the latest."""
    spans = [r.fully_healed.late - r.done for r in recoveries if r.fully_healed.late is not None]
    return max(spans).days if len(spans) == len(recoveries) else None


SEASON_CHECKS = (out_of_season, closed_on_days_off)
