"""Signs for the tees: a dozen words each, read from a buggy, one for each stage that needs another."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notices.calendar_days import ONE_DAY
from notices.documents.model import Document, Entry, Fact, Section, Sheet
from notices.drawings.lettering import lines_of, width_of
from notices.operations import Opening
from notices.programme.model import Closure, Period, PlayStatus, Programme, Stretch, told_from
from notices.programme.rounds import only_again_on
from notices.wording import circumstances
from notices.wording.blocks import Heading, Paragraph
from notices.wording.dates import runs_of_days
from notices.wording.greens import courses_of
from notices.wording.lists import and_list, sentence
from notices.wording.visit import NOON
from notices.wording.words import Words

MOST_OF_A_STAGE = 14
"""Neighbouring days of one stage get a sign each, up to so many; beyond, one sign serves them all."""

MOST_AGAIN = 3
"""Likewise for days on which greens are only dressed again."""

WAIT = "Please wait until we wave you on."
KEEP_OFF = "Please keep off it."
KEEP_OUT = "Please keep out: people may be at work."
NO_FLAG = "No flag? Please do not play to that green."

NO_BREAK = "\N{NO-BREAK SPACE}"

A_DOZEN = 12
"""Words that can be read large from a buggy; greens that take more are not named."""

QUARTER = 15
"""Times that people tell one another are on a quarter of an hour [min]."""


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign: large words, smaller ones below, and the days on which it stands."""

    days: tuple[dt.date, ...]
    large: str
    small: str
    greens: tuple[str, ...] = ()
    stage: str = ""
    """Signs of neighbouring days of one stage may be made one."""
    work: str = ""
    """The first of the works that ask for it: signs of one work are set in one size."""
    weather: bool = True
    """Whether it goes by the weather."""
    until: dt.date | None = None
    """When it should be of no use any more, where that is an estimate; it may stand for longer."""

    def when(self, words: Words) -> str:
        """Say on which days it stands."""
        if self.until is not None:
            return f"Until about {words.dates.day(self.until)}"
        return words.dates.days(self.days)

    def down(self, words: Words) -> str:
        """Say when to take it down."""
        last = words.dates.day(self.days[-1])
        if self.until is not None:
            return f"Take down once the greens putt well, at the latest after {last}."
        return f"Take down after {last}."


def tee_signs(programme: Programme) -> Entry | None:
    """Return the signs with what to do with them; None where none is of use."""
    document = tee_sign(programme)
    if not document.sections:
        return None
    terms = Words(programme).language.terms
    return Entry(
        "Signs for the tees",
        "Everybody who comes to a tee",
        f"Print them on {terms.paper}, on its side. Each has its days on it: put it up at the first "
        "tee, the tenth and the shop that morning, and take it down when it says so. The team "
        "calendar has a line for each day on which one changes."
        f"{_elsewhere(Words(programme))}",
        (Sheet(document, "tee-sign", pages=len(document.sections)),),
        again="Signs that are printed already still hold.",
    )


def _elsewhere(words: Words) -> str:
    """Say which signs hang away from the tees; empty where none do."""
    closed = [shut for shut in words.programme.closures if not shut.part]
    named = and_list(
        list(dict.fromkeys(circumstances.closed_subject(words, shut) for shut in closed))
    )
    return f" Hang the sign for {named} there." if named else ""


def signs(programme: Programme) -> list[Sign]:
    """Return the signs in the order of their pages: by their days."""
    return sorted(_signs(Words(programme)), key=lambda sign: (sign.days[0], sign.days[-1]))


def tee_sign(programme: Programme) -> Document:
    """Write the signs by their days; without sections where none is of use."""
    words, found = Words(programme), signs(programme)
    sizes = _sizes(words, found)
    facts: list[Fact] = []
    for sign in found:
        named = (sign.until,) if sign.until else sign.days
        facts.append(Fact("when", sign.when(words), named))
        facts.append(Fact("sign", sign.large, (), sign.greens))
        facts += [Fact("sign", sign.small)] if sign.small else []
        facts.append(Fact("take down", sign.down(words), sign.days[-1:]))
    return Document.of(
        programme,
        name="tee-sign",
        title="Signs for the tees",
        summary="Which greens are closed on which day, to be read from afar.",
        sections=(_section(words, sign, size) for sign, size in zip(found, sizes, strict=True)),
        facts=facts,
    )


