"""Lists and counts in words."""

from __future__ import annotations

from collections.abc import Sequence

_SMALL = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
)


def and_list(items: Sequence[str], joint: str = "and") -> str:
    """Join items in a sentence: a; a and b; a, b and c."""
    if len(items) <= 1:
        return "".join(items)
    return f"{', '.join(items[:-1])} {joint} {items[-1]}"


def number(count: int) -> str:
    """Write a whole number, up to ten in words and above in figures with commas."""
    return _SMALL[count] if 0 <= count < len(_SMALL) else f"{count:,}"


def span(low: int, high: int, joint: str = "to") -> str:
    """Write a range, "two to four" or "10 to 12": both in words, or both in figures."""
    if high < len(_SMALL):
        return f"{number(low)} {joint} {number(high)}"
    return f"{low:,} {joint} {high:,}"


def counted(count: int, noun: str, plural: str = "") -> str:
    """Write a number with its noun: "one green", "two greens"."""
    return f"{number(count)} {noun if count == 1 else plural or noun + 's'}"


def all_of(count: int, nouns: str) -> str:
    """Write "both greens", "all nine greens" or "all 18 greens"."""
    return f"both {nouns}" if count == 2 else f"all {number(count)} {nouns}"


_CALLED_THE = frozenset(
    (
        "board",
        "clubhouse",
        "committee",
        "council",
        "greenkeeper",
        "manager",
        "noticeboard",
        "page",
        "secretary",
        "shop",
        "site",
        "superintendent",
        "website",
    )
)
"""Last words of posts, bodies and places that need an article in a sentence."""

_LED_ALREADY = frozenset(
    [
        "a",
        "an",
        "and",
        "by",
        "each",
        "either",
        "every",
        "her",
        "his",
        "in",
        "its",
        "my",
        "on",
        "or",
        "our",
        "that",
        "the",
        "their",
        "this",
        "your",
    ]
)


def with_the(text: str) -> str:
    """Return "the" with a post, body or place that a plan names as on a form: Greens committee.

    Other text stays as it is, and so do names of people ("Jo Ames, Course Manager"), addresses
    and texts that have an article or a possessive.
    """
    words = text.split()
    if not words or words[-1].casefold().rstrip(".") not in _CALLED_THE:
        return text
    first = words[0].casefold()
    led = first in _LED_ALREADY or any(mark in text for mark in (",", "’s ", "'s ", "://"))
    return text if led else f"the {text}"


def sentence(text: str) -> str:
    """Return the text with a capital first letter and a full stop at its end."""
    text = text.strip()
    if not text:
        return ""
    closed = text if text[-1] in ".!?" else f"{text}."
    return closed[:1].upper() + closed[1:]
