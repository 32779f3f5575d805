"""All files of a pack, rendered from its documents."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from notices.documents.index import Index
from notices.documents.model import (
    CalendarDocument,
    Document,
    Item,
    Letter,
    Page,
    PlainText,
    Sheet,
    file_names,
    imprint_of,
)
from notices.documents.pack import PackDocuments
from notices.paths import font_files
from notices.rendering import forms, html, mail
from notices.rendering.calendar import Event, write_calendar
from notices.rendering.files import RenderedFile
from notices.rendering.furniture import PAGE, footer
from notices.rendering.logo import in_mail
from notices.rendering.photographs import scaled
from notices.rendering.png import svg_to_png
from notices.rendering.preview import previews
from notices.rendering.said import said_by
from notices.rendering.sheets import write_sheet, write_sheets

PRODID = "-//Notices//Course calendar//EN"
PHOTO_WIDTH = 1000
"""Width of a photograph in an email [pixels]: sharp on a phone, and not too heavy for one."""

CALENDAR_REFRESH = dt.timedelta(hours=12)


def render_pack(
    documents: PackDocuments,
    told: Callable[[int, int], None] = lambda _done, _of: None,
    known: Mapping[str, RenderedFile] | None = None,
    published: Mapping[str, bytes] | None = None,
    standing: Mapping[str, RenderedFile] | None = None,
) -> tuple[RenderedFile, ...]:
    """Render every file of a pack except the manifest.

    Parameters
    ----------
    documents
        Documents to render.
    told
        Called with the number of sheets done and the number of sheets, to show progress.
    known
        Files of an earlier build by source digest, reused if they would come out the same.
    published
        Calendars that people already have, by file name.
    standing
        Unchanged files of the notice before, by file name.
    """
    items = tuple(documents.items)
    kept = standing or {}
    files: list[RenderedFile] = []
    sheets: list[Sheet] = []
    rendered = render_calendars(documents, published or {})
    calendars = {name: kept.get(file.name, file) for name, file in rendered.items()}
    for item in items:
        names = file_names(item)
        if all(name in kept for name in names):
            files += (kept[name] for name in names)
        elif isinstance(item, Sheet):
            sheets.append(item)
        else:
            files += render_item(item, calendars)
    files += write_sheets(sheets, known or {}, lambda done: told(done, len(sheets)))
    files = _marked(files, items)
    seen = previews(items, {file.name: file for file in files})
    records = (_record(name, data) for name, data in documents.records.items())
    return (_index(documents.index, seen), *files, *records)


def _marked(files: Iterable[RenderedFile], items: Sequence[Item]) -> list[RenderedFile]:
    """Return the files with content digest and imprint, by which the next notice compares them."""
    said = said_by(items)
    imprints = {name: imprint_of(item) for item in items for name in file_names(item)}
    return [replace(file, said=said[file.name], imprint=imprints[file.name]) for file in files]


def render_calendars(
    documents: PackDocuments, published: Mapping[str, bytes]
) -> dict[str, RenderedFile]:
    """Render the calendars of a pack by name, each as a revision of the published one."""
    return {
        item.name: _calendar(item, published.get(f"{item.name}.ics", b""))
        for item in documents.items
        if isinstance(item, CalendarDocument)
    }


def render_item(item: Item, calendars: Mapping[str, RenderedFile]) -> tuple[RenderedFile, ...]:
    """Render the files of one item; calendars are rendered before, since emails carry them."""
    match item:
        case Letter(calendar=name):
            return _email(item, calendars[name].content if name else None)
        case Sheet():
            return (write_sheet(item),)
        case Page(document=document):
            page = forms.page_html(item)
            return (RenderedFile(f"{document.name}.html", "text/html", page.encode()),)
        case PlainText(document=document):
            text = forms.text(item)
            return (RenderedFile(f"{document.name}.txt", "text/plain", text.encode()),)
        case CalendarDocument(name=name):
            return (calendars[name],)


def _index(index: Index, pictures: Mapping[str, str]) -> RenderedFile:
    page = html.fill(
        "web/index.html.j2",
        document=index.document,
        index=index,
        pictures=pictures,
        footer=footer(index.document, PAGE),
    )
    return RenderedFile("index.html", "text/html", page.encode(), imprint=index.document.imprint)


def _email(letter: Letter, calendar: bytes | None) -> tuple[RenderedFile, ...]:
    document = letter.document
    pictures = _pictures(document)
    content_ids = {name: f"{name}@{letter.domain}" for name in map(_stem, pictures)}
    text = forms.email_text(letter)
    message = mail.Message(
        subject=letter.subject,
        sender=letter.sender,
        to=letter.to,
        reply_to=letter.reply_to,
        # No clock: nine o'clock on the day of issue.
        date=dt.datetime.combine(document.issued, dt.time(9), dt.UTC),
        message_id=letter.message_id,
        list_id=letter.list_id,
        list_unsubscribe=letter.unsubscribe,
        text=text,
        html=html.inline_styles(forms.email_html(letter, content_ids)),
        images=tuple(
            mail.InlineImage(content_ids[_stem(name)], name, content)
            for name, content in pictures.items()
        ),
        calendar=calendar,
        calendar_name=f"{letter.calendar}.ics" if letter.calendar else "",
    )
    return (
        RenderedFile(f"{document.name}.eml", "message/rfc822", mail.compose(message)),
        # For mailing services, which cannot take images that travel inside a message.
        RenderedFile(
            f"{document.name}.html",
            "text/html",
            html.inline_styles(forms.email_html(letter, {})).encode(),
        ),
        RenderedFile(f"{document.name}.txt", "text/plain", text.encode()),
    )


def _pictures(document: Document) -> dict[str, bytes]:
    """Return the images of an email by file name, the logo in its head first."""
    pictures = {"logo.png": in_mail(document.logo).content} if document.logo else {}
    pictures |= {
        # Twice the size at which it is shown, for high-resolution screens.
        f"{drawing.name}.png": svg_to_png(
            drawing.svg, width_px=round(2 * drawing.width), fonts=font_files()
        )
        for drawing in document.drawings
    }
    return pictures | {
        f"{photo.name}.jpg": scaled(photo.data, PHOTO_WIDTH) for photo in document.photos
    }


def _stem(name: str) -> str:
    return name.rpartition(".")[0]


def _calendar(document: CalendarDocument, published: bytes = b"") -> RenderedFile:
    content = write_calendar(
        [
            Event(
                uid=entry.uid,
                summary=entry.summary,
                description=entry.description,
                first=entry.first,
                last=entry.last,
                status="TENTATIVE" if entry.tentative else "CONFIRMED",
                categories=(entry.category,) if entry.category else (),
            )
            for entry in document.entries
        ],
        name=document.title,
        description=document.summary,
        prodid=PRODID,
        organizer=document.organizer,
        stamp=dt.datetime.combine(document.issued, dt.time(), dt.UTC),
        language=document.language,
        refresh=CALENDAR_REFRESH,
        published=published,
        fallen_away=document.fallen_away,
    )
    return RenderedFile(f"{document.name}.ics", "text/calendar", content)


def _record(name: str, data: Mapping[str, object]) -> RenderedFile:
    """Return a record as a JSON file: a plan indented, a list of figures one to a line."""
    text = _by_line(data) if "figures" in data else _json(data, indent=1)
    return RenderedFile(name, "application/json", f"{text}\n".encode())


def _by_line(data: Mapping[str, object]) -> str:
    """Write each figure, day or finding on a line of its own: indented, they fill megabytes."""
    parts = []
    for key, value in data.items():
        text = _json(value)
        if value and isinstance(value, list):
            text = "[\n" + ",\n".join(_json(entry) for entry in value) + "\n]"
        elif value and isinstance(value, dict):
            entries = (f"{_json(name)}: {_json(entry)}" for name, entry in value.items())
            text = "{\n" + ",\n".join(entries) + "\n}"
        parts.append(f"{_json(key)}: {text}")
    return "{\n" + ",\n".join(parts) + "\n}"


def _json(data: object, indent: int | None = None) -> str:
    # Not escaped: YAML cannot read back escapes of letters beyond the basic plane.
    return json.dumps(data, ensure_ascii=False, indent=indent, allow_nan=False)
