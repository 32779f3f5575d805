"""Reads the files of a pack back with other means than those that wrote them."""

from __future__ import annotations

import email
import email.policy
import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field
from email.message import EmailMessage
from html import unescape
from html.parser import HTMLParser
from typing import Any

import pypdfium2  # type: ignore[import-untyped,unused-ignore]
import pypdfium2.raw as pdfium  # type: ignore[import-untyped,unused-ignore]

from notices.drawings.model import Drawing

_SILENT = {"head", "style", "script", "title", "desc"}
"""What nobody sees; the tests of the drawings read what stands behind them."""
_BLOCKS = {"p", "li", "h1", "h2", "h3", "td", "th", "tr", "dt", "dd", "div", "ul", "table", "dl"}
_VOID = {"meta", "img", "br", "hr", "link", "input"}


AS_TYPED = str.maketrans("‘’“”", "''\"\"")
"""Which way marks turn is for the tests of typography: elsewhere what was typed must be found."""


def plain(text: str) -> str:
    """Return words with single blanks, without ligatures, and with marks as they are typed."""
    return " ".join(unicodedata.normalize("NFKC", text).translate(AS_TYPED).split())


_NO_LETTERS = {"Pd", "Cc", "Cf", "Cn"}


def tight(text: str) -> str:
    """Return letters alone, without blanks and hyphens: a page may break a line anywhere.

    A hyphen at the end of a line comes out of a PDF as a sign of its own.
    """
    folded = unicodedata.normalize("NFKC", text).translate(AS_TYPED)
    return "".join(
        c for c in folded if not c.isspace() and unicodedata.category(c) not in _NO_LETTERS
    )


@dataclass
class Page(HTMLParser):
    """What a person sees of a page, and what a machine finds in it."""

    source: str
    title: str = ""
    tables: list[list[list[str]]] = field(default_factory=list)
    links: list[str] = field(default_factory=list)
    images: list[dict[str, str]] = field(default_factory=list)
    tags: set[str] = field(default_factory=set)
    attributes: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self._open: list[str] = []
        self._said: list[str] = []
        self._cells: list[list[list[str]]] = []
        self.feed(self.source)
        self.close()
        assert self._open == [], f"not closed: {self._open}"

    @property
    def text(self) -> str:
        return plain("".join(self._said))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        given = {name: value or "" for name, value in attrs}
        self.attributes |= set(given)
        if tag == "img":
            self.images.append(given)
        if "href" in given:
            self.links.append(given["href"])
        if tag == "table":
            self._cells.append([])
        elif tag == "tr":
            self._cells[-1].append([])
        elif tag in ("td", "th"):
            self._cells[-1][-1].append("")
        if tag in _BLOCKS:
            self._said.append("\n")
        if tag not in _VOID:
            self._open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self._open.pop() == tag, f"</{tag}> closes something else"
        if tag == "table":
            rows = self._cells.pop()
            self.tables.append([[plain(cell) for cell in row] for row in rows])
        if tag in _BLOCKS:
            self._said.append("\n")

    def handle_data(self, data: str) -> None:
        if "title" in self._open:
            self.title += data
        if not _SILENT & set(self._open):
            self._said.append(data)
            if self._cells and self._cells[-1] and self._cells[-1][-1]:
                self._cells[-1][-1][-1] += data


@dataclass(frozen=True)
class Mail:
    """A message as a mail program takes it apart."""

    message: EmailMessage
    text: str
    html: str
    images: dict[str, bytes]
    calendars: list[bytes]

    @classmethod
    def read(cls, content: bytes) -> Mail:
        message = email.message_from_bytes(content, policy=email.policy.default)
        assert isinstance(message, EmailMessage)
        assert message.defects == []
        text, html = "", ""
        images: dict[str, bytes] = {}
        calendars: list[bytes] = []
        for part in message.walk():
            match part.get_content_type():
                case "text/plain":
                    text = part.get_content()
                case "text/html":
                    html = part.get_content()
                case "image/png" | "image/jpeg":
                    images[part["Content-ID"].strip("<>")] = part.get_content()
                case "text/calendar":
                    payload = part.get_payload(decode=True)
                    assert isinstance(payload, bytes)
                    calendars.append(payload)
        return cls(message, text, html, images, calendars)


@dataclass(frozen=True)
class Span:
    """Words of one size on a sheet, and how high above its foot they stand."""

    text: str
    size: float
    bottom: float
    page: int


@dataclass(frozen=True)
class Sheet:
    """A PDF as a reader sees it; sizes in points."""

    title: str
    texts: list[str]
    """Page by page."""
    spans: list[Span]

    @property
    def pages(self) -> int:
        return len(self.texts)

    @property
    def text(self) -> str:
        return "\n".join(self.texts)

    @classmethod
    def read(cls, content: bytes) -> Sheet:
        document: Any = pypdfium2.PdfDocument(content)
        try:
            texts, spans = [], []
            for number, page in enumerate(document, 1):
                words = page.get_textpage()
                texts.append(words.get_text_range())
                for entry in page.get_objects(
                    filter=[pdfium.FPDF_PAGEOBJ_TEXT], max_depth=9, textpage=words
                ):
                    matrix = entry.get_matrix()
                    size = entry.get_font_size() * abs(matrix.d)
                    if entry.extract().strip():
                        spans.append(Span(plain(entry.extract()), size, matrix.f, number))
            title = document.get_metadata_dict()["Title"]
            return cls(title, texts, spans)
        finally:
            document.close()


def words_in(name: str, content: bytes) -> dict[str, str]:
    """Return all words that a reader of a file meets, by the form in which they come."""
    match name.rpartition(".")[2]:
        case "eml":
            mail = Mail.read(content)
            page = Page(mail.html)
            return {
                f"{name}, text": unwrapped(mail.text),
                f"{name}, page": page.text,
            }
        case "html":
            return {name: Page(content.decode("utf-8")).text}
        case "txt":
            return {name: unwrapped(content.decode("utf-8"))}
        case "pdf":
            return {name: plain(Sheet.read(content).text)}
        case ending:
            raise ValueError(f"nobody reads .{ending}")


def unwrapped(text: str) -> str:
    """Return a plain text with the marks of its lists and headings taken out."""
    return plain(re.sub(r"(?m)^(?:\* |[=-]{3,}$)", "", text))


def without_drawings(text: str, drawings: Iterable[Drawing]) -> str:
    """Return the words of a page less those that stand in its drawings.

    A chart says the day, the month and the year far apart: the tests of the drawings read it.
    """
    for drawing in drawings:
        parts = re.findall(r"<text\b[^>]*>(.*?)</text>", drawing.svg, re.DOTALL)
        labels = [plain(unescape(re.sub("<[^>]*>", "", part))) for part in parts]
        run = r"\s*".join(r"\s*".join(map(re.escape, label.split())) for label in labels)
        if run:
            text = re.sub(run, " ", text)
    return text
