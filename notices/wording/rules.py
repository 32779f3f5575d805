"""Rules of golf while greens are worked on and recover: what a player may do, in plain words."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass

from notices.programme.model import NINE, RuleOfGolf
from notices.programme.rules_of_play import ENGLAND, opens_holes, opens_slits, rounds
from notices.wording.lists import and_list
from notices.wording.words import Words

COMMITTEE = "The committee decides which local rules apply."


@dataclass(frozen=True, slots=True)
class RuleSaid:
    """What is said of one rule, and the days that it names."""

    text: str
    dates: tuple[dt.date, ...] = ()


def rules(words: Words, days: Collection[dt.date] | None = None) -> list[RuleSaid]:
    """Say what a player may and may not do, two to four points; none where no rule is called up.

    With ``days``, only what matters on any of those is said.
    """
    met = {
        rule.rule
        for rule in words.programme.rules
        if days is None or not set(days).isdisjoint(rule.dates)
    }
    said = []
    if RuleOfGolf.RELIEF_FROM_HOLES in met:
        said.append(
            RuleSaid(
                f"If Model Local Rule E-4 is in force, you get free relief from the {_openings(words)}. "
                "You get none when they are only in your stance, or in your line of play on the "
                "green."
            )
        )
    hands = _with_your_hands(met)
    if hands:
        said.append(RuleSaid(hands))
    if RuleOfGolf.TEMPORARY_GREENS in met:
        said.append(
            RuleSaid(
                "If Model Local Rule D-2 is in force, a green that has a temporary one is a wrong green. "
                "If your ball lies on it, you must take free relief. Drop it within one "
                "club-length of the nearest point clear of that green, not nearer the hole."
            )
        )
    return [*said, _handicap(words, met, days)] if said else []


def _openings(words: Words) -> str:
    works = words.programme.works
    kinds = (("holes", opens_holes), ("slits", opens_slits))
    return and_list([name for name, opens in kinds if any(map(opens, works))])


def _with_your_hands(met: set[RuleOfGolf]) -> str:
    """Say what a player may put right on a green."""
    may = "You may move loose sand and soil on the green."
    may_not = "You may not repair the holes: they are part of looking after the green."
    parts = ((RuleOfGolf.LOOSE_SAND, may), (RuleOfGolf.HOLES_NOT_REPAIRED, may_not))
    return " ".join(text for rule, text in parts if rule in met)


def _handicap(words: Words, met: set[RuleOfGolf], days: Collection[dt.date] | None) -> RuleSaid:
    """Say whether scores count for handicap; outside England others know."""
    programme = words.programme
    if programme.club.country != ENGLAND:
        return RuleSaid(
            "Please ask the committee whether your score counts for handicap. "
            "The national body sets the limits."
        )
    if RuleOfGolf.TEMPORARY_GREENS not in met:
        return RuleSaid("Work on the greens does not by itself stop a score counting for handicap.")
    limit = "A score can count for handicap only with at most two temporary greens in 18 holes, or one in nine."
    of_club = list(rounds(programme))
    longest = max(map(len, of_club), default=0)
    too_many = [
        day.date
        for day in programme.scores
        if len(day.holes) == longest and not day.within_limit and (days is None or day.date in days)
    ]
    # Where one course is over the limit, a score still counts on another.
    over = sorted(
        day
        for day, courses in Counter(too_many).items()
        if courses == sum(len(holes) == longest for holes in of_club)
    )
    if not over:
        return RuleSaid(limit)
    score = "no score" if longest == NINE else f"no score over {longest} holes"
    return RuleSaid(f"{limit} So {score} can count {words.dates.on_days(over)}.", tuple(over))
