"""A notice as an email file (.eml): plain text and HTML, drawings, and a calendar attached.

The standard library builds the body. The header fields at the top are written here instead,
because they carry text that people typed: the library's folding of such fields differs between
Python releases (the same message must give the same bytes everywhere), loses the quotes around
a long name with a comma, and turns a long List-Unsubscribe address into encoded words.
"""

from __future__ import annotations

import datetime as dt
import email.policy
import email.utils
import re
import unicodedata
from dataclasses import dataclass
from email.message import EmailMessage

_LINE = 76
"""Longest line with an encoded word (RFC 2047 section 2) or quoted-printable text
(RFC 2045 section 6.7). The library's own SMTP policy writes 78."""

_ENCODED_WORD = 75
"""Longest encoded word, its delimiters included (RFC 2047 section 2)."""

_POLICY = email.policy.EmailPolicy(
    linesep="\r\n",  # RFC 5322 section 2.1
    max_line_length=_LINE,
    cte_type="7bit",  # RFC 2045 section 2.7: survives every relay
    raise_on_defect=True,
)

_ATOM = r"[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+"  # RFC 5322 section 3.2.3
_DOT_ATOM = rf"{_ATOM}(?:\.{_ATOM})*"
_ADDR_SPEC = re.compile(rf"{_DOT_ATOM}@{_DOT_ATOM}")  # RFC 5322 section 3.4.1
_MESSAGE_ID = re.compile(rf"<{_DOT_ATOM}@{_DOT_ATOM}>")  # RFC 5322 section 3.6.4
_CONTENT_ID = re.compile(rf"{_DOT_ATOM}@{_DOT_ATOM}")  # RFC 2392 section 2
_LIST_ID = re.compile(rf"(?P<phrase>.*?)\s*(?P<id><{_DOT_ATOM}>)", re.DOTALL)  # RFC 2919 section 3
_MAILTO = re.compile(r"mailto:[\x21-\x3b\x3d\x3f-\x7e]+")  # RFC 6068; no space, "<" or ">"
_FILE_NAME = re.compile(r"[A-Za-z0-9_][A-Za-z0-9_.-]*")
_PLAIN_WORDS = re.compile(rf"{_ATOM}(?: {_ATOM})*")
_LONGEST_FIELD = 998  # octets of a line, RFC 5322 section 2.1.1


@dataclass(frozen=True)
class InlineImage:
    """A drawing or photograph that the HTML refers to by ``cid:``."""

    content_id: str
    """Content ID without brackets and without "cid:", such as "course@club.example"."""
    filename: str
    content: bytes
    """PNG file, or a JPEG file if the file name ends in .jpg."""


@dataclass(frozen=True)
class Message:
    """Content and header fields of one email."""

    subject: str
    sender: tuple[str, str]
    """Name and address of the sender."""
    to: tuple[str, str]
    """Name and address of the club itself or of a group, never of one member."""
    reply_to: tuple[str, str] | None
    date: dt.datetime
    """Date with its time zone."""
    message_id: str
    """Message ID with its angle brackets."""
    list_id: str | None
    list_unsubscribe: str | None
    """mailto: URL without brackets."""
    text: str
    html: str
    images: tuple[InlineImage, ...]
    calendar: bytes | None
    calendar_name: str
    draft: bool = True
    """Whether a mail program should open it ready to be sent."""


def compose(message: Message) -> bytes:
    """Write the message as an .eml file.

    Control characters and line ends in names and in the subject become spaces, so that nobody can
    smuggle in a header field. A multipart layer that would hold a single part is left out.

    Parameters
    ----------
    message
        Message to write.

    Returns
    -------
    bytes
        The .eml file; the same for the same message.

    Raises
    ------
    ValueError
        If an address, an identifier or a file name is malformed, the date has no time zone, or
        the calendar does not say METHOD:PUBLISH.
    """
    return _head(message) + _body(message).as_bytes(policy=_POLICY)


def _head(message: Message) -> bytes:
    if message.date.utcoffset() is None:
        raise ValueError("the date of a message needs a time zone")  # RFC 5322 section 3.3
    subject = _one_line(message.subject)
    if not subject:
        raise ValueError("a message needs a subject")
    lines = [
        _mailbox("From", message.sender),
        _mailbox("To", message.to),
    ]
    if message.reply_to is not None:
        lines.append(_mailbox("Reply-To", message.reply_to))
    lines += [
        _text_field("Subject", subject),
        f"Date: {email.utils.format_datetime(message.date)}",
        f"Message-ID: {_checked(_MESSAGE_ID, message.message_id, 'message identifier')}",
        "Auto-Submitted: auto-generated",  # RFC 3834 section 5: no holiday replies, please
    ]
    if message.list_id is not None:
        lines.append(_list_id(message.list_id))
    if message.list_unsubscribe is not None:
        # RFC 2369 section 2: one line, never folded inside the brackets, never encoded.
        # No List-Unsubscribe-Post: RFC 8058 wants an https address and a DKIM signature.
        url = _checked(_MAILTO, message.list_unsubscribe, "mailto: address to unsubscribe at")
        lines.append(f"List-Unsubscribe: <{url}>")
    if message.draft:
        lines.append("X-Unsent: 1")  # understood by Outlook, ignored by everyone else
    for line in lines:
        if any(len(part) > _LONGEST_FIELD for part in line.split("\r\n")):
            raise ValueError(f"the field {line.split(':')[0]} is too long")
    return "".join(f"{line}\r\n" for line in lines).encode("ascii")


