"""Fixtures from an iCalendar export of any calendar program (RFC 5545)."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from pathlib import Path

from notices.plan.model import Fixture

_LARGEST = 5_000_000


def read_calendar(
    path: Path, *, first: dt.date, last: dt.date, zone: str | None, template: Fixture
) -> tuple[Fixture, ...]:
    """Return the events of the file between two days, recurrences written out.

    Parameters
    ----------
    path
        The .ics file.
    first, last
        Only events that touch these days are read.
    zone
        IANA name of the club's time zone, in which a timed event has its day.
    template
        The entry of the plan that names the calendar; its kind goes to every event.

    Raises
    ------
    ValueError
        When the file is missing or is not a calendar; the message is for a person.
    """
    import icalendar  # noqa: PLC0415, only plans with a calendar pay for it
    import recurring_ical_events  # noqa: PLC0415

    if not path.is_file():
        raise ValueError(f"there is no file {path.name} beside the plan")
    if path.stat().st_size > _LARGEST:
        raise ValueError(f"{path.name} is larger than 5 MB: export fewer years")
    try:
        calendar = icalendar.Calendar.from_ical(path.read_bytes())
        events = recurring_ical_events.of(calendar).between(first, last + dt.timedelta(days=1))
    except (ValueError, OSError, TypeError, KeyError, AttributeError, IndexError) as error:
        raise ValueError(f"{path.name} cannot be read as a calendar ({error})") from None
    fixtures = set()
    for event in events:
        if str(event.get("STATUS", "")).upper() == "CANCELLED" or "DTSTART" not in event:
            continue
        day = _day(event["DTSTART"].dt, zone)
        name = " ".join(str(event.get("SUMMARY", "")).split()) or "Unnamed event"
        if first <= day <= last:
            fixtures.add((day, name))
    return tuple(
        template.model_copy(update={"name": name[:200], "date": day, "calendar": None})
        for day, name in sorted(fixtures)
    )


def _day(start: dt.date | dt.datetime, zone: str | None) -> dt.date:
    if not isinstance(start, dt.datetime):
        return start
    if start.tzinfo is not None and zone is not None:
        start = start.astimezone(zoneinfo.ZoneInfo(zone))
    return start.date()
