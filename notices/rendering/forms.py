"""What a document says in each form in which it comes on a screen, before it is sent or written."""

from __future__ import annotations

from collections.abc import Mapping

from notices.documents.model import Letter, Page, PlainText
from notices.rendering import html
from notices.rendering.furniture import EMAIL, PAGE, TEXT, footer
from notices.rendering.text import plain_text


def page_html(page: Page) -> str:
    """Return a page for a browser."""
    document = page.document
    return html.fill(
        f"web/{page.template}.html.j2", document=document, footer=footer(document, PAGE)
    )


def text(item: PlainText) -> str:
    """Return a document as text alone."""
    return plain_text(item.document, footer(item.document, TEXT), wrapped=item.wrapped)


def email_html(letter: Letter, pictures: Mapping[str, str]) -> str:
    """Return an email as a page, its rules not yet in its elements.

    Parameters
    ----------
    letter
        What is sent.
    pictures
        By the names of drawings and photographs, what the page calls them by; without one there
        is no picture.
    """
    document = letter.document
    return html.fill(
        f"mail/{letter.template}.html.j2",
        document=document,
        pictures=pictures,
        footer=footer(document, EMAIL),
    )


def email_text(letter: Letter) -> str:
    """Return an email as text alone."""
    return plain_text(letter.document, footer(letter.document, EMAIL))
