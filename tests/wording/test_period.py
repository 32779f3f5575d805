"""A period in words: every sentence that the first screen is made of."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping

import pytest

from notices.wording.dates import DateWords
from notices.wording.period import PeriodWords
from notices.wording.words import Words
from tests.wording.small_plans import (
    CENTRAL_ENGLAND,
    GREEN_OF_AN_HOUR,
    HOUR_A_GREEN,
    ISSUED,
    MILD_WINTER,
    period,
    plan,
    words,
    work,
)

DATES = DateWords("en-GB", ISSUED)

# In 2027, 9 August is a Monday.
ONE_DAY = "2027-08-09"
THREE_DAYS = "2027-08-09 to 2027-08-11"
LATE = "2027-10-11 to 2027-10-13"

FULL = ("scarifying", "hollow tining", "top dressing")


def full(dates: str = THREE_DAYS, **more: object) -> PeriodWords:
    return period(plan(*(work(name, dates, **more) for name in FULL)))


@pytest.mark.parametrize(
    ("operations", "name"),
    [
        (["hollow tining"], "Hollow tining"),
        (["hollow tining", "top dressing"], "Hollow tining and top dressing"),
        (["scarifying", "hollow tining", "top dressing"], "Greens renovation"),
        (["verticutting"], "Verticutting"),
        (["raising the height of cut"], "Raising the height of cut"),
        # What only tidies gives no name beside what opens the surface.
        (["hollow tining", "rolling"], "Hollow tining"),
    ],
)
def test_its_name(operations: list[str], name: str) -> None:
    assert period(plan(*(work(o, ONE_DAY) for o in operations))).name() == name


@pytest.mark.parametrize(
    ("operations", "what"),
    [
        (["scarifying", "hollow tining", "top dressing"], "Slits, holes and sand, "),
        (["hollow tining"], "Holes, "),
        (["hollow tining", "top dressing"], "Holes and sand, "),
    ],
)
def test_what_it_is_in_a_sentence(operations: list[str], what: str) -> None:
    told = period(plan(*(work(o, ONE_DAY) for o in operations)))
    assert told.what() == f"{what}to let water and air down to the roots."


def test_what_a_drain_is_for() -> None:
    told = period(plan(work("drain trenching", ONE_DAY, greens="12")))
    assert told.what() == "New drains, to let the water out."


def test_when_always_names_the_year() -> None:
    assert full().when() == "Monday 9 to Wednesday 11 August 2027"
    assert full(ONE_DAY).when() == "Monday 9 August 2027"


@pytest.mark.parametrize(
    ("greens", "dates", "which"),
    [
        ("1-18", THREE_DAYS, "All 18 greens, six a day."),
        ("1-17", THREE_DAYS, "Greens 1 to 17, five or six a day."),
        ("1-18", ONE_DAY, "All 18 greens."),
        ("12", THREE_DAYS, "Only green 12."),
        ("1-3", THREE_DAYS, "Greens 1 to 3."),
    ],
)
def test_which_greens_and_how_many_a_day(greens: str, dates: str, which: str) -> None:
    assert period(plan(work("hollow tining", dates, greens=greens))).which() == which


def test_a_pace_is_in_words_or_in_figures() -> None:
    """21 greens in two days: ten and eleven."""
    told = period(plan(work("hollow tining", "2027-08-09 to 2027-08-10"), greens="1-21"))
    assert told.which() == "All 21 greens, 10 or 11 a day."


@pytest.mark.parametrize(
    ("greens", "dates", "state", "said"),
    [
        # Six greens a day, and a closed green closes its hole.
        (
            "1-18",
            THREE_DAYS,
            "closed",
            (
                "Each day only the greens being worked on are closed. "
                "That leaves 12 of the 18 holes to play."
            ),
        ),
        # 11 greens: six one day and five the other.
        (
            "1-11",
            "2027-08-09 to 2027-08-10",
            "closed",
            (
                "Each day only the greens being worked on are closed. "
                "That leaves 12 or 13 of the 18 holes to play."
            ),
        ),
        (
            "1-18",
            ONE_DAY,
            "closed",
            "The greens and their holes are closed while we work. No hole is open that day.",
        ),
        (
            "12",
            ONE_DAY,
            "closed",
            "The green and its hole are closed while we work. That leaves 17 of the 18 holes to play.",
        ),
        # To a putting green nobody plays from a tee.
        ("Putting green", ONE_DAY, "closed", "The green is closed while we work."),
        (
            "1-18",
            THREE_DAYS,
            "temporary green",
            "You play to temporary greens where we work. Expect them to be rough.",
        ),
        (
            "12",
            THREE_DAYS,
            "temporary green",
            "You play to a temporary green until the green opens again. Expect it to be rough.",
        ),
        ("1-18", THREE_DAYS, "open", "The greens stay open."),
        ("12", THREE_DAYS, "open", "The green stays open."),
    ],
)
def test_on_the_day(greens: str, dates: str, state: str, said: str) -> None:
    tined = work("hollow tining", dates, greens=greens, while_working=state)
    told = period(plan(tined, greens="1-18, Putting green"))
    assert told.status_while_working() == said


def test_a_double_green_closes_two_holes() -> None:
    course = {"greens": [{"green": "1-18"}, {"green": 2, "also": 16}]}
    told = period({**plan(work("hollow tining", ONE_DAY, greens="2")), "course": course})
    assert told.status_while_working() == (
        "The green and its holes are closed while we work. That leaves 16 of the 18 holes to play."
    )


def test_greens_that_open_the_same_day_take_their_holes_for_a_while_only() -> None:
    told = period(plan(work("verticutting", ONE_DAY, reopen="when finished")))
    assert told.status_while_working() == (
        "Each green and its hole are closed only while we work on the green."
    )


def test_where_temporary_greens_lie_and_how_good_they_are() -> None:
    described = work("drain trenching", ONE_DAY, greens="12", temporary="40 m short, cut to 6 mm")
    told = period(plan(described))
    # Who describes temporary greens has some.
    assert told.status_while_working() == (
        "You play to a temporary green until the green opens again. Temporary green: 40 m short, cut to 6 mm."
    )


# A green with a temporary one, what is cored on Monday 9 August, and what golfers meet there.
KEPT = [
    (
        "12",
        "1-18",
        (
            "The greens and their holes are closed while we work. That leaves one of the 18 holes to "
            "play. Green 12 keeps its temporary green."
        ),
    ),
    (
        "12, 14",
        "1-18",
        (
            "The greens and their holes are closed while we work. That leaves two of the 18 holes to "
            "play. Greens 12 and 14 keep their temporary greens."
        ),
    ),
    ("12", "12", "You play to the temporary green while we work."),
    ("12-14", "12-14", "You play to the temporary greens while we work."),
    # Holes 12 to 18 are left.
    (
        "12",
        "1-11",
        (
            "The greens and their holes are closed while we work. That leaves seven of the 18 holes to "
            "play."
        ),
    ),
]


@pytest.mark.parametrize(("replaced", "cored", "said"), KEPT)
def test_a_hole_with_a_temporary_green_stays_in_play(replaced: str, cored: str, said: str) -> None:
    closed = {"what": f"greens {replaced}", "dates": ONE_DAY, "instead": "temporary greens"}
    told = period(plan(work("hollow tining", ONE_DAY, greens=cored), closures=[closed]))
    assert told.status_while_working() == said


@pytest.mark.parametrize(
    ("greens", "dates", "reopen", "said"),
    [
        # Done on Wednesday 11 August at the latest.
        (
            "1-18",
            THREE_DAYS,
            "next morning",
            "Each green opens again the next morning. All are open by Thursday 12 August.",
        ),
        (
            "1-18",
            THREE_DAYS,
            "when finished",
            "Each green opens again the same day, when we have finished it.",
        ),
        ("12", ONE_DAY, "when finished", "It opens again the same day, when we have finished."),
        ("12", ONE_DAY, "next morning", "Expect it by Tuesday 10 August."),
        ("1-18", THREE_DAYS, "2 days later", "Expect all by Friday 13 August."),
        (
            "1-18",
            ONE_DAY,
            "next morning",
            "Each green opens again the next morning. All are open by Tuesday 10 August.",
        ),
    ],
)
def test_open_again(greens: str, dates: str, reopen: str, said: str) -> None:
    told = period(plan(work("hollow tining", dates, greens=greens, reopen=reopen)))
    assert told.open_again() == said


@pytest.mark.parametrize(
    ("greens", "reopen", "said"),
    [
        (
            "1-18",
            "next morning",
            (
                "Each green opens again the next morning. "
                "All are open by Thursday 12 August, or by Tuesday 17 August if it rains."
            ),
        ),
        (
            "12",
            "next morning",
            "Expect it by Thursday 12 August, or by Tuesday 17 August if it rains.",
        ),
    ],
)
def test_open_again_after_the_last_reserve_date(greens: str, reopen: str, said: str) -> None:
    """Kept free until Monday 16 August; the green opens on the morning after."""
    told = period(
        plan(
            work(
                "hollow tining",
                THREE_DAYS,
                greens=greens,
                reopen=reopen,
                reserve_dates="2027-08-13, 2027-08-16",
            )
        )
    )
    assert told.open_again() == said
    assert told.reserve() == (
        "If rain stops us, we catch up on Friday 13 August and on Monday 16 August."
    )
    assert told.reserve_days() == "We catch up on Friday 13 August and on Monday 16 August."


def test_reserve_dates_that_run_on() -> None:
    told = period(plan(work("hollow tining", ONE_DAY, reserve_dates="2027-08-10 to 2027-08-12")))
    assert told.reserve_days() == "We catch up from Tuesday 10 to Thursday 12 August."


def test_without_reserve_dates_nothing_is_said_of_them() -> None:
    assert full().reserve() == ""


def test_greens_that_stay_open() -> None:
    assert period(plan(work("slitting", ONE_DAY))).open_again() == "The greens stay open."
    one = period(plan(work("slitting", ONE_DAY, greens="12")))
    assert one.open_again() == "The green stays open."


@pytest.mark.parametrize(
    ("works", "stays"),
    [
        # Usually open: slitting, and what only tends the grass.
        ([work("slitting", ONE_DAY)], True),
        ([work("feeding", ONE_DAY)], True),
        ([work("raising the height of cut", ONE_DAY)], True),
        # Usually closed.
        ([work("hollow tining", ONE_DAY)], False),
        ([work("brushing", ONE_DAY)], False),
        ([work("hollow tining", ONE_DAY, while_working="open")], True),
        ([work("slitting", ONE_DAY, while_working="temporary green")], False),
        # One that closes the green is enough.
        ([work("slitting", ONE_DAY), work("hollow tining", ONE_DAY)], False),
        ([work("feeding", ONE_DAY), work("brushing", ONE_DAY)], False),
    ],
)
def test_whether_greens_stay_open(works: list[dict[str, object]], *, stays: bool) -> None:
    told = period(plan(*works))
    assert told.stays_open() is stays
    assert (told.open_again() == "The greens stay open.") is stays


def own(noticed: str) -> dict[str, object]:
    """A kind of work of the club's own that opens nothing."""
    sections = ("What we do", "Why", "What you will see", "Your game", "How long")
    text = "title: Air\nline: We blow air.\n" + "".join(f"\n## {s}\n\nAir.\n" for s in sections)
    return {"name": "air cushion", "noticed": noticed, "text": text, "settings": {}}


