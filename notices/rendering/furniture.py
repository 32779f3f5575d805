"""Imprint and footer of every document, on paper and on screens."""

from __future__ import annotations

from dataclasses import dataclass

from notices.documents.model import Document
from notices.wording.edition import day_of, number_in_words, replaced_in_words

SHEET, EMAIL, PAGE, TEXT = "sheet", "email", "page", "text"
"""Words for the kind of thing a document is, in "This sheet replaces …"."""


@dataclass(frozen=True, slots=True)
class ImprintWords:
    """Imprint of a document in words: day of issue, number, and notice replaced."""

    issued: str
    """Day of issue, such as "14 September 2026"."""
    number: str
    """Number in words, such as "Notice 20260914-2"."""
    replaces: str
    """Sentence about the notice it replaces; empty if there is none."""


def imprint(document: Document, thing: str) -> ImprintWords:
    """Return the imprint in words; ``thing`` is what the document is set as, such as "sheet"."""
    of = document.imprint
    replaces = replaced_in_words(thing, of.replaces, document.language) if of.replaces else ""
    return ImprintWords(
        day_of(of.edition, document.language), number_in_words(of.edition), replaces
    )


def footer(document: Document, thing: str) -> str:
    """Return the footer line: club, day of issue, notice number, and what it replaces."""
    said = imprint(document, thing)
    line = f"{document.club}. Issued {said.issued}."
    return " ".join(filter(None, (line, said.number, said.replaces)))
