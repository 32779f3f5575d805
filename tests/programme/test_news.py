"""What is still news on the day of issue, and what was over before."""

from __future__ import annotations

import datetime as dt
import textwrap
from pathlib import Path

import pytest

from notices.documents.pack import write_documents
from notices.documents.tee_sign import tee_signs
from notices.plan.load import load_plan
from notices.programme.model import Moment, Programme
from notices.programme.news import days_ahead, last_day_of_news, what_is_ahead
from notices.programme.work_out import work_out
from notices.wording.blocks import Heading, Paragraph
from notices.wording.moment_facts import News, Occasion
from notices.wording.period import PeriodWords
from notices.wording.words import Words
from tests.documents.reading import plain

# Greens are back the same day after a verticut, the day after coring; the seventh day brings sand.
PLAN = """\
club: {name: Marl Hill, sender: {email: course@marlhill.example}}
course: {greens: [{green: 1-9}]}
works:
  - {operation: verticutting, dates: 2027-08-03, greens: 1-9}
  - {operation: hollow tining, dates: 2027-08-23 to 2027-08-24, greens: 1-9, reserve_dates: '2027-08-25, 2027-08-26'}
  - {operation: top dressing, dates: 2027-08-23 to 2027-08-24, greens: 1-9, settings: {dressings: 3}}
closures:
  - {what: practice ground, dates: 2027-08-02, reason: an outing}
  - {what: car park, dates: 2027-08-24, reason: the sand is stored there}
restrictions:
  - {what: buggies, dates: 2027-08-03}
fixtures:
  - {name: Early Medal, date: 2027-08-07}
  - {name: Late Medal, date: 2027-08-28}
"""


def issued_on(folder: Path, day: str, text: str = PLAN) -> Programme:
    path = folder / "plan.yaml"
    path.write_text(textwrap.dedent(text), encoding="utf-8")
    return work_out(load_plan(path).plan, dt.date.fromisoformat(day))


def test_what_was_over_is_left_out(tmp_path: Path) -> None:
    programme = issued_on(tmp_path, "2027-08-24")
    ahead = what_is_ahead(programme)
    assert [period.works[0].id for period in ahead.periods] == ["hollow-tining-1"]
    assert {work.id for work in ahead.works} == {"hollow-tining-1", "top-dressing-1"}
    assert [shut.what for shut in ahead.closures] == ["car park"]
    assert ahead.restrictions == ()
    assert [fixture.name for fixture in ahead.fixtures] == ["Late Medal"]
    assert min(ahead.stretches) == dt.date(2027, 8, 24)
    # What it was is not forgotten.
    assert programme.periods[1:] == ahead.periods
    assert ahead.status == programme.status


def test_before_the_first_day_nothing_is_over(tmp_path: Path) -> None:
    programme = issued_on(tmp_path, "2027-08-02")
    assert what_is_ahead(programme) == programme


def test_where_all_is_over_all_is_kept(tmp_path: Path) -> None:
    programme = issued_on(tmp_path, "2028-08-01")
    assert what_is_ahead(programme) is programme


def test_work_is_news_until_greens_putt_well_again(tmp_path: Path) -> None:
    programme = issued_on(tmp_path, "2027-08-24")
    last = last_day_of_news(programme)
    promise = programme.periods[-1].putting_well
    assert last == (promise.at_worst or promise.expect_by)
    for day, periods in ((last, 1), (last + dt.timedelta(days=1), 2)):
        # On the last day the verticut is over and the cores are not; a day later, both are.
        assert len(what_is_ahead(issued_on(tmp_path, day.isoformat())).periods) == periods


@pytest.mark.parametrize(
    ("issued", "ahead"),
    [(1, (2, 3)), (2, (2, 3)), (3, (3,)), (4, (2, 3))],
)
def test_days_from_the_day_of_issue_on(issued: int, ahead: tuple[int, ...]) -> None:
    june = [dt.date(2027, 6, day) for day in (2, 3)]
    assert days_ahead(june, dt.date(2027, 6, issued)) == tuple(dt.date(2027, 6, d) for d in ahead)


