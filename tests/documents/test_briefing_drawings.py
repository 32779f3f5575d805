"""The drawings of a briefing as they are printed: all of them, in their size, and to be read."""

from __future__ import annotations

import ctypes
import io
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from typing import Any

import pikepdf
import pypdfium2  # type: ignore[import-untyped,unused-ignore]
import pypdfium2.raw as pdfium  # type: ignore[import-untyped,unused-ignore]
import pytest

from notices.documents.committee_briefing import (
    BELOW,
    DRAWN,
    FROM_ABOVE,
    PAGES,
    PATCH_MM,
    SAID_IN_TABLES,
    committee_briefing,
)
from notices.documents.model import Document
from notices.drawings.palette import LAWN
from notices.letters import printable
from notices.units import MM_PER_INCH
from notices.wording.blocks import Picture
from tests.documents.building import BuiltPack, of
from tests.documents.reading import Sheet, tight
from tests.drawings.metrics import SVG, texts_in

NAME = "committee-briefing.pdf"
MM_PER_POINT = MM_PER_INCH / 72

SMALLEST = 7.0
"""Points: below it nobody reads a letter on paper without effort."""


def missing(document: Document, content: bytes) -> set[str]:
    """Names of the sections whose drawings are not all on the sheet, to the last letter."""
    read = tight(Sheet.read(content).text)
    return {
        section.name
        for section in document.sections
        for block in section.blocks
        if isinstance(block, Picture)
        and not all(
            tight(printable(t.text)) in read for t in texts_in(document.drawing(block.name).svg)
        )
    }


def test_every_drawing_is_told_in_full_to_whoever_hears_the_briefing(pack: BuiltPack) -> None:
    """No fact stands in a drawing alone (PDF/UA-1 asks for a text, ISO 14289-1, 7.3)."""
    document = committee_briefing(pack.programme)
    with pikepdf.open(io.BytesIO(pack.files[NAME])) as pdf:
        told = {
            tight(str(entry["/Alt"]))
            for entry in pdf.objects
            if isinstance(entry, pikepdf.Dictionary) and entry.get("/S") == "/Figure"
        }
    printed = {tight(printable(drawing.told)) for drawing in document.drawings}
    assert told
    assert told <= printed
    assert all(tight(drawing.description) in tight(drawing.told) for drawing in document.drawings)


def test_every_drawing_of_an_example_is_printed(pack: BuiltPack) -> None:
    document = committee_briefing(pack.programme)
    named = {
        block.name for s in document.sections for block in s.blocks if isinstance(block, Picture)
    }
    assert any(name.startswith("course-day-by-day") for name in named)
    assert (FROM_ABOVE in named) is bool(pack.programme.works)
    assert missing(document, pack.files[NAME]) == set()
    assert Sheet.read(pack.files[NAME]).pages <= PAGES


def test_of_the_worst_plan_only_those_go_that_stand_beside_a_table(
    hostile_pack: BuiltPack,
) -> None:
    gone = missing(committee_briefing(hostile_pack.programme), hostile_pack.files[NAME])
    assert gone <= SAID_IN_TABLES < DRAWN
    assert Sheet.read(hostile_pack.files[NAME]).pages <= PAGES


def lawns(content: bytes) -> Iterator[tuple[float, float]]:
    """Width and height of all that has the colour of a lawn [mm]."""
    document: Any = pypdfium2.PdfDocument(content)
    channels = [ctypes.c_uint() for _ in "rgba"]
    try:
        for page in document:
            for drawn in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH], max_depth=9):
                pdfium.FPDFPageObj_GetFillColor(drawn, *channels)
                if bytes(channel.value for channel in channels[:3]).hex() == LAWN.strip("#"):
                    left, bottom, right, top = drawn.get_bounds()
                    yield (right - left) * MM_PER_POINT, (top - bottom) * MM_PER_POINT
    finally:
        document.close()


PX_MM = 25.4 / 96


def drawn_sizes(content: bytes) -> Iterator[tuple[float, float]]:
    """Width and height of all that is drawn [mm]."""
    document: Any = pypdfium2.PdfDocument(content)
    try:
        for page in document:
            for drawn in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH], max_depth=9):
                left, bottom, right, top = drawn.get_bounds()
                yield (right - left) * MM_PER_POINT, (top - bottom) * MM_PER_POINT
    finally:
        document.close()


def test_the_patch_of_green_is_as_large_as_it_says(working_pack: BuiltPack) -> None:
    """Measured on the page itself; 10 cm, or for those who count in inches four."""
    side = PATCH_MM[working_pack.programme.club.units]
    assert side in (100, 4 * 25.4)
    # The key has small pieces of the same green.
    patch = max(lawns(working_pack.files[NAME]))
    assert patch == pytest.approx((side, side), abs=0.05)
    percent = "100%" if working_pack.programme.club.language == "en-US" else "100 %"
    said = f"In true size when printed at {percent}."
    assert said in Sheet.read(working_pack.files[NAME]).text


