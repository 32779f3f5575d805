"""Fixtures from an iCalendar export of any calendar program (RFC 5545)."""

from __future__ import annotations

import codecs
import contextlib
import datetime as dt
import time
import zoneinfo
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from notices.plan.beside import read_beside
from notices.plan.model import Fixture
from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal

if TYPE_CHECKING:
    import icalendar

LARGEST = 5_000_000
LONGEST_NAME = 200
LONGEST_EVENT = 14
"""Days of one event that count; a longer one is a season or a league, not a fixture."""
MOST_EVENTS = 10_000
PATIENCE = 6.0
"""Seconds for which recurrences are worked out; a club's own calendar takes well under one."""
TOO_OFTEN = {"SECONDLY", "MINUTELY", "HOURLY"}
"""Recurrences that no golf club plays, and that would take for ever to write out."""
EARLY = dt.time(6)
"""An event that ends before this hour belongs to the day before: it was the dinner."""


def read_calendar(
    folder: Path,
    name: str,
    *,
    first: dt.date,
    last: dt.date,
    zone: str | None,
    template: Fixture,
) -> tuple[Fixture, ...]:
    """Return the events of the file on the days between two, recurrences written out.

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        Name of an .ics file in it.
    first, last
        Only these days are read, and those between them.
    zone
        IANA name of the club's time zone, in which a timed event has its day.
    template
        The entry of the plan that names the calendar; its kind goes to every event.

    Returns
    -------
    tuple of Fixture
        One for each day of each event, by date and name.

    Raises
    ------
    Refusal
        When the file is missing or is not a calendar; the message is for a person.
    """
    data = read_beside(
        folder, name, what="a calendar", largest=LARGEST, otherwise="export fewer years"
    )
    if data.count(b"BEGIN:VEVENT") > MOST_EVENTS:
        raise Refusal(f"{quoted(name)} holds over {MOST_EVENTS} events", "export fewer years")
    with _readable(name):
        calendars = _calendars(data)
        endless = next(_endless(calendars), None)
    if endless:
        raise Refusal(
            f"{quoted(endless)} recurs more often than once a day", "take it out of the calendar"
        )
    with _readable(name):
        days = [
            (day, _title(event))
            for event in _events(name, calendars, first, last)
            for day in _days(event, zone)
            if first <= day <= last
        ]
    return tuple(
        template.model_copy(update={"name": title, "date": day, "calendar": None})
        for day, title in sorted(set(days))
    )


@contextlib.contextmanager
def _readable(name: str) -> Iterator[None]:
    """Refuse a broken file, whatever the readers raise for it: they do not list it."""
    try:
        yield
    except Refusal:
        raise
    except Exception as error:
        raise Refusal(
            f"{quoted(name)} cannot be read as a calendar", "export it again as an .ics file"
        ) from error


def _text(data: bytes) -> str:
    """Return the letters of a calendar: RFC 5545 wants UTF-8, and old programs know only theirs."""
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return data.decode("utf-16", "replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("windows-1252", "replace")


def _calendars(data: bytes) -> list[icalendar.Calendar]:
    from icalendar import Calendar  # noqa: PLC0415, only plans with a calendar pay for it

    calendars = Calendar.from_ical(_text(data), multiple=True)
    if not calendars or any(calendar.name != "VCALENDAR" for calendar in calendars):
        raise ValueError("this holds something else than calendars")
    return calendars


def _endless(calendars: Iterable[icalendar.Calendar]) -> Iterator[str]:
    """Name the events that would take for ever to write out (RFC 5545 section 3.3.10)."""
    for calendar in calendars:
        for event in calendar.walk("VEVENT"):
            for rule in _rules(event):
                times = [len(rule.get(part, [])) for part in ("BYHOUR", "BYMINUTE", "BYSECOND")]
                if (
                    TOO_OFTEN & {str(how).upper() for how in rule.get("FREQ", [])}
                    or max(times) > 1
                    or min(rule.get("INTERVAL", [1])) < 1
                ):
                    yield _title(event)


def _rules(event: Mapping[str, Any]) -> list[Any]:
    rules = event.get("RRULE", [])
    return rules if isinstance(rules, list) else [rules]


def _events(
    name: str, calendars: Iterable[icalendar.Calendar], first: dt.date, last: dt.date
) -> Iterator[Mapping[str, Any]]:
    import recurring_ical_events  # noqa: PLC0415

    started = time.monotonic()
    for calendar in calendars:
        for part in _parts(calendar):
            # A rule that fits no day at all is tried until the year 9999.
            if time.monotonic() - started > PATIENCE:
                raise Refusal(
                    f"the events in {quoted(name)} recur in ways that take too long to work out",
                    "export fewer of them",
                )
            # The library leaves the last day out; and a day more at either end, for events of
            # other time zones.
            found = recurring_ical_events.of(part).between(
                first - dt.timedelta(days=1), last + dt.timedelta(days=2)
            )
            for event in found:
                if str(event.get("STATUS", "")).upper() != "CANCELLED":
                    yield event


def _parts(calendar: icalendar.Calendar) -> Iterator[icalendar.Calendar]:
    """Give each event that recurs a calendar of its own, with what changes single days of it."""
    families: dict[str, list[Any]] = {}
    others = []
    for component in calendar.subcomponents:
        if component.name == "VEVENT":
            families.setdefault(str(component.get("UID", "")), []).append(component)
        else:
            others.append(component)
    single = []
    for family in families.values():
        if any(_rules(event) for event in family):
            yield _calendar(calendar, [*others, *family])
        else:
            single += family
    yield _calendar(calendar, [*others, *single])


def _calendar(like: icalendar.Calendar, components: list[Any]) -> icalendar.Calendar:
    from icalendar import Calendar  # noqa: PLC0415

    made = Calendar(like)
    made.subcomponents = components
    return made


def _title(event: Mapping[str, Any]) -> str:
    words = " ".join(str(event.get("SUMMARY", "")).split())
    return words[:LONGEST_NAME].strip() or "Unnamed event"


def _days(event: Mapping[str, Any], zone: str | None) -> Iterator[dt.date]:
    start, end = (
        _local(event[key].dt, zone) if key in event else None for key in ("DTSTART", "DTEND")
    )
    if start is None:
        return
    if isinstance(start, dt.datetime):
        day = last = start.date()
        if isinstance(end, dt.datetime):
            last = end.date() - dt.timedelta(days=end.time() < EARLY)
    else:
        day = start
        # RFC 5545 section 3.6.1: an all-day event ends on the day after its last.
        last = end - dt.timedelta(days=1) if end else start
    for number in range(max(1, min((last - day).days + 1, LONGEST_EVENT))):
        yield day + dt.timedelta(days=number)


def _local(moment: dt.date | dt.datetime, zone: str | None) -> dt.date | dt.datetime:
    if not isinstance(moment, dt.datetime):
        return moment
    if moment.tzinfo is not None and zone is not None:
        moment = moment.astimezone(zoneinfo.ZoneInfo(zone))
    return moment.replace(tzinfo=None)
