from __future__ import annotations

import json
import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from notices.errors import PlanFault
from notices.findings import Finding, Weight
from notices.plan.load import LoadedPlan, canonical, load_plan

MISTAKES = Path(__file__).parent / "mistakes"
EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize("name", sorted(path.stem for path in MISTAKES.glob("*.yaml")))
def test_each_mistake_is_told_in_plain_words(
    name: str, matches: Callable[[Path, str], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(MISTAKES)
    with pytest.raises(PlanFault) as caught:
        load_plan(Path(f"{name}.yaml"))
    matches(MISTAKES / f"{name}.txt", f"{caught.value}\n")


def test_every_expected_answer_has_its_mistake() -> None:
    assert {path.stem for path in MISTAKES.glob("*.txt")} == {
        path.stem for path in MISTAKES.glob("*.yaml")
    }


def test_no_answer_is_badly_ended() -> None:
    for path in MISTAKES.glob("*.txt"):
        for line in path.read_text(encoding="utf-8").splitlines():
            assert line.endswith((".", "?")), line
            assert not any(twice in line for twice in ("?.", ". .", ".. ", "  ")), line
            assert line[:-1].strip() == line[:-1], line


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    return tmp_path / "plan.yaml"


PLAN = textwrap.dedent("""\
    club: {name: Tansy Down Golf Club}
    course: {greens: [{green: 1-9}]}
    works:
      - operation: hollow tining
        dates: 2027-08-16 to 2027-08-17
    """)


def load(path: Path, text: str) -> LoadedPlan:
    path.write_text(text, encoding="utf-8")
    return load_plan(path)


def faults(path: Path, content: str | bytes) -> tuple[Finding, ...]:
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    with pytest.raises(PlanFault) as caught:
        load_plan(path)
    return caught.value.findings


def told(findings: tuple[Finding, ...]) -> list[str]:
    return [
        f"{f.place.line}:{f.place.column} {f.message}" if f.place else f.message for f in findings
    ]


def test_reads_the_shortest_plan(plan_file: Path) -> None:
    plan = load(plan_file, PLAN).plan
    assert plan.club.name == "Tansy Down Golf Club"
    assert plan.course.greens[0].green == (1, 2, 3, 4, 5, 6, 7, 8, 9)
    assert plan.works[0].operation == "hollow tining"
    assert [str(days) for days in plan.works[0].dates] == ["2027-08-16 to 2027-08-17"]
    assert plan.works[0].settings == {}
    assert plan.sand.density == 1.6


def test_settings_come_in_the_units_of_the_catalogue(plan_file: Path) -> None:
    text = f"{PLAN}    settings: {{tine_diameter: 1/2 in, spacing: 2 in, passes: 2}}\n"
    settings = load(plan_file, text).plan.works[0].settings
    # 25.4 mm to the inch, by definition.
    assert settings == {"tine_diameter": 12.7, "spacing": (50.8, 50.8), "passes": 2}
    assert type(settings["passes"]) is int


def test_a_figure_that_is_a_name_keeps_its_last_nought(plan_file: Path) -> None:
    plan = load(plan_file, f"{PLAN}approval: {{by: Committee, reference: 14.10}}\n").plan
    assert plan.approval
    assert plan.approval.reference == "14.10"


def test_a_number_with_noughts_is_still_a_number(plan_file: Path) -> None:
    text = PLAN.replace(
        "Golf Club}", "Golf Club, place: {latitude: 53.10, longitude: -2.0, timezone: UTC}}"
    )
    place = load(plan_file, text).plan.club.place
    assert place
    assert (place.latitude, place.longitude) == (53.1, -2.0)


def test_spaces_around_a_text_count_for_nothing(plan_file: Path) -> None:
    assert load(plan_file, PLAN.replace("Tansy Down Golf Club", '" Tansy "')).plan.club.name == (
        "Tansy"
    )
    found = faults(plan_file, PLAN.replace("Tansy Down Golf Club", '"  "'))
    assert told(found) == ["1:14 there is no text between these quotation marks"]


def test_a_green_named_again_keeps_its_first_spelling(plan_file: Path) -> None:
    text = PLAN.replace("{green: 1-9}", "{green: Chipping Green}, {green: chipping green}")
    lines = load(plan_file, text).plan.course.greens
    assert [line.green for line in lines] == [("Chipping Green",), ("Chipping Green",)]


def test_greens_count_whatever_their_capitals(plan_file: Path) -> None:
    text = PLAN.replace("{green: 1-9}", "{green: 1-9}, {green: Putting green}")
    assert load(plan_file, f"{text}    greens: PUTTING GREEN\n").plan.works[0].greens


@pytest.mark.parametrize(
    "what", ["course", "greens committee room", "practice ground", "hole 3 tee"]
)
def test_a_closure_may_be_free_words(plan_file: Path, what: str) -> None:
    text = f"{PLAN}closures:\n  - {{what: {what}, dates: 2027-09-01}}\n"
    assert load(plan_file, text).plan.closures[0].what == what


def test_a_closure_of_greens_must_name_them_rightly(plan_file: Path) -> None:
    text = f"{PLAN}closures:\n  - {{what: greens 9-1, dates: 2027-09-01}}\n"
    assert told(faults(plan_file, text)) == ['7:12 "9-1" runs backwards']


def test_a_measurement_names_greens_of_the_course(plan_file: Path) -> None:
    text = f"{PLAN}measurements:\n  - {{date: 2027-03-01, green: 12}}\n"
    assert told(faults(plan_file, text)) == ["7:31 the course has no green 12"]


def test_a_fault_in_the_course_does_not_raise_doubts_about_every_green(plan_file: Path) -> None:
    text = PLAN.replace("{green: 1-9}", "{green: 1-}") + "    greens: 1-9\n"
    assert [line.split()[0] for line in told(faults(plan_file, text))] == ["2:27"]


def test_a_list_with_a_faulty_item_is_not_called_too_short(plan_file: Path) -> None:
    means = "[4, 5, 7, 9, 12, 15, 17, warm, 14, 11, 7, 5]"
    text = PLAN.replace("{greens:", f"{{monthly_mean_temperature: {means}, greens:")
    # 35 characters stand before the list, and 25 of the list before the word.
    assert told(faults(plan_file, text)) == ['2:61 "warm" is not a number']


def test_an_empty_item_of_a_list_is_told(plan_file: Path) -> None:
    assert told(faults(plan_file, f"{PLAN}  -\n")) == [
        "6:4 nothing is written in this place of the list"
    ]


def test_an_empty_key_is_told_once(plan_file: Path) -> None:
    assert told(faults(plan_file, PLAN.replace("{name: Tansy Down Golf Club}", "")))[0] == (
        '1:6 nothing is written after "club"'
    )


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (PLAN.encode("utf-16"), "UTF-16"),
        (PLAN.encode() + b"# caf\xe9\n", "the byte E9 here is not UTF-8"),
        (b"PK\x03\x04\x00\x00", "this is not a text file"),
    ],
)
def test_what_is_no_text_is_refused(plan_file: Path, content: bytes, words: str) -> None:
    (finding,) = faults(plan_file, content)
    assert words in finding.message


