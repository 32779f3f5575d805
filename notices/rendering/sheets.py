"""Sheets of paper: set in the largest way that fits, several at once, and only where they changed."""

from __future__ import annotations

import concurrent.futures
import hashlib
import itertools
import multiprocessing
import os
import signal
import sys
import tempfile
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from notices.documents.model import Document, Fit, Section, Sheet
from notices.letters import printable
from notices.makers import makers
from notices.paths import templates_folder
from notices.rendering import html
from notices.rendering.files import RenderedFile
from notices.rendering.filling import filled_order
from notices.rendering.furniture import SHEET, imprint
from notices.rendering.pdf import Layout, lay_out

PDF = "application/pdf"

COUNTED = 0.97
"""So much of a page is counted on when parts change places: heads of tables stand on each page anew."""

THIN = 1 / 3
"""So much of a last page must be in use for it to be worth a page."""

FEW = 3
"""Sheets that one process sets before a second would be ready to help."""

FEW_WAYS = 6
"""Of so many ways the largest is tried first, since it mostly holds; of more, one in the middle."""

CLOSE = 1 / 4
"""What takes so much more than it may mostly fits in the next way, and need not go half-way on."""


def write_sheets(
    sheets: Sequence[Sheet],
    known: Mapping[str, RenderedFile],
    told: Callable[[int], None] = lambda _done: None,
) -> tuple[RenderedFile, ...]:
    """Set sheets as PDF.

    Parameters
    ----------
    sheets
        In any order, which the files keep.
    known
        Files of an earlier build by what they were made from: those are taken as they are.
    told
        Hears how many sheets are done.
    """
    sources = [source(sheet) for sheet in sheets]
    found = {name: known[name] for name in sources if name in known}
    missing = [
        (name, sheet) for name, sheet in zip(sources, sheets, strict=True) if name not in found
    ]
    done = len(sheets) - len(missing)
    told(done)
    for (name, _), file in zip(missing, _written([sheet for _, sheet in missing]), strict=True):
        found[name] = RenderedFile(file.name, file.media_type, file.content, name)
        done += 1
        told(done)
    return tuple(
        RenderedFile(f"{sheet.document.name}.pdf", PDF, found[name].content, name)
        for name, sheet in zip(sources, sheets, strict=True)
    )


def write_sheet(sheet: Sheet) -> RenderedFile:
    """Set one sheet in the largest way that takes no more pages than it may."""
    return _write_sizes((sheet,))[0]


def source(sheet: Sheet) -> str:
    """Return a digest of all that decides what a sheet looks like."""
    return hashlib.sha256("\0".join([content(sheet), makers()]).encode()).hexdigest()


def content(sheet: Sheet) -> str:
    """Return all that a sheet says and shows, before it is set."""
    # The order of a set is another one in each process.
    ways = [(fit.styles, sorted(fit.left_out), fit.pages) for fit in sheet.fits]
    return "\0".join(
        [_filled(sheet, sheet.fits[0]), f"{ways} {sheet.pages} {sorted(sheet.movable)}"]
    )


def _filled(sheet: Sheet, fit: Fit) -> str:
    document = sheet.document
    page = html.fill(
        f"print/{sheet.template}.html.j2",
        document=document,
        imprint=imprint(document, SHEET),
        fit=fit,
    )
    return printable(page)


def _write_sizes(sheets: Sequence[Sheet]) -> tuple[RenderedFile, ...]:
    """Set one document in several sizes of paper: what fits the first mostly fits the others."""
    files: list[RenderedFile] = []
    way: int | None = None
    for sheet in sheets:
        way, layout = _laid_out(sheet, way)
        files.append(RenderedFile(f"{sheet.document.name}.pdf", PDF, layout.write().content))
    return tuple(files)


def _laid_out(sheet: Sheet, likely: int | None) -> tuple[int, Layout]:
    """Lay out a sheet in the largest way that fits, and say which.

    The ways grow smaller one by one, so half of those that are left fall away with a try, unless it
    all but fits. Where the last page then holds but a few lines, the next closer way is taken if it
    saves the page.

    Parameters
    ----------
    sheet
        What is laid out.
    likely
        The way in which another size of it fits, which is taken if this one fits so too.
    """
    ways = _Ways(sheet)
    first, last = 0, len(sheet.fits) - 1
    if likely is not None:
        if likely == last or ways.fit(likely):
            return ways.saving(likely)
        first = likely + 1
    way = first if last < FEW_WAYS else (first + last) // 2
    while first < last:
        if ways.fit(way):
            last = way
            way = (first + last) // 2
        else:
            first = way + 1
            way = first if ways.nearly_fit(way) else (first + last) // 2
    return ways.saving(first)


