"""Rules of golf during work and recovery, in plain words for players."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from notices.programme.model import NINE, Hole, RuleOfGolf
from notices.programme.rules_of_play import ENGLAND, brings_sand, opens_holes, opens_slits, rounds
from notices.wording.greens import course_phrase
from notices.wording.lists import and_list, number, sentence
from notices.wording.words import Words

Round = tuple[Hole, ...]
"""Holes of a round: a course of eighteen, or a nine."""

COMMITTEE = "The committee decides which local rules apply."


@dataclass(frozen=True, slots=True)
class RuleSaid:
    """Words about one rule, with the days that they name."""

    text: str
    dates: tuple[dt.date, ...] = ()


def rules(words: Words, days: Collection[dt.date] | None = None) -> list[RuleSaid]:
    """Return two to four points on what a player may do; none if no rule matters.

    With ``days``, only rules that matter on any of those count.
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
    hands = _with_your_hands(words, met)
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


def _with_your_hands(words: Words, met: set[RuleOfGolf]) -> str:
    """Return what a player may put right on a green, with sand only if there is some."""
    sand = any(brings_sand(work) for work in words.programme.works)
    may = f"You may move loose {'sand and soil' if sand else 'soil'} on the green."
    may_not = "You may not repair the holes: they are part of looking after the green."
    parts = ((RuleOfGolf.LOOSE_SAND, may), (RuleOfGolf.HOLES_NOT_REPAIRED, may_not))
    return " ".join(text for rule, text in parts if rule in met)


def _handicap(words: Words, met: set[RuleOfGolf], days: Collection[dt.date] | None) -> RuleSaid:
    """Return whether scores count for handicap; outside England, the advice to ask."""
    programme = words.programme
    if programme.club.country != ENGLAND:
        return RuleSaid(
            "Please ask the committee whether your score counts for handicap. "
            "The national body sets the limits."
        )
    if RuleOfGolf.TEMPORARY_GREENS not in met:
        return RuleSaid("Work on the greens does not by itself stop a score counting for handicap.")
    limit = "A score can count for handicap only with at most two temporary greens in 18 holes, or one in nine."
    over = lost_scores(words, days)
    if not over:
        return RuleSaid(limit)
    first, *others = (f"{score} can count {words.dates.on_days(dates)}." for score, dates in over)
    more = " ".join([f"So {first}", *map(sentence, others)])
    return RuleSaid(f"{limit} {more}", tuple(sorted({day for _, dates in over for day in dates})))


def lost_scores(
    words: Words, days: Collection[dt.date] | None = None
) -> list[tuple[str, tuple[dt.date, ...]]]:
    """Return the scores that cannot count for handicap, as "no score over 18 holes", with days.

    A course is named if it is over the limit and another is not.
    """
    programme = words.programme
    of_club = _whole_rounds(list(rounds(programme)))
    over: dict[dt.date, list[Round]] = {}
    for day in programme.scores:
        if day.holes in of_club and not day.within_limit and (days is None or day.date in days):
            over.setdefault(day.date, []).append(day.holes)
    alike: dict[tuple[Round, ...], list[dt.date]] = {}
    for date, met in sorted(over.items()):
        alike.setdefault(tuple(met), []).append(date)
    return [
        (score, tuple(dates))
        for met, dates in alike.items()
        for score in _scores(words, met, of_club)
    ]


def lost_scores_said(words: Words) -> list[RuleSaid]:
    """Return sentences on the scores that cannot count for handicap, and their days."""
    return [
        RuleSaid(sentence(f"{score} can count for handicap {words.dates.on_days(dates)}"), dates)
        for score, dates in lost_scores(words)
    ]


def _whole_rounds(of_club: Sequence[Round]) -> list[Round]:
    """Return the rounds without nines of a course of eighteen, of which one may still count."""
    eighteens = {holes[0][0] for holes in of_club if len(holes) > NINE}
    return [holes for holes in of_club if len(holes) > NINE or holes[0][0] not in eighteens]


def _scores(words: Words, met: Sequence[Round], of_club: Sequence[Round]) -> Iterator[str]:
    """Yield scores of rounds: "no score", or "no score over 18 holes on the Oak course"."""
    lengths = sorted({len(holes) for holes in met}, reverse=True)
    if len(met) == len(of_club) and len(lengths) == 1:
        yield "no score" if lengths == [NINE] else f"no score over {lengths[0]} holes"
        return
    for length in lengths:
        where = and_list([_round(words, holes) for holes in met if len(holes) == length], "or")
        yield f"no score over {number(length)} holes on {where}"


def _round(words: Words, holes: Round) -> str:
    """Return the name of a round: its course, or else its holes."""
    (course, _), *_ = holes
    alone = sum(name == course for name, _ in words.programme.holes) == len(holes)
    return course_phrase(course) if course and alone else words.holes(holes)
