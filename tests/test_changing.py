"""Work put off and work finished, in the plan file itself."""

from __future__ import annotations

import datetime as dt
import difflib
from pathlib import Path

import pytest
from openpyxl import load_workbook

from notices import changing
from notices.changing import Changed, finish, postpone
from notices.convert.between import convert_plan
from notices.errors import EditFault, PlanFault
from notices.findings import Weight
from notices.plan.load import load_plan
from notices.programme.model import Programme
from tests.documents.building import EXAMPLES

TODAY = dt.date(2026, 9, 1)


def day(text: str) -> dt.date:
    return dt.date.fromisoformat(f"2026-{text}")


PLAN = """\
club: {name: Marl Hill}
course: {greens: [{green: 1-6}, {green: Putting green}]}
works:
  # The cores come out first.
  - operation: hollow tining
    id: cores
    dates: 2026-10-12 to 2026-10-13      # two days
    reserve_dates: 2026-10-15 to 2026-10-16
    greens: 1-6
  - {operation: top dressing, dates: 2026-10-12 to 2026-10-13, greens: 1-6, settings: {fill: holes}}
  - {operation: brushing, after: "cores, +1 day"}
  - {operation: verticutting, dates: 2026-09-28, greens: Putting green}
closures:
  - {what: practice ground, dates: 2026-10-13}
"""


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN, encoding="utf-8")
    return path


def put_off(
    path: Path,
    work: str,
    to: str = "",
    day_lost: str = "",
    *,
    alone: bool = False,
    reason: str = "",
) -> Changed:
    return postpone(
        path,
        work,
        day(to) if to else None,
        day(day_lost) if day_lost else None,
        today=TODAY,
        alone=alone,
        reason=reason,
    )


def visits(programme: Programme, work: str) -> dict[str, tuple[str, ...]]:
    (found,) = [one for one in programme.works if one.id == work]
    return {f"{visit.date:%m-%d}": visit.greens for visit in found.main_visits}


def differing(path: Path) -> list[str]:
    """The lines that are new, without what is around them."""
    lines = difflib.ndiff(PLAN.splitlines(), path.read_text("utf-8").splitlines())
    return [line[2:] for line in lines if line.startswith("+ ")]


def test_a_work_goes_to_its_reserve_dates_with_those_beside_it_and_after_it(plan: Path) -> None:
    changed = put_off(plan, "cores")
    assert visits(changed.after, "cores") == {"10-15": ("1", "2", "3"), "10-16": ("4", "5", "6")}
    assert visits(changed.after, "top-dressing-1") == visits(changed.after, "cores")
    assert visits(changed.after, "brushing-1") == {
        "10-16": ("1", "2", "3"),
        "10-17": ("4", "5", "6"),
    }
    assert differing(plan) == [
        "    dates: 2026-10-15 to 2026-10-16      # two days",
        (
            "  - {operation: top dressing, dates: 2026-10-15 to 2026-10-16, greens: 1-6, "
            "settings: {fill: holes}}"
        ),
    ]
    assert changed.backup.read_text("utf-8") == PLAN
    assert changed.left == ("The closure of the practice ground still stands on 2026-10-13",)


def test_one_day_goes_and_the_other_greens_keep_theirs(plan: Path) -> None:
    changed = put_off(plan, "hollow tining", day_lost="10-12")
    # The greens of the 12th go to the first reserve date; the 13th stays as announced.
    expected = {"10-13": ("4", "5", "6"), "10-15": ("1", "2", "3")}
    assert visits(changed.after, "cores") == visits(changed.after, "top-dressing-1") == expected
    (cores,) = [work for work in changed.after.works if work.id == "cores"]
    assert cores.reserve_dates == (day("10-16"),)


def test_a_day_that_is_taken_gets_both_lists(plan: Path) -> None:
    changed = put_off(plan, "cores", to="10-13", day_lost="10-12")
    assert visits(changed.after, "cores") == {"10-13": ("1", "2", "3", "4", "5", "6")}
    assert "greens: {2026-10-13: 1-6}" in plan.read_text("utf-8")


