"""Whatever is typed: a plan comes of it, or faults that each have a place."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.errors import PlanFault
from notices.plan.load import canonical, load_plan
from notices.plan.yaml_file import read_yaml
from tests.plan import strategies

EXAMPLE = read_yaml(Path(__file__).parents[2] / "examples" / "withy-hollow" / "plan.yaml").data

unhurried = settings(
    max_examples=200,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("plans") / "plan.yaml"


def is_read_or_refused(path: Path, data: object) -> None:
    path.write_text(json.dumps(data, ensure_ascii=False, default=str), encoding="utf-8")
    try:
        load_plan(path)
    except PlanFault as error:
        assert error.findings  # noqa: PT017, any other error fails the test
        for finding in error.findings:
            assert finding.place
            assert finding.place.line
            assert finding.place.column
            line = str(finding)
            assert line.endswith((".", "?"))
            assert "\n" not in line
            assert "Input should" not in line


@unhurried
@given(typed=strategies.plans())
def test_a_plan_is_the_same_when_written_and_read_again(path: Path, typed: dict[str, Any]) -> None:
    path.write_text(json.dumps(typed, ensure_ascii=False), encoding="utf-8")
    first = load_plan(path).plan
    written = canonical(first)
    path.write_text(json.dumps(written, ensure_ascii=False, indent=2), encoding="utf-8")
    second = load_plan(path).plan
    assert second == first
    assert canonical(second) == written


scalars = (
    st.none()
    | st.booleans()
    | st.integers(-(10**18), 10**18)
    | st.floats(allow_nan=False, allow_infinity=False)
    | strategies.texts
    | st.sampled_from(["", " ", "2027-08-16", "1-9", "13 mm", "pending", "hollow tining", "9e999"])
)
keys = strategies.texts | st.sampled_from(
    ["club", "course", "works", "greens", "green", "name", "dates", "operation", "settings", "id"]
)
anything = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(keys, inner, max_size=5),
    max_leaves=20,
)


@unhurried
@given(data=st.dictionaries(keys, anything, max_size=6) | anything)
def test_anything_is_read_or_refused_with_its_places(path: Path, data: object) -> None:
    is_read_or_refused(path, data)


def spots(data: object, at: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The ways to everything in the data."""
    inside: list[tuple[str | int, Any]] = []
    if isinstance(data, dict):
        inside = list(data.items())
    elif isinstance(data, list):
        inside = list(enumerate(data))
    return [way for key, item in inside for way in ((*at, key), *spots(item, (*at, key)))]


SPOTS = spots(EXAMPLE)


@settings(unhurried, max_examples=400)
@given(data=st.data())
def test_a_plan_with_slips_of_the_pen_is_read_or_refused(path: Path, data: st.DataObject) -> None:
    plan = copy.deepcopy(EXAMPLE)
    for _ in range(data.draw(st.integers(1, 3))):
        *way, last = data.draw(st.sampled_from(SPOTS))
        block: Any = plan
        try:
            for step in way:
                block = block[step]
            value = block[last]
            del block[last]
        except (KeyError, IndexError, TypeError):
            continue  # an earlier slip took it away
        slip = data.draw(st.sampled_from(["delete", "replace", "misspell"]))
        if slip == "replace" and isinstance(block, list):
            block.append(data.draw(anything))
        elif slip == "replace":
            block[last] = data.draw(anything)
        elif slip == "misspell" and isinstance(block, dict):
            word = str(last)
            cut = data.draw(st.integers(0, len(word) - 1))
            block[word[:cut] + word[cut + 1 :] or "x"] = value
    is_read_or_refused(path, plan)
