"""The command line: what it says where, and with which status it ends."""

from __future__ import annotations

import datetime as dt
import json
import os
import shlex
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import click
import pytest
from click.testing import CliRunner, Result

import notices
from notices import checking
from notices.cli import main
from notices.documents import pack
from notices.errors import PlanFault
from notices.findings import Weight
from tests.documents.building import EXAMPLES, NAMES

pytestmark = pytest.mark.usefixtures("few_documents")

ROOT = Path(__file__).parents[1]
SHORTEST = EXAMPLES / "tansy-down" / "plan.yaml"
MISTAKES = sorted((ROOT / "tests" / "plan" / "mistakes").glob("*.yaml"))

FIELDS = [
    "code",
    "weight",
    "message",
    "suggestion",
    "file",
    "line",
    "column",
    "work",
    "greens",
    "dates",
]
"""In the order in which the brief names them."""

DONE, AT_FAULT, WRONG_USAGE = 0, 1, 2
STOPPED = 130
"""128 and the number of the signal, as shells count (bash manual, "Exit Status")."""


@pytest.fixture(autouse=True)
def _no_date_from_outside(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)


def run(*arguments: object) -> Result:
    """Run a command in this process; only an end that was meant is let through."""
    result = CliRunner().invoke(main, [str(argument) for argument in arguments])
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result


