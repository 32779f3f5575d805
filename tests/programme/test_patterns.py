"""The same works in other ways: what each costs golfers, team and greens, counted by hand."""

from __future__ import annotations

import datetime as dt
import textwrap
from pathlib import Path

import pytest

from notices.plan.load import load_plan
from notices.programme.as_json import pattern_as_json
from notices.programme.model import Layout, Pattern, Programme
from notices.programme.patterns import with_patterns
from notices.programme.work_out import work_out
from notices.wording.patterns import PatternWords, patterns_in_words
from notices.wording.words import Words

ISSUED = dt.date(2026, 1, 5)
# An hour for each green: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes, and 12 between greens.
HEAD = """\
club: {name: Marl Hill, sender: {email: course@marlhill.example}}
course: {greens: [{green: 1-18, area: 480 m2}, {green: Putting green, area: 480 m2}]}
crew:
  people: 4
  kept_back: 0
  breaks: 0
  working_day: '07:00 to 17:00'
  machines: [{operation: scarifying, width: 1 m, speed: 1 km/h, efficiency: 60 %, minutes_between_greens: 12}]
"""
SIX_A_DAY = """\
works:
  - operation: scarifying
    dates: 2026-06-01 to 2026-06-03
    greens: {2026-06-01: 1-6, 2026-06-02: 7-12, 2026-06-03: '13-18, Putting green'}
    reopen: next morning
"""


def day(number: int, month: int = 6) -> dt.date:
    return dt.date(2026, month, number)


def laid_out(folder: Path, text: str) -> Programme:
    path = folder / "plan.yaml"
    path.write_text(HEAD + textwrap.dedent(text), encoding="utf-8")
    plan = load_plan(path).plan
    return with_patterns(work_out(plan, ISSUED), plan)


@pytest.fixture(scope="module")
def programme(tmp_path_factory: pytest.TempPathFactory) -> Programme:
    medal = "fixtures: [{name: June Medal, date: 2026-06-01}]\n"
    return laid_out(tmp_path_factory.mktemp("plan"), SIX_A_DAY + medal)


@pytest.fixture(scope="module")
def found(programme: Programme) -> dict[Layout, Pattern]:
    return {pattern.layout: pattern for pattern in programme.patterns}


def test_the_days_of_each_layout(found: dict[Layout, Pattern]) -> None:
    assert {layout: pattern.days for layout, pattern in found.items()} == {
        Layout.ALL_AT_ONCE: ((day(1), 19),),
        # The putting green goes with the second nine, so that the first day leaves it.
        Layout.NINE_A_DAY: ((day(1), 9), (day(2), 10)),
        Layout.AS_PLANNED: ((day(1), 6), (day(2), 6), (day(3), 7)),
        Layout.SPREAD: ((day(1), 6), (day(8), 6), (day(15), 7)),
    }
    assert list(found) == list(Layout)


def test_golf_that_is_lost(found: dict[Layout, Pattern]) -> None:
    # Each of the 18 greens is closed for its own day, however they are laid out; the putting
    # green is no hole. All at once none is left, a nine a day leaves nine, six a day twelve.
    lost = {
        layout: (p.green_days_closed, p.days_under_nine, p.days_under_eighteen)
        for layout, p in found.items()
    }
    assert lost == {
        Layout.ALL_AT_ONCE: (18, 1, 1),
        Layout.NINE_A_DAY: (18, 0, 2),
        Layout.AS_PLANNED: (18, 0, 3),
        Layout.SPREAD: (18, 0, 3),
    }


def test_days_on_which_a_round_meets_both(found: dict[Layout, Pattern]) -> None:
    # A nine a day: on the 1st the done are closed, on the 2nd the others are being done. Six a
    # day: on the 2nd 1 to 6 recover and 13 to 18 are still to do. A week apart: from the 2nd to
    # the 14th, as far as those that are done have not come back before the next are.
    assert found[Layout.ALL_AT_ONCE].mixed_days == 0
    assert found[Layout.NINE_A_DAY].mixed_days == 0
    assert found[Layout.AS_PLANNED].mixed_days == 1
    assert 1 < found[Layout.SPREAD].mixed_days <= 13


def test_labour_and_what_fits(found: dict[Layout, Pattern]) -> None:
    # One person, an hour a green: 19 hours on a day of ten are nine too many; ten just fit.
    for pattern in found.values():
        assert pattern.person_hours == pytest.approx(19)
    fits = {layout: (p.fits, p.too_long, p.longest_minutes_over) for layout, p in found.items()}
    assert fits[Layout.ALL_AT_ONCE][:2] == (False, (day(1),))
    assert fits[Layout.ALL_AT_ONCE][2] == pytest.approx(540)
    for layout in (Layout.NINE_A_DAY, Layout.AS_PLANNED, Layout.SPREAD):
        assert fits[layout] == (True, (), 0.0)


def test_the_plan_s_own_layout_is_that_of_the_programme(
    programme: Programme, found: dict[Layout, Pattern]
) -> None:
    (period,) = programme.periods
    own = found[Layout.AS_PLANNED]
    assert own.putting_well == period.putting_well
    assert own.fully_healed == period.fully_healed
    # The last green is done two days sooner all at once, and twelve days later week by week.
    at_once, spread = found[Layout.ALL_AT_ONCE], found[Layout.SPREAD]
    assert at_once.open_again.expect_by == own.open_again.expect_by - dt.timedelta(days=2)
    assert spread.open_again.expect_by == own.open_again.expect_by + dt.timedelta(days=12)


