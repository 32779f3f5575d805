"""Findings about how easy the documents of a pack, and the club's own words in them, are to read.

Each document is measured by its plain text without tables, since a column of greens is no sentence.
The limit is grade 8 for members and grade 11 for the committee, and 25 words for any sentence. The
measurements of every document are reported for information.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from notices.documents.model import Document
from notices.documents.pack import PackDocuments
from notices.findings import Finding, Place, Weight
from notices.rendering.text import plain_text
from notices.wording.blocks import Block, Bullets, KeyFacts, Picture, Table
from notices.wording.glossary import unexplained_in
from notices.wording.reading_ease import LONGEST_SENTENCE, Measure, measure, words_of

LEAST_WORDS = 100
"""Words that a document needs for an average: a shorter one has too few sentences."""
LONGEST_AVERAGE = 18.0
HARDEST_FOR_MEMBERS = 8.0
HARDEST_FOR_COMMITTEE = 11.0

LEAST_OF_SENTENCE = 8
"""Words that a sentence needs to be the hardest: one long word makes a shorter one hard."""

SHOWN = 14
"""Words of a sentence that a finding quotes, enough to find it again."""

_COMMITTEE = "committee"

OwnWords = tuple[tuple[str | int, ...], str]
"""Path through the plan to a text that the club wrote, and the text."""


def check_words(documents: PackDocuments, own: Sequence[OwnWords] = ()) -> Iterator[Finding]:
    """Yield findings about hard reading, in the club's own words and in each document.

    Parameters
    ----------
    documents
        Documents of the pack.
    own
        Texts in it that the club wrote itself; findings about them point into the plan.
    """
    language = documents.index.document.language
    # Large and small sheets of one document have the same text, which is measured once.
    by_text = {_text_of(document): document for document in reversed([*documents.documents])}
    whole = "\n\n".join(by_text)
    told: set[str] = set()
    for path, words in own:
        yield from _of_own_words(path, _without_marks(words), language, whole, told)
    for text, document in reversed(by_text.items()):
        yield from _of_document(document, text, told, language)


def _of_own_words(
    path: tuple[str | int, ...], text: str, language: str, whole: str, told: set[str]
) -> Iterator[Finding]:
    counted = measure(text)
    yield from _long_sentences(counted, path, None, told)
    if counted.words >= LEAST_WORDS and counted.grade > HARDEST_FOR_MEMBERS:
        yield _hard(counted, HARDEST_FOR_MEMBERS, path, None)
    for entry in unexplained_in(text, language):
        if not entry.explained_in(whole):
            yield Finding(
                "word-not-explained",
                Weight.THINK_AGAIN,
                f"“{entry.term}” is a word of the trade, and nothing explains it",
                f"Say what it is, such as: {entry.meaning.rstrip('.')}",
                path,
            )


def _of_document(document: Document, text: str, told: set[str], language: str) -> Iterator[Finding]:
    counted = measure(text)
    if counted.words < LEAST_WORDS:
        return
    place = Place(document.name)
    yield _measured(counted, place, [entry.term for entry in unexplained_in(text, language)])
    yield from _long_sentences(counted, (), place, told)
    committee = document.name.startswith(_COMMITTEE)
    hardest = HARDEST_FOR_COMMITTEE if committee else HARDEST_FOR_MEMBERS
    if counted.grade > hardest:
        yield _hard(counted, hardest, (), place)
    if counted.average > LONGEST_AVERAGE:
        yield Finding(
            "sentences-too-long",
            Weight.THINK_AGAIN,
            f"a sentence has {counted.average:.1f} words on average; "
            f"{LONGEST_AVERAGE:g} are enough",
            "Make two sentences of each long one",
            place=place,
        )


def _measured(counted: Measure, place: Place, unexplained: Sequence[str]) -> Finding:
    longest = max(len(words_of(sentence)) for sentence in counted.sentences)
    said = (
        f"{counted.words} words, reading ease {counted.ease:.0f}, grade {counted.grade:.1f}, "
        f"{counted.average:.1f} words in a sentence on average and {longest} in the longest"
    )
    if unexplained:
        said += f"; it does not itself explain {', '.join(unexplained)}"
    return Finding("reading-ease", Weight.INFORMATION, said, place=place)


def _long_sentences(
    counted: Measure, path: tuple[str | int, ...], place: Place | None, told: set[str]
) -> Iterator[Finding]:
    for sentence in counted.longer_than(LONGEST_SENTENCE):
        if sentence in told:
            continue
        told.add(sentence)
        yield Finding(
            "sentence-too-long",
            Weight.THINK_AGAIN,
            f"a sentence has {len(words_of(sentence))} words: {_shown(sentence)}",
            f"Make two of it; {LONGEST_SENTENCE} words are enough",
            path,
            place,
        )


def _hard(
    counted: Measure, hardest: float, path: tuple[str | int, ...], place: Place | None
) -> Finding:
    worst = max(counted.sentences, key=_difficulty)
    return Finding(
        "hard-to-read",
        Weight.THINK_AGAIN,
        f"reading takes grade {counted.grade:.1f} (reading ease {counted.ease:.0f}), "
        f"over {hardest:g}; hardest is: {_shown(worst)}",
        "Use shorter words and sentences",
        path,
        place,
    )


def _difficulty(sentence: str) -> float:
    counted = measure(sentence)
    return counted.grade if counted.words >= LEAST_OF_SENTENCE else 0.0


def _shown(sentence: str) -> str:
    words = sentence.split()
    more = " …" if len(words) > SHOWN else ""
    return f"“{' '.join(words[:SHOWN])}{more}”"


def _text_of(document: Document) -> str:
    """Return the plain text of a document without its tables."""
    sections = tuple(
        replace(section, blocks=tuple(map(_one_by_one, section.blocks)))
        for section in document.sections
    )
    return plain_text(replace(document, sections=sections), "")


def _one_by_one(block: Block) -> Block:
    """Return a block with a bullet for each key fact; a table or picture becomes empty."""
    match block:
        case Table() | Picture():
            return Bullets(())
        case KeyFacts(rows):
            return Bullets.of(*(f"{row.label}: {row.text}" for row in rows))
        case _:
            return block


def _without_marks(text: str) -> str:
    """Return Markdown without its marks, with the word "it" for each placeholder."""
    text = re.sub(r"\{%.*?%\}|\{#.*?#\}", "", text, flags=re.DOTALL)
    text = re.sub(r"\{\{.*?\}\}", "it", text, flags=re.DOTALL)
    text = re.sub(r"(?m)^(?:#+ .*|[a-z]+: .*)$", "\n", text)
    return re.sub(r"[*_`]", "", text)
