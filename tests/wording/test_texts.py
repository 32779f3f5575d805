"""Every text on every kind of work reads well, whatever the plan: one green or all, filled or
not, in summer or going into winter."""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping

import pytest

from notices.operations import CATALOGUE, TEXT_SECTIONS
from notices.paths import templates_folder
from notices.programme.model import Programme
from notices.wording import texts
from notices.wording.operation_facts import operation_facts
from notices.wording.reading_ease import measure, sentences_of
from notices.wording.texts import OperationText, operation_text
from tests.wording.lint import faults_in, lines
from tests.wording.small_plans import plan, programme, work

HARDEST_GRADE = 8.0

SUMMER, AUTUMN = "2027-08-10", "2027-10-20"
"""In August the grass grows for months; late in October it stops within weeks."""

FILLING = {"fill": "holes", "dressings": 3, "days_between": 7}

SETTINGS: Mapping[str, Mapping[str, object]] = {
    "feeding": {"product": "a slow feed"},
    "wetting agent": {"product": "a wetter"},
    "overseeding": {"seed": "browntop bent"},
    "turfing": {"area": "40 m2"},
}
"""Settings that the catalogue leaves empty."""

LEADS = {
    "brushing": "top dressing",
    "clean-up cut": "scarifying",
    "rolling": "hollow tining",
    "raising the height of cut": "scarifying",
}
"""A work that goes with one that opens the surface is planned with one."""

MATRIX = [
    (name, greens, filled, season)
    for name, operation in CATALOGUE.items()
    for greens, season in itertools.product(("1", "1-18"), (SUMMER, AUTUMN))
    for filled in ((False, True) if operation.filled else (False,))
]


def worked_out(name: str, greens: str, season: str, *, filled: bool, bare: bool) -> Programme:
    settings = {} if bare else SETTINGS.get(name, {})
    works = [work(name, season, id="it", greens=greens, settings=settings)]
    if filled:
        works.append(work("top dressing", season, greens=greens, settings=FILLING))
    if lead := LEADS.get(name):
        works.append(work(lead, season, greens=greens))
    return programme(plan(*works))


def text_of(made: Programme) -> OperationText:
    (it,) = (work for work in made.works if work.id == "it")
    return operation_text("en-GB", it.operation.slug, operation_facts(it, made))


@pytest.mark.parametrize(("name", "greens", "filled", "season"), MATRIX)
def test_a_text_reads_well(name: str, greens: str, season: str, *, filled: bool) -> None:
    for bare in (False, True) if name in SETTINGS else (False,):
        text = text_of(worked_out(name, greens, season, filled=filled, bare=bare))
        assert tuple(text.sections) == TEXT_SECTIONS
        pieces = [text.line, *(piece for part in text.sections.values() for piece in lines(part))]
        assert [fault for piece in pieces for fault in faults_in(piece, "en-GB")] == []
        assert measure(" ".join(pieces)).grade <= HARDEST_GRADE


