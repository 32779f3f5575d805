"""An iCalendar file of dated events, to subscribe to or to open from an email."""

from __future__ import annotations

import datetime as dt
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

import icalendar


@dataclass(frozen=True)
class Event:
    """An event of one or more whole days."""

    uid: str
    """Identifier that never changes, even if the dates do (RFC 7986 section 5.3)."""
    summary: str
    description: str
    first: dt.date
    last: dt.date
    """The last day itself, not the one after."""
    status: Literal["CONFIRMED", "TENTATIVE", "CANCELLED"]
    sequence: int = 0
    """Raised by one whenever dates or status change (RFC 5545 section 3.8.7.4)."""
    url: str | None = None
    categories: tuple[str, ...] = ()


def write_calendar(
    events: Sequence[Event],
    *,
    name: str,
    description: str,
    prodid: str,
    organizer: tuple[str, str],
    stamp: dt.datetime,
    language: str,
    refresh: dt.timedelta,
    published: bytes = b"",
    fallen_away: str = "",
) -> bytes:
    """Write the events as an iCalendar file, in date order.

    A published event that has not changed stays the same to the byte. One that has changed gets the
    next sequence number and a later stamp (RFC 5545 sections 3.8.7.2 to 3.8.7.4). One that has gone
    stays in the file as cancelled, because many programs would keep showing it.

    Parameters
    ----------
    events
        At least one, in any order.
    name, description
        Name and description of the calendar as a whole.
    prodid
        Identifier of the program that made the file, such as "-//notices//notices//EN".
    organizer
        Name and mail address of the organizer.
    stamp
        Time at which the file was made, in UTC; new and changed events carry it.
    language
        Language tag of all texts, such as "en-GB".
    refresh
        Interval at which subscribers should fetch the file again.
    published
        Calendar file that people already have; empty if there is none.
    fallen_away
        Words before the name of a cancelled event, for programs that show no status.

    Returns
    -------
    bytes
        The .ics file; the same for the same events.

    Raises
    ------
    ValueError
        If there is no event, a UID occurs twice, an event ends before it starts, a required text
        is empty, or the stamp is not in UTC.
    """
    if not events:
        raise ValueError("a calendar needs at least one event")  # RFC 5545 section 3.6
    if stamp.utcoffset() != dt.timedelta(0):
        raise ValueError("the stamp of a calendar is in UTC")  # RFC 5545 section 3.8.7.2
    if refresh < dt.timedelta(seconds=1):
        raise ValueError("a calendar is looked at again after a second or more")
    before = _published(published)
    moment = stamp.astimezone(dt.UTC).replace(microsecond=0)
    # No clock here: the second of two notices on one day gets a stamp one second later.
    moment = max([moment, *(_stamp(old) + _A_SECOND for old in before.values())])
    spoken = {"LANGUAGE": language}
    calendar = icalendar.Calendar()
    calendar.add("prodid", _line(prodid, "PRODID"))
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    # RFC 5546 section 3.2.1: published, so nobody is asked to answer. It needs ORGANIZER below.
    calendar.add("method", "PUBLISH")
    # Explicit vText: the library takes NAME and X- properties for values of unknown type, and
    # leaves their commas unescaped.
    title = _line(name, "NAME")
    calendar.add("name", icalendar.vText(title, params=spoken))  # RFC 7986 section 5.1
    calendar.add("x-wr-calname", icalendar.vText(title))  # for programs older than RFC 7986
    if text := _text(description):
        calendar.add("description", text, parameters=spoken)  # RFC 7986 section 5.2
        calendar.add("x-wr-caldesc", icalendar.vText(text))
    calendar.add("last-modified", moment)  # RFC 7986 section 5.4
    # RFC 7986 section 5.7 requires the VALUE parameter.
    calendar.add(
        "refresh-interval",
        dt.timedelta(seconds=int(refresh.total_seconds())),
        parameters={"VALUE": "DURATION"},
    )
    seen: set[str] = set()
    components = []
    for event in events:
        if event.uid in seen:
            raise ValueError(f"two events have the UID {event.uid}")
        seen.add(event.uid)
        old = before.get(event.uid)
        components.append(_since(old, event, organizer, moment, spoken))
    components += (
        _cancelled(old, fallen_away, moment) for uid, old in before.items() if uid not in seen
    )
    for component in sorted(components, key=_place):
        calendar.add_component(component)
    content: bytes = calendar.to_ical()
    return content


_A_SECOND = dt.timedelta(seconds=1)