def test_days_named_for_greens_move_with_them(plan: Path) -> None:
    text = PLAN.replace(
        "    greens: 1-6\n", "    greens: {2026-10-12: 4-6, 2026-10-13: 1-3}  # as agreed\n"
    )
    plan.write_text(text, encoding="utf-8")
    changed = put_off(plan, "cores", to="10-19")
    assert visits(changed.after, "cores") == {"10-19": ("4", "5", "6"), "10-20": ("1", "2", "3")}
    assert "{2026-10-19: 4-6, 2026-10-20: 1-3}  # as agreed" in plan.read_text("utf-8")
    # Reserve dates before the new days are none any more.
    assert "reserve_dates" not in plan.read_text("utf-8")


def test_the_reason_is_kept_until_the_work_is_put_off_again(plan: Path) -> None:
    changed = put_off(plan, "cores", to="10-19", reason="  heavy rain,\nand more to come ")
    kept = {work.id: work.put_off_because for work in changed.after.works}
    assert kept.pop("cores") == "heavy rain, and more to come"
    assert set(kept.values()) == {""}
    assert sum("put_off_because" in line for line in differing(plan)) == 1
    again = put_off(plan, "cores", to="10-20", reason="frost")
    assert next(w for w in again.after.works if w.id == "cores").put_off_because == "frost"
    put_off(plan, "cores", to="10-21")
    assert "put_off_because" not in plan.read_text("utf-8")


def test_alone_leaves_the_others(plan: Path) -> None:
    changed = put_off(plan, "cores", to="10-15", alone=True)
    assert list(visits(changed.after, "cores")) == ["10-15", "10-16"]
    assert list(visits(changed.after, "top-dressing-1")) == ["10-12", "10-13"]


@pytest.mark.parametrize(
    ("work", "to", "lost", "words"),
    [
        ("brushing", "10-20", "", "Brushing follows cores: postpone cores, and it comes along"),
        ("corse", "10-20", "", 'There is no work "corse" to postpone: did you mean "cores"?'),
        (
            "mowing",
            "10-20",
            "",
            "to postpone: the plan has hollow tining, top dressing, brushing, verticutting",
        ),
        ("verticutting", "", "", "Verticutting has no reserve dates: name the new day"),
        ("cores", "10-12", "", "Hollow tining is planned for 2026-10-12 already"),
        ("cores", "10-20", "10-14", "not planned on 2026-10-14: its days are 2026-10-12 to"),
    ],
)
def test_what_cannot_be_put_off_is_refused_in_words(
    plan: Path, work: str, to: str, lost: str, words: str
) -> None:
    with pytest.raises(EditFault) as told:
        put_off(plan, work, to, lost)
    assert words in str(told.value)
    assert plan.read_text("utf-8") == PLAN
    assert list(plan.parent.iterdir()) == [plan]


def test_more_days_than_are_kept_in_reserve(plan: Path) -> None:
    plan.write_text(PLAN.replace(" to 2026-10-16", ""), encoding="utf-8")
    with pytest.raises(EditFault, match="takes 2 days and keeps 1 in reserve"):
        put_off(plan, "cores")


def test_a_change_after_which_nothing_could_be_built_is_not_made(plan: Path) -> None:
    with pytest.raises(EditFault) as told:
        postpone(plan, "cores", dt.date(2201, 1, 1), None, today=TODAY)
    # Nobody sees the plan that would be: the option is what there is to mend.
    assert str(told.value) == (
        'With --to 2201-01-01 the plan could not be built: "2201-01-01" is not in our time. '
        "The year must lie between 1900 and 2200."
    )
    assert plan.read_text("utf-8") == PLAN
    assert list(plan.parent.iterdir()) == [plan]


@pytest.fixture
def broken_text(plan: Path) -> Path:
    """A text of the club's own, laid over ours, with a name in line 4 that there is not."""
    text = "title: Hollow tining\nline: Cores come out.\n\nIt takes {{ weeks_in_all }} weeks.\n"
    path = plan.parent / "ours" / "operations" / "hollow-tining.md"
    path.parent.mkdir(parents=True)
    path.write_text(text, encoding="utf-8")
    plan.write_text(PLAN + "texts: ours\n", encoding="utf-8")
    return path


