"""How much of the template language a club's own text may use: names, phrases and conditions.

A text may come with a plan from somebody else. It may name what is known of the work, call our
own phrases, and leave a sentence out under a condition. Loops, sums, filters and macros are not
for it: with them a text could keep the computer busy for ever, or fill its memory.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from jinja2 import Environment, TemplateError, nodes

PHRASES = "say"
"""The name under which our own phrases stand, such as say.closes("The holes")."""

_ALLOWED = (
    *(nodes.Output, nodes.TemplateData, nodes.Name, nodes.Const),
    *(nodes.If, nodes.CondExpr, nodes.Compare, nodes.Operand, nodes.Not, nodes.And, nodes.Or),
)


def refused(source: str, environment: Environment, known: Collection[str]) -> str:
    """Say why a text cannot be filled, as one sentence; "" where it can be."""
    try:
        template = environment.parse(source)
    except TemplateError as error:
        return f"{error}"
    except RecursionError:
        return "its conditions lie too deep in one another"
    return next(_faults(template, known), "")


def _faults(template: nodes.Template, known: Collection[str]) -> Iterator[str]:
    waiting = list(template.iter_child_nodes())
    while waiting:
        part = waiting.pop(0)
        match part:
            case nodes.Call(node=nodes.Getattr(node=nodes.Name(name=name))) if name == PHRASES:
                waiting += [*part.args, *(keyword.value for keyword in part.kwargs)]
            case nodes.Name(name=name) if name not in known:
                yield f"{name!r} is not known, on line {part.lineno}"
            case _ if isinstance(part, _ALLOWED):
                waiting += part.iter_child_nodes()
            case _:
                yield f"a text can name things and phrases, and nothing else, on line {part.lineno}"
