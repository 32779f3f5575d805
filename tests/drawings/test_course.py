"""The drawing of the course: a box for each green, with its day, and nothing else."""

from __future__ import annotations

import datetime as dt
import xml.etree.ElementTree as ET
from collections.abc import Mapping
from itertools import pairwise

import pytest
from PIL import ImageFont

from notices.drawings.course import HEADING_SIZE, green_strip, greens_by_day
from notices.drawings.model import Drawing
from notices.drawings.sizes import PAGE, PHONE, Sizes
from notices.paths import templates_folder
from notices.wording.period import PeriodWords
from tests.wording.small_plans import period, plan, work

SVG = "{http://www.w3.org/2000/svg}"
BOLD = str(templates_folder() / "fonts" / "NoticesSans-Bold.ttf")


def shapes(drawing: Drawing, tag: str) -> list[ET.Element]:
    root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
    return list(root.iter(f"{SVG}{tag}"))


def box_texts(drawing: Drawing) -> list[ET.Element]:
    """The words in the boxes, without the names of courses that stand over them."""
    return [t for t in shapes(drawing, "text") if t.get("font-size") != str(HEADING_SIZE)]


def headings(drawing: Drawing) -> list[ET.Element]:
    return [t for t in shapes(drawing, "text") if t.get("font-size") == str(HEADING_SIZE)]


def labels(drawing: Drawing) -> list[tuple[str, str]]:
    """What stands in each box: the green and its day."""
    texts = [shape.text or "" for shape in box_texts(drawing)]
    return list(zip(texts[::2], texts[1::2], strict=True))


def drawn(told: PeriodWords, sizes: Sizes = PAGE) -> Drawing:
    return greens_by_day(told.words, told, sizes)


def three_days(greens: str = "1-18, Putting green", **more: object) -> PeriodWords:
    """On Monday 9, Tuesday 10 and Wednesday 11 August 2027."""
    planned = work("hollow tining", "2027-08-09 to 2027-08-11", greens=greens, **more)
    return period(plan(planned, greens="1-18, Putting green"))


