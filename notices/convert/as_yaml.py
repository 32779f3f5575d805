"""A plan as YAML, with quotes only around values that need them, as people type it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import yaml

WIDEST = 100


class _Dumper(yaml.SafeDumper):
    """A dumper that quotes only texts that our own reader would take for something else."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012, PyYAML's own name and type

    def ignore_aliases(self, data: Any) -> bool:  # noqa: ANN401, ARG002, whatever stands in a plan
        """Return True: everything is written out, because the reader takes no aliases."""
        return True

    def increase_indent(self, flow: bool = False, indentless: bool = False) -> None:  # noqa: ARG002
        """Indent the items of a list further than its key, which PyYAML does not do by default."""
        super().increase_indent(flow, indentless=False)


_Dumper.add_implicit_resolver(
    "tag:yaml.org,2002:null", re.compile("^(?:~|null|)$", re.IGNORECASE), None
)
_Dumper.add_implicit_resolver(
    "tag:yaml.org,2002:bool", re.compile("^(?:true|false)$", re.IGNORECASE), None
)
_Dumper.add_implicit_resolver(
    "tag:yaml.org,2002:int", re.compile("^-?(?:0|[1-9][0-9]{0,14})$"), None
)
_FLOAT = re.compile(r"^-?(?:0|[1-9][0-9]{0,14})\.[0-9]{1,20}$")
_Dumper.add_implicit_resolver("tag:yaml.org,2002:float", _FLOAT, None)


def _text(dumper: _Dumper, text: str) -> yaml.ScalarNode:
    style = "|" if "\n" in text else None
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style=style)


def _number(dumper: _Dumper, number: float) -> yaml.ScalarNode:
    """Write a number as a float if the reader would read it as one, else as text."""
    kind = "float" if _FLOAT.match(repr(number)) else "str"
    return dumper.represent_scalar(f"tag:yaml.org,2002:{kind}", repr(number))


def _block(dumper: _Dumper, block: Mapping[str, Any]) -> yaml.MappingNode:
    """Write a short block of single values on one line, as in the examples."""
    node = dumper.represent_mapping("tag:yaml.org,2002:map", block.items())
    single = not any(isinstance(value, dict | list) for value in block.values())
    letters = sum(len(f"{key}: {value}, ") for key, value in block.items())
    node.flow_style = single and letters <= WIDEST and not isinstance(block, _Top)
    return node


def _list(dumper: _Dumper, items: list[Any]) -> yaml.SequenceNode:
    node = dumper.represent_sequence("tag:yaml.org,2002:seq", items)
    node.flow_style = not any(isinstance(item, dict | list) for item in items)
    return node


class _Top(dict[str, Any]):
    """The plan itself, which is never put on one line."""


_Dumper.add_representer(str, _text)
_Dumper.add_representer(float, _number)
_Dumper.add_representer(dict, _block)
_Dumper.add_representer(_Top, _block)
_Dumper.add_representer(list, _list)


def plan_as_yaml(plan: Mapping[str, Any]) -> str:
    """Return a plan in canonical form as YAML that reads as the same plan."""
    return yaml.dump(_Top(plan), Dumper=_Dumper, sort_keys=False, allow_unicode=True, width=WIDEST)
