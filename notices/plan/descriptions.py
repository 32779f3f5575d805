"""The sentence under each field of the model, read from its source when somebody needs it.

Pydantic can gather them too (``use_attribute_docstrings``), but does so for every class at every
start of the program, and that is a fifth of the time it takes to read a plan.
"""

from __future__ import annotations

import ast
import inspect
import itertools
import textwrap

from pydantic import BaseModel


def description(model: type[BaseModel], field: str) -> str:
    """Return the sentence under a field without its full stop; "" where there is none."""
    return descriptions(model).get(field, "")


def descriptions(model: type[BaseModel]) -> dict[str, str]:
    """Return the sentence under each field of a model, without its full stop."""
    try:
        source = inspect.getsource(model)
    except OSError:  # installed without its sources
        return {}
    (definition,) = ast.parse(textwrap.dedent(source)).body
    found: dict[str, str] = {}
    for line, after in itertools.pairwise(getattr(definition, "body", ())):
        match line, after:
            case (
                ast.AnnAssign(target=ast.Name(id=name)),
                ast.Expr(value=ast.Constant(value=str(sentence))),
            ):
                found[name] = inspect.cleandoc(sentence).rstrip(".")
            case _:
                pass
    return found
