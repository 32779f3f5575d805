"""Kinds of work that a club adds to the catalogue, with a text of its own for each."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Annotated, Any, Literal

from pydantic import Field, ValidationError, ValidationInfo, field_validator

from notices.operations import (
    CATALOGUE,
    REQUIRED_SECTIONS,
    Kind,
    Noticed,
    Opening,
    Operation,
    Setting,
    Weather,
)
from notices.plan.beside import read_beside
from notices.plan.fields import Number, Reopening, StateWhileWorking, Text
from notices.plan.nearest import quoted
from notices.plan.part import Part
from notices.plan.refusal import Refusal
from notices.plan.settings import read_settings

_NOTICED = {
    "hardly": Noticed.HARDLY,
    "a little": Noticed.A_LITTLE,
    "clearly": Noticed.CLEARLY,
}

_LIKE = {
    "holes": "deep solid tining",
    "slits": "slitting",
    "channels": "mole ploughing",
    "trenches": "drain trenching",
    "turf": "turfing",
}
"""For each way to open a green, the known kind of work whose settings and formulas serve it."""

_NAME = re.compile(r"[a-z][a-z ]{1,38}[a-z]")
_HEADING = re.compile(r"^## +(.+?) *$", re.MULTILINE)

LARGEST_TEXT = 20_000


class OwnOperation(Part):
    """A kind of work that the catalogue does not have."""

    name: Text
    """The trade's own term, in small letters."""
    opens: Literal["nothing", "holes", "slits", "channels", "trenches", "turf"] = "nothing"
    """What it does to the turf; decides which settings and figures it has."""
    text: Annotated[str, Field(min_length=1, max_length=LARGEST_TEXT)]
    """Markdown, or the name of a file beside the plan that holds it."""
    noticed: Literal["hardly", "a little", "clearly"] = "a little"
    """How much golfers notice it afterwards."""
    order: Annotated[Number, Field(ge=1, le=100)] = 50
    """Place among works of one day: scarifying has 20, hollow tining 50, rolling 90."""
    settings: Annotated[dict[str, Any], Field(default_factory=dict)]
    """Usual settings, which a work may change."""
    while_working: StateWhileWorking | None = None
    """What a green is to golfers on the day."""
    reopen: Reopening | None = None
    """When a green comes back into play."""
    filled: bool = False
    """Whether top dressing fills its holes."""
    removes_material: bool = False
    """Whether cores or thatch leave the green."""
    enters_ground: bool = True
    """Whether buried services must be located first."""
    product_label: bool = False
    """Whether a product's label decides."""

    @field_validator("name")
    @classmethod
    def _a_new_name(cls, name: str) -> str:
        words = " ".join(name.lower().split())
        if not _NAME.fullmatch(words):
            raise Refusal(f'"{name}" cannot name a kind of work', "use small letters and spaces")
        if words in CATALOGUE:
            raise Refusal(f'"{words}" is in the catalogue already', "take another name")
        return words

    @field_validator("text")
    @classmethod
    def _whole(cls, text: str) -> str:
        if file_named_in(text):
            return text  # load puts its words here
        headings = {heading.lower() for heading in _HEADING.findall(text)}
        missing = [
            f"{key}:"
            for key in ("title", "line")
            if not re.search(rf"^{key}: *\S", text, re.MULTILINE)
        ]
        missing += [name for name in REQUIRED_SECTIONS if name not in headings]
        if missing:
            raise Refusal(
                f"the text lacks {', '.join(missing)}",
                f"begin with title: and line:, "
                f"then a heading for each of {', '.join(f'## {name}' for name in REQUIRED_SECTIONS)}",
            )
        return text

    @field_validator("settings")
    @classmethod
    def _known_settings(cls, settings: dict[str, Any], info: ValidationInfo) -> dict[str, Any]:
        read, problems = read_settings(_like(str(info.data.get("opens"))), settings)
        if problems:
            raise Refusal(problems[0].message, problems[0].suggestion)
        return {name: settings[name] for name in read}

    def operation(self) -> Operation:
        """Return the entry that it makes in the catalogue."""
        like = _like(self.opens)
        usual = read_settings(like, self.settings)[0]
        return replace(
            like,
            name=self.name,
            order=round(self.order),
            noticed=_NOTICED[self.noticed],
            settings=tuple(
                replace(setting, default=usual.get(setting.name, setting.default))
                for setting in like.settings
            ),
            pace=None,
            while_working=self.while_working or like.while_working,
            reopen_days=like.reopen_days if self.reopen is None else self.reopen,
            filled=self.filled and like.opening is Opening.HOLES,
            removes_core=self.removes_material,
            enters_ground=self.enters_ground,
            weather=_weather(like, product_label=self.product_label),
            text=self.text,
        )


def _weather(like: Operation, *, product_label: bool) -> tuple[Weather, ...]:
    """Return what stops it; that it is no work for wet ground is for the club's own text to say."""
    usual = [limit for limit in like.weather if limit is not Weather.GROUND_NOT_WET]
    return (*usual, *([Weather.LABEL] if product_label else []))


def _like(opens: str) -> Operation:
    if opens in _LIKE:
        return CATALOGUE[_LIKE[opens]]
    return Operation(
        "work",
        order=50,
        opening=Opening.NONE,
        noticed=Noticed.HARDLY,
        settings=(Setting("product", Kind.WORDS),),
        reopen_days=0,
    )


def file_named_in(text: str) -> str:
    """Return the name of the file that holds the text, or "" where the text is here itself."""
    return text.strip() if "\n" not in text.strip() and text.strip().endswith(".md") else ""


def read_text(folder: Path, name: str) -> str:
    """Read a text that lies beside the plan.

    Raises
    ------
    Refusal
        When it cannot be read; the message is for a person.
    """
    data = read_beside(
        folder, name, what="a text", largest=LARGEST_TEXT, otherwise="say it in fewer words"
    )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Refusal(f"{quoted(name)} cannot be read", "save it as UTF-8 text") from None


def own_catalogue(typed: object) -> dict[str, Operation]:
    """Return the club's own kinds of work, as far as what was typed is in order."""
    found: dict[str, Operation] = {}
    for item in typed if isinstance(typed, list) else ():
        try:
            operation = OwnOperation.model_validate(item).operation()
        except ValidationError:
            continue  # the model says what is wrong
        found[operation.name] = operation
    return found


def whole_catalogue(typed: object) -> Mapping[str, Operation]:
    """Return the catalogue with the club's own kinds of work."""
    return {**CATALOGUE, **own_catalogue(typed)}