def test_documents_tell_of_what_is_ahead(tmp_path: Path) -> None:
    programme = issued_on(tmp_path, "2027-08-24")
    documents = write_documents(programme, {})
    for name in ("member-email", "board-notice-a4", "visitor-notice", "course-page", "team-sheet"):
        document = documents.document(name)
        said = f"{document.title} {document.sections}"
        assert "Hollow tining" in said, name
        assert "erticutting" not in said, name
        assert "ractice ground" not in said, name
    for name in ("starter-sheet", "team-sheet"):
        days = [section.heading for section in documents.document(name).sections]
        assert days[0] == "Tuesday 24 August", name
    # The committee has the whole record.
    assert "Verticutting" in str(documents.document("committee-briefing").sections)


@pytest.mark.parametrize(
    ("issued", "said"),
    [
        ("2027-08-02", "twice more, {}. Once {}. Again on Monday 6 and Tuesday 7 September."),
        ("2027-09-01", "once more, {}: on Monday 6 and Tuesday 7 September."),
    ],
)
def test_dressings_to_come_are_told(issued: str, said: str, tmp_path: Path) -> None:
    words = Words(issued_on(tmp_path, issued))
    assert PeriodWords(words, words.programme.periods[-1]).later_dressings(brief=True) == (
        "We spread sand "
        + said.format("green by green in the same order", "on Monday 30 and Tuesday 31 August")
    )


@pytest.mark.parametrize(
    ("issued", "kept"),
    [("2027-08-02", "on Wednesday 25 and Thursday 26 August"), ("2027-08-26", "on Thursday 26 August")],
)  # fmt: skip
def test_days_kept_free_that_have_passed_are_not_promised(
    issued: str, kept: str, tmp_path: Path
) -> None:
    words = Words(issued_on(tmp_path, issued))
    told = PeriodWords(words, words.programme.periods[-1])
    # There is other work too, so the name says which is meant.
    assert told.reserve() == (f"If rain stops hollow tining and top dressing, we catch up {kept}.")


def test_an_occasion_is_told_of_a_day_to_come(tmp_path: Path) -> None:
    words = Words(issued_on(tmp_path, "2027-08-24"))
    told = Occasion(words, words.programme.periods[-1], Moment.CALLED_OFF, News())
    assert told.day == dt.date(2027, 8, 24)


HOURS = """\
crew: {people: 6, kept_back: 0, breaks: 0, working_day: '07:00 to 17:00', dew_off: '07:00'}
"""


def test_what_is_shut_all_day_and_what_is_sanded_have_signs_of_their_own(tmp_path: Path) -> None:
    """On 30 August greens 1 and 2 are sanded again, and green 3 is cored."""
    text = """\
    club: {name: Marl Hill, sender: {email: course@marlhill.example}}
    course: {greens: [{green: 1-9}]}
    works:
      - {operation: hollow tining, dates: '2027-08-23, 2027-08-30', greens: {2027-08-23: 1-2, 2027-08-30: 3}}
      - {operation: top dressing, dates: '2027-08-23, 2027-08-30', greens: {2027-08-23: 1-2, 2027-08-30: 3}, settings: {dressings: 2}}
    """
    programme = issued_on(tmp_path, "2027-08-02", textwrap.dedent(text) + HOURS)
    entry = tee_signs(programme)
    assert entry is not None
    signs = [
        plain(" ".join(getattr(block, "text", "") for block in section.blocks))
        for section in entry.items[0].document.sections  # type: ignore[union-attr]
        if section.blocks[0] == Paragraph.of("Monday 30 August")
    ]
    assert len(signs) == 2
    assert "Green 3 closed" in signs[0]
    assert "Open again tomorrow morning." in signs[0]
    assert "Fresh sand on greens 1 and 2" in signs[1]
    assert "No flag? Please do not play to that green." in signs[1]


def test_no_message_for_phones_announces_what_has_begun(tmp_path: Path) -> None:
    """Cores on the 23rd and 24th: until the 23rd they are announced, on the 24th no more."""
    for day, told in (("2027-08-22", True), ("2027-08-23", True), ("2027-08-24", False)):
        documents = write_documents(issued_on(tmp_path, day), {})
        heads = [
            block.text
            for section in documents.document("short-messages").sections
            if section.name == "period hollow-tining-1"
            for block in section.blocks
            if isinstance(block, Heading)
        ]
        assert ("Announcement" in heads) is told
        assert ("Reminder" in heads) is told
        assert "Finished" in heads
