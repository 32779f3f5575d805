"""What is done on a day: the work itself, and later dressings with the brushing that goes along."""

from __future__ import annotations

import datetime as dt

from notices.operations import Opening, WhileWorking
from notices.programme.model import Programme, Work

Done = list[tuple[Work, tuple[str, ...]]]
"""Works in the order of the programme, each with its greens."""


def rounds_on(programme: Programme, day: dt.date) -> dict[int, Done]:
    """Part what is done on a day by its round: 1 is the work itself, 2 the second dressing.

    What opens nothing goes along with the dressing that its green gets that day.
    """
    visits = [(work, v) for work in programme.works for v in work.visits if v.date == day]
    opened = {
        green: visit.ordinal
        for work, visit in sorted(visits, key=lambda one: -one[1].ordinal)
        if work.operation.opening is not Opening.NONE
        for green in visit.greens
    }
    found: dict[int, dict[str, list[str]]] = {}
    for work, visit in visits:
        for green in visit.greens:
            along = work.operation.opening is Opening.NONE
            ordinal = opened.get(green, 1) if along else visit.ordinal
            found.setdefault(ordinal, {}).setdefault(work.id, []).append(green)
    return {
        ordinal: [(w, tuple(greens[w.id])) for w in programme.works if w.id in greens]
        for ordinal, greens in sorted(found.items())
    }


def only_again_on(programme: Programme, day: dt.date) -> bool:
    """Whether all that golfers meet of a day's work is later dressings.

    What goes along with them is part of them. Brushing or feeding other greens is work for the
    team, but opens no turf, and a green is open again as soon as it is done.
    """
    rounds = rounds_on(programme, day)
    itself = rounds.pop(1, [])
    return bool(rounds) and not any(_met(work) for work, _ in itself)


def _met(work: Work) -> bool:
    """Whether golfers meet open turf, or a green that stays out of play when the work is done."""
    stays_away = work.while_working is not WhileWorking.OPEN and work.reopen_days > 0
    return stays_away or work.operation.opening is not Opening.NONE
