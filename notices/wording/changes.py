"""Changes between two programmes, in the words of a course manager."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from notices.programme.brushing import goes_along
from notices.programme.model import (
    Aspect,
    Change,
    ChangeKind,
    Changes,
    Closure,
    Move,
    Period,
    Programme,
    Subject,
    Work,
)
from notices.programme.model.changes import HOLES_LEFT, OPEN_AGAIN
from notices.wording import circumstances
from notices.wording.lists import and_list, number, sentence
from notices.wording.period import PeriodWords
from notices.wording.words import Words, days_with_greens

MOST_MOVES = 3
"""Most groups of greens told with old and new days; for more, only the new days are listed."""

MOST_NAMES = 2
"""Most works named in one sentence, if they have a name together."""

_DAYS = (ChangeKind.MOVED, ChangeKind.EXTENDED, ChangeKind.SHORTENED)

_OF_PLAY = (None, Aspect.WHILE_WORKING, Aspect.REOPEN)
"""Aspects by which works are told together: their days, and what golfers meet."""

_ON_THE_DAY = {
    "closed": "greens are closed",
    "temporary green": "you play to temporary greens",
    "open": "greens stay open",
}


@dataclass(frozen=True, slots=True)
class ChangeWords:
    """Wording of the changes from one programme to another."""

    old: Words
    new: Words
    changes: Changes

    @classmethod
    def of(cls, old: Programme, new: Programme, changes: Changes) -> ChangeWords:
        """Return the wording of changes, with dates as seen from the issue of the new programme."""
        return cls(Words(old), Words(new), changes)

    def sentences(self) -> tuple[str, ...]:
        """Return a sentence for each change, with works that change alike in one.

        Brushing that moves along with a later dressing has no sentence of its own.
        """
        groups: dict[object, list[Change]] = {}
        sanded = any(move.ordinal > 1 for one in self.changes.changes for move in one.moves)
        for change in self.changes.changes:
            if sanded and self._goes_along(change):
                continue
            groups.setdefault(self._alike(change), []).append(change)
        return tuple(self._said(group) for group in groups.values())

    def _goes_along(self, change: Change) -> bool:
        """Tell whether brushing moves along with a later dressing, whose days are told anyway."""
        moved = change.kind in (ChangeKind.MOVED, ChangeKind.RESERVE)
        return (
            change.subject is Subject.WORK
            and moved
            and goes_along(self.new.programme, self._work(change))
        )

    def whole(self) -> str:
        """Return every change on a line of its own, and a sentence that the rest stands."""
        said = self.sentences()
        if not said:
            return "Nothing has changed."
        lines = "\n".join(f"- {line}" for line in said)
        return f"What has changed:\n\n{lines}\n\nEverything else stands."

    def _said(self, group: Sequence[Change]) -> str:
        first = group[0]
        match first.subject:
            case Subject.WORK:
                return self._of_works(group)
            case Subject.PERIOD:
                return self._of_period(first)
            case Subject.CLOSURE:
                return self._of_closure(first)
            case Subject.RESTRICTION:
                return self._of_restriction(first)
            case Subject.FIXTURE:
                return self._of_fixture(first)
            case Subject.CLUB:
                return _of_club(first)

    def _alike(self, change: Change) -> object:
        """Return a key that works share if they change in the same way; for others it is unique."""
        alone = change.setting or change.aspect not in _OF_PLAY
        if change.subject is not Subject.WORK or alone:
            what = change.aspect or change.setting
            return (change.subject, change.id, change.kind, what, change.moves)
        key = (change.subject, change.kind, change.aspect, change.before, change.after)
        if change.kind in _DAYS and (change.kind is not ChangeKind.MOVED or self._as_one(change)):
            # The greens of each day are then told once for all of them.
            return (*key, self._dates_before(change), self._work(change).dates)
        if change.kind is ChangeKind.MOVED:
            # Days of later dressings are told after those of the work.
            return (*key, tuple(move for move in change.moves if move.ordinal == 1))
        return (*key, change.moves)

    # Works

    def _of_works(self, group: Sequence[Change]) -> str:
        change = group[0]
        if change.kind in _DAYS:
            return self._of_days(group)
        if change.kind is ChangeKind.RESERVE and change.moves[0].after and len(group) > MOST_NAMES:
            return sentence(self._of_reserve(change, "us"))
        return sentence(self._of_one_kind(change, self._names(group), several=len(group) > 1))

    def _of_one_kind(self, change: Change, name: str, *, several: bool) -> str:
        days = _days(change.moves, new=change.kind is not ChangeKind.DROPPED)
        greens = self._greens(change)
        match change.kind:
            case ChangeKind.ADDED:
                said = f"{name} on {greens} {'are' if several else 'is'} new: {self._on(days)}"
            case ChangeKind.DROPPED:
                fall = "fall" if several else "falls"
                said = f"{name} of {self.new.dates.days(days)} {fall} away"
            case ChangeKind.GREENS_ADDED:
                said = f"{name} {'take' if several else 'takes'} in {greens} too, {self._on(days)}"
            case ChangeKind.GREENS_LEFT_OUT:
                many = "are" if len(_greens_of(change)) > 1 else "is"
                said = f"{greens} {many} no longer included in {name}"
            case ChangeKind.RESERVE:
                said = self._of_reserve(change, name)
            case _:
                said = f"{name}: {self._of_aspect(change)}"
        return said

    def _of_days(self, group: Sequence[Change]) -> str:
        """Return sentences on the new days of works that go together and of later dressings."""
        change = max(group, key=lambda one: len(_greens_of(one)))
        main = [move for move in change.moves if move.ordinal == 1]
        name, several = self._together(group)
        told = [self._of_main(change, main, name, several)] if main else []
        told += [f"the reason: {why}" for why in self._reasons(group)]
        for one in group:
            if later := [move for move in one.moves if move.ordinal > 1]:
                to_sand = self.new.language.terms.to_sand
                there = "" if set(_greens(later)) == set(self._work(one).greens) else " there"
                told.append(f"we now {to_sand}{there} again {self._on(_days(later))}")
        return " ".join(map(sentence, told))

    def _reasons(self, group: Sequence[Change]) -> Iterator[str]:
        """Yield the reasons for the new days, in the club's words, each once."""
        given = (self._work(change).put_off_because for change in group)
        yield from map(circumstances.inside, dict.fromkeys(filter(None, given)))

    def _together(self, group: Sequence[Change]) -> tuple[str, int]:
        """Return a name for works that go together, and the number of things it names.

        A renovation has one name, since a sentence cannot list eight kinds of work.
        """
        moved = {one.id for one in group}
        for period in self.new.programme.periods:
            told = PeriodWords(self.new, period)
            whole = {work.id for work in period.opening_works} <= moved
            if (
                whole
                and len(group) > MOST_NAMES
                and told.name() == self.new.language.terms.renovation
            ):
                return told.inside(), 1
        return self._names(group), len(group)

    def _of_main(self, change: Change, moves: Sequence[Move], name: str, several: int) -> str:
        work = self._work(change)
        now, was = self._on(work.dates), self._on(self._dates_before(change))
        move, are = ("move", "are") if several > 1 else ("moves", "is")
        if change.kind is not ChangeKind.MOVED:
            takes = "take" if several > 1 else "takes"
            longer = "longer" if change.kind is ChangeKind.EXTENDED else "fewer days"
            return f"{name} {takes} {longer}: {now}, not {was}. {self._layout(work)}"
        if self._as_one(change):
            before, after = _days(moves, new=False), _days(moves)
            if len(before) == len(after) == 1:
                return f"{name} {move} {self.new.dates.from_to(before[0], after[0])}"
            return f"{name} {are} now {now}, not {was}"
        if len(moves) <= MOST_MOVES:
            ways = [f"on {self._name(one.greens)} {move} {self._way(one)}" for one in moves]
            return f"{name} {and_list(ways)}"
        return f"{name} {move} on some greens. {self._layout(work)}"

    def _as_one(self, change: Change) -> bool:
        """Tell whether a work moves by the same number of days on all its greens."""
        moves = [move for move in change.moves if move.ordinal == 1]
        return set(_greens(moves)) == set(self._work(change).greens) and _is_one_shift(moves)

    def _dates_before(self, change: Change) -> tuple[dt.date, ...]:
        return next(work.dates for work in self.old.programme.works if work.id == change.id)

    def _way(self, move: Move) -> str:
        """Return a move such as "from Tuesday 13 to Thursday 15 October"."""
        if len(move.before) == len(move.after) == 1:
            return self.new.dates.from_to(move.before[0], move.after[0])
        return f"to {self.new.dates.days(move.after)}"

    def _layout(self, work: Work) -> str:
        """Return the greens of each day as now planned, in words."""
        visits = days_with_greens((visit.date, visit.greens) for visit in work.main_visits)
        told = [f"{self.new.greens(greens)} {self._on(days)}" for days, greens in visits]
        return f"now {and_list(told)}" if len(told) == 1 else f"Now: {'; '.join(told)}"

    def _of_reserve(self, change: Change, name: str) -> str:
        (move,) = change.moves
        if not move.after:
            return f"{name} has no reserve day any more"
        days = self.new.dates.days(move.after)
        if not move.before:
            return f"if rain stops {name}, we now catch up on {days}"
        return (
            f"if rain stops {name}, we catch up on {days}, "
            f"not on {self.new.dates.days(move.before)}"
        )

    def _of_aspect(self, change: Change) -> str:
        match change.aspect:
            case Aspect.WHILE_WORKING:
                before, after = (_ON_THE_DAY[said] for said in (change.before, change.after))
                return f"while we work, {after}; before, the plan was that {before}"
            case Aspect.REOPEN:
                before, after = _reopening(change.before), _reopening(change.after)
                return f"greens open again {after}, not {before}"
            case Aspect.NOTE:
                return "the note on it is another"
            case _:
                now = f"the {change.setting.replace('_', ' ')} is {change.after or 'no longer set'}"
                return f"{now}, not {change.before}" if change.before else now

    # Everything but works

    def _of_period(self, change: Change) -> str:
        period = next(
            period
            for period in self.new.programme.periods
            if change.id in {work.id for work in period.opening_works}
        )
        after = PeriodWords(self.new, period).inside()
        if change.name == HOLES_LEFT:
            return sentence(self._of_holes(period, after, int(change.before), int(change.after)))
        (move,) = change.moves
        one = len(period.greens) == 1
        if change.name == OPEN_AGAIN:
            return self._of_opening(move, after, "the green is" if one else "all greens are")
        it = "the green" if one else "the greens"
        (expected, *_), (expect, *_) = move.before, move.after
        if expect == expected:
            said = f"After {after}, we still expect {it} to putt well by {self._named(period, expect)}."
        else:
            said = (
                f"After {after}, we now expect {it} to putt well by {self._named(period, expect)}, "
                f"not {self._named(period, expected)}."
            )
        return " ".join(filter(None, (said, self._worst(period, move))))

    def _of_holes(self, period: Period, after: str, was: int, now: int) -> str:
        """Return the number of holes left on the day with fewest, in words."""
        every, each = number(len(self.new.programme.holes)), len(period.days) > 1
        if not now:
            return f"during {after}, no hole is open on {'some days' if each else 'the day'}"
        left = f"{number(now)} of the {every} holes to play{' each day' if each else ''}"
        return f"{after} now leaves {'at least ' if each else ''}{left}, not {number(was)}"

    def _of_opening(self, move: Move, after: str, greens_are: str) -> str:
        """Return in words the day by which all are open again, and the day if it rains."""
        (expected, *rained), (expect, *rains) = move.before, move.after
        day = self.new.dates.day
        if expect == expected:
            said = f"After {after}, {greens_are} still open by {day(expect)}."
        else:
            said = f"After {after}, {greens_are} now open by {day(expect)}, not {day(expected)}."
        was, now = max([expected, *rained]), max([expect, *rains])
        if now == expect:
            return said
        worst = f"still {day(now)}" if now == was else f"now {day(now)}, not {day(was)}"
        return f"{said} If it rains, it is {worst}."

    def _worst(self, period: Period, move: Move) -> str:
        """Return a sentence on the worst date; empty if there is only one date, before and now."""
        was, now = (days[-1] if len(days) > 1 else None for days in (move.before, move.after))
        if was == move.before[0] and now == move.after[0]:
            return ""
        if now is None:
            return "At worst, we can name no day."
        if now == was:
            return f"At worst it is still {self._named(period, now)}."
        before = f", not {self._named(period, was)}" if was is not None else ""
        return f"At worst it is now {self._named(period, now)}{before}."

    def _named(self, period: Period, day: dt.date) -> str:
        """Return a promised day in words: only roughly if it depends on the return of growth."""
        return self.new.dates.promised(day, period.putts_well_after_all.growth_stops)

    def _of_closure(self, change: Change) -> str:
        words = self.old if change.kind is ChangeKind.DROPPED else self.new
        closed = _closure(words.programme, change.id)
        subject = circumstances.closed_subject(words, closed)
        if change.kind is ChangeKind.ADDED:
            return f"New: {circumstances.closure(self.new, closed)}"
        if change.kind is ChangeKind.OTHERWISE:
            if change.aspect is Aspect.REASON:
                return sentence(
                    f"the reason for closing {subject} is now: {change.after or 'none'}"
                )
            return f"Changed: {circumstances.closure(self.new, closed)}"
        return self._of_named(change, f"the closure of {subject}")

    def _of_restriction(self, change: Change) -> str:
        restriction = f"the restriction on {change.name}"
        if change.kind is not ChangeKind.OTHERWISE:
            return self._of_named(change, restriction)
        if change.aspect is Aspect.ASK:
            whom = f"ask {change.after}" if change.after else "ask at the club"
            return sentence(f"about {restriction}, please now {whom}")
        but = f"all but {change.after}" if change.after else "everybody"
        return sentence(f"{restriction} now holds for {but}")

    def _of_fixture(self, change: Change) -> str:
        (move,) = change.moves
        if change.kind is ChangeKind.IN_THE_WAY:
            state = "closed" if change.aspect is Aspect.CLOSED else "still healing"
            many = "are" if len(change.greens) > 1 else "is"
            day = self.new.dates.day(move.after[0])
            return sentence(
                f"{change.name}, {day}: {self._name(change.greens)} {many} now {state} that day"
            )
        if change.kind is ChangeKind.CLEAR:
            if not move.after:
                return sentence(f"{change.name} no longer meets our work")
            left = any(
                fixture.closed_greens or fixture.recovering_greens
                for fixture in self.new.programme.fixtures
                if (fixture.name, fixture.date) == (change.name, move.after[0])
            )
            met = "fewer closed or healing greens" if left else "no closed or healing greens"
            return sentence(f"{change.name}, {self.new.dates.day(move.after[0])}, now meets {met}")
        if change.kind is ChangeKind.OTHERWISE:
            day = self.new.dates.day(move.after[0])
            decided = circumstances.DECIDED.get(change.after, "its decision is still to come")
            return sentence(f"{change.name}, {day}: {decided}")
        return self._of_named(change, change.name)

    def _of_named(self, change: Change, name: str) -> str:
        """Return a sentence on something that has only dates: it is new, falls away or moves."""
        before, after = _days(change.moves, new=False), _days(change.moves)
        if change.kind is ChangeKind.ADDED:
            said = f"{name}, {self.new.dates.days(after)}, is new"
        elif change.kind is ChangeKind.DROPPED:
            said = f"{name}, {self.new.dates.days(before)}, falls away"
        elif len(before) == len(after) == 1:
            said = f"{name} moves {self.new.dates.from_to(before[0], after[0])}"
        else:
            said = f"{name} is now {self._on(after)}, not {self._on(before)}"
        return sentence(said)

    # Names

    def _work(self, change: Change) -> Work:
        """Return the work of a change as now planned, or the old one if it falls away."""
        words = self.old if change.kind is ChangeKind.DROPPED else self.new
        return next(work for work in words.programme.works if work.id == change.id)

    def _names(self, group: Iterable[Change]) -> str:
        return and_list([self._title(one).lower() for one in group])

    def _title(self, change: Change) -> str:
        words = self.old if change.kind is ChangeKind.DROPPED else self.new
        return words.title(self._work(change))

    def _greens(self, change: Change) -> str:
        return self._name(_greens_of(change))

    def _name(self, greens: Sequence[str]) -> str:
        """Name greens by the new course, or by the old one if the new one lacks some."""
        known = set(greens) <= self.new.programme.greens.keys()
        return (self.new if known else self.old).greens(greens)

    def _on(self, days: Iterable[dt.date]) -> str:
        return self.new.dates.on_days(days)


