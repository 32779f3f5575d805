"""Small pictures of what is in a pack, for its front page."""

from __future__ import annotations

import base64

from notices.documents.model import (
    CalendarDocument,
    Document,
    Item,
    Letter,
    Page,
    PlainText,
    Sheet,
    file_names,
)
from notices.drawings.miniature import calendar_miniature, miniature
from notices.rendering.files import RenderedFile
from notices.rendering.png import in_few_colours

WIDTH = 128
"""Pixels; it is shown at half of that, for fine screens."""


def previews(items: tuple[Item, ...], files: dict[str, RenderedFile]) -> dict[str, str]:
    """Return the address of a picture for each document, by its name.

    What is printed is shown as it is printed, all else as a sketch of its parts.
    """
    shown: dict[str, str] = {}
    for item in items:
        match item:
            case Letter(document=document) | Page(document=document) | PlainText(document=document):
                shown.setdefault(document.name, _sketch(document))
            case CalendarDocument(name=name):
                days = {entry.first for entry in item.entries}
                shown[name] = _svg(calendar_miniature(days))
            case Sheet(document=document):
                (name,) = file_names(item)
                shown[document.name] = _data(first_page(files[name].content), "image/png")
    return shown


def first_page(pdf: bytes) -> bytes:
    """Return the first page of a PDF as a PNG of `WIDTH` pixels."""
    import pypdfium2  # noqa: PLC0415 - only a build that has something new to show waits for it

    document = pypdfium2.PdfDocument(pdf)
    try:
        page = document[0]
        picture = page.render(scale=WIDTH / page.get_width()).to_pil()
    finally:
        document.close()
    return in_few_colours(picture)


def _sketch(document: Document) -> str:
    return _svg(miniature(document.title, [section.blocks for section in document.sections]))


def _svg(source: str) -> str:
    return _data(source.encode(), "image/svg+xml")


def _data(content: bytes, media_type: str) -> str:
    return f"data:{media_type};base64,{base64.b64encode(content).decode('ascii')}"
