"""The schema that editors check a plan by, held against the reader of plans."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from jsonschema import Draft7Validator
from pydantic_core import core_schema

from notices.errors import PlanFault
from notices.operations import CATALOGUE
from notices.plan import fields, quantities, schema
from notices.plan.days import parse_clock, parse_days, parse_working_day
from notices.plan.green_list import parse_greens
from notices.plan.model import Approval, Plan
from notices.plan.schema import plan_schema
from notices.plan.settings import read_settings
from notices.plan.yaml_file import read_yaml
from tests.plan import strategies

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/plan.yaml"))
MISTAKES = sorted((Path(__file__).parent / "mistakes").glob("*.yaml"))
SCHEMA = plan_schema()
VALIDATOR = Draft7Validator(SCHEMA)


def complaints(plan: object) -> list[str]:
    return [error.message for error in VALIDATOR.iter_errors(plan)]


def test_it_is_a_schema_in_json() -> None:
    Draft7Validator.check_schema(json.loads(json.dumps(SCHEMA)))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_every_example_passes(path: Path) -> None:
    assert complaints(read_yaml(path).data) == []


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plan=strategies.plans())
def test_any_plan_that_can_be_read_passes(plan: dict[str, Any]) -> None:
    assert complaints(plan) == []


BEYOND_A_SCHEMA = {
    # These compare one part of the plan with another, or ask the calendar or the folder.
    *("calendar-elsewhere", "calendar-missing", "calendar-that-is-none"),
    *("closure-of-unknown-greens", "unknown-green", "unknown-green-by-name"),
    *("green-on-two-days", "green-twice-in-a-list", "greens-on-a-day-without-work"),
    *("reserve-date-before-the-work", "reserve-date-on-a-working-day", "reversed-range"),
    *("healed-before-the-work", "impossible-date", "wrong-time-zone", "two-ids"),
    # These compare the sizes of quantities.
    *(
        "courses-confused",
        "cut-raised-downwards",
        "double-greens-confused",
        "holes-run-together",
        "inside-wider-than-outside",
    ),
    *("more-than-all-of-the-soil", "rate-and-fill", "unlikely-depth"),
    # The second of two like keys never reaches the data.
    "doubled-key",
}


def read_mistakes() -> Iterator[tuple[str, object]]:
    for path in MISTAKES:
        try:
            yield path.stem, read_yaml(path).data
        except PlanFault:
            continue  # no editor could read it as YAML either


READ = dict(read_mistakes())


@pytest.mark.parametrize(("name", "plan"), READ.items(), ids=READ)
def test_every_mistake_that_a_schema_can_see_is_seen(name: str, plan: object) -> None:
    assert bool(complaints(plan)) is (name not in BEYOND_A_SCHEMA)


def kind_value(kind: str) -> Callable[[object], object]:
    """Read a value as the setting of that name of a known kind of work."""
    operation, setting = {
        "spacing": ("hollow tining", "spacing"),
        "rate": ("top dressing", "rate"),
    }[kind]

    def read(value: object) -> object:
        values, problems = read_settings(CATALOGUE[operation], {setting: value})
        if problems:
            raise ValueError(problems)
        return values

    return read


TYPED: list[tuple[str, Callable[[Any], object], list[object], list[object]]] = [
    (
        "length",
        quantities.length_mm,
        ["13 mm", "13mm", "1.3 cm", "1/2 in", "1 1/2 in", "½ in", '3"', "3 feet", "0.8 m", "13 MM"],
        ["13", 13, "13 kg", "mm", "about 13 mm", "13 mm2", "", True],
    ),
    (
        "area",
        quantities.area_m2,
        ["480 m2", "480 m²", "5,200 sq ft", "0.05 ha", "0.1 acres", "5400 ft2"],
        ["480", 480, "480 m", "480 mm"],
    ),
    (
        "rate",
        kind_value("rate"),
        ["0.7 kg/m2", "700 g/m²", "150 lb/1000 ft2", "150 lb per 1,000 ft2", "0.7 kg per m2"],
        ["0.7", 0.7, "0.7 kg", "0.7 m2"],
    ),
    (
        "density",
        quantities.density_t_m3,
        ["1.55 t/m3", "1550 kg/m3", "100 lb/ft3", "1.55 t/m³"],
        ["1.55", "1.55 t", "1.55 kg/m2"],
    ),
    ("percentage", quantities.percent, ["38 %", "38%", "38 percent", "0 %"], ["38", 0.38, "%"]),
    (
        "temperature",
        quantities.temperature_c,
        ["18 C", "18 °C", "64 F", "-3 C", "18.5 c"],
        ["18", 18, "18 K"],
    ),
    ("speed", quantities.speed_km_h, ["1.2 km/h", "0.75 mph", "20 m/min", "1 kph"], ["1.2", "1 m"]),
    (
        "spacing",
        kind_value("spacing"),
        ["50 x 50 mm", "50 mm", "2 in x 1.5 in", "50 × 60 mm", "50 by 60 mm", "1 1/2 x 1 1/2 in"],
        ["50", "50 x 50", "x", "50 x 50 x 50 mm"],
    ),
    (
        "days",
        parse_days,
        ["2027-08-16", "2027-08-16 to 2027-08-18", "2027-08-16, 2027-08-18", ["2027-08-16"]],
        ["16/08/2027", "August", "2027-08", "2027-13-01", "2027-08-32", [], 2027],
    ),
    ("day", fields.read_day, ["2027-08-16"], ["2027-8-16", "16 August 2027"]),
    ("time-of-day", parse_clock, ["06:30", "23:59", "00:00"], ["6:30", "24:00", "half past six"]),
    (
        "working-day",
        parse_working_day,
        ["06:30 to 15:30", "06:30-15:30", "06:30 – 15:30"],
        ["06:30", "06:30 until 15:30", "6 to 3"],
    ),
    (
        "greens",
        parse_greens,
        ["1-18", 7, "1-6, 9, Putting green", [1, "3-5"], "Putting green"],
        ["", 0, 100, "1,,2", ",", [], True],
    ),
    (
        "address",
        fields.read_address,
        ["course@club.example", "a.b@club.example"],
        ["office", "office at club.example", "a@b", "@club.example"],
    ),
    (
        "time-zone",
        fields.read_zone,
        ["Europe/London", "America/New_York", "UTC", "America/Argentina/Buenos_Aires", "Etc/GMT+3"],
        ["", "GMT Standard Time", 1],
    ),
    (
        "while-working",
        fields.read_while_working,
        ["open", "temporary green", "closed"],
        ["shut", ""],
    ),
    (
        "reopening",
        fields.read_reopening,
        ["when finished", "next morning", "1 day later", "14 days later"],
        ["soon", "1 week later", 1],
    ),
]


@pytest.mark.parametrize(("name", "read", "right", "wrong"), TYPED, ids=[row[0] for row in TYPED])
def test_values_pass_as_the_reader_takes_them(
    name: str, read: Callable[[Any], object], right: list[object], wrong: list[object]
) -> None:
    of = VALIDATOR.evolve(
        schema={"$ref": f"#/definitions/{name}", "definitions": SCHEMA["definitions"]}
    )
    for value in right:
        read(value)
        assert of.is_valid(value), value
    for value in wrong:
        with pytest.raises(ValueError):  # noqa: PT011, the readers have tests of their own
            read(value)
        assert not of.is_valid(value), value


def values_in(part: object) -> Iterator[dict[str, Any]]:
    if isinstance(part, dict):
        yield part
        for inside in part.values():
            yield from values_in(inside)
    elif isinstance(part, list):
        for inside in part:
            yield from values_in(inside)


def test_every_example_of_a_value_passes_its_own_pattern() -> None:
    shown = [part for part in values_in(SCHEMA) if "pattern" in part and "examples" in part]
    assert len(shown) > 15
    for part in shown:
        for example in part["examples"]:
            assert re.search(part["pattern"], example), (example, part["pattern"])


def test_every_reference_leads_somewhere() -> None:
    names = {part["$ref"] for part in values_in(SCHEMA) if "$ref" in part}
    assert {name.removeprefix("#/definitions/") for name in names} <= SCHEMA["definitions"].keys()


def test_every_key_is_described() -> None:
    for part in [SCHEMA, *SCHEMA["definitions"].values()]:
        for key, value in part.get("properties", {}).items():
            assert len(value["description"]) > 3, key


def test_every_key_of_the_plan_is_there() -> None:
    assert SCHEMA["properties"].keys() == Plan.model_fields.keys()


def readers_in(part: object) -> Iterator[object]:
    if isinstance(part, dict):
        if part.get("type") == "function-before":
            yield part["function"]["function"]
        for key, inside in part.items():
            if key not in ("serialization", "metadata"):
                yield from readers_in(inside)
    elif isinstance(part, list | tuple):
        for inside in part:
            yield from readers_in(inside)


def test_every_reader_of_ours_has_its_way_of_typing() -> None:
    """A new kind of value needs a line in _READERS, or editors call it wrong."""
    Plan.model_rebuild(force=True)
    whole: core_schema.CoreSchema = Plan.__pydantic_core_schema__
    known = {*schema._READERS, fields.read_text, fields.read_number, Approval._pending_word}
    assert {reader for reader in readers_in(whole) if reader not in known} == set()


PLAN: dict[str, Any] = {
    "club": {"name": "Tansy Down"},
    "course": {"greens": [{"green": "1-9"}]},
    "works": [{"operation": "hollow tining", "dates": "2027-08-16"}],
}
OWN = {"operations": [{"name": "spiking", "text": "spiking.md"}]}


def test_a_club_with_kinds_of_work_of_its_own_may_name_them() -> None:
    spiking = {"works": [{"operation": "spiking", "dates": "2027-08-16"}]}
    assert complaints(PLAN | spiking)
    assert complaints(PLAN | spiking | OWN) == []
    assert complaints(PLAN | OWN) == []


def test_settings_are_those_of_the_work() -> None:
    def with_settings(operation: str, **typed: object) -> dict[str, Any]:
        work = {"operation": operation, "dates": "2027-08-16", "settings": typed}
        return PLAN | {"works": [work]}

    assert complaints(with_settings("hollow tining", tine_diameter="13 mm")) == []
    assert complaints(with_settings("brushing", tine_diameter="13 mm"))
    assert complaints(with_settings("hollow tining", tine_diameter="13"))
    assert complaints(with_settings("top dressing", fill="holes", dressings=3)) == []
    assert complaints(with_settings("top dressing", fill="slits"))


def test_something_must_be_planned() -> None:
    bare = {key: value for key, value in PLAN.items() if key != "works"}
    assert complaints(bare)
    assert complaints(bare | {"closures": [{"what": "course", "dates": "2027-08-16"}]}) == []


@pytest.mark.parametrize(
    ("typed", "passes"),
    [
        ("pending", True),
        ({"pending": True}, True),
        ({"by": "Committee"}, True),
        ({"date": "2027-06-01"}, False),
        ("granted", False),
    ],
)
def test_approval_has_two_forms(typed: object, *, passes: bool) -> None:
    assert (complaints(PLAN | {"approval": typed}) == []) is passes