def test_a_plan_with_a_text_that_cannot_be_filled_is_not_changed(
    plan: Path, broken_text: Path
) -> None:
    before = plan.read_text("utf-8")
    for change in (
        lambda: put_off(plan, "cores"),
        lambda: finish(
            plan,
            "cores",
            greens=None,
            done=None,
            putting_smoothly=None,
            healed=None,
            today=TODAY,
        ),
    ):
        # The text was broken before: it is told with its line, not as a fault of --to or --on.
        with pytest.raises(PlanFault) as told:
            change()
        first = told.value.findings[0]
        assert (first.code, first.weight) == ("text-cannot-be-filled", Weight.CANNOT_BUILD)
        assert first.place is not None
        assert (first.place.file, first.place.line) == (str(broken_text), 4)
        assert plan.read_text("utf-8") == before
        assert sorted(path.name for path in plan.parent.iterdir()) == ["ours", "plan.yaml"]


def test_a_bug_is_no_fault_of_what_was_asked(plan: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_arguments: object, **_named: object) -> None:
        raise ValueError("math domain error")

    monkeypatch.setattr(changing, "put_off", broken)
    with pytest.raises(ValueError, match="math domain error"):
        put_off(plan, "cores")


def test_new_doubts_are_told(plan: Path) -> None:
    fixture = "fixtures: [{name: Medal, date: 2026-10-20}]\n"
    plan.write_text(PLAN + fixture, encoding="utf-8")
    changed = put_off(plan, "cores", to="10-19")
    assert "fixture-in-closure" in {finding.code for finding in changed.doubts}
    assert all(finding.place and finding.place.file == str(plan) for finding in changed.doubts)


@pytest.mark.parametrize("name", ["marlpit-common", "withy-hollow", "live-oak"])
def test_only_the_lines_with_the_dates_change_in_the_examples(tmp_path: Path, name: str) -> None:
    for file in (EXAMPLES / name).iterdir():
        (tmp_path / file.name).write_bytes(file.read_bytes())
    path = tmp_path / "plan.yaml"
    before = path.read_text("utf-8").splitlines()
    work = load_plan(path).plan.works[-1]
    later = work.dates[0].first + dt.timedelta(days=1)
    postpone(path, work.id or work.operation, later, None, today=TODAY)
    after = path.read_text("utf-8").splitlines()
    gone = [line for line in difflib.ndiff(before, after) if line.startswith("- ")]
    assert gone
    assert all("2026-" in line or "2027-" in line for line in gone)


def test_a_work_is_finished_and_later_its_greens_have_come_back(plan: Path) -> None:
    def seen(**days: dt.date | None) -> list[str]:
        usual: dict[str, dt.date | None] = {"done": None, "putting_smoothly": None, "healed": None}
        finish(plan, "cores", greens=None, today=TODAY, **usual | days)
        return differing(plan)

    line = "  - {operation: hollow tining, done: 2026-10-13"
    assert seen() == ["", "observed:", f"{line}}}"]  # its last planned day
    assert seen(putting_smoothly=day("10-30")) == [
        "",
        "observed:",
        f"{line}, putting_smoothly: 2026-10-30}}",
    ]
    assert seen(putting_smoothly=day("10-31"), healed=day("11-20")) == [
        "",
        "observed:",
        f"{line}, putting_smoothly: 2026-10-31, healed: 2026-11-20}}",
    ]


def test_some_greens_are_a_record_of_their_own(plan: Path) -> None:
    changed, record = finish(
        plan,
        "cores",
        greens="1-3",
        done=None,
        putting_smoothly=None,
        healed=day("11-10"),
        today=TODAY,
    )
    assert record.done == day("10-12")  # greens 1 to 3 are done on the first of two days
    assert differing(plan)[-1] == (
        "  - {operation: hollow tining, done: 2026-10-12, greens: 1-3, healed: 2026-11-10}"
    )
    assert [seen.greens for seen in changed.after.seen["cores"]] == [("1", "2", "3")]


