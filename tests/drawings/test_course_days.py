"""The course day by day: each green's days, the events below them, and every letter in its place."""

from __future__ import annotations

import datetime as dt
import re
import xml.etree.ElementTree as ET

import pytest

from notices.drawings.course_days import LETTERS, WORDS, course_day_by_day
from notices.drawings.model import Drawing
from notices.drawings.palette import LOAM, PAPER
from notices.drawings.sizes import PAGE, PHONE, SHEET, Sizes
from notices.drawings.svg import Rect
from notices.programme.day_by_day import GreenDay, course_days
from tests.drawings.clubs import NAMES, words_of
from tests.drawings.metrics import SVG, assert_well_set, faults, texts_in
from tests.wording.small_plans import plan, words, work


def said(drawing: Drawing) -> list[str]:
    return [placed.text.replace("\u00a0", " ") for placed in texts_in(drawing.svg)]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("sizes", [PAGE, SHEET, PHONE], ids=["page", "sheet", "phone"])
def test_every_letter_is_in_its_place(name: str, sizes: Sizes) -> None:
    drawings = course_day_by_day(words_of(name), sizes)
    assert drawings
    for drawing in drawings:
        assert drawing.width == sizes.width
        assert faults(drawing.svg) == []
    if sizes is PAGE:
        assert_well_set(drawings[-1].svg)
    assert len({drawing.name for drawing in drawings}) == len(drawings)


@pytest.mark.parametrize("name", NAMES)
def test_the_drawings_cover_every_day_once(name: str) -> None:
    """Each single day stands in the head of one drawing, and each quiet time as so many days."""
    told = words_of(name)
    stacks = course_days(told.programme)
    heads = [text for d in course_day_by_day(told) for text in said(d)]
    assert heads.count("days") == sum(len(stack) > 1 for stack in stacks)
    numbers = [text for text in heads if re.fullmatch(r"\d+", text)]
    days = [str(s[0].date.day) if len(s) == 1 else str(len(s)) for s in stacks]
    assert not [number for number in days if numbers.count(number) < days.count(number)]


def test_two_days_kept_free_side_by_side_are_reserve_days() -> None:
    kept = work("hollow tining", "2027-08-10", reserve_dates="2027-08-11 to 2027-08-12")
    (drawing,) = course_day_by_day(words(plan(kept)))
    assert "Reserve days" in said(drawing)
    assert "Reserve days: Wednesday 11 and Thursday 12 August." in drawing.description


def test_a_day_of_work_and_what_follows() -> None:
    told = words(
        plan(
            work(
                "hollow tining",
                "2027-08-09 to 2027-08-10",
                greens={"2027-08-09": "1-4", "2027-08-10": "5-9"},
                reserve_dates="2027-08-12",
            ),
            greens="1-9, Putting green",
            fixtures=[
                {"name": "Summer Bowl", "date": "2027-08-14", "kind": "competition"},
                {"name": "Old Millers", "date": "2027-08-15", "kind": "visitors"},
            ],
            closures=[{"what": "practice ground", "dates": "2027-08-10"}],
        )
    )
    (drawing,) = course_day_by_day(told)
    texts = said(drawing)
    assert {"1 to 4", "5 to 9", "Putting green", "August 2027"} <= set(texts)
    assert texts.count("closed") == 3  # one bar for each group, and the key
    assert "Summer Bowl (competition)" in texts
    assert "Old Millers (visitors)" in texts
    assert "Reserve day" in texts
    assert "Practice ground: closed" in texts
    for fact in (
        "Greens 1 to 4: closed on Monday 9 August; open and recovering from Tuesday 10",
        "The putting green: open throughout.",
        "Summer Bowl (competition): Saturday 14 August.",
        "Reserve day: Thursday 12 August.",
        "Practice ground: closed, Tuesday 10 August.",
    ):
        assert fact in drawing.description
    assert "<title>The course day by day, Mon 9 Aug to " in drawing.svg


@pytest.mark.parametrize("sizes", [PAGE, SHEET, PHONE], ids=["page", "sheet", "phone"])
def test_below_the_last_drawing_stands_how_to_read_them(sizes: Sizes) -> None:
    *others, last = course_day_by_day(words_of("withy-hollow"), sizes)
    assert last.caption == "Each row is a group of greens, and each column a day."
    assert "weekend" in said(last)
    assert others
    for drawing in others:
        assert not drawing.caption
        assert "weekend" not in said(drawing)


def test_a_wider_sheet_holds_more_days() -> None:
    told = words_of("marlpit-common")
    assert len(course_day_by_day(told, SHEET)) < len(course_day_by_day(told, PAGE))