def _greens(moves: Iterable[Move]) -> Iterator[str]:
    return (green for move in moves for green in move.greens)


def _greens_of(change: Change) -> tuple[str, ...]:
    return tuple(dict.fromkeys(_greens(change.moves)))


def _days(moves: Iterable[Move], *, new: bool = True) -> list[dt.date]:
    return sorted({day for move in moves for day in (move.after if new else move.before)})


def _is_one_shift(moves: Sequence[Move]) -> bool:
    """Tell whether all moves are by the same number of days."""
    shifts = {
        later - earlier
        for move in moves
        for earlier, later in zip(move.before, move.after, strict=False)
    }
    return len(shifts) == 1 and all(len(move.before) == len(move.after) for move in moves)


def _reopening(days: str) -> str:
    named = {0: "when the work on them is finished", 1: "the next morning"}
    return named.get(int(days), f"after {number(int(days))} days")


def _closure(programme: Programme, key: str) -> Closure:
    return next(closed for closed in programme.closures if closed.id == key)


def _of_club(change: Change) -> str:
    if change.aspect is Aspect.DRAFT:
        return "The plan still awaits approval." if change.after else "The plan is now approved."
    if change.aspect is Aspect.CONTACT:
        return sentence(f"New: {change.after}") if change.after else "Nobody is named to ask."
    decided = change.after or "nobody is named"
    return sentence(f"who decides on the day, and where you hear of it, is now: {decided}")
