"""One notice after the other: numbers, what each replaces, and calendars that follow."""

from __future__ import annotations

import datetime as dt
import json
import re
import shutil
from pathlib import Path
from typing import Any

import icalendar
import pytest

import notices
from notices.documents import pack
from notices.documents.calendar import calendars
from notices.documents.change_notice import change_notices
from notices.documents.mailings import member_emails
from notices.documents.team_calendar import team_calendars
from notices.documents.team_sheet import team_sheets
from notices.documents.visitor_change import visitor_changes
from notices.documents.visitor_notice import visitor_notices
from notices.findings import Weight
from notices.programme.model import Programme
from notices.rendering.whole_pack import render_calendars
from notices.since import before, follow
from tests.documents.reading import Page, Sheet, plain
from tests.test_cli import AT_FAULT, DONE, WRONG_USAGE, run

PLAN = """\
issued: 2026-08-01
club: {name: Marl Hill, sender: {email: course@marlhill.example}}
course: {greens: [{green: 1-4}]}
works:
  - {operation: brushing, dates: 2026-09-14 to 2026-09-15, reserve_dates: 2026-09-17}
closures:
  - {what: practice ground, dates: 2026-09-17}
"""
LATER = PLAN.replace("2026-09-14 to 2026-09-15, ", '"2026-09-14, 2026-09-16", ')

FEW = (
    change_notices,
    visitor_changes,
    member_emails,
    visitor_notices,
    team_sheets,
    calendars,
    team_calendars,
)
"""Documents of each kind that bears a number, and all that follow one another."""


@pytest.fixture(autouse=True)
def _no_date_from_outside(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)


