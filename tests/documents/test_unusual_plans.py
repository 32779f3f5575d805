"""Plans that a club may well write, and words that nobody should: each builds, and says it right."""

from __future__ import annotations

import datetime as dt
import json
import re
from collections.abc import Mapping
from pathlib import Path

import icalendar
import pytest

from notices.wording.blocks import Paragraph
from tests.documents.building import BuiltPack, build_data
from tests.documents.dates_in_words import days_in, read_dates, read_greens
from tests.documents.reading import Mail, Page, Sheet, plain, tight
from tests.wording.small_plans import plan, work

FULL = ("scarifying", "hollow tining", "top dressing")

# Bidirectional controls are refused when the plan is read; letters that run from right to left are
# letters like any other.
HOSTILE = (
    '<script>alert("x")</script>',
    "<b onmouseover=alert(1)>bold</b> & <!-- gone -->",
    "{{ 7 * 7 }} {% for x in y %} {# gone #}",
    "\"quoted\" 'single' “curly” \\ back",
    "Élan Ångström Łódź 大会 ⛳️😀",
    "מועדון גולף نادي",
    "100 % of *stars*, _lines_ and [links](javascript:alert(1)) &amp; &lt;b&gt;",
)


def hostile_plan(words: str) -> dict[str, object]:
    """Put the same words into every place that takes free words."""
    return plan(
        work(
            "hollow tining",
            "2027-08-09 to 2027-08-10",
            reserve_dates="2027-08-11",
            note=f"Note: {words}",
        ),
        work("feeding", "2027-08-12", settings={"product": words}),
        club={
            "name": f"Club {words}",
            "sender": {"role": f"Role {words}", "name": words, "email": "a@fallow.example"},
            "contact": f"Ask {words}",
        },
        closures=[
            {"what": f"shed {words}", "dates": "2027-08-09", "reason": words, "instead": words}
        ],
        fixtures=[{"name": f"Cup {words}", "date": "2027-08-12"}],
        restrictions=[
            {"what": f"carts {words}", "dates": "2027-08-09", "except": words, "ask": words}
        ],
        approval={"by": f"committee {words}", "date": "2027-02-01", "reference": words},
        decision={"by": words, "when": f"noon {words}", "where": f"board {words}"},
    )


