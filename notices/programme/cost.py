"""What the works take and cost: hours of people, hire, sand, and the sand to be ordered.

Nothing is said of money where the club gave no price.
"""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from notices.agronomy.loads import whole_loads
from notices.plan.model import Plan
from notices.programme.figures.quantity import Quantity
from notices.programme.figures.sand import COST as SAND
from notices.programme.model import DayTimetable, Figure, Input, Programme, Task, Visit, Work
from notices.programme.public_holidays import working_day_before
from notices.programme.sand_order import SandDay, SandOrder
from notices.programme.slugs import ALL

HOURS = Quantity(
    "hours of people",
    "h",
    "time of each task, without the rest, × people it takes, summed over the tasks",
    ("definition", "common_practice"),
)
LABOUR = Quantity(
    "cost of labour", "money", "{hours of people} × {price of an hour}", ("definition",)
)
HIRE = Quantity("cost of hire", "money", "as the plan has it", ("definition",))
COST = Quantity("cost", "money", "sum of what is priced: sand, labour and hire", ("definition",))


def figures_of_cost(programme: Programme, plan: Plan) -> Iterator[Figure]:
    """Yield the hours and the costs of each work and of all together.

    Parameters
    ----------
    programme
        With its timetables, and the figures of its sand.
    plan
        The plan, for its prices.
    """
    own = [figure for work in programme.works for figure in _of_work(programme, plan, work)]
    yield from own
    summed = [
        figure
        for quantity in (HOURS, LABOUR, HIRE)
        for figure in _summed(quantity, [one for one in own if one.quantity == quantity.name])
    ]
    yield from summed
    priced = [figure for figure in summed if figure.quantity != HOURS.name]
    if sand := programme.figure(SAND.name, ALL):
        priced.insert(0, sand)
    if priced:
        yield _cost(ALL, priced, plan)


def _of_work(programme: Programme, plan: Plan, work: Work) -> Iterator[Figure]:
    """Yield the hours of one work, and what of it has a price."""
    currency = plan.club.currency or LABOUR.unit
    tasks = [
        (day, task)
        for day in programme.timetables.values()
        for task in day.tasks
        if task.work == work.id
    ]
    priced = [sand] if (sand := programme.figure(SAND.name, work.id)) else []
    if tasks:
        hours = sum(hours_of_people(day, task) for day, task in tasks)
        default = any(day.default_used for day, _ in tasks)
        yield HOURS.of(work.id, hours, [Input("tasks", len(tasks))], default_used=default)
        if plan.crew is not None and (price := plan.crew.hour_price) is not None:
            inputs = [
                Input("hours of people", hours, unit=HOURS.unit),
                Input("price of an hour", price, unit=currency),
            ]
            labour = replace(LABOUR, unit=currency)
            priced.append(labour.of(work.id, hours * price, inputs, default_used=default))
    hire = plan.works[work.plan_index].hire
    if hire is not None:
        priced.append(replace(HIRE, unit=currency).of(work.id, hire, (), default_used=False))
    yield from (figure for figure in priced if figure is not sand)
    if len(priced) > 1:
        yield _cost(work.id, priced, plan)


def _summed(quantity: Quantity, works: Sequence[Figure]) -> Iterator[Figure]:
    """Yield the sum of one quantity over the works, where any has it."""
    if works:
        yield replace(quantity, unit=works[0].unit).sum_of(
            ALL,
            {figure.work: figure.value for figure in works},
            recipe=f"sum of the {quantity.name} of all works",
            default_used=any(figure.default_used for figure in works),
        )


def _cost(work: str, priced: Sequence[Figure], plan: Plan) -> Figure:
    return replace(COST, unit=plan.club.currency or COST.unit).sum_of(
        work,
        {figure.quantity: figure.value for figure in priced},
        default_used=any(figure.default_used for figure in priced),
    )


def sand_order(programme: Programme, plan: Plan) -> SandOrder | None:
    """Return the sand to be ordered; None where nothing is dressed.

    Parameters
    ----------
    programme
        With the figures of its sand.
    plan
        The plan, for what a full lorry brings.
    """
    volumes: dict[dt.date, float] = {}
    trips: dict[dt.date, int] = {}
    first: set[dt.date] = set()
    for work in programme.works:
        for visit in work.visits:
            found = _figures(programme, work.id, visit.ordinal, visit.greens)
            if not found:
                continue
            spread = sum(
                (figure.value or 0.0) / len(work.days_on(figure.green, visit.ordinal))
                for figure in found
            )
            volumes[visit.date] = volumes.get(visit.date, 0.0) + spread
            trips[visit.date] = trips.get(visit.date, 0) + _trips(programme, work, visit)
            if visit.ordinal == 1:
                first.add(visit.date)
    if not any(volumes.values()):
        return None
    density = plan.sand.density
    days = tuple(
        SandDay(day, volume, volume * density, day not in first, trips[day])
        for day, volume in sorted(volumes.items())
        if volume
    )
    mass = sum(day.mass_t for day in days)
    return SandOrder(
        volume_m3=sum(day.volume_m3 for day in days),
        mass_t=mass,
        lorry_loads=int(whole_loads(mass, plan.sand.lorry_load)),
        deliver_by=working_day_before(days[0].date, plan.club.country),
        days=days,
    )


def _trips(programme: Programme, work: Work, visit: Visit) -> int:
    """Return the loads that go to the greens of one day; a job over several days takes its part."""
    trips = 0
    for green in visit.greens:
        figure = programme.figure(f"hauling time, dressing {visit.ordinal}", work.id, green)
        if figure is not None:
            loads = int(figure.inputs["loads"] or 0)
            trips += math.ceil(loads / len(work.days_on(green, visit.ordinal)))
    return trips


def _figures(programme: Programme, work: str, dressing: int, greens: Sequence[str]) -> list[Figure]:
    found = (programme.figure(f"sand, dressing {dressing}", work, green) for green in greens)
    return [figure for figure in found if figure is not None]


def hours_of_people(day: DayTimetable, task: Task) -> float:
    """Return the hours that a task takes of people: the rest in the middle of it is none."""
    return task.people * day.minutes_at(task) / 60
