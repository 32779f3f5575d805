"""What a course manager should think about again for want of time, people, machines or light.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator

from notices.findings import Finding, Weight
from notices.plan.model import Plan
from notices.programme.model import DayTimetable, Limit, Programme, Work, clock

A_MINUTE = 1.0

_SUGGESTIONS = {
    Limit.MACHINE: "Take fewer greens a day, or a second or a faster machine",
    Limit.PEOPLE: "Take fewer greens a day, or more people",
    Limit.DEW: "Take fewer greens a day, or bring the sand out on another day",
    Limit.DRYING: "Take fewer greens a day, or brush and roll the next morning",
    Limit.DAYLIGHT: "Take fewer greens a day, or let the working day go by the light",
}


def day_too_long(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The last task ends after the working day, or after dark."""
    works = {work.id: work for work in programme.works}
    for day in programme.timetables.values():
        # A timetable is no truer than to the minute, and nor is a sum of paces.
        if day.too_long_by < A_MINUTE:
            continue
        until = "when it gets dark" if day.work_until < day.ends else "when the working day ends"
        longest = works[_longest(day)]
        yield Finding(
            "day-too-long",
            Weight.THINK_AGAIN,
            f"the work on {day.date} would go on until about {clock(day.last_finish)}, "
            f"{_hours(day.too_long_by)} after {clock(day.work_until)}, {until}; "
            f"what holds it up is {_held_up_by(day)}",
            _SUGGESTIONS[day.limited_by],
            ("works", longest.plan_index, "dates"),
            work=longest.id,
            dates=(day.date,),
        )


def not_enough_people(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """One task takes more people than there are for all of them together."""
    dates: dict[tuple[str, str, int, int], list[dt.date]] = {}
    for day in programme.timetables.values():
        for task in day.tasks:
            if task.people > day.people:
                on = dates.setdefault((task.work, task.name, task.people, day.people), [])
                if day.date not in on:
                    on.append(day.date)
    works = {work.id: work for work in programme.works}
    for (work, name, needed, there), days in dates.items():
        yield Finding(
            "not-enough-people",
            Weight.THINK_AGAIN,
            f"{name} takes {_people(needed)}, and {_there(there)} there for the works; "
            "the times reckon with everybody at it",
            "Add people, or keep fewer back for routine work",
            ("works", works[work].plan_index, "operation"),
            work=work,
            dates=tuple(days),
        )


def hired_people_every_day(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """People who come with hired machines are there on certain days, if the plan says on which."""
    crew = plan.crew
    if programme.timetables and crew and crew.hired_people and crew.hired_dates is None:
        days = name_days(programme.timetables)
        yield Finding(
            "hired-people-every-day",
            Weight.INFORMATION,
            f"the plan does not say when its hired people are there, so they count on every day of "
            f"work: {days}",
            "Add crew: hired_dates: with their days",
            ("crew", "hired_people"),
        )


def machine_in_two_places(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Two works want one machine on one day: it goes to one after the other."""
    wanted: dict[tuple[dt.date, str], list[Work]] = {}
    for work in programme.works:
        for day in dict.fromkeys(visit.date for visit in work.visits):
            tasks = programme.timetables[day].tasks if day in programme.timetables else ()
            if any(t.work == work.id and t.name == work.operation.name for t in tasks):
                wanted.setdefault((day, work.operation.name), []).append(work)
    shared: dict[tuple[str, ...], list[dt.date]] = {}
    for (day, _), works in wanted.items():
        if len(works) > 1:
            shared.setdefault(tuple(work.id for work in works), []).append(day)
    by_id = {work.id: work for work in programme.works}
    for ids, days in shared.items():
        last = by_id[ids[-1]]
        yield Finding(
            "machine-in-two-places",
            Weight.INFORMATION,
            f"{len(ids)} works want the machine for {last.operation.name} on "
            f"{name_days(days)}; the timetable gives it to one after the other",
            "",
            ("works", last.plan_index, "dates"),
            work=last.id,
            dates=tuple(sorted(days)),
        )


def work_before_light(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The working day begins before it is light, or ends after dark."""
    early = [d for d in programme.timetables.values() if d.work_from >= d.begins + A_MINUTE]
    if early:
        latest = max(day.work_from for day in early)
        yield Finding(
            "work-before-light",
            Weight.INFORMATION,
            f"the working day begins at {clock(early[0].begins)}, and on "
            f"{name_days([day.date for day in early])} it is not light before that; "
            f"the hours are counted from first light, {clock(latest)} at the latest",
            "",
            ("crew", "working_day"),
            dates=tuple(day.date for day in early),
        )
    dark = [d for d in programme.timetables.values() if d.work_until <= d.ends - A_MINUTE]
    if dark:
        first = min(day.work_until for day in dark)
        yield Finding(
            "work-after-dark",
            Weight.INFORMATION,
            f"the working day ends at {clock(dark[0].ends)}, and on "
            f"{name_days([day.date for day in dark])} it is dark before that; "
            f"the hours are counted until the light goes, {clock(first)} at the earliest",
            "",
            ("crew", "working_day"),
            dates=tuple(day.date for day in dark),
        )


def light_not_known(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Where the club is decides when it is light."""
    if programme.timetables and plan.club.place is None:
        yield Finding(
            "place-not-stated",
            Weight.INFORMATION,
            "the plan does not say where the club is, so the working day is not cut to the light",
            "Add club: place: with latitude, longitude and timezone",
            ("club",),
        )


def _longest(day: DayTimetable) -> str:
    """Return the work that takes most time that day."""
    times: dict[str, float] = {}
    for task in day.tasks:
        times[task.work] = times.get(task.work, 0.0) + task.finish_minutes - task.start_minutes
    return max(times, key=lambda work: times[work])


def _held_up_by(day: DayTimetable) -> str:
    match day.limited_by:
        case Limit.MACHINE:
            return f"{day.busiest}, which takes {_hours(day.busiest_minutes)}"
        case Limit.PEOPLE:
            return f"that {_there(day.people)} there for it"
        case Limit.DEW:
            return f"that no sand is spread before the dew is off at {clock(day.dew_off or 0)}"
        case Limit.DRYING:
            return (
                f"that sand dries for {_hours(day.drying or 0)} before a green is brushed or rolled"
            )
        case Limit.DAYLIGHT:
            return f"that it is light only from {clock(day.light_from or 0)} to {clock(day.light_until or 0)}"


def _hours(minutes: float) -> str:
    """Say how long: minutes up to an hour and a half, then hours."""
    if minutes < 90:
        whole = round(minutes)
        return f"{whole} minute" if whole == 1 else f"{whole} minutes"
    return f"{minutes / 60:.1f} hours"


def _people(count: int) -> str:
    return "1 person" if count == 1 else f"{count} people"


def _there(count: int) -> str:
    return "only 1 person is" if count == 1 else f"only {count} people are"


def name_days(days: Iterable[dt.date]) -> str:
    """Name one day or two, and count more."""
    days = sorted(days)
    if len(days) > 2:
        return f"{len(days)} days from {days[0]} to {days[-1]}"
    return " and ".join(str(day) for day in days)
