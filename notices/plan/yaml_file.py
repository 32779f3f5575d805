"""A plan file read into plain data that remembers where each part of it stands.

The plan is a small, safe corner of YAML: one document of blocks, lists and plain values. What
would surprise a greenkeeper, or make two readers of one file disagree, is refused: aliases, tags,
merge keys, doubled keys.

Values without quotes are read as follows; everything else is text as typed.

===========================  =====================================================
``true``, ``false``          a truth value, in any case; ``yes``, ``no``, ``on`` are text
``~``, ``null``, nothing     no value
``12``, ``-3``               a whole number: plain digits, no leading zeros, at most 15
``0.55``, ``-2.20``          a number with a decimal point
===========================  =====================================================

So ``2026-09-31``, ``08:30``, ``1_000``, ``1e3`` and ``007`` stay text. A name such as ``1.50``
becomes the number 1.5; `PlanSource.typed` still has it as typed.

The file is read event by event, not with PyYAML's composer: that one recurses, and follows
aliases as often as they are named.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from notices.errors import PlanFault
from notices.findings import Finding, Place
from notices.plan.nearest import quoted
from notices.plan.plan_file import file_bytes, finding, refuse
from notices.plan.source import (
    INVISIBLE,
    MOST_ENTRIES,
    MOST_FAULTS,
    PlainData,
    PlanPath,
    PlanSource,
    Spot,
    placed,
)
from notices.plan.yaml_complaints import Position, in_plain_words, position

LARGEST_FILE = 1_000_000
DEEPEST_NESTING = 50
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_INT = re.compile("-?(?:0|[1-9][0-9]{0,14})")
_FLOAT = re.compile(r"-?(?:0|[1-9][0-9]{0,14})\.[0-9]{1,20}")


def read_yaml(path: Path, content: bytes | None = None) -> PlanSource:
    """Read a plan file, or what is about to be written into it.

    Keys that stand twice are among the findings of what is returned.

    Raises
    ------
    PlanFault
        With every fault that could be told from the others, where the file cannot be read further;
        nothing else is raised for any file.
    """
    file = str(path)
    text = _text(file_bytes(path, LARGEST_FILE) if content is None else content, file)
    return _Reader(text, file).read()


def _text(data: bytes, file: str) -> str:
    """Decode the file, or say which byte or letter stands in the way."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff", b"\x00\x00\xfe\xff")):
        refuse(
            "file-not-utf8",
            Place(file, 1, 1),
            "this file is saved as UTF-16, which we cannot read",
            "Save it again with the encoding UTF-8",
        )
    if b"\x00" in data:
        refuse(
            "file-not-text",
            Place(file),
            "this is not a text file",
            "A plan is written with a text editor and saved as plain text",
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # The error counts from after a byte order mark, if there is one.
        body = data.removeprefix(b"\xef\xbb\xbf")
        before = body[: error.start].decode("utf-8")
        refuse(
            "file-not-utf8",
            _place_at(body.decode("utf-8", "replace"), len(before), file),
            f"the byte {body[error.start]:02X} here is not UTF-8",
            "Save the file again with the encoding UTF-8",
        )
    if invisible := INVISIBLE.search(text):
        refuse(
            "invisible-character",
            _place_at(text, invisible.start(), file),
            f"an invisible character (U+{ord(invisible[0]):04X}) stands here",
            "Delete it",
        )
    return text


def _place_at(text: str, index: int, file: str) -> Place:
    before = _lines(text[:index])
    return placed(file, (len(before), len(before[-1]) + 1), _lines(text))


def _lines(text: str) -> list[str]:
    """Part the text where YAML does; str.splitlines parts at more signs than these."""
    return re.split("\r\n|\r|\n", text)


_NO_KEY: Any = object()


@dataclass(slots=True)
class _Frame:
    """A block or list that is still being read."""

    data: Any
    spot: Spot
    flow: bool
    key: Any = _NO_KEY
    key_spot: Spot | None = None
    key_end: int = 0


class _Reader:
    """Builds the data from the events of one document and gathers the faults on the way."""

    def __init__(self, text: str, file: str) -> None:
        self._text = text
        self._lines = _lines(text)
        self._file = file
        self._stack: list[_Frame] = []
        self._findings: list[Finding] = []
        self._root: tuple[Any, Spot] | None = None
        self._documents = 0

    def read(self) -> PlanSource:
        try:
            for event in yaml.parse(self._text, Loader=_LOADER):
                self._take(event)
        except yaml.MarkedYAMLError as error:
            self._take_complaint(error)
        except (yaml.YAMLError, ValueError, OverflowError):
            # Only PyYAML without its C part comes here: escapes such as "\UFFFFFFFF".
            self._fault((1, 1), "yaml-syntax", "this file cannot be read as YAML")
        # A key that stands twice leaves the rest readable, whose faults are then told with it.
        if any(found.code != "doubled-key" for found in self._findings):
            self._stop_at_faults()
        if self._root is None or (self._root[0] is None and not self._root[1].typed):
            refuse(
                "plan-empty",
                Place(self._file, 1, 1),
                "there is nothing in this file",
                'Start a plan with "notices new"',
            )
        data, spot = self._root
        if not isinstance(data, dict):
            refuse(
                "plan-not-a-block",
                placed(self._file, (spot.line, spot.column), self._lines),
                "a plan consists of keys with their values, and this is "
                + ("a list" if isinstance(data, list) else "a single value"),
                'Begin with a line such as "club:"',
            )
        return PlanSource(data, self._file, spot, self._lines, tuple(self._findings))

    def _take_complaint(self, error: yaml.MarkedYAMLError) -> None:
        if "nesting depth" in str(error.problem):  # the C parser's own limit, met looking ahead
            self._refuse_depth(position(error.problem_mark))
        at, message, suggestion = in_plain_words(error, self._lines)
        self._fault(at, "yaml-syntax", message, suggestion)
        self._stop_at_faults()

    def _refuse_depth(self, at: Position) -> None:
        message = f"this lies more than {DEEPEST_NESTING} levels deep"
        self._fault(at, "nested-too-deep", message, "A plan needs no more than a few")
        self._stop_at_faults()

    def _take(self, event: yaml.Event) -> None:
        match event:
            case yaml.DocumentStartEvent():
                self._documents += 1
                if self._documents > 1:
                    self._fault(
                        position(event.start_mark),
                        "several-documents",
                        "a second document begins here",
                        'Keep one plan in a file, and take out the line "---"',
                    )
                    self._stop_at_faults()
            case yaml.AliasEvent():
                self._fault(
                    position(event.start_mark),
                    "yaml-alias",
                    f'"*{event.anchor}" stands for something written elsewhere, '
                    "which a plan cannot do",
                    "Write it out, or put it in quotes if it is meant as text",
                )
                self._attach(event, None, Spot(*position(event.start_mark)))
            case yaml.ScalarEvent():
                self._check_properties(event)
                self._scalar(event)
            case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                self._check_properties(event)
                self._open(event)
            case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                frame = self._stack.pop()
                self._attach(event, frame.data, frame.spot)
            case _:
                pass

    def _check_properties(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> None:
        if event.anchor is not None:
            self._fault(
                position(event.start_mark),
                "yaml-alias",
                f'"&{event.anchor}" names a part for use elsewhere, which a plan cannot do',
                "Take it out, or put the text in quotes",
            )
        if event.tag is not None:
            self._fault(
                position(event.start_mark),
                "yaml-tag",
                "a text that begins with ! is a tag, which a plan cannot have",
                "Take it out, or put the text in quotes",
            )

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        text, plain = event.value, event.implicit[0]
        spot = Spot(*position(event.start_mark), typed=text)
        if INVISIBLE.search(text):  # written as an escape such as "\0"
            self._fault(
                position(event.start_mark),
                "invisible-character",
                "this text holds an invisible character",
                "Take out the escape that begins with a backslash",
            )
        is_key = bool(self._stack) and self._wants_key(self._stack[-1])
        if is_key and plain and text == "<<":
            self._fault(
                position(event.start_mark),
                "yaml-merge-key",
                '"<<" takes in keys written elsewhere, which a plan cannot do',
                "Write the keys out",
            )
        self._attach(event, _value(text) if plain else text, spot)

    def _open(self, event: yaml.CollectionStartEvent) -> None:
        if len(self._stack) >= DEEPEST_NESTING:
            self._refuse_depth(position(event.start_mark))
        spot = Spot(*position(event.start_mark))
        data: Any
        if isinstance(event, yaml.MappingStartEvent):
            data, spot.children = {}, {}
        else:
            data, spot.children = [], []
        self._stack.append(_Frame(data, spot, bool(event.flow_style)))

    @staticmethod
    def _wants_key(frame: _Frame) -> bool:
        return isinstance(frame.data, dict) and frame.key is _NO_KEY

    def _attach(self, event: yaml.Event, value: PlainData, spot: Spot) -> None:
        """Put a finished value where it belongs: into the list or block that is open."""
        if not self._stack:
            self._root = (value, spot)
            return
        frame = self._stack[-1]
        if len(frame.data) >= MOST_ENTRIES:
            message = f"this is entry {MOST_ENTRIES + 1:,} of its list or block"
            self._fault((spot.line, spot.column), "too-many-entries", message, "Write fewer")
            self._stop_at_faults()
        if isinstance(frame.spot.children, list):
            frame.data.append(value)
            frame.spot.children.append(spot)
        elif frame.key is _NO_KEY:
            frame.key, frame.key_spot = value, spot
            frame.key_end = event.end_mark.index if event.end_mark else 0
        else:
            self._entry(frame, value, spot)
            frame.key = _NO_KEY

    def _entry(self, frame: _Frame, value: PlainData, spot: Spot) -> None:
        key, key_spot, children = frame.key, frame.key_spot, frame.spot.children
        if key_spot is None or not isinstance(children, dict):  # for the type checker
            return
        mark = (key_spot.line, key_spot.column)
        if self._is_cut_off(frame, value, spot):
            self._fault(
                mark,
                "yaml-syntax",
                f"{quoted(key_spot.typed or '')} has no colon: within {{ }} a comma ends a text",
                "Put a text with commas in quotes",
            )
        elif not isinstance(key, str):
            typed = key_spot.typed
            missing = typed == ""
            what = "this key" if typed is None else f"the key {quoted(typed)}"
            self._fault(
                mark,
                "key-not-text",
                "a key is missing before the colon" if missing else f"{what} is not a word",
                "Write a word before the colon" + ("" if missing else ", or put it in quotes"),
            )
        elif key in children:
            first = children[key].key or (0, 0)
            self._fault(
                mark,
                "doubled-key",
                f"the key {quoted(key)} stands here a second time, after line {first[0]}",
                "Keep one of the two",
                (*self._path(), key),
            )
        else:
            spot.key = mark
            frame.data[key] = value
            children[key] = spot

    def _is_cut_off(self, frame: _Frame, value: PlainData, spot: Spot) -> bool:
        """Tell "{name: Smith, Jones}", which YAML reads as a key "Jones" without a value."""
        if not frame.flow or value is not None or spot.typed != "":
            return False
        return not self._text[frame.key_end : frame.key_end + 200].lstrip().startswith(":")

    def _path(self) -> PlanPath:
        return tuple(
            frame.key if isinstance(frame.data, dict) else len(frame.data)
            for frame in self._stack[:-1]
        )

    def _fault(
        self,
        at: Position,
        code: str,
        message: str,
        suggestion: str = "",
        path: PlanPath = (),
    ) -> None:
        place = placed(self._file, at, self._lines)
        self._findings.append(finding(code, place, message, suggestion, path))
        if len(self._findings) >= MOST_FAULTS:
            self._stop_at_faults()

    def _stop_at_faults(self) -> None:
        if self._findings:
            raise PlanFault(self._findings)


def _value(text: str) -> PlainData:
    """Read a value without quotes; see the table at the top of this module."""
    if text in ("", "~") or text.lower() == "null":
        return None
    if text.lower() in ("true", "false"):
        return text.lower() == "true"
    if _INT.fullmatch(text):
        return int(text)
    if _FLOAT.fullmatch(text):
        return float(text)
    return text
