"""The part of the template language that a club's own text may use: names, phrases, conditions.

A text may come with a plan from somebody else. It may name facts of the work, call our own
phrases, and leave a sentence out under a condition. Loops, sums, filters and macros are refused:
with them a text could keep the computer busy for ever, or fill its memory.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from jinja2 import Environment, TemplateSyntaxError, nodes

PHRASES = "say"
"""Name through which texts call our own phrases, such as say.closes("The holes")."""

_ALLOWED = (
    *(nodes.Output, nodes.TemplateData, nodes.Name, nodes.Const),
    *(nodes.If, nodes.CondExpr, nodes.Compare, nodes.Operand, nodes.Not, nodes.And, nodes.Or),
)


@dataclass(frozen=True, slots=True)
class TextLine:
    """A fault in one line of a text."""

    line: int
    message: str
    unknown: str = ""
    """Name that nothing fills; empty for other faults."""


def refused(source: str, environment: Environment, known: Collection[str]) -> str:
    """Return the reason why a text cannot be filled; empty if it can."""
    for fault in faults_of(source, environment, known):
        return f"{fault.message}, on line {fault.line}"
    return ""


def faults_of(
    source: str, environment: Environment, known: Collection[str] | None
) -> Iterator[TextLine]:
    """Yield the faults that keep a text from being filled.

    Parameters
    ----------
    source
        Text with placeholders.
    environment
        Parser of the template language.
    known
        Names that a text may use; None if unknown, because no such work is planned.
    """
    try:
        template = environment.parse(source)
    except TemplateSyntaxError as error:
        yield TextLine(error.lineno, f"{error}")
    except RecursionError:
        yield TextLine(1, "its conditions lie too deep in one another")
    else:
        yield from _faults(template, known)


def _faults(template: nodes.Template, known: Collection[str] | None) -> Iterator[TextLine]:
    waiting = list(template.iter_child_nodes())
    while waiting:
        part = waiting.pop(0)
        match part:
            case nodes.Call(node=nodes.Getattr(node=nodes.Name(name=name))) if name == PHRASES:
                waiting += [*part.args, *(keyword.value for keyword in part.kwargs)]
            case nodes.Name(name=name) if known is not None and name not in known:
                yield TextLine(part.lineno, f"{name!r} is not known", name)
            case _ if isinstance(part, _ALLOWED):
                waiting += part.iter_child_nodes()
            case _:
                message = "a text can name things and phrases, and nothing else"
                yield TextLine(part.lineno, message)