def process(*arguments: object, cwd: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    kept = {key: value for key, value in os.environ.items() if key != "SOURCE_DATE_EPOCH"}
    return subprocess.run(
        [sys.executable, "-m", "notices", *map(str, arguments)],
        cwd=cwd,
        env=kept | environment,
        capture_output=True,
        text=True,
        check=False,
    )


def with_faults(folder: Path) -> Path:
    """The shortest plan with a key that there is not in line 4, and in line 9 a kind of work."""
    path = folder / "plan.yaml"
    text = SHORTEST.read_text("utf-8").replace("hollow tining", "hollow tinning")
    site = "  webiste: https://tansydown.example\n"
    path.write_text(text.replace("course:\n", f"{site}course:\n"), encoding="utf-8")
    return path


def finished(folder: Path) -> Path:
    """A pack of the shortest plan, ready to be built over."""
    out = folder / "pack"
    assert run("build", SHORTEST, "--out", out, "--today", "2027-07-01").exit_code == DONE
    return out


def snapshot(folder: Path) -> dict[str, tuple[bytes, int]]:
    return {
        path.name: (path.read_bytes(), path.stat().st_mtime_ns) for path in sorted(folder.iterdir())
    }


# check


@pytest.mark.parametrize("name", NAMES)
def test_check_of_a_plan_that_builds(name: str) -> None:
    result = run("check", EXAMPLES / name / "plan.yaml", "--today", "2026-09-14")
    assert result.exit_code == DONE
    assert result.stderr == ""
    assert "Cannot be built:" not in result.stdout


def test_check_says_each_thing_with_place_remedy_and_code() -> None:
    result = run("check", SHORTEST, "--today", "2027-07-01")
    lines = result.stdout.splitlines()
    assert lines[0] == "Think again:"
    assert "For your information:" in lines
    at = next(number for number, line in enumerate(lines) if "names no sender" in line)
    said, line, caret, remedy = lines[at : at + 4]
    assert said.startswith(f"{SHORTEST}:3:3: ")  # "name:" in the block of the club
    assert said.endswith(". (no-sender)")
    assert line == "    3 |   name: Tansy Down Golf Club"
    assert caret == "      |   ^"
    assert remedy.startswith("  Add club: sender:")


def test_check_of_a_plan_in_order(tmp_path: Path) -> None:
    plan = {
        "club": {
            "name": "Fallow Mead Golf Club",
            "sender": {"role": "Secretary", "email": "office@fallow.example"},
            "place": {"latitude": 52.5, "longitude": -1.6, "timezone": "Europe/London"},
        },
        "course": {
            "greens": [{"green": "1-9", "area": "450 m2"}],
            "monthly_mean_temperature": [14.0] * 12,
        },
        "crew": {"people": 5},
        "works": [{"operation": "rolling", "dates": "2027-08-16"}],
    }
    path = tmp_path / "plan.yaml"
    path.write_text(json.dumps(plan), encoding="utf-8")
    result = run("check", path, "--today", "2027-07-01")
    assert (result.exit_code, result.stdout) == (DONE, "Nothing to say: the plan is in order.\n")


def test_check_of_a_plan_at_fault_writes_to_standard_output(tmp_path: Path) -> None:
    path = with_faults(tmp_path)
    result = run("check", path)
    assert result.exit_code == AT_FAULT
    assert result.stderr == ""
    # Both mistakes at once, in the order of the file, each with what would be right.
    assert result.stdout == (
        "Cannot be built:\n"
        "\n"
        f'{path}:4:3: there is no key "webiste" here.\n'
        "    4 |   webiste: https://tansydown.example\n"
        "      |   ^\n"
        '  Did you mean "website"?\n'
        "\n"
        f'{path}:9:16: there is no operation "hollow tinning".\n'
        "    9 |   - operation: hollow tinning\n"
        "      |                ^\n"
        '  Did you mean "hollow tining"?\n'
    )


def test_each_finding_on_one_line_for_programs_that_read_lines(tmp_path: Path) -> None:
    path = with_faults(tmp_path)
    assert run("check", path, "--no-lines").stdout == (
        "Cannot be built:\n"
        f'{path}:4:3: there is no key "webiste" here. Did you mean "website"?\n'
        f'{path}:9:16: there is no operation "hollow tinning". Did you mean "hollow tining"?\n'
    )


def test_quiet_says_only_what_stops_a_build(tmp_path: Path) -> None:
    assert run("check", SHORTEST, "--quiet").output == ""
    assert run("check", SHORTEST, "--quiet", "--json").stdout == "[]\n"
    assert "Cannot be built:" in run("check", with_faults(tmp_path), "-q").stdout
    built = run("build", SHORTEST, "--out", tmp_path / "pack", "-q")
    assert (built.exit_code, built.output) == (DONE, "")
    assert (tmp_path / "pack" / "index.html").is_file()


def test_verbose_says_what_was_read_and_written(tmp_path: Path) -> None:
    # Nine greens and one work stand in the plan, and no fixture.
    told = run("check", SHORTEST, "--verbose", "--today", "2027-07-01").stderr
    assert told == f"{SHORTEST}: 9 greens, 1 work, 0 closures, 0 fixtures; issued 2027-07-01\n"
    out = tmp_path / "pack"
    said = run("build", SHORTEST, "--out", out, "-v").stderr.splitlines()
    assert f"{out / 'index.html'}: written" in said
    assert {line for line in said if line.endswith(": written")} == {
        f"{path}: written" for path in out.iterdir()
    }


def findings(result: Result) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(result.stdout)
    return found


@pytest.mark.parametrize("name", NAMES)
def test_findings_for_other_programs(name: str) -> None:
    result = run("check", EXAMPLES / name / "plan.yaml", "--json", "--today", "2026-09-14")
    assert result.exit_code == DONE
    assert result.stderr == ""
    for finding in findings(result):  # some examples are in order
        assert list(finding) == FIELDS
        assert finding["weight"] in [weight.value for weight in Weight]
        assert isinstance(finding["line"], int)
        assert isinstance(finding["column"], int)
        assert Path(finding["file"]).name == "plan.yaml"
        assert all(isinstance(green, str) for green in finding["greens"])
        assert all(dt.date.fromisoformat(day) for day in finding["dates"])


def test_a_finding_about_a_work_names_its_greens_and_days() -> None:
    found = findings(run("check", SHORTEST, "--json", "--today", "2027-07-01"))
    (services,) = (f for f in found if f["code"] == "services-not-checked")
    assert services["work"] == "hollow-tining-1"
    assert services["greens"] == [str(number) for number in range(1, 10)]
    assert services["dates"] == ["2027-08-16", "2027-08-17"]
    assert (services["weight"], services["line"]) == ("think again", 8)
    (sender,) = (f for f in found if f["code"] == "no-sender")
    assert (sender["work"], sender["greens"], sender["dates"]) == (None, [], [])


def test_faults_for_other_programs(tmp_path: Path) -> None:
    result = run("check", with_faults(tmp_path), "--json")
    assert result.exit_code == AT_FAULT
    found = findings(result)
    assert [(f["weight"], f["line"]) for f in found] == [
        ("cannot be built", 4),
        ("cannot be built", 9),
    ]
    assert [list(f) for f in found] == [FIELDS, FIELDS]


def test_a_missing_plan_for_other_programs(tmp_path: Path) -> None:
    result = run("check", tmp_path / "plan.yaml", "--json")
    assert result.exit_code == AT_FAULT
    (fault,) = findings(result)
    assert list(fault) == FIELDS
    assert fault["line"] is None


# build


def test_build_says_where_to_look(tmp_path: Path) -> None:
    result = run("build", SHORTEST, "--out", tmp_path / "pack", "--today", "2027-07-01")
    assert result.exit_code == DONE
    assert result.stdout == ""
    assert str(tmp_path / "pack" / "index.html") in result.stderr
    assert "3 findings to think about again" in result.stderr
    assert (tmp_path / "pack" / "index.html").is_file()


def test_a_second_build_touches_nothing(tmp_path: Path) -> None:
    out = finished(tmp_path)
    before = snapshot(out)
    result = run("build", SHORTEST, "--out", out, "--today", "2027-07-01")
    assert result.exit_code == DONE
    assert f"{out}: nothing has changed" in result.stderr
    assert snapshot(out) == before


def test_build_of_a_plan_at_fault_leaves_the_pack_alone(tmp_path: Path) -> None:
    out = finished(tmp_path)
    before = snapshot(out)
    path = with_faults(tmp_path)
    result = run("build", path, "--out", out)
    assert result.exit_code == AT_FAULT
    assert result.stdout == ""
    assert f"{path}:4:3: " in result.stderr
    assert f"{path}:9:16: " in result.stderr
    assert snapshot(out) == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["pack", "plan.yaml"]


def test_build_of_a_plan_at_fault_makes_no_folder(tmp_path: Path) -> None:
    result = run("build", with_faults(tmp_path), "--out", tmp_path / "pack")
    assert result.exit_code == AT_FAULT
    assert [p.name for p in tmp_path.iterdir()] == ["plan.yaml"]


def test_a_build_that_is_stopped_says_that_nothing_was_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_programme: object) -> None:
        signal.raise_signal(signal.SIGINT)

    monkeypatch.setattr(pack, "write_documents", stopped)
    result = run("build", SHORTEST, "--out", tmp_path / "pack", "--today", "2027-07-01")
    assert (result.exit_code, result.stdout) == (STOPPED, "")
    assert result.stderr.strip() == "Stopped: nothing was written."
    assert list(tmp_path.iterdir()) == []


