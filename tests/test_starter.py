"""``notices new``: a plan that explains itself and builds as it stands."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest
from jsonschema import Draft7Validator

import notices
from notices.errors import FolderFault
from notices.findings import Weight
from notices.paths import example_names, examples_folder
from notices.plan.model import Plan
from notices.plan.schema import FIRST_LINE
from notices.plan.yaml_file import read_yaml
from notices.starter import coming_season, start_plan
from tests.test_cli import AT_FAULT, DONE, WRONG_USAGE, run

SPRING = dt.date(2027, 3, 1)


@pytest.mark.parametrize(
    ("today", "monday"),
    [
        # 16 August 2027 is a Monday; five weeks before it is 12 July.
        (dt.date(2027, 3, 1), dt.date(2027, 8, 16)),
        (dt.date(2027, 7, 12), dt.date(2027, 8, 16)),
        # A day later it is the next year's: 16 August 2028 is a Wednesday, the Monday after the 21st.
        (dt.date(2027, 7, 13), dt.date(2028, 8, 21)),
        (dt.date(2027, 12, 31), dt.date(2028, 8, 21)),
        (dt.date(2028, 2, 29), dt.date(2028, 8, 21)),
    ],
)
def test_the_season_leaves_time_to_tell_members(today: dt.date, monday: dt.date) -> None:
    assert coming_season(today) == monday
    assert monday.weekday() == 0


@pytest.mark.parametrize("today", [SPRING + dt.timedelta(days=61 * n) for n in range(12)], ids=str)
def test_the_plan_is_in_order_whenever_it_is_started(today: dt.date, tmp_path: Path) -> None:
    path, *_ = start_plan(tmp_path / "club", today)
    loaded = notices.load_plan(path)
    found = notices.work_out(loaded.plan, today).findings
    # What only the club can say is left to it; nothing else is to be thought about again.
    asked = {finding.code for finding in found if finding.weight is Weight.THINK_AGAIN}
    assert asked == {"no-sender", "services-not-checked"}
    # Nor is there a word on how the works go together: they are an example of it.
    assert "top-up-not-brushed" not in {finding.code for finding in found}
    assert all(day > today for work in loaded.plan.works for days in work.dates for day in days)


def test_the_folder_holds_the_plan_and_the_schema_that_it_names(tmp_path: Path) -> None:
    folder = tmp_path / "clubs" / "ours"
    assert [path.name for path in start_plan(folder, SPRING)] == ["plan.yaml", "plan.schema.json"]
    assert sorted(path.name for path in folder.iterdir()) == ["plan.schema.json", "plan.yaml"]
    text = (folder / "plan.yaml").read_text("utf-8")
    assert text.startswith("# yaml-language-server: $schema=./plan.schema.json\n")
    schema = json.loads((folder / "plan.schema.json").read_text("utf-8"))
    Draft7Validator(schema).validate(read_yaml(folder / "plan.yaml").data)


def test_what_waits_behind_a_hash_can_be_used_as_it_stands(tmp_path: Path) -> None:
    path, *_ = start_plan(tmp_path / "club", SPRING)
    keys = {*Plan.model_fields, "sender", "reply_to", "website", "place", "contact", "soil"}
    keys.add("monthly_mean_temperature")
    lines = []
    for line in path.read_text("utf-8").splitlines():
        bare = line.lstrip(" ")
        waits = bare.startswith("# ") and bare[2:].partition(":")[0] in keys
        lines.append(line.replace("# ", "", 1) if waits else line)
    path.write_text("\n".join(lines), "utf-8")
    plan = notices.load_plan(path).plan
    assert plan.club.sender
    assert plan.club.place
    assert plan.course.soil
    assert plan.course.monthly_mean_temperature
    assert plan.approval
    assert plan.approval.pending


@pytest.mark.parametrize("name", example_names())
def test_an_example_is_copied_with_all_it_needs(name: str, tmp_path: Path) -> None:
    path, *_ = start_plan(tmp_path / "club", SPRING, name)
    original = examples_folder() / name / "plan.yaml"
    assert path.read_text("utf-8") == FIRST_LINE + original.read_text("utf-8")
    copied = notices.load_plan(path)
    assert copied.plan == notices.load_plan(original).plan
    named = {copied.plan.club.logo and "logo.png"} - {None}
    assert {file.name for file in path.parent.glob("*.png")} == named  # and none of the gallery


def test_a_workbook_of_an_example_has_its_pictures_beside_it(tmp_path: Path) -> None:
    example = "withy-hollow"
    book, *beside = start_plan(tmp_path / "club", SPRING, example, workbook=True)
    assert [path.name for path in beside] == ["plan-logo.png"]
    started = notices.load_plan(book).plan
    original = notices.load_plan(examples_folder() / example / "plan.yaml").plan
    assert started.club.logo
    assert started.club == original.club


def test_a_folder_with_something_in_it_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine", "utf-8")
    with pytest.raises(FolderFault, match="is not empty: name a new folder"):
        start_plan(tmp_path, SPRING)
    assert [path.name for path in tmp_path.iterdir()] == ["letter.txt"]


def test_an_empty_folder_will_do(tmp_path: Path) -> None:
    assert start_plan(tmp_path, SPRING)[0] == tmp_path / "plan.yaml"


@pytest.mark.parametrize("name", ["file", "file/below", "a\0b", "x" * 300])
def test_what_cannot_be_a_folder_is_refused(name: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", "utf-8")
    with pytest.raises(FolderFault, match="cannot be written"):
        start_plan(tmp_path / name, SPRING)
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_new_says_what_comes_next(tmp_path: Path) -> None:
    folder = tmp_path / "club"
    result = run("new", folder, "--today", "2027-03-01")
    assert (result.exit_code, result.stdout) == (DONE, "")
    assert f"then: notices check {folder / 'plan.yaml'}" in result.stderr
    assert "2027-08-16 to 2027-08-19" in (folder / "plan.yaml").read_text("utf-8")
    assert run("check", folder / "plan.yaml", "--today", "2027-03-01").exit_code == DONE


def test_new_over_a_plan_is_refused(tmp_path: Path) -> None:
    assert run("new", tmp_path / "club").exit_code == DONE
    again = run("new", tmp_path / "club", "--from", "tansy-down")
    assert again.exit_code == AT_FAULT
    assert "is not empty" in again.stderr


def test_an_example_that_there_is_not_is_wrong_usage(tmp_path: Path) -> None:
    result = run("new", tmp_path / "club", "--from", "../../etc")
    assert result.exit_code == WRONG_USAGE
    assert "tansy-down" in result.stderr
    assert list(tmp_path.iterdir()) == []


def test_the_schema_can_be_written_anew(tmp_path: Path) -> None:
    start_plan(tmp_path, SPRING)
    assert run("schema").stdout == (tmp_path / "plan.schema.json").read_text("utf-8")
