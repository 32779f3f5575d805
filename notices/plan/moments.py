"""The moments at which members hear of work, and the days on which something is sent."""

from __future__ import annotations

import datetime as dt
import enum
import re
from dataclasses import dataclass
from typing import Annotated

from pydantic import BeforeValidator, PlainSerializer

from notices.plan.days import all_days, parse_days
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal

LONGEST_AHEAD = 366
"""Days before or after the work by which anything can be sent."""

_EXAMPLES = 'write "28 days before", "the day before", "when finished" or "2 days after"'
_WEEK = 7


class Moment(enum.StrEnum):
    """On what occasion a notice goes out, in the order in which work goes."""

    ANNOUNCEMENT = "announcement"
    REMINDER = "reminder"
    DAY_BEFORE = "day before"
    CALLED_OFF = "called off"
    STOPPED = "stopped part-way"
    PROGRESS = "progress"
    FINISHED = "finished"
    RECOVERY_LATE = "recovery late"
    BACK_TO_NORMAL = "back to normal"


MAILED = ("member email", "visitor notice", "short message")
"""What can be sent on an occasion."""


def read_mailed(value: object) -> str:
    """Read what is sent.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    words = " ".join(value.lower().split()) if isinstance(value, str) else ""
    if words in MAILED:
        return words
    guess = nearest(words, MAILED)
    hint = f'did you mean "{guess}"?' if guess else f"write one of: {', '.join(MAILED)}"
    raise Refusal(f"{quoted(value)} is nothing that can be sent", hint)


def read_moment(value: object) -> Moment:
    """Read on what occasion a notice goes out.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    words = " ".join(value.lower().split()) if isinstance(value, str) else ""
    known = [moment.value for moment in Moment]
    if words in known:
        return Moment(words)
    guess = nearest(words, known)
    hint = f'did you mean "{guess}"?' if guess else f"write one of: {', '.join(known)}"
    raise Refusal(f"{quoted(value)} is no occasion for a notice", hint)


@dataclass(frozen=True, slots=True)
class Sending:
    """The day on which something is sent: a date, or days from the first or last day of work."""

    date: dt.date | None = None
    days: int = 0
    """How many days later than that day; negative where before it."""
    from_end: bool = False
    """Whether the days count from the last day of the work, not from the first."""

    def on(self, first: dt.date, last: dt.date) -> dt.date:
        """Return the day for work that lasts from one day to another."""
        if self.date is not None:
            return self.date
        return (last if self.from_end else first) + dt.timedelta(days=self.days)


_NAMED = {
    "day before": Sending(days=-1),
    "on the day": Sending(),
    "when finished": Sending(from_end=True),
    "day after": Sending(days=1, from_end=True),
}


def read_sending(value: object) -> Sending:
    """Read when something is sent: "28 days before", "when finished", "2026-09-14".

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    if isinstance(value, Sending):
        return value
    if isinstance(value, dt.date) or (isinstance(value, str) and re.match("[0-9]{4}-", value)):
        days = all_days(parse_days(value))
        if len(days) != 1:
            raise Refusal(f"{len(days)} days are given", f"write one date such as {days[0]}")
        return Sending(date=days[0])
    words = " ".join(value.lower().split()).removeprefix("the ") if isinstance(value, str) else ""
    if words in _NAMED:
        return _NAMED[words]
    counted = re.fullmatch("([0-9]{1,3}) (day|week)s? (before|after)", words)
    if counted is None:
        raise Refusal(f"{quoted(value)} is not understood", _EXAMPLES)
    days_away = int(counted[1]) * (_WEEK if counted[2] == "week" else 1)
    if days_away > LONGEST_AHEAD:
        raise Refusal(
            f"{quoted(value)} is more than a year away", f"write at most {LONGEST_AHEAD} days"
        )
    after = counted[3] == "after"
    return Sending(days=days_away if after else -days_away, from_end=after)


def write_sending(sending: Sending) -> str:
    """Write when something is sent so that `read_sending` reads the same again."""
    if sending.date is not None:
        return sending.date.isoformat()
    for words, named in _NAMED.items():
        if named == sending:
            return f"the {words}" if words.startswith("day") else words
    days = abs(sending.days)
    unit = "day" if days == 1 else "days"
    return f"{days} {unit} {'after' if sending.from_end else 'before'}"


Mailed = Annotated[str, BeforeValidator(read_mailed)]
MomentOfNotice = Annotated[Moment, BeforeValidator(read_moment)]
SendDay = Annotated[
    Sending, BeforeValidator(read_sending), PlainSerializer(write_sending, return_type=str)
]
