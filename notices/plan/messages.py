"""What pydantic found, in words for the person who typed the plan.

Pydantic names each kind of error, and `_SENTENCES` has a small function for every kind that a plan
can meet. None of pydantic's own English reaches a person: a kind that nobody thought of gets a
sentence that is true of all of them.
"""

from __future__ import annotations

import typing
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from notices.operations import CATALOGUE
from notices.plan.descriptions import description
from notices.plan.model import FORMAT_VERSION, Plan
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal

Path = tuple[str | int, ...]
Sentences = tuple[str, str]
"""What is wrong, and what would be right; both without a full stop."""


@dataclass(frozen=True, slots=True)
class _Error:
    """One of pydantic's errors, with what it stands on."""

    path: Path
    typed: object
    context: Mapping[str, object]

    @property
    def key(self) -> str:
        """The nearest word above the spot: its key, or that of the list it stands in."""
        return next((step for step in reversed(self.path) if isinstance(step, str)), "plan")


def explain(error: ErrorDetails) -> tuple[Path, str, str]:
    """Return the path to the spot, what is wrong there, and what would be right."""
    found = _Error(tuple(error["loc"]), error["input"], error.get("ctx", {}))
    message, suggestion = _SENTENCES.get(error["type"], _not_wanted)(found)
    return found.path, message, suggestion


def did_you_mean(word: str, known: Sequence[str], *, otherwise: str) -> str:
    """Return a question about the nearest of the known words, if one is near."""
    guess = nearest(word, known)
    return f'Did you mean "{guess}"?' if guess else otherwise


