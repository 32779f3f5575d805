"""Settings of a work, read against what the catalogue says about its kind."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from notices.operations import Kind, Operation, Setting, SettingValue
from notices.plan import quantities as q
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal


@dataclass(frozen=True, slots=True)
class SettingProblem:
    """What is wrong with one setting."""

    name: str
    message: str
    suggestion: str = ""
    unknown_key: bool = False


def _words(value: object) -> str:
    if isinstance(value, str | int | float) and not isinstance(value, bool) and str(value).strip():
        return str(value).strip()
    raise Refusal(f"{quoted(value)} is not text", "write a few words")


def _fill(value: object) -> str:
    if isinstance(value, str) and value.strip().lower() == "holes":
        return "holes"
    raise Refusal(f"{quoted(value)} cannot be filled", 'write "holes"')


_PARSE: Mapping[Kind, Callable[[object], SettingValue]] = {
    Kind.LENGTH: q.length_mm,
    Kind.SPACING: q.spacing_mm,
    Kind.AREA: q.area_m2,
    Kind.RATE: q.rate_kg_m2,
    Kind.COUNT: q.whole_number,
    Kind.WORDS: _words,
    Kind.FILL: _fill,
}

# Any: what a setting holds depends on its kind.
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
    operation: Operation, typed: Mapping[str, object]
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
            read = _PARSE[setting.kind](value)
        except Refusal as error:
            problems.append(SettingProblem(name, *error.sentences))
            continue
        if problem := _outside(operation, setting, read):
            problems.append(problem)
        else:
            values[name] = read
    # In one order, so that a plan is the same however its settings are listed.
    in_order = {one.name: values[one.name] for one in operation.settings if one.name in values}
    return in_order, [*problems, *_contradictions(operation, typed, values)]


def write_settings(operation: Operation, values: Mapping[str, object]) -> dict[str, object]:
    """Write settings back in the words in which a plan has them."""
    written: dict[str, object] = {}
    for name, value in values.items():
        setting = operation.setting(name)
        # Settings that were not read yet stand as typed.
        as_typed = setting is None or isinstance(value, str)
        written[name] = value if as_typed or setting is None else _FORMAT[setting.kind](value)
    return written


def write_value(kind: Kind, value: SettingValue) -> SettingValue:
    """Write one value of a setting in the words in which a plan has it."""
    return _FORMAT[kind](value)


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
        name, f"{operation.name} has no setting {quoted(name)}", remedy, unknown_key=True
    )


def _outside(operation: Operation, setting: Setting, value: SettingValue) -> SettingProblem | None:
    if isinstance(value, str):
        return None
    numbers = value if isinstance(value, tuple) else (value,)
    if all(setting.low <= number <= setting.high for number in numbers):
        return None
    write = _FORMAT[Kind.LENGTH if setting.kind is Kind.SPACING else setting.kind]
    return SettingProblem(
        setting.name,
        f'{_FORMAT[setting.kind](value)} is not a likely "{setting.name}" of {operation.name}',
        f"It should lie between {write(setting.low)} and {write(setting.high)}",
    )


_WIDE_AND_APART = (
    # What is cut, how far apart, what it is called.
    ("tine_diameter", "spacing", "holes"),
    ("hole_diameter", "spacing", "holes"),
    ("blade_width", "blade_spacing", "slits"),
    ("width", "spacing", "trenches"),
)


def _contradictions(
    operation: Operation, typed: Mapping[str, object], given: Mapping[str, SettingValue]
) -> Iterator[SettingProblem]:
    """Look at what was given beside what the catalogue fills in."""
    if "fill" in given and "rate" in given:
        yield SettingProblem(
            "rate", "sand is given as a rate and as a fill at once", "Take one of the two out"
        )
    values = dict(given)
    for setting in operation.settings:
        if setting.default is not None and setting.name not in typed:
            values[setting.name] = setting.default
    outside, inside = values.get("tine_diameter"), given.get("inside_diameter")
    if isinstance(outside, float) and isinstance(inside, float) and inside >= outside:
        yield SettingProblem(
            "inside_diameter",
            f"the inside of a tine cannot be as wide as its outside, {q.format_length_mm(outside)}",
            "Write a smaller inside, or the tine_diameter that goes with it",
        )
    for wide, apart, what in _WIDE_AND_APART:
        if (wide in given or apart in given) and wide in values and apart in values:
            width, distance = values[wide], values[apart]
            nearest_by = min(distance) if isinstance(distance, tuple) else distance
            if isinstance(width, float) and isinstance(nearest_by, float) and width >= nearest_by:
                yield SettingProblem(
                    apart if apart in given else wide,
                    f"{what} of {q.format_length_mm(width)}, {q.format_length_mm(nearest_by)} "
                    "apart, would run into one another",
                    f'Write a "{apart}" that is wider than the "{wide}"',
                )
    low, high = given.get("from"), given.get("to")
    if (
        operation.name == "raising the height of cut"
        and isinstance(low, float)
        and isinstance(high, float)
        and high <= low
    ):
        yield SettingProblem(
            "to",
            f"a cut raised from {q.format_length_mm(low)} cannot end at {q.format_length_mm(high)}",
            f"Write more than {q.format_length_mm(low)}",
        )
