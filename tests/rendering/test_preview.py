"""The front page shows a small picture of every file of which there is something to see."""

from __future__ import annotations

import base64
import io
from xml.etree import ElementTree as ET

from PIL import Image

from notices.documents.model import Sheet
from notices.rendering.files import RenderedFile
from notices.rendering.preview import WIDTH, previews
from tests.documents.building import BuiltPack, of
from tests.documents.reading import Page


def test_every_document_has_one_picture_with_its_files_beside_it(pack: BuiltPack) -> None:
    files = {name: RenderedFile(name, "", content) for name, content in pack.files.items()}
    shown = previews(tuple(pack.documents.items), files)
    records = {"index.html", "manifest.json", *pack.documents.records}
    documents = {name.rpartition(".")[0] for name in pack.files.keys() - records}
    assert shown.keys() == documents
    page = Page(pack.text("index.html"))
    after_the_logo = page.images[1:] if pack.programme.club.logo else page.images
    in_order = dict.fromkeys(
        name.rpartition(".")[0] for entry in pack.documents.entries for name in entry.files
    )
    assert [image["src"] for image in after_the_logo] == [shown[name] for name in in_order]


@of("tansy-down")
def test_a_sheet_is_shown_as_it_is_printed(pack: BuiltPack) -> None:
    """A4 is 210 by 297 mm; the draft of the sheet has ink in it and is mostly paper."""
    name = "board-notice-a4"
    files = {f"{name}.pdf": RenderedFile(f"{name}.pdf", "", pack.files[f"{name}.pdf"])}
    items = tuple(
        item
        for item in pack.documents.items
        if isinstance(item, Sheet) and item.document.name == name
    )
    shown = previews(items, files)[name]
    picture = Image.open(io.BytesIO(base64.b64decode(shown.partition(",")[2])))
    assert picture.width == WIDTH
    assert abs(picture.height - WIDTH * 297 / 210) <= 1
    shades = picture.convert("L").histogram()
    assert sum(shades[200:]) > sum(shades) / 2
    assert sum(shades[:100]) > 100


@of("alderfleet-park")
def test_a_sketch_lies_within_its_sheet(pack: BuiltPack) -> None:
    shown = previews(tuple(i for i in pack.documents.items if not isinstance(i, Sheet)), {})
    assert shown
    for source in shown.values():
        drawing = ET.fromstring(base64.b64decode(source.partition(",")[2]))  # noqa: S314, our own
        width, height = (float(drawing.attrib[name]) for name in ("width", "height"))
        for box in drawing.iter("{http://www.w3.org/2000/svg}rect"):
            x, y = float(box.get("x", 0)), float(box.get("y", 0))
            assert x + float(box.attrib["width"]) <= width
            assert y + float(box.attrib["height"]) <= height