@pytest.mark.parametrize(("name", "greens", "filled", "season"), MATRIX)
def test_one_green_is_not_each_of_several(
    name: str, greens: str, season: str, *, filled: bool
) -> None:
    text = text_of(worked_out(name, greens, season, filled=filled, bare=False))
    whole = " ".join(piece for part in text.sections.values() for piece in lines(part))
    if greens == "1":
        assert "each green" not in whole
        assert "all 18" not in whole


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize(
    ("brushings", "said"),
    [
        (("2027-08-10", "2027-08-17", "2027-08-24"), "brush it into the holes"),
        (("2027-08-10",), "to fill the holes"),  # the top-ups are not
        ((), "to fill the holes"),
    ],
)
def test_sand_is_brushed_in_where_each_dressing_is(
    language: str, brushings: tuple[str, ...], said: str
) -> None:
    made = programme(
        plan(
            work("hollow tining", SUMMER),
            work("top dressing", SUMMER, id="it", settings=FILLING),
            *(work("brushing", day) for day in brushings),
            club={"language": language},
        )
    )
    (it,) = (work for work in made.works if work.id == "it")
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    whole = " ".join([text.line, *lines(text.section("what we do"))])
    assert said in whole
    assert "work it in" not in whole
    assert ("brush" in whole) is (len(brushings) == 3)


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize("name", ["drain trenching", "turfing"])
@pytest.mark.parametrize(
    ("greens", "state", "first"),
    [
        ("1", "closed", "The green is closed while we work."),
        ("1-18", "closed", "Each green is closed while we work on it."),
        ("1", "temporary green", "You play to a temporary green until the green opens again."),
        ("1-18", "temporary green", "You play to a temporary green until the green opens again."),
        ("1", "open", "The green stays open while we work."),
        ("1-18", "open", "Each green stays open while we work."),
    ],
)
def test_what_golfers_meet_on_the_day(
    language: str, name: str, greens: str, state: str, first: str
) -> None:
    """The plan says it, not the kind of work: a club may close what others play around."""
    made = programme(
        plan(work(name, SUMMER, greens=greens, while_working=state), club={"language": language})
    )
    (it,) = made.works
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    game = " ".join(lines(text.section("your game")))
    assert sentences_of(game)[0] == first
    # Nothing else in it says what the green is on the day.
    assert len(re.findall(r"closed|temporary|while we work", game)) == len(
        re.findall(r"closed|temporary|while we work", first)
    )


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
def test_no_weeks_are_named_that_end_in_the_next_year(language: str) -> None:
    """Scarified late in October: at best it heals when spring comes, so nothing is "at best"."""
    made = programme(plan(work("scarifying", AUTUMN), club={"language": language}))
    (it,) = made.works
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    whole = " ".join(lines(text.section("how long")))
    assert "spring" in whole
    assert "At best" not in whole
    assert "week" not in whole


def test_weeks_are_named_where_a_warm_autumn_is_long_enough() -> None:
    made = programme(plan(work("solid tining", "2027-10-11")))
    (it,) = made.works
    (first, *_) = made.recoveries[it.id]
    assert first.growth_stops is not None
    assert first.fully_healed.early < first.growth_stops
    text = operation_text("en-GB", it.operation.slug, operation_facts(it, made))
    assert "At best, expect the holes to close in about " in " ".join(
        lines(text.section("how long"))
    )


@pytest.mark.parametrize(
    ("language", "day", "stay"),
    [
        # Expected before growth returns, as the test looks first, and after it.
        ("en-GB", "2027-10-12", "may stay"),
        ("en-GB", "2027-11-08", "stay"),
        ("en-US", "2027-10-12", "stay"),  # grass that likes it warmer
    ],
)
def test_marks_that_may_heal_before_winter_are_not_said_to_stay(
    language: str, day: str, stay: str
) -> None:
    made = programme(plan(work("hollow tining", day), club={"language": language}))
    (it,) = made.works
    (first, *_) = made.recoveries[it.id]
    assert first.growth_stops
    assert first.growth_returns
    assert first.fully_healed.expected >= first.growth_stops
    assert (first.fully_healed.expected < first.growth_returns) is (stay == "may stay")
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    assert f"Some marks {stay} over the winter" in " ".join(lines(text.section("how long")))


def test_every_text_belongs_to_a_kind_of_work() -> None:
    folder = templates_folder() / "en-GB" / "operations"
    assert {path.stem for path in folder.glob("*.md")} == {o.slug for o in CATALOGUE.values()}


OPENINGS = ("holes", "slits", "sand", "channels", "trenches", "turf")


