"""Changes to the text of a plan: at the spot, and not a letter elsewhere."""

from __future__ import annotations

import json

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from notices.plan.yaml_edits import CannotEdit, PlanText

BLOCKS = """\
# A plan, with its author's own spaces.
works:
    -   operation: hollow tining   # cores
        dates: 2026-10-12   # Monday
        reserve_dates:
          - 2026-10-15
          - 2026-10-16

    - {operation: brushing,  dates: [2026-10-12, 2026-10-13], greens: {2026-10-12: 1-9}}
closures: []
# the end
"""


def changed(text: PlanText) -> tuple[list[str], list[str]]:
    """The lines that went and those that came."""
    before, after = text.text.splitlines(), text.result().splitlines()
    return (
        [line for line in before if line not in after],
        [line for line in after if line not in before],
    )


def test_a_value_changes_and_its_comment_stays() -> None:
    text = PlanText(BLOCKS)
    text.set(("works", 0, "dates"), "2026-10-19 to 2026-10-20")
    assert changed(text) == (
        ["        dates: 2026-10-12   # Monday"],
        ["        dates: 2026-10-19 to 2026-10-20   # Monday"],
    )


def test_a_comma_needs_quotes_within_braces_only() -> None:
    text = PlanText(BLOCKS)
    text.set(("works", 0, "dates"), "2026-10-19, 2026-10-21")
    text.set(("works", 1, "dates"), "2026-10-19, 2026-10-21")
    assert changed(text)[1] == [
        "        dates: 2026-10-19, 2026-10-21   # Monday",
        '    - {operation: brushing,  dates: "2026-10-19, 2026-10-21", greens: {2026-10-12: 1-9}}',
    ]


def test_a_list_on_lines_of_its_own_becomes_one_value() -> None:
    text = PlanText(BLOCKS)
    text.set(("works", 0, "reserve_dates"), "2026-10-16")
    assert "        reserve_dates: 2026-10-16\n\n    - {" in text.result()


def test_entries_go() -> None:
    text = PlanText(BLOCKS)
    text.remove(("works", 0, "reserve_dates"))
    text.remove(("works", 1, "dates"))
    data = yaml.safe_load(text.result())["works"]
    assert [list(work) for work in data] == [["operation", "dates"], ["operation", "greens"]]
    assert "# Monday\n\n    - {operation: brushing,  greens:" in text.result()
    first = PlanText("works:\n  - reserve_dates: 2026-10-15\n    operation: brushing\n")
    first.remove(("works", 0, "reserve_dates"))
    assert first.result() == "works:\n  - operation: brushing\n"
    alone = PlanText("sand:\n  - price: 3\n")
    with pytest.raises(CannotEdit):
        alone.remove(("sand", 0, "price"))


def test_entries_and_items_come() -> None:
    text = PlanText(BLOCKS)
    text.add(("works", 0), "note", "wet: all of it")
    text.add_block(("works", 1), "settings", {"passes": "2"})
    text.rename(("works", 1, "greens", "2026-10-12"), "2026-10-14")
    text.append("closures", {"what": "course", "dates": "2026-11-02"})
    text.append("observed", {"operation": "brushing", "done": "2026-10-12"})
    data = yaml.safe_load(text.result())
    assert data["works"][0]["note"] == "wet: all of it"
    assert data["works"][1]["settings"] == {"passes": 2}
    assert [str(day) for day in data["works"][1]["greens"]] == ["2026-10-14"]
    assert data["closures"][0]["what"] == "course"
    assert data["observed"][0]["operation"] == "brushing"
    assert text.result().count("#") == BLOCKS.count("#")


def test_an_item_joins_a_list_at_its_indent_whatever_the_ends_of_lines() -> None:
    text = PlanText("\ufeffobserved:\r\n- {done: 2025-10-13}  # last year\r\n# the end")
    text.append("observed", {"done": "2026-10-13"})
    assert text.result() == (
        "\ufeffobserved:\r\n- {done: 2025-10-13}  # last year\r\n- {done: 2026-10-13}\r\n# the end"
    )
    last = PlanText("observed:\n  - {done: 2025-10-13}")
    last.append("observed", {"done": "2026-10-13"})
    assert last.result() == "observed:\n  - {done: 2025-10-13}\n  - {done: 2026-10-13}"


def test_json_stays_json() -> None:
    text = PlanText('{"works": [{"dates": "2026-10-12"}]}\n')
    text.set(("works", 0, "dates"), "2026-10-13")
    text.append("observed", {"done": "2026-10-13"})
    assert json.loads(text.result()) == {
        "works": [{"dates": "2026-10-13"}],
        "observed": [{"done": "2026-10-13"}],
    }


@settings(max_examples=50, deadline=None)
@given(st.text(st.characters(codec="utf-8", exclude_categories=["C", "Zl", "Zp"])))
def test_any_text_is_read_back_as_it_was(value: str) -> None:
    text = PlanText(BLOCKS)
    text.set(("works", 0, "operation"), value)
    text.set(("works", 1, "operation"), value)
    read = yaml.load(text.result(), Loader=yaml.BaseLoader)  # noqa: S506, texts only
    assert [work["operation"] for work in read["works"]] == [value, value]
