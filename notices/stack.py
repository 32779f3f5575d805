"""Room on Python's stack for functions beneath which much is called.

CPython takes its stack from the system in pieces of 16 KB, and gives a piece back when the call that
needed it returns. What is called at the end of a piece therefore asks the system for memory with
every call: a hundred thousand times while a pack is set, or three times that, as chance has it. A piece
is never smaller than what one call asks for, though, so that a call which asks for much gets a large
one, and what it calls stands in the rest of it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_R = TypeVar("_R")

ROOM = 1 << 16
"""Places of eight bytes: half a megabyte, in a piece of a whole one. None is touched before it is used."""


def roomy(function: Callable[_P, _R]) -> Callable[_P, _R]:
    """Let all that a function calls stand in one piece of the stack."""
    code = function.__code__
    function.__code__ = code.replace(co_stacksize=code.co_stacksize + ROOM)
    return function