@pytest.mark.parametrize(
    ("operations", "said"),
    [
        (["feeding"], "Your putts are not affected."),
        (["feeding", "wetting agent"], "Your putts are not affected."),
        (["rolling"], "Your putts are not affected."),
        # The text on a raised cut says that putts run slower, so this must not deny it.
        (["raising the height of cut"], "Putts are slower until we mow lower again."),
        (["raising the height of cut", "feeding"], "Putts are slower until we mow lower again."),
        (["overseeding"], "Putts may be a little slower for a while."),
    ],
)
def test_putts_after_work_that_opens_nothing(operations: list[str], said: str) -> None:
    told = period(plan(*(work(o, ONE_DAY) for o in operations)))
    assert told.putting_well() == said
    assert told.leaves_putts_alone() is (said == "Your putts are not affected.")
    assert told.marks() == ""


def test_putts_are_not_left_alone_by_what_opens_the_ground() -> None:
    told = period(plan(work("feeding", ONE_DAY), work("hollow tining", ONE_DAY)))
    assert not told.leaves_putts_alone()
    assert told.putting_well().startswith("Expect all by ")
    # Its slower putts are said of its first day; the promise is that of the holes.
    raised = period(plan(work("raising the height of cut", ONE_DAY), work("scarifying", ONE_DAY)))
    assert not raised.leaves_putts_alone()
    assert raised.putting_well().startswith("Expect all by ")