class _Ways:
    """The ways of a sheet, each laid out once and only where somebody asks for it."""

    def __init__(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self._tried: dict[tuple[str, frozenset[str]], Layout] = {}

    def layout(self, way: int) -> Layout:
        # Two ways may differ in nothing but how many pages they may take.
        fit = self._sheet.fits[way]
        looks = (fit.styles, fit.left_out)
        if looks not in self._tried:
            layout = lay_out(_filled(self._sheet, fit), base=templates_folder())
            if layout.pages <= self._may_take(way) + 1:  # fuller pages save one at most
                layout = _with_full_pages(self._sheet, fit, layout)
            self._tried[looks] = layout
        return self._tried[looks]

    def fit(self, way: int) -> bool:
        return self.layout(way).pages <= self._may_take(way)

    def nearly_fit(self, way: int) -> bool:
        return self.layout(way).filled <= self._may_take(way) * (1 + CLOSE)

    def saving(self, way: int) -> tuple[int, Layout]:
        """Return the next closer way where that saves a page of a few lines, else this one."""
        while (
            _thin(self.layout(way))
            and _tightens(self._sheet, way)
            and self.layout(way + 1).pages < self.layout(way).pages
        ):
            way += 1
        return way, self.layout(way)

    def _may_take(self, way: int) -> int:
        return self._sheet.fits[way].pages or self._sheet.pages


def _with_full_pages(sheet: Sheet, fit: Fit, layout: Layout) -> Layout:
    """Lay out a sheet again where a drawing leaves a page half empty: what comes after it goes first."""
    if not sheet.movable:
        return layout
    stories = _stories(sheet.document)
    head_of = {_id(each): head for head, story in stories.items() for each in story}
    pieces = [replace(piece, section=head_of[piece.section]) for piece in layout.pieces()]
    begin, high = layout.begin(), 0.98 * layout.page_height
    if begin + sum(piece.height for piece in pieces) > high * (fit.pages or sheet.pages):
        return layout  # whatever the order, it takes more pages than it may
    order = filled_order(pieces, sheet.movable, begin, high)
    if order == tuple(dict.fromkeys(piece.section for piece in pieces)):
        return layout
    rest = (head for head in stories if head not in order)
    sections = tuple(each for head in (*order, *rest) for each in stories[head])
    moved = replace(sheet, document=replace(sheet.document, sections=sections))
    other = lay_out(_filled(moved, fit), base=templates_folder())
    return other if other.pages <= layout.pages else layout


def _stories(document: Document) -> dict[str, list[Section]]:
    """Return the sections under each heading, by the name of the first: they stay together."""
    stories: dict[str, list[Section]] = {}
    for section in document.sections:
        if section.heading or not stories:
            stories[section.name] = []
        stories[next(reversed(stories))].append(section)
    return stories


def _id(section: Section) -> str:
    """Return the name of a section as it stands in the page."""
    return section.name.replace(" ", "-")


def _thin(layout: Layout) -> bool:
    """Tell whether the last of several pages holds but a few lines."""
    return layout.pages > 1 and layout.last_page_filled < THIN


def _tightens(sheet: Sheet, way: int) -> bool:
    """Tell whether the next way leaves out no more than this one."""
    ways = sheet.fits[way : way + 2]
    return len(ways) > 1 and ways[0].left_out == ways[1].left_out


def _sizes(sheets: Sequence[Sheet]) -> list[list[Sheet]]:
    """Put together what stands together and is one document in several sizes of paper."""
    together: list[list[Sheet]] = []
    for sheet in sheets:
        if together and _nameless(together[-1][0]) == _nameless(sheet):
            together[-1].append(sheet)
        else:
            together.append([sheet])
    return together


def _nameless(sheet: Sheet) -> Sheet:
    return replace(sheet, document=replace(sheet.document, name=""), template="")


def _written(sheets: Sequence[Sheet]) -> Iterator[RenderedFile]:
    """Set sheets one after the other, or where there are many on all processors at once."""
    jobs = _sizes(sheets)
    workers = min(len(os.sched_getaffinity(0)) if _forks() else 1, len(jobs))
    if workers < 2 or len(sheets) <= FEW:
        yield from itertools.chain.from_iterable(map(_write_sizes, jobs))
        return
    # What all need is loaded once, before the processes part.
    import weasyprint  # noqa: F401, PLC0415

    parted = multiprocessing.get_context("fork")
    with (
        tempfile.TemporaryDirectory(prefix="notices-") as folder,
        concurrent.futures.ProcessPoolExecutor(workers, parted, _begin, (folder,)) as pool,
    ):
        try:
            yield from itertools.chain.from_iterable(pool.map(_write_sizes, jobs))
        except BaseException:
            pool.shutdown(cancel_futures=True)  # nobody waits for the rest
            raise


def _begin(folder: str) -> None:
    """Make a process end at once when somebody breaks off (Ctrl-C), and leave nothing behind.

    What it has for the moment lies in a folder that the process which began it takes away.
    """
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    tempfile.tempdir = folder


def _forks() -> bool:
    """Tell whether a copy of this process is safe: on Linux, and with no other thread at work."""
    return sys.platform == "linux" and threading.active_count() == 1