def _section(words: Words, sign: Sign, size: _Size) -> Section:
    when = sign.when(words)
    foot = " ".join(filter(None, ("Weather permitting." if sign.weather else "", sign.down(words))))
    return Section(
        "sign",
        (
            Paragraph.of(_date_unbroken(when) if _is_long(when) else when),
            Heading(_unbroken(sign.large), level=1),
            Paragraph.of(_unbroken(sign.small)),
            Paragraph.of(f"{foot} {circumstances.contact(words)}"),
        ),
        style=f"size-{size.large}{' long-date' if _is_long(when) else ''}",
    )


_ONE_LINE = re.compile(
    r"(?<=\d) (to|and) (?=\d)|(?<=[Hh]ole|reen) (?=\d)|(?<=\ball) (?=\d)|(?<=\d) (?=greens\b)"
    r"| (?=course\b)|(?<=temporary) (?=green)|(?<=\bNo) (?=flag\b)"
)
"""Blanks at which no line ends: in a range, between a thing and its number, in a name."""


def _unbroken(text: str) -> str:
    """Keep a range in one line: from a buggy one reads "18 closed" under "Greens 13 to"."""
    return _ONE_LINE.sub(lambda found: found[0].replace(" ", NO_BREAK), text)


def _date_unbroken(date: str) -> str:
    """Keep each day of a long date in one line."""
    return re.sub(r"(?<!,) (?!to |and )", NO_BREAK, date)


@dataclass(frozen=True, slots=True)
class _Size:
    """Letters of a sign [pt]; ``tee-sign.html.j2`` has the same."""

    large: int
    small: int


_SIZES = (
    *(_Size(large, 42) for large in (168, 150, 134, 118, 104, 92, 80, 70)),
    *(_Size(large, 32) for large in (60, 50)),
    _Size(36, 28),
    _Size(26, 20),
)
"""Largest first."""

DATE = 42
"""Letters of the date [pt]."""

WIDE = 267
"""Width of a sign [mm]."""

HIGH, LESS = 119, 17
"""Height for the words, with some white around them, and what a long date takes of it [mm]."""

BETWEEN = 6
"""Between the large words and those below [mm]."""

LARGE_LINE, SMALL_LINE = 1.05, 1.12
"""Height of a line in parts of its letters."""

MM = 25.4 / 72
"""One point [mm]."""


def _sizes(words: Words, found: Sequence[Sign]) -> Iterator[_Size]:
    """Yield the largest size in which each sign, and every other one of its work, has room."""
    places = [_place(sign, sign.when(words)) for sign in found]
    of_work: dict[str, int] = {}
    for sign, place in zip(found, places, strict=True):
        of_work[sign.work] = max(place, of_work.get(sign.work, 0))
    for sign, place in zip(found, places, strict=True):
        yield _SIZES[of_work[sign.work] if sign.work else place]


def _place(sign: Sign, when: str) -> int:
    """Return the place among the sizes of the largest that a sign has room for."""
    room = HIGH - (LESS if _is_long(when) else 0)
    return next((n for n, size in enumerate(_SIZES) if _high(sign, size) <= room), len(_SIZES) - 1)


def _high(sign: Sign, size: _Size) -> float:
    """Return the height that the words of a sign take [mm]; no size has room for a word too wide."""
    large, small = _unbroken(sign.large), _unbroken(sign.small)
    if any(width_of(word, size.large * MM, bold=True) > WIDE for word in large.split(" ")):
        return math.inf
    lines = len(lines_of(large, WIDE, size.large * MM, bold=True))
    below = len(lines_of(small, WIDE, size.small * MM)) if small else 0
    return MM * (LARGE_LINE * size.large * lines + SMALL_LINE * size.small * below) + BETWEEN


