from __future__ import annotations

import datetime as dt
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from notices.plan.fixture_calendar import read_calendar
from notices.plan.model import Fixture

EXAMPLES = Path(__file__).parents[2] / "examples"
TEMPLATE = Fixture(calendar="fixtures.ics", kind="visitors")


def event(*lines: str) -> str:
    return "\n".join(["BEGIN:VEVENT", "UID:x@club.example", *lines, "END:VEVENT"])


def read(
    folder: Path,
    *events: str,
    first: dt.date = dt.date(2026, 1, 1),
    last: dt.date = dt.date(2026, 12, 31),
    zone: str | None = "Europe/London",
) -> list[tuple[str, str | None]]:
    content = "\n".join(
        ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//x//x//EN", *events, "END:VCALENDAR", ""]
    )
    (folder / "fixtures.ics").write_text(content.replace("\n", "\r\n"), encoding="utf-8")
    return days_of(folder, first=first, last=last, zone=zone)


def days_of(
    folder: Path,
    name: str = "fixtures.ics",
    first: dt.date = dt.date(2026, 1, 1),
    last: dt.date = dt.date(2026, 12, 31),
    zone: str | None = "Europe/London",
) -> list[tuple[str, str | None]]:
    fixtures = read_calendar(folder, name, first=first, last=last, zone=zone, template=TEMPLATE)
    assert all(fixture.kind == "visitors" for fixture in fixtures)
    assert all(fixture.calendar is None for fixture in fixtures)
    return [(str(fixture.date), fixture.name) for fixture in fixtures]


def test_reads_the_example() -> None:
    found = days_of(
        EXAMPLES / "marlpit-common", first=dt.date(2026, 10, 1), last=dt.date(2027, 6, 1)
    )
    # Six Saturdays a fortnight apart from 7 November 2026, and 3 April 2027.
    league = ["2026-11-07", "2026-11-21", "2026-12-05", "2026-12-19", "2027-01-02", "2027-01-16"]
    assert found == [(day, "Winter League") for day in league] + [
        ("2027-04-03", "Captain's Drive-In")
    ]


@pytest.mark.parametrize(
    ("lines", "days"),
    [
        (["DTSTART;VALUE=DATE:20260704"], ["2026-07-04"]),
        # The end of an all-day event is the day after (RFC 5545 section 3.6.1).
        (["DTSTART;VALUE=DATE:20260704", "DTEND;VALUE=DATE:20260705"], ["2026-07-04"]),
        (
            ["DTSTART;VALUE=DATE:20260704", "DTEND;VALUE=DATE:20260706"],
            ["2026-07-04", "2026-07-05"],
        ),
        (["DTSTART;VALUE=DATE:20260704", "DURATION:P2D"], ["2026-07-04", "2026-07-05"]),
        (["DTSTART:20260704T080000", "DTEND:20260704T180000"], ["2026-07-04"]),
        (["DTSTART:20260704T080000", "DTEND:20260705T180000"], ["2026-07-04", "2026-07-05"]),
        # A dinner that ends after midnight.
        (["DTSTART:20260704T190000", "DTEND:20260705T010000"], ["2026-07-04"]),
        # Half past eleven at night in UTC is half past midnight in British summer time.
        (["DTSTART:20260704T233000Z", "DTEND:20260705T160000Z"], ["2026-07-05"]),
        (["DTSTART:20260104T233000Z", "DTEND:20260105T000000Z"], ["2026-01-04"]),
        (["DTSTART;VALUE=DATE:20260704", "STATUS:CANCELLED"], []),
        (
            [
                "DTSTART;VALUE=DATE:20260704",
                "RRULE:FREQ=WEEKLY;COUNT=3",
                "EXDATE;VALUE=DATE:20260711",
            ],
            ["2026-07-04", "2026-07-18"],
        ),
        (["DTSTART;VALUE=DATE:20251231"], []),
        (
            ["DTSTART;VALUE=DATE:20251230", "DTEND;VALUE=DATE:20260103"],
            ["2026-01-01", "2026-01-02"],
        ),
        (["DTSTART;VALUE=DATE:20261231"], ["2026-12-31"]),
        (["DTSTART;VALUE=DATE:20270101"], []),
    ],
)
def test_an_event_is_a_fixture_on_each_of_its_days(
    tmp_path: Path, lines: list[str], days: list[str]
) -> None:
    assert read(tmp_path, event("SUMMARY:Medal", *lines)) == [(day, "Medal") for day in days]


