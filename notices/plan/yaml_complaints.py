"""What PyYAML says of a file that it cannot read, put into words for a greenkeeper.

Its two parsers, the one in C and the one in Python, use the same words but for a few. Every look
below knows one family of mistakes, and the first that recognises the complaint answers.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import yaml

from notices.plan.nearest import quoted

Position = tuple[int, int]
"""Line and column, counted from 1."""
Remedy = tuple[Position, str, str]
"""Where to look, what is wrong there, what would be right."""

_GLUED_KEY = re.compile("[ ]*(?:-[ ]+)?([A-Za-z_]+):([^ /:].*)")


class _Mark(Protocol):
    """What the marks of PyYAML's two parsers have in common."""

    line: int
    column: int


def position(mark: _Mark | None) -> Position:
    """Return where a mark of PyYAML stands."""
    return (mark.line + 1, mark.column + 1) if mark else (1, 1)


@dataclass(frozen=True, slots=True)
class _Complaint:
    """What PyYAML says of a file that it cannot read, in either of its parsers' words."""

    problem: str
    context: str
    at: Position
    opened: Position
    lines: Sequence[str]

    def line(self, number: int) -> str:
        return self.lines[number - 1] if 1 <= number <= len(self.lines) else ""

    def sign(self, at: Position) -> str:
        return self.line(at[0])[at[1] - 1 : at[1]]

    @property
    def before(self) -> str:
        """What stands in the line before the spot."""
        return self.line(self.at[0])[: self.at[1] - 1]

    def says(self, *parts: str) -> bool:
        return any(part in self.problem for part in parts)


_IN_QUOTES = "Put the whole text in quotes"


def in_plain_words(error: yaml.MarkedYAMLError, lines: Sequence[str]) -> Remedy:
    """Return where to look in the file, what is wrong there, and what would be right."""
    at = position(error.problem_mark or error.context_mark)
    opened = position(error.context_mark) if error.context_mark else at
    complaint = _Complaint(str(error.problem or ""), str(error.context or ""), at, opened, lines)
    looks = (
        _about_signs,
        _about_brackets,
        _about_glued_keys,
        _about_texts,
        _about_colons,
        _about_lines,
    )
    found = next(filter(None, (look(complaint) for look in looks)), None)
    return found or (at, "this line cannot be read as YAML", "Compare it with the lines around it")


def _about_signs(complaint: _Complaint) -> Remedy | None:
    at, sign = complaint.at, complaint.sign(complaint.at)
    if sign == "\t" or complaint.says("tab character"):
        return at, "a tab stands here", "Use spaces to move a line to the right"
    if complaint.says("cannot start any token"):
        return at, f"a text cannot begin with {sign}", _IN_QUOTES
    if complaint.says("escape", "hexdecimal"):  # their spelling
        return (
            at,
            "a backslash in double quotes must be doubled",
            "Double it, or put the text in single quotes",
        )
    return None


def _about_brackets(complaint: _Complaint) -> Remedy | None:
    """Look for what was opened and not closed; the place to mend is where it was opened."""
    (line, column), opened = complaint.at, complaint.opened
    if "quoted" in complaint.context and complaint.says("unexpected"):
        return opened, "the quotation mark opened here is never closed", "Close it"
    if "flow" in complaint.context and complaint.says("',' or"):
        bracket = complaint.sign(opened)
        message = (
            f"the {bracket} opened here is not closed, "
            f"or a comma is missing before line {line}, column {column}"
        )
        close = "]" if bracket == "[" else "}"
        return opened, message, f"Close it with {close}, and part what is in it with commas"
    if "node" in complaint.context and complaint.says("node content"):
        sign = complaint.sign(complaint.at)
        if not sign.strip():
            return complaint.at, "something is opened and never closed", "Close every bracket"
        return complaint.at, f"{sign} cannot stand here", "Take it out, or put the text in quotes"
    return None


def _about_glued_keys(complaint: _Complaint) -> Remedy | None:
    """Find "name:Marlpit", after which YAML complains somewhere else, usually a line below."""
    last = complaint.at[0]
    above = next((n for n in range(last - 1, 0, -1) if complaint.line(n).strip()), 0)
    for number in (complaint.opened[0], above, last):
        if glued := _GLUED_KEY.match(complaint.line(number)):
            key, rest = glued[1], quoted(glued[2])[1:-1]
            message = f'a space is missing after the colon of "{key}"'
            return (number, glued.end(1) + 1), message, f"Write {key}: {rest}"
    return None


def _about_texts(complaint: _Complaint) -> Remedy | None:
    """Look for texts that begin with a sign that means something to YAML."""
    at, opened = complaint.at, complaint.opened
    if "directive" in complaint.context or complaint.says("directive", "document start"):
        if complaint.line(at[0]).startswith("%"):
            return (at[0], 1), "a line cannot begin with %", _IN_QUOTES
        return at, "something stands here after the end of the plan", "Take it out"
    starts = ("alias", "anchor", "tag", "block scalar")
    if any(word in complaint.context for word in starts) or complaint.says("tag"):
        return opened, f"a text cannot begin with {complaint.sign(opened)}", _IN_QUOTES
    return None


def _about_colons(complaint: _Complaint) -> Remedy | None:
    at, before = complaint.at, complaint.before
    if complaint.says("mapping values are not allowed"):
        if ": " in before:
            remedy = "Put a text with a colon in quotes, or begin a new line"
            return at, "a second colon stands in this line", remedy
        remedy = "Check that it begins below its neighbours, and that the line above is complete"
        return at, "this line does not fit below the line above it", remedy
    if complaint.says("could not find expected ':'"):
        return complaint.opened, "a colon is missing in this line", "Write it as key: value"
    return None


def _about_lines(complaint: _Complaint) -> Remedy | None:
    """Look at dashes, and at the spaces that begin a line."""
    at, before = complaint.at, complaint.before
    if complaint.says("sequence entries are not allowed"):
        return at, "a dash cannot stand here", "Begin a list on a line of its own"
    if "block" not in complaint.context:
        return None
    if before.strip(" -"):
        remedy = f"{_IN_QUOTES}, and use other quotes inside it"
        return at, "this does not belong to the value before it", remedy
    remedy = "Move it right or left until it begins below the lines that it belongs with"
    return at, "this line begins neither below its neighbours nor inside them", remedy
