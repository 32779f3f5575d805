"""A plan is the same as YAML and as a workbook, and nothing is lost on the way."""

from __future__ import annotations

import datetime as dt
import io
import json
import typing
import zipfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from openpyxl import load_workbook
from openpyxl.utils import get_column_letter

import notices
from notices.convert.as_workbook import plan_as_workbook
from notices.convert.as_yaml import plan_as_yaml
from notices.documents.pack import PackDocuments
from notices.plan.model import Plan
from notices.plan.part import Part
from notices.plan.workbook_layout import SHEETS
from tests.convert.workbooks import PLAN
from tests.documents.building import EXAMPLES, NAMES
from tests.plan import strategies
from tests.test_own_operation import PLAN as OWN_PLAN
from tests.test_own_operation import TEXT as OWN_TEXT


def canonical_text(path: Path) -> str:
    return json.dumps(notices.canonical(notices.load_plan(path).plan), ensure_ascii=False)


def is_the_same_in_both(plan: Path, folder: Path) -> None:
    data = notices.canonical(notices.load_plan(plan).plan)
    workbook, again = folder / "again.xlsx", folder / "again.yaml"
    workbook.write_bytes(plan_as_workbook(data))
    again.write_text(plan_as_yaml(data), "utf-8")
    expected = json.dumps(data, ensure_ascii=False)
    assert canonical_text(workbook) == expected
    assert canonical_text(again) == expected


@pytest.mark.parametrize("name", NAMES)
def test_an_example_is_the_same_as_workbook_and_as_yaml(name: str, tmp_path: Path) -> None:
    is_the_same_in_both(EXAMPLES / name / "plan.yaml", tmp_path)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("converted")


