"""Sizes and shares as a golfer pictures them; the exact figures stay in programme.json."""

from __future__ import annotations

from collections.abc import Sequence

from notices.wording.lists import number, span

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
    (0.9, "less than one part in a hundred"),
    (1.12, "about one-hundredth"),
    (1.46, "about one-eightieth"),
    (1.8, "about one-sixtieth"),
    (2.25, "about one-fiftieth"),
    (2.9, "about one-fortieth"),
    (3.7, "about one-thirtieth"),
    (4.4, "about one twenty-fifth"),
    (5.8, "about one-twentieth"),
    (7.5, "about one-fifteenth"),
    (9.1, "about one-twelfth"),
    (11.2, "about one-tenth"),
    (14.6, "about one-eighth"),
    (18.0, "about one-sixth"),
    (22.3, "about one-fifth"),
    (29.0, "about one-quarter"),
    (36.5, "about one-third"),
    (44.0, "about two-fifths"),
    (58.0, "about half"),
)
"""Up to which percentage a fraction is said: it is always within 15 % of the value."""


def like(width_mm: float) -> str:
    """Say how wide something is by what one knows."""
    return next((words for limit, words in _WIDTHS if width_mm <= limit), "as wide as a fist")


def share(percent: float) -> str:
    """Say a share of the surface as a plain fraction."""
    return next((words for limit, words in _SHARES if percent <= limit), "more than half")


def length(mm: float) -> str:
    """Write a length as one measures it: 13 mm, 22.5 cm, 1 m."""
    # The unit is chosen after rounding: 999.9 mm is 1 m, not 100 cm.
    if round(mm / 10, 1) >= 100:
        return f"{_plain(mm / 1000)} m"
    if round(mm, 1) >= 100:
        return f"{_plain(mm / 10)} cm"
    return f"{_plain(mm)} mm"


def _plain(amount: float) -> str:
    return f"{amount:.1f}".removesuffix(".0")


def weeks(days: Sequence[int]) -> str:
    """Say a span of days in the words that one uses: "two to four weeks", "a day or two"."""
    low, high = min(days), max(days)
    if high <= 2:
        return "a day" if low == high == 1 else "a day or two"
    if low >= 6 and high <= 8:
        return "about a week"
    if high <= 10:
        if low == 0:
            return f"up to {number(high)} days"
        return f"{span(low, high)} days" if low != high else f"about {number(low)} days"
    first, last = max(1, round(low / 7)), max(1, round(high / 7))
    if first == last:
        return "about a week" if first == 1 else f"about {number(first)} weeks"
    return f"{span(first, last)} weeks"
