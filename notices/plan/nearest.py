"""Words as a person typed them: how to show one again, and which known word is nearest."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

_LONGEST_SHOWN = 60
# difflib takes time with the square of the length, and no word we know is near this long.
_LONGEST_COMPARED = 80
# Lets "scarify" find "scarifying", but not "id" find "kind".
_LIKE_ENOUGH = 0.7
_SPACES_AND_JOINERS = " \t\n-_\u00a0\u2010\u2011\u2013"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that was probably meant, or None if none comes near.

    Case, spaces, hyphens and underscores count for nothing: "Tine-Diameter" is as good as
    "tine_diameter". Among equals the earlier of the known words wins.
    """
    by_letters: dict[str, str] = {}
    for candidate in known:
        by_letters.setdefault(_letters(candidate), candidate)
    letters = _letters(word[:_LONGEST_COMPARED])
    if letters in by_letters:
        return by_letters[letters]
    found = difflib.get_close_matches(letters, by_letters, n=1, cutoff=_LIKE_ENOUGH)
    return by_letters[found[0]] if found else None


def quoted(value: object) -> str:
    """Return what was typed in quotation marks, fit to stand in a message: one line, not too long."""
    text = value if isinstance(value, str) else _in_words(value)
    if len(text) > _LONGEST_SHOWN:
        text = f"{text[: _LONGEST_SHOWN - 1]}…"
    text = "".join(c if c.isprintable() else " " for c in text)
    return f'"{text}"'


def _in_words(value: object) -> str:
    """Name a value that is not text the way it looks in a plan file."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, dict):
        return "{…}"
    if isinstance(value, list | tuple):
        return "[…]"
    try:
        return str(value)
    except ValueError:  # Python refuses to write out whole numbers of over 4300 digits
        return "a very long number"


def _letters(word: str) -> str:
    return "".join(c for c in word.casefold() if c not in _SPACES_AND_JOINERS)
