"""Sheets of paper as PDF: several at once, and only those that changed."""

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
"""Number of sheets up to which starting more processes does not pay."""


def write_sheets(
    sheets: Sequence[Sheet],
    known: Mapping[str, RenderedFile],
    told: Callable[[int], None] = lambda _done: None,
) -> tuple[RenderedFile, ...]:
    """Write sheets as PDF.

    Parameters
    ----------
    sheets
        The files come back in the same order.
    known
        Files of an earlier build by source digest; a matching one is used as it is.
    told
        Called with the number of sheets done so far.
    """
    contents = [content(sheet) for sheet in sheets]
    sources = list(map(_digest, contents))
    lengths = {sheet.document.name: len(text) for sheet, text in zip(sheets, contents, strict=True)}
    found = {name: known[name] for name in sources if name in known}
    missing = [
        (name, sheet) for name, sheet in zip(sources, sheets, strict=True) if name not in found
    ]
    done = len(sheets) - len(missing)
    told(done)
    for (name, _), file in zip(
        missing, _written([sheet for _, sheet in missing], lengths), strict=True
    ):
        found[name] = RenderedFile(file.name, file.media_type, file.content, name)
        done += 1
        told(done)
    return tuple(
        RenderedFile(f"{sheet.document.name}.pdf", PDF, found[name].content, name)
        for name, sheet in zip(sources, sheets, strict=True)
    )


def write_sheet(sheet: Sheet) -> RenderedFile:
    """Write one sheet in the largest way that fits its pages."""
    return _write_sizes((sheet,))[0]


def source(sheet: Sheet) -> str:
    """Return a digest of everything that determines a sheet's PDF."""
    return _digest(content(sheet))


def _digest(text: str) -> str:
    return hashlib.sha256(f"{text}\0{makers()}".encode()).hexdigest()


def content(sheet: Sheet) -> str:
    """Return a sheet's HTML and its ways as one text."""
    # Sorted, since sets iterate in a different order in each process.
    ways = [(fit.styles, sorted(fit.left_out), fit.pages) for fit in sheet.fits]
    return "\0".join(
        [page_html(sheet, sheet.fits[0]), f"{ways} {sheet.pages} {sorted(sheet.movable)}"]
    )


def _write_sizes(sheets: Sequence[Sheet]) -> tuple[RenderedFile, ...]:
    """Write one document in several paper sizes, which mostly fit in the same way."""
    files: list[RenderedFile] = []
    way: int | None = None
    for sheet in sheets:
        way, layout = lay_out_sheet(sheet, way)
        files.append(RenderedFile(f"{sheet.document.name}.pdf", PDF, layout.write().content))
    return tuple(files)


def _sizes(sheets: Sequence[Sheet]) -> list[list[Sheet]]:
    """Group neighbouring sheets that are one document in several paper sizes."""
    together: list[list[Sheet]] = []
    for sheet in sheets:
        if together and _nameless(together[-1][0]) == _nameless(sheet):
            together[-1].append(sheet)
        else:
            together.append([sheet])
    return together


def _nameless(sheet: Sheet) -> Sheet:
    return replace(sheet, document=replace(sheet.document, name=""), template="")


def _written(sheets: Sequence[Sheet], lengths: Mapping[str, int]) -> Iterator[RenderedFile]:
    """Write sheets one after the other, or on all processors where there are many.

    Lengths of their contents, by the names of the documents, tell which take longest.
    """
    jobs = _sizes(sheets)
    workers = min(len(os.sched_getaffinity(0)) if _forks() else 1, len(jobs))
    if workers < 2 or len(sheets) <= FEW:
        yield from itertools.chain.from_iterable(map(_write_sizes, jobs))
        return
    # Imported once, before forking.
    import weasyprint  # noqa: F401, PLC0415

    parted = multiprocessing.get_context("fork")
    with (
        tempfile.TemporaryDirectory(prefix="notices-") as folder,
        concurrent.futures.ProcessPoolExecutor(workers, parted, _begin, (folder,)) as pool,
    ):
        try:
            # Longest first, so that no processor idles at the end.
            longest = sorted(
                jobs, key=lambda job: sum(lengths[one.document.name] for one in job), reverse=True
            )
            begun = {id(job): pool.submit(_write_sizes, job) for job in longest}
            for job in jobs:
                yield from begun[id(job)].result()
        except BaseException:
            pool.shutdown(cancel_futures=True)
            raise


def _begin(folder: str) -> None:
    """Let a worker end at once on Ctrl-C; its temporary files lie in a folder that the parent deletes."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    tempfile.tempdir = folder


def _forks() -> bool:
    """Tell whether forking is safe: on Linux, with no other thread running."""
    return sys.platform == "linux" and threading.active_count() == 1
