"""Which work is done on which green on which day."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Hashable, Mapping, Sequence
from itertools import islice
from types import MappingProxyType
from typing import TypeVar

from notices.operations import Operation, SettingValue, WhileWorking
from notices.plan.club_greens import ClubGreens, read_lines
from notices.plan.days import all_days
from notices.plan.followers import leader_of, named_works
from notices.plan.green_list import GreenRef
from notices.plan.model import GreenChoice, Plan
from notices.plan.model import Work as WrittenWork
from notices.programme.model import Green, Settings, Visit, Work
from notices.programme.slugs import distinct_slugs

DEFAULT_AREA_M2 = 500.0
"""A typical green has 465 to 557 m² (trade press)."""

Box = TypeVar("Box", bound=Hashable)

GreensByDay = dict[dt.date, tuple[str, ...]]
DaysByGreen = dict[str, tuple[dt.date, ...]]

_NOTHING: Mapping[str, tuple[dt.date, ...]] = MappingProxyType({})


def club_greens(plan: Plan) -> ClubGreens:
    """Return the greens of a plan with the names by which lists call them."""
    return read_lines(plan.course.greens)[0]


def lay_out_greens(plan: Plan) -> dict[str, Green]:
    """Return the greens of the club by key, in the order of the plan.

    A later line overrides an earlier one, whatever the capitals; a line without an area
    leaves the area that an earlier one gave. A double green is as large as the greens of its
    holes together, until a line names it with an area of its own.
    """
    club = club_greens(plan)
    areas = _areas(plan, club)
    slugs = distinct_slugs((green.key for green in club.greens), "green")
    found = {}
    for green in club.greens:
        parts = areas[green.key]
        found[green.key] = Green(
            key=green.key,
            number=green.holes[0] if green.holes else None,
            area_m2=sum(DEFAULT_AREA_M2 if part is None else part for part in parts),
            area_given=None not in parts,
            slug=slugs[green.key],
            course=green.course,
            shared_with=green.holes[1:],
        )
    return found


def _areas(plan: Plan, club: ClubGreens) -> dict[str, list[float | None]]:
    """Return the area of each green: one number, or one for each hole that shares it."""
    of_part: dict[tuple[str, GreenRef], float] = {}
    of_whole: dict[str, float] = {}
    joined: set[str] = set()
    for line in plan.course.greens:
        for ref, green in zip(line.green, club.line_greens(line), strict=True):
            if line.also or len(green.holes) < 2:
                joined.add(green.key)
            if line.area is not None and green.key in joined:
                of_whole[green.key] = line.area
            elif line.area is not None:
                of_part[green.key, ref] = line.area
    return {
        green.key: [of_whole[green.key]]
        if green.key in of_whole
        else [of_part.get((green.key, hole)) for hole in green.holes or (0,)]
        for green in club.greens
    }


def green_keys(refs: Sequence[GreenRef], club: ClubGreens) -> tuple[str, ...]:
    """Return the keys of greens named in a plan, each once, whatever their capitals.

    Raises
    ------
    KeyError
        When the club has no such green; plan.load has refused such a plan.
    """
    chosen = club.choose(refs)
    if chosen.problems:
        raise KeyError(chosen.problems[0].message)
    return chosen.greens


def lay_out_works(plan: Plan) -> tuple[Work, ...]:
    """Return the works with their days, in the order of the plan."""
    club = club_greens(plan)
    of_dates: dict[tuple[dt.date, ...], list[WrittenWork]] = {}
    for work in plan.works:
        if work.after is None:
            of_dates.setdefault(all_days(work.dates), []).append(work)
    together = {days: _days_of_greens(same, days, club) for days, same in of_dates.items()}
    identities = _identities(plan)
    catalogue = plan.catalogue
    works = []
    for index, written in enumerate(plan.works):
        operation = catalogue[written.operation]
        leader, wait = head_of(plan, index)
        led = plan.works[leader]
        by_day = {
            day + wait: greens
            for day, greens in _greens_by_day(led, together[all_days(led.dates)], club).items()
        }
        visits = tuple(Visit(day, by_day[day]) for day in sorted(by_day) if by_day[day])
        settings = settle(operation, written.settings, plan)
        works.append(
            Work(
                id=identities[index],
                operation=operation,
                plan_index=index,
                settings=settings,
                visits=visits + _later_dressings(visits, settings),
                reserve_dates=all_days(written.reserve_dates)
                or tuple(day + wait for day in all_days(led.reserve_dates)),
                while_working=_while_working(written, operation),
                reopen_days=operation.reopen_days if written.reopen is None else written.reopen,
                services_checked=written.services_checked,
                note=written.note or "",
                why=written.why or "",
                put_off_because=written.put_off_because or "",
                reopen_given=written.reopen is not None,
                temporary=written.temporary or "",
            )
        )
    return tuple(works)


def _while_working(written: WrittenWork, operation: Operation) -> WhileWorking:
    """Return what a green is meanwhile; who describes temporary greens has some."""
    usual = WhileWorking.TEMPORARY if written.temporary else operation.while_working
    return written.while_working or usual


def head_of(plan: Plan, index: int) -> tuple[int, dt.timedelta]:
    """Return the work at the head of those that a work follows, and how long after it; or itself.

    plan.load has refused a plan in which works follow one another in a circle.
    """
    named = named_works([(work.operation, work.id or "") for work in plan.works])
    wait = dt.timedelta(0)
    while (after := plan.works[index].after) is not None:
        wait += dt.timedelta(days=after.days)
        index = leader_of(after, named)
    return index, wait


def _identities(plan: Plan) -> list[str]:
    """Return what each work is known by: its id, else its operation and its ordinal.

    Every work of an operation counts, so that naming one does not rename the others.
    plan.load refuses an id that is already another work's by this rule.
    """
    counts: Counter[str] = Counter()
    catalogue = plan.catalogue
    found = []
    for work in plan.works:
        counts[work.operation] += 1
        found.append(work.id or f"{catalogue[work.operation].slug}-{counts[work.operation]}")
    return found


def _days_of_greens(
    works: Sequence[WrittenWork], days: Sequence[dt.date], club: ClubGreens
) -> DaysByGreen:
    """Put greens on days for works of the same dates, which go together.

    All follow those that assign greens to days; of the others the one that takes the most
    greens leads, so that no job overtakes another.
    """
    found: DaysByGreen = {}
    for work in works:
        for day, refs in work.greens.by_day if work.greens else ():
            for key in green_keys(refs, club):
                found.setdefault(key, (day,))
    plain = [_listed(w, club) for w in works if not (w.greens and w.greens.by_day)]
    for listed in sorted(plain, key=len, reverse=True):
        found |= spread(listed, days, found)
    return found


def _greens_by_day(
    work: WrittenWork, days_of: Mapping[str, tuple[dt.date, ...]], club: ClubGreens
) -> GreensByDay:
    """Return the greens of each day of one work."""
    if work.greens and work.greens.by_day:
        return _assigned(work.greens, club)
    chosen = set(_listed(work, club))
    by_day: dict[dt.date, list[str]] = {}
    for key, days in days_of.items():
        for day in days if key in chosen else ():
            by_day.setdefault(day, []).append(key)
    return {day: tuple(keys) for day, keys in by_day.items()}


def _assigned(choice: GreenChoice, club: ClubGreens) -> GreensByDay:
    """Return the greens of each day; one that two holes share is done on the first day named."""
    done: set[str] = set()
    by_day: GreensByDay = {}
    for day, refs in choice.by_day:
        by_day[day] = tuple(key for key in green_keys(refs, club) if key not in done)
        done.update(by_day[day])
    return by_day


def _listed(work: WrittenWork, club: ClubGreens) -> tuple[str, ...]:
    """Return the greens of a work in the listed order; without a list, all numbered ones."""
    if work.greens:
        return green_keys(work.greens.plain, club)
    numbered = tuple(green.key for green in club.greens if green.holes)
    return numbered or tuple(green.key for green in club.greens)


def spread(
    greens: Sequence[str],
    days: Sequence[dt.date],
    fixed: Mapping[str, tuple[dt.date, ...]] = _NOTHING,
) -> DaysByGreen:
    """Spread greens over days in the listed order, as evenly as whole greens allow.

    Greens that another work of the same dates has put on a day go there, and the others
    even out what is left. A work with fewer greens than days takes several days running
    for each: draining one green in four days is one job.

    Parameters
    ----------
    greens
        Keys, in the order in which they are to be done.
    days
        Working days, in order.
    fixed
        Days of greens that another work has put there.

    Returns
    -------
    dict
        The days of each green, one after the other only where it takes them running.
    """
    led = {key: fixed[key] for key in greens if key in fixed}
    loose = [key for key in greens if key not in fixed]
    if not led and len(loose) < len(days):
        calendar = iter(days)
        shares = _even(dict.fromkeys(loose, 0), len(days))
        return {key: tuple(islice(calendar, share)) for key, share in shares.items()}
    load = Counter(day for taken in led.values() for day in taken)
    queue = iter(loose)
    places = _even({day: load[day] for day in days}, len(loose))
    return led | {key: (day,) for day, share in places.items() for key in islice(queue, share)}


def _even(load: Mapping[Box, int], things: int) -> dict[Box, int]:
    """Say how many things go into each box so that all are as even as can be, the first fuller."""
    added = dict.fromkeys(load, 0)
    for _ in range(things):
        added[min(added, key=lambda box: load[box] + added[box])] += 1
    return added


def settle(operation: Operation, given: Mapping[str, SettingValue], plan: Plan) -> Settings:
    """Return the settings of a work: the club's where given, else the catalogue's.

    The club's height of cut is where raising it starts from; the usual rise stays.
    """
    values: dict[str, SettingValue | None] = {s.name: s.default for s in operation.settings}
    own = dict(given)
    height = plan.course.mowing_height
    if operation.name == "raising the height of cut" and height is not None and "from" not in own:
        rise = _number(values["to"]) - _number(values["from"])
        values["to"] = height + rise
        own["from"] = height
    return Settings(values | own, frozenset(own))


def _number(value: SettingValue | None) -> float:
    if not isinstance(value, float | int):
        raise TypeError(f"{value!r} is not a number")
    return value


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
