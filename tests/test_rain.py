"""The commands for when it rains: what changed, what is due, and changes to the plan itself."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.documents.building import EXAMPLES, BuiltPack
from tests.test_cli import AT_FAULT, DONE, run

PLAN = """\
issued: 2026-08-01
club: {name: Marl Hill}
course: {greens: [{green: 1-4}]}
works:
  - {operation: brushing, dates: 2026-09-14}
"""


@pytest.fixture(autouse=True)
def _no_date_from_outside(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)


def written(folder: Path, text: str, name: str = "plan.yaml") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_compare_finds_differences_and_is_done_all_the_same(tmp_path: Path) -> None:
    old = written(tmp_path, PLAN)
    new = written(tmp_path, PLAN.replace("09-14", "09-16"), "new.yaml")
    shown = run("compare", old, new)
    assert shown.exit_code == DONE
    assert shown.stdout == (
        "What has changed:\n\n- Brushing moves from Monday 14 to Wednesday 16 September.\n"
        "\nEverything else stands.\n"
    )
    data = json.loads(run("compare", old, new, "--json").stdout)
    assert [change["kind"] for change in data["changes"]] == ["moved"]
    assert data["text"] == ["Brushing moves from Monday 14 to Wednesday 16 September."]


def test_a_pack_is_compared_by_the_plan_in_it(pack: BuiltPack) -> None:
    assert pack.folder is not None
    shown = run("compare", pack.folder, EXAMPLES / pack.folder.name / "plan.yaml")
    assert (shown.exit_code, shown.stdout) == (DONE, "Nothing has changed.\n")


def test_compare_refuses_a_folder_that_is_no_pack(tmp_path: Path) -> None:
    shown = run("compare", tmp_path, tmp_path)
    assert shown.exit_code == AT_FAULT
    assert shown.stderr.startswith(f"{tmp_path} is not a pack of Notices; name a plan file")


def test_due_on_a_day(tmp_path: Path) -> None:
    plan = written(tmp_path, PLAN)
    shown = run("due", plan, "--today", "2026-09-13")
    assert shown.exit_code == DONE
    assert "  Today: Send the reminder: brushing (member-email-reminder)." in shown.stdout
    data = json.loads(run("due", plan, "--today", "2026-09-13", "--json").stdout)
    last = [duty["last"] for duty in data]
    assert last == sorted(last)
    # The day before the work: the reminder, the sheet for the team, the signs.
    assert {duty["kind"] for duty in data} == {"send", "print", "put up"}
    assert run("due", plan, "--today", "2026-12-01").stdout.startswith("Nothing is due on")
