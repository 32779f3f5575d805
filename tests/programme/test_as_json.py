"""programme.json: plain, whole, in one order, and silent about the plan file."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from notices.plan.load import load_plan
from notices.programme.as_json import programme_as_json
from notices.programme.model import Programme
from notices.programme.work_out import work_out
from notices.references import REFERENCES

ProgrammeOf = Callable[..., Programme]

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/plan.yaml"))
ISSUED = dt.date(2026, 9, 14)


@pytest.fixture(params=EXAMPLES, ids=lambda path: path.parent.name)
def example(request: pytest.FixtureRequest) -> Programme:
    path: Path = request.param
    return work_out(load_plan(path).plan, ISSUED)


def leaves(value: Any) -> Iterator[Any]:
    if isinstance(value, dict):
        for key, item in value.items():
            assert type(key) is str
            yield from leaves(item)
    elif isinstance(value, list):
        for item in value:
            yield from leaves(item)
    else:
        yield value


# name → its keys; a list means that every entry has them.
SHAPE: dict[str, set[str]] = {
    "greens": {"green", "number", "course", "holes", "area_m2", "area_given"},
    "works": {
        *("id", "operation", "settings", "visits", "reserve_dates", "while_working"),
        *("reopen_days", "services_checked", "temporary", "note", "why", "put_off_because"),
    },
    "periods": {
        *("works", "days", "greens", "noticed", "reserve_dates"),
        *("open_again", "putting_well", "fully_healed", "recoveries"),
        *("putts_well_after_all", "healed_after_all", "others"),
    },
    "recoveries": {
        *("work", "green", "done", "back_in_play", "putting_smoothly", "fully_healed"),
        *("growth_stops", "growth_returns"),
    },
    "weather": {"limit", "works"},
    "rules_of_play": {"rule", "dates", "greens", "works", "source"},
    "scores": {
        *("date", "holes", "temporary", "limit", "within_limit", "preferred_lies", "source"),
    },
    "holes_in_play": {"date", "all_day", "nines", "by_hour"},
    "closures": {
        *("id", "what", "part", "greens", "holes", "whole_course", "dates", "instead", "reason"),
        "temporary",
    },
    "fixtures": {
        "name",
        "date",
        "kind",
        "closed_greens",
        "recovering_greens",
        "course",
        "decision",
        "moved_from",
    },
    "restrictions": {"what", "dates", "except", "ask"},
    "timetables": {
        *("date", "people", "kept_back", "light", "too_long_by_minutes", "limited_by", "busiest"),
        *("busiest_minutes", "default_used", "tasks"),
        *(
            f"{name}{unit}"
            for name in ("working_day_begins", "working_day_ends", "light_from", "light_until")
            for unit in ("", "_minutes")
        ),
        *("rest_from", "rest_from_minutes", "rest_until", "rest_until_minutes"),
        *("dew_off", "dew_off_minutes", "start", "start_minutes", "finish", "finish_minutes"),
        "drying_minutes",
    },
    "greens_back": {"work", "back_in_play", "putting_smoothly", "fully_healed"},
    "records": {"operation", "seasons", "rate_mm_per_day", "book_mm_per_day", "records"},
    "outcomes": {"operation", "work", "done", "what", "forecast", "actual", "days_off"},
    "measurements": {"green", "what", "unit", "readings", "works_between"},
    "patterns": {
        *("layout", "works", "days", "green_days_closed", "green_days_temporary"),
        *("days_under_nine", "days_under_eighteen", "mixed_days", "person_hours", "hire_days"),
        *("fits", "too_long", "longest_minutes_over"),
        *("open_again", "putting_well", "fully_healed"),
        *("fixtures_on_closed", "fixtures_in_recovery"),
    },
    "figures": {
        *("id", "quantity", "scope", "value", "unit", "formula", "source", "inputs"),
        "default_used",
    },
    "findings": {"code", "weight", "message", "suggestion", "work", "greens", "dates"},
    "accepted": {
        *("code", "weight", "message", "suggestion", "work", "greens", "dates", "by", "why"),
    },
}


def test_it_has_its_parts(example: Programme) -> None:
    data = programme_as_json(example)
    assert data["format"] == 1
    assert data["issued"] == "2026-09-14"
    assert data["edition"] == {"number": "20260914-1", "version": 1, "replaces": None}
    assert set(data) == {
        "format",
        "club",
        "issued",
        "edition",
        "draft",
        "status",
        "stretches",
        "sand_order",
        "season",
        *SHAPE,
    }
    for part, keys in SHAPE.items():
        for entry in data[part]:
            assert set(entry) == keys, part


def test_it_is_plain_and_comes_back_as_it_went(example: Programme) -> None:
    data = programme_as_json(example)
    for leaf in leaves(data):
        assert type(leaf) in (str, int, float, bool, type(None)), leaf
    assert json.loads(json.dumps(data, allow_nan=False)) == data


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_same_plan_gives_the_same_text(path: Path) -> None:
    texts = {
        json.dumps(programme_as_json(work_out(load_plan(path).plan, ISSUED))) for _ in range(2)
    }
    assert len(texts) == 1


def test_every_figure_has_a_name_of_its_own_and_its_sources_in_words(example: Programme) -> None:
    figures = programme_as_json(example)["figures"]
    assert len({figure["id"] for figure in figures}) == len(figures)
    texts = {reference.text for reference in REFERENCES.values()}
    works = {work.id for work in example.works} | {"all"}
    greens = {*example.greens, "all"}
    for figure in figures:
        assert figure["source"]
        assert set(figure["source"]) <= texts
        assert figure["scope"]["work"] in works
        assert figure["scope"]["green"] in greens


def test_dates_are_in_their_order(example: Programme) -> None:
    data = programme_as_json(example)
    assert list(data["status"]) == sorted(data["status"])
    for on_day in data["status"].values():
        assert set(on_day.values()) <= {
            "open",
            "open and recovering",
            "temporary green",
            "closed",
        }
    for work in data["works"]:
        dates = [visit["date"] for visit in work["visits"] if visit["ordinal"] == 1]
        assert dates == sorted(dates)


def test_hours_are_told_to_the_minute_and_kept_whole(programme_of: ProgrammeOf) -> None:
    data = programme_as_json(
        programme_of("""
            course: {greens: [{green: 1, area: 480 m2}]}
            crew:
              people: 2
              working_day: 07:00 to 15:00
              machines: [{operation: brushing, width: 1 m, speed: 1.3 km/h, efficiency: 60 %,
                          minutes_between_greens: 12, people: 1}]
            works: [{operation: brushing, dates: 2026-06-01, settings: {passes: 1}}]
        """)
    )
    before, closed, after = data["stretches"]["2026-06-01"]["1"]
    # As above: done after 48.92 minutes.
    assert (before["status"], before["from"], before["until"]) == ("open", "00:00", "07:00")
    assert (closed["status"], closed["from"], closed["until"]) == ("closed", "07:00", "07:49")
    assert closed["until_minutes"] == pytest.approx(420 + 12 + 60 * 0.048 / 0.078)
    assert (closed["because"], closed["passing"]) == (["brushing-1"], False)
    assert (after["status"], after["until"], after["because"]) == ("open", "24:00", [])


def test_findings_name_the_work_and_never_the_line(programme_of: ProgrammeOf) -> None:
    data = programme_as_json(
        programme_of("""
            course: {greens: [{green: 1}]}
            works: [{operation: hollow tining, dates: 2026-10-12, id: cores}]
        """)
    )
    (finding,) = (f for f in data["findings"] if f["code"] == "services-not-checked")
    assert finding["work"] == "cores"
    assert finding["greens"] == ["1"]
    assert finding["dates"] == ["2026-10-12"]
    assert "plan.yaml" not in json.dumps(data)
    # What is about no work says null, as check --json does.
    about_none = {f["code"] for f in data["findings"] if f["work"] is None}
    assert "temperatures-not-stated" in about_none
    assert all(f["work"] != "" for f in data["findings"])


def test_settings_say_which_are_the_clubs(programme_of: ProgrammeOf) -> None:
    data = programme_as_json(
        programme_of("""
            course: {greens: [{green: 1}]}
            works:
              - operation: solid tining
                dates: 2026-10-12
                settings: {spacing: 50 x 60 mm}
        """)
    )
    settings = data["works"][0]["settings"]
    assert settings["spacing"] == {"value": [50, 60], "given": True}
    assert settings["tine_diameter"] == {"value": 10, "given": False}


def test_numbers_are_not_rounded(programme_of: ProgrammeOf) -> None:
    data = programme_as_json(
        programme_of("""
            course: {greens: [{green: 1, area: 480 m2}]}
            works:
              - operation: mole ploughing
                dates: 2026-10-12
                settings: {spacing: 700 mm}
        """)
    )
    (length,) = (f for f in data["figures"] if f["id"] == "mole-ploughing-1/channel-length/1")
    assert length["value"] == pytest.approx(480 / 0.7, rel=1e-15)


def test_times_are_told_to_the_minute_and_kept_whole(programme_of: ProgrammeOf) -> None:
    data = programme_as_json(
        programme_of("""
            course: {greens: [{green: 1, area: 480 m2}]}
            crew:
              people: 2
              working_day: 07:00 to 15:00
              machines: [{operation: rolling, width: 1 m, speed: 1.3 km/h, efficiency: 60 %,
                          minutes_between_greens: 12, people: 1}]
            works: [{operation: rolling, dates: 2026-06-01}]
        """)
    )
    (day,) = data["timetables"]
    (task,) = day["tasks"]
    # iowa_pm696: 1.3 × 1 × 0.6 ÷ 10 = 0.078 ha/h, 0.048 ha take 36.92 minutes; and 12.
    assert (task["start"], task["start_minutes"]) == ("07:00", 420)
    assert task["finish"] == "07:49"
    assert task["finish_minutes"] == pytest.approx(420 + 12 + 60 * 0.048 / 0.078)
    assert (task["work"], task["green"], task["task"]) == ("rolling-1", "1", "rolling")
    assert (day["date"], day["finish"], day["too_long_by_minutes"]) == ("2026-06-01", "07:49", 0)
    assert (day["light_from"], day["light_from_minutes"], day["dew_off"]) == (None, None, None)
    assert "does not say where the club is" in day["light"]
    assert (day["rest_from"], day["rest_until"]) == ("10:30", "11:30")
