"""Sheets of paper: set in the largest way that fits, several at once, and only where they changed."""

from __future__ import annotations

import concurrent.futures
import hashlib
import multiprocessing
import os
import signal
import sys
import tempfile
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence

from notices.documents.model import Fit, Sheet
from notices.letters import printable
from notices.makers import makers
from notices.paths import templates_folder
from notices.rendering import html
from notices.rendering.files import RenderedFile
from notices.rendering.furniture import SHEET, imprint
from notices.rendering.pdf import Layout, lay_out

PDF = "application/pdf"

FEW = 3
"""Sheets that one process sets before a second would be ready to help."""


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
    """Set one sheet in the largest way that takes no more pages than it may.

    The ways grow smaller one by one, so half of those that are left fall away with each try.
    """
    tried: dict[int, Layout] = {}

    def laid_out(way: int) -> Layout:
        if way not in tried:
            tried[way] = lay_out(_filled(sheet, sheet.fits[way]), base=templates_folder())
        return tried[way]

    first, last = 0, len(sheet.fits) - 1
    while first < last:
        middle = (first + last) // 2
        if laid_out(middle).pages <= (sheet.fits[middle].pages or sheet.pages):
            last = middle
        else:
            first = middle + 1
    return RenderedFile(f"{sheet.document.name}.pdf", PDF, laid_out(first).write().content)


def source(sheet: Sheet) -> str:
    """Return a digest of all that decides what a sheet looks like."""
    return hashlib.sha256("\0".join([content(sheet), makers()]).encode()).hexdigest()


def content(sheet: Sheet) -> str:
    """Return all that a sheet says and shows, before it is set."""
    # The order of a set is another one in each process.
    ways = [(fit.styles, sorted(fit.left_out), fit.pages) for fit in sheet.fits]
    return "\0".join([_filled(sheet, sheet.fits[0]), f"{ways} {sheet.pages}"])


def _filled(sheet: Sheet, fit: Fit) -> str:
    document = sheet.document
    page = html.fill(
        f"print/{sheet.template}.html.j2",
        document=document,
        imprint=imprint(document, SHEET),
        fit=fit,
    )
    return printable(page)


def _written(sheets: Sequence[Sheet]) -> Iterator[RenderedFile]:
    """Set sheets one after the other, or where there are many on all processors at once."""
    workers = min(len(os.sched_getaffinity(0)) if _forks() else 1, len(sheets))
    if workers < 2 or len(sheets) <= FEW:
        yield from map(write_sheet, sheets)
        return
    # What all need is loaded once, before the processes part.
    import weasyprint  # noqa: F401, PLC0415

    parted = multiprocessing.get_context("fork")
    with (
        tempfile.TemporaryDirectory(prefix="notices-") as folder,
        concurrent.futures.ProcessPoolExecutor(workers, parted, _begin, (folder,)) as pool,
    ):
        try:
            yield from pool.map(write_sheet, sheets)
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
