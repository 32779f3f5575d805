"""One day of play in words, for people who come once: what is open, what they meet, where to start."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

from notices.calendar_days import ONE_DAY, each_day
from notices.operations import Noticed, Opening, WhileWorking
from notices.programme.best_days import best_days as best_to_come
from notices.programme.holes_in_play import starts
from notices.programme.hours import to_half_hours
from notices.programme.model import (
    NINE,
    WHOLE_DAY,
    DayOfPlay,
    Hole,
    HolesInPlay,
    Period,
    PlayStatus,
    Stretch,
    Work,
)
from notices.programme.same_greens import should_putt_well
from notices.wording import circumstances
from notices.wording.amounts import time_of_day
from notices.wording.lists import and_list, number, sentence
from notices.wording.measures import up_to
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


_PUTTS = {
    Noticed.HARDLY: "Putts run much as usual.",
    Noticed.A_LITTLE: "You may notice it a little when you putt.",
    Noticed.CLEARLY: "Putts may be slower and may wander.",
}
"""Sentences about putts on greens that recover, by how much golfers notice the work."""


def what_is_open(words: Words, day: dt.date) -> str:
    """Say which holes are in play and how many: all of them; all but some; or none that day."""
    play = words.programme.play.get(day)
    if play is None:
        return "All holes can be played."  # though a tee or a fairway may be closed
    temporary = play.all_day.temporary
    throughout = play.closed_throughout
    if set(throughout) == set(words.programme.holes):
        return "The course is closed all day."
    for_part = [hole for hole in play.all_day.closed if hole not in throughout]
    unknown = [hole for hole in for_part if hole in play.all_day.part_of_day]
    parts = [
        f"{words.holes(holes)} {'is' if len(holes) == 1 else 'are'} closed{when}"
        for holes, when in (
            (throughout, " all day"),
            *_closed_by_the_hour(words, play, [hole for hole in for_part if hole not in unknown]),
            (unknown, " for part of the day"),
        )
        if holes
    ]
    if temporary:
        one = len(temporary) == 1
        have = "has a temporary green" if one else "have temporary greens"
        parts.append(f"{words.holes(temporary)} {have}")
    if play.all_day.open:
        count = len(play.all_day.open)
        others = "hole is" if count == 1 else f"{number(count)} holes are"
        parts.append(f"the other {others} open{' all day' if for_part else ''}")
    return " ".join(sentence(part) for part in parts)


def _closed_by_the_hour(
    words: Words, play: DayOfPlay, holes: Sequence[Hole]
) -> Iterator[tuple[Sequence[Hole], str]]:
    """Yield the holes that are closed for a while, with how that is said: from when to when."""
    if not holes:
        return
    hours = {hole: [h for h in play.by_hour if hole in h.closed] for hole in holes}
    spans = {(own[0].begins, own[-1].ends) for own in hours.values()}
    begins, ends = min(spans)[0], max(end for _, end in spans)
    times = words.language.clock_span(_clock(words, begins), _clock(words, ends))
    if len(spans) == 1:
        yield holes, f" from {times}"
        return
    long = up_to(max(sum(h.ends - h.begins for h in own) for own in hours.values()))
    yield holes, f" in turn from {times}{f', each for {long}' if long else ''}"


def closed_for(words: Words, day: dt.date, greens: Sequence[str]) -> str:
    """Say how long some greens are away that day, and which have temporary ones."""
    shut: dict[str, list[Stretch]] = {}
    temporary: list[str] = []
    for green in greens:
        told = to_half_hours(words.programme.stretches_on(day, green))
        if closed := [s for s in told if s.status is PlayStatus.CLOSED and not s.passing]:
            shut[green] = closed
        elif any(s.status is PlayStatus.TEMPORARY for s in told):
            temporary.append(green)
    one = len(temporary) == 1
    if len(temporary) == len(greens):
        return "Temporary green." if one else "Temporary greens."
    said = []
    if shut:
        said.append(_shut_for(words, shut, every=len(shut) + len(temporary) == len(greens)))
    if temporary:
        have = "has a temporary green" if one else "have temporary greens"
        said.append(sentence(f"{words.greens(temporary)} {have}"))
    if not shut:
        said.append("The others are open." if temporary else "Open.")
    return " ".join(said)


def _shut_for(words: Words, shut: Mapping[str, Sequence[Stretch]], *, every: bool) -> str:
    """Say how long greens are closed that day, and which of them where it is not all."""
    stretches = [stretch for told in shut.values() for stretch in told]
    whole = [stretch for stretch in stretches if stretch.all_day and stretch.hours_known]
    if not whole:
        when = _for_part_of_the_day(stretches, several=len(shut) > 1)
    else:
        when = " all day" if len(whole) == len(stretches) else " for part of the day"
    if every:
        return f"Closed{when}."
    are = "is" if len(shut) == 1 else "are"
    return sentence(f"{words.greens(tuple(shut))} {are} closed{when}") + " The others are open."


def _for_part_of_the_day(shut: Sequence[Stretch], *, several: bool) -> str:
    """In turn in the morning, each for up to an hour: what golfers meet of greens closed in turn."""
    spans = {(stretch.begins, stretch.ends) for stretch in shut}
    in_turn = len(spans) > 1
    if (in_turn and not several) or not all(stretch.hours_known for stretch in shut):
        return " for part of the day"
    part = ""
    if max(ends for _, ends in spans) <= NOON:
        part = " in the morning"
    elif min(begins for begins, _ in spans) >= NOON:
        part = " in the afternoon"
    long = up_to(max(ends - begins for begins, ends in spans))
    if in_turn:
        return f" in turn{part}{f', each for {long}' if long else ''}"
    return f"{part}{f' for {long}' if long else ''}" or " for part of the day"


def what_the_greens_are_like(words: Words, day: dt.date) -> str:
    """Say what recent work has left on the greens; as usual where it has left nothing."""
    recovering = recovering_on(words, day)
    if not recovering:
        return "As usual. No recent work will trouble your putts."
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
    are = "is" if one else "are"
    said = [
        sentence(f"{subject} {are} recovering from our work"),
        *_left_behind(words, day, greens),
        _PUTTS[_noticed(words, day, greens)],
    ]
    return " ".join(said)


def _noticed(words: Words, day: dt.date, greens: Sequence[str]) -> Noticed:
    """Return how much golfers notice of the works from which these greens recover."""
    works = [w for w in words.programme.works if _marked(words, w, day) & set(greens)]
    return max((work.operation.noticed for work in works), default=Noticed.CLEARLY)


def _subject(words: Words, greens: Sequence[str]) -> tuple[str, bool]:
    """Name greens, "the greens" where they are all, and say whether it is one."""
    # The putting green may be left out of the works and is not what visitors ask about.
    holes = [green for green in words.programme.greens.values() if green.holes]
    if all(green.key in greens for green in holes):
        return "The greens", False
    return words.greens(greens), len(greens) == 1


def recovering_on(words: Words, day: dt.date) -> list[str]:
    """Return the greens that show recent work that day, those included that come back during it."""
    return [
        green
        for green in words.programme.greens
        if any(
            stretch.status is PlayStatus.RECOVERING
            for stretch in words.programme.stretches_on(day, green)
        )
    ]


def _left_behind(words: Words, day: dt.date, greens: Sequence[str]) -> Iterator[str]:
    """Yield what is to be seen on these greens, and then what some of them alone were worked for."""
    # To a putting green nobody plays from a tee.
    every = {green for green in greens if words.programme.greens[green].holes} or set(greens)
    everywhere: list[str] = []
    some: dict[frozenset[str], list[str]] = {}
    for kind, said in _LEFT_BEHIND:
        worked: set[str] = set()
        marked: set[str] = set()
        for work in words.programme.works:
            on = (
                _marked(words, work, day) & set(greens) if work.operation.opening is kind else set()
            )
            marked |= on
            worked |= set(work.greens) if on else set()
        if marked and every <= worked:
            everywhere.append(said)
        elif marked:
            some.setdefault(frozenset(marked), []).append(said)
    if everywhere:
        yield f"You will see {and_list(everywhere)}."
    for where, kinds in some.items():
        yield f"On {words.greens(tuple(where))} you will see {and_list(kinds)}."


def _marked(words: Words, work: Work, day: dt.date) -> set[str]:
    """Return the greens on which a work is still to be seen."""
    return {
        recovery.green
        for recovery in words.programme.recoveries[work.id]
        if min(work.days_on(recovery.green))
        <= day
        < (recovery.putting_smoothly.late or dt.date.max)
    }


def where_to_start(words: Words, day: dt.date) -> str:
    """Say from which tee a round can begin, and from when; empty where the course is closed."""
    play = words.programme.play.get(day)
    if play is None:
        return "Start as usual."
    first = play.first_start
    if first is None:
        in_a_row = len(play.all_day.in_play) >= NINE
        why = ": no nine in a row are open" if in_a_row else ""
        return (
            f"No round of nine holes or more can start that day{why}." if _some_open(play) else ""
        )
    every = set(words.programme.holes)
    whole = [hours for hours in play.by_hour if hours.in_play == every]
    if whole and len(whole) < len(play.by_hour):
        when = and_list([_in_hours(words, hours) for hours in whole])
        return f"All {len(every)} holes are in play {when}. For other times, please ask us first."
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


def _in_hours(words: Words, hours: HolesInPlay) -> str:
    """Until 10:00; from 14:00 on; from 10:00 to 11:30."""
    if not hours.begins:
        return f"until {_clock(words, hours.ends)}"
    if hours.ends == WHOLE_DAY[1]:
        return f"from {_clock(words, hours.begins)} on"
    times = words.language.clock_span(_clock(words, hours.begins), _clock(words, hours.ends))
    return f"from {times}"


def _some_open(play: DayOfPlay) -> bool:
    return any(hours.in_play for hours in play.by_hour)


def without_a_round(words: Words) -> list[str]:
    """Say on which days no round can start, or none before some hour: nobody comes for four holes."""
    programme = words.programme
    if not starts(programme.holes, frozenset(programme.holes)):
        return []  # fewer than nine holes at the best of times
    found: dict[tuple[str, str], list[dt.date]] = {}
    for day, play in sorted(programme.play.items()):
        first = play.first_start
        if first is not None and first.begins:
            found.setdefault((f" before {_clock(words, first.begins)}", ""), []).append(day)
        elif first is None and _some_open(play):
            found.setdefault(("", _only_open(words, play)), []).append(day)
    return [
        f"No round of nine holes or more can start{before} {words.dates.on_days(days)}. {only}".strip()
        for (before, only), days in found.items()
    ]


def _only_open(words: Words, play: DayOfPlay) -> str:
    """Name the holes that are open on a day without a round, and say why nine are not enough."""
    some = [hole for hole in words.programme.holes if hole in play.all_day.in_play]
    if len(some) < NINE:
        are = "is" if len(some) == 1 else "are"
        return f"Only {words.holes(some)} {are} open." if some else ""
    named = words.holes(some, short=True)
    return sentence(f"{number(len(some))} holes are open, but no nine in a row: {named}")


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

    It holds against all that is planned. Empty where nobody can name a day.
    """
    best = best_to_come(words.programme, period)
    said, days = [], []
    if best.before is not None:
        said.append(f"before {words.dates.day(best.before)}")
        days.append(best.before)
    if best.after is not None and best.next is None:
        said.append(f"after {words.dates.day(best.after)}")
        days.append(best.after)
    elif best.after is not None and best.next is not None:
        first, last = best.after + ONE_DAY, best.next - ONE_DAY
        said.append(f"from {words.dates.day(first)} to {words.dates.day(last)}")
        days += each_day(first, last)
    if not said or not any(w.operation.noticed is not Noticed.HARDLY for w in period.works):
        return "", ()
    when = and_list(said, "or")
    return f"If you can choose your day, the greens are at their best {when}.", tuple(days)
