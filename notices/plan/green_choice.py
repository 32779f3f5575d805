"""Which greens a work takes: a plain list, or a list for each day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from pydantic import BeforeValidator, PlainSerializer

from notices.plan.days import all_days, parse_days
from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal


@dataclass(frozen=True, slots=True)
class GreenChoice:
    """The greens of a work; either both parts are empty, or one of them is."""

    plain: tuple[GreenRef, ...] = ()
    by_day: tuple[tuple[dt.date, tuple[GreenRef, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class DayLine:
    """One day's line of greens, or what is wrong with it."""

    key: str
    """The day as typed."""
    day: dt.date | None = None
    greens: tuple[GreenRef, ...] = ()
    fault: Refusal | None = None
    at_key: bool = False
    """Whether the fault lies in the day and not in the greens."""


def day_lines(typed: Mapping[str, object]) -> Iterator[DayLine]:
    """Read the lines of a work that names greens day by day, each for itself."""
    seen: set[dt.date] = set()
    for key, value in typed.items():
        try:
            days = all_days(parse_days(key))
        except Refusal as error:
            yield DayLine(key, fault=error, at_key=True)
            continue
        if len(days) > 1:
            several = Refusal(
                f"{quoted(key)} is several days", "give each day its own line of greens"
            )
            yield DayLine(key, fault=several, at_key=True)
            continue
        if days[0] in seen:
            twice = Refusal(f"{days[0]} stands here twice", "put its greens on one line")
            yield DayLine(key, fault=twice, at_key=True)
            continue
        seen.add(days[0])
        try:
            yield DayLine(key, days[0], parse_greens(value))
        except Refusal as error:
            yield DayLine(key, days[0], fault=error)


def read_choice(value: object) -> GreenChoice:
    """Read the greens of a work.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    if isinstance(value, GreenChoice):
        return value
    if not isinstance(value, Mapping):
        return GreenChoice(plain=parse_greens(value))
    by_day = []
    for line in day_lines(value):
        if line.fault:
            raise line.fault
        if line.day is None:
            continue
        by_day.append((line.day, line.greens))
    if not by_day:
        raise Refusal("no day is given", "write the greens, or a day with its greens")
    return GreenChoice(by_day=tuple(sorted(by_day, key=lambda line: line[0])))


def write_choice(choice: GreenChoice) -> str | dict[str, str]:
    """Write the greens of a work so that `read_choice` reads the same again."""
    if choice.by_day:
        return {day.isoformat(): format_greens(greens) for day, greens in choice.by_day}
    return format_greens(choice.plain)


WorkGreens = Annotated[
    GreenChoice,
    BeforeValidator(read_choice),
    PlainSerializer(write_choice, return_type=str | dict[str, str]),
]
