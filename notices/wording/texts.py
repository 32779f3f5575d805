"""Texts that explain each kind of work, filled with the facts of a plan."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

import jinja2
from jinja2.sandbox import SandboxedEnvironment

from notices.errors import TextFault
from notices.operations import REQUIRED_SECTIONS
from notices.paths import templates_folder
from notices.wording.blocks import Block, Paragraph, Run, by_heading, with_links
from notices.wording.markdown_text import escaped, parse
from notices.wording.own_text import TextLine, faults_of, refused
from notices.wording.typography import typeset

_IMPORT = '{% import "_phrases.md" as say with context %}'


@dataclass(frozen=True, slots=True)
class OperationText:
    """Text for members on one kind of work."""

    title: str
    line: str
    """The work in one sentence."""
    sections: Mapping[str, tuple[Block, ...]]

    def section(self, name: str) -> tuple[Block, ...]:
        """Return one of TEXT_SECTIONS; empty if a club's own text leaves it out."""
        return self.sections.get(name, ())

    def joined(self, names: Iterable[str]) -> Paragraph:
        """Return some sections as one paragraph."""
        runs: list[Run] = []
        for name in names:
            for block in self.section(name):
                if isinstance(block, Paragraph):
                    runs += [Run(" "), *block.runs] if runs else block.runs
        return Paragraph(tuple(runs))


@cache
def _environment(language: str) -> SandboxedEnvironment:
    # No autoescape: these texts become blocks of words, and the renderers escape.
    return SandboxedEnvironment(
        loader=jinja2.FileSystemLoader(templates_folder() / language),
        undefined=jinja2.StrictUndefined,
        autoescape=False,
        keep_trailing_newline=True,
    )


def operation_text(
    language: str, slug: str, facts: Mapping[str, object], own: str = ""
) -> OperationText:
    """Return the text on one kind of work, with this plan's facts in its sentences.

    Parameters
    ----------
    language
        Language tag, such as en-GB.
    slug
        File name of the kind of work, without ending.
    facts
        Values of placeholders; a missing one is an error, never a gap.
    own
        The club's own text for this kind of work; empty to use ours.

    Raises
    ------
    TextFault
        If the club's own text cannot be filled.
    """
    if own:
        return _own_text(language, slug, facts, own)
    return _in_sections(slug, _filled(language, _source(language, f"operations/{slug}.md"), facts))


def faults_in_text(language: str, source: str, known: Collection[str] | None) -> Iterator[TextLine]:
    """Yield the faults that keep a club's own text from being filled; see `own_text.faults_of`."""
    return faults_of(source, _environment(language), known)


def our_text(language: str, name: str) -> str:
    """Return one of our texts unfilled, by its name with ending."""
    return _source(language, name)


def _own_text(language: str, slug: str, facts: Mapping[str, object], own: str) -> OperationText:
    if why := refused(own, _environment(language), facts.keys()):
        raise TextFault(f"The text on {slug} cannot be filled: {why}.")
    try:
        return _in_sections(slug, _filled(language, own, facts))
    # A fault in a section, or in the arguments of a phrase, is for the club to mend.
    except (jinja2.TemplateError, TypeError, ValueError, IndexError) as error:
        raise TextFault(f"The text on {slug} cannot be filled: {error}.") from None


@lru_cache(maxsize=256)  # each document asks for the same texts again
def _in_sections(slug: str, text: str) -> OperationText:
    meta, blocks = _parsed(text)
    sections = {title.lower(): found for title, found in by_heading(blocks).items()}
    missing = [name for name in REQUIRED_SECTIONS if not sections.get(name)]
    missing += [key for key in ("title", "line") if not meta.get(key)]
    if missing:
        raise ValueError(f"the text on {slug} does not say {', '.join(missing)}")
    return OperationText(
        meta["title"], meta["line"], {name: tuple(found) for name, found in sections.items()}
    )


def plain_text(language: str, name: str, facts: Mapping[str, object]) -> tuple[Block, ...]:
    """Return the blocks of another text, such as the story of the whole programme."""
    return text_with_head(language, name, facts)[1]


def text_with_head(
    language: str, name: str, facts: Mapping[str, object], own: str = ""
) -> tuple[Mapping[str, str], tuple[Block, ...]]:
    """Return the front matter and the blocks of a text.

    Parameters
    ----------
    language
        Language tag, such as en-GB.
    name
        Path of the file below the language's folder, without its ending.
    facts
        Values of placeholders. Markdown in them has no effect, but addresses become links; a
        tuple of texts becomes a list.
    own
        The club's own text in place of ours; empty to use ours.

    Raises
    ------
    TextFault
        If the club's own text cannot be filled.
    """
    if own and (why := refused(own, _environment(language), facts.keys())):
        raise TextFault(f"The text {name}.md cannot be filled: {why}.")
    try:
        filled = _filled(language, own or _source(language, f"{name}.md"), facts)
    except (jinja2.TemplateError, TypeError, ValueError, IndexError) as error:
        if not own:
            raise
        raise TextFault(f"The text {name}.md cannot be filled: {error}.") from None
    head, blocks = _parsed(filled)
    return head, tuple(with_links(block) for block in blocks)


@lru_cache(maxsize=128)  # one document after the other needs the same text
def _parsed(text: str) -> tuple[Mapping[str, str], tuple[Block, ...]]:
    return parse(text)


def _source(language: str, path: str) -> str:
    return (templates_folder() / language / path).read_text("utf-8")


@lru_cache(maxsize=128)  # several documents say the same; 128 texts are two languages
def _template(language: str, source: str) -> jinja2.Template:
    return _environment(language).from_string(_IMPORT + source)


def _filled(language: str, source: str, facts: Mapping[str, object]) -> str:
    words = {name: _fact(value) for name, value in facts.items()}
    return typeset(_template(language, source).render(words))


def _fact(value: object) -> object:
    """Return a text with its Markdown escaped, or a tuple of texts as a Markdown list."""
    if isinstance(value, str):
        return escaped(value)
    if isinstance(value, tuple):
        return "\n".join(f"* {escaped(item)}" for item in value)
    return value
