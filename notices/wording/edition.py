"""Which of a club's notices a document belongs to, in words."""

from __future__ import annotations

from notices.wording.words import Words


def edition_in_words(words: Words) -> tuple[str, str]:
    """Notice 20261012-2. This replaces our notice of 14 September 2026.

    Returns
    -------
    tuple of str
        The number; and what it replaces, empty for a first notice.
    """
    programme = words.programme
    number = f"Notice {programme.edition.number}."
    if programme.replaces is None:
        return number, ""
    day = words.dates.date(programme.replaces.issued)
    return number, f"This replaces our notice of {day}."
