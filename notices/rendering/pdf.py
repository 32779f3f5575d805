"""Tagged PDF for the wall and the counter (PDF/UA-1, ISO 14289-1)."""

from __future__ import annotations

import logging
import pathlib
import re
import threading
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Self

from notices.rendering.filling import Piece

_VARIANT = "pdf/ua-1"
_POINTS_PER_PX = 0.75
_PRINT = 4
"""Bit 3 of an annotation's flags: it is printed (ISO 32000-1 table 165)."""
_FONT_FACE = re.compile(r"@font-face\s*\{[^}]*\}")
SHORT = 8
"""A table of up to so many rows stays on one page, as `print/_reading` has it."""
_LISTS = {"dl", "ol", "ul"}
_NUMBERING = {
    "none": "/None",
    "disc": "/Disc",
    "circle": "/Circle",
    "square": "/Square",
    "decimal": "/Decimal",
    "lower-roman": "/LowerRoman",
    "upper-roman": "/UpperRoman",
    "lower-alpha": "/LowerAlpha",
    "lower-latin": "/LowerAlpha",
    "upper-alpha": "/UpperAlpha",
    "upper-latin": "/UpperAlpha",
}
"""CSS list-style-type to the values of ISO 32000-1 table 347."""


class RenderingError(RuntimeError):
    """The PDF cannot be made as the template asks; carries every complaint."""

    def __init__(self, warnings: Sequence[str]) -> None:
        self.warnings = tuple(warnings)
        super().__init__("the PDF could not be made: " + "; ".join(self.warnings))


@dataclass(frozen=True)
class Pdf:
    """A finished PDF."""

    content: bytes
    pages: int


@dataclass(frozen=True)
class Layout:
    """Pages that are laid out and not yet written to a file."""

    document: Any
    complaints: tuple[str, ...]
    """WeasyPrint's warnings from the layout."""

    @property
    def pages(self) -> int:
        """Number of pages."""
        return len(self.document.pages)

    @property
    def last_page_filled(self) -> float:
        """Share of the last page's height in use, from 0 to 1."""
        page = self.document.pages[-1]._page_box  # noqa: SLF001, nothing public knows it
        flow = page.children[0]
        used: float = flow.position_y + flow.margin_height() - page.content_box_y()
        return used / float(page.height)

    @property
    def filled(self) -> float:
        """Length in pages, counting the last page only as far as it is filled."""
        return self.pages - 1 + self.last_page_filled

    @property
    def page_height(self) -> float:
        """Height of a page inside its margins [CSS pixels]."""
        return float(self.document.pages[0]._page_box.height)  # noqa: SLF001

    def begin(self) -> float:
        """Distance from the top of the page to the first section [CSS pixels]."""
        page = self.document.pages[0]._page_box  # noqa: SLF001
        first = next(_sections(page), None)
        return float(first.position_y - page.content_box_y()) if first else 0.0

    def pieces(self) -> Iterator[Piece]:
        """Yield the parts of the sections in the order in which they are set.

        A drawing, a row of drawings and a short table stay whole; a heading counts with the part
        below it.
        """
        for page in self.document.pages:
            for box in _sections(page._page_box):  # noqa: SLF001
                yield from _pieces(box)

    def write(self) -> Pdf:
        """Write the pages as a PDF.

        Raises
        ------
        RenderingError
            If WeasyPrint had anything to complain of, or a link leads to a file on this computer.
        """
        with _Complaints() as complaints:
            content: bytes = self.document.write_pdf(finisher=_finish, pdf_variant=_VARIANT)
        if heard := (*self.complaints, *complaints.heard):
            raise RenderingError(heard)
        return Pdf(content, self.pages)


def _sections(page: Any) -> Iterator[Any]:  # noqa: ANN401
    """Yield the boxes of the sections on a page."""
    return (box for box in _boxes(page) if _is_of(box, "section"))


def _is_of(box: Any, name: str) -> bool:  # noqa: ANN401
    classes = "" if box.element is None else box.element.get("class") or ""
    return box.element_tag == "div" and name in classes.split()