@pytest.mark.parametrize(
    ("noticed", "said"),
    [
        ("hardly", "Your putts are not affected."),
        ("a little", "Expect all by Monday 9 August."),
        ("clearly", "Expect all by Monday 9 August."),
    ],
)
def test_putts_after_a_work_of_the_club_s_own(noticed: str, said: str) -> None:
    """A club that says golfers notice its work must not tell them that they will not."""
    told = period(plan(work("air cushion", ONE_DAY), operations=[own(noticed)]))
    assert told.putting_well() == said


def test_putting_well_names_both_days_of_the_promise() -> None:
    told = full()
    promise = told.period.putting_well
    assert promise.at_worst is not None
    assert promise.expect_by < promise.at_worst
    assert told.putting_well() == (
        f"Expect all by {DATES.day(promise.expect_by)}. At worst, {DATES.day(promise.at_worst)}."
    )


def test_putting_well_of_a_single_green() -> None:
    told = period(plan(work("hollow tining", ONE_DAY, greens="12")))
    assert told.putting_well().startswith("Expect it by ")


def test_no_promise_spans_more_than_a_month() -> None:
    promise = full().period.putting_well
    assert promise.at_worst is not None
    assert (promise.at_worst - promise.expect_by).days <= 31


@pytest.mark.parametrize("dates", [THREE_DAYS, LATE])
def test_where_growth_never_stops_there_is_no_word_of_winter(dates: str) -> None:
    told = period(plan(*(work(name, dates) for name in FULL), temperatures=MILD_WINTER))
    said = f"{told.putting_well()} {told.marks()}".lower()
    for word in ("winter", "spring", "grows", "autumn"):
        assert word not in said