def test_a_folder_of_somebody_else_is_refused(tmp_path: Path) -> None:
    out = tmp_path / "letters"
    out.mkdir()
    (out / "letter.txt").write_text("mine", encoding="utf-8")
    before = snapshot(out)
    result = run("build", SHORTEST, "--out", out)
    assert (result.exit_code, result.stdout) == (AT_FAULT, "")
    assert "not a pack" in result.stderr
    assert snapshot(out) == before


def test_a_pack_that_somebody_worked_on_is_refused(tmp_path: Path) -> None:
    out = finished(tmp_path)
    (out / "member-email.txt").write_text("mine", encoding="utf-8")
    before = snapshot(out)
    result = run("build", SHORTEST, "--out", out, "--today", "2027-07-02")
    assert result.exit_code == AT_FAULT
    assert "member-email.txt" in result.stderr
    assert snapshot(out) == before


def test_a_file_in_the_place_of_the_pack(tmp_path: Path) -> None:
    out = tmp_path / "pack"
    out.write_text("mine", encoding="utf-8")
    result = run("build", SHORTEST, "--out", out)
    assert result.exit_code == AT_FAULT
    assert out.read_text("utf-8") == "mine"


def test_a_pack_in_a_folder_that_is_not_there(tmp_path: Path) -> None:
    result = run("build", SHORTEST, "--out", tmp_path / "no" / "pack")
    assert result.exit_code == AT_FAULT
    assert "does not exist" in result.stderr
    assert list(tmp_path.iterdir()) == []


