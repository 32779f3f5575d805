"""What is said on each occasion, to each kind of reader, whatever the plan and whatever happened."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from functools import cache

import pytest

from notices.paths import templates_folder
from notices.programme.model import Moment, Period
from notices.wording.audience import Audience
from notices.wording.moments import Message, News, message, messages, short_messages
from notices.wording.reading_ease import measure
from notices.wording.said import lines_of
from notices.wording.words import Words
from tests.wording.lint import faults_in, lines
from tests.wording.small_plans import plan, programme, work

LANGUAGES = ("en-GB", "en-US")

CREW = {"people": 6, "working_day": "07:00 to 15:30"}

THREE_DAYS = {"2027-08-23": "1-6", "2027-08-24": "7-12", "2027-08-25": "13-18"}

PLANS: Mapping[str, Mapping[str, object]] = {
    "18 greens, three days": plan(
        work("raising the height of cut", "2027-08-16"),
        work(
            "hollow tining",
            "2027-08-23 to 2027-08-25",
            greens=THREE_DAYS,
            reserve_dates="2027-08-26",
            services_checked=True,
        ),
        work(
            "top dressing", "2027-08-23 to 2027-08-25", settings={"fill": "holes", "dressings": 2}
        ),
        crew=CREW,
        approval={"by": "the Greens Committee", "date": "2027-02-01"},
        decision={"by": "the Course Manager", "when": "noon", "where": "the board"},
    ),
    "one green, one day": plan(work("hollow tining", "2027-10-20"), greens="1"),
    "one green of eighteen, for days": plan(
        work("turfing", "2027-11-08 to 2027-11-09", greens="12", settings={"area": "40 m2"})
    ),
    "greens that stay open": plan(work("slitting", "2027-06-07 to 2027-06-08")),
    "one day on every green": plan(
        work("hollow tining", "2027-08-16"),
        course={"greens": [{"green": "1-18"}, {"green": "Putting green"}]},
    ),
    "blades in July, sand in August": plan(
        work("verticutting", "2027-07-05"), work("top dressing", "2027-08-16")
    ),
    "work that nobody notices": plan(work("rolling", "2027-06-07")),
}

RAIN = "Heavy rain has left the greens too wet"


@cache
def made(name: str, language: str) -> Words:
    data = dict(PLANS[name])
    club = data["club"]
    assert isinstance(club, dict)
    return Words(programme(data | {"club": {**club, "language": language}}))


def period_of(words: Words) -> Period:
    period = words.main_period()
    assert period is not None
    return period


def told(
    moment: Moment,
    audience: Audience = Audience.MEMBERS,
    news: News = News(),  # noqa: B008, frozen
    name: str = "18 greens, three days",
    language: str = "en-GB",
) -> Message:
    words = made(name, language)
    return message(words, period_of(words), moment, audience, news)


def said(message: Message) -> str:
    return " ".join(lines_of((*message.opening, *message.next)))


def short(moment: Moment, news: News, name: str, language: str) -> tuple[str, ...]:
    words = made(name, language)
    return short_messages(words, period_of(words), moment, news)


def some_news(name: str) -> list[News]:
    first = period_of(made(name, "en-GB"))
    # Without any news, every kind of work is told in test_every_text.
    return [News(reason=RAIN, done=first.greens[:1], resume=(dt.date(2027, 12, 1),))]


@pytest.mark.parametrize("moment", Moment)
@pytest.mark.parametrize("name", PLANS)
def test_messages_read_well(name: str, moment: Moment) -> None:
    for language in LANGUAGES:
        for news in some_news(name):
            whole = []
            words = made(name, language)
            for audience, one in messages(words, period_of(words), moment, news).items():
                pieces = [*lines(one.opening), *lines(one.next)]
                heading = one.heading if one.heading.endswith("?") else f"{one.heading}."
                assert one.opening, (audience, "says nothing")
                assert one.next, (audience, "says nothing of what comes next")
                titles = (f"{one.subject}.", heading)
                found = [f for piece in (*titles, *pieces) for f in faults_in(piece, language)]
                assert [(language, audience, f) for f in found] == []
                counted = measure("\n\n".join(pieces))
                assert counted.grade <= 8, (language, audience, counted.grade)
                whole += pieces
            assert measure("\n\n".join(whole)).average <= 18


@pytest.mark.parametrize("moment", Moment)
@pytest.mark.parametrize("name", PLANS)
def test_short_messages_grow_shorter_and_the_last_fits_any_phone(name: str, moment: Moment) -> None:
    for language in LANGUAGES:
        for news in some_news(name):
            found = short(moment, news, name, language)
            assert len(found) >= 3
            assert [f for text in found for f in faults_in(text, language)] == []
            assert len(found[0]) == max(map(len, found))
            assert min(map(len, found)) <= 160
            # Typographic signs would halve the length of a text message.
            assert all(text.isascii() for text in found)


def test_every_moment_has_its_text_in_every_language() -> None:
    names = {moment.value.replace(" ", "-") for moment in Moment}
    for language in LANGUAGES:
        folder = templates_folder() / language / "moments"
        assert {path.stem for path in folder.glob("*.md")} == names


def test_the_day_before_names_the_greens_of_that_day() -> None:
    one = told(Moment.DAY_BEFORE, news=News(day=dt.date(2027, 8, 24)))
    assert one.subject == "Tomorrow: work on greens 7 to 12"
    assert lines_of(one.opening) == [
        "Tomorrow, Tuesday 24 August, greens 7 to 12 are closed for work. All other greens are open."
    ]
    assert "They open again on Wednesday 25 August." in said(one)


def test_a_day_called_off_is_caught_up_on_the_reserve_day() -> None:
    one = told(Moment.CALLED_OFF, news=News(day=dt.date(2027, 8, 23), reason=RAIN))
    text = said(one)
    assert "We will not work on greens 1 to 6 today, Monday 23 August." in text
    assert f"{RAIN}." in text
    assert "We now plan to do them on Thursday 26 August." in text


def test_no_new_day_is_made_up() -> None:
    one = told(Moment.CALLED_OFF, name="one green, one day")
    assert "We have no new day yet." in said(one)
    assert "21 October" not in said(one)


def test_what_is_left_of_a_day_is_done_on_the_reserve_day() -> None:
    """Greens 1 to 4 are done; Tuesday has greens 7 to 12 of its own, so 5 and 6 wait."""
    news = News(day=dt.date(2027, 8, 23), done=("1", "2", "3", "4"))
    one = told(Moment.STOPPED, news=news)
    assert one.subject == "Greens 1 to 4 are done, greens 5 and 6 still to do"
    assert "We now plan to finish them on Thursday 26 August." in said(one)


def test_a_job_of_several_days_on_one_green_goes_on_the_next_day() -> None:
    one = told(Moment.STOPPED, name="one green of eighteen, for days")
    assert one.subject == "Work stopped on green 12"
    assert "We did not finish green 12." in said(one)
    assert "We now plan to finish it on Tuesday 9 November." in said(one)


def test_where_no_day_is_kept_free_none_is_made_up_for_what_is_left() -> None:
    one = told(Moment.STOPPED, name="greens that stay open")
    assert "We have no new day yet." in said(one)


def test_nothing_is_called_done_or_undone_that_nobody_has_said_is_so() -> None:
    one = told(Moment.STOPPED)
    assert one.subject == "Work stopped on greens 1 to 6"
    assert "We did not finish all of greens 1 to 6." in said(one)
    assert "We now plan to finish the rest on Thursday 26 August." in said(one)
    assert "tell the office which greens are done" in said(told(Moment.STOPPED, Audience.TEAM))


def test_the_work_may_be_finished_before_the_last_green_is_open() -> None:
    """The last greens are done on Wednesday and open on Thursday morning."""
    on_the_day = told(Moment.FINISHED)
    assert "All greens will be open again by Thursday 26 August." in said(on_the_day)
    team = said(told(Moment.FINISHED, Audience.TEAM))
    assert "Take in signs and ropes, and put flags back, once a green is open." in team
    # One day late, and open the morning after the reserve day at the latest.
    later = told(Moment.FINISHED, news=News(day=dt.date(2027, 8, 27)))
    assert "All greens are open again." in said(later)
    team = said(told(Moment.FINISHED, Audience.TEAM, News(day=dt.date(2027, 8, 27))))
    assert "Please take in signs and ropes, put the flags back" in team


def test_all_greens_and_none_are_told_so_that_nobody_reads_some_of_them() -> None:
    """On all greens nothing is done that day, and that is no "not on all"."""
    name = "one day on every green"
    assert told(Moment.CALLED_OFF, name=name).subject == "No work on the greens today"
    assert "We will not work on the greens today" in said(told(Moment.CALLED_OFF, name=name))
    stopped = said(told(Moment.STOPPED, name=name))
    assert "We did not finish all 18 greens." in stopped


def test_the_one_green_that_is_not_worked_on_is_named() -> None:
    words = made("one day on every green", "en-GB")
    first = message(words, period_of(words), Moment.DAY_BEFORE)
    assert lines_of(first.opening) == [
        "Tomorrow, Monday 16 August, all 18 greens are closed for work. The putting green is open."
    ]


def test_a_job_of_several_days_is_done_on_its_last() -> None:
    name = "one green of eighteen, for days"
    first = told(Moment.PROGRESS, news=News(day=dt.date(2027, 11, 8)), name=name)
    assert lines_of(first.opening) == ["We are still at work on green 12."]
    at_work = short(Moment.PROGRESS, News(day=dt.date(2027, 11, 8)), name, "en-GB")
    assert at_work[0].startswith("Fallow Mead Golf Club: we are still at work on green 12. ")
    last = told(Moment.PROGRESS, news=News(day=dt.date(2027, 11, 9)), name=name)
    assert lines_of(last.opening) == [
        "We have done green 12. Nothing is left to do but to let the grass heal."
    ]


def test_the_team_is_told_the_weather_of_its_own_work() -> None:
    """Nobody sands or tines when the blades alone are out."""
    words = made("blades in July, sand in August", "en-GB")
    blades, sand = words.programme.periods
    told_of = [
        said(message(words, period, Moment.REMINDER, Audience.TEAM)) for period in (blades, sand)
    ]
    assert "sand" not in told_of[0]
    assert "We spread sand only when it is dry." in told_of[1]


def test_progress_says_when_we_are_behind() -> None:
    news = News(day=dt.date(2027, 8, 24), done=tuple(map(str, range(1, 11))))
    one = told(Moment.PROGRESS, Audience.COMMITTEE, news)
    assert "No. By now greens 11 and 12 should have been done too." in said(one)
    on_time = told(Moment.PROGRESS, Audience.COMMITTEE, News(day=dt.date(2027, 8, 24)))
    assert "Yes, as planned." in said(on_time)
    assert "So far greens 1 to 12 are done." in said(on_time)


def test_late_recovery_owns_up_and_gives_the_new_date() -> None:
    one = told(Moment.RECOVERY_LATE, news=News(new_date=dt.date(2027, 10, 9)))
    text = said(one)
    assert "That was our estimate, and it was too early." in text
    assert "We now expect the greens to putt well by Saturday 9 October." in text
    days = {day for fact in one.facts for day in fact.dates}
    promise = period_of(made("18 greens, three days", "en-GB")).putting_well
    assert days == {promise.expect_by, dt.date(2027, 10, 9)}


def test_without_a_new_date_the_worst_of_the_promise_is_named() -> None:
    words = made("18 greens, three days", "en-GB")
    worst = period_of(made("18 greens, three days", "en-GB")).putting_well.at_worst
    assert worst is not None
    late = said(told(Moment.RECOVERY_LATE))
    # Members were told that day, so it is no news, and nobody may say that it came later.
    assert (
        f"putt well by {words.dates.day(worst)}. That is the later of the two dates that we gave you."
        in late
    )
    assert "than we said" not in late


def test_hours_are_told_to_the_half_hour_and_to_shop_and_team_alone() -> None:
    for audience in Audience:
        text = said(told(Moment.DAY_BEFORE, audience))
        assert ("We plan to work from 07:00 to " in text) == (
            audience in (Audience.SHOP, Audience.TEAM)
        )


def test_the_days_that_are_named_are_facts() -> None:
    one = told(Moment.CALLED_OFF, news=News(day=dt.date(2027, 8, 24)))
    assert {day for fact in one.facts for day in fact.dates} == {
        dt.date(2027, 8, 24),
        dt.date(2027, 8, 26),
    }
    assert any(fact.greens == tuple(map(str, range(7, 13))) for fact in one.facts)
