from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, get_args

import pytest
from pydantic import BaseModel, BeforeValidator, TypeAdapter, ValidationError
from pydantic_core import ErrorDetails
from pydantic_core.core_schema import ErrorType

from notices.plan import descriptions, messages
from notices.plan.descriptions import description
from notices.plan.messages import did_you_mean, explain, listed
from notices.plan.model import Club, Part, Plan, Restriction

PLAN: dict[str, Any] = {
    "club": {"name": "Tansy Down"},
    "course": {"greens": [{"green": "1-9"}]},
    "works": [{"operation": "hollow tining", "dates": "2027-08-16"}],
}


def found(**changed: object) -> list[tuple[str, str, str]]:
    """The kind of each error, and what we say of it."""
    with pytest.raises(ValidationError) as caught:
        Plan.model_validate(PLAN | changed)
    return [(error["type"], *explain(error)[1:]) for error in caught.value.errors()]


def club(**keys: object) -> dict[str, object]:
    return {"club": {"name": "Tansy Down", **keys}}


def place(latitude: object) -> dict[str, object]:
    return club(place={"latitude": latitude, "longitude": 0, "timezone": "UTC"})


def test_an_error_that_no_reader_meant_is_a_bug() -> None:
    def broken(_typed: object) -> object:
        raise ValueError("math domain error")

    with pytest.raises(ValidationError) as caught:
        TypeAdapter(Annotated[object, BeforeValidator(broken)]).validate_python("x")
    with pytest.raises(TypeError, match="math domain error"):
        explain(caught.value.errors()[0])


@pytest.mark.parametrize(
    ("changed", "kind", "message", "suggestion"),
    [
        (
            {"club": {}},
            "missing",
            '"name" is missing',
            "Add it: full name of the club",
        ),
        (
            club(nmae="x"),
            "extra_forbidden",
            'there is no key "nmae" here',
            'Did you mean "name"?',
        ),
        (
            {"issued": "2027-02-30"},
            "value_error",
            "2027-02-30 does not exist",
            "February 2027 has 28 days",
        ),
        (
            club(units="metrical"),
            "literal_error",
            '"metrical" is not one of the choices',
            'Did you mean "metric"?',
        ),
        (
            club(units="feet"),
            "literal_error",
            '"feet" is not one of the choices',
            "Write metric or imperial",
        ),
        (
            club(units=["metric"]),
            "literal_error",
            "a list is not one of the choices",
            "Write metric or imperial",
        ),
        (
            {"notices": 3},
            "literal_error",
            'this plan says that it is of format "3"',
            "Write 1: it is the only format so far",
        ),
        (
            club(currency="gbp"),
            "string_pattern_mismatch",
            '"gbp" is not a currency code',
            "Write three capital letters such as GBP or USD",
        ),
        (
            {"club": {"name": False}},
            "string_type",
            '"false" without quotes is not text',
            'Write "false" with the quotation marks',
        ),
        (
            {"club": {"name": {"first": "x"}}},
            "string_type",
            "a block of keys is not text",
            "Write a word or a sentence",
        ),
        (
            {"club": {"name": "\ud800"}},
            "string_unicode",
            '" " is not text',
            "Write a word or a sentence",
        ),
        (
            {"club": {"name": "  "}},
            "string_too_short",
            "there is no text between these quotation marks",
            "Write some, or take the key out",
        ),
        (
            {"club": {"name": "x" * 2001}},
            "string_too_long",
            "this text has 2001 characters, which is too long here",
            "Write at most 2000",
        ),
        (
            {"crew": {"people": "five"}},
            "int_parsing",
            '"five" is not a whole number',
            "Write one such as 3",
        ),
        (
            {"crew": {"people": [5]}},
            "int_type",
            "a list is not a whole number",
            "Write one such as 3",
        ),
        (
            {"crew": {"people": 4.5}},
            "int_from_float",
            '"4.5" is not a whole number',
            "Write one such as 3",
        ),
        (
            {"crew": {"people": "9" * 5000}},
            "int_parsing_size",
            f'"{"9" * 59}…" is not a whole number',
            "Write one such as 3",
        ),
        ({"crew": {"people": 0}}, "greater_than_equal", '"0" is out of bounds', "Write at least 1"),
        (
            {"crew": {"people": 201}},
            "less_than_equal",
            '"201" is out of bounds',
            "Write at most 200",
        ),
        (
            {"crew": {"people": True}},
            "value_error",
            '"true" is not a number',
            "Write one such as 4",
        ),
        (place("52 N"), "float_parsing", '"52 N" is not a number', "Write one such as 4.5"),
        (place({}), "float_type", "a block of keys is not a number", "Write one such as 4.5"),
        (place("nan"), "finite_number", '"nan" is not a number', "Write one such as 4.5"),
        (place(-90.5), "greater_than_equal", '"-90.5" is out of bounds', "Write at least -90"),
        (
            {"club": "Tansy Down"},
            "model_type",
            '"Tansy Down" stands where a block of keys is wanted',
            "Write keys such as name, sender or reply_to, each with its value on a line of its own",
        ),
        (
            {"works": {"operation": "brushing"}},
            "tuple_type",
            "a block of keys stands where a list is wanted",
            "Put each item on a line of its own, after a dash and a space",
        ),
        (
            {"course": {"greens": []}},
            "too_short",
            "this list is empty",
            "Write at least one item",
        ),
    ],
)
def test_what_pydantic_finds_is_said_in_our_words(
    changed: dict[str, object], kind: str, message: str, suggestion: str
) -> None:
    assert found(**changed) == [(kind, message, suggestion)]


def work(**keys: object) -> dict[str, object]:
    return {"works": [{"operation": "hollow tining", "dates": "2027-08-16", **keys}]}


