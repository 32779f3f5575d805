"""One day of play in words, for people who come once: what is open, what they meet, where to start."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from notices.operations import Opening, WhileWorking
from notices.programme.model import DayOfPlay, Hole, Period, PlayStatus, Stretch
from notices.programme.same_greens import should_putt_well
from notices.wording import circumstances
from notices.wording.amounts import time_of_day
from notices.wording.lists import and_list, sentence
from notices.wording.words import Words

NOON = 720.0
"""Minutes from midnight; what is over by then is a matter of the morning."""

_LEFT_BEHIND = (
    (Opening.SLITS, "thin slits"),
    (Opening.HOLES, "small holes"),
    (Opening.CHANNELS, "narrow lines"),
    (Opening.SAND, "sand"),
    (Opening.TRENCHES, "the lines of new drains"),
)
"""What a golfer still sees of each kind of opening."""


def what_is_open(words: Words, day: dt.date) -> str:
    """Say which holes are in play: all of them; all but some; or none that day."""
    play = words.programme.play.get(day)
    if play is None:
        return "All holes are open."
    closed, temporary = play.all_day.closed, play.all_day.temporary
    if set(closed) == set(words.programme.holes) == set(_closed_throughout(play)):
        return "The course is closed all day."
    parts = [
        f"{words.holes(holes)} {'is' if len(holes) == 1 else 'are'} closed{when}"
        for holes, when in _closed_by_part_of_day(play)
    ]
    if temporary:
        one = len(temporary) == 1
        have = "has a temporary green" if one else "have temporary greens"
        parts.append(f"{words.holes(temporary)} {have}")
    rest = " All other holes are open." if play.all_day.open else ""
    return " ".join(sentence(part) for part in parts) + rest


def _closed_throughout(play: DayOfPlay) -> tuple[Hole, ...]:
    """Return the holes that are closed from morning to evening."""
    return tuple(
        hole for hole in play.all_day.closed if all(hole in hours.closed for hours in play.by_hour)
    )


def _closed_by_part_of_day(play: DayOfPlay) -> list[tuple[tuple[Hole, ...], str]]:
    """Return the closed holes by the part of the day that they are closed for."""
    found: dict[str, list[Hole]] = {}
    throughout = _closed_throughout(play)
    for hole in play.all_day.closed:
        if hole in throughout and hole not in play.all_day.part_of_day:
            when = " all day"
        else:
            hours = [h for h in play.by_hour if hole in h.closed]
            known = hole not in play.all_day.part_of_day
            if known and max(h.ends for h in hours) <= NOON:
                when = " in the morning"
            elif known and min(h.begins for h in hours) >= NOON:
                when = " in the afternoon"
            else:
                when = " for part of the day"
        found.setdefault(when, []).append(hole)
    return [(tuple(holes), when) for when, holes in found.items()]


def closed_for(words: Words, day: dt.date, greens: Sequence[str]) -> str:
    """Say how long some greens are away that day: all day, in the morning, for part of the day."""
    away: dict[str, list[str]] = {}
    for green in greens:
        told = [s for s in words.programme.stretches_on(day, green) if not s.passing]
        closed = [s for s in told if s.status is PlayStatus.CLOSED]
        if closed:
            away.setdefault(f"Closed{_part_of_day(closed)}", []).append(green)
        elif any(s.status is PlayStatus.TEMPORARY for s in told):
            one = "Temporary green" if len(greens) == 1 else "Temporary greens"
            away.setdefault(one, []).append(green)
    if not away:
        return "Open."
    if len(away) == 1:
        return f"{next(iter(away))}."
    mixed = any(how.startswith("Temporary") for how in away)
    return "Closed, or with temporary greens." if mixed else "Closed for part of the day."


def _part_of_day(closed: Sequence[Stretch]) -> str:
    if any(stretch.all_day for stretch in closed):
        return " all day"
    known = all(stretch.hours_known for stretch in closed)
    if known and max(stretch.ends for stretch in closed) <= NOON:
        return " in the morning"
    if known and min(stretch.begins for stretch in closed) >= NOON:
        return " in the afternoon"
    return " for part of the day"


def what_the_greens_are_like(words: Words, day: dt.date) -> str:
    """Say what recent work has left on the greens; as usual where it has left nothing."""
    recovering = [
        green
        for green in words.programme.greens
        if words.programme.status_on(day, green) is PlayStatus.RECOVERING
    ]
    if not recovering:
        return "As usual: no recent work will trouble your putts."
    said = []
    for after_date in (False, True):
        greens = [
            green
            for green in recovering
            if should_putt_well(words.programme.periods, day, [green]) is after_date
        ]
        if greens:
            say = _should_be_well if after_date else _recovering
            said.append(say(words, day, greens))
    return " ".join(said)


def _should_be_well(words: Words, _day: dt.date, greens: Sequence[str]) -> str:
    """Say no more of greens whose date has come than that it is an estimate."""
    subject, one = _subject(words, greens)
    it = "It" if one else "Some"
    return f"{sentence(f'{subject} should putt well by now')} {it} may still be healing."


def _recovering(words: Words, day: dt.date, greens: Sequence[str]) -> str:
    subject, one = _subject(words, greens)
    seen = _left_behind(words, day, greens)
    meet = f" You will see {seen}." if seen else ""
    are = "is" if one else "are"
    return (
        f"{sentence(f'{subject} {are} recovering from our work')}{meet} "
        "Putts may be slower and may wander."
    )


def _subject(words: Words, greens: Sequence[str]) -> tuple[str, bool]:
    """Name greens, "the greens" where they are all, and say whether it is one."""
    # The putting green may be left out of the works and is not what visitors ask about.
    holes = [green for green in words.programme.greens.values() if green.holes]
    if all(green.key in greens for green in holes):
        return "The greens", False
    return words.greens(greens), len(greens) == 1


def _left_behind(words: Words, day: dt.date, greens: Sequence[str]) -> str:
    kinds = {
        work.operation.opening
        for work in words.programme.works
        for recovery in words.programme.recoveries[work.id]
        if recovery.green in greens
        and min(work.days_on(recovery.green))
        <= day
        < (recovery.putting_smoothly.late or dt.date.max)
    }
    return and_list([said for kind, said in _LEFT_BEHIND if kind in kinds])


def where_to_start(words: Words, day: dt.date) -> str:
    """Say from which tee a round can begin, and from when; empty where it cannot."""
    play = words.programme.play.get(day)
    if play is None:
        return "Start as usual."
    first = play.first_start
    if first is None:
        return ""
    usual = [start for start in first.starts if start.hole[1] == 1]
    if not usual:
        longest = max(first.starts, key=lambda start: len(start.holes))
        usual = [longest]
    tees = and_list([words.holes([start.hole]) for start in usual], "or")
    from_then = "" if first.begins == 0 else f" from {_clock(words, first.begins)}"
    counts = {len(start.holes) for start in usual}
    count = counts.pop() if len(counts) == 1 else 0
    length = f": {count} holes in a row are in play from there" if count else ""
    return sentence(f"You can start from {tees}{from_then}{length}")


def _clock(words: Words, minutes: float) -> str:
    return words.language.clock(time_of_day(minutes))


def kept_free(words: Words, day: dt.date) -> str:
    """Say that a day may be needed after rain; empty where it is not kept for that."""
    periods = [one for one in words.programme.periods if day in one.reserve_dates]
    if not periods:
        return ""
    said = "We keep this day free in case rain stops our work before it."
    works = [work for period in periods for work in period.works]
    closes = any(work.while_working is WhileWorking.CLOSED for work in works)
    return f"{said} If we need it, some greens will be closed." if closes else said


def restrictions_on(words: Words, day: dt.date) -> list[str]:
    """What one goes without that day, a sentence or two each."""
    return [
        circumstances.gone_without(restriction, "that day")
        for restriction in words.programme.restrictions
        if day in restriction.dates
    ]


def best_days(words: Words, period: Period) -> tuple[str, tuple[dt.date, ...]]:
    """Say when to come for greens at their best, with the days that it names.

    Empty where growth stops in between, and nobody can name a day.
    """
    promise = period.putts_well_after_all
    after = promise.at_worst or promise.expect_by
    if not period.noticed or promise.growth_stops is not None:
        return "", ()
    first = period.days[0]
    text = (
        "If you can choose your day, the greens are at their best "
        f"before {words.dates.day(first)} or after {words.dates.day(after)}."
    )
    return text, (first, after)
