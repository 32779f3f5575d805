"""Rules while greens are worked on, in plain words."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.wording.reading_ease import measure
from notices.wording.rules import rules
from tests.wording.small_plans import plan, words, work

CORES = work("hollow tining", "2027-08-09")
SCARIFYING = work("scarifying", "2027-08-09")
DRESSING = work("top dressing", "2027-08-09")
DRAIN = work("drain trenching", "2027-08-09", greens="12")
ENGLAND = {"name": "Fallow Mead Golf Club", "country": "GB-ENG"}

FROM_HOLES = (
    "If Model Local Rule E-4 is in force, you get free relief from the holes. You get none when they are "
    "only in your stance, or in your line of play on the green."
)
SAND = "You may move loose sand and soil on the green."
SOIL = "You may move loose soil on the green."
REPAIR = "You may not repair the holes: they are part of looking after the green."
WRONG_GREEN = (
    "If Model Local Rule D-2 is in force, a green that has a temporary one is a wrong green. If your ball "
    "lies on it, you must take free relief. Drop it within one club-length of the nearest point "
    "clear of that green, not nearer the hole."
)
ASK = (
    "Please ask the committee whether your score counts for handicap. "
    "The national body sets the limits."
)
COUNTS = "Work on the greens does not by itself stop a score counting for handicap."
LIMIT = (
    "A score can count for handicap only with at most two temporary greens in 18 holes, "
    "or one in nine."
)


def said(*works: dict[str, object], **more: object) -> list[str]:
    return [rule.text for rule in rules(words(plan(*works, **more)))]  # type: ignore[arg-type]


def test_each_work_brings_its_own() -> None:
    assert said(CORES) == [FROM_HOLES, f"{SOIL} {REPAIR}", ASK]
    assert said(SCARIFYING) == [FROM_HOLES.replace("holes", "slits"), SOIL, ASK]
    both = FROM_HOLES.replace("the holes", "the holes and slits")
    assert said(CORES, SCARIFYING) == [both, f"{SOIL} {REPAIR}", ASK]
    # Of sand only where some is spread.
    assert said(CORES, DRESSING) == [FROM_HOLES, f"{SAND} {REPAIR}", ASK]
    assert said(DRESSING) == [SAND, ASK]
    assert said(DRAIN) == [WRONG_GREEN, ASK]
    assert said(work("rolling", "2027-08-09")) == []


def test_in_england_more_is_known() -> None:
    assert said(CORES, club=ENGLAND) == [FROM_HOLES, f"{SOIL} {REPAIR}", COUNTS]
    assert said(DRAIN, club=ENGLAND) == [WRONG_GREEN, LIMIT]


def closed(greens: str, course: str = "1-18") -> list[tuple[str, tuple[dt.date, ...]]]:
    closure = {"what": f"greens {greens}", "dates": "2027-08-09", "instead": "temporary greens"}
    told = words(plan(club=ENGLAND, greens=course, closures=[closure]))
    return [(rule.text, rule.dates) for rule in rules(told)]


MONDAY = (dt.date(2027, 8, 9),)


@pytest.mark.parametrize(
    ("greens", "course", "more", "dates"),
    [
        ("1-2", "1-18", "", ()),
        # Over nine holes from the tenth it still counts.
        ("1-3", "1-18", " So no score over 18 holes can count on Monday 9 August.", MONDAY),
        ("1", "1-9", "", ()),
        ("1-2", "1-9", " So no score can count on Monday 9 August.", MONDAY),
    ],
)
def test_days_on_which_no_score_counts_are_named(
    greens: str, course: str, more: str, dates: tuple[dt.date, ...]
) -> None:
    assert closed(greens, course) == [(WRONG_GREEN, ()), (LIMIT + more, dates)]


WEDNESDAY = (dt.date(2027, 8, 11),)
OF_OAK = "no score over 18 holes on the Oak course can count on Monday 9 August."
SHORT = "no score over nine holes on the Short course can count on Wednesday 11 August."


@pytest.mark.parametrize(
    ("closed", "more", "dates"),
    [
        # Three on one course, on Monday; two are within the limit.
        ({"Oak 1-3": MONDAY}, f" So {OF_OAK}", MONDAY),
        ({"Oak 1-2, Elm 1-2": MONDAY}, "", ()),
        (
            {"Oak 1-3, Elm 1-3": MONDAY},
            f" So {OF_OAK.replace('Oak course', 'Oak course or the Elm course')}",
            MONDAY,
        ),
        # The course of nine holes bears one.
        ({"Short 1": MONDAY}, "", ()),
        (
            {"Oak 1-3": MONDAY, "Short 1-2": WEDNESDAY},
            f" So {OF_OAK} N{SHORT[1:]}",
            MONDAY + WEDNESDAY,
        ),
    ],
)
def test_the_course_is_named_where_another_still_counts(
    closed: dict[str, tuple[dt.date, ...]], more: str, dates: tuple[dt.date, ...]
) -> None:
    closures = [
        {"what": f"greens {greens}", "dates": str(day), "instead": "temporary greens"}
        for greens, (day,) in closed.items()
    ]
    data = plan(club=ENGLAND, closures=closures)
    data["course"]["greens"] = [
        *({"green": "1-18", "course": name} for name in ("Oak", "Elm")),
        {"green": "1-9", "course": "Short"},
    ]
    assert [(rule.text, rule.dates) for rule in rules(words(data))] == [
        (WRONG_GREEN, ()),
        (LIMIT + more, dates),
    ]


def test_nines_are_named_like_courses() -> None:
    closure = {"what": "greens Red nine 1-2", "dates": "2027-08-09", "instead": "temporary greens"}
    data = plan(club=ENGLAND, closures=[closure])
    names = ("Red nine", "White nine", "Blue nine")
    data["course"]["greens"] = [{"green": "1-9", "course": name} for name in names]
    said = "no score over nine holes on the Red nine can count on Monday 9 August."
    assert [rule.text for rule in rules(words(data))] == [WRONG_GREEN, f"{LIMIT} So {said}"]


def test_the_rules_are_as_plain_as_the_rest() -> None:
    for text in (FROM_HOLES, SAND, REPAIR, WRONG_GREEN, ASK, COUNTS, LIMIT):
        assert measure(text).grade < 9, text
