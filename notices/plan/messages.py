"""What pydantic found, in words for the person who typed the plan."""

from __future__ import annotations

import typing
from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from notices.plan.model import Plan
from notices.plan.nearest import nearest

Path = tuple[str | int, ...]

_WANTED = {
    "string_type": "text is wanted here",
    "int_type": "a whole number is wanted here",
    "int_parsing": "a whole number is wanted here",
    "int_from_float": "a whole number is wanted here",
    "float_type": "a number is wanted here",
    "float_parsing": "a number is wanted here",
    "bool_type": "true or false is wanted here",
    "bool_parsing": "true or false is wanted here",
    "model_type": "a block of keys with their values is wanted here",
    "model_attributes_type": "a block of keys with their values is wanted here",
    "dict_type": "a block of keys with their values is wanted here",
    "tuple_type": "a list is wanted here, each item on a line of its own after a dash",
    "list_type": "a list is wanted here, each item on a line of its own after a dash",
    "finite_number": "an ordinary number is wanted here",
    "string_too_short": "this is empty",
}

_PATTERNS = {
    "website": ("this is not a web address", "Write one that starts with https://"),
    "country": ("this is not a country code", "Write one such as GB-ENG or US"),
    "currency": ("this is not a currency code", "Write three letters such as GBP or USD"),
    "id": (
        "this cannot be used as a name that stays",
        "Use small letters, figures and hyphens, such as autumn-cores",
    ),
}


def explain(error: ErrorDetails) -> tuple[Path, str, str]:
    """Return the path to the spot, what is wrong there, and what would be right."""
    path: Path = tuple(error["loc"])
    kind, context = error["type"], error.get("ctx", {})
    key = str(path[-1]) if path else "plan"
    if kind == "missing":
        field = _fields(path[:-1]).get(key)
        what = (field.description or "").rstrip(".") if field else ""
        return path, f'"{key}" is missing', f"Add it: {what[:1].lower()}{what[1:]}" if what else ""
    if kind == "extra_forbidden":
        known = list(_fields(path[:-1]))
        guess = nearest(key, known)
        return (
            path,
            f'there is no key "{key}" here',
            f'Did you mean "{guess}"?' if guess else f"Known are {_list(known)}",
        )
    if kind == "value_error":
        return path, *_own(str(context["error"]))
    if kind == "literal_error":
        choices = [choice.strip("'") for choice in _choices(str(context["expected"]))]
        guess = nearest(str(error["input"]), choices)
        return (
            path,
            f'"{error["input"]}" is not one of the choices',
            f'Did you mean "{guess}"?' if guess else f"Write {_list(choices, 'or')}",
        )
    if kind == "string_pattern_mismatch" and key in _PATTERNS:
        return path, *_PATTERNS[key]
    if kind in ("too_short", "too_long"):
        count = context["actual_length"]
        if key == "monthly_mean_temperature":
            return path, f"{count} monthly means are given", "Write twelve, January first"
        return path, f"{count} items are given", "Write at least one"
    if kind in _WANTED:
        return path, _WANTED[kind], ""
    return path, error["msg"][:1].lower() + error["msg"][1:], _limits(context)


def _own(message: str) -> tuple[str, str]:
    """Our parsers say what is wrong, a colon, and what would be right."""
    return message, ""


def _limits(context: Mapping[str, Any]) -> str:
    for name, words in (
        ("ge", "at least"),
        ("gt", "more than"),
        ("le", "at most"),
        ("lt", "under"),
    ):
        if name in context:
            return f"Write {words} {context[name]:g}"
    if "max_length" in context:
        return f"Write at most {context['max_length']} characters"
    return ""


def _choices(expected: str) -> list[str]:
    return expected.replace(" or ", ", ").split(", ")


def _list(words: list[str], last: str = "and") -> str:
    return f" {last} ".join(filter(None, [", ".join(words[:-1]), words[-1]]))


def _fields(path: Path) -> dict[str, FieldInfo]:
    """Return the fields of the part of the plan that lies at this path, by the typed name."""
    model: type[BaseModel] = Plan
    for step in path:
        if isinstance(step, int):
            continue
        field = next(
            (f for n, f in model.model_fields.items() if step in (n, f.alias)),
            None,
        )
        inner = _model_in(field.annotation) if field else None
        if inner is None:
            return {}
        model = inner
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """Find the one model inside Optional, tuple and Annotated."""
    # tuple[X, ...] passes for a type too: only its origin tells it from a class.
    if isinstance(annotation, type) and typing.get_origin(annotation) is None:
        return annotation if issubclass(annotation, BaseModel) else None
    for argument in typing.get_args(annotation):
        if found := _model_in(argument):
            return found
    return None