def _is_short_table(box: Any) -> bool:  # noqa: ANN401
    """Tell whether a box is a table whose rows all stay on one page (`print/_reading`)."""
    return box.element_tag == "table" and len(box.element.findall("tbody/tr")) <= SHORT


def _pieces(section: Any) -> Iterator[Piece]:  # noqa: ANN401
    name, headed = section.element.get("id"), 0.0
    if type(section).__name__ == "FlexBox":
        yield Piece(name, section.margin_height(), whole=True)
        return
    for box in section.children:
        if box.element_tag == "h2":
            headed = box.margin_height()
        else:
            whole = _is_of(box, "picture") or _is_short_table(box)
            yield Piece(name, headed + box.margin_height(), whole)
            headed = 0.0


def lay_out(html: str, *, base: pathlib.Path) -> Layout:
    """Set HTML on pages, without the network.

    Parameters
    ----------
    html
        A whole document with ``<html lang>``, ``<meta charset>`` and ``<title>``.
    base
        Folder that the addresses of fonts, style sheets and pictures start from.

    Raises
    ------
    RenderingError
        If something that the document names is not there or may not be fetched.
    """
    # Loading WeasyPrint takes most of a second: only for those who print.
    import weasyprint  # noqa: PLC0415
    from weasyprint.urls import FatalURLFetchingError, URLFetcher  # noqa: PLC0415

    with _Complaints() as complaints:
        try:
            document = weasyprint.HTML(
                string=html,
                base_url=base.resolve().as_uri() + "/",
                url_fetcher=URLFetcher(allowed_protocols=("file", "data"), fail_on_errors=True),
            ).render(font_config=_fonts(html, base), pdf_variant=_VARIANT)
        except FatalURLFetchingError as error:  # a BaseException, so that it cannot be overlooked
            raise RenderingError([*complaints.heard, str(error)]) from error
    return Layout(document, tuple(complaints.heard))


def write_pdf(html: str, *, base: pathlib.Path) -> Pdf:
    """Set HTML as an accessible PDF, without the network.

    The same HTML gives the same bytes. The dates in the file are those of
    ``<meta name=dcterms.created>`` and ``<meta name=dcterms.modified>``; there is no other clock.
    See `lay_out` for the parameters and `Layout.write` for what is refused.
    """
    return lay_out(html, base=base).write()


class _LastFonts(threading.local):
    """Fonts of the last page laid out in this thread; Pango fonts cannot cross threads."""

    named: tuple[str, ...] = ()
    fonts: Any = None


_last = _LastFonts()


def _fonts(html: str, base: pathlib.Path) -> Any:  # noqa: ANN401
    """Return the fonts of a page, loaded once for successive pages with the same @font-face rules.

    Pages with other rules get fonts of their own, or they would be set in fonts they do not name.
    """
    from weasyprint.text.fonts import FontConfiguration  # noqa: PLC0415

    named = (str(base.resolve()), *_FONT_FACE.findall(html))
    if named != _last.named:
        _last.named, _last.fonts = named, FontConfiguration()
    return _last.fonts


class _Complaints(logging.Handler):
    """Collects what WeasyPrint logs in this thread at warning level or above."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.heard: list[str] = []
        self._thread = threading.get_ident()
        self._logger = logging.getLogger("weasyprint")

    def emit(self, record: logging.LogRecord) -> None:
        if record.thread == self._thread:
            self.heard.append(record.getMessage())

    def __enter__(self) -> Self:
        self._logger.addHandler(self)
        return self

    def __exit__(self, *_: object) -> None:
        self._logger.removeHandler(self)


def _finish(document: Any, pdf: Any) -> None:  # noqa: ANN401 - WeasyPrint and pydyf are untyped
    """Add the tag attributes that WeasyPrint 70 leaves out."""
    objects = {entry.number: entry for entry in pdf.objects if entry.number is not None}
    tags = [entry for entry in pdf.objects if isinstance(entry, dict)]
    # The only way from a tag to its HTML.
    boxes = [box for page in document.pages for box in _boxes(page._page_box)]  # noqa: SLF001
    _describe_headers(boxes, tags, objects)
    _number_lists(boxes, tags)
    heights = {
        _number(reference): page.height
        for reference, page in zip(pdf.page_references, document.pages, strict=True)
    }
    for entry in tags:
        if entry.get("S") == "/Figure" and "A" in entry:
            _place_figure(entry["A"], heights[_number(entry["Pg"])])
        elif entry.get("Subtype") == "/Link":
            # ISO 14289-1 does not ask for it, ISO 19005 does: a link is printed with its text.
            entry["F"] = entry.get("F", 0) | _PRINT
            _refuse_local(entry)


def _number(reference: object) -> int:
    """Return the object's number from a reference such as ``b"12 0 R"``."""
    text = reference.decode("ascii") if isinstance(reference, bytes) else str(reference)
    return int(text.split()[0])