def test_a_folder_or_a_missing_file_is_refused(tmp_path: Path) -> None:
    for path, words in (
        (tmp_path, "this is a folder, not a plan"),
        (tmp_path / "plan.yaml", "there is no such file"),
    ):
        with pytest.raises(PlanFault) as caught:
            load_plan(path)
        assert [finding.message for finding in caught.value.findings] == [words]


def test_a_file_that_may_not_be_read_is_refused(
    plan_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def locked(*_: object, **__: object) -> None:
        raise PermissionError

    monkeypatch.setattr(Path, "open", locked)
    with pytest.raises(PlanFault) as caught:
        load_plan(plan_file)
    assert [finding.message for finding in caught.value.findings] == ["this file may not be read"]


def test_findings_of_later_stages_get_their_places(plan_file: Path) -> None:
    loaded = load(plan_file, PLAN)
    finding = Finding("code", Weight.THINK_AGAIN, "message", path=("works", 0, "dates"))
    (located,) = loaded.located([finding])
    assert str(located.place) == f"{plan_file}:5:12"
    assert loaded.located([located]) == (located,)


def test_a_fixture_of_a_calendar_stands_where_the_calendar_is_named() -> None:
    loaded = load_plan(EXAMPLES / "marlpit-common" / "plan.yaml")
    finding = Finding("code", Weight.THINK_AGAIN, "message", path=("fixtures", 3))
    (located,) = loaded.located([finding])
    typed = (EXAMPLES / "marlpit-common" / "plan.yaml").read_text(encoding="utf-8").splitlines()
    assert located.place
    assert located.place.line
    assert "calendar: fixtures.ics" in typed[located.place.line - 1]


def again(path: Path, plan: LoadedPlan) -> LoadedPlan:
    written = json.dumps(canonical(plan.plan), ensure_ascii=False, indent=2)
    return load(path, written)


@pytest.mark.parametrize("club", ["marlpit-common", "tansy-down", "withy-hollow"])
def test_the_canonical_form_of_an_example_is_the_same_plan(club: str, tmp_path: Path) -> None:
    first = load_plan(EXAMPLES / club / "plan.yaml")
    second = again(tmp_path / "plan.json", first)
    assert second.plan == first.plan
    assert canonical(second.plan) == canonical(first.plan)


def test_the_canonical_form_holds_what_was_given_and_no_default(plan_file: Path) -> None:
    assert canonical(load(plan_file, PLAN).plan) == {
        "notices": 1,
        "club": {"name": "Tansy Down Golf Club"},
        "course": {"greens": [{"green": "1-9"}]},
        "works": [{"operation": "hollow tining", "dates": "2027-08-16 to 2027-08-17"}],
    }


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("pending", "pending"),
        ("{pending: true}", "pending"),
        ("{pending: true, by: Committee}", {"pending": True, "by": "Committee"}),
        ("{by: Committee, date: 2027-06-01}", {"by": "Committee", "date": "2027-06-01"}),
    ],
)
def test_approval_is_written_as_it_stands(plan_file: Path, typed: str, written: object) -> None:
    plan = load(plan_file, f"{PLAN}approval: {typed}\n")
    assert canonical(plan.plan)["approval"] == written
    assert again(plan_file, plan).plan == plan.plan


