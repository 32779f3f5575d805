"""The worst plan that can be read: its words are shown in every file, and nothing of them happens."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

import icalendar

from tests.documents.building import BuiltPack
from tests.documents.reading import Mail, Page, Sheet, plain, tight, unwrapped

OURS = (
    "a body br caption code dd details div dl dt figcaption figure footer h1 h2 h3 head header html"
    " img li main meta nav ol p span strong style summary table tbody td th thead title tr ul"
    " svg g rect path circle line text tspan desc polyline polygon ellipse"
)
"""Elements that our templates write. None of those that the plan tries to smuggle in is among them:
script, iframe, b, i, u, em and, since HTML takes any word for one, hall, deputy or works."""

CLUB = "The Ancient & Honourable <script>alert(1)</script>"
"""How the club's name begins: it stands at the head of everything."""


def pages(pack: BuiltPack) -> Iterator[tuple[str, str]]:
    for name, content in pack.files.items():
        if name.endswith(".html"):
            yield name, content.decode("utf-8")
        elif name.endswith(".eml"):
            yield name, Mail.read(content).html


def calendars(pack: BuiltPack) -> Iterator[bytes]:
    for name, content in pack.files.items():
        if name.endswith(".ics"):
            yield content
        elif name.endswith(".eml"):
            yield from Mail.read(content).calendars


def test_no_page_holds_an_element_of_theirs(hostile_pack: BuiltPack) -> None:
    for name, source in pages(hostile_pack):
        page = Page(source)
        assert page.tags <= set(OURS.split()), name
        assert not [key for key in page.attributes if key.startswith("on")], name
        assert all(
            link.startswith(("#", "https:", "mailto:")) or link in hostile_pack.files
            for link in page.links
        ), name
        styles = "".join(re.findall(r"<style[^>]*>(.*?)</style>", source, re.DOTALL))
        assert "display:none" not in styles, name
        assert CLUB in page.text, name


def test_templates_are_not_filled_from_a_plan(hostile_pack: BuiltPack) -> None:
    for name, source in pages(hostile_pack):
        assert plain("“{{ 7*7 }}”") in Page(source).text, name
    announced = hostile_pack.files["member-email.eml"]
    assert "{# gone #} \\ always" in Page(Mail.read(announced).html).text


def test_all_words_stand_in_the_announcement(hostile_pack: BuiltPack) -> None:
    mail = Mail.read(hostile_pack.files["member-email.eml"])
    for text in (
        Page(mail.html).text,
        unwrapped(mail.text),
        unwrapped(hostile_pack.text("member-email.txt")),
    ):
        for words in (
            "Ask </style> <style> *{display:none} </style> in the clubhouse, &amp; not &lt;elsewhere&gt;",
            "SUMMARY:not ours; a\\, b\\n ]]> <!-- gone --> “quoted” ‘curly’ 大会 ⛳️ مرحبا שלום",
            "Donaudampfschifffahrtsmedal",
            "buggies & <trolleys>",
            "the Greens & <Works> Committee",
        ):
            assert plain(words).casefold() in text.casefold(), words


def test_every_text_and_sheet_is_the_clubs(hostile_pack: BuiltPack) -> None:
    for name, content in hostile_pack.files.items():
        if name.endswith(".txt") and name != "short-messages.txt":
            assert CLUB in plain(content.decode("utf-8")), name
        elif name.endswith(".pdf"):
            sheet = Sheet.read(content)
            for text in sheet.texts:  # in the foot, out of a style sheet; a board has none
                assert "TheAncient&Honourable" in tight(text) or "board" in name, name
            assert tight(CLUB) in tight(sheet.text), name
            assert CLUB in sheet.title, name


def test_a_message_goes_to_nobody_else(hostile_pack: BuiltPack) -> None:
    known = (
        "From To Reply-To Subject Date Message-ID Auto-Submitted List-Id List-Unsubscribe X-Unsent"
        " MIME-Version Content-Type"
    )
    for name, content in hostile_pack.files.items():
        if not name.endswith(".eml"):
            continue
        message = Mail.read(content).message
        assert set(message.keys()) <= set(known.split()), name
        for field in ("From", "To"):
            assert len(message[field].addresses) == 1, name
            assert message[field].addresses[0].domain == "ancient.example", name
        assert "\n" not in str(message["Subject"])


def test_a_calendar_holds_no_entry_of_theirs(hostile_pack: BuiltPack) -> None:
    found = list(calendars(hostile_pack))
    assert len(found) >= 3
    for content in found:
        lines = content.split(b"\r\n")
        assert all(len(line) <= 75 for line in lines)  # octets, RFC 5545 section 3.1
        assert all(b"\n" not in line for line in lines)
        events = icalendar.Calendar.from_ical(content).walk("VEVENT")
        assert lines.count(b"BEGIN:VEVENT") == len(events) > 0
        for event in events:
            assert "ATTENDEE" not in event
            assert str(event["SUMMARY"]) != "not ours; a, b"
            assert re.fullmatch(r"[a-z0-9-]+@ancient\.example", str(event["UID"]))


def test_drawings_stay_drawings(hostile_pack: BuiltPack) -> None:
    drawings = {d.svg for document in hostile_pack.documents.documents for d in document.drawings}
    assert drawings
    for drawing in drawings:
        tags = {element.tag for element in ET.fromstring(drawing).iter()}  # noqa: S314
        assert {tag.rpartition("}")[2] for tag in tags} <= set(OURS.split())


def test_files_have_names_that_any_disk_takes(hostile_pack: BuiltPack) -> None:
    for name in hostile_pack.files:
        assert re.fullmatch(r"[a-z0-9-]{1,80}\.[a-z]+", name), name


def test_the_plan_inside_is_the_plan(hostile_pack: BuiltPack) -> None:
    plan = json.loads(hostile_pack.text("plan.json"))
    assert plan["club"]["name"] == hostile_pack.programme.club.name
    assert plan["club"]["name"].endswith("“{{ 7*7 }}” 'et al.' \\")
