"""Make the pictures of the README and of the example: pages of a built pack, as small PNGs.

Run by hand when the documents look different:

    python .ci/make_pictures.py PACK examples/withy-hollow

Sheets are drawn by PDFium, pages and emails by Chromium, which must be on the path.
"""

from __future__ import annotations

import base64
import email
import email.policy
import subprocess
import sys
import tempfile
from pathlib import Path

import pypdfium2 as pdfium
from PIL import Image

SHEETS = {
    "board-notice": ("board-notice-a4", 0, 720),
    "committee-briefing": ("committee-briefing", 0, 560),
    "starter-sheet": ("starter-sheet", 0, 560),
    "team-sheet": ("team-sheet", 1, 560),
    "tee-sign": ("tee-sign", 0, 560),
}
"""By the name of the picture: the sheet, its page from nought and the width in pixels."""

PHONE, SCREEN = 375, 900
"""Width of a page in CSS pixels."""

COLOURS = (32, 24, 16, 12, 8)
LARGEST = 60_000
"""Bytes of a picture: the README of a small project should not be heavy."""


def sheet(pdf: Path, number: int, width: int) -> Image.Image:
    """Draw one page of a sheet."""
    page = pdfium.PdfDocument(pdf)[number]
    return page.render(scale=width / page.get_width()).to_pil()


def shown_mail(eml: Path) -> str:
    """Return the page of a message with its pictures in it, as a mail program shows it."""
    message = email.message_from_bytes(eml.read_bytes(), policy=email.policy.default)
    html, pictures = "", {}
    for part in message.walk():
        if part.get_content_type() == "text/html":
            html = part.get_content()
        elif part.get_content_maintype() == "image":
            data = base64.b64encode(part.get_content()).decode("ascii")
            name = part["Content-ID"].strip("<>")
            pictures[f"cid:{name}"] = f"data:{part.get_content_type()};base64,{data}"
    for name, data in pictures.items():
        html = html.replace(name, data)
    return html


def page(html: str, width: int, height: int) -> Image.Image:
    """Draw the top of a page as wide as a screen; Chromium itself is never narrower than 500."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        (folder / "page.html").write_text(html, "utf-8")
        frame = f'<iframe src="page.html" width="{width}" height="{height}"></iframe>'
        style = "<style>body { margin: 0 } iframe { border: 0; display: block }</style>"
        (folder / "frame.html").write_text(f"<!doctype html>{style}{frame}", "utf-8")
        subprocess.run(
            [
                *("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"),
                f"--window-size={max(width, 600)},{height + 200}",
                f"--screenshot={folder / 'page.png'}",
                (folder / "frame.html").as_uri(),
            ],
            check=True,
            stderr=subprocess.DEVNULL,
        )
        with Image.open(folder / "page.png") as picture:
            return picture.convert("RGB").crop((0, 0, width, height))


def save(image: Image.Image, target: Path) -> None:
    """Save a picture in as many colours as the size of the file allows."""
    for colours in COLOURS:
        image.convert("RGB").quantize(colours).save(target, optimize=True)
        if target.stat().st_size <= LARGEST:
            break
    print(target, target.stat().st_size, "bytes")


def main() -> None:
    """Draw the documents of a pack into a folder."""
    pack, folder = (Path(argument) for argument in sys.argv[1:3])
    for name, (source, number, width) in SHEETS.items():
        pdf = pack / f"{source}.pdf"
        if pdf.exists():
            save(sheet(pdf, number, width), folder / f"{name}.png")
    save(page(shown_mail(pack / "member-email.eml"), PHONE, 760), folder / "member-email.png")
    course_page = (pack / "course-page.html").read_text("utf-8")
    save(page(course_page, SCREEN, 1100), folder / "course-page.png")


if __name__ == "__main__":
    main()