def _is_long(when: str) -> bool:
    """Tell whether a date takes two lines."""
    return width_of(when, DATE * MM, bold=True) > WIDE


def _signs(words: Words) -> Iterator[Sign]:
    programme = words.programme
    days = sorted({*programme.stretches, *programme.play})
    yield from _joined(words, [sign for day in days for sign in _of_day(words, day)])
    for period in programme.periods:
        yield from _healing(period)
    for closed in programme.closures:
        yield from _closed(words, closed)
    for restriction in programme.restrictions:
        but = f"Except {restriction.exception.rstrip('.')}." if restriction.exception else ""
        ask = sentence(f"please ask {restriction.ask}") if restriction.ask else ""
        small = " ".join(filter(None, (but, ask)))
        for run in runs_of_days(restriction.dates):
            yield Sign(
                tuple(run), sentence(f"no {restriction.what}").rstrip("."), small, weather=False
            )


def _of_day(words: Words, day: dt.date) -> Iterator[Sign]:
    """Yield what a tee must know of the greens that the works take from golfers that day."""
    programme = words.programme
    closed: dict[bool, list[tuple[str, Stretch]]] = {False: [], True: []}
    temporary: list[tuple[str, Stretch]] = []
    waiting: list[tuple[str, Stretch]] = []
    for key, stretch in _taken(programme, day):
        if stretch.status is PlayStatus.CLOSED and not stretch.passing:
            closed[_ends_that_day(stretch)].append((key, stretch))
        elif not programme.greens[key].holes:
            continue  # no tee leads to a putting green: all that matters is whether it is shut
        elif stretch.passing:
            waiting.append((key, stretch))
        elif stretch.status is PlayStatus.TEMPORARY:
            temporary.append((key, stretch))
    today = {work.id for work in programme.works for visit in work.visits if visit.date == day}
    stage = "" if not today else "again" if only_again_on(programme, day) else "work"
    yield from _shut(words, day, closed, stage)
    if temporary:
        greens = tuple(dict.fromkeys(green for green, _ in temporary))
        named, on_sign = _greens(words, greens, "{}: temporary greens")
        one = len(greens) == 1
        yield Sign(
            (day,),
            f"{_first_up(named)}: {'temporary green' if one else 'temporary greens'}",
            _stay_off(one=one),
            on_sign,
            work=_work(words, temporary),
        )
    away = {green for taken in (temporary, *closed.values()) for green, _ in taken}
    if played := tuple(dict.fromkeys(green for green, _ in waiting if green not in away)):
        large, on_sign = _at_work(words, "We are working on", played)
        yield Sign((day,), large, WAIT, on_sign, stage, _work(words, waiting))


def _work(words: Words, taken: Sequence[tuple[str, Stretch]]) -> str:
    """Return the first work of the plan that takes these greens from golfers."""
    because = {work for _, stretch in taken for work in stretch.because}
    return next(work.id for work in words.programme.works if work.id in because)


def _at_work(words: Words, doing: str, greens: tuple[str, ...]) -> tuple[str, tuple[str, ...]]:
    """Say large on which greens people are at work, and which of them that names."""
    named, on_sign = _greens(words, greens, f"{doing} {{}}")
    return f"{doing} {named}", on_sign


def _greens(words: Words, greens: tuple[str, ...], sign: str) -> tuple[str, tuple[str, ...]]:
    """Name greens in so few words that a sign keeps to a dozen, and say which of them that names."""
    course = words.programme.greens
    ways = [words.greens(greens)]
    numbered = all(course[green].holes for green in greens)
    if numbered and len(greens) > 1 and len(courses_of(course)) < 2:
        ways.append(f"greens {words.greens(greens, short=True)}")  # "2/16", not "the double green"
    named = min(ways, key=lambda way: len(way.split()))
    return (named, greens) if len(sign.format(named).split()) <= A_DOZEN else ("some greens", ())


