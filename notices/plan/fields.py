"""The kinds of value that the keys of a plan take: text, numbers, quantities, days, addresses.

Each is a type with a reader in front of it; what a reader refuses, it refuses in a sentence for
the person who typed the value. Quantities are kept in one unit and written back in words.
"""

from __future__ import annotations

import datetime as dt
import re
import zoneinfo
from collections.abc import Callable, Collection
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, PlainSerializer, ValidationInfo

from notices.operations import CATALOGUE, WhileWorking
from notices.plan import quantities as q
from notices.plan.days import (
    DayRange,
    all_days,
    format_clock,
    format_days,
    format_working_day,
    parse_clock,
    parse_days,
    parse_working_day,
)
from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal


def _read_and_written(
    parse: Callable[[object], object], write: Callable[[Any], str]
) -> tuple[BeforeValidator, PlainSerializer]:
    return BeforeValidator(parse), PlainSerializer(write, return_type=str)


def read_text(value: object) -> object:
    """Take a name that YAML took for a number for a name, and spaces around it for a slip."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    return value.strip() if isinstance(value, str) else value


def read_number(value: object) -> object:
    """Pydantic would take true for 1."""
    if isinstance(value, bool):
        raise Refusal(f"{quoted(value)} is not a number", "write one such as 4")
    return value


def read_colour(value: object) -> object:
    """Take a colour as the web writes it, with or without its sign.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    text = str(value).strip().lstrip("#").lower() if isinstance(value, str | int) else ""
    if not re.fullmatch("[0-9a-f]{6}", text):
        raise Refusal(
            f"{quoted(value)} is not a colour",
            'write its red, green and blue in six signs and in quotes, such as "#1b4d3e"',
        )
    return f"#{text}"


def read_course_name(value: object) -> object:
    """Take any name that a list of greens can tell from numbers and from other greens."""
    value = read_text(value)
    if not isinstance(value, str) or not value:
        return value
    name = " ".join(value.split())
    if not any(letter.isalpha() for letter in name) or not name.isprintable():
        raise Refusal(f"{quoted(name)} is not a name", "write one such as Oak or Red nine")
    if "," in name:
        raise Refusal(f"{quoted(name)} has a comma, which parts greens in a list", "leave it out")
    if re.fullmatch("(?:the )?(?:whole )?(?:courses?|greens?|holes?)", name, re.IGNORECASE):
        raise Refusal(f"{quoted(name)} is no name", "write one such as Oak or Red nine")
    return name


# The limits stand first, so that pydantic knows them for those of a text.
Text = Annotated[str, Field(min_length=1, max_length=2000), BeforeValidator(read_text)]
PictureFile = Annotated[str, Field(min_length=1, max_length=3_000_000), BeforeValidator(read_text)]
Number = Annotated[float, BeforeValidator(read_number)]
WholeNumber = Annotated[int, BeforeValidator(read_number)]
LengthMm = Annotated[float, *_read_and_written(q.length_mm, q.format_length_mm)]
LengthM = Annotated[float, *_read_and_written(q.length_m, q.format_length_m)]
AreaM2 = Annotated[float, *_read_and_written(q.area_m2, q.format_area_m2)]
DensityTM3 = Annotated[float, *_read_and_written(q.density_t_m3, q.format_density_t_m3)]
RateKgM2 = Annotated[float, *_read_and_written(q.rate_kg_m2, q.format_rate_kg_m2)]
WeightT = Annotated[float, *_read_and_written(q.weight_t, q.format_weight_t)]
Percent = Annotated[float, *_read_and_written(q.percent, q.format_percent)]
TemperatureC = Annotated[float, *_read_and_written(q.temperature_c, q.format_temperature_c)]
SpeedKmH = Annotated[float, *_read_and_written(q.speed_km_h, q.format_speed_km_h)]
Days = Annotated[tuple[DayRange, ...], *_read_and_written(parse_days, format_days)]
GreenRefs = Annotated[tuple[GreenRef, ...], *_read_and_written(parse_greens, format_greens)]
Colour = Annotated[str, BeforeValidator(read_colour)]
CourseName = Annotated[str, Field(min_length=1, max_length=40), BeforeValidator(read_course_name)]
Clock = Annotated[dt.time, *_read_and_written(parse_clock, format_clock)]
WorkingDay = Annotated[
    tuple[dt.time, dt.time], *_read_and_written(parse_working_day, format_working_day)
]


def read_day(value: object) -> dt.date:
    """Read one date."""
    days = all_days(parse_days(value))
    if len(days) != 1:
        raise Refusal(f"{len(days)} days are given", f"write one date such as {days[0]}")
    return days[0]


Day = Annotated[dt.date, *_read_and_written(read_day, dt.date.isoformat)]


def read_address(value: object) -> str:
    """Read an email address."""
    from email_validator import EmailNotValidError, validate_email  # noqa: PLC0415, start-up time

    try:
        if isinstance(value, str):
            checked = validate_email(
                value.strip(), check_deliverability=False, allow_smtputf8=False
            )
            return checked.normalized
    except EmailNotValidError:
        pass  # its reasons are written for people who know the standard
    raise Refusal(
        f"{quoted(value)} is not an email address", "write one such as course@club.example"
    )


Address = Annotated[str, BeforeValidator(read_address)]


def read_zone(value: object) -> str:
    """Read the IANA name of a time zone."""
    if not isinstance(value, str):
        raise Refusal(f"{quoted(value)} is not a time zone", "write one such as Europe/London")
    try:
        zoneinfo.ZoneInfo(value)
    except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError):
        guess = nearest(value, sorted(zoneinfo.available_timezones()))
        hint = f'did you mean "{guess}"?' if guess else "write one such as Europe/London"
        raise Refusal(f"there is no time zone {quoted(value)}", hint) from None
    return value


Zone = Annotated[str, BeforeValidator(read_zone)]


def read_operation(value: object, info: ValidationInfo) -> str:
    """Read the name of a kind of work, in any capitals and with any spaces."""
    words = " ".join(re.split(r"[\s_]+", value.strip().lower())) if isinstance(value, str) else ""
    # The plan may bring kinds of work of its own; their names come as the context.
    known: Collection[str] = info.context or CATALOGUE
    if words in known:
        return words
    guess = nearest(words, known)
    hint = f'did you mean "{guess}"?' if guess else f"known are {', '.join(known)}"
    raise Refusal(f"there is no operation {quoted(value)}", hint)


OperationName = Annotated[str, BeforeValidator(read_operation)]


def read_while_working(value: object) -> WhileWorking:
    """Read what a green is to golfers on a day of work."""
    for choice in WhileWorking:
        if str(value).strip().lower() == choice.value:
            return choice
    raise Refusal(
        f"{quoted(value)} is not understood", 'write "closed", "temporary green" or "open"'
    )


StateWhileWorking = Annotated[WhileWorking, BeforeValidator(read_while_working)]

_REOPENING = {"when finished": 0, "next morning": 1}


def read_reopening(value: object) -> int:
    """Read when a green comes back into play, as days after the work."""
    words = " ".join(value.lower().split()) if isinstance(value, str) else ""
    if words in _REOPENING:
        return _REOPENING[words]
    if later := re.fullmatch("([0-9]{1,3}) days? later", words):
        return int(later[1])
    raise Refusal(
        f"{quoted(value)} is not understood",
        'write "when finished", "next morning" or "2 days later"',
    )


def _write_reopen(days: int) -> str:
    named = {number: words for words, number in _REOPENING.items()}
    return named.get(days, f"{days} days later")


Reopening = Annotated[int, *_read_and_written(read_reopening, _write_reopen)]
