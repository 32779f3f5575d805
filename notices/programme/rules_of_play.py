"""Rules of golf that the works bring into play, and what temporary greens do to a score.

Nothing here is decided for a committee: it says on which days and greens a rule matters.
"""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from notices.operations import Noticed, Opening
from notices.programme.model import (
    NINE,
    Hole,
    PlayStatus,
    Programme,
    RuleInPlay,
    RuleOfGolf,
    ScoreDay,
    Work,
)

ENGLAND = "GB-ENG"

EIGHTEEN = 2 * NINE

LIMITS = {EIGHTEEN: 2, NINE: 1}
"""How many temporary greens a score for handicap bears, by the holes of the round
(england_golf)."""

PREFERRED_LIES = ((10, 1), (4, 30))
"""First and last day of the year, across its end, on which preferred lies leave a score counting
(england_golf)."""

RULES, HANDICAP = ("rules_of_golf2023",), ("england_golf",)


def rules_in_play(programme: Programme) -> tuple[RuleInPlay, ...]:
    """Return the rules that matter, each with its days and greens; none where none does.

    Free relief from holes, E-4, may take in the slits of scarifying. A player may remove loose
    sand and soil, and may not repair aeration holes. A green that a temporary one replaces is a
    wrong green where D-2 is adopted.
    """
    recovering = _recovering(programme)
    found = [
        _of_works(programme, RuleOfGolf.RELIEF_FROM_HOLES, opens_holes_or_slits, recovering),
        _of_works(programme, RuleOfGolf.LOOSE_SAND, leaves_sand_or_soil, recovering),
        _of_works(programme, RuleOfGolf.HOLES_NOT_REPAIRED, opens_holes, recovering),
        *_of_temporary_greens(programme),
    ]
    return tuple(rule for rule in found if rule is not None)


def opens_holes(work: Work) -> bool:
    """Whether it leaves aeration holes that a ball may meet."""
    operation = work.operation
    return operation.opening is Opening.HOLES and operation.noticed >= Noticed.A_LITTLE


def opens_slits(work: Work) -> bool:
    """Whether it leaves slits that a ball may meet, as scarifying does."""
    operation = work.operation
    return operation.opening is Opening.SLITS and operation.noticed is Noticed.CLEARLY


def opens_holes_or_slits(work: Work) -> bool:
    """Whether it leaves anything that E-4 may give relief from."""
    return opens_holes(work) or opens_slits(work)


def leaves_sand_or_soil(work: Work) -> bool:
    """Whether sand or soil lies loose on the green after it."""
    return brings_sand(work) or (work.operation.removes_core and opens_holes_or_slits(work))


def brings_sand(work: Work) -> bool:
    """Whether sand is spread, or goes down with the work and is left over on top."""
    return work.operation.opening is Opening.SAND or work.operation.name == "drill and fill"


def score_days(programme: Programme) -> tuple[ScoreDay, ...]:
    """Return every day with a temporary green for each round that meets one; in England alone.

    A round is a course of eighteen holes, or a nine. Other countries set limits of their own.
    """
    if programme.club.country != ENGLAND:
        return ()
    return tuple(
        ScoreDay(
            date=day.date,
            holes=holes,
            temporary=met,
            limit=LIMITS[len(holes)],
            preferred_lies=_in_season(day.date),
            source=HANDICAP,
        )
        for day in programme.play.values()
        for holes in rounds(programme)
        if (met := tuple(hole for hole in day.all_day.temporary if hole in holes))
    )


def rounds(programme: Programme) -> Iterator[tuple[Hole, ...]]:
    """Yield the rounds of a club: its courses of eighteen holes, then its nines."""
    for course in dict.fromkeys(course for course, _ in programme.holes):
        holes = tuple(hole for hole in programme.holes if hole[0] == course)
        if len(holes) == EIGHTEEN:
            yield holes
    yield from (nine for nine in programme.nines if len(nine) == NINE)


def _in_season(day: dt.date) -> bool:
    first, last = PREFERRED_LIES
    return (day.month, day.day) >= first or (day.month, day.day) <= last


def _of_works(
    programme: Programme,
    rule: RuleOfGolf,
    concerned: Callable[[Work], bool],
    recovering: Mapping[str, Sequence[dt.date]],
) -> RuleInPlay | None:
    """Return a rule for as long as golfers putt on greens that recover from some works."""
    works = [work for work in programme.works if concerned(work)]
    met = set()
    for work in works:
        for recovery in programme.recoveries[work.id]:
            days = recovering.get(recovery.green, ())
            smooth = recovery.putting_smoothly
            begins = bisect_left(days, min(work.days_on(recovery.green)))
            ends = bisect_left(days, smooth.late or smooth.expected)
            met |= {(day, recovery.green) for day in days[begins:ends]}
    return _rule(programme, rule, met, tuple(work.id for work in works))


def _of_temporary_greens(programme: Programme) -> Iterator[RuleInPlay | None]:
    """Yield D-2, and what it makes of the green that is replaced."""
    met = {
        (day, key)
        for day, on_day in programme.stretches.items()
        for key, stretches in on_day.items()
        if programme.greens[key].holes
        and any(stretch.status is PlayStatus.TEMPORARY for stretch in stretches)
    }
    because = {
        name
        for day, key in met
        for stretch in programme.stretches_on(day, key)
        if stretch.status is PlayStatus.TEMPORARY
        for name in stretch.because
    }
    works = tuple(work.id for work in programme.works if work.id in because)
    for rule in (RuleOfGolf.TEMPORARY_GREENS, RuleOfGolf.WRONG_GREEN):
        yield _rule(programme, rule, met, works)


def _rule(
    programme: Programme,
    rule: RuleOfGolf,
    met: Iterable[tuple[dt.date, str]],
    works: tuple[str, ...],
) -> RuleInPlay | None:
    days = sorted({day for day, _ in met})
    greens = {green for _, green in met}
    if not days:
        return None
    named = tuple(key for key in programme.greens if key in greens)
    return RuleInPlay(rule, tuple(days), named, works, RULES)


def _recovering(programme: Programme) -> Mapping[str, Sequence[dt.date]]:
    """Return the days on which golfers putt on each green while it recovers, if only for an hour."""
    greens = [key for key, green in programme.greens.items() if green.holes]
    found: dict[str, list[dt.date]] = {green: [] for green in greens}
    for day in sorted(programme.status.keys() | programme.stretches.keys()):
        by_hour, all_day = programme.stretches.get(day), programme.status.get(day, {})
        for green in greens:
            told = [one.status for one in by_hour[green]] if by_hour else [all_day[green]]
            if PlayStatus.RECOVERING in told:
                found[green].append(day)
    return found
