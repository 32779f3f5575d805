from __future__ import annotations

import datetime as dt
import re
from dataclasses import replace
from typing import Any

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notices.rendering.calendar import Event, write_calendar

CORES = Event(
    uid="marlpit-autumn-cores@marlpit.example",
    summary="Hollow tining, greens 1–18",
    description="Closed all day;\nopen again next morning, \\o/ ⛳",
    first=dt.date(2026, 10, 12),
    last=dt.date(2026, 10, 14),
    status="CONFIRMED",
    url="https://www.marlpit.example/course",
    categories=("Greens", "Closed, all day"),
)
DRAINS = Event(
    uid="marlpit-drains@marlpit.example",
    summary="Greens 1–9 closed",
    description="",
    first=dt.date(2026, 9, 30),
    last=dt.date(2026, 9, 30),
    status="CANCELLED",
    sequence=2,
)


def write(*events: Event, **changes: Any) -> bytes:
    values: dict[str, Any] = {
        "name": "Marlpit, greens",
        "description": "Work on the greens; when and where",
        "prodid": "-//notices//notices//EN",
        "organizer": ("Manager, Course", "course@marlpit.example"),
        "stamp": dt.datetime(2026, 9, 14, 0, 0, 0, 999, tzinfo=dt.UTC),
        "language": "en-GB",
        "refresh": dt.timedelta(hours=12),
    }
    return write_calendar(events, **(values | changes))


def lines(raw: bytes) -> list[str]:
    """Unfolded lines, read without the library."""
    return re.sub(r"\r\n[ \t]", "", raw.decode("utf-8")).split("\r\n")


def test_the_calendar_says_what_it_is() -> None:
    text = lines(write(CORES))
    for line in (
        "VERSION:2.0",
        "CALSCALE:GREGORIAN",
        "METHOD:PUBLISH",
        "PRODID:-//notices//notices//EN",
        "NAME;LANGUAGE=en-GB:Marlpit\\, greens",
        "X-WR-CALNAME:Marlpit\\, greens",
        "X-WR-CALDESC:Work on the greens\\; when and where",
        "DESCRIPTION;LANGUAGE=en-GB:Work on the greens\\; when and where",
        "REFRESH-INTERVAL;VALUE=DURATION:PT12H",
    ):
        assert line in text


def test_an_event_says_what_it_is() -> None:
    text = lines(write(CORES))
    start, end = text.index("BEGIN:VEVENT"), text.index("END:VEVENT")
    assert sorted(text[start + 1 : end]) == [
        "CATEGORIES:Greens,Closed\\, all day",
        ("DESCRIPTION;LANGUAGE=en-GB:Closed all day\\;\\nopen again next morning\\, \\\\o/ ⛳"),
        "DTEND;VALUE=DATE:20261015",  # the day after the last
        "DTSTAMP:20260914T000000Z",
        "DTSTART;VALUE=DATE:20261012",
        "LAST-MODIFIED:20260914T000000Z",
        'ORGANIZER;CN="Manager, Course":mailto:course@marlpit.example',
        "SEQUENCE:0",
        "STATUS:CONFIRMED",
        "SUMMARY;LANGUAGE=en-GB:Hollow tining\\, greens 1–18",
        "TRANSP:TRANSPARENT",
        "UID:marlpit-autumn-cores@marlpit.example",
        "URL:https://www.marlpit.example/course",
    ]


def test_what_is_empty_is_left_out() -> None:
    text = lines(write(DRAINS, description="", organizer=("", "course@marlpit.example")))
    assert not any(
        line.startswith(("URL", "CATEGORIES", "DESCRIPTION", "X-WR-CALD")) for line in text
    )
    assert "ORGANIZER:mailto:course@marlpit.example" in text
    assert "STATUS:CANCELLED" in text
    assert "SEQUENCE:2" in text


def test_events_stand_in_the_order_of_their_dates() -> None:
    raw = write(CORES, DRAINS)
    assert raw == write(DRAINS, CORES)
    events = icalendar.Calendar.from_ical(raw).walk("VEVENT")
    assert [str(event["UID"]) for event in events] == [DRAINS.uid, CORES.uid]


