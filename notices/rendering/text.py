"""Plain text of documents, arranged for reading and not as a copy of the page."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from notices.documents.model import Document
from notices.wording.blocks import (
    Block,
    Bullets,
    Folded,
    Heading,
    KeyFacts,
    Notes,
    Paragraph,
    Photo,
    Picture,
    Runs,
    Table,
)

WIDTH = 72
"""Columns of a line; mail programs break longer lines at awkward places."""

ENDLESS = 100_000
"""Columns of a line that is never broken: more than any paragraph has letters."""


def plain_text(document: Document, footer: str, *, wrapped: bool = True) -> str:
    """Return a document as plain text.

    Every row of a table ends with a full stop, so that it reads as a sentence. Unless ``wrapped``,
    each paragraph is one line, to be copied as it is.
    """
    width = WIDTH if wrapped else ENDLESS
    lines = [document.club, *_underlined(document.title, "=")]
    if document.draft:
        lines += ["", "DRAFT: not yet approved. Please do not send."]
    for section in document.sections:
        if section.heading:
            lines += ["", "", *_underlined(section.heading, "-")]
        for block in section.blocks:
            said = list(_lines(block, width))
            lines += ["", *said] if said else []
    lines += ["", "", *_wrap(footer, width)]
    return "\n".join(lines).replace("\n\n\n\n", "\n\n\n") + "\n"


def _underlined(text: str, mark: str) -> list[str]:
    wrapped = textwrap.wrap(text, WIDTH)
    return [*wrapped, mark * max(len(line) for line in wrapped)]


def _lines(block: Block, width: int) -> Iterator[str]:  # noqa: C901, PLR0912, a case for each kind of block
    match block:
        case Paragraph(runs):
            yield from _wrap(_said(runs), width)
        case Bullets(items):
            for item in items:
                yield from _wrap(_said(item), width, first="* ", rest="  ")
        case Heading(text, _):
            yield text.upper()
        case KeyFacts(rows):
            for row in rows:
                yield from _wrap(f"{row.label}: {row.text}", width, rest="    ")
        case Table(_, head, rows):
            for cells in rows:
                line = _in_one_line(_named_where_many(head, cells)[1:])
                yield from _wrap(f"* {cells[0]}: {line}", width, rest="  ")
        case Notes(items):
            for number, note in enumerate(items, 1):
                yield from _wrap(f"{number}. {note}", width, rest="   ")
        case Folded():
            yield from _unfolded(block, width)
        case Photo(caption=caption):
            yield from _wrap(caption, width)
        case Picture():
            # The words beside a picture say what it shows.
            return


def _unfolded(block: Folded, width: int) -> Iterator[str]:
    yield from _wrap(block.label.upper(), width)
    for part in block.blocks:
        said = list(_lines(part, width))
        yield from ["", *said] if said else []


def _named_where_many(head: Sequence[str], cells: Sequence[str]) -> list[str]:
    """Name what stands in a fourth column and beyond: three cells are understood without a head."""
    named = [f"{name}: {cell}" for name, cell in zip(head[3:], cells[3:], strict=True) if cell]
    return [*cells[:3], *named]


def _in_one_line(cells: Sequence[str]) -> str:
    """Join the cells of a row by commas; a cell that is a whole sentence follows a full stop."""
    line = ""
    for cell in filter(None, cells):
        if line:
            line += " " if line.endswith(".") else ". " if cell.endswith(".") else ", "
        line += cell
    return line if line.endswith(".") else f"{line}."


def _said(runs: Runs) -> str:
    return "".join(
        f"{run.text} ({run.link})"
        if run.link and run.link.removeprefix("mailto:") != run.text
        else run.text
        for run in runs
    )


def _wrap(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    return textwrap.wrap(
        text,
        width,
        initial_indent=first,
        subsequent_indent=rest,
        # A link that is cut cannot be followed.
        break_long_words=False,
        break_on_hyphens=False,
    )
