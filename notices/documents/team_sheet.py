"""The team's sheet: a page a day with greens in order, machines, times, sand, and what to check."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from notices.documents.day_sheets import DayPage, day_sheet, on_paper
from notices.documents.model import Document, Entry, Fact
from notices.operations import WhileWorking
from notices.programme.model import (
    DayTimetable,
    Programme,
    Task,
    Visit,
    Work,
    to_five,
)
from notices.programme.news import days_ahead
from notices.wording import circumstances
from notices.wording.blocks import Block, Bullets, Heading, KeyFact, KeyFacts, Paragraph, Table
from notices.wording.cautions import cautions
from notices.wording.hours import on_one_line, span
from notices.wording.lists import counted, number, sentence
from notices.wording.measures import mass
from notices.wording.settings import depth_in_words, settings_in_words
from notices.wording.words import Words

USUAL = "usual"
"""Marks settings that the plan leaves to us: whoever sets the machine should look twice."""

OF_THE_MACHINE = (
    "tine_diameter",
    "hole_diameter",
    "blade_width",
    "blade_spacing",
    "channel_diameter",
    "width",
    "spacing",
    "depth",
    "from",
    "to",
)
"""Settings that somebody sets by hand."""


def team_sheets(programme: Programme) -> Entry | None:
    """Return the sheet with what to do with it; None where nothing is worked on."""
    if not programme.works:
        return None
    manager = Words(programme).language.terms.course_manager
    return Entry(
        "Team sheet",
        "The greens team",
        f"Give it to the {manager}, to print the day before: each day has its page. "
        "The last page is on safety at work: hang it where the team meets.",
        (on_paper(team_sheet(programme)),),
        again="Pages that are printed already still hold.",
    )


def team_sheet(programme: Programme) -> Document:
    """Write the team's sheet, day by day, and at its end what to look out for."""
    words = Words(programme)
    worked = sorted({visit.date for work in programme.works for visit in work.visits})
    days = days_ahead(worked, programme.issued)
    return day_sheet(
        programme,
        "team-sheet",
        "Team sheet",
        "Day by day: which greens in which order, who does what, sand, and what to check.",
        [*(_day(words, day) for day in days), _safety(words)],
    )


def _day(words: Words, day: dt.date) -> DayPage:
    today = [
        (work, visit)
        for work in sorted(words.programme.works, key=lambda w: (w.operation.order, w.plan_index))
        for visit in work.visits
        if visit.date == day
    ]
    timetable = words.programme.timetables.get(day)
    greens = _in_order(today, timetable)
    heading = words.dates.day(day)
    rows = [
        KeyFact("Greens in order", sentence(_listed(words, greens))),
        *_hours(words, timetable),
        *_sand(words, day),
    ]
    jobs = _jobs(words, today, timetable)
    blocks: list[Block] = [KeyFacts(tuple(rows)), jobs]
    if timetable is not None:
        blocks.append(_green_by_green(words, greens, timetable))
    blocks += [
        Heading("Before we start"),
        Bullets.of(*_checks(words, today), to_tick=True),
        Heading("Go or no go, and whom to ask"),
        Paragraph.of(
            " ".join(
                filter(
                    None,
                    (
                        circumstances.decision(words),
                        circumstances.go_or_no_go(words),
                        circumstances.contact(words),
                    ),
                )
            )
        ),
    ]
    facts = [
        Fact("day", heading, (day,)),
        Fact("greens", rows[0].text, (), tuple(greens)),
        *(Fact("day's figures", row.text) for row in rows[1:]),
        *(Fact("job", row[0]) for row in jobs.rows),
    ]
    works = frozenset(work.id for work, _ in today)
    return DayPage(f"day {day.isoformat()}", heading, blocks, facts, works)


def _in_order(
    today: Sequence[tuple[Work, Visit]], timetable: DayTimetable | None
) -> tuple[str, ...]:
    """Return the greens in the order in which the team comes to them."""
    started = [task.green for task in timetable.tasks] if timetable else []
    return tuple(dict.fromkeys([*started, *(g for _, visit in today for g in visit.greens)]))


def _listed(words: Words, greens: Sequence[str]) -> str:
    """Name greens in their order, one by one where it is not that of the plan."""
    if list(greens) == [green for green in words.programme.greens if green in greens]:
        return words.greens(greens, short=True)
    return ", ".join(words.greens([green], short=True) for green in greens)


