"""Changes to the text of a plan that leave every other letter as it was.

A plan is its author's: comments, order and spaces stay. So nothing is written anew from the data;
each change is made at the marks between which a value stands.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

import yaml

from notices.plan.refusal import Refusal
from notices.plan.source import PlanPath

_BARE = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9 ._+%/()-]*[A-Za-z0-9.%)])?")
"""Texts that mean themselves without quotes, in blocks and within brackets."""

_MARK = "\ufeff"


class CannotEdit(Refusal):
    """The text is laid out in a way in which this change cannot be made."""


@dataclass(frozen=True, slots=True)
class _Edit:
    start: int
    end: int
    text: str


@dataclass(slots=True)
class PlanText:
    """The text of a plan that has been read and is in order, and the changes to it."""

    text: str
    _edits: list[_Edit] = field(default_factory=list)
    _root: yaml.MappingNode = field(init=False)
    _newline: str = field(init=False)
    _mark: str = field(init=False)

    def __post_init__(self) -> None:
        self._mark = _MARK if self.text.startswith(_MARK) else ""
        self.text = self.text.removeprefix(_MARK)
        self._newline = "\r\n" if "\r\n" in self.text else "\n"
        root = yaml.compose(self.text, Loader=yaml.SafeLoader)
        if not isinstance(root, yaml.MappingNode):
            raise CannotEdit("the plan is not a block of keys")
        self._root = root

    def result(self) -> str:
        """Return the text with all changes made."""
        text = self.text
        # From the end, so that the marks before stay true; what is inserted at one spot keeps
        # its order.
        for _, edit in sorted(enumerate(self._edits), key=_start_and_number, reverse=True):
            text = text[: edit.start] + edit.text + text[edit.end :]
        return self._mark + text

    def has(self, path: PlanPath) -> bool:
        """Whether something stands at a path."""
        try:
            self._at(path)
        except CannotEdit:
            return False
        return True

    def set(self, path: PlanPath, value: str) -> None:
        """Put a text in the place of a value."""
        node, flow = self._at(path)
        start, end = node.start_mark.index, _end(node)
        if isinstance(node, yaml.CollectionNode) and not node.flow_style:
            start = self._after_colon(path)
            value_text = f" {self._written(value, flow)}"
        else:
            value_text = self._written(value, flow)
        self._edits.append(_Edit(start, end, value_text))

    def set_block(self, path: PlanPath, entries: Mapping[str, str]) -> None:
        """Put a block in braces in the place of a value."""
        node, _ = self._at(path)
        start, block = node.start_mark.index, self._braces(entries)
        if isinstance(node, yaml.CollectionNode) and not node.flow_style:
            start, block = self._after_colon(path), f" {block}"
        self._edits.append(_Edit(start, _end(node), block))

    def rename(self, path: PlanPath, key: str) -> None:
        """Give an entry another key."""
        node = self._key(path)
        self._edits.append(
            _Edit(node.start_mark.index, node.end_mark.index, self._written(key, flow=True))
        )

    def remove(self, path: PlanPath) -> None:
        """Take an entry out of its block."""
        parent, _ = self._block(path[:-1])
        place = self._place_of(path, parent)
        key, value = parent.value[place]
        following = parent.value[place + 1][0] if place + 1 < len(parent.value) else None
        start, end = key.start_mark.index, _end(value)
        line = self.text.rfind("\n", 0, start) + 1
        if not parent.flow_style and not self.text[line:start].strip():
            start, end = line, self._line_end(end)
        elif following is not None:
            end = following.start_mark.index
        elif place:
            start = _end(parent.value[place - 1][1])
        else:
            raise CannotEdit(f'"{path[-1]}" stands alone in its block')
        self._edits.append(_Edit(start, end, ""))

    def add(self, path: PlanPath, key: str, value: str) -> None:
        """Add an entry to a block."""
        node, flow = self._block(path)
        written = f"{self._written(key, flow)}: {self._written(value, flow or node.flow_style)}"
        self._add_to_block(node, written)

    def add_block(self, path: PlanPath, key: str, entries: Mapping[str, str]) -> None:
        """Add an entry whose value is a block in braces."""
        node, flow = self._block(path)
        self._add_to_block(node, f"{self._written(key, flow)}: {self._braces(entries)}")

    def append(self, key: str, entries: Mapping[str, str]) -> None:
        """Add an item to a list at the top of the plan; the list is begun if there is none."""
        item = self._braces(entries)
        if not self.has((key,)):
            if self._root.flow_style:
                self._add_to_block(self._root, f"{self._written(key, flow=True)}: [{item}]")
            else:
                end = len(self.text.rstrip())
                start = f"{self._newline}{key}:{self._newline}  - {item}{self._newline}"
                self._edits.append(_Edit(end, len(self.text), f"{self._newline}{start}"))
            return
        node, _ = self._at((key,))
        if not isinstance(node, yaml.SequenceNode):
            raise CannotEdit(f'"{key}" is not a list')
        if node.flow_style:
            spot = _end(node.value[-1]) if node.value else node.start_mark.index + 1
            self._edits.append(_Edit(spot, spot, f", {item}" if node.value else item))
        else:
            self._insert_line(node, f"{' ' * node.start_mark.column}- {item}")

    def _add_to_block(self, node: yaml.MappingNode, written: str) -> None:
        if node.flow_style:
            spot = _end(node.value[-1][1]) if node.value else node.start_mark.index + 1
            self._edits.append(_Edit(spot, spot, f", {written}" if node.value else written))
        else:
            column = node.value[0][0].start_mark.column
            self._insert_line(node, f"{' ' * column}{written}")

    def _insert_line(self, node: yaml.Node, line: str) -> None:
        """Put a line below the last one of a block or list."""
        spot = self._line_end(_end(node))
        begun = spot == 0 or self.text[spot - 1] == "\n"
        before = "" if begun else self._newline
        self._edits.append(_Edit(spot, spot, f"{before}{line}{self._newline if begun else ''}"))

    def _line_end(self, index: int) -> int:
        """Return where the next line begins."""
        if index and self.text[index - 1] == "\n":
            return index
        found = self.text.find("\n", index)
        return len(self.text) if found < 0 else found + 1

    def _at(self, path: PlanPath) -> tuple[yaml.Node, bool]:
        """Return what stands at a path, and whether it stands within brackets or braces."""
        node: yaml.Node = self._root
        flow = bool(self._root.flow_style)
        for number, step in enumerate(path):
            if isinstance(node, yaml.SequenceNode) and isinstance(step, int):
                if step >= len(node.value):
                    raise CannotEdit(f"the list has no item {step + 1}")
                node = node.value[step]
            elif isinstance(node, yaml.MappingNode):
                node = node.value[self._place_of(path[: number + 1], node)][1]
            else:
                raise CannotEdit(f'there is no "{step}" here')
            if number + 1 < len(path):
                flow = flow or bool(getattr(node, "flow_style", False))
        return node, flow

    def _block(self, path: PlanPath) -> tuple[yaml.MappingNode, bool]:
        node, flow = self._at(path)
        if not isinstance(node, yaml.MappingNode):
            raise CannotEdit(f'"{path[-1]}" is not a block')
        return node, flow

    @staticmethod
    def _place_of(path: PlanPath, parent: yaml.MappingNode) -> int:
        for place, (key, _) in enumerate(parent.value):
            if key.value == path[-1]:
                return place
        raise CannotEdit(f'there is no "{path[-1]}" here')

    def _key(self, path: PlanPath) -> yaml.ScalarNode:
        parent, _ = self._block(path[:-1])
        key: yaml.ScalarNode = parent.value[self._place_of(path, parent)][0]
        return key

    def _after_colon(self, path: PlanPath) -> int:
        return self.text.index(":", self._key(path).end_mark.index) + 1

    def _braces(self, entries: Mapping[str, str]) -> str:
        parts = [
            f"{self._written(key, flow=True)}: {self._written(value, flow=True)}"
            for key, value in entries.items()
        ]
        return f"{{{', '.join(parts)}}}"

    def _written(self, value: str, flow: bool | None) -> str:
        """Write a text with quotes where it needs them; a JSON file has them throughout."""
        bare = value if flow else value.replace(", ", " ")
        if not self._root.flow_style and _BARE.fullmatch(bare):
            return value
        return json.dumps(value, ensure_ascii=False)


def _start_and_number(numbered: tuple[int, _Edit]) -> tuple[int, int]:
    number, edit = numbered
    return edit.start, number


def _end(node: yaml.Node) -> int:
    """Return where the last letter of a node ends; a block itself only ends at what follows."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        final = node.value[-1]
        return _end(final[1] if isinstance(node, yaml.MappingNode) else final)
    end: int = node.end_mark.index
    return end
