"""Settings of a work, read against what the catalogue says about its kind."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from notices.operations import Kind, Operation, Setting, SettingValue
from notices.plan import quantities as q
from notices.plan.nearest import nearest


@dataclass(frozen=True, slots=True)
class SettingProblem:
    """What is wrong with one setting."""

    name: str
    message: str
    suggestion: str = ""
    unknown_key: bool = False


def _words(value: Any) -> str:
    if (
        not isinstance(value, str | int | float)
        or isinstance(value, bool)
        or not str(value).strip()
    ):
        raise ValueError("a few words are wanted here")
    return str(value).strip()


def _fill(value: Any) -> str:
    if value != "holes":
        raise ValueError(f'"{value}" cannot be filled: write "holes"')
    return "holes"


_PARSE: Mapping[Kind, Callable[[Any], SettingValue]] = {
    Kind.LENGTH: q.length_mm,
    Kind.SPACING: q.spacing_mm,
    Kind.AREA: q.area_m2,
    Kind.RATE: q.rate_kg_m2,
    Kind.COUNT: q.whole_number,
    Kind.WORDS: _words,
    Kind.FILL: _fill,
}

_FORMAT: Mapping[Kind, Callable[[Any], SettingValue]] = {
    Kind.LENGTH: q.format_length_mm,
    Kind.SPACING: q.format_spacing_mm,
    Kind.AREA: q.format_area_m2,
    Kind.RATE: q.format_rate_kg_m2,
    Kind.COUNT: int,
    Kind.WORDS: str,
    Kind.FILL: str,
}


def read_settings(
    operation: Operation, typed: Mapping[str, Any]
) -> tuple[dict[str, SettingValue], list[SettingProblem]]:
    """Return the settings given, in canonical units, and everything wrong with them."""
    values: dict[str, SettingValue] = {}
    problems: list[SettingProblem] = []
    for name, value in typed.items():
        setting = operation.setting(name)
        if setting is None:
            problems.append(_unknown(operation, name))
            continue
        try:
            values[name] = _PARSE[setting.kind](value)
        except ValueError as error:
            problems.append(SettingProblem(name, str(error)))
            continue
        if problem := _outside(setting, values[name]):
            problems.append(problem)
    return values, problems + _contradictions(values)


def write_settings(operation: Operation, values: Mapping[str, SettingValue]) -> dict[str, Any]:
    """Write settings back in the words in which a plan has them."""
    written = {}
    for name, value in values.items():
        setting = operation.setting(name)
        # Settings that were not read yet stand as typed.
        written[name] = (
            _FORMAT[setting.kind](value) if setting and not isinstance(value, str) else value
        )
    return written


def _unknown(operation: Operation, name: str) -> SettingProblem:
    known = [setting.name for setting in operation.settings]
    guess = nearest(name, known)
    if guess:
        remedy = f'Did you mean "{guess}"?'
    elif known:
        remedy = f"Known are {', '.join(known)}"
    else:
        remedy = "Leave the settings out"
    return SettingProblem(
        name, f'{operation.name} has no setting "{name}"', remedy.rstrip("."), unknown_key=True
    )


def _outside(setting: Setting, value: SettingValue) -> SettingProblem | None:
    if isinstance(value, str):
        return None
    numbers = value if isinstance(value, tuple) else (value,)
    if all(setting.low <= number <= setting.high for number in numbers):
        return None
    write = _FORMAT[Kind.LENGTH if setting.kind is Kind.SPACING else setting.kind]
    return SettingProblem(
        setting.name,
        f"{_FORMAT[setting.kind](value)} is not a likely {setting.name.replace('_', ' ')}",
        f"It should lie between {write(setting.low)} and {write(setting.high)}",
    )


def _contradictions(values: Mapping[str, SettingValue]) -> list[SettingProblem]:
    problems = []
    if "fill" in values and "rate" in values:
        problems.append(
            SettingProblem(
                "rate", "give either a rate or fill: holes, not both", "Drop one of them"
            )
        )
    outside, inside = values.get("tine_diameter"), values.get("inside_diameter")
    if isinstance(outside, float) and isinstance(inside, float) and inside >= outside:
        problems.append(
            SettingProblem(
                "inside_diameter",
                "the inside of a hollow tine cannot be as wide as its outside",
                f"Write less than {q.format_length_mm(outside)}",
            )
        )
    spacing = values.get("spacing")
    diameter = values.get("tine_diameter", values.get("hole_diameter"))
    if isinstance(spacing, tuple) and isinstance(diameter, float) and diameter >= min(spacing):
        problems.append(
            SettingProblem(
                "spacing",
                "the holes would run into one another",
                f"Write a spacing wider than {q.format_length_mm(diameter)}",
            )
        )
    width, apart = values.get("blade_width"), values.get("blade_spacing")
    if isinstance(width, float) and isinstance(apart, float) and width >= apart:
        problems.append(
            SettingProblem(
                "blade_spacing",
                "the slits would run into one another",
                f"Write a spacing wider than {q.format_length_mm(width)}",
            )
        )
    return problems