COURSES = """\
club: {name: Marl Hill}
course: {greens: [{green: 1-9, course: Oak}, {green: 1-9, course: Elm}]}
works: [{operation: rolling, dates: 2027-08-23}]
fixtures: [{name: Medal, date: 2027-08-23, course: COURSE}]
"""


def test_a_fixture_names_a_course_that_there_is(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(COURSES.replace("COURSE", "oak"), "utf-8")
    assert load_plan(path).plan.fixtures[0].course == "oak"
    path.write_text(COURSES.replace("COURSE", "Elmm"), "utf-8")
    with pytest.raises(PlanFault) as fault:
        load_plan(path)
    (finding,) = fault.value.findings
    assert finding.message == 'there is no course "Elmm"'
    assert finding.suggestion == 'Did you mean "Elm"?'


def test_what_has_a_line_of_its_own_counts_before_the_calendar(tmp_path: Path) -> None:
    event = "BEGIN:VEVENT\r\nUID:1@x\r\nSUMMARY:{}\r\nDTSTART;VALUE=DATE:20270823\r\nEND:VEVENT\r\n"
    (tmp_path / "f.ics").write_text(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\n"
        + event.format("Summer  Bowl")
        + event.replace("1@", "2@").format("Winter Bowl")
        + "END:VCALENDAR\r\n",
        "utf-8",
    )
    path = tmp_path / "plan.yaml"
    lines = COURSES.split("fixtures:", maxsplit=1)[0] + (
        "fixtures:\n"
        "  - {calendar: f.ics}\n"
        "  - {name: summer bowl, date: 2027-08-23, decision: play on}\n"
    )
    path.write_text(lines, "utf-8")
    found = [(one.name, one.decision) for one in load_plan(path).plan.fixtures]
    assert found == [("Winter Bowl", None), ("summer bowl", "play on")]