@pytest.mark.parametrize("kinds", list(itertools.product((False, True), repeat=len(OPENINGS))))
def test_the_story_of_any_works_together_reads_well(kinds: tuple[bool, ...]) -> None:
    opened = dict(zip(OPENINGS, kinds, strict=True))
    below = opened["holes"] or opened["slits"] or opened["channels"]
    facts = {
        **opened,
        "openings": below,
        "winter": False,
        "may_heal": False,
        "healed": "",
        "healed_early": "",
    }
    pieces = list(lines(texts.plain_text("en-GB", "why", facts)))
    assert pieces
    assert [fault for piece in pieces for fault in faults_in(piece, "en-GB")] == []
    assert measure(" ".join(pieces)).grade <= HARDEST_GRADE


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize("kinds", list(itertools.product((False, True), repeat=len(OPENINGS))))
def test_the_story_tells_of_each_kind_and_of_no_other(
    language: str, kinds: tuple[bool, ...]
) -> None:
    opened = dict(zip(OPENINGS, kinds, strict=True))
    facts = {
        **opened,
        "openings": False,
        "winter": False,
        "may_heal": False,
        "healed": "",
        "healed_early": "",
    }
    story = " ".join(lines(texts.plain_text(language, "why", facts)))
    signs = {
        "holes": r"\bholes\b",
        "slits": r"\bslits\b|\bblades open\b",
        "channels": r"\bchannels\b",
        "trenches": r"\bnew drains?\b",
        "turf": r"\bturf\b|\bsod\b",
    }
    assert {kind for kind, sign in signs.items() if re.search(sign, story, re.IGNORECASE)} == {
        kind for kind in signs if opened[kind]
    }
    # The slot and the cracks carry the water to a channel; a hole meets one by chance.
    assert ("slots and fine cracks lead the water" in story) == opened["channels"]
    assert not re.search(r"holes? (?:meet|reach|lead|run)", story)


def test_sections_are_joined_to_one_paragraph() -> None:
    text = text_of(worked_out("hollow tining", "1-18", SUMMER, filled=True, bare=False))
    what, why = (" ".join(lines(text.section(name))) for name in ("what we do", "why"))
    assert text.joined(("what we do", "why")).text == f"{what} {why}"
    assert what.startswith("Hollow tines take small cores")
    assert "closes the holes soonest" in " ".join(lines(text.section("why now")))
    assert "Without this work, dead growth" in " ".join(lines(text.section("if we do not")))


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize(("season", "said"), [(SUMMER, "grows well now"), (AUTUMN, "grows slowly")])
def test_why_now_depends_on_how_the_grass_grows(language: str, season: str, said: str) -> None:
    made = programme(plan(work("scarifying", season), club={"language": language}))
    (it,) = made.works
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    assert said in " ".join(lines(text.section("why now")))


def test_a_text_that_names_what_there_is_not_is_an_error() -> None:
    with pytest.raises(Exception, match="is undefined"):
        operation_text("en-GB", "scarifying", {})


def test_a_word_of_the_club_is_not_run_as_a_template() -> None:
    made = programme(
        plan(work("feeding", SUMMER, id="it", settings={"product": "{{ 7 * 7 }}{% if x %}"}))
    )
    assert "{{ 7 * 7 }}{% if x %}" in " ".join(lines(text_of(made).section("what we do")))


def test_a_word_of_the_club_cannot_add_a_section() -> None:
    made = programme(
        plan(work("feeding", SUMMER, id="it", settings={"product": "x\n\n## Why\n\ny"}))
    )
    text = text_of(made)
    assert tuple(text.sections) == TEXT_SECTIONS
    assert "Grass that has to heal" in " ".join(lines(text.section("why")))


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize(
    ("greens", "said"),
    [
        ("1-18", "through each green"),
        ("1-11, 13-18", "through each green except green 12"),
        ("10-18", "through greens 10 to 18"),  # as many are left out
        ("4", "through green 4"),
    ],
)
def test_a_text_names_the_greens_where_its_period_has_more(
    language: str, greens: str, said: str
) -> None:
    works = (
        work("hollow tining", SUMMER),
        work("mole ploughing", SUMMER, id="it", greens=greens),
    )
    made = programme(plan(*works, club={"language": language}))
    (it,) = (work for work in made.works if work.id == "it")
    text = operation_text(language, it.operation.slug, operation_facts(it, made))
    whole = " ".join(lines(text.section("what we do")))
    assert re.search(rf"{re.escape(said)}[,.]", whole)