def _taken(programme: Programme, day: dt.date) -> Iterator[tuple[str, Stretch]]:
    """Yield what the works make of each green; what the club closes itself has a sign of its own."""
    works = {work.id for work in programme.works}
    shut = {
        green for closed in programme.closures if day in closed.dates for green in closed.greens
    }
    for key, green in programme.greens.items():
        if green.holes or key not in shut:
            for stretch in programme.stretches_on(day, key):
                if works & set(stretch.because):
                    yield key, stretch


def _shut(
    words: Words, day: dt.date, closed: Mapping[bool, Sequence[tuple[str, Stretch]]], stage: str
) -> Iterator[Sign]:
    """Yield a sign for what is shut all day, and one for what opens again that day."""
    for same_day, shut in closed.items():
        if shut:
            greens = tuple(dict.fromkeys(green for green, _ in shut))
            # Large stands what one plays to, if anything; what has but a name follows in small.
            large = [g for g in greens if words.programme.greens[g].holes] or greens
            named = [green for green in greens if green not in large]
            of_large = [(green, hours) for green, hours in shut if green in large]
            if same_day and _in_turn(of_large, stage):
                doing = "Fresh sand on" if _sand_alone(words, shut) else "We are working on"
                head, on_sign = _at_work(words, doing, tuple(large))
                small = _each_in_turn(words, day, of_large)
                too = f"{_named(words, named)} too. " if named else ""
            else:
                closed_when = f"closed{_part_of_day([hours for _, hours in of_large])}"
                head, on_sign = _greens(words, tuple(large), f"{{}} {closed_when}")
                head = f"{_first_up(head.removeprefix('the '))} {closed_when}"
                are = "is" if len(named) == 1 else "are"
                too = f"{_named(words, named)} {are} closed too. " if named else ""
                small = _open_again(words, greens, day, same_day=same_day)
                if not on_sign and NO_FLAG not in small:
                    too = f"{NO_FLAG} {too}"
            yield Sign((day,), head, f"{too}{small}", on_sign, stage, _work(words, shut))


def _in_turn(shut: Sequence[tuple[str, Stretch]], stage: str) -> bool:
    """Whether each green is closed but for a while, and never all at once.

    Who comes at eight must not be sent away from greens that are sanded after ten.
    """
    if not all(hours.hours_known for _, hours in shut):
        return stage == "again"  # light work, and a green opens as soon as it is done
    one = len({green for green, _ in shut}) == 1
    last_begins = max(hours.begins for _, hours in shut)
    return one or min(hours.ends for _, hours in shut) <= last_begins


def _sand_alone(words: Words, shut: Sequence[tuple[str, Stretch]]) -> bool:
    because = {work for _, hours in shut for work in hours.because}
    works = [work for work in words.programme.works if work.id in because]
    # Brushing, which opens nothing, goes along with the sand.
    return {work.operation.opening for work in works} - {Opening.NONE} == {Opening.SAND}


def _each_in_turn(words: Words, day: dt.date, shut: Sequence[tuple[str, Stretch]]) -> str:
    """Say from when greens are closed one after another, and how to tell which."""
    hours = [hours for _, hours in shut]
    when = _part_of_day(hours).strip()
    if not when and all(stretch.hours_known for stretch in hours):
        when = _from(words, day, min(stretch.begins for stretch in hours))
    if len({green for green, _ in shut}) == 1:
        return f"{sentence(f'closed {when}'.strip())[:-1]}, only while we work on it."
    return f"{sentence(when)} {NO_FLAG}" if when else NO_FLAG


def _from(words: Words, day: dt.date, first: float) -> str:
    """Say from when, in a time that people tell one another."""
    begins = told_from(first, words.programme.work_from(day))
    timetable = words.programme.timetables.get(day)
    by_the_light = timetable and timetable.light_from and timetable.light_from > timetable.begins
    if begins % QUARTER and by_the_light:
        return "from first light"
    return f"from {words.language.clock_at(begins)}"


def _ends_that_day(stretch: Stretch) -> bool:
    return not stretch.all_day or not stretch.hours_known


