"""Duties: what is to be done besides the work, and by when; dates counted by hand from the plan."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from notices.plan.moments import Moment
from notices.programme.answers_as_json import duty_as_json
from notices.programme.duties import (
    PAPERS,
    Duty,
    DutyKind,
    DutySubject,
    Hung,
    Paper,
    due,
    duties,
)
from notices.programme.duties_again import asked_again
from notices.programme.model import Edition, Programme
from tests.documents.building import BuiltPack

ProgrammeOf = Callable[..., Programme]

COURSE = """
course:
  greens: [{green: 1-4, area: 500 m2}]
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
sand: {density: 1.5 t/m3}
"""
CORES = """
works:
  - {operation: hollow tining, dates: 2026-09-14 to 2026-09-15, settings: {tine_diameter: 13 mm}}
  - {operation: top dressing, dates: 2026-09-14 to 2026-09-15, settings: {fill: holes}}
"""
ISSUED = dt.date(2026, 8, 1)
# 14 September 2026 is a Monday, so the last working day before it is Friday the 11th.
FRIDAY_BEFORE = dt.date(2026, 9, 11)


def of_kind(found: Iterable[Duty], kind: DutyKind) -> list[Duty]:
    return [duty for duty in found if duty.kind is kind]


def span(duty: Duty) -> tuple[str, str]:
    return duty.first.isoformat(), duty.last.isoformat()


def test_without_mailings_there_are_three_as_soon_as_issued_shortly_before_and_at_the_end(
    programme_of: ProgrammeOf,
) -> None:
    """The work is on 14 and 15 September: three days before is the 11th."""
    sent = of_kind(duties(programme_of(COURSE + CORES, ISSUED)), DutyKind.SEND)
    assert [(duty.document, *span(duty)) for duty in sent] == [
        ("member-email", "2026-08-01", "2026-09-10"),
        ("member-email-reminder", "2026-09-11", "2026-09-13"),
        ("member-email-finished", "2026-09-15", "2026-09-22"),
    ]


def test_a_later_period_has_messages_of_its_own(programme_of: ProgrammeOf) -> None:
    plan = (
        f"{COURSE}{CORES}\n  - {{operation: hollow tining, dates: 2027-04-05, "
        "settings: {tine_diameter: 13 mm}}\n"
    )
    sent = of_kind(duties(programme_of(plan, ISSUED)), DutyKind.SEND)
    assert [duty.document for duty in sent] == [
        "member-email",
        "member-email-reminder",
        "member-email-finished",
        "member-email-reminder-hollow-tining-2",
        "member-email-finished-hollow-tining-2",
    ]


def test_closures_are_announced_and_that_is_all(programme_of: ProgrammeOf) -> None:
    plan = f"{COURSE}closures: [{{what: holes 1-3, dates: 2026-09-14}}]\n"
    (sent,) = of_kind(duties(programme_of(plan, ISSUED)), DutyKind.SEND)
    assert sent.document == "member-email"


def test_mailings_go_out_on_their_days_each_until_the_next(programme_of: ProgrammeOf) -> None:
    mailings = """
mailings:
  - {document: member email, moment: announcement, send: 28 days before}
  - {document: member email, moment: reminder, send: 1 week before}
  - {document: member email, moment: day before, send: the day before}
  - {document: member email, moment: finished, send: when finished}
  - {document: short message, moment: back to normal, send: 2026-10-20}
"""
    sent = of_kind(duties(programme_of(COURSE + CORES + mailings, ISSUED)), DutyKind.SEND)
    assert [(duty.document, *span(duty)) for duty in sent] == [
        ("member-email", "2026-08-17", "2026-09-06"),  # 14 September less 28 days
        ("member-email-reminder", "2026-09-07", "2026-09-12"),
        ("member-email-day-before", "2026-09-13", "2026-09-13"),
        ("member-email-finished", "2026-09-15", "2026-09-22"),
        ("short-messages", "2026-10-20", "2026-10-27"),
    ]


def test_what_was_to_be_sent_before_the_issue_is_left_out_but_for_the_announcement(
    programme_of: ProgrammeOf,
) -> None:
    mailings = """
mailings:
  - {document: member email, moment: announcement, send: 28 days before}
  - {document: member email, moment: reminder, send: 1 week before}
  - {document: member email, moment: day before, send: day before}
"""
    issued = dt.date(2026, 9, 13)
    sent = of_kind(duties(programme_of(COURSE + CORES + mailings, issued)), DutyKind.SEND)
    assert [duty.moment for duty in sent] == [Moment.ANNOUNCEMENT, Moment.DAY_BEFORE]
    assert {span(duty) for duty in sent} == {("2026-09-13", "2026-09-13")}


def test_each_period_is_reminded_of_and_all_are_announced_once(programme_of: ProgrammeOf) -> None:
    plan = f"""{COURSE}{CORES}
  - {{operation: hollow tining, dates: 2027-04-05, settings: {{tine_diameter: 13 mm}}}}
