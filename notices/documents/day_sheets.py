"""What the sheets for staff share: a page a day, set as large as what it holds allows."""

from __future__ import annotations

import math
from collections.abc import Sequence

from notices.documents.model import MANY, Document, Fact, Section, Sheet
from notices.programme.model import Programme
from notices.wording.blocks import Block, Bullets, KeyFacts, Paragraph, Table

SIZES = ((37, "grand"), (44, "roomy"), (51, ""), (57, "close"), (85, "dense"))
"""Up to so many lines a page is set in this way, by measure of our pages; what is longer, "dense full"."""

LINE, LINE_OF_FACT, LINE_OF_ROW = 105, 85, 80
"""Letters on a line of text, beside a label, and in all the cells of a row."""

HEAD, NOTES = 5.5, 7
"""Lines that a page has above, and that are kept free to write on."""


def day_sheet(
    programme: Programme,
    name: str,
    title: str,
    summary: str,
    pages: Sequence[tuple[Section, Sequence[Fact]]],
) -> Document:
    """Make a document of pages, each with the facts that it carries."""
    return Document.of(
        programme,
        name=name,
        title=title,
        summary=summary,
        sections=(section for section, _ in pages),
        facts=(fact for _, facts in pages for fact in facts),
    )


def on_paper(document: Document) -> Sheet:
    """Put a document of days on paper."""
    return Sheet(document, "day-sheet", pages=MANY)


def page(name: str, heading: str, blocks: Sequence[Block]) -> Section:
    """Make the page of a day, or of days that are the same."""
    lines = sum(map(_lines, blocks)) + HEAD + NOTES
    style = next((style for most, style in SIZES if lines <= most), "dense full")
    return Section(name, tuple(blocks), heading, style)


def _lines(block: Block) -> float:
    """Tell about how many lines of a page in the usual size a block takes."""
    match block:
        case Paragraph():
            return math.ceil(len(block.text) / LINE) + 0.3
        case Bullets():
            texts = ("".join(run.text for run in item) for item in block.items)
            return sum(1.15 * math.ceil(len(text) / LINE) for text in texts)
        case KeyFacts():
            return 1 + sum(0.2 + math.ceil(len(row.text) / LINE_OF_FACT) for row in block.rows)
        case Table():
            rows = (math.ceil(sum(map(len, row)) / LINE_OF_ROW) for row in block.rows)
            across = 2 if block.halves else 1
            return 2.6 + math.ceil(sum(0.4 + lines for lines in rows) / across)
        case _:
            return 2
