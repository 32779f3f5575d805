"""The largest way in which a sheet fits its pages, found with few layouts, since each is slow."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from notices.documents.model import Document, Fit, Section, Sheet
from notices.letters import printable
from notices.paths import templates_folder
from notices.rendering import html
from notices.rendering.filling import filled_order
from notices.rendering.furniture import SHEET, imprint
from notices.rendering.pdf import Layout, lay_out
from notices.wording.blocks import Picture

COUNTED = 0.98
"""Share of a page counted on when sections are reordered: table heads repeat on every page."""

GAPS = 0.3
"""Least share of a page lost in gaps for which sections are reordered."""

THIN = 1 / 3
"""Least share of a last page in use for which the page is worth printing."""

FEW_LOOKS = 6
"""With fewer looks than this the largest is tried first, since it mostly fits; else a middle one."""

DOUBT = 0.06
"""Error allowed for in a guess: a way estimated to be too long by less is tried nonetheless."""


PAGE = 1000
"""Height of a page that drawings can fill [CSS pixels]: A4 without its margins, rounded."""

_TAG = re.compile("<[^>]*>")

_Looks = tuple[str, frozenset[str]]
"""Styles and left-out sections, which together decide the layout."""


def page_html(sheet: Sheet, fit: Fit) -> str:
    """Return the HTML of a sheet in one way of setting it."""
    document = sheet.document
    return printable(
        html.fill(
            f"print/{sheet.template}.html.j2",
            document=document,
            imprint=imprint(document, SHEET),
            fit=fit,
        )
    )


def lay_out_sheet(sheet: Sheet, likely: int | None = None) -> tuple[int, Layout]:
    """Lay out a sheet in the largest way that fits; return the index of that way and the layout.

    The length in one way gives an estimate for the others (`Fit.room`), so each further try is the
    largest way that can fit by that estimate. If the last page then holds only a few lines, the next
    tighter way is taken where that saves the page.

    Parameters
    ----------
    sheet
        The sheet with its ways.
    likely
        Way in which another paper size of the same document fits; tried first.
    """
    ways = _Ways(sheet)
    first, last = 0, len(sheet.fits) - 1
    if likely is not None:
        if likely == last or ways.fit(likely):
            return ways.saving(likely)
        first = likely + 1
    way = ways.guess(first, last) if first else ways.start()
    while first < last:
        if ways.fit(way):
            last = way
        else:
            first = way + 1
        way = ways.guess(first, last)
        if way == last:
            break
    return ways.saving(last)


class _Ways:
    """The ways of a sheet, each laid out at most once, on demand."""

    def __init__(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self._tried: dict[_Looks, _Setting] = {}

    def start(self) -> int:
        """Return the index of the way to try first."""
        if (pages := _estimated_pages(self._sheet)) is not None:
            ways = enumerate(self._sheet.fits)
            last = len(self._sheet.fits) - 1
            return next((n for n, fit in ways if self._has_room(fit, pages * fit.room)), last)
        few = len({_looks(fit) for fit in self._sheet.fits}) < FEW_LOOKS
        return 0 if few else (len(self._sheet.fits) - 1) // 2

    def guess(self, first: int, last: int) -> int:
        """Return the first way in a range that can fit by the tries so far, or the last of the range."""
        return next((way for way in range(first, last) if self._can_fit(way)), last)

    def layout(self, way: int) -> Layout:
        # Two ways may differ in nothing but how many pages they may take.
        fit = self._sheet.fits[way]
        looks = _looks(fit)
        if looks not in self._tried:
            self._tried[looks] = _set_full(self._sheet, fit, self._nearest(fit))
        return self._tried[looks].layout

    def fit(self, way: int) -> bool:
        return self.layout(way).pages <= _may_take(self._sheet, self._sheet.fits[way])

    def saving(self, way: int) -> tuple[int, Layout]:
        """Return a way and its layout, or the next tighter one if that saves a nearly empty page."""
        while (
            _thin(self.layout(way))
            and _tightens(self._sheet, way)
            and self.layout(way + 1).pages < self.layout(way).pages
        ):
            way += 1
        return way, self.layout(way)

    def _can_fit(self, way: int) -> bool:
        fit = self._sheet.fits[way]
        if _looks(fit) in self._tried:
            return self.fit(way)
        tried = self._nearest(fit)
        if tried is None:
            return True
        return self._has_room(fit, tried.layout.filled * fit.room / tried.fit.room)

    def _has_room(self, fit: Fit, pages: float) -> bool:
        return pages <= _may_take(self._sheet, fit) * (1 + DOUBT)

    def _nearest(self, fit: Fit) -> _Setting | None:
        """Return the setting tried so far whose room is closest to that of a way."""
        return min(
            self._tried.values(), key=lambda tried: abs(tried.fit.room - fit.room), default=None
        )


@dataclass(frozen=True, slots=True)
class _Setting:
    """A sheet laid out in one way."""

    fit: Fit
    order: tuple[str, ...]
    """Order of the stories, by the names of their first sections."""
    layout: Layout


def _set_full(sheet: Sheet, fit: Fit, tried: _Setting | None) -> _Setting:
    """Lay out a sheet, moving sections up past drawings that would leave a page half empty.

    Parameters
    ----------
    sheet, fit
        The sheet and the way to set it.
    tried
        A layout in another way, from which the order is estimated.
    """
    if not sheet.movable:
        return _Setting(fit, (), lay_out(page_html(sheet, fit), base=templates_folder()))
    like = tried if tried and tried.fit.left_out == fit.left_out else None
    order = _full_order(sheet, fit, like) if like else tuple(_stories(sheet.document))
    found = _set(sheet, fit, order)
    layout = found.layout
    high = (layout.begin() + sum(piece.height for piece in layout.pieces())) / layout.page_height
    if high > COUNTED * _may_take(sheet, fit):
        return found  # too long in any order
    if layout.filled - high < GAPS:
        return found
    order = _full_order(sheet, fit, found)
    if order == found.order:
        return found
    other = _set(sheet, fit, order)
    return other if other.layout.pages <= layout.pages else found


def _set(sheet: Sheet, fit: Fit, order: tuple[str, ...]) -> _Setting:
    stories = _stories(sheet.document)
    sections = tuple(section for head in order for section in stories[head])
    ordered = replace(sheet, document=replace(sheet.document, sections=sections))
    return _Setting(fit, order, lay_out(page_html(ordered, fit), base=templates_folder()))


def _full_order(sheet: Sheet, fit: Fit, tried: _Setting) -> tuple[str, ...]:
    """Return the order of stories that fills the pages best, by their heights in a layout."""
    stories = _stories(sheet.document)
    head_of = {_id(section): head for head, story in stories.items() for section in story}
    scale = fit.room / tried.fit.room
    pieces = [
        replace(piece, section=head_of[piece.section], height=scale * piece.height)
        for piece in tried.layout.pieces()
    ]
    places = list(stories)
    pieces.sort(key=lambda piece: places.index(piece.section))
    shown = {piece.section for piece in pieces}
    order = filled_order(
        pieces,
        sheet.movable,
        scale * tried.layout.begin(),
        COUNTED * tried.layout.page_height,
        [head for head in tried.order if head in shown],
    )
    return (*order, *(head for head in stories if head not in shown))


def _stories(document: Document) -> dict[str, list[Section]]:
    """Group sections into stories, a heading with what follows it, by the name of the first section."""
    stories: dict[str, list[Section]] = {}
    for section in document.sections:
        if section.heading or not stories:
            stories[section.name] = []
        stories[next(reversed(stories))].append(section)
    return stories


def _id(section: Section) -> str:
    """Return the id of a section in the HTML."""
    return section.name.replace(" ", "-")


def _estimated_pages(sheet: Sheet) -> float | None:
    """Return about how many pages a sheet takes in its first way; None where nothing tells."""
    if sheet.letters is None:
        return None
    text = _TAG.sub("", page_html(sheet, sheet.fits[0]).partition("<body")[2])
    document = sheet.document
    high = sum(
        document.drawing(block.name).height
        for section in document.sections
        for block in section.blocks
        if isinstance(block, Picture)
    )
    return len(" ".join(text.split())) / sheet.letters + high / PAGE


def _looks(fit: Fit) -> _Looks:
    return fit.styles, fit.left_out


def _may_take(sheet: Sheet, fit: Fit) -> int:
    return fit.pages or sheet.pages


def _thin(layout: Layout) -> bool:
    """Tell whether the last of several pages is nearly empty."""
    return layout.pages > 1 and layout.last_page_filled < THIN


def _tightens(sheet: Sheet, way: int) -> bool:
    """Tell whether the next way leaves out the same sections as this one."""
    ways = sheet.fits[way : way + 2]
    return len(ways) > 1 and ways[0].left_out == ways[1].left_out
