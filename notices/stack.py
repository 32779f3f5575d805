"""Run deeply nested calls in one large piece of Python's stack.

CPython takes its stack from the system in chunks of 16 KB, and gives a chunk back when the call that
needed it returns. A function called at the end of a chunk therefore asks the system for memory on
every call: a hundred thousand times while a pack is laid out, or three times that, as chance has it.
A chunk is never smaller than what one call asks for, though. So a function that asks for a large frame
gets a large chunk, and everything that it calls stands in the rest of it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_R = TypeVar("_R")

ROOM = 1 << 16
"""Stack slots of eight bytes: half a megabyte, in a chunk of one. Untouched pages cost no memory."""


def roomy(function: Callable[_P, _R]) -> Callable[_P, _R]:
    """Give a function a frame so large that all calls below it share one chunk of the stack."""
    code = function.__code__
    function.__code__ = code.replace(co_stacksize=code.co_stacksize + ROOM)
    return function