def test_lines_are_short_and_end_as_they_should() -> None:
    raw = write(replace(CORES, description="Größe ⛳, " * 60))
    assert raw.endswith(b"\r\n")
    for line in raw.split(b"\r\n"):
        assert len(line) <= 75
        line.decode("utf-8")  # no character is cut in two
    assert not re.search(rb"(?<!\r)\n|\r(?!\n)", raw)


@pytest.mark.parametrize(
    ("events", "changes", "words"),
    [
        ((), {}, "at least one event"),
        ((CORES, replace(DRAINS, uid=CORES.uid)), {}, "two events have the UID"),
        ((replace(CORES, last=dt.date(2026, 10, 11)),), {}, "before it starts"),
        ((replace(CORES, sequence=-1),), {}, "negative"),
        ((replace(CORES, uid=" "),), {}, "UID is empty"),
        ((replace(CORES, summary="\n"),), {}, "SUMMARY is empty"),
        ((CORES,), {"name": ""}, "NAME is empty"),
        ((CORES,), {"stamp": dt.datetime(2026, 9, 14)}, "UTC"),  # noqa: DTZ001 - the fault
        (
            (CORES,),
            {"stamp": dt.datetime(2026, 9, 14, tzinfo=dt.timezone(dt.timedelta(hours=1)))},
            "UTC",
        ),
        ((CORES,), {"refresh": dt.timedelta(0)}, "a second or more"),
    ],
)
def test_what_is_not_right_is_refused(
    events: tuple[Event, ...], changes: dict[str, Any], words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        write(*events, **changes)


AWKWARD = st.text(
    st.one_of(
        st.sampled_from('\r\n\t\0\x0b\x7f\x85\u2028",;:\\nN é⛳'),
        st.characters(exclude_categories=["Cs"]),
    ),
    max_size=100,
)


def as_read(words: str) -> str:
    words = words.replace("\r\n", "\n").replace("\r", "\n")
    return re.sub(r"[\x00-\x09\x0b-\x1f\x7f-\x9f]", "", words)


def one_line(words: str) -> str:
    return " ".join(as_read(words.replace("\t", " ")).split())


@settings(deadline=None)
@given(AWKWARD, AWKWARD, AWKWARD, st.dates(max_value=dt.date(9999, 1, 1)), st.integers(0, 30))
def test_any_text_and_date_is_read_back(
    summary: str, description: str, label: str, first: dt.date, days: int
) -> None:
    event = replace(
        CORES,
        summary=f"S{summary}",
        description=f"D{description}",
        categories=(f"C{label}", "Greens"),
        first=first,
        last=first + dt.timedelta(days=days),
    )
    raw = write(event, organizer=(summary, "course@marlpit.example"), name=f"N{label}")
    assert all(len(line) <= 75 for line in raw.split(b"\r\n"))
    calendar = icalendar.Calendar.from_ical(raw)
    # The library does not undo the escapes of these two, so they are read by hand.
    for start in ("NAME;LANGUAGE=en-GB:", "X-WR-CALNAME:"):
        (value,) = (line.removeprefix(start) for line in lines(raw) if line.startswith(start))
        assert not re.search(r"(?<!\\)(?:\\\\)*[,;]", value)
        assert re.sub(r"\\(.)", r"\1", value) == one_line(f"N{label}")
    found: Any
    (found,) = calendar.walk("VEVENT")
    assert str(found["SUMMARY"]) == one_line(event.summary)
    assert str(found["DESCRIPTION"]) == as_read(event.description)
    assert [str(cat) for cat in found["CATEGORIES"].cats] == [one_line(f"C{label}"), "Greens"]
    assert found["DTSTART"].dt == event.first
    assert found["DTEND"].dt - dt.timedelta(days=1) == event.last
    assert str(found["ORGANIZER"]) == "mailto:course@marlpit.example"
    name = one_line(summary).replace('"', "'").replace("\\", "/")
    assert str(found["ORGANIZER"].params.get("CN", "")) == name
