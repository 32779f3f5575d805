"""What the team reads of a day: checks, hours and times that fit the work of that day."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from notices.documents.committee_risks import risks
from notices.documents.team_sheet import team_sheet
from notices.programme.model import Programme
from notices.wording.blocks import Block, Bullets, KeyFacts, Paragraph, Table
from notices.wording.words import Words
from tests.wording.small_plans import plan, programme, work

CLAY = {"soil": {"clay": "47 %", "sand": "18 %"}, "drains": "a ditch"}


def texts(blocks: tuple[Block, ...]) -> Iterator[str]:
    """All that is said, piece by piece."""
    for block in blocks:
        match block:
            case Paragraph():
                yield block.text
            case Bullets():
                yield from ("".join(run.text for run in item) for item in block.items)
            case KeyFacts():
                yield from (f"{row.label}: {row.text}" for row in block.rows)
            case Table():
                yield from (cell for row in block.rows for cell in row)
            case _:
                pass


def page(made: Programme, number: int = 0) -> str:
    return " | ".join(texts(team_sheet(made).sections[number].blocks))


def on_clay(*operations: str) -> Programme:
    typed = plan(*(work(name, "2027-06-01") for name in operations))
    return programme(typed | {"course": typed["course"] | CLAY})


def test_channels_want_moist_clay_and_begin_at_the_drain() -> None:
    made = on_clay("mole ploughing")
    for told in (page(made), " ".join(t for s, _ in risks(Words(made)) for t in texts(s.blocks))):
        assert "only when the clay is moist below and firm on top" in told
        assert "Each channel is drawn from the drain or ditch upwards." in told
    assert "clay" not in page(on_clay("hollow tining"))


# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; 12 between greens make it an hour.
CREW = {
    "people": 2,
    "working_day": "06:30 to 15:30",
    "breaks": 60,
    "machines": [
        {
            "operation": "rolling",
            "width": "1 m",
            "speed": "1 km/h",
            "efficiency": "60 %",
            "minutes_between_greens": 12,
            "people": 1,
        }
    ],
}
MIDLANDS = {"place": {"latitude": 52.5, "longitude": -1.6, "timezone": "Europe/London"}}


def rolled(greens: str, day: str = "2027-06-01", area: str = "480 m2") -> Programme:
    course = {"greens": [{"green": "1-18", "area": area}]}
    return programme(
        plan(work("rolling", day, greens=greens), course=course, crew=CREW, club=MIDLANDS)
    )


def test_a_break_is_taken_on_days_that_last_so_long() -> None:
    # The middle of the day is 11:00, and the break half an hour before and after.
    assert "Break: 60 minutes, from about 10:30." in page(rolled("1-9"))
    assert "Break" not in page(rolled("1-3"))


def test_nobody_stands_on_two_greens_at_once() -> None:
    # 430 m² take 43 minutes, and 12 from green to green.
    made = rolled("1-3", area="430 m2")
    (timetable,) = made.timetables.values()
    true = [(task.start_minutes, task.finish_minutes) for task in timetable.tasks]
    (table,) = (
        block
        for block in team_sheet(made).sections[0].blocks
        if isinstance(block, Table) and block.caption == "Green by green"
    )
    told = [tuple(map(_minutes, row[1].split(" to "))) for row in table.rows]
    for (start, finish), (begins, ends) in zip(told, true, strict=True):
        assert abs(start - begins) <= 2.5
        assert abs(finish - ends) <= 2.5
        assert start % 5 == finish % 5 == 0
    assert all(finish <= start for (_, finish), (start, _) in pairwise(told))


def test_nobody_is_sent_out_in_the_dark() -> None:
    # Usual twilight in the Midlands in mid-December begins about half past seven.
    made = rolled("1-3", "2027-12-14")
    (timetable,) = made.timetables.values()
    assert timetable.work_from > 7 * 60
    (hours,) = re.findall(r"Hours: (\d\d:\d\d) to", page(made))
    assert 0 <= _minutes(hours) - timetable.work_from < 5


def _minutes(clock: str) -> int:
    hours, minutes = clock.split(":")
    return 60 * int(hours) + int(minutes)
