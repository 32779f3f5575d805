"""How easy a text is to read: Flesch-Kincaid, with a count of syllables by rule.

grade = 0.39 (words / sentences) + 11.8 (syllables / words) - 15.59
(Kincaid, Fishburne, Rogers and Chissom 1975).
"""

from __future__ import annotations

import re

_WORD = re.compile(r"[A-Za-z]+(?:[’'-][A-Za-z]+)*|\d+(?:[.,]\d+)*")
_VOWELS = re.compile(r"[aeiouy]+")


def flesch_kincaid(words: int, sentences: int, syllables: int) -> float:
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


def sentences_of(text: str) -> list[str]:
    """Split at full stops that end a sentence, not at those within a number or an address."""
    return [s for s in re.split(r"(?<=[.!?])\s+(?=[A-Z0-9“])", " ".join(text.split())) if s]


def words_of(text: str) -> list[str]:
    return _WORD.findall(text)


def syllables_of(word: str) -> int:
    """Groups of vowels, without the silent e of "close", "closed" and "sometimes"."""
    if word[0].isdigit():
        return 1
    if "-" in word:
        return sum(syllables_of(part) for part in word.split("-") if part)
    plain = re.sub(r"[^a-z]", "", word.lower())
    # Two vowels that are said apart: scarify-ing, twenti-eth.
    parted = re.sub(r"y(?=i)|i(?=eth)", r"\g<0> ", plain)
    count = len(_VOWELS.findall(parted))
    if re.search(r"[^aeiouyl]e$|[aeiouy]le$|[^aeiouytd]ed$|[^aeiouysxzcg]es$", plain):
        count -= 1
    return max(1, count)


def grade(text: str) -> float:
    """Return the school grade of a text."""
    words = words_of(text)
    return flesch_kincaid(len(words), len(sentences_of(text)), sum(map(syllables_of, words)))
