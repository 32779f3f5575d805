"""What is said, and the days and greens that it names: a document turns it into a fact."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from notices.wording.blocks import Block, Bullets, Paragraph


@dataclass(frozen=True, slots=True)
class Said:
    """Words as they stand in a text, with the days and the greens that they name."""

    text: str
    dates: tuple[dt.date, ...] = ()
    greens: tuple[str, ...] = ()


def lines_of(blocks: Iterable[Block]) -> list[str]:
    """Return the words of paragraphs and lists, a string for each paragraph and each item."""
    found = []
    for block in blocks:
        match block:
            case Paragraph():
                found.append(block.text)
            case Bullets(items):
                found += ["".join(run.text for run in item) for item in items]
            case _:
                pass
    return found


def told_in(blocks: Iterable[Block], known: Iterable[Said]) -> tuple[Said, ...]:
    """Return what of the known facts stands in the blocks, each once."""
    words = "\n".join(lines_of(blocks))
    return tuple(dict.fromkeys(said for said in known if said.text and said.text in words))
