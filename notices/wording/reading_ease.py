"""Reading ease of a text by two published formulas, from counts of sentences, words and syllables.

Flesch Reading Ease (Flesch 1948) and Flesch-Kincaid grade (Kincaid, Fishburne, Rogers and Chissom
1975). Syllables are counted by rule, which is right for most English words and near for the rest.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

LONGEST_SENTENCE = 25
"""Most words in a sentence: GOV.UK splits longer ones."""

_WORD = re.compile(r"[A-Za-z]+\d*(?:[’'-][A-Za-z]+)*|\d+(?:[.,:]\d+)*")
_VOWELS = re.compile(r"[aeiouy]+")
_BLOCK = re.compile(r"\n[^\S\n]*\n|\n(?=[^\S\n]*[*•-] )")
"""A blank line or a bullet begins a new sentence, full stop or not."""
_END = re.compile(r"(?<=[.!?])[”’)]?\s+(?=[“‘(]?[A-Z0-9])")
_ADDRESS = re.compile(r"https?://\S+|\S+@\S+\.\S+")
_RULED = re.compile(r"(?m)^.+\n[=-]{3,}[^\S\n]*$|^[=-]{3,}[^\S\n]*$")
_CAPITALS = re.compile(r"(?m)^(?=.*[A-Z])[^a-z]+$")


@dataclass(frozen=True, slots=True)
class Measure:
    """Counts of a text."""

    sentences: tuple[str, ...]
    words: int
    syllables: int

    @property
    def average(self) -> float:
        """Average number of words in a sentence."""
        return self.words / max(1, len(self.sentences))

    @property
    def grade(self) -> float:
        """Flesch-Kincaid school grade; 0 for a text without words."""
        return flesch_kincaid(self.words, len(self.sentences), self.syllables) if self.words else 0

    @property
    def ease(self) -> float:
        """Flesch Reading Ease; 100 for a text without words."""
        return flesch(self.words, len(self.sentences), self.syllables) if self.words else 100

    def longer_than(self, words: int) -> tuple[str, ...]:
        """Return the sentences with more words than a limit, the longest first."""
        found = [one for one in self.sentences if len(words_of(one)) > words]
        return tuple(sorted(found, key=lambda one: -len(words_of(one))))


def measure(text: str) -> Measure:
    """Return the counts of sentences, words and syllables in a plain text.

    Headings are not counted: they are no sentences, and would make any text look easy.
    """
    sentences = sentences_of(_CAPITALS.sub("\n", _RULED.sub("\n", text)))
    words = [word for sentence in sentences for word in words_of(sentence)]
    return Measure(tuple(sentences), len(words), sum(map(syllables_of, words)))


def flesch(words: int, sentences: int, syllables: int) -> float:
    """Flesch Reading Ease = 206.835 − 1.015 · words/sentences − 84.6 · syllables/words."""
    return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words


def flesch_kincaid(words: int, sentences: int, syllables: int) -> float:
    """Flesch-Kincaid grade = 0.39 · words/sentences + 11.8 · syllables/words − 15.59."""
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


def sentences_of(text: str) -> list[str]:
    """Return the sentences of a text, not split at a stop within a number or an address."""
    found = []
    for block in _BLOCK.split(text):
        line = _ADDRESS.sub(_address, " ".join(block.split()))
        found += _END.split(line)
    return [sentence.removeprefix("* ") for sentence in found if words_of(sentence)]


def _address(match: re.Match[str]) -> str:
    """Return the full stop if an address ends a sentence, else nothing."""
    return "." if match[0].endswith(".") else ""


def words_of(text: str) -> Sequence[str]:
    """Return the words and numbers of a text; a word with hyphens is one."""
    return _WORD.findall(text)


@lru_cache(maxsize=4096)  # a pack says the same few hundred words again and again
def syllables_of(word: str) -> int:
    """Return the number of syllables of a word: groups of vowels, without a silent e."""
    if word[0].isdigit():
        return 1
    if "-" in word:
        return sum(syllables_of(part) for part in word.split("-") if part)
    plain = re.sub(r"[^a-z]", "", word.lower().removesuffix("’s").removesuffix("'s"))
    # Two vowels spoken apart: play-er, scarify-ing, twenti-eth.
    parted = re.sub(r"(?<=[aeiou])y(?=[aeiou])|y(?=i)|i(?=eth)", r"\g<0> ", plain)
    count = len(_VOWELS.findall(parted))
    if re.search(r"[^aeiouyl]e$|[aeiouy]le$|[^aeiouytd]ed$|[^aeiouysxzcg]es$", plain):
        count -= 1
    return max(1, count)