def test_what_golfers_go_without_has_a_lane_of_its_own() -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-10"),
            greens="1-9",
            restrictions=[
                {"what": "buggies", "dates": "2027-08-09 to 2027-08-11", "except": "a permit"},
                {"what": "parking by the shed", "dates": "2027-08-05 to 2028-03-31"},
            ],
        )
    )
    drawings = course_day_by_day(told)
    texts = [text for drawing in drawings for text in said(drawing)]
    assert texts.count("No buggies") == 1
    # The drawing ends when the greens are healed, and says how long the rest goes on.
    (shed,) = (text for text in texts if text.startswith("No parking by the shed"))
    assert shed == "No parking by the shed, until Fri 31 Mar 2028"
    assert "No buggies from Monday 9 to Wednesday 11 August (except a permit)." in (
        drawings[0].description
    )
    for drawing in drawings:
        assert_well_set(drawing.svg)


def test_the_key_explains_every_state_that_is_drawn() -> None:
    """Each letter that stands in any of the drawings, below the last of them."""
    drawings = course_day_by_day(words_of("withy-hollow"))
    drawn = {text for drawing in drawings for text in said(drawing)}
    for state, letter in LETTERS.items():
        assert letter not in drawn or WORDS[state] in said(drawings[-1])
    assert GreenDay.OPEN not in LETTERS


def boxes(drawing: Drawing, **looks: str) -> list[Rect]:
    """The boxes of a drawing that look like this."""
    return [
        Rect(*(float(each.attrib[key]) for key in ("x", "y", "width", "height")))
        for each in ET.fromstring(drawing.svg).iter(f"{SVG}rect")  # noqa: S314, it was drawn here
        if all(each.get(key) == value for key, value in looks.items())
    ]


@pytest.mark.parametrize("name", ["marlpit-common", "quillerby", "withy-hollow"])
def test_beside_the_word_on_a_temporary_green_its_hatching_shows(name: str) -> None:
    """On both sides, or it would look like a reserve day, which is an empty box."""
    plates = 0
    for drawing in course_day_by_day(words_of(name), SHEET):
        for bar in boxes(drawing, stroke=LOAM):
            for plate in boxes(drawing, fill=PAPER):
                if plate.y == bar.y + 1 and bar.x <= plate.x < bar.right:
                    assert plate.x - bar.x >= 5
                    assert bar.right - plate.right >= 5
                    plates += 1
    assert plates


def test_letters_tell_the_whole_day_from_a_part_of_it() -> None:
    """A capital for the whole day; every state but open has a letter, and none two."""
    assert set(LETTERS) == set(GreenDay) - {GreenDay.OPEN}
    assert len(set(LETTERS.values())) == len(LETTERS)
    for part, whole in (
        (GreenDay.PART_CLOSED, GreenDay.CLOSED),
        (GreenDay.PART_TEMPORARY, GreenDay.TEMPORARY),
    ):
        assert LETTERS[part].upper() == LETTERS[whole]


def test_long_names_break_nothing() -> None:
    long = "The Honourable Company of Extraordinarily Long-Winded Autumn Foursomes Society"
    told = words(
        plan(
            work(
                "hollow tining",
                "2027-08-09 to 2027-08-10",
                greens="1-9, The Practice Green Behind the Greenkeepers’ Sheds",
            ),
            greens="1-9, The Practice Green Behind the Greenkeepers’ Sheds",
            fixtures=[
                {"name": long, "date": f"2027-08-{day}", "kind": "society"}
                for day in (11, 12, 13, 14)
            ],
            closures=[{"what": f"{long} car park", "dates": "2027-08-10 to 2027-08-12"}],
        )
    )
    for sizes in (PAGE, PHONE):
        for drawing in course_day_by_day(told, sizes):
            assert_well_set(drawing.svg)
            assert long in drawing.description


def test_american_words_and_dates() -> None:
    (drawing,) = course_day_by_day(words_of("live-oak"))
    assert "Rain dates" in said(drawing)  # 15 and 16 July
    assert "closed on Monday, July 12" in drawing.description


def test_a_second_season_names_its_year() -> None:
    told = words(
        plan(work("hollow tining", "2027-11-15"), greens="1-9"), issued=dt.date(2027, 10, 1)
    )
    assert any(re.match(r"to \d+ \w+ 2028", text) for text in said(course_day_by_day(told)[-1]))


def test_the_same_programme_gives_the_same_drawings() -> None:
    told = words_of("marlpit-common")
    assert course_day_by_day(told) == course_day_by_day(told)
