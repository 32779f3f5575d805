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

from notices.documents.model import Sheet
from notices.makers import makers
from notices.rendering.files import RenderedFile
from notices.rendering.ways import lay_out_sheet, page_html

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
        [page_html(sheet, sheet.fits[0]), f"{ways} {sheet.pages} {sorted(sheet.movable)}"]
    )


def _write_sizes(sheets: Sequence[Sheet]) -> tuple[RenderedFile, ...]:
    """Set one document in several sizes of paper: what fits the first mostly fits the others."""
    files: list[RenderedFile] = []
    way: int | None = None
    for sheet in sheets:
        way, layout = lay_out_sheet(sheet, way)
        files.append(RenderedFile(f"{sheet.document.name}.pdf", PDF, layout.write().content))
    return tuple(files)


def _sizes(sheets: Sequence[Sheet]) -> list[list[Sheet]]:
    """Put together what stands together and is one document in several sizes of paper."""
    together: list[list[Sheet]] = []
    for sheet in sheets:
        if together and _nameless(together[-1][0]) == _nameless(sheet):
            together[-1].append(sheet)
        else:
            together.append([sheet])
    return together


def _length(job: Sequence[Sheet]) -> int:
    """Return about how much there is to set."""
    return sum(len(page_html(sheet, sheet.fits[0])) for sheet in job)


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
            # What takes longest begins first, so that no processor waits for it at the end.
            longest = sorted(jobs, key=_length, reverse=True)
            begun = {id(job): pool.submit(_write_sizes, job) for job in longest}
            for job in jobs:
                yield from begun[id(job)].result()
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
