"""Exports shaped as the common calendar programs write them; the events are invented.

The days are read off the files by hand: 3 July 2027 is a Saturday, and British summer time ends
on 31 October 2027.
"""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from notices.plan.fixture_calendar import read_calendar
from notices.plan.model import Fixture

CALENDARS = Path(__file__).parent / "calendars"
CHAMPIONSHIP = "Club Championship, qualifying round for everybody who has entered"

EXPECTED = {
    # Five Saturdays from 4 September: the second taken out, the third moved to its Sunday. Names
    # of zones as Windows has them, lines folded within words, days that are whole.
    "office-desktop.ics": [
        ("2027-09-04", CHAMPIONSHIP),
        ("2027-09-19", "Club Championship, moved to Sunday"),
        ("2027-09-25", CHAMPIONSHIP),
        ("2027-10-02", CHAMPIONSHIP),
        # It ends on the tenth, which for whole days is the day after.
        ("2027-10-08", "Visiting Society"),
        ("2027-10-09", "Visiting Society"),
    ],
    # Zones by their Windows names and no word on what they are. Half past eight in the evening
    # in New York in July is half past one in the morning in England.
    "office-web.ics": [
        ("2027-07-03", "Midnight Nine"),
        ("2027-07-11", "Twinned club's evening"),
        ("2027-07-17", "Junior Open"),
    ],
    # Zones by names of the server's own. Half past seven in the evening, five hours behind UTC,
    # is half past one in the morning in British summer time.
    "office-server.ics": [
        ("2027-07-31", "Presidents' Day"),
        ("2027-08-14", "Call with the visitors"),
    ],
    # Wednesdays 6 October to 3 November: the 13th taken out, the 20th moved to the Thursday, the
    # 27th cancelled.
    "web-calendar.ics": [
        ("2027-07-03", "July Medal"),
        ("2027-10-06", "Evening League ⛳"),
        ("2027-10-21", "Evening League on Thursday"),
        ("2027-11-03", "Evening League ⛳"),
        ("2027-11-13", "Winter Pairs"),
    ],
    # Two more dates by name; the first Saturday of two months, each with its Sunday.
    "laptop.ics": [
        ("2027-08-07", "Captain’s Charity Day"),
        ("2027-08-15", "Captain’s Charity Day"),
        ("2027-08-21", "Captain’s Charity Day"),
        ("2027-09-04", "Club Weekend"),
        ("2027-09-05", "Club Weekend"),
        ("2027-10-02", "Club Weekend"),
        ("2027-10-03", "Club Weekend"),
    ],
    # Five days of July without the third and fourth, up to nine o'clock on the sixth, which is
    # eight in UTC; four Mondays of November without the second and third.
    "free-desktop.ics": [
        ("2027-07-02", "Seniors' Week"),
        ("2027-07-05", "Seniors' Week"),
        ("2027-07-06", "Seniors' Week"),
        ("2027-11-01", "Ladies' Day"),
        ("2027-11-22", "Ladies' Day"),
    ],
    # Times without a zone, two calendars in one file, one UID twice, a byte order mark and lines
    # ended as on Unix.
    "club-website.ics": [
        ("2027-09-25", "Autumn Foursomes"),
        ("2027-10-02", "Open Day"),
        ("2027-10-09", "Match away"),
        ("2027-11-20", "Turkey Trot"),
    ],
}


def days_of(
    folder: Path, name: str, first: dt.date, last: dt.date, zone: str | None = "Europe/London"
) -> list[tuple[str, str | None]]:
    fixtures = read_calendar(
        folder, name, first=first, last=last, zone=zone, template=Fixture(calendar=name)
    )
    return [(str(fixture.date), fixture.name) for fixture in fixtures]


def test_every_export_has_its_days() -> None:
    assert {path.name for path in CALENDARS.iterdir()} == EXPECTED.keys()


@pytest.mark.parametrize("name", EXPECTED)
def test_an_export_is_read_as_its_program_shows_it(name: str) -> None:
    found = days_of(CALENDARS, name, dt.date(2027, 7, 1), dt.date(2027, 12, 31))
    assert found == EXPECTED[name]


def test_without_the_club_s_zone_a_day_is_that_where_the_event_is() -> None:
    found = days_of(CALENDARS, "office-web.ics", dt.date(2027, 7, 1), dt.date(2027, 7, 31), None)
    assert ("2027-07-10", "Twinned club's evening") in found


@pytest.mark.parametrize(
    ("start", "zone", "day"),
    [
        # Eight in the evening in UTC is eight in the morning of the next day in New Zealand.
        ("DTSTART:20270630T200000Z", "Pacific/Auckland", "2027-07-01"),
        # Three in the morning in UTC is the evening before on the American east coast.
        ("DTSTART:20270801T030000Z", "America/New_York", "2027-07-31"),
    ],
)
def test_days_at_either_end_are_those_of_the_club(
    start: str, zone: str, day: str, tmp_path: Path
) -> None:
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "BEGIN:VEVENT", "UID:1", start, "SUMMARY:Medal"]
    path = tmp_path / "fixtures.ics"
    path.write_text("\r\n".join([*lines, "END:VEVENT", "END:VCALENDAR", ""]), "utf-8")
    found = days_of(tmp_path, path.name, dt.date(2027, 7, 1), dt.date(2027, 7, 31), zone)
    assert found == [(day, "Medal")]


@pytest.mark.parametrize(
    "start",
    [
        # Nobody knows these zones, so the times are taken as they stand.
        "DTSTART;TZID=Club Time:20270703T090000",
        'DTSTART;TZID="(UTC+01:00) Somewhere":20270703T090000',
        "DTSTART;TZID=:20270703T090000",
        "DTSTART;X-LOCAL=1:20270703T090000",
    ],
)
def test_a_zone_that_nobody_knows_is_no_fault(start: str, tmp_path: Path) -> None:
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "BEGIN:VEVENT", "UID:1", start, "SUMMARY:Medal"]
    path = tmp_path / "fixtures.ics"
    path.write_text("\r\n".join([*lines, "END:VEVENT", "END:VCALENDAR", ""]), "utf-8")
    found = days_of(tmp_path, path.name, dt.date(2027, 7, 1), dt.date(2027, 7, 31))
    assert found == [("2027-07-03", "Medal")]


def test_letters_of_an_old_windows_program_do_not_stop_it(tmp_path: Path) -> None:
    text = "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:1\r\nDTSTART;VALUE=DATE:20270703\r\n"
    text += "SUMMARY:Captain’s Day\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
    (tmp_path / "fixtures.ics").write_bytes(text.encode("windows-1252"))
    found = days_of(tmp_path, "fixtures.ics", dt.date(2027, 7, 1), dt.date(2027, 7, 31))
    assert [day for day, _ in found] == ["2027-07-03"]
    assert found == [("2027-07-03", "Captain’s Day")]