def test_without_a_time_zone_the_day_is_that_of_the_event(tmp_path: Path) -> None:
    late = event("SUMMARY:Medal", "DTSTART:20260704T233000Z")
    assert read(tmp_path, late, zone=None) == [("2026-07-04", "Medal")]


def test_names_are_tidied_and_equal_events_are_one(tmp_path: Path) -> None:
    named = event("SUMMARY:Club  Medal\\nRound 1", "DTSTART;VALUE=DATE:20260704")
    bare = event("DTSTART;VALUE=DATE:20260705").replace("UID:x", "UID:y")
    assert read(tmp_path, named, named.replace("UID:x", "UID:z"), bare) == [
        ("2026-07-04", "Club Medal Round 1"),
        ("2026-07-05", "Unnamed event"),
    ]


def test_a_calendar_without_events_is_no_fault(tmp_path: Path) -> None:
    assert read(tmp_path) == []


def test_an_event_that_recurs_for_ever_in_a_day_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match='"Tick" recurs more often than once a day: take it out'):
        read(tmp_path, event("SUMMARY:Tick", "DTSTART:20260704T080000", "RRULE:FREQ=SECONDLY"))


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"Medal on Saturday",
        b"\xff\xfe\x00",
        b"BEGIN:VEVENT\nDTSTART:20260704T080000\nEND:VEVENT\n",
        b"BEGIN:VCALENDAR\nBEGIN:VEVENT\nDTSTART:2026\nEND:VEVENT\nEND:VCALENDAR\n",
        b"BEGIN:VCALENDAR\nBEGIN:VEVENT\nDTSTART:20260704\nRRULE:FREQ=WHAT\nEND:VEVENT\nEND:VCALENDAR",
    ],
)
def test_what_is_no_calendar_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "fixtures.ics").write_bytes(content)
    with pytest.raises(ValueError, match=r'^"fixtures.ics" cannot be read as a calendar: export'):
        days_of(tmp_path)


@pytest.mark.parametrize(
    "name", ["../fixtures.ics", "/etc/hostname", "a/b.ics", "..\\b.ics", "C:b.ics", "..", "."]
)
def test_nothing_outside_the_folder_is_opened(tmp_path: Path, name: str) -> None:
    with pytest.raises(ValueError, match="a calendar must lie beside the plan"):
        days_of(tmp_path, name)


def test_a_missing_file_may_have_a_namesake(tmp_path: Path) -> None:
    read(tmp_path)
    with pytest.raises(ValueError, match=r'there is no file "fixture.ics".*did you mean "fixtures'):
        days_of(tmp_path, "fixture.ics")
    with pytest.raises(ValueError, match="beside the plan: check the name"):
        days_of(tmp_path, "zzz")


def test_a_folder_or_an_impossible_name_is_refused(tmp_path: Path) -> None:
    (tmp_path / "folder.ics").mkdir()
    for name in ("folder.ics", "a\0b", "x" * 5000):
        with pytest.raises(ValueError, match="cannot be opened: check that it is a file"):
            days_of(tmp_path, name)


def test_a_large_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "fixtures.ics").write_bytes(b" " * 5_000_001)
    with pytest.raises(ValueError, match="larger than 5 MB"):
        days_of(tmp_path)


def test_only_a_plan_that_needs_them_waits_for_the_slow_readers(tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text(
        textwrap.dedent("""\
            club: {name: Tansy Down}
            course: {greens: [{green: 1-9}]}
            closures: [{what: course, dates: 2027-08-16}]
            """)
    )
    program = textwrap.dedent("""
        import sys
        from pathlib import Path
        from notices.plan.load import load_plan
        load_plan(Path(sys.argv[1]))
        slow = ("icalendar", "recurring_ical_events", "email_validator", "dateutil")
        print(*[name for name in slow if name in sys.modules])
        """)
    run = subprocess.run(
        [sys.executable, "-c", program, str(plan)], capture_output=True, text=True, check=True
    )
    assert run.stdout.split() == []
