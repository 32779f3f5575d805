"""Web pages, emails and plain text of documents, before they become files."""

from __future__ import annotations

from collections.abc import Mapping

from notices.documents.model import Letter, Page, PlainText
from notices.rendering import html
from notices.rendering.furniture import EMAIL, PAGE, TEXT, footer
from notices.rendering.text import plain_text


def page_html(page: Page) -> str:
    """Return the HTML of a web page."""
    document = page.document
    return html.fill(
        f"web/{page.template}.html.j2", document=document, footer=footer(document, PAGE)
    )


def text(item: PlainText) -> str:
    """Return the plain text of a document."""
    return plain_text(item.document, footer(item.document, TEXT), wrapped=item.wrapped)


def email_html(letter: Letter, pictures: Mapping[str, str]) -> str:
    """Return the HTML of an email, with its styles not yet inlined.

    Parameters
    ----------
    letter
        Email to fill in.
    pictures
        Content IDs by name of drawing or photograph; those without one are left out.
    """
    document = letter.document
    return html.fill(
        f"mail/{letter.template}.html.j2",
        document=document,
        pictures=pictures,
        footer=footer(document, EMAIL),
    )


def email_text(letter: Letter) -> str:
    """Return the plain text of an email."""
    return plain_text(letter.document, footer(letter.document, EMAIL))
