"""Starting a workbook, and turning a plan into one and back, at the command line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from openpyxl import load_workbook
from PIL import Image

import notices
from notices.plan.workbook_layout import SHEETS
from tests.convert.workbooks import said_of
from tests.documents.building import EXAMPLES
from tests.test_cli import AT_FAULT, DONE, run

MARLPIT = EXAMPLES / "marlpit-common"


@pytest.fixture(scope="module")
def started(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("started") / "our-club"
    assert run("new", folder, "--workbook").exit_code == DONE
    assert [path.name for path in folder.iterdir()] == ["plan.xlsx"]
    return folder / "plan.xlsx"


def test_an_empty_workbook_asks_for_what_it_needs(started: Path) -> None:
    assert [line.partition(". ")[0] for line in said_of(started)] == [
        'Club!B5: "Name" is missing',
        'Greens!B4: no row of the sheet "Greens" is filled',
    ]


def test_its_examples_are_a_plan_that_can_be_built(started: Path, tmp_path: Path) -> None:
    book = load_workbook(started)
    for sheet in SHEETS:
        cells = book[sheet.name]
        for row in range(4, cells.max_row + 1):
            if sheet.is_list and cells.cell(row, 1).value == "example":
                cells.cell(row, 1).value = None
            elif not sheet.is_list:
                cells.cell(row, 2).value = cells.cell(row, 4).value
    path = tmp_path / "plan.xlsx"
    book.save(path)
    shutil.copy(MARLPIT / "fixtures.ics", tmp_path)
    assert notices.load_plan(path).plan == notices.load_plan(MARLPIT / "plan.yaml").plan


def test_what_a_list_offers_fits_into_its_rule(started: Path) -> None:
    """Spreadsheet programs take at most 255 letters for a list that stands in the rule itself."""
    book = load_workbook(started)
    for sheet in SHEETS:
        for rule in book[sheet.name].data_validations.dataValidation:
            assert len(str(rule.formula1)) <= 255


def test_an_example_can_be_started_from(tmp_path: Path) -> None:
    folder = tmp_path / "ours"
    assert run("new", folder, "--workbook", "--from", "tansy-down").exit_code == DONE
    expected = notices.load_plan(EXAMPLES / "tansy-down" / "plan.yaml").plan
    assert notices.load_plan(folder / "plan.xlsx").plan == expected


def test_a_plan_is_turned_into_a_workbook_and_back(tmp_path: Path) -> None:
    plan, book, again = MARLPIT / "plan.yaml", tmp_path / "plan.xlsx", tmp_path / "plan.yaml"
    for one, other in ((plan, book), (book, again)):
        result = run("convert", one, other)
        assert (result.exit_code, result.stdout) == (DONE, "")
        assert result.stderr == f"{other}: written\n"
    assert notices.load_plan(again).plan == notices.load_plan(plan).plan


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("plan.ods", "end the name in .yaml or .xlsx, to say what to write"),
        ("there.yaml", "is there already: name a new file"),
        ("no/plan.yaml", "cannot be written: no such file or directory"),
    ],
)
def test_where_it_cannot_be_written_is_told(name: str, said: str, tmp_path: Path) -> None:
    (tmp_path / "there.yaml").write_text("mine", "utf-8")
    result = run("convert", EXAMPLES / "tansy-down" / "plan.yaml", tmp_path / name)
    assert result.exit_code == AT_FAULT
    assert said in result.stderr
    assert (tmp_path / "there.yaml").read_text("utf-8") == "mine"


def test_there_and_back_in_one_folder_keeps_the_photograph(tmp_path: Path) -> None:
    """The plan that comes back names the picture that lies there already."""
    Image.new("RGB", (800, 600), (60, 120, 60)).save(tmp_path / "cores.jpg")
    plan = tmp_path / "ours.yaml"
    text = (EXAMPLES / "tansy-down" / "plan.yaml").read_text("utf-8")
    plan.write_text(f"{text}\nphotographs: [{{file: cores.jpg, shows: Cores}}]\n", "utf-8")
    book, again = tmp_path / "plan.xlsx", tmp_path / "plan.yaml"
    assert run("convert", plan, book).exit_code == DONE
    assert run("convert", book, again).exit_code == DONE
    assert notices.load_plan(again).plan == notices.load_plan(book).plan


def test_another_picture_of_that_name_is_left_alone(tmp_path: Path) -> None:
    Image.new("RGB", (800, 600), (60, 120, 60)).save(tmp_path / "cores.jpg")
    plan = tmp_path / "ours.yaml"
    text = (EXAMPLES / "tansy-down" / "plan.yaml").read_text("utf-8")
    plan.write_text(f"{text}\nphotographs: [{{file: cores.jpg, shows: Cores}}]\n", "utf-8")
    beside = tmp_path / "plan-photograph-1.jpg"
    beside.write_bytes(b"another")
    result = run("convert", plan, tmp_path / "plan.xlsx")
    assert (result.exit_code, result.stderr) == (
        AT_FAULT,
        f"{beside} is there already: name a new file\n",
    )
    assert beside.read_bytes() == b"another"


def test_the_next_command_can_be_typed_as_it_stands(tmp_path: Path) -> None:
    plain = run("new", tmp_path / "club", "--workbook").stderr
    assert f"then: notices check {tmp_path / 'club' / 'plan.xlsx'}\n" in plain
    spaced = run("new", tmp_path / "our club", "--workbook").stderr
    assert f'then: notices check "{tmp_path / "our club" / "plan.xlsx"}"\n' in spaced


def test_no_line_of_help_says_a_thing_twice(started: Path) -> None:
    book = load_workbook(started)
    help_lines = [
        str(cell.value)
        for sheet in SHEETS
        for cells in book[sheet.name].iter_rows()
        for cell in cells
        if cell.value is not None
    ]
    assert not [line for line in help_lines if line.lower().count("such as") > 1]