@pytest.mark.parametrize(
    ("work", "greens", "words"),
    [
        ("cores", "Putting green", "Hollow tining is not done on green Putting green"),
        ("cores", "19", "The course has no green 19"),
        ("rolling", None, 'There is no work "rolling" to finish'),
    ],
)
def test_what_cannot_be_recorded_is_refused(
    plan: Path, work: str, greens: str | None, words: str
) -> None:
    with pytest.raises(EditFault, match=words):
        finish(
            plan,
            work,
            greens=greens,
            done=None,
            putting_smoothly=None,
            healed=None,
            today=TODAY,
        )
    assert plan.read_text("utf-8") == PLAN


@pytest.mark.parametrize(
    ("done", "healed", "words"),
    [
        ("2025-10-12", "", "--on 2025-10-12 is no day of hollow tining, planned for 2026-10-12 to"),
        ("2027-10-12", "", "write the day on which it was done, or postpone the work first"),
        ("", "2026-09-02", "With --healed 2026-09-02 the plan could not be built: 2026-09-02 is"),
    ],
)
def test_a_wrong_day_is_a_fault_of_its_option(
    plan: Path, done: str, healed: str, words: str
) -> None:
    with pytest.raises(EditFault) as told:
        finish(
            plan,
            "cores",
            greens=None,
            done=dt.date.fromisoformat(done) if done else None,
            putting_smoothly=None,
            healed=dt.date.fromisoformat(healed) if healed else None,
            today=TODAY,
        )
    assert words in str(told.value)
    assert str(plan) not in str(told.value)
    assert plan.read_text("utf-8") == PLAN


@pytest.fixture
def workbook(plan: Path) -> Path:
    path = plan.with_suffix(".xlsx")
    convert_plan(plan, path)
    return path


IN_YAML = (
    "this is a workbook, and the command changes only plans in YAML. {by_hand}, or go on with a plan "
    "in YAML: notices convert {path} {yaml}"
)


def test_whoever_puts_off_a_work_of_a_workbook_hears_which_cell_to_change(workbook: Path) -> None:
    content = workbook.read_bytes()
    with pytest.raises(EditFault) as told:
        put_off(workbook, "verticutting", to="10-20")
    place, said = str(told.value).split(": ", 1)
    name, cell = place.split("!")
    assert name == f"{workbook}:Works"
    # It is the cell with the day that is put off.
    assert str(load_workbook(workbook)["Works"][cell].value).startswith("2026-09-28")
    assert said == IN_YAML.format(
        by_hand="Write the new dates there", path=workbook, yaml=workbook.with_suffix(".yaml")
    )
    assert workbook.read_bytes() == content


def test_whoever_finishes_a_work_of_a_workbook_hears_which_sheet_takes_it(workbook: Path) -> None:
    with pytest.raises(EditFault) as told:
        finish(
            workbook,
            "cores",
            greens=None,
            done=None,
            putting_smoothly=None,
            healed=None,
            today=TODAY,
        )
    said = IN_YAML.format(
        by_hand="Write the work and its days there, in a row of its own",
        path=workbook,
        yaml=workbook.with_suffix(".yaml"),
    )
    assert str(told.value) == f"{workbook}:'Past recovery': {said}"


def test_a_work_that_a_workbook_does_not_have_is_none_there_either(workbook: Path) -> None:
    with pytest.raises(EditFault, match="There is no work"):
        put_off(workbook, "mowing", to="10-20")


def test_works_in_a_list_beside_the_plan_are_left_to_it(tmp_path: Path) -> None:
    (tmp_path / "works.csv").write_text("work,first day\nbrushing,2026-10-12\n", encoding="utf-8")
    path = tmp_path / "plan.yaml"
    text = PLAN.replace("works:\n", "works:\n  - {table: works.csv, dates: year-month-day}\n")
    path.write_text(text, encoding="utf-8")
    with pytest.raises(EditFault, match="takes works from a table"):
        put_off(path, "cores", to="10-20")
    assert path.read_text("utf-8") == text
