"""Measures printed pages: what stands too near an edge, and what was torn apart."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pypdfium2  # type: ignore[import-untyped,unused-ignore]

from notices.rendering.pdf import Layout, Pdf

TABLES = "tables"

NEAREST = 28
"""Points between letters and the edge of a page, 9.9 mm: what any printer leaves white and more."""

FOOT = 43
"""Points below which only the running foot stands: the margin of 15 mm that all sheets keep."""


def faults_on_paper(content: bytes) -> Iterator[str]:
    """Say where a PDF comes too near an edge, or turns a page for a single line."""
    document: Any = pypdfium2.PdfDocument(content)
    try:
        for number, page in enumerate(document, 1):
            width, height = page.get_size()
            words = page.get_textpage()
            boxes = [words.get_rect(index) for index in range(words.count_rects())]
            for left, bottom, right, top in boxes:
                nearest = min(left, bottom, width - right, height - top)
                if nearest < NEAREST:
                    text = words.get_text_bounded(left, bottom, right, top)
                    yield f"page {number}: {text[:40]!r} stands {nearest:.0f} pt from the edge"
            lines = {round(bottom / 4) for _, bottom, _, top in boxes if (bottom + top) / 2 > FOOT}
            if len(lines) < 2:
                yield f"page {number}: {len(lines)} lines"
    finally:
        document.close()


MARGIN_ABOVE, MARGIN_BELOW = 15 * 72 / 25.4, 19 * 72 / 25.4
"""Margins of a sheet that is read in the hand [pt]."""


@contextmanager
def rows_watched(log: Path) -> Iterator[None]:
    """Write down what a page parts too soon, and every sheet that has tables.

    No row is parted, no table of up to eight rows, and of others three rows at least stay together.

    Only the layout knows: in the PDF a row that goes on is a row like any other. Sheets are set by
    processes of their own, so what they find goes through a file.
    """
    write = Layout.write

    def watched(layout: Layout) -> Pdf:
        seen: dict[object, int] = {}
        with log.open("a", encoding="utf-8") as lines:
            for number, page in enumerate(layout.document.pages, 1):
                for row in _rows(page._page_box):
                    if seen.setdefault(row, number) != number:
                        words = " ".join("".join(row.itertext()).split())  # type: ignore[attr-defined]
                        lines.write(f"page {number} goes on with the row {words[:60]!r}\n")
            lines.writelines(f"{fault}\n" for fault in _tables_parted(layout))
            if seen:
                lines.write(f"{TABLES}\n")
        return write(layout)

    with patch.object(Layout, "write", watched):
        yield


LEAST_ROWS, SHORT_TABLE = 2, 8
"""The style asks for three rows; of very high ones WeasyPrint sometimes carries over but two."""


def _tables_parted(layout: Layout) -> Iterator[str]:
    """Say which tables in the hand leave a page with a single row, or are too short to be parted."""
    parts: dict[object, list[int]] = {}
    for page in layout.document.pages:
        for body in _bodies(page._page_box):
            parts.setdefault(body.element, []).append(len(body.children))
    for rows in parts.values():
        if len(rows) > 1 and (sum(rows) <= SHORT_TABLE or min(rows) < LEAST_ROWS):
            yield f"a table is parted into {rows} rows"


def _bodies(box: Any) -> Iterator[Any]:
    """Yield the bodies of tables, as far as they stand in a page."""
    if box.element_tag == "tbody":
        yield box
        return
    for child in getattr(box, "children", ()):
        yield from _bodies(child)


def _rows(box: Any) -> Iterator[object]:
    if box.element_tag == "thead":
        return  # it stands on each page anew
    if box.element_tag == "tr":
        yield box.element
        return
    for child in getattr(box, "children", ()):
        yield from _rows(child)


def filled(content: bytes) -> list[float]:
    """Tell how much of each page of a sheet in the hand is in use, from 0 to 1."""
    document: Any = pypdfium2.PdfDocument(content)
    try:
        found = []
        for page in document:
            above_foot = [
                low for _, low, _, _ in map(_bounds, page.get_objects()) if low > MARGIN_BELOW
            ]
            top = page.get_size()[1] - MARGIN_ABOVE
            found.append((top - min(above_foot)) / (top - MARGIN_BELOW))
        return found
    finally:
        document.close()


def _bounds(drawn: Any) -> tuple[float, float, float, float]:
    bounds: tuple[float, float, float, float] = drawn.get_bounds()
    return bounds
