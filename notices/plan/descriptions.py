"""The sentence under each field of the model, read from its source when somebody needs it.

Pydantic can gather them too (``use_attribute_docstrings``), but does so for every class at every
start of the program, and that is a fifth of the time it takes to read a plan.
"""

from __future__ import annotations

import ast
import functools
import inspect
import itertools
import sys
from collections.abc import Mapping, Sequence

from pydantic import BaseModel


def description(model: type[BaseModel], field: str) -> str:
    """Return the sentence under a field without its full stop; "" where there is none."""
    return descriptions(model).get(field, "")


@functools.cache
def descriptions(model: type[BaseModel]) -> Mapping[str, str]:
    """Return the sentence under each field of a model, without its full stop."""
    found: dict[str, str] = {}
    for line, after in itertools.pairwise(_classes(model.__module__).get(model.__name__, ())):
        match line, after:
            case (
                ast.AnnAssign(target=ast.Name(id=name)),
                ast.Expr(value=ast.Constant(value=str(sentence))),
            ):
                found[name] = inspect.cleandoc(sentence).rstrip(".")
            case _:
                pass
    return found


@functools.cache
def _classes(module: str) -> Mapping[str, Sequence[ast.stmt]]:
    """Return what stands in each class of a module."""
    try:
        source = inspect.getsource(sys.modules[module])
    except OSError:  # installed without its sources
        return {}
    return {
        part.name: part.body for part in ast.parse(source).body if isinstance(part, ast.ClassDef)
    }
