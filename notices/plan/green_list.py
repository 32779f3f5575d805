"""Greens as a greenkeeper lists them: "1-9, 12, Putting green"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal

GreenRef = int | str
"""A numbered green by its number, any other by its name as typed."""

HIGHEST_NUMBER = 99
"""Room for several courses under one roof, and too small for an area or a year."""
LONGEST_RANGE = 72
"""Four courses of eighteen; a longer range is a slip of the finger."""
LONGEST_NAME = 60

_EXAMPLE = 'list the greens such as "1-9, 12, Putting green"'
_DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2212"
# Built from plain pieces so that each of these refuses or accepts in one pass, without backing up.
_RANGE_SIGN = rf"(?:[ ]?[{_DASHES}][ ]?|[ ]to[ ])"
_RANGE = rf"([0-9]+){_RANGE_SIGN}([0-9]+)"


def parse_greens(value: object) -> tuple[GreenRef, ...]:
    """Read a list of greens, in the order in which they were typed.

    Parameters
    ----------
    value
        Text such as "1-6, 9, Putting green", a whole number, or a list of such. A range may be
        written with a hyphen, a dash or "to".

    Returns
    -------
    tuple of int or str
        Ranges written out; names with their spelling kept and their spaces tidied.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    parts = value if isinstance(value, list | tuple) else [value]
    greens: list[GreenRef] = []
    seen: set[GreenRef] = set()
    for part in parts:
        for green in _greens_of_part(part):
            same = green.casefold() if isinstance(green, str) else green
            if same in seen:
                what = f"green {green}" if isinstance(green, int) else quoted(green)
                raise Refusal(f"{what} stands twice in the list", "name each green once")
            seen.add(same)
            greens.append(green)
    if not greens:
        raise Refusal("this names no green", _EXAMPLE)
    return tuple(greens)


def format_greens(greens: Iterable[GreenRef]) -> str:
    """Write a list of greens so that `parse_greens` reads the same again: "1-6, 9, Putting green".

    The order is kept, because the order of a list can be the order of the work; only numbers that
    follow each other become a range.
    """
    parts: list[str] = []
    run: list[int] = []
    for green in greens:
        if isinstance(green, int):
            if run and (green != run[-1] + 1 or len(run) == LONGEST_RANGE):
                parts += _run_in_words(run)
                run = []
            run.append(green)
        else:
            parts += [*_run_in_words(run), green]
            run = []
    return ", ".join([*parts, *_run_in_words(run)])


def _run_in_words(run: list[int]) -> list[str]:
    if len(run) < 3:
        return [str(number) for number in run]
    return [f"{run[0]}-{run[-1]}"]


def _greens_of_part(part: object) -> list[GreenRef]:
    if isinstance(part, int) and not isinstance(part, bool):
        return [_number(part, part)]
    if not isinstance(part, str):
        raise Refusal(f"{quoted(part)} is no list of greens", _EXAMPLE)
    if not part.strip():
        raise Refusal("this names no green", _EXAMPLE)
    return [green for item in part.split(",") for green in _greens_of_item(item, part)]


def _greens_of_item(item: str, whole: str) -> list[GreenRef]:
    text = " ".join(item.split())
    if not text:
        raise Refusal(f"{quoted(whole)} has a comma with no green beside it", "take the comma out")
    if re.fullmatch("[0-9]+", text):
        return [_number(text, text)]
    if between := re.fullmatch(_RANGE, text, re.IGNORECASE):
        return list(_range(between[1], between[2], text))
    _refuse_near_numbers(text)
    return [_name(text)]


def _number(digits: int | str, typed: object) -> int:
    # The length is looked at first: Python refuses to read numbers of over 4300 digits.
    if isinstance(digits, str) and len(digits) > 6:
        raise Refusal(
            f"{quoted(typed)} is too high for a green", f"the highest is {HIGHEST_NUMBER}"
        )
    number = int(digits)
    if number < 1:
        raise Refusal(f"{quoted(typed)} is not a green", "greens count from 1")
    if number > HIGHEST_NUMBER:
        raise Refusal(
            f"{quoted(typed)} is too high for a green", f"the highest is {HIGHEST_NUMBER}"
        )
    return number


def _range(first_digits: str, last_digits: str, typed: str) -> range:
    first, last = _number(first_digits, typed), _number(last_digits, typed)
    if last < first:
        raise Refusal(f"{quoted(typed)} runs backwards", f'write "{last}-{first}"')
    if last == first:
        raise Refusal(f"{quoted(typed)} is one green only", f'write "{first}"')
    if last - first >= LONGEST_RANGE:
        raise Refusal(
            f"{quoted(typed)} is {last - first + 1} greens", f"the longest range is {LONGEST_RANGE}"
        )
    return range(first, last + 1)


def _refuse_near_numbers(text: str) -> None:
    """Refuse what looks like numbers gone wrong, rather than take it for the name of a green."""
    bare = re.sub("^(?:greens?|holes?)[ ]", "", text, flags=re.IGNORECASE)
    if bare != text and re.fullmatch(rf"[0-9]+|{_RANGE}", bare, re.IGNORECASE):
        raise Refusal(f"{quoted(text)} needs its numbers only", f'write "{bare}"')
    if re.fullmatch(rf"[{_DASHES}][ ]?[0-9]+", text):
        raise Refusal(f"{quoted(text)} has no first green", 'write a range such as "1-9"')
    if re.fullmatch(rf"[0-9]+(?:[ ]?[{_DASHES}]|[ ]to)", text, re.IGNORECASE):
        raise Refusal(f"{quoted(text)} has no last green", 'write a range such as "1-9"')
    if joined := re.match(rf"{_RANGE}[ ](?=[^0-9]*[A-Za-z])(.*)", text, re.IGNORECASE):
        start = text[: joined.start(3)].strip()
        raise Refusal(f"{quoted(text)} misses a comma", f'write "{start}, {joined[3]}"')
    numbers = re.findall("[0-9]+", text)
    rest = re.sub(r"[0-9]+|\band\b|\bto\b", "", text, flags=re.IGNORECASE)
    if numbers and not any(c.isalpha() for c in rest):
        apart = re.fullmatch(r"[0-9]+(?:(?:[ ;/&+]|and)+[0-9]+)+", text, re.IGNORECASE)
        if apart:
            raise Refusal(f"{quoted(text)} misses commas", f'write "{", ".join(numbers)}"')
        raise Refusal(f"{quoted(text)} is neither a green nor a range", _EXAMPLE)


def _name(text: str) -> str:
    if not text.isprintable():
        raise Refusal(f"{quoted(text)} holds invisible characters", "type the name afresh")
    if not any(c.isalpha() for c in text):
        raise Refusal(f"{quoted(text)} is neither a number nor a name", _EXAMPLE)
    if len(text) > LONGEST_NAME:
        raise Refusal(
            f"{quoted(text)} is too long for the name of a green",
            f"use at most {LONGEST_NAME} letters",
        )
    return text
