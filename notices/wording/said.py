"""Statements in a text with the days and greens that they name, which documents list as facts."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from notices.wording.blocks import Block, Bullets, Paragraph


@dataclass(frozen=True, slots=True)
class Said:
    """Words from a text, with the days and the greens that they name."""

    text: str
    dates: tuple[dt.date, ...] = ()
    greens: tuple[str, ...] = ()


def lines_of(blocks: Iterable[Block]) -> list[str]:
    """Return the words of each paragraph and each list item."""
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
    """Return the known statements that occur in the blocks, each once."""
    words = "\n".join(lines_of(blocks))
    return tuple(dict.fromkeys(said for said in known if said.text and said.text in words))