# Plans that are none


def bad_inputs() -> list[tuple[str, bytes]]:
    return [
        ("empty", b""),
        ("blank", b" \n\n"),
        ("binary", bytes(range(256)) * 4),
        ("a picture", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"),
        ("not UTF-8", "club: {name: Café}".encode("latin-1")),
        ("UTF-16", "club: {name: x}".encode("utf-16")),
        ("not YAML", b"club: [\n"),
        ("a list", b"- 1\n- 2\n"),
        ("a word", b"hello\n"),
        ("a number", b"42\n"),
        ("null", b"null\n"),
        ("two documents", b"club: {}\n---\nclub: {}\n"),
        ("an alias", b"a: &x [1]\nb: *x\n"),
        ("a tag", b"!!python/object/apply:os.system ['true']\n"),
        ("tabs", b"club:\n\tname: x\n"),
        ("keys that are lists", b"? [1, 2]\n: 3\n"),
        ("very deep", b"[" * 3000),
        ("NUL", b"club: {name: 'a\0b'}\n"),
        ("an endless word", b"club: " + b"x" * 200_000 + b"\n"),
        ("everything null", b"club: null\ncourse: null\nworks: null\n"),
    ]


@pytest.mark.parametrize("content", [c for _, c in bad_inputs()], ids=[n for n, _ in bad_inputs()])
@pytest.mark.parametrize("command", ["check", "build"])
def test_what_is_no_plan_gets_a_sentence(command: str, content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(content)
    more = ["--out", tmp_path / "pack"] if command == "build" else []
    result = run(command, path, *more)
    assert result.exit_code == AT_FAULT
    said = result.stdout if command == "check" else result.stderr
    assert str(path) in said
    assert "Traceback" not in result.output
    assert len(said) < 2000
    assert [p.name for p in tmp_path.iterdir()] == ["plan.yaml"]


@pytest.mark.parametrize("path", MISTAKES, ids=lambda path: path.stem)
def test_every_mistake_of_a_plan_ends_with_status_one(path: Path) -> None:
    result = run("check", path)
    assert result.exit_code == AT_FAULT
    assert result.stdout.startswith("Cannot be built:\n")


@pytest.mark.parametrize("command", ["check", "build"])
def test_a_missing_plan(command: str, tmp_path: Path) -> None:
    more = ["--out", tmp_path / "pack"] if command == "build" else []
    result = run(command, tmp_path / "plan.yaml", *more)
    assert result.exit_code == AT_FAULT
    assert "no such file" in result.output


@pytest.mark.parametrize("command", ["check", "build"])
def test_a_folder_in_the_place_of_the_plan(command: str, tmp_path: Path) -> None:
    more = ["--out", tmp_path / "pack"] if command == "build" else []
    result = run(command, tmp_path, *more)
    assert result.exit_code == AT_FAULT
    assert "folder" in result.output
    assert list(tmp_path.iterdir()) == []


# Date of issue


@pytest.fixture
def issued(monkeypatch: pytest.MonkeyPatch) -> list[dt.date]:
    """The dates of issue that a command asks for; nothing is worked out."""
    asked: list[dt.date] = []

    def note(_plan: object, date: dt.date) -> None:
        asked.append(date)
        raise PlanFault([])

    monkeypatch.setattr(checking, "work_out", note)
    return asked


WITH_DATE = EXAMPLES / "withy-hollow" / "plan.yaml"
"""Issued on 19 July 2027 by its own words."""

EPOCH = str(int(dt.datetime(2027, 5, 6, 23, 59, tzinfo=dt.UTC).timestamp()))


def test_the_command_comes_first(issued: list[dt.date], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", EPOCH)
    run("check", WITH_DATE, "--today", "2027-02-03")
    assert issued == [dt.date(2027, 2, 3)]


def test_then_the_environment(issued: list[dt.date], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", EPOCH)
    run("check", WITH_DATE)
    assert issued == [dt.date(2027, 5, 6)]


def test_then_the_plan(issued: list[dt.date]) -> None:
    run("check", WITH_DATE)
    assert issued == [dt.date(2027, 7, 19)]


def test_then_today(issued: list[dt.date]) -> None:
    before = dt.datetime.now().astimezone().date()
    run("check", SHORTEST)
    after = dt.datetime.now().astimezone().date()
    assert issued[0] in (before, after)


def test_the_date_of_issue_stands_in_the_manifest(tmp_path: Path) -> None:
    manifest = json.loads((finished(tmp_path) / "manifest.json").read_text("utf-8"))
    assert manifest["issued"] == "2027-07-01"


@pytest.mark.parametrize(
    "date", ["tomorrow", "2027-13-01", "2027-02-29", "1/7/2027", "2027-7-1", ""]
)
def test_a_date_that_is_none_is_wrong_usage(date: str) -> None:
    result = run("check", SHORTEST, "--today", date)
    assert result.exit_code == WRONG_USAGE
    assert "write the date as 2027-07-19" in result.stderr
    assert result.stdout == ""


@pytest.mark.parametrize("seconds", ["soon", "1e9", "99999999999999999999"])
def test_an_environment_that_makes_no_sense_is_wrong_usage(
    seconds: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", seconds)
    result = run("check", SHORTEST)
    assert result.exit_code == WRONG_USAGE
    assert "SOURCE_DATE_EPOCH" in result.stderr


# Usage


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["chek", "plan.yaml"],
        ["check"],
        ["check", "plan.yaml", "--jsn"],
        ["check", "plan.yaml", "other.yaml"],
        ["build", "plan.yaml"],
        ["build", "plan.yaml", "--out"],
    ],
    ids=" ".join,
)
def test_wrong_usage(arguments: list[str]) -> None:
    result = run(*arguments)
    assert result.exit_code == WRONG_USAGE
    assert result.stdout == ""
    assert "Usage: " in result.stderr or result.stderr.startswith("Error: ")


@pytest.mark.parametrize("name", ["", *sorted(main.commands)])
@pytest.mark.parametrize("option", ["--help", "-h"])
def test_help_shows_an_example_that_works(name: str, option: str) -> None:
    result = run(*([name] if name else []), option)
    assert result.exit_code == DONE
    _, heading, rest = result.stdout.partition("Example:\n")
    assert heading
    assert "\\b" not in result.stdout
    for line in rest.split("\n\n")[0].splitlines():
        program, command, *arguments = shlex.split(line)
        assert program == "notices"
        assert line.startswith("    notices ")
        assert not name or command == name
        # It is understood as it stands.
        above = click.Context(main, **main.context_settings)  # from which a command has its -h
        main.commands[command].make_context(command, list(arguments), parent=above).close()


def test_every_option_is_explained() -> None:
    for command in main.commands.values():
        for parameter in command.params:
            if isinstance(parameter, click.Option):
                assert parameter.help, parameter.name


def test_version() -> None:
    result = run("--version")
    assert result.exit_code == DONE
    assert result.stdout == f"notices, version {notices.__version__}\n"


# Whole processes


def test_as_a_module(tmp_path: Path) -> None:
    done = process("--version", cwd=tmp_path)
    assert (done.returncode, done.stdout) == (DONE, f"notices, version {notices.__version__}\n")


def test_a_process_of_its_own_is_not_taken_apart_at_its_end() -> None:
    """Who registers first is asked last: by then all is frozen, which Python leaves alone."""
    watch = "atexit.register(lambda: print(gc.get_freeze_count() > 0))"
    program = f"import atexit, gc; {watch}; from notices.cli import run; run()"
    done = subprocess.run(
        [sys.executable, "-c", program, "--version"], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines() == [f"notices, version {notices.__version__}", "True"]


def test_check_as_a_process(tmp_path: Path) -> None:
    done = process("check", SHORTEST, "--json", cwd=tmp_path, SOURCE_DATE_EPOCH=EPOCH)
    assert (done.returncode, done.stderr) == (DONE, "")
    assert json.loads(done.stdout)


def test_a_plan_at_fault_as_a_process(tmp_path: Path) -> None:
    path = with_faults(tmp_path)
    checked = process("check", path.name, cwd=tmp_path)
    assert (checked.returncode, checked.stderr) == (AT_FAULT, "")
    assert "\nplan.yaml:4:3: " in checked.stdout
    built = process("build", path.name, "--out", "pack", cwd=tmp_path)
    assert (built.returncode, built.stdout) == (AT_FAULT, "")
    assert "plan.yaml:4:3: " in built.stderr
    assert [p.name for p in tmp_path.iterdir()] == ["plan.yaml"]


def test_names_of_any_script_on_a_plain_terminal(tmp_path: Path) -> None:
    """A terminal that knows no more than ASCII still gets its answer."""
    path = tmp_path / "plan.yaml"
    text = SHORTEST.read_text("utf-8").replace("geren", "green")
    path.write_text(text.replace("green: 1-9", "green: Łąka"), encoding="utf-8")
    done = process(
        "check", path.name, cwd=tmp_path, LC_ALL="C", PYTHONUTF8="0", PYTHONIOENCODING="ascii"
    )
    assert done.returncode == DONE
    assert "Traceback" not in done.stderr


def test_better_dates_only_when_asked_for(tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text(
        "club: {name: Marl Hill}\n"
        "course: {greens: [{green: 1-9}]}\n"
        "works: [{operation: top dressing, dates: 2026-06-10}]\n"
        "fixtures: [{name: June Medal, date: 2026-06-10}]\n",
        encoding="utf-8",
    )
    arguments = ("check", str(plan), "--today", "2026-01-05")
    assert "Better dates" not in run(*arguments).stdout
    shown = run(*arguments, "--better-dates")
    assert shown.exit_code == DONE
    assert "Better dates for top dressing" in shown.stdout
    assert "(fixture-in-closure)" in shown.stdout
    data = json.loads(run(*arguments, "--better-dates", "--json").stdout)
    assert {finding["code"] for finding in data["findings"]} >= {"fixture-in-closure"}
    assert data["better_dates"][0]["options"][0]["start"] == "2026-06-11"


def test_other_ways_to_lay_out_only_when_asked_for(tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text(
        "club: {name: Marl Hill}\n"
        "course: {greens: [{green: 1-9}]}\n"
        "works: [{operation: scarifying, dates: 2026-06-10 to 2026-06-12}]\n",
        encoding="utf-8",
    )
    arguments = ("check", str(plan), "--today", "2026-01-05")
    assert "other ways" not in run(*arguments).stdout
    shown = run(*arguments, "--patterns", "--better-dates").stdout
    # Three greens a day as planned, and the same three a week apart.
    assert "No dates clash" in shown
    assert (
        "Spread over weeks:\n  Days of work: 3\n  First day: 10 Jun\n  Last day: 24 Jun\n" in shown
    )
    data = json.loads(run(*arguments, "--patterns", "--json").stdout)
    assert "better_dates" not in data
    layouts = [pattern["layout"] for pattern in data["patterns"]]
    assert layouts == ["all greens at once", "as planned", "spread over weeks"]


def test_words_are_measured_only_when_asked_for(tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    note = "    note: " + "and ".join(["the grass is green "] * 6) + "\n"
    plan.write_text(f"{SHORTEST.read_text('utf-8').rstrip()}\n{note}", "utf-8")
    assert "sentence-too-long" not in run("check", plan).stdout
    data = json.loads(run("check", plan, "--words", "--json").stdout)
    # Six times four words, and five times "and".
    (found,) = [one for one in data if one["code"] == "sentence-too-long"]
    assert "29 words" in found["message"]
    assert found["line"] == len(plan.read_text("utf-8").splitlines())
