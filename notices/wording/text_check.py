"""Checks that a club's own texts can be filled, and have all parts of the texts they replace."""

from __future__ import annotations

import difflib
import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from notices.findings import Finding, Weight
from notices.operations import OPTIONAL_SECTIONS
from notices.programme.model import Moment, Programme
from notices.wording.audience import Audience
from notices.wording.cautions import caution_facts
from notices.wording.moment_facts import News, Occasion, moment_facts
from notices.wording.moments import text_of
from notices.wording.operation_facts import operation_facts, story_facts
from notices.wording.own_text import PHRASES
from notices.wording.question_facts import question_facts
from notices.wording.texts import faults_in_text, our_text
from notices.wording.words import Words

_PART = re.compile(r"^(?:## +(.+?) *|([a-z]+): *\S.*)$", re.MULTILINE)
_ON_WORKS = "operations/"
_WITH_PARTS = (_ON_WORKS, "moments/", "questions/")
"""Folders of texts whose parts are all looked up by name."""
_AUDIENCE = re.compile(r"^audience: *(.*?) *$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class OwnText:
    """A text that the club wrote."""

    path: tuple[str | int, ...]
    """Path to it through the plan."""
    name: str
    """File name, such as operations/hollow-tining.md."""
    source: str
    replaces: bool
    """Whether it replaces one of our texts; else it belongs to a kind of work of the club's own."""


def check_texts(
    programme: Programme, texts: Iterable[tuple[tuple[str | int, ...], str, str, bool]]
) -> Iterator[Finding]:
    """Yield findings about faults that keep the club's own texts from being used.

    Parameters
    ----------
    programme
        Programme of the plan.
    texts
        Arguments of `OwnText` for each. The path of a finding ends in the line, counted from 1.
    """
    own = tuple(OwnText(*text) for text in texts)
    on_works = [text for text in own if text.name.startswith(_ON_WORKS)]
    found = [*_checked(programme, on_works, _known_on_works(programme))]
    yield from found
    # The other texts name works by the titles in those texts.
    others = [text for text in own if text not in on_works]
    if others and not found:
        yield from _checked(programme, others, _known_besides(programme))


def _checked(
    programme: Programme, texts: Iterable[OwnText], known: Mapping[str, Collection[str]]
) -> Iterator[Finding]:
    for text in texts:
        for fault in faults_in_text(programme.club.language, text.source, known.get(text.name)):
            near = difflib.get_close_matches(fault.unknown, sorted(known.get(text.name, ())), n=1)
            hint = f"Did you mean {near[0]!r}?" if near else ""
            yield _finding(text, fault.line, fault.message, hint)
        if text.replaces and text.name.startswith(_WITH_PARTS):
            yield from _parts(programme.club.language, text)


def _finding(text: OwnText, line: int, message: str, suggestion: str) -> Finding:
    return Finding(
        "text-cannot-be-filled",
        Weight.CANNOT_BUILD,
        f"{text.name}: {message}",
        suggestion,
        (*text.path, line),
    )


def _parts(language: str, text: OwnText) -> Iterator[Finding]:
    """Yield findings about parts of our text that this one lacks."""
    missing = [
        part for part in _named(our_text(language, text.name)) if part not in _named(text.source)
    ]
    if missing:
        yield _finding(
            text, 1, f"this lacks {', '.join(missing)}", "Take them over from the text it replaces"
        )
    if (audience := _AUDIENCE.search(text.source)) and text.name.startswith("questions/"):
        known = [Audience.MEMBERS.value, Audience.COMMITTEE.value]
        if audience[1] not in known:
            line = text.source[: audience.start()].count("\n") + 1
            yield _finding(
                text, line, f"{audience[1]!r} ask no questions here", f"Write {' or '.join(known)}"
            )


def _named(source: str) -> list[str]:
    """Return the parts of a text as they are written: "title:", "## Why"."""
    found = []
    for heading, key in _PART.findall(source):
        if not heading:
            found.append(f"{key}:")
        elif heading.lower() not in OPTIONAL_SECTIONS and "{" not in heading:
            found.append(f"## {heading[:1].upper()}{heading[1:].lower()}")
    return found


def _known_on_works(programme: Programme) -> Mapping[str, Collection[str]]:
    """Return the names that the text on each planned kind of work may use, by file name."""
    return {
        f"{_ON_WORKS}{work.operation.slug}.md": {*operation_facts(work, programme), PHRASES}
        for work in programme.works
    }


def _known_besides(programme: Programme) -> Mapping[str, Collection[str]]:
    """Return the names that each other text may use, by file name, for texts that are used."""
    words = Words(programme)
    known: dict[str, Collection[str]] = {
        "cautions.md": {*caution_facts(words, programme.works), PHRASES}
    }
    for period in programme.periods[:1]:
        known["why.md"] = {*story_facts(period), PHRASES}
        for moment in Moment:
            facts = moment_facts(Occasion(words, period, moment, News()))
            known[f"{text_of(moment)}.md"] = {*facts, PHRASES}
    asked = {*question_facts(words), PHRASES}
    return known | {name: asked for name in programme.texts if name.startswith("questions/")}
