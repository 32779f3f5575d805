from __future__ import annotations

import io
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pikepdf
import pypdfium2  # type: ignore[import-untyped,unused-ignore]
import pytest

from notices.rendering.pdf import Pdf, RenderingError, write_pdf

TEMPLATES = Path(__file__).parents[2] / "templates"

HEAD = """
<meta charset="utf-8"><title>Greens work</title>
<meta name="dcterms.created" content="2026-09-14">
<meta name="dcterms.modified" content="2026-09-14">
<style>
@font-face { font-family: "Notices Sans"; src: url("fonts/NoticesSans-Regular.ttf") }
@page { size: A4; margin: 15mm }
body { font-family: "Notices Sans"; margin: 0 }
</style>
"""
BODY = """
<h1>Greens work – 12 to 14 October 2026</h1>
<svg xmlns="http://www.w3.org/2000/svg" width="100" height="40" viewBox="0 0 100 40"
 style="display: block; margin: 0"><title>Two holes</title>
 <circle cx="20" cy="20" r="10"/><circle cx="60" cy="20" r="10"/></svg>
<p>Ask <a href="mailto:office@marlpit.example">the office</a>, or see
<a href="https://www.marlpit.example/a/rather/long/address">a page with rather a lot to say</a>.</p>
<table>
<thead><tr><th scope="col">Green</th><th>Sand</th></tr></thead>
<tbody><tr><th scope="row">7</th><td>1 t</td></tr>
<tr><th>8</th><td>2 t</td></tr>
<tr><th scope="col">late</th><td>3 t</td></tr></tbody>
</table>
<ul><li>first<ol><li>one</li><li>two</li></ol></li><li>second</li></ul>
<ol style="list-style-type: upper-roman"><li>I</li></ol>
<ul style="list-style: none"><li>plain</li></ul>
<dl><dt>coring</dt><dd>making holes</dd></dl>
<div style="position: absolute; top: 200mm"><ol style="list-style-type: lower-alpha"><li>placed</li></ol></div>
<div style="columns: 2"><ul style="list-style-type: square"><li>in columns</li><li>too</li></ul></div>
"""


def page(body: str = BODY, head: str = HEAD) -> str:
    return f'<!doctype html><html lang="en-GB"><head>{head}</head><body>{body}</body></html>'


def elements(node: Any) -> Iterator[Any]:
    if isinstance(node, pikepdf.Array):
        for kid in list(node):
            yield from elements(kid)
    elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
        yield node
        if "/K" in node:
            yield from elements(node["/K"])


def tagged(pdf: pikepdf.Pdf, tag: str) -> list[Any]:
    return [e for e in elements(pdf.Root["/StructTreeRoot"]["/K"]) if e["/S"] == f"/{tag}"]


@pytest.fixture(scope="module")
def sample() -> Pdf:
    return write_pdf(page(), base=TEMPLATES)


@pytest.fixture
def opened(sample: Pdf) -> Iterator[pikepdf.Pdf]:
    with pikepdf.open(io.BytesIO(sample.content)) as pdf:
        yield pdf


def test_it_is_a_tagged_pdf_ua_with_title_language_and_dates(opened: pikepdf.Pdf) -> None:
    assert opened.check_pdf_syntax() == []
    assert opened.Root["/Lang"] == "en-GB"
    assert bool(opened.Root["/MarkInfo"]["/Marked"])
    assert opened.docinfo["/Title"] == "Greens work"
    assert str(opened.docinfo["/CreationDate"]).startswith("D:20260914")
    with opened.open_metadata(set_pikepdf_as_editor=False) as metadata:
        assert metadata["pdfuaid:part"] == "1"


def test_pages_are_counted() -> None:
    body = "<h1>Title</h1>" + '<p style="break-before: page">more</p>' * 2
    made = write_pdf(page(body), base=TEMPLATES)
    with pikepdf.open(io.BytesIO(made.content)) as pdf:
        assert made.pages == len(pdf.pages) == 3


def test_the_text_can_be_read(sample: Pdf) -> None:
    document = pypdfium2.PdfDocument(sample.content)
    text = document[0].get_textpage().get_text_bounded()
    document.close()
    assert "Greens work – 12 to 14 October 2026" in text


def test_header_cells_say_what_they_head(opened: pikepdf.Pdf) -> None:
    scopes = [str(cell["/A"]["/Scope"]) for cell in tagged(opened, "TH")]
    # Stated, by its place in the head, stated, by its place in the body, stated.
    assert scopes == ["/Column", "/Column", "/Row", "/Row", "/Column"]


def test_lists_say_how_they_are_numbered(opened: pikepdf.Pdf) -> None:
    # A list over two columns is two lists to WeasyPrint.
    numbering = sorted(str(entry["/A"]["/ListNumbering"]) for entry in tagged(opened, "L"))
    assert numbering == sorted(
        ["/Disc", "/Decimal", "/UpperRoman", "/None", "/None", "/LowerAlpha", "/Square", "/Square"]
    )
    outer = tagged(opened, "L")[0]
    assert outer["/A"]["/ListNumbering"] == "/Disc"
    inner = [e for e in elements(outer["/K"]) if e["/S"] == "/L"]
    assert [str(entry["/A"]["/ListNumbering"]) for entry in inner] == ["/Decimal"]


