"""The calendar of the team and the office: the work day by day, and what to see to beside it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from notices.documents.calendar import Event, by_greens, calendar_of, numbered
from notices.documents.model import CalendarDocument, Entry
from notices.documents.to_do import to_do
from notices.programme.model import Period, Programme, to_five
from notices.programme.rounds import Done, rounds_on
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
    """Yield an entry for each day and round of dressing, numbered by its greens as members' are."""
    head = min(period.opening_works or period.works, key=lambda work: work.plan_index)
    groups: dict[Keys, dict[dt.date, Done]] = {}
    for day in sorted({visit.date for work in period.works for visit in work.visits}):
        for ordinal, done in rounds_on(words.programme, day).items():
            for work, greens in done:
                if work in period.works:
                    apart = ordinal == 1 and day not in period.days
                    lead = (work if apart else head).id
                    parts: Keys = (
                        (lead, "day") if ordinal == 1 else (lead, "day", f"again-{ordinal}")
                    )
                    groups.setdefault(parts, {}).setdefault(day, []).append((work, greens))
    for parts, days in groups.items():
        in_order = by_greens(words, [((day,), _greens_of(done)) for day, done in days.items()])
        for part, ((day,), _) in numbered(in_order):
            said = _day(words, period, days[day], day)
            yield Event(("team", *parts, *part), *said, day, day, "Work")


def _greens_of(done: Done) -> Keys:
    return tuple(dict.fromkeys(green for _, keys in done for green in keys))


def _day(words: Words, period: Period, done: Done, day: dt.date) -> tuple[str, str]:
    """Return the head of a day's entry and all that is done on it, in its order."""
    name = name_of_works(words, [work for work, _ in done], noticed=period.noticed)
    lines = [sentence(f"{words.title(work)}: {words.greens(keys)}") for work, keys in done]
    if timetable := words.programme.timetables.get(day):
        start = words.language.clock_at(to_five(timetable.first_start, timetable.work_from))
        finish = words.language.clock_at(to_five(timetable.last_finish))
        lines.append(sentence(f"The day’s work takes from about {start} to {finish}"))
    return f"{name}: {words.greens(_greens_of(done))}", "\n".join(lines)