def listed(words: Sequence[str], last: str = "and") -> str:
    """Return words as a list in a sentence: "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def _missing(error: _Error) -> Sentences:
    model = model_at(error.path[:-1])
    sentence = description(model, _attribute(model, error.key)) if model else ""
    remedy = f"Add it: {sentence[:1].lower()}{sentence[1:]}" if sentence else "Add it"
    return f'"{error.key}" is missing', remedy


def _unknown_key(error: _Error) -> Sentences:
    model = model_at(error.path[:-1])
    known = list(_fields(model))
    message = f"there is no key {quoted(error.key)} here"
    if homes := [name for name, keys in _below(model) if error.key in keys]:
        homes = [quoted(home) for home in homes]
        return message, f"Put it under {listed(homes, 'or')}, further to the right"
    return (
        message,
        did_you_mean(error.key, known, otherwise=f"Known are {listed(known)}"),
    )


def _below(model: type[BaseModel] | None) -> Iterator[tuple[str, Collection[str]]]:
    """Return the single parts of a part of the plan, each with its keys; lists of parts are none."""
    for name, field in _fields(model).items():
        if name == "settings":
            yield name, {setting.name for kind in CATALOGUE.values() for setting in kind.settings}
        elif (part := _model_in(field.annotation)) and not _is_many(field.annotation):
            yield name, _fields(part)


def _own(error: _Error) -> Sentences:
    """Our readers say both themselves."""
    raised = error.context["error"]
    if not isinstance(raised, Refusal):
        # Pydantic takes any ValueError for a fault of what was typed; here it is a bug.
        raise TypeError(f"a reader raised {raised!r} and no Refusal")
    return raised.sentences


def _not_a_choice(error: _Error) -> Sentences:
    if error.path == ("notices",):
        return (
            f"this plan says that it is of format {quoted(error.typed)}",
            f"Write {FORMAT_VERSION}: it is the only format so far",
        )
    expected = str(error.context["expected"]).replace(" or ", ", ").split(", ")
    choices = [choice.strip("'") for choice in expected]
    typed = error.typed if isinstance(error.typed, str) else ""
    return (
        f"{_shown(error.typed)} is not one of the choices",
        did_you_mean(typed, choices, otherwise=f"Write {listed(choices, 'or')}"),
    )


_PATTERNS = {
    "website": ("is not a web address", "Write one that starts with https://"),
    "country": ("is not a country code", "Write one such as GB-ENG or US"),
    "currency": ("is not a currency code", "Write three capital letters such as GBP or USD"),
    "id": (
        "cannot be used as a name that stays",
        "Use small letters, figures and hyphens, such as autumn-cores",
    ),
}


def _pattern(error: _Error) -> Sentences:
    fault, remedy = _PATTERNS.get(error.key, ("is not what is wanted here", ""))
    return f"{quoted(error.typed)} {fault}", remedy


def _wanted(wanted: str, remedy: str) -> Callable[[_Error], Sentences]:
    return lambda error: (f"{_shown(error.typed)} is not {wanted}", remedy)


def _text(error: _Error) -> Sentences:
    if isinstance(error.typed, bool):
        word = quoted(error.typed)
        return f"{word} without quotes is not text", f"Write {word} with the quotation marks"
    return f"{_shown(error.typed)} is not text", "Write a word or a sentence"


def _block(error: _Error) -> Sentences:
    keys = list(_fields(model_at(error.path)))
    remedy = f"Write keys such as {listed(keys[:3], 'or')}" if keys else "Write keys"
    return (
        f"{_shown(error.typed)} stands where a block of keys is wanted",
        f"{remedy}, each with its value on a line of its own",
    )


def _list(error: _Error) -> Sentences:
    return (
        f"{_shown(error.typed)} stands where a list is wanted",
        "Put each item on a line of its own, after a dash and a space",
    )


def _shown(typed: object) -> str:
    if isinstance(typed, dict):
        return "a block of keys"
    return "a list" if isinstance(typed, list) else quoted(typed)


def _nothing(_error: _Error) -> Sentences:
    return "there is no text between these quotation marks", "Write some, or take the key out"


def _long(error: _Error) -> Sentences:
    return (
        f"this text has {len(str(error.typed))} characters, which is too long here",
        f"Write at most {error.context['max_length']}",
    )


def _count(error: _Error) -> Sentences:
    given = error.context.get("actual_length")
    if error.key == "monthly_mean_temperature":
        return f"{given or 'too many'} monthly means are given", "Write twelve, January first"
    return "this list is empty", "Write at least one item"


def _limit(name: str, words: str) -> Callable[[_Error], Sentences]:
    def sentences(error: _Error) -> Sentences:
        limit = error.context[name]
        write = f"{limit:g}" if isinstance(limit, int | float) else str(limit)
        return f"{quoted(error.typed)} is out of bounds", f"Write {words} {write}"

    return sentences


def _not_wanted(error: _Error) -> Sentences:
    return f"{_shown(error.typed)} is not what is wanted here", "Compare it with an example plan"


_whole_number = _wanted("a whole number", "Write one such as 3")
_number = _wanted("a number", "Write one such as 4.5")
_truth = _wanted("true or false", "Write one of the two")

_SENTENCES: Mapping[str, Callable[[_Error], Sentences]] = {
    "missing": _missing,
    "extra_forbidden": _unknown_key,
    "value_error": _own,
    "literal_error": _not_a_choice,
    "string_pattern_mismatch": _pattern,
    "string_type": _text,
    "string_unicode": _text,
    "string_too_short": _nothing,
    "string_too_long": _long,
    "int_type": _whole_number,
    "int_parsing": _whole_number,
    "int_parsing_size": _whole_number,
    "int_from_float": _whole_number,
    "float_type": _number,
    "float_parsing": _number,
    "finite_number": _number,
    "bool_type": _truth,
    "bool_parsing": _truth,
    "model_type": _block,
    "dict_type": _block,
    "tuple_type": _list,
    "too_short": _count,
    "too_long": _count,
    "greater_than": _limit("gt", "more than"),
    "greater_than_equal": _limit("ge", "at least"),
    "less_than_equal": _limit("le", "at most"),
}


def _fields(model: type[BaseModel] | None) -> dict[str, FieldInfo]:
    """Return the fields of a part of the plan by the names under which they are typed."""
    fields = model.model_fields if model else {}
    return {field.alias or name: field for name, field in fields.items()}


def _attribute(model: type[BaseModel], key: str) -> str:
    return next((n for n, field in model.model_fields.items() if field.alias == key), key)


def model_at(path: Path) -> type[BaseModel] | None:
    """Return the part of the plan that lies at this path."""
    model: type[BaseModel] | None = Plan
    for step in path:
        if isinstance(step, str):
            field = _fields(model).get(step)
            model = _model_in(field.annotation) if field else None
    return model


def _is_many(annotation: object) -> bool:
    """Tell whether a field holds a list of parts."""
    return typing.get_origin(annotation) is tuple or any(map(_is_many, typing.get_args(annotation)))


def _model_in(annotation: object) -> type[BaseModel] | None:
    """Find the one model inside Optional, tuple and Annotated."""
    # tuple[X, ...] passes for a type too: only its origin tells it from a class.
    if isinstance(annotation, type) and typing.get_origin(annotation) is None:
        return annotation if issubclass(annotation, BaseModel) else None
    return next(filter(None, map(_model_in, typing.get_args(annotation))), None)
