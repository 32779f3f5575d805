"""Which greens a closure is about: "greens 1-9", "hole 4", "Putting green"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from notices.plan.green_list import parse_greens
from notices.programme.model import Green

_GREENS = re.compile(r"(?:greens?|holes?)\s+(.+)", re.IGNORECASE)
_NUMBERED = re.compile(r"(?:greens?|holes?)\s+[0-9].*", re.IGNORECASE)


def greens_closed(what: str, greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return the greens that a closure names; none where it names something else."""
    return tuple(key for key in _named(what, greens) if key in greens)


def unknown_greens(what: str, greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return the greens that a closure counts up and the course does not have."""
    if not _NUMBERED.fullmatch(_tidy(what)):
        return ()
    return tuple(key for key in _named(what, greens) if key not in greens)


def _named(what: str, greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return what is named, with the keys of greens that the course has."""
    by_word = {key.casefold(): key for key in greens}
    text = _tidy(what)
    if (own := by_word.get(text.casefold())) is not None:
        return (own,)
    match = _GREENS.fullmatch(text)
    if match is None:
        return ()
    try:
        named = parse_greens(match[1])
    except ValueError:
        return ()  # free words that happen to begin like a list
    return tuple(by_word.get(str(ref).casefold(), str(ref)) for ref in named)


def _tidy(what: str) -> str:
    text = " ".join(what.split())
    return re.sub(r"^the ", "", text, flags=re.IGNORECASE)
