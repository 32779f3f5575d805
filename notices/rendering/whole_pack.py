"""All files of a pack, from its documents."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Callable

from notices.documents.index import Index
from notices.documents.model import CalendarDocument, Document, Letter
from notices.documents.pack import PackDocuments
from notices.paths import font_files, templates_folder
from notices.rendering import html, mail
from notices.rendering.calendar import Event, write_calendar
from notices.rendering.files import RenderedFile
from notices.rendering.letters import printable
from notices.rendering.pdf import Pdf, write_pdf
from notices.rendering.png import svg_to_png
from notices.rendering.text import plain_text
from notices.wording.dates import DateWords

PRODID = "-//Notices//Course calendar//EN"
CALENDAR_REFRESH = dt.timedelta(hours=12)

FITS: tuple[tuple[str, frozenset[str]], ...] = (
    ("grand", frozenset()),
    ("roomy", frozenset()),
    ("tight", frozenset()),
    ("tight close", frozenset()),
    ("tight", frozenset({"why"})),
    ("tight close", frozenset({"why"})),
    ("tight close", frozenset({"why", "weather"})),
    ("tight close dense", frozenset({"why"})),
    ("tight close dense", frozenset({"why", "weather"})),
)
"""Ways to set a sheet, largest first, tried until it fits one page.

Only the reasons may go, and what the weather must be, never a fact: where even that is too much, a second page follows.
"""


def render_pack(
    documents: PackDocuments, told: Callable[[int, int], None] = lambda _done, _of: None
) -> tuple[RenderedFile, ...]:
    """Render every file of a pack but its manifest.

    ``told`` hears how many of how many parts are done, for whoever waits.
    """
    calendar = _calendar(documents.calendar)
    parts: tuple[Callable[[], tuple[RenderedFile, ...]], ...] = (
        lambda: (_index(documents.index),),
        lambda: _email(documents.member_email, calendar.content),
        lambda: (_sheet(documents.board_notice),),
        lambda: (calendar,),
        lambda: tuple(_record(name, data) for name, data in documents.records.items()),
    )
    files: list[RenderedFile] = []
    for number, part in enumerate(parts):
        told(number, len(parts))
        files += part()
    told(len(parts), len(parts))
    return tuple(files)


def issued(document: Document) -> str:
    """Return the date of issue in words."""
    return DateWords(document.language, document.issued).date(document.issued)


def footer(document: Document) -> str:
    """Return the line that says whose notice it is, and of when."""
    return f"{document.club}. Issued {issued(document)}."


def _index(index: Index) -> RenderedFile:
    page = html.fill(
        "web/index.html.j2", document=index.document, index=index, footer=footer(index.document)
    )
    return RenderedFile("index.html", "text/html", page.encode())


def _email(letter: Letter, calendar: bytes) -> tuple[RenderedFile, ...]:
    document = letter.document
    domain = letter.sender[1].rpartition("@")[2]
    content_ids = {drawing.name: f"{drawing.name}@{domain}" for drawing in document.drawings}
    text = plain_text(document, footer(document))
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
        html=_email_html(letter, content_ids),
        images=tuple(
            mail.InlineImage(
                content_ids[drawing.name],
                f"{drawing.name}.png",
                # Twice the size at which it is shown, for fine screens.
                svg_to_png(drawing.svg, width_px=round(2 * drawing.width), fonts=font_files()),
            )
            for drawing in document.drawings
        ),
        calendar=calendar,
        calendar_name="calendar.ics",
    )
    return (
        RenderedFile(f"{document.name}.eml", "message/rfc822", mail.compose(message)),
        # A mailing service cannot take pictures that travel inside a message.
        RenderedFile(f"{document.name}.html", "text/html", _email_html(letter, {}).encode()),
        RenderedFile(f"{document.name}.txt", "text/plain", text.encode()),
    )


def _email_html(letter: Letter, pictures: dict[str, str]) -> str:
    document = letter.document
    page = html.fill(
        f"mail/{document.name}.html.j2",
        document=document,
        pictures=pictures,
        footer=footer(document),
    )
    return html.inline_styles(page)


def _sheet(document: Document) -> RenderedFile:
    pdf = _set(document, *FITS[0])
    for fit, left_out in FITS[1:]:
        if pdf.pages == 1:
            break
        pdf = _set(document, fit, left_out)
    return RenderedFile(f"{document.name}.pdf", "application/pdf", pdf.content)


def _set(document: Document, fit: str, left_out: frozenset[str]) -> Pdf:
    page = html.fill(
        f"print/{document.name}.html.j2",
        document=document,
        issued=issued(document),
        fit=fit,
        left_out=left_out,
    )
    return write_pdf(printable(page), base=templates_folder())


def _calendar(document: CalendarDocument) -> RenderedFile:
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
    )
    return RenderedFile(f"{document.name}.ics", "text/calendar", content)


def _record(name: str, data: object) -> RenderedFile:
    # Escapes beyond the basic plane cannot be read back as YAML: letters stay letters.
    text = json.dumps(data, ensure_ascii=False, indent=1, allow_nan=False) + "\n"
    return RenderedFile(name, "application/json", text.encode())