@pytest.fixture(scope="module")
def packs_of_one_club(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The first notice, the one after rain, one that takes back the closure, one after more rain."""
    folder = tmp_path_factory.mktemp("club")
    for name, text, more in (
        ("1", PLAN, ()),
        ("2", LATER, ("--since", folder / "1", "--today", "2026-09-15")),
        (
            "3",
            LATER.partition("closures:")[0],
            ("--since", folder / "2", "--today", "2026-09-15"),
        ),
        (
            "4",
            LATER.partition("closures:")[0].replace("2026-09-16", "2026-09-18"),
            ("--since", folder / "3", "--today", "2026-09-16"),
        ),
    ):
        plan = folder / f"{name}.yaml"
        plan.write_text(text, encoding="utf-8")
        with pytest.MonkeyPatch.context() as patched:
            patched.setattr(pack, "ENTRIES", FEW)
            done = run("build", plan, "--out", folder / name, *more)
        assert done.exit_code == DONE, done.stderr
    return folder


def next_calendar(plan: Path, published: dict[str, bytes], day: str) -> bytes:
    """The members' calendar of a plan, as the next of one that was published."""
    loaded = notices.load_plan(plan)
    programme = notices.work_out(loaded.plan, dt.date.fromisoformat(day))
    documents = notices.write_documents(programme, notices.canonical(loaded.plan))
    return render_calendars(documents, published)["calendar"].content


def events(pack: Path, name: str = "calendar.ics") -> dict[str, Any]:
    return events_in((pack / name).read_bytes())


def events_in(calendar: bytes) -> dict[str, Any]:
    found: Any = icalendar.Calendar.from_ical(calendar).walk("VEVENT")
    return {
        str(event["uid"]).removeprefix("marl-hill-").partition("@")[0]: event for event in found
    }


def test_what_changed_has_the_next_number_and_a_later_stamp(packs_of_one_club: Path) -> None:
    old, new = (events(packs_of_one_club / name) for name in ("1", "2"))
    # An entry for each of two days, and the second day moves.
    keys = {"brushing-1", "brushing-1-2", "brushing-1-reserve-1", "closure-practice-ground-1"}
    assert old.keys() == new.keys() == keys
    moved = new["brushing-1-2"]
    assert (moved["dtstart"].dt, int(moved["sequence"])) == (dt.date(2026, 9, 16), 1)
    assert moved["dtstamp"].dt == moved["last-modified"].dt
    assert moved["dtstamp"].dt == dt.datetime(2026, 9, 15, tzinfo=dt.UTC)
    assert new["brushing-1"].to_ical() == old["brushing-1"].to_ical()


def test_what_did_not_change_stays_to_the_byte(packs_of_one_club: Path) -> None:
    old, new = (events(packs_of_one_club / name) for name in ("1", "2"))
    for uid in ("brushing-1-reserve-1", "closure-practice-ground-1"):
        assert new[uid].to_ical() == old[uid].to_ical()


def test_what_fell_away_is_cancelled_once(packs_of_one_club: Path) -> None:
    two, three = (events(packs_of_one_club / name) for name in ("2", "3"))
    gone = three["closure-practice-ground-1"]
    assert str(gone["status"]) == "CANCELLED"
    assert int(gone["sequence"]) == 1
    assert str(gone["summary"]) == "Called off: Practice ground: closed"
    assert gone["dtstart"].dt == two["closure-practice-ground-1"]["dtstart"].dt
    # Issued on the same day as the one before, it is still the later of the two.
    assert gone["dtstamp"].dt > two["brushing-1"]["dtstamp"].dt


def test_a_cancelled_event_stays_cancelled_and_comes_back_with_a_higher_number(
    packs_of_one_club: Path,
) -> None:
    key = "closure-practice-ground-1"
    three = (packs_of_one_club / "3" / "calendar.ics").read_bytes()
    four = next_calendar(packs_of_one_club / "3.yaml", {"calendar.ics": three}, "2026-09-16")
    assert events_in(four)[key].to_ical() == events_in(three)[key].to_ical()
    five = next_calendar(packs_of_one_club / "2.yaml", {"calendar.ics": four}, "2026-09-17")
    back = events_in(five)[key]
    assert (str(back["status"]), int(back["sequence"])) == ("CONFIRMED", 2)


def test_the_teams_calendar_follows_too(packs_of_one_club: Path) -> None:
    old, new = (events(packs_of_one_club / name, "team-calendar.ics") for name in ("1", "2"))
    moved = {uid for uid in old if old[uid]["dtstart"].dt != new[uid]["dtstart"].dt}
    assert moved
    assert all(int(new[uid]["sequence"]) == 1 for uid in moved)


def test_no_duty_is_called_off_because_its_day_is_past(packs_of_one_club: Path) -> None:
    for name in ("2", "3"):
        team = events(packs_of_one_club / name, "team-calendar.ics")
        duties = [event for event in team.values() if "Duty" in event["categories"].cats]
        assert duties
        # Its page and its sign go with the closure that the third notice takes back.
        gone = {str(one["summary"]) for one in duties if str(one["status"]) == "CANCELLED"}
        taken = {
            "Called off: Print starter-sheet.pdf, from Thursday 17 September on.",
            "Called off: Signs: take down “Practice ground closed”.",
        }
        assert gone == (taken if name == "3" else set())
        # The announcement stays as it was when the first notice was issued.
        (sent,) = [
            event for uid, event in team.items() if uid.startswith("team-send-member-email-b")
        ]
        assert (sent["dtstart"].dt, int(sent["sequence"])) == (dt.date(2026, 8, 1), 0)


def test_the_front_page_lists_what_is_still_to_do(packs_of_one_club: Path) -> None:
    """The announcement was to go out before 14 September; the second notice is of the 15th."""
    for name, still in (("1", True), ("2", False)):
        front = Page((packs_of_one_club / name / "index.html").read_text("utf-8"))
        assert ("Send the announcement" in front.text) is still


def test_each_document_bears_its_number_and_names_the_notice_it_replaces(
    packs_of_one_club: Path,
) -> None:
    first, second = (packs_of_one_club / name for name in ("1", "2"))
    for name, thing in (
        ("member-email.txt", "email"),
        ("member-email.html", "email"),
        ("index.html", "page"),
        ("visitor-notice.txt", "text"),
    ):
        before, after = (
            " ".join((pack / name).read_text("utf-8").split()) for pack in (first, second)
        )
        assert "Notice 20260801-1." in before, name
        assert "replaces the one of" not in before, name
        told = f"Notice 20260915-2. This {thing} replaces the one of 1 August 2026."
        assert told in after, name
    edition = json.loads((second / "programme.json").read_text("utf-8"))["edition"]
    assert edition == {"number": "20260915-2", "version": 2, "replaces": "20260801-1"}


def test_a_number_leads_to_its_pack(packs_of_one_club: Path) -> None:
    shown = run("trace", packs_of_one_club, "20260915-3")
    assert shown.exit_code == DONE
    pack = packs_of_one_club / "3"
    assert shown.stdout.startswith(f"{pack}: notice 20260915-3, issued 2026-09-15\n")
    assert "It replaces notice 20260915-2." in shown.stdout
    assert str(pack / "plan.json") in shown.stdout
    assert "files are as they were written." in shown.stdout
    unknown = run("trace", packs_of_one_club, "20260915-9")
    assert unknown.exit_code == AT_FAULT
    assert unknown.stderr.endswith("there are: 20260801-1, 20260915-2, 20260915-3, 20260916-4\n")


def test_a_pack_that_somebody_worked_on_is_told(packs_of_one_club: Path, tmp_path: Path) -> None:
    shutil.copytree(packs_of_one_club / "1", tmp_path / "kept")
    (tmp_path / "kept" / "member-email.txt").write_text("mine")
    shown = run("trace", tmp_path, "20260801-1").stdout
    assert "Not as it was written: member-email.txt." in shown


def test_a_plan_alone_counts_as_the_first_notice_and_a_finding_says_so(
    packs_of_one_club: Path,
) -> None:
    day = dt.date(2026, 9, 15)
    alone, pack = (before(packs_of_one_club / name, day) for name in ("1.yaml", "1"))
    assert alone.calendars == pack.calendars
    plan = notices.load_plan(packs_of_one_club / "2.yaml").plan
    programme = notices.work_out(plan, day)
    codes = [
        {found.code for found in follow(programme, plan, one).findings} for one in (alone, pack)
    ]
    assert ["counted-from-a-plan" in found for found in codes] == [True, False]


def test_the_old_pack_is_kept(packs_of_one_club: Path) -> None:
    pack, plan = packs_of_one_club / "1", packs_of_one_club / "2.yaml"
    refused = run("build", plan, "--out", pack, "--since", pack)
    assert refused.exit_code == WRONG_USAGE
    assert "is the pack that is replaced: name a new folder" in refused.stderr


def test_no_notice_is_issued_before_the_one_that_it_replaces(
    packs_of_one_club: Path, tmp_path: Path
) -> None:
    old, plan = packs_of_one_club / "2", packs_of_one_club / "3.yaml"
    arguments = ("--out", tmp_path / "pack", "--since", old, "--today", "2026-09-14")
    refused = run("build", plan, *arguments)
    assert refused.exit_code == AT_FAULT
    assert "before the one of 2026-09-15 that it replaces" in refused.stderr
    assert not (tmp_path / "pack").exists()


# What a change does not touch


def numbers(pack: Path) -> dict[str, tuple[str, str]]:
    """By file, the notice that is printed on it, and the one it replaces."""
    files = json.loads((pack / "manifest.json").read_text("utf-8"))["files"]
    return {
        file["name"]: (file["notice"], file.get("replaces", ""))
        for file in files
        if "notice" in file
    }


def same_bytes(one: Path, other: Path) -> set[str]:
    """Files of both packs that are the same, byte for byte."""
    names = {path.name for path in one.iterdir()} & {path.name for path in other.iterdir()}
    return {name for name in names if (one / name).read_bytes() == (other / name).read_bytes()}


def test_what_says_the_same_keeps_its_file_and_its_number(packs_of_one_club: Path) -> None:
    """Without the practice ground, the team does on each day what it was to do before."""
    two, three = (packs_of_one_club / name for name in ("2", "3"))
    same = same_bytes(two, three)
    assert "team-sheet.pdf" in same
    assert not same & {"visitor-notice.pdf", "member-email.eml", "calendar.ics", "index.html"}
    for name, told in (
        ("team-sheet.pdf", "20260915-2"),
        ("visitor-notice.pdf", "20260915-3"),
    ):
        assert numbers(three)[name][0] == told
        assert f"Notice {told}." in plain(Sheet.read((three / name).read_bytes()).text)


def test_a_sheet_replaces_the_one_that_hangs(packs_of_one_club: Path) -> None:
    """The third notice left the team's sheet as it was, so the fourth replaces the second's."""
    four = packs_of_one_club / "4"
    assert numbers(four)["team-sheet.pdf"] == ("20260916-4", "20260915-2")
    assert numbers(four)["visitor-notice.pdf"] == ("20260916-4", "20260915-3")
    sheet = plain(Sheet.read((four / "visitor-notice.pdf").read_bytes()).text)
    assert "This sheet replaces the one of 15 September 2026." in sheet
    # What is different comes beside the sheets that hang, in place of none.
    assert numbers(four)["change-notice.eml"] == ("20260916-4", "")
    text = " ".join((four / "change-notice.txt").read_text("utf-8").split())
    assert "Changes to our notice of 15 September 2026" in text


def test_the_front_page_says_what_is_new_and_what_holds(packs_of_one_club: Path) -> None:
    first, third = (
        Page((packs_of_one_club / name / "index.html").read_text("utf-8")).text
        for name in ("1", "3")
    )
    assert "What is new" not in first
    assert "The same as in notice" not in first
    assert "It follows notice 20260915-2 of 15 September 2026." in third
    assert "Still holds, of 15 September 2026 team-sheet.pdf. No need to print" in plain(third)
    assert "The same as in notice 20260915-2 of 15 September 2026. Pages that are" in plain(third)
    assert "New. It replaces the one of 15 September 2026." in third


def test_the_front_page_asks_for_what_stands_on_screens(packs_of_one_club: Path) -> None:
    """The second notice moves a day of work; before the first, nothing stood there."""
    said = [
        plain(Page((packs_of_one_club / name / "index.html").read_text("utf-8")).text)
        for name in ("1", "2")
    ]
    assert "in place of the old ones." not in said[0]
    assert "Tue 15 Sept Put calendar.ics and team-calendar.ics in place of the old ones." in said[1]


def test_each_part_of_a_change_notice_names_its_own_reader(tmp_path: Path) -> None:
    after = next_notice(tmp_path, CLUB, CLUB.replace(*PUT_OFF))
    asked = {one.what: one.whom for one in notices.write_documents(after, {}).index.todo}
    assert asked["Print change-slip.pdf."] == "The starter"
    assert asked["Send the change notice (change-notice)."] == "Members"


def test_the_number_of_a_sheet_that_still_hangs_leads_to_both_packs(
    packs_of_one_club: Path,
) -> None:
    shown = run("trace", packs_of_one_club, "20260915-2").stdout
    second, third = (packs_of_one_club / name for name in ("2", "3"))
    assert f"{second}: notice 20260915-2, issued 2026-09-15\n" in shown
    assert f"{third}: notice 20260915-3, issued 2026-09-15\n" in shown
    assert re.search(r"Still in force from notice 20260915-2: .*team-sheet\.pdf", shown)
    assert shown.count("Still in force") == 1


def test_what_is_due_with_a_pack_is_what_it_changed(packs_of_one_club: Path) -> None:
    """The third notice takes back a closure, which the team and its sheet never heard of."""
    second, third = (
        run("due", packs_of_one_club / name, "--today", "2026-09-15").stdout for name in ("2", "3")
    )
    assert "Print team-sheet.pdf" in second
    assert "Print team-sheet.pdf" not in third
    assert "Today: Send the change notice (change-notice).\n" in third
    assert "Today: Send visitors what has changed (visitor-change).\n" in third


@pytest.fixture
def few(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pack, "ENTRIES", FEW)


@pytest.mark.usefixtures("few")
def test_where_nothing_changed_nothing_is_new(packs_of_one_club: Path, tmp_path: Path) -> None:
    first, plan = packs_of_one_club / "1", packs_of_one_club / "1.yaml"
    arguments = ("--since", first, "--today", "2026-08-20")
    for name in ("one", "two"):
        assert run("build", plan, "--out", tmp_path / name, *arguments).exit_code == DONE
    again = tmp_path / "one"
    shown = run("build", plan, "--out", again, *arguments)
    assert "nothing has changed" in shown.stderr
    files = {path.name for path in first.iterdir()}
    assert {path.name for path in again.iterdir()} == files
    new = {"index.html", "manifest.json", "programme.json"}
    assert same_bytes(first, again) == files - new
    assert same_bytes(again, tmp_path / "two") == files
    front = Page((again / "index.html").read_text("utf-8")).text
    assert "There is nothing to send, print or put up." in front


@pytest.mark.usefixtures("few")
def test_what_is_approved_replaces_nothing_of_a_draft(tmp_path: Path) -> None:
    """Nobody has a sheet of the draft, nor heard of its dates."""
    drafted, approved = tmp_path / "draft.yaml", tmp_path / "approved.yaml"
    drafted.write_text(f"{PLAN}approval: pending\n", encoding="utf-8")
    approved.write_text(LATER, encoding="utf-8")
    assert run("build", drafted, "--out", tmp_path / "1").exit_code == DONE
    arguments = ("--since", tmp_path / "1", "--today", "2026-08-03")
    assert run("build", approved, "--out", tmp_path / "2", *arguments).exit_code == DONE
    printed = numbers(tmp_path / "2")
    assert set(printed.values()) == {("20260803-2", "")}
    assert "change-notice.eml" not in printed
    front = Page((tmp_path / "2" / "index.html").read_text("utf-8")).text
    assert "It follows notice 20260801-1 of 1 August 2026, a draft." in front
    assert "Send the announcement" in front
    shown = run("due", tmp_path / "2", "--today", "2026-08-03").stdout
    assert "Send the announcement" in shown


@pytest.mark.usefixtures("few")
def test_what_somebody_changed_in_the_old_pack_is_made_as_it_was(
    packs_of_one_club: Path, tmp_path: Path
) -> None:
    shutil.copytree(packs_of_one_club / "1", tmp_path / "kept")
    (tmp_path / "kept" / "member-email.txt").write_text("mine")
    done = run(
        "build",
        packs_of_one_club / "1.yaml",
        "--out",
        tmp_path / "new",
        *("--since", tmp_path / "kept", "--today", "2026-08-20"),
    )
    assert done.exit_code == DONE
    for name in ("member-email.txt", "team-sheet.pdf"):
        made = (tmp_path / "new" / name).read_bytes()
        assert made == (packs_of_one_club / "1" / name).read_bytes()


def test_the_same_plan_again_changes_no_event(packs_of_one_club: Path) -> None:
    old = (packs_of_one_club / "1" / "calendar.ics").read_bytes()
    new = next_calendar(packs_of_one_club / "1.yaml", {"calendar.ics": old}, "2026-08-20")
    assert {uid: event.to_ical() for uid, event in events_in(old).items()} == {
        uid: event.to_ical() for uid, event in events_in(new).items()
    }


CLUB = """\
issued: 2026-09-01
club: {name: Marl Hill, sender: {email: course@marlhill.example}}
course: {greens: [{green: 1-6}, {green: Putting green}]}
works:
  - {operation: hollow tining, id: cores, dates: 2026-10-12 to 2026-10-13, reserve_dates: 2026-10-15, greens: 1-3}
"""
PUT_OFF = ("2026-10-12 to 2026-10-13, reserve_dates: 2026-10-15", '"2026-10-12, 2026-10-14"')
NO_BUGGIES = "restrictions: [{what: buggies, dates: %s}]\n"
SHUT = "closures: [{what: %s, dates: %s}]\n"

# What golfers go without while the cores of the 12th and 13th, with the 15th in reserve, are planned;
# whether it ends before them once the last day is the 14th.
LEFT = [
    (NO_BUGGIES % "2026-10-12 to 2026-10-13", True),
    (NO_BUGGIES % "2026-10-10 to 2026-10-13", True),
    # It was there for longer, and covers the day that is new.
    (NO_BUGGIES % "2026-10-12 to 2026-10-14", False),
    (NO_BUGGIES % "2026-10-12 to 2026-10-15", False),
    # It was there for some of the work alone.
    (NO_BUGGIES % "2026-10-13", False),
    (SHUT % ("greens 3-4", "2026-10-10 to 2026-10-13"), True),
    (SHUT % ("greens 4-6", "2026-10-10 to 2026-10-13"), False),
    (SHUT % ("course", "2026-10-12 to 2026-10-13"), True),
    (SHUT % ("practice ground", "2026-10-12 to 2026-10-13"), True),
]


def next_notice(folder: Path, first: str, second: str) -> Programme:
    for name, text in (("first", first), ("second", second)):
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    day = dt.date(2026, 10, 13)
    plan = notices.load_plan(folder / "second.yaml").plan
    return follow(notices.work_out(plan, day), plan, before(folder / "first.yaml", day))


@pytest.mark.parametrize(("kept", "ends"), LEFT)
def test_what_stood_for_a_work_ends_before_it(tmp_path: Path, kept: str, *, ends: bool) -> None:
    first = CLUB + kept
    programme = next_notice(tmp_path, first, first.replace(*PUT_OFF))
    found = [one for one in programme.findings if one.code == "ends-before-its-work"]
    assert bool(found) is ends
    assert {one.weight for one in found} <= {Weight.THINK_AGAIN}
    assert {one.work for one in found} <= {"cores"}
    # Where nothing has moved, and where it has moved with the work, all is well.
    assert not [
        f for f in next_notice(tmp_path, first, first).findings if f.code == "ends-before-its-work"
    ]
    along = first.replace(*PUT_OFF).replace("2026-10-13", "2026-10-14")
    both = next_notice(tmp_path, first, along)
    assert not [f for f in both.findings if f.code == "ends-before-its-work"]


def test_the_finding_says_what_ends_when_and_where(tmp_path: Path) -> None:
    first = CLUB + NO_BUGGIES % "2026-10-12 to 2026-10-13"
    programme = next_notice(tmp_path, first, first.replace(*PUT_OFF))
    (found,) = [one for one in programme.findings if one.code == "ends-before-its-work"]
    assert found.path == ("restrictions", 0, "dates")
    assert found.dates == (dt.date(2026, 10, 14),)
    assert found.message == (
        "the restriction on buggies ends on 2026-10-13; hollow tining fell within it in the last "
        "notice, and now goes on until 2026-10-14"
    )


def test_works_that_go_together_are_told_in_one_finding(tmp_path: Path) -> None:
    """Sand and a roller go with the cores, which end on the 14th now: three works, one doubt."""
    with_them = "".join(
        f"  - {{operation: {kind}, dates: 2026-10-12 to 2026-10-13, reserve_dates: 2026-10-15, "
        "greens: 1-3}\n"
        for kind in ("top dressing", "rolling")
    )
    first = CLUB + with_them + SHUT % ("practice ground", "2026-10-12 to 2026-10-13")
    programme = next_notice(tmp_path, first, first.replace(*PUT_OFF))
    (found,) = [one for one in programme.findings if one.code == "ends-before-its-work"]
    assert found.message == (
        "the closure of the practice ground ends on 2026-10-13; hollow tining and 2 more works "
        "fell within it in the last notice, and now go on until 2026-10-14"
    )
    assert found.dates == (dt.date(2026, 10, 14),)


def test_nobody_is_reminded_of_work_that_has_begun(tmp_path: Path) -> None:
    """Cores on the 12th and 13th, put off on the 13th: the reminder went out before the 12th."""
    after = next_notice(tmp_path, CLUB, CLUB.replace(*PUT_OFF))
    begun = {one.name for one in notices.write_documents(after, {}).documents}
    before_it = notices.work_out(
        notices.load_plan(tmp_path / "first.yaml").plan, dt.date(2026, 9, 1)
    )
    planned = {one.name for one in notices.write_documents(before_it, {}).documents}
    assert "member-email-reminder" in planned - begun
    assert "member-email-finished" in planned & begun


@pytest.mark.usefixtures("few")
def test_it_is_said_when_the_pack_is_built_since_no_check_of_one_plan_finds_it(
    tmp_path: Path,
) -> None:
    first = CLUB + NO_BUGGIES % "2026-10-12 to 2026-10-13"
    for name, text in (("first", first), ("second", first.replace(*PUT_OFF))):
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    arguments = ("--since", tmp_path / "first.yaml", "--today", "2026-10-13")
    shown = run("build", tmp_path / "second.yaml", "--out", tmp_path / "pack", *arguments)
    assert "the restriction on buggies ends on 2026-10-13" in shown.stdout
    assert shown.stdout.count("think again") + shown.stdout.count("Think again") == 1
    assert "ends-before" not in run("check", tmp_path / "second.yaml").stdout


def test_a_club_may_live_with_it(tmp_path: Path) -> None:
    first = CLUB + NO_BUGGIES % "2026-10-12 to 2026-10-13"
    why = "accepted: [{finding: ends-before-its-work, by: Course Manager, why: dry by then}]\n"
    programme = next_notice(tmp_path, first, first.replace(*PUT_OFF) + why)
    assert not {f.code for f in programme.findings} & {"ends-before-its-work", "nothing-to-accept"}
    assert [(found.code, why) for found, _, why in programme.accepted] == [
        ("ends-before-its-work", "dry by then")
    ]
