"""The calendar of team and office holds each day's work and every duty, and keeps its identities."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import notices
from notices.documents.team_calendar import team_calendar
from notices.documents.to_do import to_do
from notices.programme.model import Programme
from tests.documents.building import ISSUED, BuiltPack, of

PLAN = """
club: {name: Fallow Moor Golf Club}
course: {greens: [{green: 1-9}]}
works: [{operation: hollow tining, dates: %s}]
approval: %s
"""


def programme_of(folder: Path, dates: str, approval: str = "{by: Greens committee}") -> Programme:
    path = folder / "plan.yaml"
    path.write_text(PLAN % (dates, approval), "utf-8")
    return notices.work_out(notices.load_plan(path).plan, ISSUED)


def test_every_day_of_work_and_every_duty_has_its_entry(pack: BuiltPack) -> None:
    programme = pack.programme
    entries = pack.documents.calendar("team-calendar").entries
    worked = {visit.date for work in programme.works for visit in work.visits}
    assert {entry.first for entry in entries if entry.category == "Work"} == worked
    told = {(entry.first, entry.last) for entry in entries if entry.category == "Duty"}
    assert told == {(duty.first, duty.last) for duty in to_do(programme)}
    assert len({entry.uid for entry in entries}) == len(entries)
    assert not {e.uid for e in entries} & {e.uid for e in pack.documents.calendar().entries}


def test_what_moves_keeps_its_identity(tmp_path: Path) -> None:
    before = team_calendar(programme_of(tmp_path, "2027-08-16 to 2027-08-17")).entries
    after = team_calendar(programme_of(tmp_path, "2027-08-23 to 2027-08-24")).entries
    work = [[entry for entry in some if entry.category == "Work"] for some in (before, after)]
    assert [entry.uid for entry in work[0]] == [entry.uid for entry in work[1]]
    assert [entry.first.day for entry in work[1]] == [23, 24]


@of("marlpit-common")
def test_works_that_belong_together_have_the_name_that_golfers_read(pack: BuiltPack) -> None:
    """Cores and sand on 12 October; a week later the sand alone."""
    said = {
        e.first: e.summary
        for e in pack.documents.calendar("team-calendar").entries[::-1]
        if e.category == "Work"
    }
    assert said[dt.date(2026, 10, 12)] == "Hollow tining and top dressing: greens 1 to 6"
    assert said[dt.date(2026, 10, 19)] == "Top dressing: greens 1 to 6"
    assert "Hollow tining and top dressing" in pack.documents.document("board-notice-a4").title


@of("withy-hollow")
def test_a_day_says_its_greens_and_its_hours(pack: BuiltPack) -> None:
    """The hours are to five minutes, and nobody is sent out in the dark."""
    entries = pack.documents.calendar("team-calendar").entries
    for day, timetable in pack.programme.timetables.items():
        entry = next(e for e in entries if e.first == day and e.category == "Work")
        *_, said = entry.description.split("\n")
        hours = said.removeprefix("The day’s work takes from about ").rstrip(".").split(" to ")
        start, finish = (int(clock[:2]) * 60 + int(clock[3:]) for clock in hours)
        assert start % 5 == finish % 5 == 0
        assert start >= timetable.work_from
        assert -2.5 <= timetable.first_start - start <= 2.5 or start - timetable.work_from < 5
        assert abs(finish - timetable.last_finish) <= 2.5


def test_a_draft_says_so_in_every_entry(tmp_path: Path) -> None:
    draft = team_calendar(programme_of(tmp_path, "2027-08-16", "pending"))
    assert draft.entries
    assert all(entry.summary.startswith("DRAFT: ") for entry in draft.entries)
