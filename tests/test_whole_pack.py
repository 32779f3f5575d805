"""Every file of every example, read back with other means, says what the programme says."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import icalendar
import pytest

from notices.documents.model import CalendarDocument, Document, file_names
from notices.operations import Opening, WhileWorking
from notices.programme.best_days import best_days
from notices.programme.model import Period, Programme
from notices.programme.news import last_day_of_news
from notices.wording.circumstances import go_or_no_go
from notices.wording.finding_words import finding_in_words
from notices.wording.period import PeriodWords
from notices.wording.words import Words
from tests.documents.building import EXAMPLES, BuiltPack, days_of, of
from tests.documents.dates_in_words import days_in, read_dates, read_greens
from tests.documents.reading import (
    Mail,
    Page,
    Sheet,
    plain,
    tight,
    unwrapped,
    without_drawings,
    words_in,
)

FILES = {
    "board-notice-a3.pdf",
    "board-notice-a4.pdf",
    "board-notice-large-print.pdf",
    "calendar.ics",
    "committee-briefing.pdf",
    "counter-handout.pdf",
    "course-page.html",
    "index.html",
    "manifest.json",
    "member-email.eml",
    "member-email.html",
    "member-email.txt",
    "plan.json",
    "programme.json",
    "team-calendar.ics",
    "starter-sheet.pdf",
    "tee-sign.pdf",
    "questions-and-answers.html",
    "questions-and-answers.pdf",
    "visitor-notice.html",
    "visitor-notice.pdf",
    "visitor-notice.txt",
}
RECORDS = {"index.html", "manifest.json", "plan.json", "programme.json"}
PARTIES = {
    "alderfleet-park": "visitor-notice-society-of-old-millers",
    "skelmarram-links": "visitor-notice-autumn-open",
}
"""Examples with a visiting party: it has a notice of its own."""


def main_period(programme: Programme) -> Period:
    """The period that opens the greens most: every example with works leads with it."""
    return max(programme.periods, key=lambda period: (period.noticed, len(period.greens)))


def head_of(programme: Programme) -> dt.date:
    """The month over the column of days on the board."""
    return main_period(programme).days[0] if programme.periods else programme.issued


def documents(pack: BuiltPack) -> Iterator[tuple[Document, dict[str, str]]]:
    """Yield every document with its words as they are read back, form by form."""
    for item in pack.documents.items:
        if isinstance(item, CalendarDocument):
            continue
        read: dict[str, str] = {}
        for name in file_names(item):
            read |= words_in(name, pack.files[name])
        yield item.document, read


def texts(pack: BuiltPack) -> Iterator[tuple[str, str]]:
    """Yield all words that anybody may read, by file."""
    for document, forms in documents(pack):
        for form, text in forms.items():
            yield form, without_drawings(text, document.drawings)
    mail = Mail.read(pack.files["member-email.eml"])
    yield "eml, subject", str(mail.message["Subject"])
    yield "eml, words for the picture", " ".join(i["alt"] for i in Page(mail.html).images)
    calendar = icalendar.Calendar.from_ical(pack.files["calendar.ics"])
    for event in calendar.walk("VEVENT"):
        yield f"calendar, {event['UID']}", f"{event['SUMMARY']}\n{event['DESCRIPTION']}"


IN_CASE = ("called-off", "stopped-part-way", "recovery-late", "back-to-normal")
LATER = {
    "alderfleet-park": 3,
    "live-oak": 1,
    "marlpit-common": 1,
    "skelmarram-links": 1,
    "tansy-down": 1,
    "withy-hollow": 2,
}
"""In how many periods golfers notice the work: each has its reminder, and word when it is done."""


def messages_of(pack: BuiltPack) -> set[str]:
    """Every message after the announcement, and the short ones."""
    if not pack.programme.periods or pack.folder is None:
        return set()
    names = [name.removesuffix(".eml") for name in pack.files if name.endswith(".eml")]
    moments = ("reminder",) if pack.programme.mailings else ("reminder", "finished")
    for moment in moments:
        sent = [name for name in names if name.startswith(f"member-email-{moment}")]
        assert len(sent) == LATER[pack.folder.name]
    for moment in IN_CASE:
        assert f"member-email-{moment}" in names
    endings = ("eml", "html", "txt")
    later = {f"{name}.{ending}" for name in names for ending in endings}
    return later | {"short-messages.txt"}


def files_of(pack: BuiltPack) -> set[str]:
    """Every file that a pack should hold: those of all packs, and what this one has besides."""
    party = PARTIES.get(pack.folder.name) if pack.folder else None
    own = {f"{party}.{ending}" for ending in ("html", "pdf", "txt") if party}
    own |= {"green-in-true-size.pdf"} if pack.programme.periods else set()
    entered = {name for entry in pack.documents.entries for name in entry.files}
    assert ("team-sheet.pdf" in entered) is bool(pack.programme.works)
    assert FILES | messages_of(pack) | own <= entered | RECORDS
    return entered | RECORDS


def test_the_pack_is_whole(pack: BuiltPack) -> None:
    files = files_of(pack)
    assert set(pack.files) == files
    listed = json.loads(pack.text("manifest.json"))["files"]
    named = {entry["name"]: entry["sha256"] for entry in listed}
    assert set(named) == files - {"manifest.json"}
    for name, digest in named.items():
        assert hashlib.sha256(pack.files[name]).hexdigest() == digest


FOOT = 19 / 25.4 * 72
"""Margin below the text of a sheet that is read in the hand [pt]."""

BOARD_SIZE, FURTHER_SIZE, LIST_SIZE, SMALLEST, LARGE_PRINT, HANDOUT = (
    27.99,
    17.99,
    16.99,
    13.99,
    17.99,
    11.99,
)
"""28, 18, 17, 14, 18 and 12 pt, as a PDF writes them in binary fractions."""


# Facts


def test_each_document_declares_its_facts(pack: BuiltPack) -> None:
    for document in pack.documents.documents:
        assert document.facts, document.name
    for name in ("member-email", "board-notice-a4"):
        subjects = {fact.subject for fact in pack.documents.document(name).facts}
        if not pack.programme.periods:
            assert subjects <= {"your game", "rules", "also", "besides"}
            continue
        assert {"when", "good again"} <= subjects
    named = {fact.subject for fact in pack.documents.document("board-notice-a4").facts}
    assert ("day" in named) is bool(pack.programme.periods)


def test_every_fact_stands_in_each_form_of_its_document(pack: BuiltPack) -> None:
    for document, forms in documents(pack):
        for fact in document.facts:
            for form, text in forms.items():
                # A page of paper may break a line, or a word at its hyphen, anywhere.
                paper = form.endswith(".pdf")
                found = tight(fact.text) in tight(text) if paper else plain(fact.text) in text
                assert found, f"{fact.subject} is missing in {form}: {fact.text}"


def test_a_fact_with_days_names_just_those(pack: BuiltPack) -> None:
    programme = pack.programme
    head = head_of(programme)
    facts = [fact for document in pack.documents.documents for fact in document.facts]
    assert any(fact.dates for fact in facts) or not programme.works
    for fact in facts:
        if fact.dates:
            assert days_in(read_dates(fact.text, programme.issued, head)) == tuple(fact.dates)


def test_the_sheets_of_the_board_say_the_same(pack: BuiltPack) -> None:
    a4, a3, large = (
        pack.documents.document(f"board-notice-{size}") for size in ("a4", "a3", "large-print")
    )
    assert a4.facts == a3.facts == large.facts


def test_a_larger_board_is_the_same_sheet_larger(pack: BuiltPack) -> None:
    a4, a3 = (Sheet.read(pack.files[f"board-notice-{size}.pdf"]) for size in ("a4", "a3"))
    assert a3.pages == 1
    # A3 is A4 with each side the square root of two longer (ISO 216).
    for small, large in zip(a4.spans, a3.spans, strict=False):
        assert large.size == pytest.approx(small.size * 2**0.5, rel=0.001)


def test_nothing_in_large_print_is_small(pack: BuiltPack) -> None:
    sheet = Sheet.read(pack.files["board-notice-large-print.pdf"])
    assert min(span.size for span in sheet.spans) >= LARGE_PRINT
    for number, text in enumerate(sheet.texts, 1):
        assert f"Page {number} of {sheet.pages}" in plain(text)


def test_the_handout_is_one_sheet_in_letters_for_everybody(pack: BuiltPack) -> None:
    sheet = Sheet.read(pack.files["counter-handout.pdf"])
    assert sheet.pages <= 2
    # Below the text stand only the club, the date and the number of the page.
    text = [span for span in sheet.spans if span.bottom > FOOT]
    assert min(span.size for span in text) >= HANDOUT
    small = plain(" ".join(span.text for span in sheet.spans if span.bottom <= FOOT))
    assert small.count("Page ") == sheet.pages


def test_the_handout_says_what_the_email_says(working_pack: BuiltPack) -> None:
    handout = working_pack.documents.document("counter-handout")
    email = working_pack.documents.document("member-email")
    main = ("when", "good again", "day", "your game")
    said = {(fact.subject, fact.text) for fact in handout.facts if fact.subject in main}
    assert said <= {(fact.subject, fact.text) for fact in email.facts}
    days = {day for fact in email.facts if fact.subject in ("when", "day") for day in fact.dates}
    text = Sheet.read(working_pack.files["counter-handout.pdf"]).text
    assert days <= set(days_in(read_dates(text, working_pack.programme.issued)))


def test_a_committee_reads_eight_pages_at_most(pack: BuiltPack) -> None:
    assert Sheet.read(pack.files["committee-briefing.pdf"]).pages <= 8


# Dates and greens


def test_no_date_is_said_that_the_programme_does_not_have(pack: BuiltPack) -> None:
    programme = pack.programme
    known = days_of(programme) | {last_day_of_news(programme)}
    if programme.periods:
        # Between two works visitors are told the first clear day, the last, and all that lie between.
        best = best_days(programme, main_period(programme))
        if best.after and best.next:
            clear = (best.next - best.after).days
            known |= {best.after + dt.timedelta(days=number) for number in range(1, clear)}
    for where, text in texts(pack):
        # Each weekday named is checked by the reader itself.
        for said in read_dates(text, programme.issued, head_of(programme)):
            if said.rough:
                assert known & set(said.days), f"{where}: {said.text}"
            else:
                assert set(said.days) <= known, f"{where}: {said.text}"


def test_the_front_page_names_the_days_of_the_works(pack: BuiltPack) -> None:
    programme = pack.programme
    page = Page(pack.text("index.html"))
    # Findings name days as the plan file does.
    before = page.text.split("What is planned")[1].split("Findings still open")[0]
    said = set(days_in(read_dates(before, programme.issued)))
    assert said >= {day for period in programme.periods for day in period.days}
    assert said <= days_of(programme) | {last_day_of_news(programme)}


def expected_days(period: Period) -> dict[dt.date, set[str]]:
    """Which greens are opened or covered on which day, from the visits of the works."""
    days: dict[dt.date, set[str]] = {}
    for work in period.opening_works or period.works:
        for visit in work.main_visits:
            days.setdefault(visit.date, set()).update(visit.greens)
    return days


def as_read(
    rows: list[list[str]], programme: Programme, head: dt.date | None = None
) -> dict[dt.date, set[str]]:
    return {
        day: read_greens(row[1], programme.greens)
        for row in rows
        for day in days_in(read_dates(row[0], programme.issued, head))
    }


@pytest.mark.parametrize("name", ["member-email.html", "member-email.eml"])
def test_the_table_of_days_is_that_of_the_programme(pack: BuiltPack, name: str) -> None:
    programme = pack.programme
    source = Mail.read(pack.files[name]).html if name.endswith(".eml") else pack.text(name)
    tables = [table for table in Page(source).tables if table and table[0] == ["Day", "Greens"]]
    periods = [p for p in programme.periods if len(p.days) > 1 and len(p.greens) > 1]
    read = [as_read(table[1:], programme) for table in tables]
    main = [main_period(programme)] if periods else []
    ordered = [*main, *(period for period in periods if period not in main)]
    assert read == [expected_days(period) for period in ordered]


def test_the_lines_of_the_text_are_those_of_the_programme(pack: BuiltPack) -> None:
    programme = pack.programme
    text = pack.text("member-email.txt")
    found: dict[dt.date, set[str]] = {}
    for line in re.findall(r"(?m)^\* ([A-Z][a-z]+day,? [^:]*): (.*(?:\n  .*)*)\.$", text):
        for day in days_in(read_dates(line[0], programme.issued)):
            found[day] = read_greens(plain(line[1]), programme.greens)
    expected: dict[dt.date, set[str]] = {}
    for period in programme.periods:
        if len(period.days) > 1 and len(period.greens) > 1:
            expected |= expected_days(period)
    assert found == expected


def test_the_rows_of_the_board_are_those_of_the_programme(working_pack: BuiltPack) -> None:
    pack = working_pack
    programme = pack.programme
    head = head_of(programme)
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    rows: list[list[str]] = []
    for span in sheet.spans:
        if span.size < BOARD_SIZE:
            continue
        if re.match(r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)\b", span.text):
            rows.append([span.text, ""])
        elif rows:  # greens, on one line or more
            rows[-1][1] += f" {span.text}"
    rows = [row for row in rows if row[1]]
    assert as_read(rows, programme, head) == expected_days(main_period(programme))


# The board


def test_the_board_is_one_page_that_can_be_read_from_afar(pack: BuiltPack) -> None:
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    assert sheet.pages == 1
    assert min(span.size for span in sheet.spans) >= SMALLEST
    large = " ".join(span.text for span in sheet.spans if span.size >= BOARD_SIZE)
    # Further dates are smaller than the main ones, and a long list of them smaller still.
    listed = sum(
        fact.subject == "also" for fact in pack.documents.document("board-notice-a4").facts
    )
    size = FURTHER_SIZE if listed < 10 else LIST_SIZE
    further = " ".join(span.text for span in sheet.spans if span.size >= size)
    for fact in pack.documents.document("board-notice-a4").facts:
        if fact.subject in ("when", "day", "also"):
            seen = further if fact.subject == "also" else large
            assert tight(fact.text) in tight(seen), f"{fact.text} is too small"
    if pack.programme.periods:
        for greens in expected_days(main_period(pack.programme)).values():
            assert greens  # each row has something to read


def test_when_greens_putt_well_is_as_large_as_any_further_date(working_pack: BuiltPack) -> None:
    programme = working_pack.programme
    promise = PeriodWords(Words(programme), main_period(programme)).putting_well_by()
    spans = Sheet.read(working_pack.files["board-notice-a4.pdf"]).spans
    size = max(span.size for span in spans if promise in plain(span.text))
    facts = working_pack.documents.document("board-notice-a4").facts
    further = {fact.text for fact in facts if fact.subject == "also"}
    others = [span.size for span in spans if plain(span.text) in further]
    assert size >= max([LIST_SIZE, *others])


def test_every_notice_says_in_what_weather_nothing_is_done(pack: BuiltPack) -> None:
    limits = go_or_no_go(Words(pack.programme))
    assert bool(limits) is bool(pack.programme.works)
    assert limits in unwrapped(pack.text("member-email.txt"))
    # On the fullest of sheets it makes room for dates.
    listed = sum(
        fact.subject == "also" for fact in pack.documents.document("board-notice-a4").facts
    )
    if listed < 10:
        sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
        assert tight(limits) in tight(sheet.text)


def test_the_board_says_whose_it_is_and_when_it_may_go(pack: BuiltPack) -> None:
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    text = plain(sheet.text)
    assert pack.programme.club.name in text
    assert pack.programme.club.name in sheet.title
    down = re.search(r"Take down after (.*?)\.", text)
    assert down is not None
    (day,) = days_in(read_dates(down[1], pack.programme.issued))
    planned = [d for period in pack.programme.periods for d in period.days]
    planned += [d for closure in pack.programme.closures for d in closure.dates]
    assert day >= max(planned)


# The email


def test_the_email_is_light_and_keeps_its_pictures_to_itself(pack: BuiltPack) -> None:
    bare = Page(pack.text("member-email.html"))
    assert len(pack.files["member-email.html"]) < 60_000
    assert bare.images == []
    assert "script" not in bare.tags
    mail = Mail.read(pack.files["member-email.eml"])
    assert len(mail.html.encode()) < 60_000
    shown = [image["src"] for image in Page(mail.html).images]
    assert shown == [f"cid:{name}" for name in mail.images]
    if pack.programme.club.logo:
        assert shown.pop(0).startswith("cid:logo@")
    assert len(shown) == len(pack.documents.document("member-email").drawings)
    assert len(shown) <= 2  # the days, and the green below ground
    assert bool(shown) == bool(pack.programme.periods)
    for drawing in pack.documents.document("member-email").drawings:
        assert drawing.description in [image["alt"] for image in Page(mail.html).images]
        assert plain(drawing.caption) in Page(mail.html).text
    for picture in mail.images.values():
        assert picture.startswith(b"\x89PNG\r\n")


def test_every_link_of_the_email_leads_somewhere_safe(pack: BuiltPack) -> None:
    for link in Page(pack.text("member-email.html")).links:
        assert link.startswith(("https://", "mailto:"))


def test_the_message_is_a_draft_from_the_club_to_itself(pack: BuiltPack) -> None:
    mail = Mail.read(pack.files["member-email.eml"])
    club = pack.programme.club
    assert mail.message["X-Unsent"] == "1"
    assert club.name in mail.message["From"]
    assert mail.message["To"].addresses[0].addr_spec == (club.reply_to or club.sender.email)
    assert mail.message["Date"].datetime.date() == pack.programme.issued
    # The same words and the same calendar as the files beside it.
    assert plain(mail.text) == plain(pack.text("member-email.txt"))
    assert [c.replace(b"\r\n", b"\n") for c in mail.calendars] == [
        pack.files["calendar.ics"].replace(b"\r\n", b"\n")
    ]


FIRST_SCREEN = 900
"""Signs that a phone 375 px wide shows without scrolling, more or less."""


def test_the_first_screen_of_the_email_answers_the_five_questions(working_pack: BuiltPack) -> None:
    pack = working_pack
    text = Page(pack.text("member-email.html")).text[:FIRST_SCREEN]
    main = main_period(pack.programme)
    said = read_dates(text.rpartition(".")[0], pack.programme.issued)
    assert set(main.days) <= set(days_in(said))
    assert main.open_again.expect_by in days_in(said)
    # After a winter nobody can name a day: "mid-March" is ten of them.
    assert main.putts_well_after_all.expect_by in {day for one in said for day in one.days}
    for label in ("What ", "When ", "Greens ", "Open again ", "Putting well "):
        assert label in text
    greens = re.search(r"\. Greens ([^,.]*)", text)
    assert greens is not None
    assert read_greens(greens[1], pack.programme.greens) == set(main.greens)


# The calendar


def events(pack: BuiltPack) -> dict[str, icalendar.Component]:
    calendar = icalendar.Calendar.from_ical(pack.files["calendar.ics"])
    found = {str(event["UID"]): event for event in calendar.walk("VEVENT")}
    assert len(found) == len(calendar.walk("VEVENT"))
    return found


def days_of_event(event: icalendar.Component) -> tuple[dt.date, ...]:
    """RFC 5545: the end is the first day that no longer belongs to it."""
    first, after = event.decoded("DTSTART"), event.decoded("DTEND")
    assert not isinstance(first, dt.datetime)
    return tuple(first + dt.timedelta(days=n) for n in range((after - first).days))


def in_parts(days: dict[dt.date, set[str]]) -> Iterator[list[dt.date]]:
    """Join neighbouring days with the same greens."""
    part: list[dt.date] = []
    for day in sorted(days):
        if part and (days[day] != days[part[-1]] or day - part[-1] > dt.timedelta(days=1)):
            yield part
            part = []
        part.append(day)
    yield part


def test_every_day_of_work_closure_and_reserve_day_has_its_entry(pack: BuiltPack) -> None:
    """What is done on the same days is one entry for each day, of the work that the plan has first."""
    programme = pack.programme
    domain = programme.club.sender.email.partition("@")[2]
    expected: dict[str, tuple[dt.date, ...]] = {}

    def expect(days: dict[dt.date, set[str]], reopen: int, *parts: str) -> None:
        # Numbered by the first of their greens, so that rain moves no more than it must.
        place = [*programme.greens].index
        by_greens = sorted(
            in_parts(days), key=lambda part: (min(map(place, days[part[0]]), default=0), part)
        )
        for number, part in enumerate(by_greens, 1):
            name = "-".join([programme.club.slug, *parts, *([str(number)] if number > 1 else [])])
            # A green that opens again 14 days after the work is away on 13 days more.
            away = [part[-1] + dt.timedelta(days=n) for n in range(1, reopen)]
            expected[f"{name}@{domain}"] = (*part, *away)

    for period in programme.periods:
        opening = [w for w in period.works if w.operation.opening is not Opening.NONE]
        leading = opening or list(period.works)
        days: dict[dt.date, set[str]] = {}
        for visit in (visit for work in leading for visit in work.main_visits):
            days.setdefault(visit.date, set()).update(visit.greens)
        # In the examples, what is done together opens again together.
        away = [w.reopen_days for w in leading if w.while_working is not WhileWorking.OPEN]
        reopen = max(away, default=1)
        expect(days, reopen, min(leading, key=lambda w: w.plan_index).id)
        again = {(v.date, g) for w in period.works for v in w.follow_ups for g in v.greens}
        for work in period.works:
            done = {(v.date, g) for v in work.visits for g in v.greens}
            # Brushing on the days and greens of later dressings alone is told with them.
            alone = work in opening or not done <= again
            if alone and not set(work.dates) <= days.keys():
                expect({v.date: set(v.greens) for v in work.main_visits}, 1, work.id)
            for ordinal in {visit.ordinal for visit in work.follow_ups}:
                later = {v.date: set(v.greens) for v in work.follow_ups if v.ordinal == ordinal}
                expect(later, 1, work.id, f"again-{ordinal}")
        for day in period.reserve_dates:
            first = next(work for work in period.works if day in work.reserve_dates)
            number = sorted(first.reserve_dates).index(day) + 1
            expect({day: set()}, 1, first.id, "reserve", str(number))
    for closure in programme.closures:
        expect({day: set() for day in closure.dates}, 1, closure.id)
    assert {uid: days_of_event(event) for uid, event in events(pack).items()} == expected


@of("withy-hollow")
def test_what_only_goes_with_other_work_fills_no_calendar(pack: BuiltPack) -> None:
    """Nine works on 24 August are one entry with the greens of that day."""
    day = dt.date(2027, 8, 24)
    told = [str(e["SUMMARY"]) for e in events(pack).values() if days_of_event(e) == (day,)]
    assert told == ["Greens renovation: greens 4 to 6"]
    (drain,) = (e for e in events(pack).values() if "drain" in str(e["SUMMARY"]))
    # It is dug from 9 to 12 November, and opens 14 days after.
    assert str(drain["SUMMARY"]) == "Green 12: temporary green (drain trenching)"
    assert days_of_event(drain)[-1] == dt.date(2027, 11, 25)


def test_only_reserve_days_are_tentative(pack: BuiltPack) -> None:
    for uid, event in events(pack).items():
        assert (event["STATUS"] == "TENTATIVE") is ("-reserve-" in uid)
        assert event["TRANSP"] == "TRANSPARENT"


def test_an_entry_names_the_days_of_its_work(pack: BuiltPack) -> None:
    for uid, event in events(pack).items():
        if "-reserve-" in uid:
            continue
        said = days_in(read_dates(str(event["DESCRIPTION"]), pack.programme.issued))
        assert said == days_of_event(event)


# The front page


def test_the_front_page_links_every_file_and_stands_alone(pack: BuiltPack) -> None:
    page = Page(pack.text("index.html"))
    assert set(page.links) == files_of(pack) - {"index.html"}
    assert not page.tags & {"script", "iframe", "link"}
    assert all(image["src"].startswith("data:image/") for image in page.images)
    assert not any(name.startswith("on") for name in page.attributes)
    assert "http://" not in page.source
    words = Words(pack.programme)
    for finding in pack.programme.findings:
        # Americans set no space before a percent sign.
        told = plain(finding_in_words(words, finding)).replace(" %", "%")
        assert told in page.text.replace(" %", "%")


# The records


@of("tansy-down")
def test_the_plan_in_the_pack_builds_the_same_pack(pack: BuiltPack, tmp_path: Path) -> None:
    plan = tmp_path / "plan.json"
    plan.write_bytes(pack.files["plan.json"])
    run = notices_run("build", plan, "--out", tmp_path / "pack", "--today", pack.programme.issued)
    assert run.returncode == 0, run.stderr
    for name, content in pack.files.items():
        assert (tmp_path / "pack" / name).read_bytes() == content, name


def test_the_figures_have_no_rounded_twin_of_nothing(pack: BuiltPack) -> None:
    figures = json.loads(pack.text("programme.json"))["figures"]
    assert len(figures) == len(pack.programme.figures)
    assert len({figure["id"] for figure in figures}) == len(figures)


def test_each_figure_is_a_line_that_can_be_searched_for(pack: BuiltPack) -> None:
    lines = pack.text("programme.json").splitlines()
    ids = [json.loads(line.rstrip(","))["id"] for line in lines if '"quantity": ' in line]
    assert ids == [figure.id for figure in pack.programme.figures]


# The same plan gives the same bytes


def notices_run(
    *arguments: object, cwd: Path | None = None, **environment: str
) -> subprocess.CompletedProcess[str]:
    kept = {key: value for key, value in os.environ.items() if key != "SOURCE_DATE_EPOCH"}
    return subprocess.run(
        [sys.executable, "-m", "notices", *map(str, arguments)],
        cwd=cwd,
        env=kept | environment,
        capture_output=True,
        text=True,
        check=False,
    )


@of("marlpit-common")
def test_two_processes_in_two_folders_write_the_same_bytes(pack: BuiltPack, tmp_path: Path) -> None:
    elsewhere = tmp_path / "an other place"
    shutil.copytree(EXAMPLES / "marlpit-common", elsewhere)
    (tmp_path / "deep").mkdir()
    run = notices_run(
        "build",
        "plan.yaml",
        "--out",
        tmp_path / "deep" / "pack",
        cwd=elsewhere,
        PYTHONHASHSEED="4711",
        TZ="Pacific/Auckland",
        LC_ALL="C",
        USER="somebody",
    )
    assert run.returncode == 0, run.stderr
    for name, content in pack.files.items():
        assert (tmp_path / "deep" / "pack" / name).read_bytes() == content, name
    run = notices_run(
        "build",
        EXAMPLES / "marlpit-common" / "plan.yaml",
        "--out",
        tmp_path / "deep" / "pack",
        cwd=tmp_path,
        PYTHONHASHSEED="1",
    )
    assert "nothing has changed" in run.stderr


def test_no_path_and_no_user_is_in_a_pack(pack: BuiltPack) -> None:
    assert pack.folder is not None
    for name, content in pack.files.items():
        for word in (str(EXAMPLES.parent), str(pack.folder.parent), "plan.yaml:"):
            assert word.encode() not in content, f"{word} in {name}"
