"""The page for the club's site, and questions with answers: nothing is missing, and all stands alone."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from notices.documents.course_page import course_page
from notices.documents.member_email import member_email
from notices.documents.model import Page as PageItem
from notices.documents.model import Sheet as SheetItem
from notices.documents.questions_and_answers import question_list
from notices.rendering.whole_pack import render_item
from notices.wording.questions import questions
from notices.wording.words import Words
from tests.documents.reading import Page, Sheet, plain, tight
from tests.wording.small_plans import plan, words, work


@pytest.fixture(scope="module")
def told() -> Words:
    return words(
        plan(
            work(
                "hollow tining",
                "2027-08-09 to 2027-08-10",
                greens={"2027-08-09": "1-9", "2027-08-10": "10-18"},
                reserve_dates="2027-08-12",
            ),
            work("top dressing", "2027-08-09 to 2027-08-10", settings={"dressings": 2}),
            work("verticutting", "2027-06-01", greens="1-18"),
            closures=[{"what": "practice ground", "dates": "2027-08-09", "instead": "the nets"}],
            restrictions=[{"what": "buggies", "dates": "2027-08-09", "except": "the injured"}],
        )
    )


@pytest.fixture(scope="module")
def page(told: Words) -> Page:
    (file,) = render_item(PageItem(course_page(told.programme), "contents"), {})
    return Page(file.content.decode())


def test_the_page_says_each_fact(told: Words, page: Page) -> None:
    facts = course_page(told.programme).facts
    assert {fact.subject for fact in facts} >= {"when", "day", "your game", "answer"}
    for fact in facts:
        assert plain(fact.text) in page.text, fact


def test_the_days_of_the_work_stand_out_on_the_page_and_in_the_email(told: Words) -> None:
    (on_page,) = render_item(PageItem(course_page(told.programme), "contents"), {})
    letter = replace(member_email(told.programme), calendar="")
    sent = {file.name: file for file in render_item(letter, {})}
    for file in (on_page, sent["member-email.html"]):
        html = file.content.decode()
        # When it is, and of the other work, which is done in June.
        assert "<strong>Monday 9 and Tuesday 10 August 2027</strong>" in html, file.name
        assert "<strong>Tuesday 1 June" in html, file.name


def test_no_word_of_a_drawing_runs_out_of_it_in_a_font_of_the_screen(told: Words) -> None:
    (file,) = render_item(PageItem(course_page(told.programme), "contents"), {})
    html = file.content.decode()
    assert html.count("<text ") == html.count(" textLength=") > 50


def test_the_page_lists_every_day_by_date(page: Page) -> None:
    # The second dressing comes a week after the first by default.
    rows = next(table for table in page.tables if table[0][0] == "Date")[1:]
    assert [(row[0], row[1]) for row in rows] == [
        ("Tue 1 Jun", "Verticutting: all 18 greens"),
        ("Mon 9 Aug", "Hollow tining and top dressing: greens 1 to 9"),
        ("Mon 9 Aug", "Practice ground: closed"),
        ("Mon 9 Aug", "No buggies"),
        ("Tue 10 Aug", "Hollow tining and top dressing: greens 10 to 18"),
        ("Thu 12 Aug", "Reserve day: hollow tining and top dressing"),
        ("Mon 16 and Tue 17 Aug", "Top dressing again: all greens"),
    ]
    assert rows[1][2] == "Closed all day."
    assert rows[2][2] == "Please use the nets."


def test_the_page_needs_nothing_but_itself(page: Page) -> None:
    assert not page.tags & {"script", "img", "iframe", "link"}
    assert not any(name.startswith("on") for name in page.attributes)
    anchors = {link[1:] for link in page.links if link.startswith("#")}
    assert anchors
    assert anchors <= set(re.findall(r'id="([^"]+)"', page.source))
    assert "details" in page.tags


def test_the_ground_is_drawn_once_as_a_whole_and_behind_each_work(told: Words, page: Page) -> None:
    drawings = course_page(told.programme).drawings
    names = [drawing.name for drawing in drawings]
    assert len(names) == len(set(names))
    assert any(name.startswith("section-") for name in names)
    assert any(name.startswith("surface-") for name in names)
    assert page.source.count("<svg") == len(names)


def test_each_question_is_answered_on_page_and_sheet(told: Words) -> None:
    document = question_list(told.programme)
    asked = questions(told)
    assert [section.heading for section in document.sections if section.heading] == [
        one.question for one in asked
    ]
    (page,) = render_item(PageItem(document, "contents"), {})
    (pdf,) = render_item(SheetItem(document, "contents"), {})
    read, sheet = Page(page.content.decode()).text, tight(Sheet.read(pdf.content).text)
    for fact in document.facts:
        assert plain(fact.text) in read
        assert tight(fact.text) in sheet
    for one in asked:
        assert plain(one.question) in read
        # Once over its answer, once in the contents.
        assert sheet.count(tight(one.question)) == 2
