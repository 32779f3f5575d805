"""The JSON Schema of a plan, by which an editor completes and checks while somebody types.

It is made from the model, with the sentence under each field as its description, and says how
each value is typed: "13 mm" and not the number of millimetres that the model keeps. It is a
little stricter than the reader of plans, which also forgives capitals and odd spaces, and it
cannot compare one part with another: ``notices check`` has the last word.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema
from pydantic_core import core_schema

from notices.operations import CATALOGUE, Kind, Operation, Setting, WhileWorking
from notices.plan import (
    days,
    fields,
    followers,
    green_choice,
    green_list,
    moments,
    own_texts,
    quantities,
)
from notices.plan.descriptions import descriptions
from notices.plan.model import Plan
from notices.plan.part import Part
from notices.plan.settings import write_value

Schema = dict[str, Any]

FILE_NAME = "plan.schema.json"
FIRST_LINE = f"# yaml-language-server: $schema=./{FILE_NAME}\n"
"""What a plan begins with, so that an editor finds the schema beside it."""

_DATE = "[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"
_RANGE = f"{_DATE}(?:(?: +to +| +- +| *[–—] *){_DATE})?"
_CLOCK = "(?:[01][0-9]|2[0-3]):[0-5][0-9]"
_NUMBER = (
    r"(?:[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+"
    r"|(?:[0-9]+ )?[0-9]+ ?/ ?[0-9]+|(?:[0-9]+ ?)?[½¼¾⅓⅔⅛⅜⅝⅞])"
)
_OWN_NAME = "^[a-z][a-z ]{1,38}[a-z]$"
_SHORT = 3
"""Letters of a unit up to which capitals are common: mm, MM, km."""
_SPELT = {"2": "[2²]", "3": "[3³]", " ": " ?", "'": "['’′]", '"': '["”″]'}


def _unit(*kinds: str) -> str:
    """Return a pattern for every spelling of the units of these kinds."""
    return _spelt([name for kind in kinds for name in quantities.units_of(kind)])


def _spelt(words: Iterable[str]) -> str:
    longest_first = sorted(words, key=lambda word: (-len(word), word))
    return f"(?:{'|'.join(''.join(_signs(word)) for word in longest_first)})"


def _signs(word: str) -> Iterator[str]:
    for sign in word:
        capitals = sign.isalpha() and len(word) <= _SHORT
        yield f"[{sign.upper()}{sign}]" if capitals else _SPELT.get(sign, sign)


def _per(above: str, below: str) -> str:
    return f"{_unit(above)}(?: ?/ ?| per )(?:[1-9][0-9,]* ?)?{_unit(below)}"


def _typed(pattern: str, what: str, *examples: str) -> Schema:
    return {
        "type": "string",
        "pattern": f"^ *(?:{pattern}) *$",
        "examples": list(examples),
        # Editors show this in place of the pattern.
        "patternErrorMessage": f"This is not {what}: write it as {' or '.join(examples)}.",
    }


def _length(*examples: str) -> Schema:
    return _typed(f"{_NUMBER} ?{_unit('length')}", "a length with its unit", *examples)


def _or_a_list(item: Schema) -> Schema:
    return {"anyOf": [item, {"type": "array", "items": item, "minItems": 1}]}


_GREENS = _or_a_list(
    {
        "type": ["string", "integer"],
        "pattern": "^[^,]*[^, ][^,]*(?:,[^,]*[^, ][^,]*)*$",
        "minimum": 1,
        "maximum": green_list.HIGHEST_NUMBER,
        "examples": ["1-18", "1-6, 9, Putting green"],
    }
)

_VALUES: Mapping[str, Schema] = {
    "length": _length("13 mm", "1/2 in"),
    "width": _length("0.8 m", "32 in"),
    "spacing": _typed(
        rf"{_NUMBER}(?: ?{_unit('length')})?(?: ?[xX×*] ?| by ){_NUMBER} ?{_unit('length')}"
        rf"|{_NUMBER} ?{_unit('length')}",
        "a spacing with its unit",
        "50 x 50 mm",
        "2 x 2 in",
    ),
    "area": _typed(f"{_NUMBER} ?{_unit('area')}", "an area with its unit", "480 m2", "5,200 sq ft"),
    "rate": _typed(
        f"{_NUMBER} ?{_per('weight', 'area')}",
        "a rate with its unit",
        "0.7 kg/m2",
        "150 lb/1000 ft2",
    ),
    "density": _typed(
        f"{_NUMBER} ?{_per('weight', 'volume')}",
        "a density with its unit",
        "1.55 t/m3",
        "100 lb/ft3",
    ),
    "weight": _typed(
        f"{_NUMBER} ?{_unit('weight')}", "a weight with its unit", "20 t", "18,000 kg"
    ),
    "percentage": _typed(f"{_NUMBER} ?{_unit('percentage')}", "a percentage", "38 %"),
    "temperature": _typed(
        f"-?{_NUMBER} ?°? ?{_spelt(['c', 'f', 'celsius', 'fahrenheit'])}",
        "a temperature with its unit",
        "18 C",
        "64 F",
    ),
    "speed": _typed(
        f"{_NUMBER} ?(?:{_per('length', 'time')}|{_unit('speed')})",
        "a speed with its unit",
        "1.2 km/h",
        "0.75 mph",
    ),
    "count": {"type": "integer", "minimum": 0},
    "words": {"type": ["string", "number"], "minLength": 1},
    "fill": {"enum": ["holes"]},
    "day": _typed(_DATE, "a date", "2027-07-19"),
    "days": _or_a_list(
        _typed(f"{_RANGE}(?: *, *{_RANGE})*", "one or more dates", "2027-08-16 to 2027-08-17")
    ),
    "time-of-day": _typed(_CLOCK, "a time of day", "06:30"),
    "working-day": _typed(
        f"{_CLOCK}(?: +to +| *[-–—] *){_CLOCK}", "a working day", "06:30 to 15:30"
    ),
    "greens": _GREENS,
    "greens-by-day": {
        "anyOf": [
            *_GREENS["anyOf"],
            {
                "type": "object",
                "patternProperties": {f"^ *{_DATE} *$": {"$ref": "#/definitions/greens"}},
                "additionalProperties": False,
                "minProperties": 1,
            },
        ],
    },
    "colour": _typed("#?[0-9A-Fa-f]{6}", "a colour", "#1b4d3e"),
    "course-name": {
        "type": "string",
        "pattern": "^[^,]*[A-Za-z\u00c0-\uffff][^,]*$",
        "minLength": 1,
        "examples": ["Oak", "Red nine"],
    },
    "address": _typed("[^@ ]+@[^@ ]+[.][^@ .]+", "an email address", "course@club.example"),
    "time-zone": _typed("[A-Za-z]+(?:[/_+-][A-Za-z0-9]+)*", "a time zone", "Europe/London"),
    "while-working": {"enum": [choice.value for choice in WhileWorking]},
    "reopening": {
        "anyOf": [
            {"enum": ["when finished", "next morning"]},
            {"type": "string", "pattern": "^[0-9]{1,3} days? later$", "examples": ["2 days later"]},
        ]
    },
    "mailed": {"enum": list(moments.MAILED)},
    "moment": {"enum": [moment.value for moment in moments.Moment]},
    "sending": _typed(
        f"{_DATE}|(?:the +)?day +(?:before|after)|on the day|when finished"
        "|[0-9]{1,3} +(?:day|week)s? +(?:before|after)",
        "a day to send on",
        "28 days before",
        "the day before",
        "when finished",
    ),
    "own-texts": {
        "anyOf": [
            {"type": "string", "pattern": "[^ ]", "examples": ["texts"]},
            {
                "type": "array",
                "items": {
                    "type": "object",
                    "properties": {
                        "name": {"enum": list(own_texts.text_names())},
                        "text": {"type": "string", "minLength": 1},
                    },
                    "required": ["name", "text"],
                    "additionalProperties": False,
                },
            },
        ]
    },
    "after": {
        "anyOf": [
            _typed(
                r"[^,]*[^, ][^,]*(?:, *(?:(?:[tT]he +)?[sS]ame +day|\+? ?[0-9]{1,3} +days?(?: +later)?))?",
                "a work to follow",
                "hollow tining, same day",
                "hollow tining, +1 day",
            ),
            {
                "type": "object",
                "properties": {
                    "work": {"type": "string", "pattern": "[^ ]"},
                    "days": {
                        "type": "integer",
                        "minimum": 0,
                        "maximum": followers.LONGEST_WAIT,
                        "default": 0,
                    },
                },
                "required": ["work"],
                "additionalProperties": False,
            },
        ]
    },
    "operation": {"type": "string", "anyOf": [{"enum": list(CATALOGUE)}, {"pattern": _OWN_NAME}]},
}
"""How each kind of value is typed."""

_READERS: Mapping[object, str] = {
    quantities.length_mm: "length",
    quantities.length_m: "width",
    quantities.area_m2: "area",
    quantities.density_t_m3: "density",
    quantities.rate_kg_m2: "rate",
    quantities.weight_t: "weight",
    quantities.percent: "percentage",
    quantities.temperature_c: "temperature",
    quantities.speed_km_h: "speed",
    days.parse_days: "days",
    days.parse_clock: "time-of-day",
    days.parse_working_day: "working-day",
    green_list.parse_greens: "greens",
    green_choice.read_choice: "greens-by-day",
    followers.read_after: "after",
    moments.read_mailed: "mailed",
    moments.read_moment: "moment",
    own_texts.read_texts: "own-texts",
    moments.read_sending: "sending",
    fields.read_colour: "colour",
    fields.read_course_name: "course-name",
    fields.read_day: "day",
    fields.read_address: "address",
    fields.read_zone: "time-zone",
    fields.read_while_working: "while-working",
    fields.read_reopening: "reopening",
    fields.read_operation: "operation",
}
"""What each reader of ours takes, before it turns it into what the model keeps."""

_KINDS: Mapping[Kind, str] = {
    Kind.LENGTH: "length",
    Kind.SPACING: "spacing",
    Kind.AREA: "area",
    Kind.RATE: "rate",
    Kind.COUNT: "count",
    Kind.WORDS: "words",
    Kind.FILL: "fill",
}

_VALUE = "value"
"""Marks, until all is put together, a value that has a definition of its own."""

_LIMITS = {"ge": "minimum", "le": "maximum", "gt": "exclusiveMinimum", "lt": "exclusiveMaximum"}


def plan_schema() -> Schema:
    """Return the JSON Schema (draft 7) of a plan."""
    made = Plan.model_json_schema(schema_generator=_Typed, ref_template="#/definitions/{model}")
    parts: dict[str, Schema] = made.pop("$defs")
    made["title"] = "Plan"
    parts["Plan"] = made
    models = {model.__name__: model for model in _parts(Part)}
    kept = {name: _described(models[name], parts[name]) for name in sorted(parts.keys() & models)}
    plan = kept.pop("Plan")
    _say_what_the_model_checks(kept)
    kept["WorksTable"] = _WORKS_TABLE
    plan["properties"]["works"]["items"] = {
        "if": {"type": "object", "required": ["table"]},
        "then": _ref("WorksTable"),
        "else": plan["properties"]["works"]["items"],
    }
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "Plan of work on golf greens",
        **{key: plan[key] for key in ("description", "type", "properties", "required")},
        "additionalProperties": False,
        "anyOf": [{"required": ["works"]}, {"required": ["closures"]}],
        # Only a club that brings kinds of work of its own may name others than the known.
        "if": {"not": {"required": ["operations"]}},
        "then": {"properties": _only_known_operations()},
        "definitions": kept | dict(_VALUES),
    }


_WORKS_TABLE: Schema = {
    "description": "Works from a list of the club's own that lies beside the plan.",
    "type": "object",
    "properties": {
        "table": {
            "description": "File name of a CSV table or a workbook that lies beside the plan.",
            "type": "string",
            "examples": ["works.csv"],
        },
        "sheet": {"description": "Sheet of the workbook.", "type": "string"},
        "dates": {
            "description": "How dates stand in the table; year-month-day when left out.",
            "enum": ["year-month-day", "day-month-year", "month-day-year"],
        },
    },
    "required": ["table"],
    "additionalProperties": False,
}
"""An entry among the works that `plan.works_table` replaces before the model is asked."""


def _say_what_the_model_checks(parts: dict[str, Schema]) -> None:
    """Add what the model says in Python and not in its fields."""
    approval, fixture, work = parts["Approval"], parts["Fixture"], parts["Work"]
    parts["Approval"] = {
        "description": approval.pop("description"),
        "anyOf": [
            {"const": "pending"},
            approval | {"anyOf": [{"required": ["by"]}, {"required": ["pending"]}]},
        ],
    }
    fixture["oneOf"] = [
        {
            "required": ["calendar"],
            "not": {"anyOf": [{"required": ["name"]}, {"required": ["date"]}]},
        },
        {"required": ["name", "date"], "not": {"required": ["calendar"]}},
    ]
    work["required"].remove("dates")
    work["oneOf"] = [
        {"required": ["dates"], "not": {"required": ["after"]}},
        {
            "required": ["after"],
            "not": {"anyOf": [{"required": ["dates"]}, {"required": ["greens"]}]},
        },
    ]
    work["allOf"] = [
        {
            "if": {
                "properties": {"operation": {"const": operation.name}},
                "required": ["operation"],
            },
            "then": {"properties": {"settings": _settings(operation)}},
        }
        for operation in CATALOGUE.values()
    ]


def _only_known_operations() -> Schema:
    line: Schema = {"items": {"properties": {"operation": {"enum": list(CATALOGUE)}}}}
    return {"works": line, "observed": line, "crew": {"properties": {"machines": line}}}


def _settings(operation: Operation) -> Schema:
    return {
        "properties": {
            setting.name: {"description": _setting(setting), "allOf": [_ref(_KINDS[setting.kind])]}
            for setting in operation.settings
        },
        "additionalProperties": False,
    }


def _setting(setting: Setting) -> str:
    """Say what a setting is when it is left out, and what is sane."""
    said = []
    if setting.default is not None:
        said.append(f"{write_value(setting.kind, setting.default)} when left out.")
    if setting.high < float("inf"):
        kind = Kind.LENGTH if setting.kind is Kind.SPACING else setting.kind
        low, high = (write_value(kind, limit) for limit in (setting.low, setting.high))
        said.append(f"Between {low} and {high}.")
    return " ".join(said) or "In words."


def _described(model: type[BaseModel], part: Schema) -> Schema:
    """Add the sentence under each field, and take out what is said by the description."""
    properties = {}
    sentences = descriptions(model)
    for name, field in model.model_fields.items():
        key = field.alias or name
        schema = _tidied(part["properties"][key])
        # Draft 7 looks at nothing that stands beside a reference.
        if "$ref" in schema:
            schema = {"allOf": [schema]}
        said = {"description": f"{sentences[name]}."} if name in sentences else {}
        properties[key] = said | schema
    part["properties"] = properties
    part.pop("title", None)
    part["description"] = " ".join(part.get("description", "").split())
    return part


def _ref(name: str) -> Schema:
    return {"$ref": f"#/definitions/{name}"}


def _tidied(schema: Any) -> Any:  # noqa: ANN401, whatever JSON can hold
    if isinstance(schema, dict):
        if _VALUE in schema:
            return _ref(schema[_VALUE])
        return {
            _LIMITS.get(key, key): _tidied(value) for key, value in schema.items() if key != "title"
        }
    return [_tidied(item) for item in schema] if isinstance(schema, list) else schema


def _parts(model: type[BaseModel]) -> Iterator[type[BaseModel]]:
    for part in model.__subclasses__():
        yield part
        yield from _parts(part)


class _Typed(GenerateJsonSchema):
    """Says how a value is typed, where pydantic would say what the model keeps."""

    def function_before_schema(self, schema: core_schema.BeforeValidatorFunctionSchema) -> Schema:
        reader = schema["function"]["function"]
        if reader in _READERS:
            return {_VALUE: _READERS[reader]}
        inner = self.generate_inner(schema["schema"])
        if reader is fields.read_text:  # a name may be a number
            return inner | {"type": ["string", "number"]}
        return inner

    def nullable_schema(self, schema: core_schema.NullableSchema) -> Schema:
        # A key without a value is refused: whoever has nothing to say leaves the key out.
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> Schema:
        inner = self.generate_inner(schema["schema"])
        default = schema.get("default")
        plain = inner.keys() & {"enum", "const"} or inner.get("type") in (
            "number",
            "integer",
            "boolean",
        )
        return inner | {"default": default} if plain and default is not None else inner
