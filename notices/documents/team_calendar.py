"""The calendar of the team and the office: the work day by day, and what to see to beside it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from notices.documents.calendar import Event, calendar_of
from notices.documents.model import CalendarDocument, Entry
from notices.documents.to_do import to_do
from notices.programme.model import Period, Programme, Work, to_five
from notices.wording.duties import duty_in_words
from notices.wording.lists import sentence
from notices.wording.period import name_of_works
from notices.wording.words import Words

Keys = tuple[str, ...]


def team_calendars(programme: Programme) -> Entry:
    """Return the calendar of the team with what to do with it."""
    return Entry(
        "Team calendar",
        "The greens team and the office",
        "Bring it into the calendar that the team and the office share. It holds the work day by "
        "day, and when to order, send, print, put up, take down and look.",
        (team_calendar(programme),),
        again="No need to bring it in again.",
    )


def team_calendar(programme: Programme) -> CalendarDocument:
    """Write the calendar of the team: each day's work, and each duty on the days it may be done."""
    words = Words(programme)
    events = [event for period in programme.periods for event in _work(words, period)]
    for duty in to_do(programme):
        said = duty_in_words(words, duty)
        events.append(Event(("team", duty.id), said, "", duty.first, duty.last, "Duty"))
    about = "Work day by day, and what to order, send, print, put up, take down and look at."
    return calendar_of(programme, "team-calendar", "team and office", about, events)


def _work(words: Words, period: Period) -> Iterator[Event]:
    """Yield an entry for each day, known by its place among the days and not by its date."""
    visits = [(work, visit) for work in period.works for visit in work.visits]
    for ordinal in sorted({visit.ordinal for _, visit in visits}):
        again = [(work, visit) for work, visit in visits if visit.ordinal == ordinal]
        days = sorted({visit.date for _, visit in again})
        for number, day in enumerate(days, 1):
            today = [(work, visit.greens) for work, visit in again if visit.date == day]
            parts = (
                "team",
                period.works[0].id,
                "day",
                *((f"again-{ordinal}",) if ordinal > 1 else ()),
            )
            said = _day(words, period, today, day)
            yield Event((*parts, str(number)), *said, day, day, "Work")


def _day(
    words: Words, period: Period, works: Sequence[tuple[Work, Keys]], day: dt.date
) -> tuple[str, str]:
    """Return the head of a day's entry and all that is done on it, in its order."""
    greens = list(dict.fromkeys(green for _, keys in works for green in keys))
    name = name_of_works(words, [work for work, _ in works], noticed=period.noticed)
    lines = [sentence(f"{words.title(work)}: {words.greens(keys)}") for work, keys in works]
    if timetable := words.programme.timetables.get(day):
        start = words.language.clock_at(to_five(timetable.first_start, timetable.work_from))
        finish = words.language.clock_at(to_five(timetable.last_finish))
        lines.append(sentence(f"The day’s work takes from about {start} to {finish}"))
    return f"{name}: {words.greens(greens)}", "\n".join(lines)