def test_work_in_october_says_that_winter_comes_between() -> None:
    told = period(plan(*(work(name, LATE) for name in FULL), temperatures=CENTRAL_ENGLAND))
    promise = told.period.putting_well
    assert promise.through_winter
    assert promise.at_worst is not None
    assert promise.at_worst.year == 2028
    assert told.putting_well() == (
        f"Expect all by {DATES.day(promise.expect_by)}. If the autumn is cold, "
        f"putts may not run true until {DATES.about(promise.at_worst)}."
    )
    assert "2028" in told.putting_well()
    # Said once.
    assert told.marks() == ""


def told_of(*works: Mapping[str, object]) -> PeriodWords:
    """Return the first of several periods in words."""
    found = words(plan(*works))
    return PeriodWords(found, found.programme.periods[0])


def test_a_date_that_takes_in_what_follows_says_so() -> None:
    told = told_of(work("scarifying", "2027-09-01"), work("slitting", "2027-09-06"))
    latest = told.words.programme.periods[1].putting_well
    assert latest.at_worst is not None
    assert told.putting_well() == (
        f"Expect all by {DATES.day(latest.expect_by)}. At worst, {DATES.day(latest.at_worst)}. "
        "Before then comes slitting, on Monday 6 September."
    )
    # Where the slitting stands on the same sheet, the date is enough.
    assert told.putting_well(brief=True) == (
        f"Expect all by {DATES.day(latest.expect_by)}. At worst, {DATES.day(latest.at_worst)}."
    )


def test_of_several_works_before_the_date_the_last_day_is_told() -> None:
    """The last of them need not put the date off: who reads of one must not think it the only one."""
    blades, quick, late = (
        work("scarifying", "2027-09-01"),
        work("slitting", "2027-09-06"),
        work("solid tining", "2027-09-08 to 2027-09-09", greens="1-12"),
    )
    told = told_of(blades, quick, late)
    assert told.putting_well().endswith(
        "More work follows on these greens until Thursday 9 September."
    )
    only_late = told_of(blades, late).putting_well()
    assert only_late.endswith(
        "Before then comes solid tining, on Wednesday 8 and Thursday 9 September."
    )


