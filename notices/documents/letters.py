"""Documents that are sent: what goes on the envelope."""

from __future__ import annotations

from notices.documents.model import Document, Letter
from notices.programme.model import Programme


def letter(document: Document, programme: Programme, *, calendar: str = "") -> Letter:
    """Put a document into an envelope from the club to itself.

    Members never see one another's address: the office puts them into Bcc.
    """
    club = programme.club
    domain = club.sender.email.rpartition("@")[2]
    subject = f"{'DRAFT: ' if document.draft else ''}{document.title}"
    return Letter(
        document=document,
        subject=subject,
        sender=(club.name, club.sender.email),
        to=(club.name, club.reply_to or club.sender.email),
        reply_to=(club.name, club.reply_to) if club.reply_to else None,
        identity=f"{club.slug}.{document.name}",
        list_id=f"Course notices <notices.{domain}>",
        unsubscribe=(
            f"mailto:{club.reply_to or club.sender.email}?subject=No%20more%20course%20notices"
        ),
        calendar=calendar,
    )
