"""What stands at the head and the foot of every document, whatever it is set on."""

from __future__ import annotations

from dataclasses import dataclass

from notices.documents.model import Document
from notices.wording.edition import day_of, number_in_words, replaced_in_words

SHEET, EMAIL, PAGE, TEXT = "sheet", "email", "page", "text"
"""What a document is set as."""


@dataclass(frozen=True, slots=True)
class ImprintWords:
    """Of which notice a document is, in words."""

    issued: str
    """14 September 2026."""
    number: str
    """Notice 20260914-2."""
    replaces: str
    """What it comes in place of; empty where there was none."""


def imprint(document: Document, thing: str) -> ImprintWords:
    """Say of which notice a document is, and which sheet, email or page it replaces."""
    of = document.imprint
    replaces = replaced_in_words(thing, of.replaces, document.language) if of.replaces else ""
    return ImprintWords(
        day_of(of.edition, document.language), number_in_words(of.edition), replaces
    )


def footer(document: Document, thing: str) -> str:
    """Return the line that says whose notice it is, of when, and which."""
    said = imprint(document, thing)
    line = f"{document.club}. Issued {said.issued}."
    return " ".join(filter(None, (line, said.number, said.replaces)))
