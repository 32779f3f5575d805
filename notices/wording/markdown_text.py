"""Markdown converted into blocks. Anything else than our kinds of block becomes plain words.

Raw HTML, scripts and pictures cannot pass, because there is no block for them.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator, Mapping
from xml.etree.ElementTree import Element

import markdown
from markdown.util import STX

from notices.wording.blocks import Block, Bullets, Heading, Paragraph, Run, Runs

_BLANKS = re.compile(r" {2,}")
_SIGNS = re.compile(r"([\\`*_{}\[\]()>#+\-.!])")
_ESCAPED = re.compile(r"\\([\\`*_{}\[\]()>#+\-.!])")


def escaped(words: str) -> str:
    """Return the words with all Markdown signs escaped."""
    return _SIGNS.sub(r"\\\1", words)


def parse(text: str) -> tuple[dict[str, str], tuple[Block, ...]]:
    """Read a text with its front matter.

    Parameters
    ----------
    text
        Markdown, with "key: value" lines at its top.

    Returns
    -------
    dict, tuple
        The front matter and the blocks.
    """
    reader = markdown.Markdown(extensions=["meta"])
    # Without these, HTML in a text is plain words, and addresses stay readable.
    reader.preprocessors.deregister("html_block")
    for pattern in ("html", "entity", "automail", "image_link", "image_reference"):
        reader.inlinePatterns.deregister(pattern)
    lines = text.split("\n")
    for preprocessor in reader.preprocessors:
        lines = preprocessor.run(lines)
    root: Element = reader.parser.parseDocument(lines).getroot()  # type: ignore[assignment]
    for treeprocessor in reader.treeprocessors:
        # A tree processor changes the tree in place and returns None, or returns another.
        changed = treeprocessor.run(root)
        root = root if changed is None else changed
    meta: Mapping[str, list[str]] = getattr(reader, "Meta", {})
    # The library leaves the head alone, backslashes too.
    head = {key: _ESCAPED.sub(r"\1", _one_line(" ".join(value))) for key, value in meta.items()}
    return head, tuple(_blocks(root))


def _blocks(root: Element) -> Iterator[Block]:
    for element in root:
        if element.tag in ("h1", "h2", "h3", "h4", "h5", "h6"):
            yield Heading("".join(run.text for run in _runs(element)), int(element.tag[1]))
        elif element.tag in ("ul", "ol"):
            yield Bullets(tuple(_tidy(_runs(item)) for item in element))
        elif element.tag == "blockquote":
            yield from _blocks(element)
        else:
            runs = _tidy(_runs(element))
            if runs:
                yield Paragraph(runs)


def _runs(
    element: Element, *, strong: bool = False, emphasis: bool = False, link: str = ""
) -> Iterator[Run]:
    strong = strong or element.tag == "strong"
    emphasis = emphasis or element.tag == "em"
    if element.tag == "a":
        target = element.get("href", "")
        link = target if target.startswith(("https://", "mailto:")) else ""
    if element.text:
        # The library escapes only code for HTML; the renderers escape all words.
        text = html.unescape(element.text) if element.tag == "code" else element.text
        yield Run(text, strong, emphasis, link)
    for child in element:
        yield from _runs(child, strong=strong, emphasis=emphasis, link=link)
        if child.tail:
            yield Run(child.tail, strong, emphasis, link)


def _tidy(runs: Iterator[Run]) -> Runs:
    """Return the runs without line breaks of the source and without blank ends."""
    tidied = [
        Run(_one_line(run.text), run.strong, run.emphasis, run.link) for run in runs if run.text
    ]
    while tidied and not tidied[0].text.strip():
        tidied.pop(0)
    while tidied and not tidied[-1].text.strip():
        tidied.pop()
    if not tidied:
        return ()
    first, last = tidied[0], tidied[-1]
    tidied[0] = Run(first.text.lstrip(), first.strong, first.emphasis, first.link)
    last = tidied[-1]
    tidied[-1] = Run(last.text.rstrip(), last.strong, last.emphasis, last.link)
    return tuple(tidied)


def _one_line(text: str) -> str:
    # The library marks escaped characters with STX and ETX; none may reach a reader.
    # Text that a condition leaves out leaves its blanks behind.
    return _BLANKS.sub(" ", text.replace(STX, "").replace("\x03", "").replace("\n", " "))
