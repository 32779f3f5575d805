"""What each file says, whichever notice it belongs to: known by a digest of its words and pictures.

Two files of one digest differ in the number of the notice, its date and what it replaces, and in
nothing else that anybody reads or sees.
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
    """Return a digest of what each file says, by its name."""
    blank = [with_imprint(item, BLANK) for item in items]
    calendars = {item.name: repr(item) for item in blank if isinstance(item, CalendarDocument)}
    return {
        name: digest
        for item in blank
        for digest in (_digest(_content(item, calendars)),)
        for name in file_names(item)
    }


def _content(item: Item, calendars: dict[str, str]) -> str:
    """Return all that decides what a reader of an item gets, before it is set."""
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
    # The calendar travels with the email, whose reader has to get the new one.
    calendar = calendars[letter.calendar] if letter.calendar else ""
    return "\0".join([repr((envelope, listed)), *words, *pictures, *photos, calendar])


def _digest(content: str) -> str:
    return hashlib.sha256(content.encode()).hexdigest()
