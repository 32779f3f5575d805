"""What is printed stays on the paper, in every pack, whatever a club is called."""

from __future__ import annotations

import dataclasses
from pathlib import Path
from typing import Any

import pytest

from notices.documents.model import Section
from notices.paths import templates_folder
from notices.rendering.pdf import write_pdf
from notices.rendering.sheets import write_sheet
from notices.wording.blocks import Block, Paragraph, Table
from tests.documents.building import BuiltPack, build_data, of
from tests.documents.on_paper import TABLES, faults_on_paper, rows_watched
from tests.documents.reading import Sheet, plain
from tests.rendering.test_sheets import sheet
from tests.wording.small_plans import plan, work


def faults_of(pack: BuiltPack) -> list[str]:
    return [
        f"{name}, {fault}"
        for name, content in pack.files.items()
        if name.endswith(".pdf")
        for fault in faults_on_paper(content)
    ]


def test_no_page_of_an_example_is_cut_off(pack: BuiltPack) -> None:
    assert faults_of(pack) == []


def test_nor_one_of_the_worst_plan(hostile_pack: BuiltPack) -> None:
    assert faults_of(hostile_pack) == []


@of("alderfleet-park", "live-oak")
def test_the_large_print_turns_no_page_for_a_few_lines(pack: BuiltPack) -> None:
    last = Sheet.read(pack.files["board-notice-large-print.pdf"]).texts[-1]
    # Three, or the one that says when to take it down, above two of the running foot.
    assert len(last.strip().splitlines()) > 3 + 2


@of("marlpit-common", "live-oak", "quillerby")
def test_the_large_print_answers_on_its_first_page_what_people_ask_first(pack: BuiltPack) -> None:
    """There is room, as long as rows may part from those below them."""
    first = plain(Sheet.read(pack.files["board-notice-large-print.pdf"]).texts[0])
    subject = "good again" if pack.programme.periods else "also"
    facts = pack.documents.document("board-notice-large-print").facts
    asked = [fact.text for fact in facts if fact.subject == subject and fact.text in first]
    assert len(asked) >= 3


@of("withy-hollow")
def test_no_heading_stands_with_a_single_point_at_the_foot_of_a_page(pack: BuiltPack) -> None:
    (page,) = (
        text.partition("What it means for your game")[2]
        for text in Sheet.read(pack.files["counter-handout.pdf"]).texts
        if "What it means for your game" in text
    )
    assert page.count("\u2022") > 1


def rows_parted_in(pack: BuiltPack) -> list[str]:
    assert pack.folder
    lines = pack.folder.with_suffix(".rows").read_text("utf-8").splitlines()
    assert TABLES in lines
    return [line for line in lines if line != TABLES]


def test_no_row_of_a_table_is_parted(pack: BuiltPack) -> None:
    assert rows_parted_in(pack) == []


def test_nor_one_of_the_worst_tables(hostile_pack: BuiltPack) -> None:
    assert rows_parted_in(hostile_pack) == []


def test_a_row_that_is_parted_would_be_found(tmp_path: Path) -> None:
    cell = "<p style='height: 100mm'>high" * 4
    table = f"<table><tr><td>first<td>{cell}</table>"
    with rows_watched(tmp_path / "rows.txt"):
        write_pdf(PAGE % ("15mm", table), base=templates_folder())
    assert "goes on with the row 'firsthigh" in (tmp_path / "rows.txt").read_text("utf-8")


@pytest.mark.parametrize(("rows", "parted"), [(2, False), (8, False), (9, True), (30, True)])
def test_a_table_is_parted_where_enough_of_it_stays_together(
    rows: int, parted: bool, tmp_path: Path
) -> None:
    """Wherever it begins: below so many lines of 6.6 mm, of which 36 stand on a page."""
    found = []
    table = Table("Mown", ("Green", "Day"), tuple((str(n), "Monday") for n in range(rows)))
    log = tmp_path / "rows.txt"
    for lines in range(20, 36):
        blocks: tuple[Block, ...] = (
            *(Paragraph.of("Mown grass is green.") for _ in range(lines)),
            table,
        )
        one = dataclasses.replace(sheet("one"), pages=3)
        document = dataclasses.replace(one.document, sections=(Section("words", blocks),))
        with rows_watched(log):
            made = write_sheet(dataclasses.replace(one, document=document))
        # The caption and the head of the columns stand above the rows; a head stands anew overleaf.
        found.append(sum(text.count("Green") for text in Sheet.read(made.content).texts))
    assert (max(found) > 1) is parted
    assert set(log.read_text("utf-8").splitlines()) == {TABLES}


LONGEST_WORD = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"
LONG = "Golf and Country Club of Saint Swithun-upon-the-Marsh with Little Wold " * 3


@pytest.mark.parametrize("more", [{}, {"approval": "pending"}], ids=["approved", "draft"])
def test_nor_one_with_long_names_and_nothing_else(more: dict[str, Any], tmp_path: Path) -> None:
    """Nothing that may be left out is there to help; a draft says so in the foot as well."""
    pack = build_data(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-10"),
            club={"name": LONG.strip()},
            fixtures=[{"name": LONGEST_WORD, "date": "2027-08-12"}],
            greens="Upper Saint Swithun-upon-the-Marsh, 2-9",
            **more,
        ),
        tmp_path,
    )
    for name in ("board-notice-a4", "board-notice-large-print", "tee-sign", "counter-handout"):
        assert list(faults_on_paper(pack.files[f"{name}.pdf"])) == [], name


PAGE = "<html lang=en><meta charset=utf-8><title>x</title><style>@page { margin: %s }</style>%s"


@pytest.mark.parametrize(
    ("margin", "body", "fault"),
    [
        ("15mm", "<h1>one</h1><p>two", []),
        # 5 mm are 14.2 pt, and letters stand right at the margin.
        ("15mm 15mm 15mm 5mm", "<h1>one</h1><p>two", ["from the edge"] * 2),
        ("15mm", "<h1>one</h1><p>two<p style='break-before: page'>three", ["page 2: 1 lines"]),
    ],
    ids=["in place", "too near", "alone"],
)
def test_a_fault_would_be_found(margin: str, body: str, fault: list[str]) -> None:
    pdf = write_pdf(PAGE % (margin, body), base=templates_folder())
    found = list(faults_on_paper(pdf.content))
    assert len(found) == len(fault)
    assert all(said in one for said, one in zip(fault, found, strict=True))
