"""Better dates: what clears a clash, the nearest first, and why other starts do not."""

from __future__ import annotations

import datetime as dt
import textwrap
from pathlib import Path

import pytest

from notices.plan.load import load_plan
from notices.plan.model import Plan
from notices.programme import better_dates as module
from notices.programme.answers_as_json import better_dates_as_json
from notices.programme.better_dates import (
    BEFORE_ISSUE,
    OTHER_WORK,
    _moved,
    better_dates,
)
from notices.programme.lay_out import lay_out_works
from notices.programme.model import BetterDates, Programme
from notices.programme.work_out import work_out

HEAD = """\
club: {name: Marl Hill, sender: {email: course@marlhill.example}}
course: {greens: [{green: 1-2, area: 480 m2}]}
"""
# A light dressing closes greens on its day and putts smoothly on the third day at the latest
# (common practice, no published source): 10 June clashes with starts on the 8th, 9th and 10th.
DRESSING = "  - {operation: top dressing, dates: 2026-06-10}\n"
MEDAL = "fixtures: [{name: June Medal, date: 2026-06-10}]\n"
RECOVERING = "a fixture before greens putt well again"


class Found:
    """A plan, its programme and what was found."""

    def __init__(self, folder: Path, text: str, issued: dt.date = dt.date(2026, 1, 5)) -> None:
        path = folder / "plan.yaml"
        path.write_text(HEAD + textwrap.dedent(text), encoding="utf-8")
        self.plan: Plan = load_plan(path).plan
        self.programme: Programme = work_out(self.plan, issued)
        self.all = better_dates(self.plan, self.programme)

    @property
    def one(self) -> BetterDates:
        (found,) = self.all
        return found

    @property
    def starts(self) -> list[str]:
        return [option.start.isoformat() for option in self.one.options]


def test_the_nearest_three_are_offered(tmp_path: Path) -> None:
    # One later; two later; three earlier before three later.
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL)
    assert found.starts == ["2026-06-11", "2026-06-12", "2026-06-07"]
    assert [option.move for option in found.one.options] == [1, 2, -3]
    # 2026-06-07 is a Sunday.
    assert [option.weekend for option in found.one.options] == [(), (), (dt.date(2026, 6, 7),)]
    # Of the other 29 days of June the 8th and the 9th will not do.
    assert (found.one.tried, found.one.good) == (29, 27)
    assert found.one.failed == {RECOVERING: 2}


def test_a_dressing_takes_as_long_on_any_day_of_june(tmp_path: Path) -> None:
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL)
    assert [option.putting_days for option in found.one.options] == [0, 0, 0]


def test_nothing_begins_before_the_notices_are_out(tmp_path: Path) -> None:
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL, issued=dt.date(2026, 6, 8))
    assert found.starts == ["2026-06-11", "2026-06-12", "2026-06-13"]
    assert found.one.failed == {BEFORE_ISSUE: 7, RECOVERING: 2}


def test_other_works_are_not_run_into(tmp_path: Path) -> None:
    # Starts on the 11th, the 12th and the 13th would meet the tines of the 12th.
    tines = "  - {operation: solid tining, dates: 2026-06-12, services_checked: true}\n"
    found = Found(tmp_path, "works:\n" + DRESSING + tines + MEDAL)
    assert found.one.works == ("top-dressing-1",)
    assert found.one.failed[OTHER_WORK] == 3
    assert found.starts[0] == "2026-06-07"


def test_another_fixture_is_not_hit_instead(tmp_path: Path) -> None:
    # The 12th is out with starts on the 10th, 11th and 12th.
    more = MEDAL.replace("]", ", {name: Shield, date: 2026-06-12}]")
    found = Found(tmp_path, "works:\n" + DRESSING + more)
    assert found.starts == ["2026-06-07", "2026-06-13", "2026-06-06"]


def test_out_of_season(tmp_path: Path) -> None:
    # From 15 August cores are in season (common practice): 13 starts of August are not, the
    # planned one not counted.
    cores = "works: [{operation: hollow tining, dates: 2026-08-03, services_checked: true}]\n"
    found = Found(tmp_path, cores)
    assert found.starts == ["2026-08-15", "2026-08-16", "2026-08-17"]
    assert found.one.failed["out of season"] == 13


def test_where_no_start_will_do(tmp_path: Path) -> None:
    cores = "works: [{operation: hollow tining, dates: 2026-10-12, services_checked: true}]\n"
    found = Found(tmp_path, cores)
    assert found.one.options == ()
    assert found.one.failed == {"out of season": 30}