@settings(
    max_examples=15,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(typed=strategies.plans())
def test_so_is_any_plan(folder: Path, typed: dict[str, Any]) -> None:
    path = folder / "plan.yaml"
    path.write_text(json.dumps(typed, ensure_ascii=False), "utf-8")
    is_the_same_in_both(path, folder)


def test_so_is_a_plan_with_a_work_of_its_own_and_one_that_follows(tmp_path: Path) -> None:
    (tmp_path / "air-injection.md").write_text(OWN_TEXT, "utf-8")
    follower = "\n  - {operation: brushing, after: 'air-injection-1, +1 day'}\n"
    (tmp_path / "plan.yaml").write_text(OWN_PLAN.rstrip() + follower, "utf-8")
    is_the_same_in_both(tmp_path / "plan.yaml", tmp_path)


AWKWARD = (
    *("=1+1", "#N/A", "_x0041_", "+44 1234", "-", "'quoted'", '"quoted"', "TRUE", "14.10", "007"),
    *(
        "a\nb",
        "a: b # c",
        "- a",
        "{a}",
        "[a",
        "null",
        "~",
        "12",
        "1e3",
        "𝄞 ½ ’",
        "@",
        "%",
        "a |",
        "*a",
    ),
    *("2027-08-16", "06:30", "1-9", "yes", "example", "!a", "&a", "? a", "<<", "a\n\n  b\n"),
)


def test_words_stay_as_they_were_typed(tmp_path: Path) -> None:
    works = [{**PLAN["works"][0], "note": text} for text in AWKWARD]
    path = tmp_path / "plan.yaml"
    path.write_text(json.dumps({**PLAN, "works": works}, ensure_ascii=False), "utf-8")
    read = [work.note for work in notices.load_plan(path).plan.works]
    assert read == [text.strip() for text in AWKWARD]
    is_the_same_in_both(path, tmp_path)


def test_greens_by_day_go_to_the_work_that_is_meant(tmp_path: Path) -> None:
    """Two works of one kind, and an id that is also the name the other has without one."""
    greens = {"2027-08-16": "1-4", "2027-08-17": "5-9"}
    works = [
        {"operation": "hollow tining", "id": "hollow-tining-2", "dates": "2027-08-16 to 2027-08-17"}
        | {"greens": greens},
        {"operation": "hollow tining", "dates": "2027-08-16 to 2027-08-17", "greens": greens},
        {"operation": "rolling", "dates": "2027-08-16 to 2027-08-17", "greens": greens},
    ]
    path = tmp_path / "plan.yaml"
    path.write_text(json.dumps({**PLAN, "works": works}), "utf-8")
    is_the_same_in_both(path, tmp_path)


def documents_of(path: Path) -> PackDocuments:
    plan = notices.load_plan(path).plan
    programme = notices.work_out(plan, plan.issued or dt.date(2027, 3, 1))
    return notices.write_documents(programme, notices.canonical(plan))


@pytest.mark.parametrize("name", ["tansy-down", "marlpit-common"])
def test_so_is_all_that_a_pack_is_set_from(name: str, tmp_path: Path) -> None:
    """The bytes are compared by .ci/through_libreoffice.py."""
    plan, path = EXAMPLES / name / "plan.yaml", tmp_path / "plan.xlsx"
    path.write_bytes(plan_as_workbook(notices.canonical(notices.load_plan(plan).plan)))
    assert documents_of(path) == documents_of(plan)


def test_the_order_of_settings_makes_no_other_plan(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    texts = []
    for typed in ({"depth": "60 mm", "passes": 2}, {"passes": 2, "depth": "60 mm"}):
        work = {**PLAN["works"][0], "settings": typed}
        path.write_text(json.dumps({**PLAN, "works": [work]}), "utf-8")
        texts.append(canonical_text(path))
    assert texts[0] == texts[1]


# The workbook itself


def ways(model: type[Part], above: tuple[str, ...] = ()) -> set[tuple[str, ...]]:
    """Every way to a value of the plan, by the keys one types."""
    found: set[tuple[str, ...]] = set()
    for name, field in model.model_fields.items():
        way = (*above, field.alias or name)
        parts = _parts_in(field.annotation)
        found |= set().union(*(ways(part, way) for part in parts)) if parts else {way}
    return found


def _parts_in(annotation: Any) -> list[type[Part]]:
    if isinstance(annotation, type) and typing.get_origin(annotation) is None:
        return [annotation] if issubclass(annotation, Part) else []
    return [part for inner in typing.get_args(annotation) for part in _parts_in(inner)]


def test_every_part_of_a_plan_has_its_cell() -> None:
    there = {
        (*sheet.way, *column.way)[: 2 if column.way[:1] == ("settings",) else None]
        for sheet in SHEETS
        for column in sheet.columns
        if column.way
    }
    whole = {
        ("works", "settings"),
        ("operations", "settings"),
        ("course", "daily_mean_temperature"),
    }
    months = {way[:2] for way in there if way[1:2] == ("monthly_mean_temperature",)}
    daily = {way[:2] for way in there if way[1:2] == ("daily_mean_temperature",)}
    assert ways(Plan) - there - months - daily - whole == {("notices",)}


def test_headings_differ_within_a_sheet() -> None:
    for sheet in SHEETS:
        headings = [column.heading for column in sheet.columns]
        assert len(set(headings)) == len(headings), sheet.name


def test_a_workbook_is_the_same_whenever_it_is_written() -> None:
    one, other = plan_as_workbook(PLAN, PLAN), plan_as_workbook(PLAN, PLAN)
    assert one == other
    with zipfile.ZipFile(io.BytesIO(one)) as archive:
        assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read("docProps/core.xml").count(b"1980-01-01T00:00:00Z") == 2


def test_dates_are_dates_and_lists_can_be_chosen_from() -> None:
    works = load_workbook(io.BytesIO(plan_as_workbook(PLAN)))["Works"]
    headings = {cell.value: get_column_letter(cell.column) for cell in works[4] if cell.column}
    first = works[f"{headings['First day']}5"]
    assert first.is_date
    assert first.number_format == "ddd d mmm yyyy"
    rules = {str(rule.sqref): rule for rule in works.data_validations.dataValidation}
    operation = rules[f"{headings['Operation']}5:{headings['Operation']}1000"]
    assert (operation.type, operation.formula1) == ("list", "=Operations")
    greens = works.column_dimensions[headings["Greens"]]
    assert greens.number_format == "@"  # or 1-9 would become a date
