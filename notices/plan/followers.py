"""Works that follow others: "after: hollow tining, +1 day" in place of dates and greens.

The days of a follower are written into the plan as typed before it is read, so that every part
that asks for dates finds some; which green is done on which day, `programme.lay_out` takes from
the leader.
"""

from __future__ import annotations

import datetime as dt
import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Annotated, Any

from pydantic import BeforeValidator, PlainSerializer

from notices.operations import Operation
from notices.plan.days import DayRange, format_days, parse_days
from notices.plan.nearest import nearest, quoted
from notices.plan.own_operations import whole_catalogue
from notices.plan.refusal import Refusal
from notices.plan.source import PlanSource

LONGEST_WAIT = 366
"""A work that follows another by more days than this follows none."""

_EXAMPLE = 'write "hollow tining, same day" or "hollow tining, +1 day"'
_SOME_DAY = "2000-01-01"
"""Stands for the dates of a follower in a plan that is refused anyway."""


@dataclass(frozen=True, slots=True)
class After:
    """Which work another follows, and how many days later."""

    work: str
    """Its id, or its kind of work."""
    days: int = 0


def read_after(value: object) -> After:
    """Read which work is followed, in words or as a block.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    if isinstance(value, After):
        return value
    if isinstance(value, Mapping):
        unknown = [key for key in value if key not in ("work", "days")]
        work, days = value.get("work"), value.get("days", 0)
        if unknown:
            raise Refusal(f"{quoted(unknown[0])} is not known here", "write work and days")
        if not isinstance(work, str) or not work.strip():
            raise Refusal("this does not say which work it follows", "add work")
        if isinstance(days, bool) or not isinstance(days, int):
            raise Refusal(f"{quoted(days)} is not a number of days", "write one such as 1")
        return _after(work, days)
    if not isinstance(value, str):
        raise Refusal(f"{quoted(value)} is no work to follow", _EXAMPLE)
    work, comma, when = value.partition(",")
    if not work.strip() or (comma and not when.strip()):
        raise Refusal(f"{quoted(value)} is not understood", _EXAMPLE)
    if not comma or re.fullmatch("(?:the )?same day", " ".join(when.lower().split())):
        return _after(work, 0)
    later = re.fullmatch(r"\+? ?([0-9]{1,4}) days?(?: later)?", " ".join(when.lower().split()))
    if later is None:
        raise Refusal(f"{quoted(value)} is not understood", _EXAMPLE)
    return _after(work, int(later[1]))


def _after(work: str, days: int) -> After:
    if not 0 <= days <= LONGEST_WAIT:
        raise Refusal(
            f"{days} days after a work is not likely", f"write a number from 0 to {LONGEST_WAIT}"
        )
    return After(_plain(work), days)


def write_after(after: After) -> str:
    """Write which work is followed so that `read_after` reads the same again."""
    if after.days == 0:
        return f"{after.work}, same day"
    return f"{after.work}, +{after.days} {'day' if after.days == 1 else 'days'}"


AfterWork = Annotated[
    After, BeforeValidator(read_after), PlainSerializer(write_after, return_type=str)
]


@dataclass(frozen=True, slots=True)
class Named:
    """A work by the names that another may call it by."""

    operation: str
    id: str
    """Its own id, else its operation and its ordinal."""


def named_works(works: Sequence[tuple[str, str]]) -> list[Named]:
    """Return the names of works from the slugs or names of their operations and their ids."""
    counts: Counter[str] = Counter()
    found = []
    for operation, own in works:
        counts[operation] += 1
        found.append(Named(operation, own or f"{operation.replace(' ', '-')}-{counts[operation]}"))
    return found


def names_of_works(works: Sequence[Any], catalogue: Mapping[str, Operation]) -> list[Named]:
    """Return the names of works as typed, as far as they can be read."""
    typed = [work if isinstance(work, dict) else {} for work in works]
    return named_works(
        [
            (name if (name := _plain(work.get("operation"))) in catalogue else "", own)
            for work in typed
            for own in [work["id"] if isinstance(work.get("id"), str) else ""]
        ]
    )


def leader_of(after: After, works: Sequence[Named]) -> int:
    """Return which work is followed, counted from 0.

    Raises
    ------
    Refusal
        Where there is none of that name, or there are several.
    """
    return work_called(after.work, works, "to follow")


def work_called(name: str, works: Sequence[Named], purpose: str) -> int:
    """Return which work is meant by its id, or by its kind where there is one of it, from 0.

    Raises
    ------
    Refusal
        Where there is none of that name, or there are several.
    """
    for index, work in enumerate(works):
        if work.id == name:
            return index
    same = [index for index, work in enumerate(works) if work.operation == name]
    if len(same) == 1:
        return same[0]
    if same:
        ids = " or ".join(f'"{works[index].id}"' for index in same)
        raise Refusal(f"there are {len(same)} works of {name} {purpose}", f"write {ids}")
    known = list(
        dict.fromkeys(name for work in works for name in (work.id, work.operation) if name)
    )
    guess = nearest(name, known)
    kinds = [work.operation for work in works]
    named = (w.id if kinds.count(w.operation) > 1 else w.operation for w in works)
    raise Refusal(
        f"there is no work {quoted(name)} {purpose}",
        f'did you mean "{guess}"?' if guess else f"the plan has {', '.join(filter(None, named))}",
    )


def with_followers(source: PlanSource) -> tuple[PlanSource, list[tuple[int, str, Refusal]]]:
    """Return the source with dates for every work that follows another, and what is wrong.

    Returns
    -------
    tuple
        The source; and, for each fault, the work, its key and the fault itself.
    """
    works = source.data.get("works")
    if not isinstance(works, list) or not any(isinstance(w, dict) and "after" in w for w in works):
        return source, []
    reader = _Followers(works, whole_catalogue(source.data.get("operations")))
    filled = [reader.filled(index, work) for index, work in enumerate(works)]
    return replace(source, data={**source.data, "works": filled}), reader.faults


class _Followers:
    def __init__(self, works: Sequence[Any], catalogue: Mapping[str, Operation]) -> None:
        self._works = works
        self.faults: list[tuple[int, str, Refusal]] = []
        self._named = names_of_works(works, catalogue)

    def filled(self, index: int, work: object) -> object:
        if not isinstance(work, dict) or "after" not in work:
            return work
        for key in ("dates", "greens"):
            if key in work:
                both = Refusal(
                    f"this work follows another and has {key} of its own", "keep one of the two"
                )
                self.faults.append((index, key, both))
        try:
            days = format_days(self._days(index, ()))
        except Refusal as error:
            self.faults.append((index, "after", error))
            days = _SOME_DAY
        return {**work, "dates": days or _SOME_DAY}

    def _days(self, index: int, seen: tuple[int, ...]) -> tuple[DayRange, ...]:
        """Return the days of a work; none where its own dates cannot be read."""
        if index in seen:
            circle = " and ".join(dict.fromkeys(f'"{self._named[i].id}"' for i in seen))
            raise Refusal(
                f"{circle} follow one another in a circle"
                if len(set(seen)) > 1
                else "this work follows itself",
                "give one of them dates" if len(set(seen)) > 1 else "name another, or give dates",
            )
        work = self._works[index]
        if "after" not in work:
            try:
                return parse_days(work.get("dates"))
            except Refusal:
                return ()  # said where they stand
        after = read_after(work["after"])
        wait = dt.timedelta(days=after.days)
        leader = leader_of(after, self._named)
        return tuple(
            DayRange(days.first + wait, days.last + wait)
            for days in self._days(leader, (*seen, index))
        )


def _plain(name: object) -> str:
    """Return a name as the catalogue has it: small letters, single spaces."""
    return re.sub(r"[\s_]+", " ", name.strip().lower()) if isinstance(name, str) else ""
