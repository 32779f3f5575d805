"""Cautions about safety at work, for the team that does the planned works.

The texts are in ``templates/LANGUAGE/cautions.md``. They name dangers and defer to the law, the
label, the handbook and licensed people; no number is made up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from notices.operations import Opening, Weather
from notices.programme.model import Work
from notices.wording.blocks import Block, by_heading
from notices.wording.lists import and_list, sentence
from notices.wording.words import Words


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution with its title."""

    title: str
    text: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Cautions:
    """A lead, and the cautions after it."""

    lead: tuple[Block, ...]
    points: tuple[Caution, ...]


def cautions(words: Words, works: Sequence[Work]) -> Cautions:
    """Return the cautions for some works, such as those of one day."""
    sections = by_heading(words.text("cautions", caution_facts(words, works))[1])
    lead = tuple(sections.pop("", ()))
    points = tuple(Caution(title, tuple(text)) for title, text in sections.items())
    return Cautions(lead, points)


def caution_facts(words: Words, works: Sequence[Work]) -> dict[str, object]:
    """Return the facts that fill the text of the cautions."""
    entering = [work for work in works if work.operation.enters_ground]
    unchecked = dict.fromkeys(
        words.title(work).lower() for work in entering if not work.services_checked
    )
    openings = {work.operation.opening for work in works}
    return {
        "works": bool(works),
        "services": bool(entering),
        "unchecked": and_list(list(unchecked)),
        "trenches": Opening.TRENCHES in openings,
        "machines": bool(works),  # a mower and a sprayer are machines, too
        "sand": Opening.SAND in openings or "drill and fill" in {w.operation.name for w in works},
        "product": any(Weather.LABEL in work.operation.weather for work in works),
        "lifting": _lifting(works, openings),
    }


def _lifting(works: Sequence[Work], openings: set[Opening]) -> str:
    """Return the loads lifted by hand, as the beginning of a sentence."""
    parts = (
        ("wet cores", any(work.operation.clearing for work in works)),
        ("sand", Opening.SAND in openings),
        ("turf", Opening.BARE in openings),
        ("stone", Opening.TRENCHES in openings),
    )
    named = and_list([name for name, lifted in parts if lifted])
    return sentence(f"loads of {named}").removesuffix(".") if named else ""
