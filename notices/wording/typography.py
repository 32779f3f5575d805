"""Typographic apostrophes and quotation marks in texts that a club typed.

A keyboard has the same keys for apostrophe, quotation mark, feet and inches. The characters beside
a mark decide; where they leave its meaning open, it stays as typed.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from notices.operations import Operation
from notices.programme.model import Programme
from notices.wording.language import Language

Record = TypeVar("Record")

_AS_TYPED = re.compile(
    r"`[^`]*`"  # code
    r"|\]\([^)\s]*(?:\s+\"[^\"]*\")?\)"  # target of a Markdown link
    r"|\b(?:[a-z][a-z0-9+.-]*://|www\.|mailto:|data:)[^\s<>\"]+"  # web addresses, up to a blank
    r"|[\w.+'-]+@[\w-]+(?:\.[\w-]+)+",  # mail
    re.IGNORECASE,
)
_LEFT_OUT = re.compile(
    # Words without their beginning, and years: an apostrophe in the place of an opening quote.
    r"'(?:\d\ds?\b|(?:tis|twas|twill|til|em|n|cause|bout|round|cept)\b)",
    re.IGNORECASE,
)
_INCHES = re.compile(r"(?:\d[/.]\d+|\d' ?\d+)\"$")
"""A mark that can only mean inches, even within quotation marks: 1/2", 0.5", 5' 6"."""
_OPENS_AFTER = frozenset(" \t\n\u00a0([{/—–-“‘\"'*_")
"""Characters that may come before an opening mark."""
_IDENTITIES = frozenset({"texts"})
"""Parts of a programme that hold texts with placeholders, set once those are filled."""


def typeset(text: str) -> str:
    """Return a text with typographic apostrophes and quotation marks.

    Only these marks change, and each becomes one character. Code, addresses, feet and inches
    (5' 6", 1/2") stay as typed, and so does a text with typographic marks.
    """
    if "'" not in text and '"' not in text:
        return text
    # Parts that stay are kept in place: a quotation may begin before an address and end after it.
    marks, free = list(text), [True] * len(text)
    for kept in _AS_TYPED.finditer(text):
        free[kept.start() : kept.end()] = [False] * len(kept[0])
    _set_doubles(marks, free)
    _set_singles(marks, free, text)
    return "".join(marks)


def _set_doubles(marks: list[str], free: list[bool]) -> None:
    """Pair double quotation marks; one without a partner stays as typed."""
    opened: int | None = None
    for at, sign in enumerate(marks):
        if sign != '"' or not free[at] or _INCHES.search("".join(marks[max(0, at - 8) : at + 1])):
            continue
        if opened is None:
            if _may_open(marks, at):
                opened = at
        elif at > opened + 1 and not marks[at - 1].isspace():
            marks[opened], marks[at] = "“", "”"
            opened = None
        elif _may_open(marks, at):
            opened = at


def _set_singles(marks: list[str], free: list[bool], text: str) -> None:
    for at, sign in enumerate(marks):
        if sign != "'" or not free[at]:
            continue
        if _may_open(marks, at) and not _LEFT_OUT.match(text, at):
            end = _closing(marks, free, at)
            marks[at] = "‘" if end else "’"
            if end:
                marks[end] = "’"
        elif not _is_of_feet(marks, at):
            marks[at] = "’"


def _closing(marks: list[str], free: list[bool], opened: int) -> int:
    """Return the index of the mark that closes a single quotation; 0 if there is none."""
    for at in range(opened + 2, len(marks)):
        if marks[at] == "'" and free[at] and not marks[at - 1].isspace():
            after = marks[at + 1] if at + 1 < len(marks) else " "
            if not after.isalnum():
                return at
    return 0


def _may_open(marks: list[str], at: int) -> bool:
    before = marks[at - 1] if at else " "
    after = marks[at + 1] if at + 1 < len(marks) else " "
    return before in _OPENS_AFTER and not after.isspace()


def _is_of_feet(marks: list[str], at: int) -> bool:
    after = marks[at + 1] if at + 1 < len(marks) else " "
    return at > 0 and marks[at - 1].isdigit() and not after.isalpha()


def set_programme(programme: Programme) -> Programme:
    """Return a programme with typographic marks in all texts that the club typed.

    Names are changed wherever they occur, so that look-ups by name still work.
    """
    printed: Programme = _Setter().set(programme)
    return printed


def in_language(record: Record, language: Language) -> Record:
    """Return a record with every text in it adapted to a language."""
    if language.with_percent("1 %") == "1 %":
        return record
    written: Record = _Setter(language.with_percent).set(record)
    return written


class _Setter:
    """Changes every text in a tree of records, and leaves a record without changes as it is."""

    def __init__(self, change: Callable[[str], str] = typeset) -> None:
        self._change = change
        self._done: dict[int, tuple[Any, Any]] = {}

    def set(self, value: Any) -> Any:  # noqa: ANN401, whatever a programme holds
        if type(value) is str:
            return self._change(value)
        if not isinstance(value, tuple | list | frozenset | Mapping) and not (
            dataclasses.is_dataclass(value) and not isinstance(value, type)
        ):
            return value
        known = self._done.get(id(value))
        if known is None:
            # The old value is kept beside the new one, so that nothing else gets its id.
            known = self._done[id(value)] = (value, self._set_parts(value))
        return known[1]

    def _set_parts(self, value: Any) -> Any:  # noqa: ANN401
        if isinstance(value, Operation):
            return value
        if isinstance(value, Mapping):
            pairs = {self.set(key): self.set(item) for key, item in value.items()}
            same = all(
                key is old and pairs[key] is value[old]
                for key, old in zip(pairs, value, strict=True)
            )
            return value if same else pairs
        if isinstance(value, tuple | list | frozenset):
            items = [self.set(item) for item in value]
            if all(new is old for new, old in zip(items, value, strict=True)):
                return value
            return value._make(items) if hasattr(value, "_make") else type(value)(items)
        changed = {}
        for field in dataclasses.fields(value):
            old = getattr(value, field.name)
            if field.name not in _IDENTITIES and (new := self.set(old)) is not old:
                changed[field.name] = new
        return dataclasses.replace(value, **changed) if changed else value
