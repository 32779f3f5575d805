"""A club's logo stands in the head of all that golfers and the committee see, once in each."""

from __future__ import annotations

import base64
import io
import shutil
from dataclasses import replace
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from PIL import Image
from pypdfium2.raw import FPDF_PAGEOBJ_IMAGE

import notices
from notices.convert.between import convert_plan
from notices.documents.model import Letter
from notices.rendering.said import said_by
from tests.documents.building import EXAMPLES, BuiltPack, of
from tests.documents.reading import Mail, Page

ALONE = "withy-hollow"
LOGO = EXAMPLES / ALONE / "logo.png"


def of_picture(source: str) -> tuple[int, int]:
    return Image.open(io.BytesIO(base64.b64decode(source.partition(",")[2]))).size


def pictures_on_first_page(pdf: bytes) -> int:
    document = pypdfium2.PdfDocument(pdf)
    try:
        return len(list(document[0].get_objects([FPDF_PAGEOBJ_IMAGE])))
    finally:
        document.close()


@of(ALONE)
@pytest.mark.parametrize(
    "name", ["index", "course-page", "visitor-notice", "questions-and-answers"]
)
def test_it_stands_on_every_page(name: str, pack: BuiltPack) -> None:
    """It is beside the name of the club, and so has no words of its own."""
    first = Page(pack.text(f"{name}.html")).images[0]
    assert first["alt"] == ""
    # The logo is nearly square: it fills the height, 48 of 56 pixels, at two for one of the screen.
    width, height = of_picture(first["src"])
    assert height == 112
    assert 96 < width <= 120
    assert first["height"] == "56"


@of(ALONE)
def test_it_travels_in_every_message_and_in_no_bare_one(pack: BuiltPack) -> None:
    messages = [name for name in pack.files if name.endswith(".eml")]
    assert len(messages) > 5
    for name in messages:
        mail = Mail.read(pack.files[name])
        first = Page(mail.html).images[0]
        assert (first["alt"], first["height"]) == ("", "44")
        content = mail.images[first["src"].removeprefix("cid:")]
        assert Image.open(io.BytesIO(content)).height == 88
        # A logo of a few colours: a twentieth of what a message may weigh at most.
        assert len(content) < 3_000
        bare = pack.text(name.replace(".eml", ".html"))
        assert not Page(bare).images


@of(ALONE)
@pytest.mark.parametrize("name", ["board-notice-a4", "tee-sign", "visitor-notice"])
def test_it_stands_on_the_first_page_on_paper(name: str, pack: BuiltPack) -> None:
    assert pictures_on_first_page(pack.files[f"{name}.pdf"]) == 1


@of(ALONE)
def test_whoever_hears_a_sheet_hears_the_name_once(pack: BuiltPack) -> None:
    """The logo is behind an empty box, for words beside it name the club."""

    def spoken(name: str) -> set[str]:
        with pikepdf.open(io.BytesIO(pack.files[f"{name}.pdf"])) as pdf:
            return {
                str(entry["/Alt"])
                for entry in pdf.objects
                if isinstance(entry, pikepdf.Dictionary) and "/Alt" in entry
            }

    for name in ("tee-sign", "board-notice-a4"):
        assert "Withy Hollow Golf Club" not in spoken(name)


@of(ALONE)
def test_staff_know_whose_sheet_it_is(pack: BuiltPack) -> None:
    sheets = {document.name: document for document in pack.documents.documents}
    assert sheets["starter-sheet"].logo  # the sheet could show it, and leaves the room to the day
    assert pictures_on_first_page(pack.files["starter-sheet.pdf"]) == 0


@pytest.mark.parametrize("name", ["other.xlsx", "other.yaml"])
def test_it_lies_beside_a_plan_that_is_converted(name: str, tmp_path: Path) -> None:
    for file in ("plan.yaml", "logo.png"):
        shutil.copy(EXAMPLES / ALONE / file, tmp_path)
    convert_plan(tmp_path / "plan.yaml", tmp_path / name)
    assert (tmp_path / "other-logo.png").is_file()
    plans = [notices.load_plan(path).plan for path in (tmp_path / "plan.yaml", tmp_path / name)]
    assert plans[0].club.logo
    assert plans[0].club.logo == plans[1].club.logo


@of(ALONE)
def test_whoever_has_the_message_gets_a_new_one_with_a_new_logo(pack: BuiltPack) -> None:
    letter = next(item for item in pack.documents.items if isinstance(item, Letter))
    letter = replace(letter, calendar="")
    bare = replace(letter, document=replace(letter.document, logo=""))
    name = f"{letter.document.name}.eml"
    assert said_by([letter])[name] != said_by([bare])[name]
