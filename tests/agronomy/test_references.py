"""The bibliography and the citations fit each other."""

from __future__ import annotations

import ast
import re
from pathlib import Path
from typing import get_args

import pytest

import notices.references
from notices.agronomy import moles
from notices.references import REFERENCES, Status

PACKAGE = Path(notices.references.__file__).parent
CITATION = re.compile(r"\[(\w+)\]_")


def docstrings(source: str) -> list[str]:
    """Every docstring of a module, and the strings that stand below its constants."""
    return [
        node.value.value
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Expr)
        and isinstance(node.value, ast.Constant)
        and isinstance(node.value.value, str)
    ]


@pytest.mark.parametrize("path", sorted((PACKAGE / "agronomy").glob("*.py")), ids=lambda p: p.name)
def test_every_cited_key_exists(path: Path) -> None:
    cited = {key for text in docstrings(path.read_text("utf-8")) for key in CITATION.findall(text)}
    assert cited <= REFERENCES.keys()


def test_every_formula_cites_its_source() -> None:
    uncited = [
        f"{path.name}: {function.name}"
        for path in sorted((PACKAGE / "agronomy").glob("*.py"))
        if path.name not in {"limits.py", "__init__.py"}  # guards, not formulas
        for function in ast.parse(path.read_text("utf-8")).body
        if isinstance(function, ast.FunctionDef) and not function.name.startswith("_")
        if not CITATION.search(ast.get_docstring(function) or "")
    ]
    assert uncited == []


def test_every_entry_is_cited_somewhere() -> None:
    sources = [
        path.read_text("utf-8") for path in PACKAGE.rglob("*.py") if path.name != "references.py"
    ]
    everything = "\n".join(sources)
    used = {key for key in REFERENCES if f"[{key}]_" in everything or f'"{key}"' in everything}
    assert used == set(REFERENCES)


@pytest.mark.parametrize("key", REFERENCES)
def test_entries_are_complete(key: str) -> None:
    entry = REFERENCES[key]
    assert entry.key == key
    assert entry.text
    assert entry.status in get_args(Status)
    assert not entry.url or entry.url.startswith("https://")


def test_what_has_no_source_says_so() -> None:
    assert REFERENCES["common_practice"].text == "common practice, no published source"
    assert "no source" in REFERENCES["judgement"].text


def test_verdicts_on_soil_cite_published_sources() -> None:
    for verdict in moles.soil_verdicts(40, 20):
        assert REFERENCES[verdict.source_key].status == "published"
