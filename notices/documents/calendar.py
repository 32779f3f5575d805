"""The members' calendar: an entry for each day of work with its greens, closure and reserve day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from notices.calendar_days import ONE_DAY, each_day
from notices.documents.model import CalendarDocument, CalendarEntry, Entry, Imprint
from notices.operations import WhileWorking
from notices.programme.brushing import goes_along
from notices.programme.model import Period, Programme, Visit, Work
from notices.wording import circumstances, visit
from notices.wording.dates import runs_of_days
from notices.wording.lists import sentence
from notices.wording.period import PeriodWords
from notices.wording.words import DaysWithGreens, Words, days_with_greens

Part = TypeVar("Part")

DRAFT = "DRAFT: not yet approved."


def calendars(programme: Programme) -> Entry:
    """Return the calendar of members with what to do with it."""
    return Entry(
        "Calendar",
        "Members and visitors",
        "Put it on the club’s website, or attach it to a message. The email already carries it.",
        (calendar(programme),),
        again="Leave the one that is on the website.",
    )


def calendar(programme: Programme) -> CalendarDocument:
    """Write the calendar of a programme for members and visitors."""
    about = (
        "Planned work, closures and days kept free. All dates depend on the weather."
        if programme.works
        else "Closures."
    )
    return calendar_of(
        programme, "calendar", "work on the course", about, _entries(Words(programme))
    )


@dataclass(frozen=True, slots=True)
class Event:
    """What becomes an entry of a calendar."""

    parts: tuple[str, ...]
    """What the identity is made of beside the club; never a date, so that what moves keeps it."""
    summary: str
    description: str
    first: dt.date
    last: dt.date
    category: str
    tentative: bool = False


def calendar_of(
    programme: Programme, name: str, title: str, about: str, events: Iterable[Event]
) -> CalendarDocument:
    """Make a calendar, each entry with the club's identity, and a draft while it is one."""
    domain = programme.club.sender.email.rpartition("@")[2]
    draft = programme.draft
    entries = [
        CalendarEntry(
            f"{'-'.join([programme.club.slug, *event.parts])}@{domain}",
            f"DRAFT: {event.summary}" if draft else event.summary,
            f"{DRAFT}\n{event.description}" if draft else event.description,
            event.first,
            event.last,
            event.tentative or draft,
            event.category,
        )
        for event in events
    ]
    return CalendarDocument(
        name=name,
        title=f"{'DRAFT: ' if draft else ''}{programme.club.name}: {title}",
        language=programme.club.language,
        summary=f"{DRAFT} {about}" if draft else about,
        imprint=Imprint.of(programme),
        organizer=(programme.club.name, programme.club.sender.email),
        entries=tuple(sorted(entries, key=lambda entry: entry.first)),
    )


def _entries(words: Words) -> Iterator[Event]:
    for period in words.programme.periods:
        told = PeriodWords(words, period)
        yield from _of_period(words, told)
        for work in period.works:
            apart = not set(work.dates) <= set(period.days)
            if apart and not goes_along(words.programme, work):
                yield from _of_work(words, work)
            yield from _again(words, work)
        yield from _reserve_days(words, told)
    for closed in words.programme.closures:
        for part, run in numbered(runs_of_days(closed.dates)):
            what = circumstances.closed_thing(words, closed)
            said = circumstances.closure(words, closed)
            yield Event((closed.id, *part), what, said, run[0], run[-1], "Closure")


