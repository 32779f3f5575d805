"""Glossary of trade terms, and the terms that a document uses or leaves unexplained.

The entries are in ``templates/LANGUAGE/glossary.md``.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from notices.wording.blocks import Bullets, KeyFact, KeyFacts, Paragraph, by_heading
from notices.wording.said import lines_of
from notices.wording.texts import plain_text


@dataclass(frozen=True, slots=True)
class Entry:
    """One trade term with its meaning."""

    term: str
    forms: tuple[str, ...]
    """Forms of the word in a text, of which the term is the first."""
    meaning: str
    explained_by: tuple[str, ...]
    """Words that show that a text explains the term itself."""

    def explained_in(self, text: str) -> bool:
        """Tell whether a text explains the term, be it in words of its own."""
        said = " ".join(text.casefold().split())
        return any(words.casefold() in said for words in (self.meaning, *self.explained_by))


@cache
def entries(language: str) -> tuple[Entry, ...]:
    """Return all entries of a language in alphabetical order."""
    found = []
    for title, blocks in by_heading(plain_text(language, "glossary", {})).items():
        forms = tuple(form.strip() for form in title.split(","))
        meaning = " ".join(b.text for b in blocks if isinstance(b, Paragraph))
        signs = lines_of(b for b in blocks if isinstance(b, Bullets))
        found.append(Entry(forms[0], forms, meaning, tuple(signs)))
    return tuple(found)


def terms_in(texts: Iterable[str], language: str) -> tuple[Entry, ...]:
    """Return the entries of the terms that texts use, the more exact one if two fit.

    Parameters
    ----------
    texts
        Texts of a document, such as the lines of its blocks.
    language
        Language tag, such as en-GB.
    """
    text = "\n".join(texts)
    found = []
    # "deep solid tining" is not also "solid tining" and "tining": the longest form is taken out.
    ordered = sorted(entries(language), key=lambda entry: -max(map(len, entry.forms)))
    for entry in ordered:
        text, count = _pattern(entry.forms).subn(" ", text)
        if count:
            found.append(entry)
    return tuple(sorted(found, key=lambda entry: entry.term.casefold()))


def unexplained_in(text: str, language: str) -> tuple[Entry, ...]:
    """Return the entries of the terms that a text uses and does not explain."""
    return tuple(entry for entry in terms_in([text], language) if not entry.explained_in(text))


def glossary(texts: Iterable[str], language: str) -> KeyFacts | None:
    """Return the terms that texts use, with meanings, as key facts; None without any."""
    rows = tuple(
        KeyFact(f"{entry.term[:1].upper()}{entry.term[1:]}", entry.meaning)
        for entry in terms_in(texts, language)
    )
    return KeyFacts(rows) if rows else None


@cache
def _pattern(forms: tuple[str, ...]) -> re.Pattern[str]:
    longest_first = sorted(forms, key=len, reverse=True)
    words = "|".join(re.escape(form).replace(r"\ ", r"\s+") for form in longest_first)
    return re.compile(rf"(?<![\w-])(?:{words})(?![\w-])", re.IGNORECASE)