def _boxes(box: Any) -> Iterator[Any]:  # noqa: ANN401
    """Yield a box and its descendants in the order in which WeasyPrint tags them."""
    box = getattr(box, "_box", box)  # a box that was placed absolutely stands behind a stand-in
    yield box
    for child in getattr(box, "children", ()):
        yield from _boxes(child)


def _describe_headers(
    boxes: Sequence[Any], tags: Sequence[Any], objects: Mapping[int, Any]
) -> None:
    """Set the Scope of every header cell to Column or Row (ISO 14289-1, 7.5)."""
    stated = {
        box.mark.number: box.element.get("scope", "")
        for box in boxes
        if getattr(box, "mark", None) is not None and box.element is not None
    }
    for entry in tags:
        if entry.get("S") != "/TH":
            continue
        scope = stated.get(entry.number, "")
        if scope.startswith("row"):
            value = "/Row"
        elif scope.startswith("col"):
            value = "/Column"
        else:
            row = objects[_number(entry["P"])]
            section = objects[_number(row["P"])]
            value = "/Column" if section.get("S") == "/THead" else "/Row"
        entry["A"]["Scope"] = value


def _number_lists(boxes: Sequence[Any], tags: Sequence[Any]) -> None:
    """Set the ListNumbering of every list (ISO 32000-1, 14.8.5.5).

    A list's tag does not refer to its HTML element. But tags are made from the boxes in their
    order, so the n-th list tag belongs to the n-th list box.
    """
    import pydyf  # noqa: PLC0415 - comes with WeasyPrint

    lists = [
        box for box in boxes if getattr(box, "element_tag", None) in _LISTS and not _is_line(box)
    ]
    tagged = [entry for entry in tags if entry.get("S") == "/L"]
    if len(tagged) != len(lists):
        raise RenderingError([f"{len(lists)} lists are set, but {len(tagged)} are tagged"])
    for tag, box in zip(tagged, lists, strict=True):
        style = box.style["list_style_type"]
        plain = box.element_tag == "dl" or not isinstance(style, str)
        value = "/None" if plain else _NUMBERING.get(style, "/None")
        tag["A"] = pydyf.Dictionary({"O": "/List", "ListNumbering": value})


def _is_line(box: Any) -> bool:  # noqa: ANN401
    from weasyprint.formatting_structure.boxes import LineBox, TextBox  # noqa: PLC0415

    return isinstance(box, LineBox | TextBox)


def _place_figure(attributes: Any, height: float) -> None:  # noqa: ANN401
    """Convert a figure's BBox from CSS pixels below the top to points above the bottom of the page.

    References
    ----------
    ISO 32000-1, table 344.
    """
    left, top, right, bottom = attributes["BBox"]
    corners = (left, height - bottom, right, height - top)
    attributes["BBox"][:] = [round(corner * _POINTS_PER_PX, 2) for corner in corners]


def _refuse_local(link: Any) -> None:  # noqa: ANN401
    """Refuse a link that was relative: it now names a folder of this computer."""
    action = link.get("A")
    target = str(action["URI"].string) if action is not None and "URI" in action else ""
    if target.lower().startswith("file:"):
        name = target.rpartition("/")[2]
        raise RenderingError([f"a link leads to the file {name} instead of to a web page"])