mailings:
  - {{document: member email, moment: announcement, send: 28 days before}}
  - {{document: member email, moment: reminder, send: 3 days before}}
"""
    sent = of_kind(duties(programme_of(plan, ISSUED)), DutyKind.SEND)
    assert [(duty.moment, duty.first.isoformat()) for duty in sent] == [
        (Moment.ANNOUNCEMENT, "2026-08-17"),
        (Moment.REMINDER, "2026-09-11"),
        (Moment.REMINDER, "2027-04-02"),
    ]
    assert sent[2].works == ("hollow-tining-2",)


def test_sand_is_ordered_two_weeks_before_it_must_lie_there(programme_of: ProgrammeOf) -> None:
    found = duties(programme_of(COURSE + CORES, ISSUED))
    (order,), (delivery,) = of_kind(found, DutyKind.ORDER), of_kind(found, DutyKind.DELIVER)
    assert order.day == delivery.day == delivery.last == FRIDAY_BEFORE
    assert span(order) == ("2026-08-01", "2026-08-28")
    assert delivery.first == dt.date(2026, 9, 9)


def test_who_begins_in_the_middle_of_the_work_is_not_told_to_order(
    programme_of: ProgrammeOf,
) -> None:
    found = duties(programme_of(COURSE + CORES, FRIDAY_BEFORE + dt.timedelta(days=4)))
    assert not of_kind(found, DutyKind.ORDER)
    assert not of_kind(found, DutyKind.DELIVER)
    on_the_day = duties(programme_of(COURSE + CORES, FRIDAY_BEFORE))
    assert [one.last for one in of_kind(on_the_day, DutyKind.DELIVER)] == [FRIDAY_BEFORE]


def test_a_sheet_hangs_from_the_issue_until_nothing_is_to_come(programme_of: ProgrammeOf) -> None:
    plan = "course: {greens: [{green: 1-4}]}\nclosures: [{what: course, dates: 2026-09-14}]\n"
    found = duties(programme_of(plan, ISSUED), [Paper("board-notice-a4", hangs=True)])
    (up,), (down,) = of_kind(found, DutyKind.PUT_UP), of_kind(found, DutyKind.TAKE_DOWN)
    assert span(up) == ("2026-08-01", "2026-09-13")
    assert span(down) == ("2026-09-15", "2026-09-21")


def test_a_sheet_for_each_period_is_printed_the_day_before(programme_of: ProgrammeOf) -> None:
    papers = (Paper("starter-sheet", hangs=False, for_each_period=True),)
    found = of_kind(duties(programme_of(COURSE + CORES, ISSUED), papers), DutyKind.PRINT)
    assert [span(duty) for duty in found] == [("2026-09-13", "2026-09-13")]


def test_every_day_of_work_is_confirmed_where_somebody_decides(programme_of: ProgrammeOf) -> None:
    decision = "decision: {by: the Course Manager, when: 16:00 the day before}\n"
    found = duties(programme_of(COURSE + CORES + decision, ISSUED))
    confirmed = of_kind(found, DutyKind.CONFIRM)
    assert [(duty.day, *span(duty)) for duty in confirmed] == [
        (dt.date(2026, 9, 14), "2026-09-13", "2026-09-14"),
        (dt.date(2026, 9, 15), "2026-09-14", "2026-09-15"),
    ]
    assert not of_kind(duties(programme_of(COURSE + CORES, ISSUED)), DutyKind.CONFIRM)


def test_a_draft_waits_for_its_approval(programme_of: ProgrammeOf) -> None:
    found = duties(programme_of(COURSE + CORES + "approval: pending\n", ISSUED))
    (approval,) = of_kind(found, DutyKind.CONFIRM)
    assert (approval.subject, *span(approval)) == (DutySubject.APPROVAL, "2026-08-01", "2026-09-13")


def looks(programme: Programme) -> dict[DutySubject | None, Duty]:
    return {duty.subject: duty for duty in of_kind(duties(programme), DutyKind.LOOK)}


def test_a_promised_date_is_looked_at_from_the_expected_day_on(programme_of: ProgrammeOf) -> None:
    programme = programme_of(COURSE + CORES, ISSUED)
    (period,) = programme.periods
    look = looks(programme)[DutySubject.PUTTING_WELL]
    promise = period.putting_well
    assert (look.first, look.last) == (promise.expect_by, promise.at_worst)
    assert look.greens == period.greens == ("1", "2", "3", "4")
    day_after = look.last + dt.timedelta(days=1)
    assert look.due_on(look.last)
    assert not look.missed_on(look.last)
    assert look in due(duties(programme), day_after)
    assert duty_as_json(look, day_after)["late"] is True


@pytest.mark.parametrize(
    ("record", "open_subjects"),
    [
        ("done: 2026-09-15", {DutySubject.PUTTING_WELL, DutySubject.FULLY_HEALED}),
        ("done: 2026-09-15, putting_smoothly: 2026-10-01", {DutySubject.FULLY_HEALED}),
        ("done: 2026-09-15, healed: 2026-10-09", set()),
    ],
)
def test_a_record_answers_what_was_promised(
    programme_of: ProgrammeOf, record: str, open_subjects: set[DutySubject]
) -> None:
    observed = f"observed: [{{operation: hollow tining, {record}}}]\n"
    assert looks(programme_of(COURSE + CORES + observed, ISSUED)).keys() == open_subjects


def test_a_record_of_some_greens_leaves_the_others(programme_of: ProgrammeOf) -> None:
    record = "{operation: hollow tining, done: 2026-09-15, healed: 2026-10-09, greens: 1-3}"
    found = looks(programme_of(f"{COURSE}{CORES}observed: [{record}]\n", ISSUED))
    assert found[DutySubject.FULLY_HEALED].greens == ("4",)


def test_what_becomes_of_a_work_does_not_change_what_was_promised_of_it(
    programme_of: ProgrammeOf,
) -> None:
    record = "observed: [{operation: hollow tining, done: 2026-09-15, healed: 2026-10-25}]\n"
    with_record = programme_of(COURSE + CORES + record, ISSUED)
    without = programme_of(COURSE + CORES, ISSUED)
    assert [p.fully_healed for p in with_record.periods] == [
        p.fully_healed for p in without.periods
    ]
    assert with_record.records == {}


def test_no_two_duties_share_an_identity_and_all_papers_are_in_the_pack(pack: BuiltPack) -> None:
    found = duties(pack.programme)
    assert len({duty.id for duty in found}) == len(found) > 0
    printed = {d.document for d in found if d.kind in (DutyKind.PRINT, DutyKind.PUT_UP)}
    assert {f"{document}.pdf" for document in printed} <= pack.files.keys()
    assert printed <= {paper.document for paper in PAPERS}
    works = pack.programme.works
    assert ("team-sheet" in printed) == bool(works)


def test_signs_are_printed_once_and_each_goes_up_and_comes_down_on_its_days(
    programme_of: ProgrammeOf,
) -> None:
    """The first on the 14th, the second on the 15th, and the third on both."""
    monday, tuesday = dt.date(2026, 9, 14), dt.date(2026, 9, 15)
    hang = [Hung("A", monday, monday), Hung("B", monday, tuesday), Hung("C", tuesday, tuesday)]
    found = duties(programme_of(COURSE + CORES, ISSUED), [], hang)
    (printed,) = of_kind(found, DutyKind.PRINT)
    assert (printed.document, *span(printed)) == ("tee-sign", "2026-08-01", "2026-09-13")
    assert [
        (duty.first.day, duty.up, duty.down) for duty in of_kind(found, DutyKind.CHANGE_SIGNS)
    ] == [(14, ("A", "B"), ()), (15, ("C",), ("A",)), (16, (), ("B", "C"))]


def test_what_golfers_hardly_notice_is_not_written_of_but_its_sheets_are_printed(
    programme_of: ProgrammeOf,
) -> None:
    """Light blades on 1 September, the cut raised on the 7th, cores from the 14th on."""
    plan = f"""{COURSE}{CORES}
  - {{operation: verticutting, dates: 2026-09-01}}
  - {{operation: raising the height of cut, dates: 2026-09-07}}