def test_each_green_has_a_box_with_its_day() -> None:
    by_day = {"2027-08-09": "1-6", "2027-08-10": "7-12", "2027-08-11": "13-18, Putting green"}
    told = period(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-11", greens=by_day),
            greens="1-18, Putting green",
        )
    )
    expected = [(str(n), ("Mon 9", "Tue 10", "Wed 11")[(n - 1) // 6]) for n in range(1, 19)]
    assert labels(drawn(told)) == [*expected, ("Putting green", "Wed 11")]


def test_a_green_without_work_says_so() -> None:
    found = dict(labels(drawn(three_days("1-9"))))
    assert found["10"] == "no work"
    assert "Putting green" not in found  # a numbered green is missed in a course, this one is not


def test_days_of_two_months_are_told_apart() -> None:
    told = period(plan(work("hollow tining", "2027-08-31 to 2027-09-01", greens="1-2")))
    assert labels(drawn(told))[:2] == [("1", "31 Aug"), ("2", "1 Sept")]


def test_a_green_that_takes_several_days() -> None:
    told = period(plan(work("drain trenching", "2027-11-08 to 2027-11-11", greens="12, 13")))
    assert dict(labels(drawn(told)))["12"] == "8 to 9 Nov"


def courses(*lines: Mapping[str, object], dates: str, greens: object = None) -> PeriodWords:
    planned = work("hollow tining", dates, **({"greens": greens} if greens else {}))
    data = plan(planned)
    data["course"]["greens"] = list(lines)
    return period(data)


def eighteen(name: str) -> dict[str, object]:
    return {"green": "1-18", "course": name}


PLANS = {
    "two courses": courses(
        eighteen("Oak"),
        eighteen("Elm"),
        {"green": "Putting green"},
        dates="2027-08-09 to 2027-08-12",
        greens="Oak, Elm, Putting green",
    ),
    "54": courses(
        *(eighteen(name) for name in ("Old", "New", "A course with a name of forty letters!!")),
        dates="2027-08-09 to 2027-08-14",
    ),
    "three nines": courses(
        *({"green": "1-9", "course": f"{name} nine"} for name in ("Red", "White", "Blue")),
        {"green": "Putting green", "course": "Red nine"},
        dates="2027-08-09 to 2027-08-11",
        greens="Red nine, Putting green, Blue nine, White nine",
    ),
    "double greens": courses(
        {"green": "1-18"},
        {"green": 2, "also": 16},
        {"green": 8, "also": "10, 12"},
        {"green": "Putting green"},
        dates="2027-08-09 to 2027-08-11",
        greens="1-18, Putting green",
    ),
    "18 and a named one": three_days(),
    "nine": period(plan(work("hollow tining", "2027-08-09 to 2027-08-10"), greens="1-9")),
    "36": period(plan(work("hollow tining", "2027-08-09 to 2027-08-22"), greens="1-36")),
    "names only": period(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-10"),
            greens="Mill, Long meadow, The old quarry behind the eleventh tee",
        )
    ),
    "capitals": period(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-10"),
            greens="WEST MEADOW WEST MEADOW, MMMMMMMMMMMMMMMMMMMMMMMM",
        )
    ),
    "one": period(plan(work("hollow tining", "2027-08-09"), greens="1")),
    "hostile": period(
        plan(work("hollow tining", "2027-08-09 to 2027-08-10"), greens="<b>&\"' ]]>, 😀 зелень")
    ),
}


@pytest.mark.parametrize("sizes", [PAGE, PHONE])
@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_it_is_well_formed_and_has_a_title(told: PeriodWords, sizes: Sizes) -> None:
    drawing = drawn(told, sizes)
    root = ET.fromstring(drawing.svg)  # noqa: S314
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == "img"
    assert root[0].tag == f"{SVG}title"
    assert root[0].text == drawing.title != ""
    assert root.get("viewBox") == f"0 0 {drawing.width:g} {drawing.height:g}"
    kinds = {element.tag.removeprefix(SVG) for element in root.iter()}
    assert kinds <= {"svg", "title", "rect", "text"}


@pytest.mark.parametrize("sizes", [PAGE, PHONE])
@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_as_many_boxes_as_greens_and_all_within_the_edges(told: PeriodWords, sizes: Sizes) -> None:
    drawing = drawn(told, sizes)
    boxes = shapes(drawing, "rect")
    assert len(boxes) == len(told.words.programme.greens)
    edges = []
    for box in boxes:
        x, y, wide, tall = (float(box.get(name, "")) for name in ("x", "y", "width", "height"))
        assert x >= 0
        assert y >= 0
        assert x + wide <= drawing.width
        assert y + tall <= drawing.height
        edges.append((x, y, x + wide, y + tall))
    for index, (left, top, right, bottom) in enumerate(edges):
        for other in edges[index + 1 :]:
            apart = other[0] >= right or other[2] <= left or other[1] >= bottom or other[3] <= top
            assert apart, "two boxes overlap"


@pytest.mark.parametrize("sizes", [PAGE, PHONE])
@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_words_fit_their_boxes(told: PeriodWords, sizes: Sizes) -> None:
    """Measured in the font that the picture is set in."""
    drawing = drawn(told, sizes)
    boxes = shapes(drawing, "rect")
    for text in headings(drawing):
        size = float(text.get("font-size", ""))
        assert ImageFont.truetype(BOLD, size).getlength(text.text or "") <= drawing.width
        assert 0 < float(text.get("y", "")) < drawing.height
    for index, text in enumerate(box_texts(drawing)):
        wide = float(boxes[index // 2].get("width", ""))
        size = float(text.get("font-size", ""))
        assert ImageFont.truetype(BOLD, size).getlength(text.text or "") <= wide, text.text


@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_what_it_shows_is_said_in_words(told: PeriodWords) -> None:
    description = drawn(told).description
    for days, greens in told.words.days_of(told.period):
        assert f"{told.words.dates.days(days)}: {told.words.greens(greens)}." in description


@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_a_phone_shows_the_days_in_letters_that_can_be_read(told: PeriodWords) -> None:
    """A phone of 375 pixels leaves 328 between the margins: none of them may shrink a letter of 13."""
    drawing = drawn(told, PHONE)
    assert drawing.width <= 328
    assert min(float(text.get("font-size", "")) for text in shapes(drawing, "text")) >= 13
    assert [day for _, day in labels(drawing)] == [day for _, day in labels(drawn(told))]


def test_a_hostile_name_is_shown_as_it_is() -> None:
    names = [label for label, _ in labels(drawn(PLANS["hostile"]))]
    assert names == ["<b>&\"' ]]>", "😀 зелень"]


def test_neighbouring_days_differ_in_shade() -> None:
    boxes = shapes(drawn(three_days()), "rect")
    fills = [box.get("fill") for box in boxes]
    assert fills[0] == fills[5]
    assert fills[5] != fills[7]
    assert fills[0] == fills[14]


def test_the_strip_fills_the_greens_of_a_day() -> None:
    told = three_days()
    drawing = green_strip(told.words, ("1", "2", "Putting green"), "day-0")
    squares = shapes(drawing, "rect")
    assert len(squares) == 19
    filled = [index for index, square in enumerate(squares) if square.get("fill") != "#ffffff"]
    assert filled == [0, 1, 18]
    assert drawing.title == "On the course: greens 1 and 2, and the putting green"
    assert shapes(drawing, "title")[0].text == drawing.title
    last = squares[-1]
    assert float(last.get("x", "")) + float(last.get("width", "")) <= drawing.width


@pytest.mark.parametrize("told", PLANS.values(), ids=PLANS)
def test_every_strip_stays_within_its_edges(told: PeriodWords) -> None:
    for days, greens in told.words.days_of(told.period):
        drawing = green_strip(told.words, greens, f"day-{days[0]:%d}")
        for square in shapes(drawing, "rect"):
            assert float(square.get("x", "")) + float(square.get("width", "")) <= drawing.width
            assert float(square.get("y", "")) + float(square.get("height", "")) <= drawing.height
        assert len(shapes(drawing, "rect")) == len(told.words.programme.greens)


def test_each_course_stands_under_its_name() -> None:
    drawing = drawn(PLANS["two courses"])
    assert [text.text for text in headings(drawing)] == ["Oak course", "Elm course"]
    # 37 greens over four days: ten on the first, nine on each of the others.
    expected = [("Oak", str(n)) for n in range(1, 19)] + [("Elm", str(n)) for n in range(1, 19)]
    assert [label for label, _ in labels(drawing)] == [*(n for _, n in expected), "Putting green"]
    boxes = [float(box.get("y", "")) for box in shapes(drawing, "rect")]
    oak, elm = (float(text.get("y", "")) for text in headings(drawing))
    assert oak < min(boxes[:18]) < max(boxes[:18]) < elm < min(boxes[18:36])
    # The putting green belongs to neither and stands further off than a row does.
    rows = sorted(set(boxes[18:36]))
    assert boxes[36] - rows[-1] > rows[1] - rows[0]


def test_a_course_without_work_is_not_drawn() -> None:
    told = courses(
        eighteen("Oak"), eighteen("Elm"), dates="2027-08-09 to 2027-08-10", greens="Elm 1-9"
    )
    drawing = drawn(told)
    assert [text.text for text in headings(drawing)] == ["Elm course"]
    assert len(labels(drawing)) == 18
    assert labels(drawing)[17] == ("18", "no work")


def test_nines_keep_their_own_words() -> None:
    drawing = drawn(PLANS["three nines"])
    assert [text.text for text in headings(drawing)] == ["Red nine", "White nine", "Blue nine"]
    # The putting green of the Red nine stands with it.
    assert [label for label, _ in labels(drawing)][9] == "Putting green"


def test_a_double_green_has_one_box_and_one_square() -> None:
    told = PLANS["double greens"]
    names = [label for label, _ in labels(drawn(told))]
    # 18 holes, one green shared by two and one by three: 15 greens.
    assert names == [
        *("1", "2/16", "3", "4", "5", "6", "7", "8/10/12", "9", "11", "13", "14", "15", "17"),
        *("18", "Putting green"),
    ]
    strip = green_strip(told.words, ("2/16",), "day-0")
    filled = [s.get("fill") != "#ffffff" for s in shapes(strip, "rect")]
    assert filled.index(True) == 1
    assert sum(filled) == 1
    assert strip.title == "On the course: the double green 2/16"


@pytest.mark.parametrize(
    ("name", "rows"),
    [
        ("two courses", [18, 19]),
        ("54", [18, 18, 18]),
        ("three nines", [10, 9, 9]),
        # Numbered through, and still two rows that a person can count.
        ("36", [18, 18]),
        ("18 and a named one", [9, 10]),
        ("nine", [9]),
        ("double greens", [9, 15 - 9 + 1]),
    ],
)
def test_the_strip_has_a_row_for_each_course_and_of_one_alone_for_each_nine(
    name: str, rows: list[int]
) -> None:
    told = PLANS[name]
    squares = shapes(green_strip(told.words, ("1",), "day-0"), "rect")
    heights = [square.get("y") for square in squares]
    assert [heights.count(y) for y in dict.fromkeys(heights)] == rows


def test_squares_are_as_large_on_the_sheet_however_many_rows_there_are() -> None:
    """The sheet sets every strip 15.6 rem of 10 pt wide, which is 55 mm.

    A square stays above 2 mm, above 3.5 mm where there is one course, and none makes the line of its
    day higher than its letters do: 28 pt at 1.14, which is 11.2 mm.
    """
    single = {"nine", "18 and a named one", "one"}
    for name in ("two courses", "54", "three nines", "36", *single):
        drawing = green_strip(PLANS[name].words, (), "day-0")
        side = float(shapes(drawing, "rect")[0].get("width", "")) / drawing.width * 55
        assert side >= (3.5 if name in single else 2), name
        assert drawing.height / drawing.width * 55 <= 11.2, name


def test_the_nines_of_a_long_row_stand_apart() -> None:
    squares = shapes(green_strip(PLANS["two courses"].words, (), "day-0"), "rect")
    left = [float(square.get("x", "")) for square in squares[:18]]
    steps = [after - before for before, after in pairwise(left)]
    assert steps.index(max(steps)) == 8
    assert len(set(steps)) == 2


def test_the_plans_of_this_test_are_of_2027() -> None:
    assert PLANS["one"].period.days == (dt.date(2027, 8, 9),)
