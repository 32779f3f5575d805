"""Which greens a closure is about: "greens 1-9", "hole 4", "Putting green"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from notices.plan.green_list import parse_greens
from notices.programme.model import Green

_GREENS = re.compile(r"(?:greens?|holes?)\s+(.+)", re.IGNORECASE)


def greens_closed(what: str, greens: Mapping[str, Green]) -> tuple[str, ...]:
    """Return the greens that a closure names; none where it names something else."""
    by_word = {key.casefold(): key for key in greens}
    text = re.sub(r"^the ", "", " ".join(what.split()), flags=re.IGNORECASE)
    if (own := by_word.get(text.casefold())) is not None:
        return (own,)
    match = _GREENS.fullmatch(text)
    if match is None:
        return ()
    try:
        named = parse_greens(match[1])
    except ValueError:
        return ()  # free words that happen to begin like a list
    words = (str(ref).casefold() for ref in named)
    return tuple(by_word[word] for word in words if word in by_word)