"""
    found = duties(programme_of(plan, ISSUED))
    printed = {
        (duty.document, duty.first.isoformat())
        for duty in of_kind(found, DutyKind.PRINT)
        if duty.works
    }
    assert printed == {
        ("starter-sheet", "2026-08-31"),
        ("team-sheet", "2026-08-31"),
        ("team-sheet", "2026-09-06"),  # its first page is of the 7th
        ("starter-sheet", "2026-09-13"),  # no green is away on the 7th
    }
    sent = {duty.document: duty.first.isoformat() for duty in of_kind(found, DutyKind.SEND)}
    assert sent == {
        "member-email": "2026-08-01",
        "member-email-reminder": "2026-09-11",
        "member-email-finished": "2026-09-15",
    }


def test_the_pages_of_closures_after_the_works_are_printed_too(programme_of: ProgrammeOf) -> None:
    """A closure on a day of work shares its page; one of 2 and 3 November has pages of its own."""
    closed = """
closures:
  - {what: practice ground, dates: 2026-09-15}
  - {what: greens 1-2, dates: 2026-11-02 to 2026-11-03}
"""
    found = of_kind(duties(programme_of(COURSE + CORES + closed, ISSUED)), DutyKind.PRINT)
    starter = [duty for duty in found if duty.document == "starter-sheet"]
    assert [(duty.first.isoformat(), duty.works != ()) for duty in starter] == [
        ("2026-09-13", True),
        ("2026-11-01", False),
    ]


def test_what_ends_first_comes_first(programme_of: ProgrammeOf) -> None:
    """On the day the sand has to be there, the papers for the days after come below it."""
    found = duties(programme_of(CORES + COURSE, issued=ISSUED))
    days = [duty.last for duty in due(found, FRIDAY_BEFORE)]
    assert days[0] == FRIDAY_BEFORE
    assert days == sorted(days)
    assert days[-1] > FRIDAY_BEFORE


# With a notice that comes after another


def next_notice(programme: Programme, issued: str, *, draft: bool = False) -> Programme:
    """The same plan in a notice that follows the one of 1 August."""
    before = Edition(ISSUED, draft=draft)
    return replace(programme, issued=dt.date.fromisoformat(issued), replaces=before)


def asked(programme: Programme, *changed: str) -> dict[tuple[str, str], str]:
    """What to do with paper and post: by kind and document, the first day."""
    found = asked_again(programme, duties(programme), changed)
    return {
        (duty.kind.value, duty.document): duty.first.isoformat()
        for duty in found
        if duty.document and duty.kind is not DutyKind.TAKE_DOWN
    }


def test_a_later_notice_asks_for_what_changed_and_for_what_is_still_to_come(
    programme_of: ProgrammeOf,
) -> None:
    """Of 20 August: what was due on the 1st is done, the sheets of 13 September are not."""
    later = next_notice(programme_of(COURSE + CORES, ISSUED), "2026-08-20")
    to_come = {
        ("send", "member-email-reminder"): "2026-09-11",
        ("print", "starter-sheet"): "2026-09-13",
        ("print", "team-sheet"): "2026-09-13",
        ("send", "member-email-finished"): "2026-09-15",
    }
    assert asked(later) == to_come
    changed = asked(later, "board-notice-a4", "member-email", "change-notice", "starter-sheet")
    assert changed == to_come | {
        ("send", "change-notice"): "2026-08-20",
        ("put up", "board-notice-a4"): "2026-08-20",
    }


@pytest.mark.parametrize(
    ("issued", "again"),
    [("2026-09-15", {("print", "starter-sheet"): "2026-09-15"}), ("2026-09-16", {})],
)
def test_a_sheet_of_days_that_are_not_over_is_printed_again(
    programme_of: ProgrammeOf, issued: str, again: dict[tuple[str, str], str]
) -> None:
    """The second and last day of the work is 15 September; its pages were printed on the 13th."""
    later = next_notice(programme_of(COURSE + CORES, ISSUED), issued)
    found = asked(later, "starter-sheet")
    assert {key: day for key, day in found.items() if key[1] == "starter-sheet"} == again


def test_signs_that_have_changed_are_printed_again(programme_of: ProgrammeOf) -> None:
    later = next_notice(programme_of(COURSE + CORES, ISSUED), "2026-08-20")
    monday = dt.date(2026, 9, 14)
    found = duties(later, [], [Hung("A", monday, monday)])
    for changed, first in ((["tee-sign"], ["2026-08-20"]), ([], [])):
        again = of_kind(asked_again(later, found, changed), DutyKind.PRINT)
        assert [duty.first.isoformat() for duty in again] == first


def test_of_two_notices_of_one_day_the_second_asks_for_what_changed(
    programme_of: ProgrammeOf,
) -> None:
    later = next_notice(programme_of(COURSE + CORES, ISSUED), "2026-08-01")
    found = asked(later, "counter-handout")
    assert ("print", "counter-handout") in found
    assert ("put up", "board-notice-a4") not in found


def test_after_a_draft_everything_is_asked_for(programme_of: ProgrammeOf) -> None:
    """Nothing of a draft was sent or put up."""
    first = programme_of(COURSE + CORES, ISSUED)
    later = next_notice(first, "2026-08-20", draft=True)
    assert asked(later) == asked(first)


def test_visitors_are_told_of_a_change_on_the_day_of_issue(programme_of: ProgrammeOf) -> None:
    later = next_notice(programme_of(COURSE + CORES, ISSUED), "2026-08-20")
    told = asked(later, "visitor-change-old-millers", "visitor-change", "visitor-notice")
    assert {key: day for key, day in told.items() if "visitor" in key[1]} == {
        ("send", "visitor-change"): "2026-08-20",
        ("send", "visitor-change-old-millers"): "2026-08-20",
    }
