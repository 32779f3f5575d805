"""A kind of work that a club brings itself: one entry in its plan and one text beside it."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest

import notices
from notices.errors import PlanFault, TextFault
from notices.rendering.files import RenderedFile
from notices.wording.words import Words

TEXT = """\
title: Air injection
line: We blow air deep into the soil.

## What we do
A probe goes {{ depth }} down into {{ each_green }} and blows air into the soil.

## Why
Roots need air, and packed soil holds little of it.

## What you will see
You will see small holes, {{ width_like }}.

## Your game
You will hardly notice.

## How long
{{ say.closes("The holes") }}
"""

pytestmark = pytest.mark.usefixtures("few_documents")

PLAN = """\
club: {name: Bramble Hill Golf Club}
course:
  greens: [{green: 1-9, area: 400 m2}]
operations:
  - name: air injection
    opens: holes
    order: 41
    noticed: hardly
    settings: {tine_diameter: 12 mm, spacing: 200 x 200 mm, depth: 300 mm}
    reopen: when finished
    text: air-injection.md
works:
  - {operation: air injection, dates: 2027-08-16, services_checked: true}
  - {operation: Air Injection, dates: 2027-09-13, settings: {depth: 250 mm}, services_checked: true}
"""


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    (tmp_path / "air-injection.md").write_text(TEXT, "utf-8")
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN, "utf-8")
    return path


def pack(path: Path) -> dict[str, RenderedFile]:
    plan = notices.load_plan(path).plan
    programme = notices.work_out(plan, dt.date(2027, 7, 1))
    documents = notices.write_documents(programme, notices.canonical(plan))
    return {file.name: file for file in notices.render_pack(documents)}


def faults(path: Path) -> str:
    with pytest.raises(PlanFault) as fault:
        notices.load_plan(path)
    return str(fault.value)


def test_it_is_explained_in_the_club_s_own_words(plan: Path) -> None:
    text = " ".join(pack(plan)["member-email.txt"].content.decode().split())
    assert "AIR INJECTION A probe goes 30 cm down into each green and blows air" in text
    assert "A probe goes 25 cm down" in text
    assert "small holes, about as wide as a finger." in text


def test_its_figures_are_those_of_its_kind(plan: Path) -> None:
    programme = notices.work_out(notices.load_plan(plan).plan, dt.date(2027, 7, 1))
    holes = programme.figure("holes", "air-injection-1")
    assert holes is not None
    # 1,000,000 / (200 × 200) = 25 holes per m² on nine greens of 400 m².
    assert holes.value == pytest.approx(25 * 9 * 400)


def test_the_pack_carries_it_and_can_be_built_again(plan: Path, tmp_path: Path) -> None:
    files = pack(plan)
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "plan.json").write_bytes(files["plan.json"].content)
    again = pack(elsewhere / "plan.json")
    assert json.loads(files["plan.json"].content)["operations"][0]["text"] == TEXT
    assert {name: file.content for name, file in again.items()} == {
        name: file.content for name, file in files.items()
    }


def test_a_name_that_is_near_is_suggested(plan: Path) -> None:
    plan.write_text(PLAN.replace("operation: air injection", "operation: air injectoin"), "utf-8")
    assert 'there is no operation "air injectoin". Did you mean "air injection"?' in faults(plan)


def test_a_setting_of_another_kind_is_refused(plan: Path) -> None:
    plan.write_text(PLAN.replace("{depth: 250 mm}", "{blade_width: 2 mm}"), "utf-8")
    assert 'air injection has no setting "blade_width"' in faults(plan)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("air-injection.md", "missing.md", 'there is no file "missing.md" beside the plan'),
        ("air-injection.md", "../plan.md", "a text must lie beside the plan"),
        ("name: air injection", "name: rolling", '"rolling" is in the catalogue already'),
        ("opens: holes", "opens: hole", 'Did you mean "holes"?'),
        ("text: air-injection.md", "text: We blow air.", "the text lacks title:, line:"),
    ],
)
def test_what_is_wrong_is_said_at_its_place(plan: Path, old: str, new: str, said: str) -> None:
    plan.write_text(PLAN.replace(old, new, 1), "utf-8")
    assert said in faults(plan)


def test_a_section_that_is_missing_is_named(plan: Path) -> None:
    (plan.parent / "air-injection.md").write_text(TEXT.replace("## Why", "## Because"), "utf-8")
    assert "the text lacks why" in faults(plan)


def test_a_name_that_no_sentence_can_fill_is_said(plan: Path) -> None:
    (plan.parent / "air-injection.md").write_text(TEXT.replace("depth }}", "deep }}"), "utf-8")
    with pytest.raises(TextFault, match="text on air-injection cannot be filled: 'deep'"):
        pack(plan)


def test_why_now_may_be_left_out_or_told(plan: Path) -> None:
    told = TEXT.replace(
        "## What you will see", "## Why now\n\nThe soil is moist.\n\n## What you will see"
    )
    for text, said in ((TEXT, ""), (told, "The soil is moist.")):
        (plan.parent / "air-injection.md").write_text(text, "utf-8")
        programme = notices.work_out(notices.load_plan(plan).plan, dt.date(2027, 7, 1))
        (first, *_) = programme.works
        text_of_it = Words(programme).operation(first)
        assert text_of_it.joined(("why now",)).text == said
        assert text_of_it.section("if we do not") == ()


def test_check_tells_what_cannot_be_filled_with_file_and_line(plan: Path) -> None:
    (plan.parent / "air-injection.md").write_text(TEXT.replace("depth }}", "deep }}"), "utf-8")
    loaded = notices.load_plan(plan)
    programme = notices.work_out(loaded.plan, dt.date(2027, 7, 1))
    found = loaded.located(notices.all_findings(loaded, programme))[0]
    assert found.code == "text-cannot-be-filled"
    assert found.place is not None
    # The fifth line of the text names what nothing fills.
    assert (found.place.file, found.place.line) == (str(plan.parent / "air-injection.md"), 5)
    assert found.suggestion == "Did you mean 'depth'?"
