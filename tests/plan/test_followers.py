"""Works that follow others: as typed, refused, laid out, and written back."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from notices.errors import PlanFault
from notices.plan.followers import After, read_after, write_after
from notices.plan.load import LoadedPlan, canonical, load_plan
from notices.programme.lay_out import lay_out_works

HEAD = "club: {name: Marl Hill}\ncourse: {greens: [{green: 1-4}]}\nworks:\n"
CORES = "operation: hollow tining, dates: 2026-09-07 to 2026-09-08, reserve_dates: 2026-09-09"


def loaded(folder: Path, *works: str) -> LoadedPlan:
    path = folder / "plan.yaml"
    path.write_text(HEAD + "".join(f"  - {{{work}}}\n" for work in works), encoding="utf-8")
    return load_plan(path)


@pytest.mark.parametrize(
    ("typed", "read", "written"),
    [
        ("hollow tining, same day", After("hollow tining", 0), "hollow tining, same day"),
        ("Hollow  Tining", After("hollow tining", 0), "hollow tining, same day"),
        ("hollow tining, +1 day", After("hollow tining", 1), "hollow tining, +1 day"),
        ("autumn-cores, 2 days later", After("autumn-cores", 2), "autumn-cores, +2 days"),
        ({"work": "hollow tining", "days": 1}, After("hollow tining", 1), "hollow tining, +1 day"),
        ({"work": "hollow tining"}, After("hollow tining", 0), "hollow tining, same day"),
        ("hollow tining, +366 days", After("hollow tining", 366), "hollow tining, +366 days"),
    ],
)
def test_reads_and_writes(typed: object, read: After, written: str) -> None:
    assert read_after(typed) == read
    assert write_after(read) == written
    assert read_after(written) == read


@pytest.mark.parametrize(
    "typed",
    [
        "",
        ", same day",
        "hollow tining,",
        "hollow tining, soon",
        "hollow tining, -1 day",
        "hollow tining, +367 days",
        7,
        ["hollow tining"],
        {"days": 1},
        {"work": ""},
        {"work": "hollow tining", "days": True},
        {"work": "hollow tining", "days": -1},
        {"work": "hollow tining", "day": 1},
    ],
)
def test_refuses(typed: object) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        read_after(typed)


@pytest.mark.parametrize(("wait", "days"), [("same day", (7, 8)), ("+1 day", (8, 9))])
def test_days_greens_and_reserve_follow(tmp_path: Path, wait: str, days: tuple[int, int]) -> None:
    greens = "greens: {2026-09-07: '3, 1', 2026-09-08: 2}"
    plan = loaded(
        tmp_path, f"{CORES}, {greens}", f"operation: brushing, after: 'hollow tining, {wait}'"
    ).plan
    brushing = lay_out_works(plan)[1]
    # Monday 3 and 1, Tuesday 2: the same later by the wait; the reserve of the 9th too.
    assert [(v.date.day, v.greens) for v in brushing.visits] == [
        (days[0], ("3", "1")),
        (days[1], ("2",)),
    ]
    assert [day.day for day in brushing.reserve_dates] == [days[1] + 1]


def test_a_chain_follows_its_head_wherever_it_stands(tmp_path: Path) -> None:
    plan = loaded(
        tmp_path,
        "operation: rolling, after: 'brushing-1, +2 days'",
        "operation: brushing, after: 'cores, +1 day'",
        f"{CORES}, id: cores",
    ).plan
    # 7 + 1 + 2 = 10.
    assert [day.day for day in lay_out_works(plan)[0].dates] == [10, 11]


def test_an_own_reserve_date_stands(tmp_path: Path) -> None:
    plan = loaded(
        tmp_path, CORES, "operation: brushing, after: hollow tining, reserve_dates: 2026-09-12"
    ).plan
    assert [day.day for day in lay_out_works(plan)[1].reserve_dates] == [12]


def test_the_canonical_form_is_the_same_plan(tmp_path: Path) -> None:
    first = loaded(tmp_path, CORES, "operation: brushing, after: {work: hollow tining, days: 1}")
    written = canonical(first.plan)
    assert written["works"][1] == {
        "operation": "brushing",
        "after": "hollow tining, +1 day",
    }
    (tmp_path / "again.json").write_text(json.dumps(written), encoding="utf-8")
    again = load_plan(tmp_path / "again.json").plan
    assert canonical(again) == written
    assert lay_out_works(again) == lay_out_works(first.plan)


BRUSH = "operation: brushing, after: hollow tining"
FAULTS = [
    # works, line of the fault (the works begin on line 4), what it says
    ((CORES, "operation: brushing, after: hollow tning"), 5, 'did you mean "hollow tining"?'),
    ((BRUSH, "operation: rolling, dates: 2026-09-07"), 4, "no work"),
    (("operation: brushing, after: brushing",), 4, "follows itself"),
    (
        ("operation: brushing, after: rolling", "operation: rolling, after: brushing"),
        4,
        '"brushing-1" and "rolling-1" follow one another in a circle',
    ),
    ((CORES, CORES, BRUSH), 6, 'write "hollow-tining-1" or "hollow-tining-2"'),
    ((CORES, BRUSH + ", dates: 2026-09-07"), 5, "dates of its own"),
    ((CORES, BRUSH + ", greens: 1"), 5, "greens of its own"),
    ((CORES, "operation: brushing, after: 'hollow tining, soon'"), 5, "is not understood"),
]


@pytest.mark.parametrize(("works", "line", "says"), FAULTS)
def test_a_fault_has_its_place(
    tmp_path: Path, works: tuple[str, ...], line: int, says: str
) -> None:
    with pytest.raises(PlanFault) as raised:
        loaded(tmp_path, *works)
    first = raised.value.findings[0]
    assert says.casefold() in str(first).casefold()
    assert first.place is not None
    assert first.place.line == line
    # Said once, and not again for want of dates.
    assert not any('"dates"' in str(finding) for finding in raised.value.findings)


def test_a_leader_at_fault_is_told_once(tmp_path: Path) -> None:
    with pytest.raises(PlanFault) as raised:
        loaded(tmp_path, "operation: hollow tining, dates: soon", BRUSH)
    (finding,) = raised.value.findings
    assert finding.path == ("works", 0, "dates")
