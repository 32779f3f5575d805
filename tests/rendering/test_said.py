"""What a file says has one digest whichever notice it is of, and another with any word or picture."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from notices.documents.model import (
    CalendarDocument,
    CalendarEntry,
    Document,
    Fit,
    Imprint,
    Item,
    Letter,
    Page,
    PlainText,
    Section,
    Sheet,
    file_names,
    with_imprint,
)
from notices.drawings.model import Drawing
from notices.programme.model import Edition
from notices.rendering.said import said_by
from notices.wording.blocks import Paragraph, Picture

FIRST = Imprint(Edition(dt.date(2027, 3, 1)))
SECOND = Imprint(Edition(dt.date(2027, 3, 8), 2), FIRST.edition)
CLUB = ("Fallow Moor", "course@fallowmoor.example")


def document(words: str = "Words.", svg: str = "<svg/>", *, draft: bool = False) -> Document:
    return Document(
        name="notice",
        title="Title",
        language="en-GB",
        club="Fallow Moor",
        imprint=FIRST,
        summary="Summary.",
        sections=(Section("words", (Paragraph.of(words), Picture("drawing"))),),
        facts=(),
        drawings=(Drawing("drawing", "Title", "Description", svg, 100, 50),),
        draft=draft,
    )


def letter(text: Document, subject: str = "Subject") -> Letter:
    identity, listed = "fallow-moor.notice", "Notices <notices.fallowmoor.example>"
    return Letter(text, subject, CLUB, CLUB, None, identity, listed, "", calendar="calendar")


def calendar(day: int = 9) -> CalendarDocument:
    first = dt.date(2027, 3, day)
    entries = (CalendarEntry("one@fallowmoor.example", "Work", "", first, first),)
    return CalendarDocument("calendar", "Work", "en-GB", "", FIRST, CLUB, entries)


FORMS = [Sheet(document(), "_reading"), Page(document()), PlainText(document()), letter(document())]
OTHERS = [document("Other words."), document(svg="<svg><g/></svg>"), document(draft=True)]


def said(item: Item, beside: Item | None = None) -> str:
    return said_by([beside or calendar(), item])[file_names(item)[0]]


@pytest.mark.parametrize("item", [*FORMS, calendar()], ids=lambda item: type(item).__name__)
def test_another_notice_says_the_same(item: Item) -> None:
    assert said(with_imprint(item, SECOND)) == said(item)


@pytest.mark.parametrize("item", FORMS, ids=lambda item: type(item).__name__)
def test_other_words_and_pictures_are_seen(item: Sheet | Page | PlainText | Letter) -> None:
    # Text alone has no pictures.
    others = [OTHERS[0], OTHERS[2]] if isinstance(item, PlainText) else OTHERS
    found = {said(item), *(said(replace(item, document=other)) for other in others)}
    assert len(found) == 1 + len(others)


def test_what_decides_the_setting_of_a_sheet_is_seen() -> None:
    sheet = Sheet(document(), "_reading")
    others = [replace(sheet, fits=(Fit("close"),)), replace(sheet, pages=2)]
    assert len({said(one) for one in (sheet, *others)}) == 3


def test_an_email_is_another_with_its_subject_and_with_the_calendar_that_it_carries() -> None:
    sent = letter(document())
    assert said(letter(document(), "Other")) != said(sent)
    assert said(sent, calendar(10)) != said(sent)
    assert said(calendar(10)) != said(calendar())


def test_all_files_of_an_email_go_together() -> None:
    found = said_by([letter(document()), calendar()])
    assert len({found[f"notice.{ending}"] for ending in ("eml", "html", "txt")}) == 1
