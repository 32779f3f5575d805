"""What stands at the foot of every document, whatever it is set on."""

from __future__ import annotations

from notices.documents.model import Document
from notices.wording.dates import DateWords


def issued(document: Document) -> str:
    """Return the date of issue in words."""
    return DateWords(document.language, document.issued).date(document.issued)


def footer(document: Document) -> str:
    """Return the line that says whose notice it is, of when, and which."""
    said = f"{document.club}. Issued {issued(document)}."
    return " ".join(filter(None, (said, document.edition, document.replaces)))
