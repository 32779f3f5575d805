"""Number, date and predecessor of a notice in words."""

from __future__ import annotations

from notices.programme.model import Edition
from notices.wording.dates import DateWords


def number_in_words(edition: Edition) -> str:
    """Return the number in words, such as "Notice 20261012-2."."""
    return f"Notice {edition.number}."


def replaced_in_words(thing: str, replaced: Edition, language: str) -> str:
    """Return a sentence such as "This sheet replaces the one of 14 September 2026."."""
    return f"This {thing} replaces the one of {day_of(replaced, language)}."


def changed_in_words(changed: Edition, language: str) -> str:
    """Return a sentence such as "This changes our notice of 14 September 2026."."""
    return f"This changes our notice of {day_of(changed, language)}."


def day_of(edition: Edition, language: str) -> str:
    """Return the day of issue, such as "14 September 2026"."""
    return DateWords(language, edition.issued).date(edition.issued)