def test_of_what_follows_on_one_green_only_its_own_days_are_told() -> None:
    told = told_of(
        work("drain trenching", "2027-09-01", greens="18"),
        work("slitting", "2027-09-06 to 2027-09-08"),
    )
    assert told.putting_well().endswith("Before then comes slitting, on Wednesday 8 September.")


def test_greens_that_take_longer_are_named_beside_the_date() -> None:
    told = told_of(
        work("scarifying", "2027-09-01"),
        work("drain trenching", "2027-09-06", greens="4"),
        work("turfing", "2027-09-08", greens="7", settings={"area": "20 m2"}),
    )
    assert told.putting_well().endswith(
        "Only green 4 (drain trenching) and green 7 (turfing) take longer."
    )
    # Where there is no room for the reasons, the promise itself leaves them out.
    assert told.putting_well(brief=True).startswith("Expect all but greens 4 and 7 by ")
    assert told.putting_well(whole=True, brief=True).startswith(
        "Expect all but greens 4 and 7 to putt well by "
    )


def test_what_comes_soon_after_is_told_beside_the_date() -> None:
    first = period(plan(work("hollow tining", "2027-05-03"))).period.putting_well
    begins = first.expect_by + dt.timedelta(days=8)
    told = told_of(work("hollow tining", "2027-05-03"), work("slitting", begins.isoformat()))
    assert told.putting_well().endswith(
        f"The next work on these greens begins on {DATES.day(begins)}: slitting."
    )


def test_work_in_december_names_no_day_for_what_grass_must_do() -> None:
    """A day would be a promise that nobody can keep: thirds of a month are as near as one gets."""
    told = period(plan(work("drain trenching", "2027-12-06", greens="12")))
    said = told.putting_well()
    assert said.startswith("Grass does not grow in winter. Expect it by ")
    assert "2028" in said
    assert not any(day in said for day in ("day ", "Mon", "Tues"))


def test_later_dressings() -> None:
    settings: Mapping[str, object] = {"fill": "holes", "dressings": 3, "days_between": 7}
    told = period(
        plan(work("hollow tining", THREE_DAYS), work("top dressing", THREE_DAYS, settings=settings))
    )
    assert told.later_dressings() == (
        "We spread sand twice more, green by green in the same order. "
        "Once from Monday 16 to Wednesday 18 August. Again from Monday 23 to Wednesday 25 August."
        " A green is closed only while we do it."
    )


def test_later_dressings_say_for_how_long_a_green_is_away() -> None:
    settings: Mapping[str, object] = {"rate": "1 kg/m2", "dressings": 2, "days_between": 7}
    dressing = work("top dressing", THREE_DAYS, greens="1-3", settings=settings)  # one a day
    data = plan(dressing, crew=HOUR_A_GREEN)
    data["course"]["greens"] = [{"green": "1-18", "area": GREEN_OF_AN_HOUR}]
    assert (
        period(data)
        .later_dressings()
        .endswith(" A green is closed only while we do it, for up to an hour.")
    )


def test_later_dressings_that_overlap_are_one_span() -> None:
    """Wednesday is put off to the Tuesday after: its second dressing falls among the third ones."""
    settings: Mapping[str, object] = {"fill": "holes", "dressings": 3, "days_between": 7}
    days = "2027-08-09 to 2027-08-10, 2027-08-17"
    told = period(plan(work("hollow tining", days), work("top dressing", days, settings=settings)))
    # The last day is that of the greens of 17 August, 14 days later.
    assert told.later_dressings(brief=True) == (
        "We spread sand twice more, green by green in the same order, "
        "from Monday 16 to Tuesday 31 August."
    )


def test_later_dressings_in_american() -> None:
    settings: Mapping[str, object] = {"rate": "1 kg/m2", "dressings": 2, "days_between": 7}
    dressing = work("top dressing", THREE_DAYS, settings=settings)
    told = period(plan(dressing, club={"language": "en-US"}))
    assert told.later_dressings() == (
        "We topdress once more, green by green in the same order: "
        "from Monday, August 16 to Wednesday, August 18."
        " A green is closed only while we do it."
    )