def _hours(words: Words, timetable: DayTimetable | None) -> Iterator[KeyFact]:
    if timetable is None:
        timed = bool(words.programme.timetables)
        nobody = "The plan does not say who works and when, so there are no times."
        yield KeyFact("Hours", "This work is not timed." if timed else nobody)
        return
    people = counted(timetable.people, "person", "people")
    whole = _span(words, timetable, timetable.first_start, timetable.last_finish)
    yield KeyFact("Hours", sentence(f"{whole}, {people}"))
    if said := _spare(timetable):
        yield KeyFact("People", said)
    rests, works_on = timetable.rest
    if works_on > rests and timetable.first_start < rests < timetable.last_finish:
        about = words.language.clock_at(to_five(rests))
        yield KeyFact("Break", sentence(f"{works_on - rests:.0f} minutes, from about {about}"))
    if timetable.too_long_by:
        ends = words.language.clock_at(timetable.work_until)
        yield KeyFact(
            "Too long",
            f"This does not fit the day, which ends at {ends}. Decide the day before what can wait.",
        )


def _spare(timetable: DayTimetable) -> str:
    """Say who is not at these jobs, so that nobody wonders; empty where everybody is."""
    busy, kept = timetable.busy_at_most, timetable.kept_back
    more = f"{number(kept)} more {'does' if kept == 1 else 'do'} the daily work" if kept else ""
    if not 0 < busy < timetable.people:
        return sentence(more) if more else ""
    spare = timetable.people - busy
    free = "one is" if spare == 1 else f"{number(spare)} are"
    needed = counted(busy, "person at a time is", "people at a time are")
    said = f"at most {needed} needed; the other {free} free"
    return sentence(f"{said}, and {more}" if more else said)


def _sand(words: Words, day: dt.date) -> Iterator[KeyFact]:
    order = words.programme.sand_order
    for of_day in order.days if order else ():
        if of_day.date != day:
            continue
        amount, unit = mass(of_day.mass_t, words.programme.club.units)
        loads = counted(of_day.trailer_loads, "trailer load")
        trips = f", {loads}" if of_day.trailer_loads else ""
        timetable = words.programme.timetables.get(day)
        yield KeyFact(
            "Sand today",
            " ".join((f"{amount:.1f} {unit}{trips}.", *_when_to_sand(words, timetable))),
        )


def _when_to_sand(words: Words, timetable: DayTimetable | None) -> Iterator[str]:
    """Yield from when sand may be spread, and how long nobody goes on it."""
    if timetable is None:
        return
    if timetable.dew_off is not None:
        yield f"Spread none before {words.language.clock_at(timetable.dew_off)}: dew."
    if timetable.drying:
        dries = counted(round(timetable.drying), "minute")
        yield f"Brush or roll a green only when its sand is dry: the times allow {dries}."


def _jobs(
    words: Words, today: Sequence[tuple[Work, Visit]], timetable: DayTimetable | None
) -> Table:
    """List what is done, by whom, with which settings, from when to when."""
    rows = []
    for work, visit in today:
        tasks = [
            task
            for task in (timetable.tasks if timetable else ())
            if task.work == work.id and task.ordinal == visit.ordinal
        ]
        name = words.title(work)
        if visit.ordinal > 1:
            name = f"{name}, number {visit.ordinal}"
        settings = _set_to(words, work)
        greens = words.greens(visit.greens, short=True)
        own = [task for task in tasks if task.name == work.operation.name]
        beside = [[t for t in tasks if t.name == n] for n in dict.fromkeys(t.name for t in tasks)]
        rows.append((name, *_who_and_when(words, own, timetable), settings, greens))
        rows += [
            (
                _task(words, work, found[0].name),
                *_who_and_when(words, found, timetable),
                "",
                greens,
            )
            for found in beside
            if found and found[0].name != work.operation.name
        ]
    caption = "Who does what"
    if any(USUAL in row[3] for row in rows):
        caption += f" ({USUAL}: the plan does not say all of it; please ask)"
    head = ("Job", "People", "From and to", "Set to", "Greens")
    # Where all is done on the same greens, those stand above.
    columns = len(head) if len({row[-1] for row in rows}) > 1 else len(head) - 1
    return Table(caption, head[:columns], tuple(row[:columns] for row in rows))