@pytest.mark.parametrize(
    ("changed", "kind", "message", "suggestion"),
    [
        (
            work(services_checked="perhaps"),
            "bool_parsing",
            '"perhaps" is not true or false',
            "Write one of the two",
        ),
        (
            work(services_checked=[]),
            "bool_type",
            "a list is not true or false",
            "Write one of the two",
        ),
        (
            work(settings="13 mm"),
            "dict_type",
            '"13 mm" stands where a block of keys is wanted',
            "Write keys, each with its value on a line of its own",
        ),
        (
            {
                "crew": {
                    "people": 5,
                    "machines": [
                        {
                            "operation": "rolling",
                            "width": "1 m",
                            "speed": "5 km/h",
                            "efficiency": "0 %",
                        }
                    ],
                }
            },
            "greater_than",
            '"0 %" is out of bounds',
            "Write more than 0",
        ),
    ],
)
def test_so_is_what_it_finds_further_in(
    changed: dict[str, object], kind: str, message: str, suggestion: str
) -> None:
    assert found(**changed) == [(kind, message, suggestion)]


@pytest.mark.parametrize(("count", "kind"), [(11, "too_short"), (13, "too_long")])
def test_months_are_twelve(count: int, kind: str) -> None:
    course = {"greens": [{"green": 1}], "monthly_mean_temperature": [4.0] * count}
    assert found(course=course) == [
        (kind, f"{count} monthly means are given", "Write twelve, January first")
    ]


# What pydantic can find amiss where its schema has a part of this kind (its documentation, "Usage
# errors" and "Validation errors"); the parts that only hold others find nothing themselves.
ERRORS_OF = {
    "str": "string_type string_unicode string_too_short string_too_long string_pattern_mismatch",
    "int": "int_type int_parsing int_parsing_size int_from_float greater_than_equal less_than_equal",
    "float": "float_type float_parsing finite_number greater_than greater_than_equal less_than_equal",
    "bool": "bool_type bool_parsing",
    "literal": "literal_error",
    "tuple": "tuple_type too_short too_long",
    "dict": "dict_type",
    "model": "model_type",
    "model-fields": "model_type missing extra_forbidden",
    "function-before": "value_error",
    "function-after": "value_error",
    "model-field": "",
    "definitions": "",
    "definition-ref": "",
    "default": "",
    "nullable": "",
    "any": "",
    "union": "",
    # Our readers stand before these and give them what they want.
    "date": "",
    "time": "",
    "enum": "",
    "dataclass": "",
    "dataclass-args": "",
    "dataclass-field": "",
    "is-instance": "",
    "lax-or-strict": "",
    "json-or-python": "",
    "function-plain": "",
    "chain": "",
}


def kinds_in(schema: object) -> Iterator[str]:
    if isinstance(schema, dict):
        # Who calls a validator stands in a part of its own.
        if isinstance(schema.get("type"), str) and schema["type"] not in ("no-info", "with-info"):
            yield schema["type"]
        for key, part in schema.items():
            if key not in ("serialization", "metadata"):
                yield from kinds_in(part)
    elif isinstance(schema, list | tuple):
        for part in schema:
            yield from kinds_in(part)


def test_every_kind_of_error_that_the_model_can_raise_has_its_sentence() -> None:
    Plan.model_rebuild(force=True)
    kinds = set(kinds_in(Plan.__pydantic_core_schema__))
    assert {"model-fields", "str", "tuple"} <= kinds
    assert kinds <= ERRORS_OF.keys()
    possible = {error for kind in kinds for error in ERRORS_OF[kind].split()}
    assert possible <= messages._SENTENCES.keys()


def test_every_sentence_is_for_a_kind_of_error_that_pydantic_knows() -> None:
    assert messages._SENTENCES.keys() <= set(get_args(ErrorType))


def test_a_kind_of_error_that_nobody_thought_of_is_still_said_in_our_words() -> None:
    error = ErrorDetails(
        type="url_parsing", loc=("club", "website"), msg="Input should be a URL", input="x"
    )
    assert explain(error) == (
        ("club", "website"),
        '"x" is not what is wanted here',
        "Compare it with an example plan",
    )


def test_a_key_is_called_by_the_name_under_which_it_is_typed() -> None:
    (error,) = found(restrictions=[{"what": "buggies", "dates": "2027-08-16", "exept": "x"}])
    assert error[2] == 'Did you mean "except"?'
    assert description(Restriction, "exception") == "Who may all the same"


def test_every_field_has_its_sentence() -> None:
    def parts(model: type[BaseModel]) -> Iterator[type[BaseModel]]:
        for part in model.__subclasses__():
            yield part
            yield from parts(part)

    found = list(parts(Part))
    assert Club in found
    for part in found:
        for field in part.model_fields:
            assert description(part, field), f"{part.__name__}.{field}"


def forget() -> None:
    """Read the sources again: other tests may have read them, and others will."""
    descriptions._classes.cache_clear()
    descriptions.descriptions.cache_clear()


def test_a_description_that_cannot_be_read_is_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    def gone(_: object) -> str:
        raise OSError

    forget()
    monkeypatch.setattr("inspect.getsource", gone)
    assert description(Club, "name") == ""
    assert found(club={}) == [("missing", '"name" is missing', "Add it")]
    forget()


@pytest.mark.parametrize(
    ("words", "text"),
    [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")],
)
def test_words_are_listed(words: list[str], text: str) -> None:
    assert listed(words) == text


def test_a_near_word_is_asked_for() -> None:
    assert did_you_mean("wroks", ["works", "club"], otherwise="") == 'Did you mean "works"?'
    assert did_you_mean("zzz", ["works", "club"], otherwise="None") == "None"
