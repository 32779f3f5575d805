"""Change notices: what is different, to each reader whom it touches, and with no other date."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

import notices
from notices.documents.change_notice import change_notices
from notices.documents.model import Document, Entry, Letter, PlainText, Sheet
from notices.programme.model import Programme
from notices.rendering.sheets import write_sheet
from notices.rendering.text import plain_text
from notices.since import before, follow
from notices.wording.blocks import Paragraph, Table
from notices.wording.text_message import ONE_PART, characters
from tests.documents.building import EXAMPLES, changed, days_of
from tests.documents.dates_in_words import days_in, read_dates
from tests.documents.reading import plain, words_in

DAY = dt.date(2027, 8, 20)
WITHY = EXAMPLES / "withy-hollow" / "plan.yaml"


def followed(folder: Path, *replaced: tuple[str, str]) -> Programme:
    """The example after a change to its text, as the next notice."""
    path = changed("withy-hollow", folder, *replaced)
    plan = notices.load_plan(path).plan
    return follow(notices.work_out(plan, DAY), plan, before(WITHY, DAY))


def files(entry: Entry) -> dict[str, Document]:
    return {
        item.document.name: item.document
        for item in entry.items
        if isinstance(item, Letter | Sheet | PlainText)
    }


@pytest.fixture(scope="module")
def moved(tmp_path_factory: pytest.TempPathFactory) -> Programme:
    folder = tmp_path_factory.mktemp("moved")
    return followed(folder, ("2027-08-23 to 2027-08-29", "2027-08-24 to 2027-08-30"))


@pytest.fixture(scope="module")
def entry(moved: Programme) -> Entry:
    found = change_notices(moved)
    assert found is not None
    return found


def test_it_tells_the_change_and_what_holds_now(entry: Entry) -> None:
    text = " ".join(plain_text(files(entry)["change-notice"], "").split())
    assert "New dates: the greens renovation" in text
    assert "This changes our notice of 19 July 2027." in text
    assert "is now from Tuesday 24 to Monday 30 August, not from Monday 23" in text
    assert "Everything else stands." in text
    assert "When: Tuesday 24 to Monday 30 August 2027." in text


def test_it_says_no_date_that_is_in_neither_plan(moved: Programme, entry: Entry) -> None:
    assert moved.earlier is not None
    known = days_of(moved) | days_of(moved.earlier)
    for document in files(entry).values():
        text = plain_text(document, "")
        assert set(days_in(read_dates(text, moved.issued))) <= known, document.name


def test_every_fact_stands_in_it_word_for_word(entry: Entry) -> None:
    for document in files(entry).values():
        text = " ".join(plain_text(document, "").split())
        assert [fact.text for fact in document.facts if fact.text not in text] == []


def test_the_sheets_take_one_page_and_say_the_same(entry: Entry) -> None:
    sheets = [item for item in entry.items if isinstance(item, Sheet)]
    assert [sheet.document.name for sheet in sheets] == ["change-notice-a4", "change-slip"]
    pdf = write_sheet(sheets[0])
    (text,) = words_in(pdf.name, pdf.content).values()
    assert "Everything else stands." in plain(text)
    assert "Page 1 of 1" in plain(text)


def test_the_slip_has_the_days_that_differ_and_no_other(moved: Programme, entry: Entry) -> None:
    assert moved.earlier is not None
    slip = files(entry)["change-slip"]
    (table,) = [
        block for part in slip.sections for block in part.blocks if isinstance(block, Table)
    ]
    # Greens 1 to 3 were to be done on Monday 23 August and are done a day later.
    first = table.rows[0]
    assert first[0] == "Monday 23 August"
    assert first[1].startswith("Greens 1 to 3")
    assert first[1].endswith("closed")
    assert first[2] == "All open"
    assert all(row[1] != row[2] for row in table.rows)


def test_the_short_message_goes_as_one(entry: Entry) -> None:
    document = files(entry)["change-short-message"]
    (paragraph,) = document.sections[0].blocks
    assert isinstance(paragraph, Paragraph)
    assert characters(paragraph.text) <= ONE_PART
    # Whoever reads no more than this must know the new days.
    assert "Tuesday 24 to Monday 30 August" in paragraph.text


def test_the_reason_goes_with_the_new_days(tmp_path: Path) -> None:
    text = WITHY.read_text("utf-8")
    old = (
        "    dates: 2027-08-03 to 2027-08-04\n"
        '    greens: {2027-08-03: 1-9, 2027-08-04: "10-18, Putting green"}\n'
    )
    assert old in text
    new = (
        "    dates: 2027-08-05 to 2027-08-06\n    put_off_because: heavy rain\n"
        '    greens: {2027-08-05: 1-9, 2027-08-06: "10-18, Putting green"}\n'
    )
    found = change_notices(followed(tmp_path, (old, new)))
    assert found is not None
    short, notice = (
        " ".join(plain_text(files(found)[name], "").split())
        for name in ("change-short-message", "change-notice")
    )
    assert "Thursday 5 to Friday 6 August" in short or "Thursday 5 and Friday 6 August" in short
    assert "The reason: heavy rain." in short
    assert "The reason: heavy rain." in notice


def test_nobody_is_told_what_does_not_touch_them(tmp_path: Path) -> None:
    assert change_notices(followed(tmp_path)) is None
    thicker = followed(tmp_path, ("blade_width: 1.5 mm", "blade_width: 1.6 mm"))
    assert change_notices(thicker) is None
    reserve = followed(tmp_path, ("    reserve_dates: 2027-11-16\n", ""))
    found = change_notices(reserve)
    assert found is not None
    assert "change-slip" not in files(found)
    assert files(found)["change-notice"].title == "Changes to our notice of 19 July 2027"


def test_a_first_notice_has_none() -> None:
    plan = notices.load_plan(WITHY).plan
    assert change_notices(notices.work_out(plan, DAY)) is None
