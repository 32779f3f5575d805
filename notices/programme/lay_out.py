"""Which work is done on which green on which day."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import islice

from notices.operations import CATALOGUE, Kind, Operation, SettingValue
from notices.plan.days import all_days
from notices.plan.green_list import GreenRef
from notices.plan.model import GreenChoice, Plan
from notices.plan.model import Work as WrittenWork
from notices.programme.model import Green, Settings, Visit, Work

DEFAULT_AREA_M2 = 500.0
"""A typical green has 465 to 557 m² (trade press)."""

GreensByDay = dict[dt.date, tuple[str, ...]]


def lay_out_greens(plan: Plan) -> dict[str, Green]:
    """Return the greens of the course by key, in the order of the plan."""
    greens: dict[str, Green] = {}
    for line in plan.course.greens:
        for ref in line.green:
            area = DEFAULT_AREA_M2 if line.area is None else line.area
            number = ref if isinstance(ref, int) else None
            greens[str(ref)] = Green(str(ref), number, area, line.area is not None)
    return greens


def green_keys(refs: Sequence[GreenRef], greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return the keys of greens named in a plan, whatever their capitals."""
    by_word = {key.casefold(): key for key in greens}
    return tuple(by_word[str(ref).casefold()] for ref in refs)


def lay_out_works(plan: Plan, greens: Mapping[str, Green]) -> tuple[Work, ...]:
    """Return the works with their days, in the order of the plan."""
    counts: Counter[str] = Counter()
    works = []
    for index, written in enumerate(plan.works):
        operation = CATALOGUE[written.operation]
        counts[operation.name] += 1
        by_day = _greens_by_day(written, plan, greens)
        visits = tuple(Visit(day, by_day[day]) for day in sorted(by_day) if by_day[day])
        settings = settle(operation, written.settings, plan)
        works.append(
            Work(
                id=written.id or f"{operation.slug}-{counts[operation.name]}",
                operation=operation,
                plan_index=index,
                settings=settings,
                visits=visits + _later_dressings(visits, settings),
                reserve_dates=all_days(written.reserve_dates),
                while_working=written.while_working or operation.while_working,
                reopen_days=(operation.reopen_days if written.reopen is None else written.reopen),
                services_checked=written.services_checked,
                note=written.note or "",
            )
        )
    return tuple(works)


def _greens_by_day(work: WrittenWork, plan: Plan, greens: Mapping[str, Green]) -> GreensByDay:
    """Return the greens of each day of one work.

    Works of the same dates go together: all follow the one that assigns greens to days,
    or else the one that takes the most greens, so that no job overtakes another.
    """
    if work.greens and work.greens.by_day:
        return _assigned(work.greens, greens)
    listed = _listed(work, greens)
    days = all_days(work.dates)
    together = [other for other in plan.works if other.dates == work.dates]
    for other in together:
        if other.greens and other.greens.by_day:
            led = _assigned(other.greens, greens)
            break
    else:
        led = spread(max((_listed(other, greens) for other in together), key=len), days)
    chosen = set(listed)
    followed = {day: tuple(key for key in keys if key in chosen) for day, keys in led.items()}
    return spread(listed, days, followed)


def _assigned(choice: GreenChoice, greens: Mapping[str, Green]) -> GreensByDay:
    return {day: green_keys(refs, greens) for day, refs in choice.by_day}


def _listed(work: WrittenWork, greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return the greens of a work in the listed order; without a list, all numbered ones."""
    if work.greens:
        return green_keys(work.greens.plain, greens)
    numbered = tuple(key for key, green in greens.items() if green.number is not None)
    return numbered or tuple(greens)


def spread(
    greens: Sequence[str], days: Sequence[dt.date], assigned: Mapping[dt.date, tuple[str, ...]] = {}
) -> GreensByDay:
    """Spread greens over days in the listed order, as evenly as whole greens allow.

    Greens that another work of the same dates has put on a day go there. Where there
    are more days than greens, a green takes several days running: draining one green
    in four days is one job.

    Parameters
    ----------
    greens
        Keys, in the order in which they are to be done.
    days
        Working days, in order.
    assigned
        Greens already put on a day by another work.

    Returns
    -------
    dict
        The greens of each day; never a green on two days unless it takes them running.
    """
    by_day: GreensByDay = {day: assigned.get(day, ()) for day in days}
    fixed = {key for keys in by_day.values() for key in keys}
    loose = [key for key in greens if key not in fixed]
    if not loose:
        return by_day
    if len(loose) >= len(days):
        queue = iter(loose)
        for day, share in zip(days, _shares(len(loose), len(days)), strict=True):
            by_day[day] += tuple(islice(queue, share))
        return by_day
    calendar = iter(days)
    for key, share in zip(loose, _shares(len(days), len(loose)), strict=True):
        for day in islice(calendar, share):
            by_day[day] += (key,)
    return by_day


def _shares(things: int, boxes: int) -> list[int]:
    """Divide things over boxes, the fuller boxes first."""
    each, extra = divmod(things, boxes)
    return [each + 1] * extra + [each] * (boxes - extra)


def settle(operation: Operation, given: Mapping[str, SettingValue], plan: Plan) -> Settings:
    """Return the settings of a work: the club's where given, else the catalogue's."""
    values: dict[str, SettingValue | None] = {s.name: s.default for s in operation.settings}
    if plan.course.mowing_height is not None and "from" in values:
        values["from"] = plan.course.mowing_height
    values |= given
    for setting in operation.settings:
        value = values[setting.name]
        if setting.kind is Kind.COUNT and isinstance(value, float):
            values[setting.name] = int(value)
    return Settings(values, frozenset(given))


def _later_dressings(visits: Sequence[Visit], settings: Settings) -> tuple[Visit, ...]:
    """Return the second and later dressings: each green so many days after its last one."""
    if "dressings" not in settings.values:
        return ()
    apart = int(settings.number("days_between"))
    return tuple(
        Visit(visit.date + dt.timedelta(days=apart * (ordinal - 1)), visit.greens, ordinal)
        for ordinal in range(2, int(settings.number("dressings")) + 1)
        for visit in visits
    )