@pytest.mark.parametrize(
    ("dates", "greens", "said"),
    [
        # Seven days after Wednesday 11 August, all on one day.
        ("2027-08-11", "1-18", "We spread sand once more: on Wednesday 18 August."),
        # One green has no order.
        (THREE_DAYS, "12", "We spread sand once more: from Monday 16 to Wednesday 18 August."),
    ],
)
def test_later_dressings_that_have_no_order(dates: str, greens: str, said: str) -> None:
    settings: Mapping[str, object] = {"fill": "holes", "dressings": 2, "days_between": 7}
    told = period(
        plan(
            work("hollow tining", THREE_DAYS, greens=greens),
            work("top dressing", dates, greens=greens, settings=settings),
        )
    )
    which = "The" if greens == "12" else "A"
    assert told.later_dressings() == f"{said} {which} green is closed only while we do it."


@pytest.mark.parametrize(
    ("dressings", "said"),
    [
        (1, ""),
        (2, "We spread sand once more: on Monday 16 August."),
        (
            4,
            (
                "We spread sand three times more: on Monday 16 August, on Monday 23 August "
                "and again on Monday 30 August."
            ),
        ),
    ],
)
def test_later_dressings_of_a_single_green(dressings: int, said: str) -> None:
    settings = {"rate": "1 kg/m2", "dressings": dressings, "days_between": 7}
    told = period(plan(work("top dressing", ONE_DAY, greens="12", settings=settings)))
    closed = " The green is closed only while we do it." if said else ""
    assert told.later_dressings() == f"{said}{closed}"


def test_a_raised_cut_is_said_of_its_first_day() -> None:
    told = period(
        plan(work("raising the height of cut", "2027-07-30"), work("scarifying", THREE_DAYS))
    )
    assert told.raised_cut() == "From Friday 30 July we mow a little higher, so putts are slower."
    assert full().raised_cut() == ""


def test_the_notices_lead_with_what_golfers_notice_most() -> None:
    told = words(
        plan(
            work("verticutting", "2027-05-03 to 2027-05-04"),
            *(work(name, THREE_DAYS) for name in FULL),
            work("drain trenching", "2027-11-08", greens="12"),
        )
    )
    main = told.main_period()
    assert main is not None
    assert PeriodWords(told, main).name() == "Greens renovation"
    others = [PeriodWords(told, period).name() for period in told.other_periods()]
    assert others == ["Verticutting", "Drain trenching"]


def test_days_with_the_same_green_are_one_entry() -> None:
    told = period(plan(work("drain trenching", "2027-08-09 to 2027-08-12", greens="12")))
    run = tuple(dt.date(2027, 8, day) for day in range(9, 13))
    assert told.words.days_of(told.period) == [(run, ("12",))]


@pytest.mark.parametrize(
    ("keys", "said"),
    [(["1", "2"], "greens 1 and 2"), ([str(n) for n in range(1, 19)], "all greens")],
)
def test_greens_where_room_is_short(keys: list[str], said: str) -> None:
    told: Words = words(plan(work("rolling", ONE_DAY)))
    assert told.greens_briefly(keys) == said


def test_nine_holes_are_said_in_words() -> None:
    days = {"2027-08-09": "1-5", "2027-08-10": "6-9"}
    course = plan(work("hollow tining", "2027-08-09 to 2027-08-10", greens=days), greens="1-9")
    told = period(course).status_while_working()
    assert told.endswith("That leaves four or five of the nine holes to play.")


@pytest.mark.parametrize(
    ("settings", "said"),
    [
        ({"reserve_dates": "2027-08-12"}, "If rain stops us, we catch up on Thursday 12 August."),
        ({}, "We keep no day free for rain. If rain stops us, we will tell you the new day."),
        ({"while_working": "open"}, ""),
    ],
)
def test_whether_a_day_is_kept_free_for_rain_is_told(settings: dict[str, str], said: str) -> None:
    told = period(plan(work("hollow tining", ONE_DAY, **settings), greens="1-9"))
    assert told.if_it_rains() == said
