"""Findings about a plan in a workbook, said by its headings."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from notices.findings import Finding, Place, Weight
from notices.plan.workbook_layout import SHEETS
from notices.plan.workbook_words import in_workbook_words

PACKAGE = Path(__file__).parents[2] / "notices"

SAID = {
    # Sheet, way through the plan, what is said of YAML: what is said of a workbook.
    ("Works", ("works", 0, "services_checked"), "Write services_checked: true"): (
        'Write "yes" under "Services checked"'
    ),
    (
        "Works",
        ("works", 0, "temporary"),
        "Write while_working: temporary green, or take temporary out",
    ): 'Write "temporary green" under "While working", or take "Temporary" out',
    ("Works", ("works", 0, "greens"), "Add them under course: greens, or take them out"): (
        'Add them on the sheet "Greens", or take them out'
    ),
    (
        "Works",
        ("works", 0, "settings"),
        "Write sand: most_per_dressing: 3.5 kg/m2 and dressings: 4; the first then brings less",
    ): (
        'Write "3.5 kg/m2" beside "Most per dressing" on the sheet "Sand" and "4" under '
        '"Dressings"; the first then brings less'
    ),
    ("Works", ("works", 0, "operation"), "Leave it out, or correct course: soil:"): (
        'Leave it out, or correct "Clay" and "Sand in the soil" on the sheet "Turf and climate"'
    ),
    ("Works", ("works", 0, "greens"), "A work is done once on each green: keep one of them"): (
        "A work is done once on each green: keep one of them"
    ),
    ("Greens", ("course", "greens", 1, "also"), "Write such as {green: 2, also: 16}"): (
        'Write such as "2" under "Green" and "16" under "Also"'
    ),
    ("Greens", ("course", "greens", 1, "green"), "Add course: to this line"): (
        'Add "Course" to this line'
    ),
    ("Decisions", ("approval",), 'Add by, or write approval: "pending"'): (
        'Add "Approved by", or write "yes" beside "Approval pending"'
    ),
    ("Measurements", ("measurements", 0), "Add thatch_depth, speed, or firmness with its unit"): (
        'Add "Thatch depth", "Speed", or "Firmness" with its unit'
    ),
    (
        "Turf and climate",
        ("course",),
        "Add course: monthly_mean_temperature: with twelve figures for your place",
    ): 'Add "January" to "December"',
    ("Club", ("club",), "Add club: place: with latitude, longitude and timezone"): (
        'Add "Latitude", "Longitude" and "Timezone"'
    ),
}


def finding(
    sheet: str, path: tuple[str | int, ...], suggestion: str, message: str = "so it is"
) -> Finding:
    place = Place("plan.xlsx", 5, 3, sheet=sheet)
    return Finding("x", Weight.THINK_AGAIN, message, suggestion, path=path, place=place)


@pytest.mark.parametrize(("sheet", "path", "typed"), SAID)
def test_a_remedy_names_headings(sheet: str, path: tuple[str | int, ...], typed: str) -> None:
    said = in_workbook_words(finding(sheet, path, typed)).suggestion
    assert said == SAID[sheet, path, typed]


def test_what_is_missing_is_named_by_its_heading() -> None:
    days = finding("Works", ("works", 0, "dates"), "Add it: the days", '"dates" is missing')
    assert in_workbook_words(days).message == '"First day" is missing'


def test_a_word_of_somebody_else_stays() -> None:
    """A key of one part may be any word: a green may be called after it."""
    said = 'there is no green "speed", and no "depth" either'
    assert in_workbook_words(finding("Works", ("works", 0, "greens"), "", said)).message == said


KEYS = {step for sheet in SHEETS for column in sheet.columns for step in (*sheet.way, *column.way)}
REMEDY = re.compile(r"^(?:[Ww]rite|[Aa]dd|[Tt]ake|[Gg]ive|[Ll]eave|[Hh]ave|[Cc]orrect)\b.*")


def remedies() -> Iterator[str]:
    """Yield each sentence of the readers and checks that tells somebody what to write."""
    for stage in ("plan", "programme"):
        for file in sorted((PACKAGE / stage).glob("*.py")):
            for node in ast.walk(ast.parse(file.read_text("utf-8"))):
                parts = node.values if isinstance(node, ast.JoinedStr) else [node]
                words = [
                    str(part.value) if isinstance(part, ast.Constant) else "3"
                    for part in parts
                    if isinstance(part, ast.Constant | ast.FormattedValue)
                ]
                sentence = "".join(words)
                # A docstring ends with a full stop, and a remedy does not.
                if REMEDY.match(sentence) and not sentence.endswith("."):
                    yield sentence


def keys_left(sheet: str, path: tuple[str | int, ...], said: str) -> set[str]:
    return keys_in(in_workbook_words(finding(sheet, path, said)).suggestion)


def keys_in(said: str) -> set[str]:
    return KEYS & set(re.findall(r"(?<![-\w])([a-z]+_[a-z_]+|[a-z]+(?=: ))", said))


def test_no_remedy_keeps_a_key() -> None:
    """A remedy is about one sheet at least, and for it no key is left in the sentence."""
    named = [said for said in remedies() if keys_in(said)]
    assert len(named) > 10
    for said in named:
        assert any(not keys_left(sheet.name, (*sheet.way, 0), said) for sheet in SHEETS), said
