"""Digests of what files say to a reader, apart from the notice they belong to.

Two files with the same digest have the same words and pictures, and differ at most in the number
and date of the notice and in the notice it replaces.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

from notices.documents.model import (
    BLANK,
    CalendarDocument,
    Item,
    Letter,
    Page,
    PlainText,
    Sheet,
    file_names,
    with_imprint,
)
from notices.rendering import forms, sheets


def said_by(items: Iterable[Item]) -> dict[str, str]:
    """Return digests of what the files say, by file name."""
    blank = [with_imprint(item, BLANK) for item in items]
    calendars = {item.name: repr(item) for item in blank if isinstance(item, CalendarDocument)}
    return {
        name: digest
        for item in blank
        for digest in (_digest(_content(item, calendars)),)
        for name in file_names(item)
    }


def _content(item: Item, calendars: dict[str, str]) -> str:
    """Return the content of an item that reaches its reader, before layout."""
    match item:
        case Sheet():
            return sheets.content(item)
        case Letter():
            return _of_letter(item, calendars)
        case Page():
            return forms.page_html(item)
        case PlainText():
            return forms.text(item)
        case CalendarDocument(name=name):
            return calendars[name]


def _of_letter(letter: Letter, calendars: dict[str, str]) -> str:
    envelope = (letter.subject, letter.sender, letter.to, letter.reply_to, letter.message_id)
    listed = (letter.list_id, letter.unsubscribe)
    pictures = [letter.document.logo, *(drawing.svg for drawing in letter.document.drawings)]
    photos = [photo.data for photo in letter.document.photos]
    words = [forms.email_html(letter, {}), forms.email_text(letter)]
    # The calendar is attached to the email, so a new calendar makes a new email.
    calendar = calendars[letter.calendar] if letter.calendar else ""
    return "\0".join([repr((envelope, listed)), *words, *pictures, *photos, calendar])


def _digest(content: str) -> str:
    return hashlib.sha256(content.encode()).hexdigest()
