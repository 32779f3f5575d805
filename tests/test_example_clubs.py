"""What the clubs of the examples are there to show."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import notices
from notices.findings import Weight
from notices.programme.model import Programme
from notices.wording.blocks import KeyFacts
from tests.documents.building import EXAMPLES, BuiltPack, of
from tests.documents.reading import Page, Sheet

MOLES = """
  - operation: mole ploughing
    dates: 2027-09-06
    services_checked: true
"""


def worked_out(text: str, folder: Path) -> Programme:
    path = folder / "plan.yaml"
    path.write_text(text, encoding="utf-8")
    plan = notices.load_plan(path).plan
    return notices.work_out(plan, plan.issued or dt.date(2027, 3, 1))


@of("alderfleet-park", "skelmarram-links", "quillerby")
def test_a_good_course_manager_has_nothing_to_think_about_again(pack: BuiltPack) -> None:
    findings = pack.programme.findings
    assert [f.code for f in findings if f.weight is not Weight.INFORMATION] == []


def test_nobody_ploughs_channels_into_a_links(tmp_path: Path) -> None:
    """Mole channels hold in clay; here are 3 % clay and 94 % sand."""
    text = (EXAMPLES / "skelmarram-links" / "plan.yaml").read_text("utf-8")
    ploughed = worked_out(text.replace("\nclosures:", f"{MOLES}\nclosures:"), tmp_path)
    (refusal,) = (f for f in ploughed.findings if f.code == "soil-unsuitable-for-moles")
    assert refusal.weight is Weight.CANNOT_BUILD
    assert "3 % clay and 94 % sand" in refusal.message
    assert refusal.work == "mole-ploughing-1"


@of("skelmarram-links")
def test_a_links_with_three_double_greens_has_fifteen(pack: BuiltPack) -> None:
    programme = pack.programme
    assert sum(bool(green.holes) for green in programme.greens.values()) == 18 - 3
    assert [hole for _, hole in programme.holes] == list(range(1, 19))
    assert "All 15 greens and the putting green" in pack.text("member-email.txt")


@of("alderfleet-park")
def test_thirty_six_holes_and_a_winter_fit_on_one_sheet(pack: BuiltPack) -> None:
    assert len(pack.programme.holes) == 36
    assert len(pack.programme.periods) == 6
    assert len(pack.programme.closures) == 6
    assert Sheet.read(pack.files["board-notice-a4.pdf"]).pages == 1


@of("alderfleet-park")
def test_while_one_course_is_closed_the_other_is_played(pack: BuiltPack) -> None:
    closed = pack.programme.holes_closed_on(dt.date(2027, 12, 14))
    assert closed == tuple(("Heron", number) for number in range(1, 19))


@of("quillerby")
def test_what_is_closed_is_told_by_date(pack: BuiltPack) -> None:
    page = Page(pack.text("member-email.html")).text
    told = ["The fairway of hole 7", "The tees of holes 1 to 9", "Holes 10 to 18", "The course is"]
    places = [page.index(words) for words in told]
    assert places == sorted(places)
    # As the plan has them, with the weekdays of 2027.
    days = [
        *("Mon 18 to Fri 22 Oct", "Mon 1 to Fri 12 Nov", "Tue 16 Nov", "Wed 17 to Fri 26 Nov"),
        "Wed 1 Dec",
    ]
    for name in ("member-email", "counter-handout", "course-page"):
        first = pack.documents.document(name).sections[0].blocks[0]
        assert isinstance(first, KeyFacts)
        assert [row.label for row in first.rows] == days, name


@of("alderfleet-park", "skelmarram-links")
def test_courses_and_double_greens_come_back_from_the_pack(pack: BuiltPack, tmp_path: Path) -> None:
    written = pack.text("plan.json")
    greens = json.loads(written)["course"]["greens"]
    assert any("course" in line or "also" in line for line in greens)
    again = worked_out(written, tmp_path)
    assert again.greens == pack.programme.greens
    assert again.works == pack.programme.works
