"""All drawings of all examples, and of plans that are hard to draw: whole, readable, the same twice."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

import notices
from notices.drawings.of_period import drawings_of
from notices.drawings.sizes import PAGE, PHONE
from notices.drawings.surface import signs
from notices.operations import CATALOGUE, Opening
from notices.paths import font_files
from notices.rendering.png import svg_to_png
from notices.wording.words import Words
from tests.documents.building import ISSUED
from tests.drawings.hard_plans import DAY, at_once, clubs, drawn
from tests.drawings.metrics import SVG, assert_well_set, faults, texts_in
from tests.plan.strategies import plans
from tests.wording.small_plans import plan, programme, work

SEEN = [
    # What is drawn of each kind of work alone: below ground or in the grass, and of the surface
    # just after it, when it putts smoothly and, if that is later to see, when it has healed.
    ("raising the height of cut", True, 0),  # higher grass
    ("feeding", False, 0),
    ("wetting agent", False, 0),
    ("scarifying", True, 3),
    ("verticutting", True, 3),
    ("clean-up cut", False, 0),  # from 5 mm to 5 mm, if the plan says no more
    ("mole ploughing", True, 3),
    ("slitting", True, 3),
    ("deep solid tining", True, 3),
    ("solid tining", True, 3),
    ("needle tining", True, 3),
    ("hollow tining", True, 3),
    ("drill and fill", True, 3),
    ("drain trenching", True, 3),
    ("turfing", True, 0),  # its seams; where they run is not in a plan
    ("overseeding", False, 0),
    ("top dressing", True, 1),  # a film of sand; the recovery model has no holes to close
    ("brushing", False, 0),
    ("rolling", False, 0),
]
SURFACES = [f"surface-1-{moment}" for moment in ("after", "smooth", "healed")]

READ = {"withy-hollow", "live-oak", "skelmarram-links", "a long name", "turf alone", "sand alone"}
"""Between them they have every colour and texture."""

KNOWN = {"svg", "title", "desc", "g", "rect", "circle", "path", "text"}
"""What browsers, resvg and WeasyPrint all draw alike."""


def test_every_text_stays_in_its_place() -> None:
    for name, (_, drawing) in drawn().items():
        assert faults(drawing.svg) == [], name


@pytest.mark.parametrize("name", [name for name in drawn() if name.split(": ")[0] in READ])
def test_every_text_of_the_examples_is_easily_read(name: str) -> None:
    assert_well_set(drawn()[name][1].svg)


def test_every_drawing_is_complete_in_itself() -> None:
    for name, (_, drawing) in drawn().items():
        root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
        assert root.get("role") == "img", name
        assert root[0].tag == f"{SVG}title"
        assert root[0].text == drawing.title != ""
        assert root[1].tag == f"{SVG}desc"
        assert root[1].text == drawing.description != ""
        assert drawing.caption
        assert drawing.caption in drawing.description
        assert {element.tag.removeprefix(SVG) for element in root.iter()} <= KNOWN, name
        assert "url(" not in drawing.svg
        box = [float(part) for part in (root.get("viewBox") or "").split()]
        assert box == pytest.approx([0, 0, drawing.width, drawing.height], abs=0.001)


def test_names_tell_the_drawings_of_a_programme_apart() -> None:
    names = list(drawn())
    assert len(names) == len(set(names))
    assert all(re.fullmatch(r"[a-z0-9-]+", drawing.name) for _, drawing in drawn().values())


def test_the_same_programme_gives_the_same_drawings() -> None:
    programme = clubs()["withy-hollow"]
    words = Words(programme)
    for period in programme.periods:
        assert drawings_of(words, period) == drawings_of(words, period)


def test_a_period_that_opens_nothing_has_no_drawing() -> None:
    words = Words(clubs()["a roller alone"])
    (period,) = words.programme.periods
    assert drawings_of(words, period) == ()
    assert clubs()["quillerby"].periods == ()


@pytest.mark.parametrize(("operation", "section", "above"), SEEN)
def test_what_of_each_kind_of_work_is_drawn(operation: str, section: bool, above: int) -> None:
    more = {"settings": {"area": "40 m2"}} if "turf" in operation or "trench" in operation else {}
    words = Words(programme(at_once(work(operation, DAY, **more)), ISSUED))
    (period,) = words.programme.periods
    found = [drawing.name for drawing in drawings_of(words, period)]
    slug = operation.replace(" ", "-")
    assert found == [f"section-1-{slug}-1"] * section + SURFACES[:above]


def test_every_kind_of_work_is_in_the_table() -> None:
    assert {operation for operation, _, _ in SEEN} == set(CATALOGUE)


def test_a_telephone_has_each_drawing_that_is_wider_than_it() -> None:
    words = Words(clubs()["withy-hollow"])
    period = words.programme.periods[1]
    wide = [each.name for each in drawings_of(words, period) if each.width > PHONE.width]
    narrow = drawings_of(words, period, PHONE)
    assert [each.name for each in narrow] == [f"{name}-phone" for name in wide]
    assert all(each.width <= PHONE.width for each in narrow)


def test_which_drawings_there_are() -> None:
    """Together, each that opens the ground alone, and two of the surface.

    All of it is expected to have healed by 19 September, when the greens putt smoothly.
    """
    programme = clubs()["withy-hollow"]
    found = [drawing.name for drawing in drawings_of(Words(programme), programme.periods[1])]
    assert found == [
        "section-2",
        "section-2-raising-the-height-of-cut-1",
        "section-2-scarifying-1",
        "section-2-mole-ploughing-1",
        "section-2-deep-solid-tining-1",
        "section-2-hollow-tining-1",
        *(f"surface-2-{moment}" for moment in ("after", "smooth")),
    ]
    alone = [drawing.name for drawing in drawings_of(Words(programme), programme.periods[0])]
    assert alone[0] == "section-1-verticutting-1"
    assert alone[1:] == ["surface-1-after", "surface-1-smooth", "surface-1-healed"]


@pytest.mark.parametrize("name", ["withy-hollow: section-2", "live-oak: surface-1-after"])
def test_as_a_picture_for_mail(name: str) -> None:
    """The letters are drawn: without them the picture is another."""
    drawing = drawn()[name][1]
    picture = svg_to_png(drawing.svg, width_px=round(drawing.width), fonts=font_files())
    bare = re.sub(r"<text\b.*?</text>", "", drawing.svg)
    assert texts_in(drawing.svg)
    assert picture != svg_to_png(bare, width_px=round(drawing.width), fonts=font_files())


def sentences(text: str) -> list[str]:
    return [part for part in re.split(r"(?<=[.!?]) ", text) if part]


def test_captions_are_short_sentences() -> None:
    said = {drawing.caption for _, drawing in drawn().values()}
    assert len(said) > 20
    for caption in said:
        assert "  " not in caption
        for sentence in sentences(caption):
            assert sentence[0].isupper(), caption
            assert sentence[-1] == ".", caption
            assert len(sentence.split()) <= 25, caption


@pytest.mark.parametrize(
    ("operation", "spacing"), [("mole ploughing", "419 mm"), ("drain trenching", "665 mm")]
)
def test_long_words_of_a_depth_leave_the_close_up_alone(operation: str, spacing: str) -> None:
    """In inches, and as narrow as a telephone, they end below the ground that is drawn."""
    data = plan(work(operation, DAY, settings={"spacing": spacing}), club={"units": "imperial"})
    words = Words(programme(data))
    found = drawings_of(words, words.programme.periods[0], PHONE)
    assert any("Close-up" in drawing.svg for drawing in found)
    assert [fault for drawing in found for fault in faults(drawing.svg)] == []


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("drawn") / "plan.yaml"


@settings(
    max_examples=10,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=plans())
def test_any_plan_is_drawn(path: Path, data: dict[str, Any]) -> None:
    path.write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")
    programme = notices.work_out(notices.load_plan(path).plan, ISSUED)
    words = Words(programme)
    for period in programme.periods:
        kinds = {work.operation.opening for work in period.works}
        found = [each for sizes in (PAGE, PHONE) for each in drawings_of(words, period, sizes)]
        found += [each] if (each := signs(words, period, 400)) else []
        assert found or kinds <= {Opening.NONE}
        for drawing in found:
            assert faults(drawing.svg) == []