def _set_to(words: Words, work: Work) -> str:
    """Say what the machine is set to, and whether that is not all the club's own."""
    units = words.programme.club.units
    depth = depth_in_words(work, units)
    parts = (settings_in_words(work, units), f"{depth} deep" if depth else "")
    said = ", ".join(filter(None, parts))
    known = [name for name in OF_THE_MACHINE if work.settings.values.get(name) is not None]
    return f"{said} ({USUAL})" if said and work.settings.rests_on_default(*known) else said


def _task(words: Words, work: Work, name: str) -> str:
    """Name what is done: the work itself, or what is done by hand beside it."""
    return words.title(work) if name == work.operation.name else f"{name[:1].upper()}{name[1:]}"


def _who_and_when(
    words: Words, tasks: Sequence[Task], timetable: DayTimetable | None
) -> tuple[str, str]:
    if not tasks or timetable is None:
        return "", ""
    begins = min(task.start_minutes for task in tasks)
    ends = max(task.finish_minutes for task in tasks)
    return str(tasks[0].people), on_one_line(_span(words, timetable, begins, ends))


def _span(words: Words, timetable: DayTimetable, begins: float, ends: float) -> str:
    """Say from when to when to five minutes: nobody stands on two greens at once."""
    first, last = (to_five(minutes, timetable.work_from) for minutes in (begins, ends))
    return span(words, first, last)


def _green_by_green(words: Words, greens: Sequence[str], timetable: DayTimetable) -> Table:
    """Set out from when to when each job is on each green; the shorter list goes across."""
    jobs = list(dict.fromkeys((task.work, task.name, task.ordinal) for task in timetable.tasks))
    times: dict[tuple[str, tuple[str, str, int]], str] = {
        (task.green, (task.work, task.name, task.ordinal)): _span(
            words, timetable, task.start_minutes, task.finish_minutes
        )
        for task in timetable.tasks
    }
    named = [words.greens([green], short=True) for green in greens]
    heads = [f"{name[:1].upper()}{name[1:]}" for name in named]
    works = {work.id: work for work in words.programme.works}
    tasks = [_task(words, works[work], name) for work, name, _ in jobs]
    if len(greens) < len(jobs):
        rows = tuple(
            (task, *(times.get((green, job), "") for green in greens))
            for task, job in zip(tasks, jobs, strict=True)
        )
        return Table(
            "Job by job",
            ("Job", *(f"Green {head}" if head[0].isdigit() else head for head in heads)),
            rows,
        )
    rows = tuple(
        (head, *(times.get((green, job), "") for job in jobs))
        for head, green in zip(heads, greens, strict=True)
    )
    return Table("Green by green", ("Green", *tasks), rows)


def _checks(words: Words, today: Sequence[tuple[Work, Visit]]) -> Iterator[str]:
    """Yield what to tick off before the first machine starts."""
    works = [work for work, _ in today]
    entering = [work for work in works if work.operation.enters_ground]
    if entering:
        own = dict.fromkeys(
            g for work, visit in today if work.operation.enters_ground for g in visit.greens
        )
        yield (
            "Irrigation pipes, sprinkler heads, cables and drains are found and marked: "
            f"{words.greens(tuple(own))}."
        )
    if any(not work.services_checked for work in entering):
        yield "The plan does not say that services were checked. Nobody opens the ground until they are."
    if way := circumstances.way_of_the_plough(works):
        yield (
            "A hole dug to the depth of the channels shows clay that moulds in the hand and does not "
            "crumble. The top is firm."
        )
        yield way
    if any(work.while_working is not WhileWorking.OPEN for work in works):
        yield "Signs are up at the tees."
    for caution in cautions(words, works).points:
        first = next(block.text for block in caution.text if isinstance(block, Paragraph))
        yield f"{caution.title}: {_inside(first.partition('. ')[0])}."


def _inside(text: str) -> str:
    return text[:1].lower() + text[1:]


def _safety(words: Words) -> DayPage:
    """Write the page on safety at work, for all that is planned."""
    found = cautions(words, words.programme.works)
    blocks: list[Block] = list(found.lead)
    for caution in found.points:
        blocks += [Heading(caution.title), *caution.text]
    return DayPage("safety", "Safety at work", blocks)