def _of_period(words: Words, told: PeriodWords) -> Iterator[Event]:
    """Yield an entry for each day with its greens: what goes together is one thing to a golfer.

    They belong to the work that comes first in the plan, so that one added below keeps them, and
    are numbered by their greens, so that a day that rain moves keeps its own.
    """
    period = told.period
    head = min(period.opening_works or period.works, key=lambda work: work.plan_index)
    for part, (days, greens) in numbered(by_greens(words, words.days_of(period))):
        last = _away_until(period, days)
        named = words.greens(greens)
        if last == days[-1]:
            name = f"{told.name()}: {named}"
            state = visit.closed_for(words, days[0], greens)
            said = [f"{words.dates.days(days)}: {named}.", "" if state == "Open." else state]
        else:
            away = each_day(days[0], last)
            state = told.state_while_away(greens)
            name = f"{named[:1].upper()}{named[1:]}: {state} ({told.inside().removeprefix('the ')})"
            said = [f"{words.dates.days(away)}: {state}."]
        text = "\n".join([told.what(), " ".join(filter(None, said))])
        yield Event((head.id, *part), name, text, days[0], last, "Work")


def by_greens(words: Words, days: DaysWithGreens) -> DaysWithGreens:
    """Put days in the order of their greens on the course, whenever each of them is."""
    place = {green: n for n, green in enumerate(words.programme.greens)}
    return sorted(days, key=lambda entry: (min(place[green] for green in entry[1]), entry[0]))


def _away_until(period: Period, days: Sequence[dt.date]) -> dt.date:
    """Return the last day on which a green is away that is worked on these days."""
    away = [
        one.date + (work.reopen_days - 1) * ONE_DAY
        for work in period.opening_works or period.works
        for one in work.main_visits
        if one.date in days and work.while_working is not WhileWorking.OPEN
    ]
    return max([days[-1], *away])


def _of_work(words: Words, work: Work) -> Iterator[Event]:
    """Yield the entry of what is done apart from the rest, such as mowing a little higher before."""
    text = words.operation(work)
    told = "\n".join([sentence(text.line), _days_in_words(words, work.main_visits)])
    name = f"{text.title}: {words.greens(work.greens)}"
    for part, run in numbered(runs_of_days(work.dates)):
        yield Event((work.id, *part), name, told, run[0], run[-1], "Work")


def _again(words: Words, work: Work) -> Iterator[Event]:
    """Yield the days of each later dressing, each with its greens."""
    for ordinal in sorted({one.ordinal for one in work.follow_ups}):
        visits = [one for one in work.follow_ups if one.ordinal == ordinal]
        days = days_with_greens((one.date, one.greens) for one in visits)
        for part, (on, greens) in numbered(by_greens(words, days)):
            named = words.greens(greens)
            state = visit.closed_for(words, on[0], greens)
            said = f"{words.dates.days(on)}: {named}. {'' if state == 'Open.' else state}".rstrip()
            parts = (work.id, f"again-{ordinal}", *part)
            yield Event(parts, f"{words.title(work)} again: {named}", said, on[0], on[-1], "Work")


def _reserve_days(words: Words, told: PeriodWords) -> Iterator[Event]:
    """One entry for each day kept free, named after the first work that may need it."""
    period = told.period
    # Sand is brushed when it lies there, so that a later brushing keeps no day of its own.
    for day in period.reserve_dates:
        first = next(work for work in period.works if day in work.reserve_dates)
        reserve = words.language.terms.reserve_day
        number = str(first.reserve_dates.index(day) + 1)
        said = sentence(f"Kept free in case rain stops {told.inside()}")
        parts = (first.id, "reserve", number)
        yield Event(parts, reserve, said, day, day, reserve, tentative=True)


def _days_in_words(words: Words, visits: Sequence[Visit]) -> str:
    return "\n".join(
        sentence(f"{words.dates.days(days)}: {words.greens(greens)}")
        for days, greens in days_with_greens((one.date, one.greens) for one in visits)
    )


def numbered(parts: Sequence[Part]) -> Iterator[tuple[tuple[str, ...], Part]]:
    """Number the parts of what falls into several, but the first, which keeps the name of the whole.

    So what rain parts in two moves with its first part, and only the second is new.
    """
    for number, part in enumerate(parts, 1):
        yield ((str(number),) if number > 1 else ()), part