def test_a_line_below_it_is_as_long_as_it_says(working_pack: BuiltPack) -> None:
    """So that a reader sees with a ruler whether the printer kept the size."""
    metric = working_pack.programme.club.units == "metric"
    long, said = (100, "10 cm") if metric else (4 * 25.4, "4 inches")
    assert f"This line is then {said} long." in Sheet.read(working_pack.files[NAME]).text
    # As wide as its stroke is thick more than it is long, and as high as its ends.
    assert any(
        (wide, high) == pytest.approx((long + PX_MM, 11 * PX_MM), abs=0.3)
        for wide, high in drawn_sizes(working_pack.files[NAME])
    )


def sizes_of_letters(content: bytes) -> Mapping[str, float]:
    """The least size in which each letter is printed [points]."""
    document: Any = pypdfium2.PdfDocument(content)
    least: dict[str, float] = {}
    try:
        for page in document:
            words = page.get_textpage()
            moved = pdfium.FS_MATRIX()
            for place, sign in enumerate(words.get_text_range()[: words.count_chars()]):
                if sign.isalnum() and not pdfium.FPDFText_IsGenerated(words, place):
                    pdfium.FPDFText_GetMatrix(words, place, ctypes.byref(moved))
                    size = pdfium.FPDFText_GetFontSize(words, place) * abs(moved.d)
                    least[sign] = min(size, least.get(sign, size))
    finally:
        document.close()
    return least


def test_no_letter_is_too_small_to_be_read(pack: BuiltPack) -> None:
    assert min(sizes_of_letters(pack.files[NAME]).values()) >= SMALLEST


READ_EASILY = 9.0
"""Points: what is said in a section is read by those who decide, across a table."""


def printed_sizes(content: bytes, words: str) -> list[float]:
    """The sizes in which words are printed, wherever they stand [points]."""
    document: Any = pypdfium2.PdfDocument(content)
    moved, found = pdfium.FS_MATRIX(), []
    try:
        for page in document:
            text = page.get_textpage()
            told = text.get_text_range()
            for place in (match.start() for match in re.finditer(words, told)):
                pdfium.FPDFText_GetMatrix(text, place, ctypes.byref(moved))
                found.append(pdfium.FPDFText_GetFontSize(text, place) * abs(moved.d))
    finally:
        document.close()
    return found


def test_every_letter_in_a_section_is_easily_read(working_pack: BuiltPack) -> None:
    """Its heads are printed so many times as large as they were drawn, and all else with them."""
    drawing = committee_briefing(working_pack.programme).drawing(BELOW)
    drawn = texts_in(drawing.svg)
    head = next(text for text in drawn if text.text == "Before")
    (printed,) = printed_sizes(working_pack.files[NAME], r"Before\s+After")
    assert min(text.size for text in drawn) * printed / head.size >= READ_EASILY


@of("withy-hollow", "alderfleet-park")
def test_the_patch_of_green_shows_how_far_apart_holes_are(pack: BuiltPack) -> None:
    """Holes 18 mm wide, 75 mm apart: two of them need 93 mm, and the patch has 100."""
    drawing = committee_briefing(pack.programme).drawing(FROM_ABOVE)
    (holes,) = (
        [shape for shape in group if shape.get("class") == "opening"]
        for group in ET.fromstring(drawing.svg).iter(f"{SVG}g")  # noqa: S314, it was drawn here
        if "deep" in (group.get("data-work") or "")
    )
    assert len(holes) == 2 * 2


def empty_ends(content: bytes) -> list[float]:
    """How much of each page but the last is left empty at its end, above the foot."""
    document: Any = pypdfium2.PdfDocument(content)
    found = []
    try:
        for page in [*document][:-1]:
            grey = page.render(scale=1).to_pil().convert("L")
            # The foot stands in the last 19 millimetres of a page of 297.
            body = round(grey.height * (1 - 19 / 297))
            lowest = max(
                y for y in range(body) if grey.crop((0, y, grey.width, y + 1)).getextrema()[0] < 200
            )
            found.append((body - lowest) / grey.height)
    finally:
        document.close()
    return found


def test_no_page_is_left_half_empty(pack: BuiltPack) -> None:
    assert max(empty_ends(pack.files[NAME]), default=0) < 0.4


def test_it_says_at_the_same_place_in_each_briefing_when_the_greens_are_good(
    working_pack: BuiltPack,
) -> None:
    """Other drawings may stand later, where they fill a page better."""
    headings = [s.heading for s in committee_briefing(working_pack.programme).sections if s.heading]
    place = headings.index("How the greens come back")
    assert headings[place - 1] == "What we do"
    read = tight(Sheet.read(working_pack.files[NAME]).text)
    assert tight(f"{place + 1}. {headings[place]}") in read


def test_a_caption_stays_below_its_drawing(working_pack: BuiltPack) -> None:
    """Each page that shows a caption shows the first letters of its drawing, too."""
    document = committee_briefing(working_pack.programme)
    pages = [tight(text) for text in Sheet.read(working_pack.files[NAME]).texts]
    captions = 0
    for section in document.sections:
        for block in section.blocks:
            if isinstance(block, Picture) and (caption := document.drawing(block.name).caption):
                first = next(iter(texts_in(document.drawing(block.name).svg))).text
                assert any(tight(first) in page and tight(caption) in page for page in pages)
                captions += 1
    assert captions >= 3