def _published(content: bytes) -> dict[str, icalendar.Event]:
    if not content:
        return {}
    events: Any = icalendar.Calendar.from_ical(content).walk("VEVENT")
    return {str(event["uid"]): event for event in events}


def _value(event: icalendar.Event, name: str) -> Any:  # noqa: ANN401, as many types as properties
    return event[name]


def _stamp(event: icalendar.Event) -> dt.datetime:
    stamp: dt.datetime = _value(event, "dtstamp").dt
    return stamp


def _sequence(event: icalendar.Event) -> int:
    return int(_value(event, "sequence")) if "sequence" in event else 0


def _place(event: icalendar.Event) -> tuple[dt.date, dt.date, str]:
    return _value(event, "dtstart").dt, _value(event, "dtend").dt, str(event["uid"])


def _since(
    old: icalendar.Event | None,
    event: Event,
    organizer: tuple[str, str],
    moment: dt.datetime,
    spoken: dict[str, str],
) -> icalendar.Event:
    """Return the event with its sequence raised if it differs from the published one."""
    if old is None:
        return _component(event, organizer, moment, spoken)
    sequence = _sequence(old)
    same = _component(replace(event, sequence=sequence), organizer, _stamp(old), spoken)
    if same.to_ical() == old.to_ical():
        return same
    return _component(replace(event, sequence=sequence + 1), organizer, moment, spoken)


def _cancelled(old: icalendar.Event, words: str, moment: dt.datetime) -> icalendar.Event:
    """Return a published event marked as cancelled; one already cancelled stays as it is."""
    if str(old.get("status", "")) == "CANCELLED":
        return old
    summary = str(old["summary"])
    spoken = dict(_value(old, "summary").params)
    sequence = _sequence(old) + 1
    for name in ("dtstamp", "last-modified", "summary", "status", "sequence"):
        del old[name]
    old.add("dtstamp", moment)
    old.add("last-modified", moment)
    old.add("summary", f"{words}: {summary}" if words else summary, parameters=spoken)
    old.add("status", "CANCELLED")
    old.add("sequence", sequence)
    return old


def _component(
    event: Event, organizer: tuple[str, str], moment: dt.datetime, spoken: dict[str, str]
) -> icalendar.Event:
    if event.last < event.first:
        raise ValueError(f"{event.uid} ends on {event.last}, before it starts on {event.first}")
    if event.sequence < 0:
        raise ValueError(f"{event.uid} has a negative sequence number")
    item = icalendar.Event()
    item.add("uid", _line(event.uid, "UID"))
    item.add("dtstamp", moment)
    item.add("last-modified", moment)
    # The library adds VALUE=DATE to a date without a time. DTEND is the first day that is no
    # longer part of the event (RFC 5545 section 3.6.1).
    item.add("dtstart", event.first)
    item.add("dtend", event.last + dt.timedelta(days=1))
    item.add("summary", _line(event.summary, "SUMMARY"), parameters=spoken)
    if text := _text(event.description):
        item.add("description", text, parameters=spoken)
    item.add("status", event.status)
    item.add("sequence", event.sequence)
    item.add("transp", "TRANSPARENT")  # RFC 5545 section 3.8.2.7: nobody is busy because of it
    name, address = organizer
    caller = icalendar.vCalAddress(f"mailto:{_line(address, 'ORGANIZER')}")
    # A parameter cannot hold a double quote (RFC 5545 section 3.1), and not every program knows
    # the escape of RFC 6868. A backslash has no meaning in a parameter, but some programs, this
    # library among them, take it for an escape and lose the end of the name.
    if words := _line(name, ""):
        caller.params["CN"] = words.replace('"', "'").replace("\\", "/")
    item.add("organizer", caller)
    if event.url:
        item.add("url", _line(event.url, "URL"))
    if labels := [words for label in event.categories if (words := _line(label, ""))]:
        item.add("categories", labels)
    return item


def _text(words: str) -> str:
    """Return the text with a bare line feed at every line end and no other control character.

    RFC 5545 section 3.1 forbids the others, and the library does not check.
    """
    lines = words.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(c for c in lines if c == "\n" or unicodedata.category(c) not in {"Cc", "Cs"})


def _line(words: str, required: str) -> str:
    """Return the text on one line; ``required`` names the property if it may not be empty."""
    text = " ".join(_text(words.replace("\t", " ")).split())
    if required and not text:
        raise ValueError(f"{required} is empty")
    return text