def test_a_figure_lies_where_it_is_drawn(opened: pikepdf.Pdf, sample: Pdf) -> None:
    (figure,) = tagged(opened, "Figure")
    assert figure["/Alt"] == "Two holes"
    left, bottom, right, top = (float(corner) for corner in figure["/A"]["/BBox"])
    assert right - left == pytest.approx(75, abs=0.02)  # 100 px
    assert top - bottom == pytest.approx(30, abs=0.02)
    assert left == pytest.approx(15 / 25.4 * 72, abs=0.02)
    # The middle of the left circle is black.
    document = pypdfium2.PdfDocument(sample.content)
    image = document[0].render(scale=1).to_pil().convert("L")
    height = document[0].get_height()
    document.close()
    assert image.getpixel((round(left + 15), round(height - bottom - 15))) == 0


def test_links_are_printed(opened: pikepdf.Pdf) -> None:
    flags = [int(link["/F"]) for link in opened.pages[0].obj["/Annots"]]
    assert len(flags) >= 2
    assert all(flag & 4 for flag in flags)


def test_the_same_html_gives_the_same_bytes_in_another_process(sample: Pdf) -> None:
    code = (
        "import sys; from pathlib import Path; from notices.rendering.pdf import write_pdf;"
        "sys.stdout.buffer.write(write_pdf(sys.stdin.read(), base=Path(sys.argv[1])).content)"
    )
    for seed in ("1", "2"):
        other = subprocess.run(
            [sys.executable, "-X", "utf8", "-c", code, os.path.relpath(TEMPLATES)],
            input=page().encode(),
            capture_output=True,
            check=True,
            env=os.environ | {"PYTHONHASHSEED": seed, "TZ": f"UTC-{seed}"},
        )
        assert other.stdout == sample.content


def test_no_path_of_this_computer_is_in_it(sample: Pdf) -> None:
    with pikepdf.open(io.BytesIO(sample.content)) as pdf:
        plain = io.BytesIO()
        pdf.save(
            plain,
            compress_streams=False,
            stream_decode_level=pikepdf.StreamDecodeLevel.all,
            object_stream_mode=pikepdf.ObjectStreamMode.disable,
        )
    assert str(TEMPLATES).encode() not in plain.getvalue()
    assert b"file:" not in plain.getvalue()


@pytest.mark.parametrize(
    ("body", "head", "words"),
    [
        ("<h1>x</h1>", HEAD + "<style>p { colour: red }</style>", "colour"),
        ('<h1>x</h1><img src="no.png" alt="no">', HEAD, "no.png"),
        ('<h1>x</h1><img src="https://marlpit.example/x.png" alt="no">', HEAD, "https://marlpit"),
        (
            "<h1>x</h1>",
            HEAD + '<link rel="stylesheet" href="http://marlpit.example/a.css">',
            "http:",
        ),
        (
            "<h1>x</h1>",
            HEAD.replace("fonts/NoticesSans-Regular", "fonts/NoSuch"),
            "NoSuch",
        ),
        ('<h1>x</h1><a href="#nowhere">there</a>', HEAD, "nowhere"),
        ('<h1>x</h1><a href="course-page.html">there</a>', HEAD, "course-page.html"),
    ],
    ids=["css", "picture", "remote", "remote css", "font", "anchor", "local link"],
)
def test_whatever_weasyprint_complains_of_is_an_error(body: str, head: str, words: str) -> None:
    with pytest.raises(RenderingError) as caught:
        write_pdf(page(body, head), base=TEMPLATES)
    assert any(words in warning for warning in caught.value.warnings)
    assert words in str(caught.value)


def test_an_error_leaves_nothing_behind_for_the_next_page(sample: Pdf) -> None:
    with pytest.raises(RenderingError):
        write_pdf(page('<h1>x</h1><img src="no.png" alt="no">'), base=TEMPLATES)
    assert write_pdf(page(), base=TEMPLATES) == sample


def test_a_page_is_not_set_in_fonts_that_another_one_brought(sample: Pdf) -> None:
    bold = '@font-face { font-family: "Notices Sans"; font-weight: bold; src: url("fonts/%s") }'
    head = HEAD.replace("<style>", f"<style>{bold % 'NoticesSans-Bold.ttf'}")
    assert write_pdf(page(head=head), base=TEMPLATES) != sample  # its heading is bold
    assert write_pdf(page(), base=TEMPLATES) == sample


def test_weasyprint_is_not_loaded_before_it_is_needed() -> None:
    code = "import sys, notices.rendering.pdf; sys.exit('weasyprint' in sys.modules)"
    subprocess.run([sys.executable, "-c", code], check=True)
