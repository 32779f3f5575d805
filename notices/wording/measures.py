"""Sizes and shares as a golfer pictures them; the exact figures stay in programme.json."""

from __future__ import annotations

from collections.abc import Sequence

from notices.wording.lists import number

_WIDTHS = (
    (2.5, "no wider than the edge of a coin"),
    (5.0, "about as wide as a shoelace"),
    (8.0, "about as wide as a pencil"),
    (11.0, "about as wide as your little finger"),
    (16.0, "about as wide as a finger"),
    (24.0, "about as wide as a thumb"),
    (35.0, "about as wide as a broom handle"),
)

_SHARES = (
    (0.6, "less than one part in a hundred"),
    (1.5, "about one-hundredth"),
    (2.6, "about one-fortieth"),
    (3.7, "about one-thirtieth"),
    (4.4, "about one twenty-fifth"),
    (5.9, "about one-twentieth"),
    (7.2, "about one-fifteenth"),
    (8.9, "about one-twelfth"),
    (11.5, "about one-tenth"),
    (14.0, "about one-eighth"),
    (18.0, "about one-sixth"),
    (22.0, "about one-fifth"),
    (29.0, "about one-quarter"),
    (40.0, "about one-third"),
)


def like(width_mm: float) -> str:
    """Say how wide something is by what one knows."""
    return next((words for limit, words in _WIDTHS if width_mm <= limit), "as wide as a fist")


def share(percent: float) -> str:
    """Say a share of the surface as a plain fraction."""
    return next((words for limit, words in _SHARES if percent <= limit), "about half")


def length(mm: float) -> str:
    """Write a length as one measures it: 13 mm, 22.5 cm, 1 m."""
    if mm >= 1000:
        return f"{mm / 1000:.1f}".rstrip("0").rstrip(".") + " m"
    if mm >= 100:
        return f"{mm / 10:.1f}".rstrip("0").rstrip(".") + " cm"
    return f"{mm:.1f}".rstrip("0").rstrip(".") + " mm"


def weeks(days: Sequence[int]) -> str:
    """Say a span of days in the words that one uses: "two to four weeks", "a day or two"."""
    low, high = min(days), max(days)
    if high <= 2:
        return "a day" if low == high == 1 else "a day or two"
    if high <= 10:
        return f"{number(low)} to {number(high)} days" if low != high else f"{number(low)} days"
    first, last = max(1, round(low / 7)), max(1, round(high / 7))
    if first == last:
        return "about a week" if first == 1 else f"about {number(first)} weeks"
    return f"{number(first)} to {number(last)} weeks"
