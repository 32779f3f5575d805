"""What a plan says in the club's own sentences, each with its way through the plan."""

from __future__ import annotations

from collections.abc import Iterator

from notices.plan.messages import Path
from notices.plan.model import Plan

OwnWords = tuple[Path, str]


def own_words(plan: Plan) -> Iterator[OwnWords]:
    """Yield every sentence, or more, that golfers read as the club wrote it."""
    for key in ("contact", "sign_off"):
        if said := getattr(plan.club, key):
            yield ("club", key), said
    for index, work in enumerate(plan.works):
        for key in ("why", "put_off_because", "note", "temporary"):
            if said := getattr(work, key):
                yield ("works", index, key), said
    for path, _, text, _ in own_texts(plan):
        yield path, text
    for index, closed in enumerate(plan.closures):
        for key in ("reason", "instead", "temporary"):
            if said := getattr(closed, key):
                yield ("closures", index, key), said


def own_texts(plan: Plan) -> Iterator[tuple[Path, str, str, bool]]:
    """Yield each text of the club's own.

    Yields
    ------
    tuple
        Its way through the plan, its name, what it says, and whether it takes the place of ours.
    """
    for index, text in enumerate(plan.texts):
        yield ("texts", index, "text"), text.name, text.text, True
    for index, own in enumerate(plan.operations):
        name = f"operations/{own.name.replace(' ', '-')}.md"
        yield ("operations", index, "text"), name, own.text, False