def _stay_off(*, one: bool) -> str:
    """Ask for what a golfer may forget who plays to another green."""
    return f"Please stay off the {'green itself' if one else 'greens themselves'}."


def _part_of_day(hours: Sequence[Stretch]) -> str:
    """Say that it is a matter of the morning, or of the afternoon; empty where it is of both."""
    if not all(stretch.hours_known for stretch in hours):
        return ""
    if all(stretch.ends <= NOON for stretch in hours):
        return " this morning"
    return " this afternoon" if all(stretch.begins >= NOON for stretch in hours) else ""


def _named(words: Words, greens: Sequence[str]) -> str:
    return _first_up(words.greens(tuple(dict.fromkeys(greens))))


def _first_up(text: str) -> str:
    return text[:1].upper() + text[1:]


def _open_again(words: Words, greens: Sequence[str], day: dt.date, *, same_day: bool) -> str:
    one = len(set(greens)) == 1
    if same_day:
        return "It opens when we have finished." if one else "Each opens when we have finished it."
    away = (PlayStatus.CLOSED, PlayStatus.TEMPORARY)
    if any(words.programme.status_on(day + ONE_DAY, green) in away for green in greens):
        played = any(words.programme.greens[green].holes for green in greens)
        return NO_FLAG if played else KEEP_OFF
    every = {bool(words.programme.greens[green].holes) for green in greens} == {True, False}
    return f"{'All open' if every else 'Open'} again tomorrow morning."


def _joined(words: Words, signs: Sequence[Sign]) -> Iterator[Sign]:
    """Let neighbours that say the same be one, and where there are many of a stage, one for all."""
    runs: list[Sign] = []
    for sign in signs:
        place = next(
            (
                n
                for n, known in enumerate(runs)
                if (known.large, known.small) == (sign.large, sign.small)
                and sign.days[0] - known.days[-1] == ONE_DAY
            ),
            None,
        )
        if place is None:
            runs.append(sign)
        else:
            runs[place] = replace(runs[place], days=(*runs[place].days, *sign.days))
    for stage, most in (("work", MOST_OF_A_STAGE), ("again", MOST_AGAIN), ("", len(runs))):
        own = [sign for sign in runs if sign.stage == stage]
        for days in runs_of_days(day for sign in own for day in sign.days):
            of_run = [sign for sign in own if sign.days[0] in days]
            if len(of_run) <= most:
                yield from of_run
            else:
                yield _of_stage(words, stage, tuple(days))


def _of_stage(words: Words, stage: str, days: tuple[dt.date, ...]) -> Sign:
    sand = "Fresh sand on some greens each day"
    if stage == "again" and words.programme.sand:
        return Sign(days, sand, NO_FLAG)
    return Sign(days, "Some greens are closed each day", NO_FLAG)


def _healing(period: Period) -> Iterator[Sign]:
    """Yield a sign for the weeks in which putts may wander, where they end on a day one can name."""
    promise, first = period.putts_well_after_all, period.open_again.expect_by
    if not period.noticed or promise.growth_stops is not None or first >= promise.expect_by:
        return
    yield Sign(
        (first, promise.at_worst or promise.expect_by),
        "The greens are healing",
        "Putts may be slower and may wander.",
        weather=False,
        until=promise.expect_by,
    )


def _closed(words: Words, closed: Closure) -> Iterator[Sign]:
    """Yield a sign for what the club closes itself; one for the practice ground hangs there."""
    thing = circumstances.closed_thing(words, closed)
    greens = closed.greens if closed.part == "greens" else ()
    if closed.has_temporary:
        own = sentence(closed.temporary) if closed.temporary else ""
        small = f"{_stay_off(one=len(closed.greens) == 1)} {own}".strip()
    else:
        out = KEEP_OUT if circumstances.shuts_people_out(closed) else ""
        small = f"{circumstances.instead(closed)} {out}".strip()
    for run in runs_of_days(closed.dates):
        large = (
            thing
            if closed.has_temporary
            else thing.replace(": closed", " closed").removeprefix("The ")
        )
        yield Sign(tuple(run), _first_up(large), small, greens, weather=False)
