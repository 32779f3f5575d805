"""One day hour by hour for staff: the state of each green, and the tees where rounds begin."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from notices.programme.holes_in_play import starts
from notices.programme.hours import AWAY, to_half_hours
from notices.programme.model import NINE, Hole, HolesInPlay, PlayStatus, Start, Stretch
from notices.wording.dates import NO_BREAK
from notices.wording.lists import and_list, counted, sentence
from notices.wording.period import PeriodWords
from notices.wording.words import Words

_CALLED = {
    PlayStatus.OPEN: "open",
    PlayStatus.RECOVERING: "open, recovering",
    PlayStatus.TEMPORARY: "temporary green",
    PlayStatus.CLOSED: "closed",
}
_WAIT = "wait for the machine"
_WORST_FIRST = tuple(reversed(PlayStatus))


FEW = 2
"""Most kinds of work named one by one; more are called by the name of their period."""


@dataclass(frozen=True, slots=True)
class GreensOfDay:
    """Greens that have the same state all through one day, with the state and its reason."""

    greens: tuple[str, ...]
    status: str
    why: str
    away: str = ""
    """The one time of day when golfers lose it, such as "Closed 07:00 to 08:00."; else empty."""
    then: str = ""
    """State after that time."""


def greens_of_day(words: Words, day: dt.date) -> tuple[GreensOfDay, ...]:
    """Return the greens grouped by their state from hour to hour, the worst for golfers first."""
    found: dict[tuple[int, tuple[tuple[float, str], ...], str], list[str]] = {}
    said: dict[tuple[tuple[float, str], ...], tuple[str, str, str]] = {}
    earliest = words.programme.work_from(day)
    for key in words.programme.greens:
        told = to_half_hours(words.programme.stretches_on(day, key), earliest)
        hours = tuple((stretch.begins, _called(stretch)) for stretch in told)
        said[hours] = (_in_words(words, told), *_once_away(words, told))
        worst = min(_WORST_FIRST.index(stretch.status) for stretch in told)
        found.setdefault((worst, hours, _why(words, told)), []).append(key)
    by_worst = sorted(found.items(), key=lambda entry: entry[0][0])
    found_in_order = []
    for (_, hours, why), greens in by_worst:
        status, away, then = said[hours]
        found_in_order.append(GreensOfDay(tuple(greens), status, why, away, then))
    return tuple(found_in_order)


def _called(stretch: Stretch) -> str:
    return _WAIT if stretch.passing else _CALLED[stretch.status]


def _in_words(words: Words, told: tuple[Stretch, ...]) -> str:
    """Return states in words, as "Closed from 06:30 to 08:00, then open, recovering."."""
    if len(told) == 1:
        (whole,) = told
        if whole.status in AWAY and not whole.hours_known:
            return sentence(f"{_called(whole)} while we work on it, then open again")
        return sentence(f"{_called(whole)} all day")
    parts = []
    for stretch in told:
        if not stretch.begins:
            # It goes without saying that an open green is played before work.
            if stretch.status in AWAY:
                parts.append(f"{_called(stretch)} until {_clock(words, stretch.ends)}")
        elif stretch is told[-1]:
            parts.append(f"then {_called(stretch)}")
        else:
            times = words.language.clock_span(
                _clock(words, stretch.begins), _clock(words, stretch.ends)
            )
            parts.append(f"{_called(stretch)} from {times}")
    return sentence(", ".join(parts))


def _once_away(words: Words, told: tuple[Stretch, ...]) -> tuple[str, str]:
    """Return the one time when golfers lose a green, and its state after it; else empty."""
    away = [stretch for stretch in told if stretch.status in AWAY]
    if len(away) != 1 or told[-1] is away[0] or not away[0].begins:
        return "", ""
    (one,) = away
    times = words.language.clock_span(_clock(words, one.begins), _clock(words, one.ends))
    return sentence(f"{_called(one)} {times}"), _called(told[-1])


def _why(words: Words, told: Iterable[Stretch]) -> str:
    """Return the reason why golfers lose a green; empty if they do not that day."""
    because = dict.fromkeys(
        name for stretch in told if stretch.status in AWAY for name in stretch.because
    )
    programme = words.programme
    works = [work for work in programme.works if work.id in because]
    # A closure without a reason of its own beside a work is there for that work.
    unexplained = [] if works else ["closed by the club"]
    closed = [
        reason
        for closure in programme.closures
        if closure.id in because
        for reason in ([closure.reason] if closure.reason else unexplained)
    ]
    named = [words.title(work).lower() for work in works]
    if len(works) > FEW:
        periods = [p for p in programme.periods if any(work in p.works for work in works)]
        named = [PeriodWords(words, period).name().lower() for period in periods]
    return sentence(and_list(list(dict.fromkeys([*closed, *named])))).removesuffix(".")


def _clock(words: Words, minutes: float) -> str:
    return words.language.clock_at(minutes)


def span(words: Words, begins: float, ends: float) -> str:
    """Return a span of time in words."""
    return words.language.clock_span(_clock(words, begins), _clock(words, ends))


def on_one_line(text: str) -> str:
    """Return the text with no-break spaces, for a narrow column."""
    return text.replace(" ", NO_BREAK)


@dataclass(frozen=True, slots=True)
class HolesOfHours:
    """Holes in play during some hours, and tees from which rounds begin."""

    when: str
    in_play: str
    temporary: str
    closed: str
    starts: str


def holes_of_day(words: Words, day: dt.date) -> tuple[HolesOfHours, ...]:
    """Return the holes hour by hour, in one entry if they are the same all day.

    Several entries are each short: only numbers, and after a tee the count of holes from it.
    """
    play = words.programme.play.get(day)
    if play is None:
        every = _holes(words, words.programme.holes)
        return (HolesOfHours("All day", every, "", "", "As usual"),) if every else ()
    short = len(play.by_hour) > 1
    return tuple(_of_hours(words, hours, short=short) for hours in play.by_hour)


def _of_hours(words: Words, hours: HolesInPlay, *, short: bool) -> HolesOfHours:
    in_play = [hole for hole in words.programme.holes if hole in hours.in_play]
    return HolesOfHours(
        _when(words, hours),
        _holes(words, in_play, short=short) or "None",
        _holes(words, hours.temporary, short=short),
        _holes(words, hours.closed, short=short),
        _first_up("; ".join(_starts(words, hours, short=short)))
        or _without_nine(words, hours, short=short),
    )


def _without_nine(words: Words, hours: HolesInPlay, *, short: bool) -> str:
    """Return the tee from which most holes follow, if they are fewer than nine."""
    holes = words.programme.holes
    if not hours.in_play:
        return "No tee, since no hole is in play"
    some = starts(holes, frozenset(hours.in_play), least=1)
    most = max(len(start.holes) for start in some)
    tees = "; ".join(_tees(words, [s for s in some if len(s.holes) == most], short=short))
    # On a course of nine nobody expects nine holes in a row to be left.
    fewer = "" if short or len(holes) <= NINE else ": no nine in a row are in play"
    return f"{_first_up(tees)}{fewer}"


def _when(words: Words, hours: HolesInPlay) -> str:
    midnight = 1440.0
    if hours.begins == 0 and hours.ends == midnight:
        return "All day"
    if hours.begins == 0:
        return f"Until {_clock(words, hours.ends)}"
    if hours.ends == midnight:
        return f"From {_clock(words, hours.begins)}"
    return on_one_line(span(words, hours.begins, hours.ends))


def _holes(words: Words, holes: Iterable[Hole], *, short: bool = False) -> str:
    return _first_up(words.holes(tuple(holes), short=short))


def _first_up(text: str) -> str:
    return text[:1].upper() + text[1:]


def _starts(words: Words, hours: HolesInPlay, *, short: bool) -> Iterator[str]:
    yield from _tees(words, hours.starts, short=short)


def _tees(words: Words, named: Iterable[Start], *, short: bool) -> Iterator[str]:
    for start in named:
        hole = words.holes([start.hole], short=short)
        count = len(start.holes)
        yield f"{hole} ({count})" if short else f"{hole} ({counted(count, 'hole')})"