def _body(message: Message) -> EmailMessage:
    body = EmailMessage(policy=_POLICY)
    # RFC 2046 section 5.1.4: the plainest version first.
    body.set_content(message.text, cte="quoted-printable")
    body.add_alternative(message.html, subtype="html", cte="quoted-printable")
    if message.images:
        _show_images(body, message.images)
    if message.calendar is not None:
        _attach_calendar(body, message.calendar, message.calendar_name)
    parts = (part for part in body.walk() if part.is_multipart())
    for number, part in enumerate(parts):
        # Neither quoted-printable nor base64 can hold "=_" (RFC 2045 section 6.7, note), so a
        # fixed boundary is safe, and the library's own would be random.
        part.set_boundary(f"=_notice_{number}")
    return body


def _show_images(body: EmailMessage, images: tuple[InlineImage, ...]) -> None:
    root = list(body.iter_parts())[1]
    if not isinstance(root, EmailMessage):  # pragma: no cover - what the library always makes
        raise TypeError
    seen: set[str] = set()
    for image in images:
        identity = _checked(_CONTENT_ID, image.content_id, "content identifier")
        if identity in seen:
            raise ValueError(f"two images are called {identity}")
        seen.add(identity)
        root.add_related(
            image.content,
            "image",
            "jpeg" if image.filename.endswith(".jpg") else "png",
            cid=f"<{identity}>",
            filename=_checked(_FILE_NAME, image.filename, "file name"),
            disposition="inline",  # RFC 2183 section 2.1
        )
    root.set_param("type", "text/html")  # RFC 2387 section 3.1 requires it


def _attach_calendar(body: EmailMessage, calendar: bytes, name: str) -> None:
    # RFC 6047 section 2.4: the parameter below repeats METHOD from the file.
    if b"\r\nMETHOD:PUBLISH\r\n" not in calendar:
        raise ValueError("the calendar of a notice has to say METHOD:PUBLISH")
    # An attachment, not an alternative, which would be shown in place of the text. Base64, because
    # some mail programs rewrite the line ends of a text part.
    body.add_attachment(
        calendar,
        maintype="text",
        subtype="calendar",
        cte="base64",
        filename=_checked(_FILE_NAME, name, "file name"),
        params={"charset": "utf-8", "method": "PUBLISH", "component": "VEVENT"},
    )


def _checked(pattern: re.Pattern[str], value: str, what: str) -> str:
    if not pattern.fullmatch(value):
        raise ValueError(f"{value!r} is not a {what}")
    return value


def _one_line(words: str) -> str:
    """Return the text with every run of control characters and white space as a single space."""
    return " ".join(
        "".join(" " if _breaks(character) else character for character in words).split()
    )


def _breaks(character: str) -> bool:
    # Cc holds CR, LF and NUL; Zl and Zp are the other line ends; Cs cannot be written as UTF-8.
    return unicodedata.category(character) in {"Cc", "Cs", "Zl", "Zp"}


def _mailbox(name: str, mailbox: tuple[str, str]) -> str:
    """Write a field with one name and address (RFC 5322 section 3.4)."""
    words, address = _one_line(mailbox[0]), mailbox[1]
    target = f"<{_checked(_ADDR_SPEC, address, 'mail address')}>"
    if not words:
        return f"{name}: {target}"
    line = f"{name}: {_phrase(words, len(name) + 2)}"
    last = line.rpartition("\r\n")[2]
    return f"{line} {target}" if len(last) + 1 + len(target) <= _LINE else f"{line}\r\n {target}"


def _phrase(words: str, column: int) -> str:
    """Write a name as the simplest valid form: plain, in quotes, or encoded."""
    if words.isascii() and "=?" not in words:
        quoted = '"' + re.sub(r'(["\\])', r"\\\1", words) + '"'  # RFC 5322 section 3.2.4
        plain = words if _PLAIN_WORDS.fullmatch(words) else quoted
        if column + len(plain) <= _LINE:
            return plain
    return _encoded(words, column)


def _text_field(name: str, words: str) -> str:
    """Write a field of free text, encoded if it is long or not ASCII."""
    column = len(name) + 2
    # "=?" in plain text would be read as the start of an encoded word.
    if words.isascii() and "=?" not in words and column + len(words) <= _LINE:
        return f"{name}: {words}"
    return f"{name}: {_encoded(words, column)}"


def _encoded(words: str, column: int) -> str:
    """Write a text as a series of encoded words that split no character (RFC 2047).

    The encoding is "Q" with only the few characters that section 5 (3) allows in a name, which are
    valid in every field.
    """
    start, end = "=?utf-8?q?", "?="
    rows, row = [], ""
    room = min(_ENCODED_WORD, _LINE - column) - len(start) - len(end)
    for character in words:
        code = _q(character)
        if row and len(row) + len(code) > room:
            rows.append(row)
            row, room = "", _ENCODED_WORD - len(start) - len(end)
        row += code
    rows.append(row)
    # The line end and space between two encoded words are not part of the text (section 6.2).
    return "\r\n ".join(f"{start}{row}{end}" for row in rows)


def _q(character: str) -> str:
    if character == " ":
        return "_"
    if character.isascii() and character.isalnum():
        return character
    return "".join(f"={byte:02X}" for byte in character.encode("utf-8"))


def _list_id(value: str) -> str:
    found = _LIST_ID.fullmatch(value)
    if not found:
        raise ValueError(f"{value!r} is not a list identifier")
    phrase = _one_line(found["phrase"])
    # RFC 2919 section 3: only the part in brackets identifies the list. A name that would have to
    # be encoded is left out, because some programs match this field as text.
    if not phrase or not phrase.isascii() or "=?" in phrase:
        return f"List-Id: {found['id']}"
    if not _PLAIN_WORDS.fullmatch(phrase):
        phrase = '"' + re.sub(r'(["\\])', r"\\\1", phrase) + '"'
    return f"List-Id: {phrase} {found['id']}"
