"""Dated events as an iCalendar file that people subscribe to or open from an email."""

from __future__ import annotations

import datetime as dt
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import icalendar


@dataclass(frozen=True)
class Event:
    """Something that lasts one or more whole days."""

    uid: str
    """The same for ever, whatever the dates become (RFC 7986 section 5.3)."""
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
) -> bytes:
    """Write the events in the order of their dates.

    Parameters
    ----------
    events
        At least one, in any order.
    name, description
        Of the calendar as a whole.
    prodid
        What made the file, such as "-//notices//notices//EN".
    organizer
        Name and mail address.
    stamp
        When the file was made, in UTC; every event carries it.
    language
        Language tag of all the words, such as "en-GB".
    refresh
        How long a subscriber may wait before looking again.

    Returns
    -------
    bytes
        The .ics file; the same for the same events.

    Raises
    ------
    ValueError
        If there is no event, a UID occurs twice, an event ends before it starts, a text that has
        to be there is empty, or the stamp is not in UTC.
    """
    if not events:
        raise ValueError("a calendar needs at least one event")  # RFC 5545 section 3.6
    if stamp.utcoffset() != dt.timedelta(0):
        raise ValueError("the stamp of a calendar is in UTC")  # RFC 5545 section 3.8.7.2
    if refresh < dt.timedelta(seconds=1):
        raise ValueError("a calendar is looked at again after a second or more")
    moment = stamp.astimezone(dt.UTC).replace(microsecond=0)
    spoken = {"LANGUAGE": language}
    calendar = icalendar.Calendar()
    calendar.add("prodid", _line(prodid, "PRODID"))
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    # RFC 5546 section 3.2.1: published, so nobody is asked to answer. It needs ORGANIZER below.
    calendar.add("method", "PUBLISH")
    # vText in so many words: the library takes NAME and X- properties for values of no known
    # type, and leaves their commas unescaped.
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
    for event in sorted(events, key=lambda event: (event.first, event.last, event.uid)):
        if event.uid in seen:
            raise ValueError(f"two events have the UID {event.uid}")
        seen.add(event.uid)
        calendar.add_component(_component(event, organizer, moment, spoken))
    content: bytes = calendar.to_ical()
    return content


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
    # A parameter cannot hold a double quote (RFC 5545 section 3.1), and RFC 6868's way round it
    # is not read everywhere. A backslash means nothing there, but some readers take it for an
    # escape, this library among them, and lose the end of the name.
    if words := _line(name, ""):
        caller.params["CN"] = words.replace('"', "'").replace("\\", "/")
    item.add("organizer", caller)
    if event.url:
        item.add("url", _line(event.url, "URL"))
    if labels := [words for label in event.categories if (words := _line(label, ""))]:
        item.add("categories", labels)
    return item


def _text(words: str) -> str:
    """Return the words with single line ends and no other control character.

    RFC 5545 section 3.1 allows neither; the library writes what it is given.
    """
    lines = words.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(c for c in lines if c == "\n" or unicodedata.category(c) not in {"Cc", "Cs"})


def _line(words: str, required: str) -> str:
    """Return the words on one line; ``required`` names what may not be empty."""
    text = " ".join(_text(words.replace("\t", " ")).split())
    if required and not text:
        raise ValueError(f"{required} is empty")
    return text