def test_a_day_that_is_too_long_is_so_all_month(tmp_path: Path) -> None:
    # iowa_pm696: an hour a green, two greens, and an hour of work.
    found = Found(
        tmp_path,
        """\
        crew:
          people: 2
          working_day: 07:00 to 08:30
          breaks: 0
          machines: [{operation: rolling, width: 1 m, speed: 1 km/h, minutes_between_greens: 12}]
        works: [{operation: rolling, dates: 2026-06-10}]
        """,
    )
    assert found.one.failed == {"a day too long": 29}


def test_a_clash_that_is_accepted_is_none(tmp_path: Path) -> None:
    accepted = "accepted: [{finding: fixture-in-closure, by: the committee, why: it is played}]\n"
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL + accepted)
    assert found.all == ()


def test_what_follows_moves_too(tmp_path: Path) -> None:
    follower = "  - {operation: solid tining, after: 'top dressing, +30 days'}\n"
    brush = "  - {operation: brushing, dates: 2026-06-10}\n"
    found = Found(tmp_path, "works:\n" + DRESSING + brush + follower + MEDAL)
    (period,) = [one for one in found.programme.periods if one.works[0].id == "top-dressing-1"]
    moved = lay_out_works(_moved(found.plan, period, dt.timedelta(days=2)))
    # 10 + 2; 10 + 2; 10 June + 30 days is 10 July, and two later the 12th.
    assert [work.dates[0].isoformat() for work in moved] == [
        *("2026-06-12", "2026-06-12", "2026-07-12"),
    ]


def test_greens_of_days_move_with_them(tmp_path: Path) -> None:
    by_day = DRESSING.replace(
        "2026-06-10}", "2026-06-10 to 2026-06-11, greens: {2026-06-10: 2, 2026-06-11: 1}}"
    )
    found = Found(tmp_path, "works:\n" + by_day + MEDAL)
    moved = lay_out_works(_moved(found.plan, found.programme.periods[0], dt.timedelta(days=-1)))
    assert [(v.date.day, v.greens) for v in moved[0].visits] == [(9, ("2",)), (10, ("1",))]


@pytest.mark.parametrize("operation", ["top dressing", "verticutting", "solid tining"])
def test_every_start_is_good_or_fails_for_one_reason(tmp_path: Path, operation: str) -> None:
    found = Found(tmp_path, "works:\n" + DRESSING.replace("top dressing", operation) + MEDAL)
    for one in found.all:
        assert one.tried == 29
        assert one.good + sum(one.failed.values()) == one.tried
        assert len(one.options) <= min(3, one.good)


def test_as_data(tmp_path: Path) -> None:
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL)
    assert found.one.kinds == ("top dressing",)
    (data,) = better_dates_as_json(found.all)
    assert data["works"] == ["top-dressing-1"]
    assert data["options"][2]["weekend"] == ["2026-06-07"]


def test_a_plan_with_too_many_that_clash_ends_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "MOST_WORKED_OUT", 2)
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL)
    # The 8th and the 9th clash at the first look; the 11th and the 12th are the nearest of 27.
    assert found.starts == ["2026-06-11", "2026-06-12"]
    assert (found.one.tried, found.one.good, found.one.not_tried) == (4, 2, 25)


def test_every_date_is_tried_where_three_months_have_a_clash(tmp_path: Path) -> None:
    works = "".join(DRESSING.replace("-06-", f"-{month}-") for month in ("06", "07", "08"))
    days = ", ".join(
        f"{{name: Medal {month}, date: 2026-{month}-10}}" for month in ("06", "07", "08")
    )
    found = Found(tmp_path, f"works:\n{works}fixtures: [{days}]\n")
    # June has 29 other days, July and August 30; the 8th and the 9th will not do.
    assert [(one.tried, one.good, one.not_tried) for one in found.all] == [
        (29, 27, 0),
        (30, 28, 0),
        (30, 28, 0),
    ]


def test_the_hired_come_with_the_works_that_move(tmp_path: Path) -> None:
    crew = "crew: {people: 3, hired_people: 2, hired_dates: '2026-05-04, 2026-06-10'}\n"
    found = Found(tmp_path, "works:\n" + DRESSING + MEDAL + crew)
    (period,) = found.programme.periods
    moved = _moved(found.plan, period, dt.timedelta(days=5)).crew
    assert moved is not None
    assert moved.hired_dates is not None
    assert [str(days) for days in moved.hired_dates] == ["2026-05-04", "2026-06-15"]


def test_a_fixture_that_is_decided_is_nothing_to_move_for(tmp_path: Path) -> None:
    medal = MEDAL.replace("}]", ", decision: play on}]")
    assert Found(tmp_path, "works:\n" + DRESSING + medal).all == ()