@pytest.fixture(scope="module", params=HOSTILE, ids=range(len(HOSTILE)))
def hostile(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> tuple[str, BuiltPack]:
    words: str = request.param
    return words, build_data(hostile_plan(words), tmp_path_factory.mktemp("hostile"))


def test_hostile_words_are_shown_and_nothing_of_them_happens(
    hostile: tuple[str, BuiltPack],
) -> None:
    words, pack = hostile
    mail = Mail.read(pack.files["member-email.eml"])
    pages = [Page(pack.text("index.html")), Page(mail.html), Page(pack.text("member-email.html"))]
    for page in pages:
        assert not page.tags & {"script", "b", "iframe", "object"}
        assert not any(name.startswith("on") for name in page.attributes)
        assert all(not link.lower().startswith("javascript") for link in page.links)
        assert plain(f"Club {words}") in page.text
    for page in pages[1:]:
        for piece in ("Note: ", "Cup ", "shed ", "carts ", "Ask ", "committee "):
            assert plain(f"{piece}{words}").casefold() in page.text.casefold(), piece
    text = plain(pack.text("member-email.txt"))
    assert plain(f"Note: {words}") in text


def test_hostile_words_stay_in_their_fields(hostile: tuple[str, BuiltPack]) -> None:
    words, pack = hostile
    mail = Mail.read(pack.files["member-email.eml"])
    assert mail.message["From"].addresses[0].addr_spec == "a@fallow.example"
    assert len(mail.message["From"].addresses) == 1
    calendar = icalendar.Calendar.from_ical(pack.files["calendar.ics"])
    # The library does not know that NAME is a text (RFC 7986, section 5.1), and leaves it escaped.
    name = re.sub(r"\\([\\,;])", r"\1", str(calendar["NAME"]))
    assert plain(name) == plain(f"Club {words}") + ": work on the course"
    uids = [str(event["UID"]) for event in calendar.walk("VEVENT")]
    assert all(re.fullmatch(r"[a-z0-9-]+@fallow\.example", uid) for uid in uids), uids
    assert json.loads(pack.text("plan.json"))["club"]["name"] == f"Club {words}"


def test_hostile_words_stay_within_the_sheet(hostile: tuple[str, BuiltPack]) -> None:
    words, pack = hostile
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    if words.isascii():
        assert tight(f"Club {words}") in tight(sheet.text)


def built(data: Mapping[str, object], folder: Path) -> BuiltPack:
    """Build, and hold the result to what every pack must keep."""
    pack = build_data(data, folder)
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    assert min(span.size for span in sheet.spans) >= 13.99
    for name in ("member-email.html", "index.html"):
        assert "None" not in Page(pack.text(name)).text.replace("None.", "")
    for document in (
        pack.documents.document("member-email"),
        pack.documents.document("board-notice-a4"),
    ):
        text = tight(sheet.text) if document.name.startswith("board") else ""
        page = Page(pack.text("member-email.html")).text if not text else ""
        for fact in document.facts:
            assert tight(fact.text) in text or plain(fact.text) in page, fact
    return pack


def test_closures_only(tmp_path: Path) -> None:
    data = plan(
        closures=[
            {"what": "course", "dates": "2027-08-09", "reason": "the county final"},
            {"what": "greens 1-3", "dates": "2027-08-16 to 2027-08-17"},
        ]
    )
    pack = built(data, tmp_path)
    page = Page(pack.text("member-email.html"))
    said = days_in(read_dates(page.text, pack.programme.issued))
    august = {dt.date(2027, 8, day) for day in (9, 16, 17)}
    assert august <= set(said)
    assert "Mon 9 Aug The course is closed: the county final." in page.text
    assert "Mon 16 and Tue 17 Aug Greens 1 to 3 are closed." in page.text
    sheet = plain(Sheet.read(pack.files["board-notice-a4.pdf"]).text)
    assert "Mon 9 Aug" in sheet
    assert "Mon 9 Aug The course is closed: the county final." in sheet
    assert "Mon 16 and Tue 17 Aug Greens 1 to 3 are closed." in sheet
    # Each is told once.
    assert sheet.count("closed") == 2
    # A county final does not wait for the weather.
    assert "Whom to ask" in page.text
    for text in (page.text, plain(pack.text("member-email.txt")), sheet, pack.text("calendar.ics")):
        assert "weather" not in text.casefold()
    # No line is left empty where the weather stood.
    for document in (
        pack.documents.document("board-notice-a4"),
        pack.documents.document("member-email"),
    ):
        for section in document.sections:
            assert all(b.text for b in section.blocks if isinstance(b, Paragraph)), section.name
    assert Sheet.read(pack.files["board-notice-a4.pdf"]).pages == 1
    mail = Mail.read(pack.files["member-email.eml"])
    assert mail.images == {}
    assert len(icalendar.Calendar.from_ical(pack.files["calendar.ics"]).walk("VEVENT")) == 2
    # A subject that says when.
    assert read_dates(str(mail.message["Subject"]), pack.programme.issued)


def every_text(pack: BuiltPack) -> dict[str, str]:
    return {
        "page": Page(pack.text("member-email.html")).text,
        "text": plain(pack.text("member-email.txt")),
        "sheet": plain(Sheet.read(pack.files["board-notice-a4.pdf"]).text),
    }


def test_closures_with_temporary_greens(tmp_path: Path) -> None:
    data = plan(
        closures=[
            {"what": "green 7", "dates": "2027-08-09", "instead": "a temporary green"},
            {
                "what": "greens 1-3",
                "dates": "2027-08-16 to 2027-08-17",
                "instead": "temporary greens",
                "reason": "a new drain",
            },
        ]
    )
    for where, text in every_text(built(data, tmp_path)).items():
        said = text.replace("Aug: ", "Aug ")  # as plain text has it
        assert "Mon 9 Aug Green 7 has a temporary green. Expect it to be rough." in said, where
        assert "Mon 16 and Tue 17 Aug Greens 1 to 3 have temporary greens: a new drain." in said
        assert "are closed" not in text, where
        assert "is closed" not in text, where


def test_a_raised_cut_and_a_feed_alone(tmp_path: Path) -> None:
    """The greens stay open, and putts are slower: no line may say otherwise."""
    data = plan(work("raising the height of cut", "2027-07-30"), work("feeding", "2027-07-30"))
    for where, text in every_text(built(data, tmp_path)).items():
        assert "The greens stay open." in text, where
        assert "Putts are slower until we mow lower again." in text, where
        assert "not affected" not in text, where
        # What was never shut does not open again.
        assert "open again" not in text.casefold(), where


def test_a_feed_alone_leaves_putts_alone(tmp_path: Path) -> None:
    for where, text in every_text(built(plan(work("feeding", "2027-07-30")), tmp_path)).items():
        assert "Your putts are not affected." in text, where
        assert "open again" not in text.casefold(), where


def test_the_board_says_what_golfers_go_without(tmp_path: Path) -> None:
    """Whoever reads the board and no email comes with a buggy otherwise."""
    limits = [
        {"what": "buggies", "dates": "2027-05-03", "except": "the injured", "ask": "the shop"},
        {"what": "trolleys on the 9th", "dates": "2027-05-03 to 2027-05-05"},
    ]
    data = plan(work("verticutting", "2027-05-03 to 2027-05-04"), restrictions=limits)
    board = every_text(built(data, tmp_path))["sheet"]
    assert "No buggies (except the injured) Mon 3 May" in board
    assert "No trolleys on the 9th Mon 3 to Wed 5 May" in board


def test_the_board_says_until_when_a_green_is_a_temporary_one(tmp_path: Path) -> None:
    """The work takes two days; golfers play elsewhere until the turf has rooted."""
    drains = work("drain trenching", "2027-11-22 to 2027-11-23", greens="4", reopen="30 days later")
    data = plan(work("hollow tining", "2027-05-03 to 2027-05-05"), drains)
    board = every_text(built(data, tmp_path))["sheet"]
    # Thirty days after Tuesday 23 November is Thursday 23 December.
    assert "Green 4: temporary green Mon 22 Nov to Wed 22 Dec" in board


def test_greens_that_close_say_when_they_open_again(tmp_path: Path) -> None:
    # When finished, the catalogue has it.
    pack = built(plan(work("verticutting", "2027-05-03 to 2027-05-04")), tmp_path)
    for where, text in every_text(pack).items():
        assert "Open again" in text, where
        assert "Each green opens again the same day, when we have finished it." in text, where


def test_many_greens_over_many_days(tmp_path: Path) -> None:
    pack = built(
        plan(*(work(name, "2027-08-09 to 2027-08-22") for name in FULL), greens="1-36"), tmp_path
    )
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    rows = [
        row for row in Page(pack.text("member-email.html")).tables if row[0] == ["Day", "Greens"]
    ]
    assert len(rows[0]) - 1 == 14
    found = [read_greens(row[1], pack.programme.greens) for row in rows[0][1:]]
    assert set.union(*found) == {str(n) for n in range(1, 37)}
    large = tight(" ".join(span.text for span in sheet.spans if span.size >= 27.99))
    for fact in pack.documents.document("board-notice-a4").facts:
        if fact.subject == "day":
            assert tight(fact.text) in large
    assert sheet.pages == 1


def test_days_on_either_side_of_new_year(tmp_path: Path) -> None:
    dates = "2027-12-28 to 2028-01-03, 2028-01-10"
    pack = built(plan(*(work(name, dates) for name in FULL)), tmp_path)
    sheet = Sheet.read(pack.files["board-notice-a4.pdf"])
    assert sheet.pages == 1
    large = [span.text for span in sheet.spans if span.size >= 27.99]
    # The heading says the years, so the rows need none.
    assert "Fri 31 Dec" in large
    assert "Sat 1 Jan" in large
    page = Page(pack.text("member-email.html"))
    (table,) = (table for table in page.tables if table[0] == ["Day", "Greens"])
    days = [day for row in table[1:] for day in days_in(read_dates(row[0], pack.programme.issued))]
    assert days == list(pack.programme.periods[0].days)


def test_a_sheet_hangs_until_its_last_day(tmp_path: Path) -> None:
    """The greens are promised for a day in November; the spring is named only roughly."""
    pack = built(
        plan(
            *(work(name, "2027-10-11 to 2027-10-13") for name in FULL),
            fixtures=[{"name": "Medal", "date": "2027-10-23"}],
        ),
        tmp_path,
    )
    promise = pack.programme.periods[0].putting_well
    assert promise.through_winter
    down = plain(Sheet.read(pack.files["board-notice-a4.pdf"]).text).partition("Take down after ")[
        2
    ]
    assert days_in(read_dates(down, pack.programme.issued)) == (promise.expect_by,)
    assert promise.expect_by > dt.date(2027, 10, 23)


def test_a_sheet_hangs_through_the_later_dressings(tmp_path: Path) -> None:
    dressing = {"rate": "1 kg/m2", "dressings": 4, "days_between": 14}
    pack = built(plan(work("top dressing", "2027-05-03", settings=dressing)), tmp_path)
    # 3 May and three times 14 days: 14 June.
    down = plain(Sheet.read(pack.files["board-notice-a4.pdf"]).text).partition("Take down after ")[
        2
    ]
    assert min(days_in(read_dates(down, pack.programme.issued))) >= dt.date(2027, 6, 14)


def test_a_single_green(tmp_path: Path) -> None:
    pack = built(plan(*(work(name, "2027-08-09") for name in FULL), greens="1"), tmp_path)
    page = Page(pack.text("member-email.html"))
    assert "The green and its hole are closed while we work." in page.text
    assert "each green" not in page.text.casefold()
    assert "all 1 " not in page.text
    pictures = Mail.read(pack.files["member-email.eml"]).images
    assert [name.partition("@")[0] for name in pictures] == [
        "below-ground-phone"
    ]  # no days to tell apart


def test_greens_known_by_name_only(tmp_path: Path) -> None:
    names = "Mill, Long meadow, Quarry"
    pack = built(
        plan(work("hollow tining", "2027-08-09 to 2027-08-11", greens=names), greens=names),
        tmp_path,
    )
    page = Page(pack.text("member-email.html"))
    (table,) = (table for table in page.tables if table[0] == ["Day", "Greens"])
    assert [row[1] for row in table[1:]] == ["mill", "long meadow", "quarry"]
    assert "The mill, the long meadow and the quarry" in page.text


def test_without_a_sender(tmp_path: Path) -> None:
    pack = built(plan(work("hollow tining", "2027-08-09")), tmp_path)
    mail = Mail.read(pack.files["member-email.eml"])
    assert mail.message["From"].addresses[0].domain.endswith(".invalid")
    assert "Any questions? Please ask at the club." in mail.html
    # An address that cannot be delivered to is no help to a member.
    assert ".invalid" not in Page(mail.html).text
    assert ".invalid" not in mail.text
    assert "invalid" in Page(pack.text("index.html")).text  # the finding says so


def test_work_in_october_says_what_winter_does(tmp_path: Path) -> None:
    pack = built(plan(*(work(name, "2027-10-11 to 2027-10-13") for name in FULL)), tmp_path)
    for text in (
        Page(pack.text("member-email.html")).text,
        plain(pack.text("member-email.txt")),
        plain(Sheet.read(pack.files["board-notice-a4.pdf"]).text),
    ):
        assert re.search(
            r"If the autumn is cold, putts may not run true until (?:early |mid-|late )\w+ 2028\."
            r"|Grass does not grow in winter\.",
            text,
        )
        rough = [said for said in read_dates_of_rough(text) if said]
        assert rough
        assert all(day.year == 2028 for day in rough)


def read_dates_of_rough(text: str) -> list[dt.date]:
    stretch = re.findall(r"(?:early|late|mid-\w+|by mid-) ?\w+ 2028", " ".join(text.split()))
    return [said.days[0] for part in stretch for said in read_dates(part, dt.date(2027, 3, 1))]


@pytest.fixture(scope="module")
def draft(tmp_path_factory: pytest.TempPathFactory) -> BuiltPack:
    data = plan(
        work("hollow tining", "2027-08-09 to 2027-08-11", reserve_dates="2027-08-12"),
        approval="pending",
        closures=[{"what": "practice ground", "dates": "2027-08-09"}],
    )
    return build_data(data, tmp_path_factory.mktemp("draft"))


def test_a_draft_says_so_in_every_file(draft: BuiltPack) -> None:
    mail = Mail.read(draft.files["member-email.eml"])
    assert str(mail.message["Subject"]).startswith("DRAFT: ")
    for text in (
        Page(mail.html).text,
        Page(draft.text("member-email.html")).text,
        Page(draft.text("index.html")).text,
        plain(mail.text),
        plain(draft.text("member-email.txt")),
        plain(Sheet.read(draft.files["board-notice-a4.pdf"]).text),
    ):
        assert "DRAFT: not yet approved" in text
    # Below the poster stands when to take it down.
    board = plain(Sheet.read(draft.files["board-notice-a4.pdf"]).text)
    assert board.count("DRAFT: not yet approved") == board.count("Take down after") == 1
    for source in (mail.html, draft.text("member-email.html"), draft.text("index.html")):
        assert Page(source).title.startswith("DRAFT: ")
    assert Sheet.read(draft.files["board-notice-a4.pdf"]).title.startswith("DRAFT: ")


def test_a_draft_says_so_in_every_entry_of_the_calendar(draft: BuiltPack) -> None:
    calendar = icalendar.Calendar.from_ical(draft.files["calendar.ics"])
    assert str(calendar["NAME"]).startswith("DRAFT: ")
    events = calendar.walk("VEVENT")
    assert len(events) == 5  # three days of work, one kept free, the practice ground
    for event in events:
        assert str(event["SUMMARY"]).startswith("DRAFT: ")
        assert str(event["DESCRIPTION"]).startswith("DRAFT: not yet approved.")
        assert event["STATUS"] == "TENTATIVE"


def test_an_approved_plan_is_called_a_draft_nowhere(pack: BuiltPack) -> None:
    for name, content in pack.files.items():
        if not name.endswith((".pdf", ".json", ".eml")):
            assert "DRAFT" not in content.decode("utf-8"), name
    assert "DRAFT" not in Sheet.read(pack.files["board-notice-a4.pdf"]).text


def test_an_entry_keeps_its_identity_when_it_moves(tmp_path: Path) -> None:
    def uids(dates: str) -> set[str]:
        pack = build_data(plan(work("hollow tining", dates, reserve_dates="2027-09-01")), tmp_path)
        calendar = icalendar.Calendar.from_ical(pack.files["calendar.ics"])
        return {str(event["UID"]) for event in calendar.walk("VEVENT")}

    assert uids("2027-08-09 to 2027-08-11") == uids("2027-08-16 to 2027-08-18")


def test_each_day_of_a_work_is_a_part_of_it_and_the_first_bears_no_number(tmp_path: Path) -> None:
    """Eighteen greens over three days: six on each."""
    dates = "2027-08-09 to 2027-08-10, 2027-08-16"
    pack = build_data(plan(work("hollow tining", dates, id="cores")), tmp_path)
    calendar = icalendar.Calendar.from_ical(pack.files["calendar.ics"])
    parts = {
        str(event["UID"]).partition("@")[0].removeprefix("fallow-mead-golf-club-"): (
            event.decoded("DTSTART").day,
            str(event["SUMMARY"]),
        )
        for event in calendar.walk("VEVENT")
    }
    assert parts == {
        "cores": (9, "Hollow tining: greens 1 to 6"),
        "cores-2": (10, "Hollow tining: greens 7 to 12"),
        "cores-3": (16, "Hollow tining: greens 13 to 18"),
    }
