"""A club's photographs are shown where they help: in the message and on the page, with words."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

import notices
from notices.convert.between import convert_plan
from notices.documents.course_page import course_pages
from notices.documents.member_email import member_email
from notices.programme.model import Programme
from notices.rendering.whole_pack import render_item
from tests.documents.building import ISSUED
from tests.documents.reading import Mail, Page
from tests.plan.test_photographs import photograph

PLAN = """
club: {name: Fallow Moor Golf Club}
course: {greens: [{green: 1-9}]}
works: [{operation: hollow tining, dates: 2027-08-16 to 2027-08-17}]
photographs:
  - {file: cores.jpg, shows: Cores on a green, caption: The seventh last year., work: hollow tining}
  - {file: cores.jpg, shows: The team at work}
  - {file: cores.jpg, shows: A mole plough, work: mole ploughing}
"""


def programme_of(folder: Path) -> Programme:
    (folder / "cores.jpg").write_bytes(photograph((1200, 600)))
    (folder / "plan.yaml").write_text(PLAN, "utf-8")
    plan = notices.load_plan(folder / "plan.yaml").plan
    again = folder / "again.json"
    again.write_text(json.dumps(notices.canonical(plan)), "utf-8")
    (folder / "cores.jpg").unlink()
    assert notices.load_plan(again).plan.photographs == plan.photographs  # the plan is complete
    return notices.work_out(plan, ISSUED)


def test_they_travel_in_the_message(tmp_path: Path) -> None:
    letter = replace(member_email(programme_of(tmp_path)), calendar="")
    files = {f.name: f.content for f in render_item(letter, {})}
    mail = Mail.read(files["member-email.eml"])
    page = Page(mail.html)
    shown = {image["alt"]: image["src"].removeprefix("cid:") for image in page.images}
    assert {"Cores on a green", "The team at work"} <= shown.keys()
    assert "A mole plough" not in shown
    picture = Image.open(io.BytesIO(mail.images[shown["Cores on a green"]]))
    assert (picture.format, picture.width) == ("JPEG", 1000)
    assert "The seventh last year." in page.text
    assert not Page(files["member-email.html"].decode()).images


def test_they_stand_on_the_page(tmp_path: Path) -> None:
    entry = course_pages(programme_of(tmp_path))
    assert entry is not None
    (file,) = render_item(entry.items[0], {})
    page = Page(file.content.decode())
    assert {"Cores on a green", "The team at work"} == {image["alt"] for image in page.images}


@pytest.mark.parametrize("name", ["other.xlsx", "other.yaml"])
def test_they_lie_beside_a_plan_that_is_converted(name: str, tmp_path: Path) -> None:
    (tmp_path / "cores.jpg").write_bytes(photograph((1200, 600)))
    (tmp_path / "plan.yaml").write_text(PLAN, "utf-8")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    convert_plan(tmp_path / "plan.yaml", elsewhere / name)
    assert {path.name for path in elsewhere.iterdir()} == {
        name,
        *(f"other-photograph-{number}.jpg" for number in (1, 2, 3)),
    }
    plans = [notices.load_plan(path).plan for path in (tmp_path / "plan.yaml", elsewhere / name)]
    assert plans[0].photographs == plans[1].photographs


def test_one_of_work_that_is_not_planned_is_told(tmp_path: Path) -> None:
    found = [f for f in programme_of(tmp_path).findings if f.code == "photograph-of-nothing"]
    assert [f.path for f in found] == [("photographs", 2, "work")]
