"""The members' calendar: an entry for each work, closure and reserve day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from notices.documents.model import CalendarDocument, CalendarEntry, Entry, Imprint
from notices.programme.model import Period, Programme, Visit, Work
from notices.wording import circumstances
from notices.wording.dates import runs_of_days
from notices.wording.lists import and_list, sentence
from notices.wording.words import Words, days_with_greens

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
        for work in period.works:
            yield from _of_work(words, work)
        yield from _reserve_days(words, period)
    for closed in words.programme.closures:
        for part, run in _numbered(runs_of_days(closed.dates)):
            what = circumstances.closed_thing(words, closed)
            said = circumstances.closure(words, closed)
            yield Event((closed.id, *part), what, said, run[0], run[-1], "Closure")


def _of_work(words: Words, work: Work) -> Iterator[Event]:
    text = words.operation(work)
    name = f"{text.title}: {words.greens(work.greens)}"
    told = "\n".join([sentence(text.line), _days_in_words(words, work.main_visits)])
    for part, run in _numbered(runs_of_days(work.dates)):
        yield Event((work.id, *part), name, told, run[0], run[-1], "Work")
    for ordinal in sorted({visit.ordinal for visit in work.follow_ups}):
        visits = [visit for visit in work.follow_ups if visit.ordinal == ordinal]
        again, later = name.replace(":", " again:", 1), _days_in_words(words, visits)
        for part, run in _numbered(runs_of_days([visit.date for visit in visits])):
            parts = (work.id, f"again-{ordinal}", *part)
            yield Event(parts, again, later, run[0], run[-1], "Work")


def _reserve_days(words: Words, period: Period) -> Iterator[Event]:
    """One entry for each day kept free, named after the first work that may need it."""
    for day in sorted({day for work in period.works for day in work.reserve_dates}):
        works = [work for work in period.works if day in work.reserve_dates]
        reserve = words.language.terms.reserve_day
        number = str(works[0].reserve_dates.index(day) + 1)
        names = and_list([words.title(work).lower() for work in works])
        said = sentence(f"Kept free in case rain stops {names}")
        parts = (works[0].id, "reserve", number)
        yield Event(parts, reserve, said, day, day, reserve, tentative=True)


def _days_in_words(words: Words, visits: Sequence[Visit]) -> str:
    return "\n".join(
        sentence(f"{words.dates.days(days)}: {words.greens(greens)}")
        for days, greens in days_with_greens((visit.date, visit.greens) for visit in visits)
    )


def _numbered(
    runs: Sequence[list[dt.date]],
) -> Iterator[tuple[tuple[str, ...], list[dt.date]]]:
    """Number the parts of what falls into several, but the first, which keeps the name of the whole.

    So what rain parts in two moves with its first part, and only the second is new.
    """
    for number, run in enumerate(runs, 1):
        yield ((str(number),) if number > 1 else ()), run