def test_fixtures_are_met_or_not(found: dict[Layout, Pattern]) -> None:
    assert all(p.fixtures_on_closed == ("June Medal",) for p in found.values())


def test_a_layout_that_comes_to_the_plan_s_own_is_not_told_twice(tmp_path: Path) -> None:
    text = "works: [{operation: scarifying, dates: 2026-06-01, greens: 1-9}]\n"
    # A nine on one day is all at once, and the plan: only a visit a week of three is another.
    layouts = laid_out(tmp_path, text).patterns
    assert [p.layout for p in layouts] == [Layout.AS_PLANNED, Layout.SPREAD]
    assert [greens for _, greens in layouts[1].days] == [3, 3, 3]


@pytest.mark.parametrize(
    "text",
    [
        "works: [{operation: scarifying, dates: 2026-06-01, greens: 1}]\n",
        "works: [{operation: rolling, dates: 2026-06-01}]\n",
        "closures: [{what: course, dates: 2026-06-01}]\n",
    ],
)
def test_nothing_to_lay_out(tmp_path: Path, text: str) -> None:
    programme = laid_out(tmp_path, text)
    assert programme.patterns == ()
    assert "nothing to lay out" in patterns_in_words(Words(programme))
    assert PatternWords.of(Words(programme)).table() is None
    assert PatternWords.of(Words(programme)).sentences() == ()


def test_days_of_hire(tmp_path: Path) -> None:
    hired = SIX_A_DAY + "    hire: 300\n"
    days = {p.layout: p.hire_days for p in laid_out(tmp_path, hired).patterns}
    assert list(days.values()) == [1, 2, 3, 3]


def test_what_prepares_stays_and_later_dressings_move(tmp_path: Path) -> None:
    text = """
    works:
      - {operation: raising the height of cut, dates: 2026-05-28, greens: 1-4}
      - operation: top dressing
        dates: 2026-06-01 to 2026-06-02
        greens: {2026-06-01: 1-2, 2026-06-02: 3-4}
        settings: {dressings: 2, days_between: 10}
    """
    found = {p.layout: p for p in laid_out(tmp_path, text).patterns}
    # Each of the four greens is closed for the day of either dressing.
    assert {p.green_days_closed for p in found.values()} == {8}
    assert found[Layout.SPREAD].dates == (day(1), day(8))


def test_no_green_has_the_same_work_twice_on_a_day(tmp_path: Path) -> None:
    # All at once, on the 1st: what green 2 has on the 3rd goes with its work of the 4th, two days
    # sooner, and so would fall on the day on which it is brushed in the plan before all begins.
    programme = laid_out(
        tmp_path,
        """\
        works:
          - {operation: scarifying, dates: 2026-06-02 to 2026-06-04, greens: {2026-06-02: 1, 2026-06-04: 2}}
          - {operation: brushing, dates: 2026-06-01 to 2026-06-03, greens: 2}
        """,
    )
    found = {pattern.layout: pattern for pattern in programme.patterns}
    assert found[Layout.ALL_AT_ONCE].dates == (day(2),)
    assert found[Layout.ALL_AT_ONCE].person_hours == pytest.approx(
        found[Layout.AS_PLANNED].person_hours
    )


def test_the_hired_are_there_on_the_new_days(tmp_path: Path) -> None:
    two = HEAD.replace(
        "people: 4", "people: 1\n  hired_people: 1\n  hired_dates: 2026-06-01 to 2026-06-03"
    )
    two = two.replace("minutes_between_greens: 12", "minutes_between_greens: 12, people: 2")
    path = tmp_path / "plan.yaml"
    path.write_text(two + SIX_A_DAY, encoding="utf-8")
    plan = load_plan(path).plan
    found = with_patterns(work_out(plan, ISSUED), plan).patterns
    spread = next(p for p in found if p.layout is Layout.SPREAD)
    assert (spread.hire_days, spread.fits) == (3, True)
    assert spread.person_hours == pytest.approx(38)


def test_the_table_and_the_sentences(programme: Programme) -> None:
    said = PatternWords.of(Words(programme))
    table = said.table()
    assert table is not None
    assert table.head == (
        "What is compared",
        "All at once",
        "A nine a day",
        "As planned",
        "Spread over weeks",
    )
    rows = {row[0]: row[1:] for row in table.rows}
    assert rows["Days of work"] == ("1", "2", "3", "3")
    assert rows["Last day"] == ("1 Jun", "2 Jun", "3 Jun", "15 Jun")
    fits = "no: one day too long, by up to nine hours"
    assert rows["Fits the team and the daylight"] == (fits, "yes", "yes", "yes")
    at_once, _, planned, _ = said.sentences()
    assert at_once == (
        "Done all at once, the work would not fit: one day would run over, by up to nine hours. "
        "The course would have fewer than nine holes to their own greens on one day."
    )
    assert planned.startswith("As planned, the work takes three days, and every day’s work fits. ")
    sentences = [one for each in said.sentences() for one in each.split(". ")]
    assert all(len(sentence.split()) <= 25 for sentence in sentences)
    text = patterns_in_words(Words(programme))
    assert all(f"{label}: {cell}" in text for label, cells in rows.items() for cell in cells)


def test_it_is_plain_json(found: dict[Layout, Pattern]) -> None:
    data = pattern_as_json(found[Layout.ALL_AT_ONCE])
    assert data["layout"] == "all greens at once"
    assert data["days"] == [{"date": "2026-06-01", "greens": 19}]
    assert (data["fits"], data["too_long"]) == (False, ["2026-06-01"])
