"""The club: who signs, who decides, and what it sends."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from typing import Self

from notices.plan.moments import Moment, Sending


@dataclass(frozen=True, slots=True)
class Decision:
    """Who decides on the day, and where golfers hear of it."""

    by: str
    when: str
    confirmed: dt.time | None
    where: str


@dataclass(frozen=True, slots=True)
class Mailing:
    """A document that goes out on an occasion."""

    document: str
    moment: Moment
    send: Sending


@dataclass(frozen=True, slots=True)
class Sender:
    """Who signs the notices."""

    role: str
    """Empty where the plan names none; the language then has a word for it."""
    name: str
    email: str
    placeholder: bool
    """Whether the address was made up because the plan has none."""


@dataclass(frozen=True, slots=True)
class Club:
    """Who the notices come from."""

    name: str
    slug: str
    sender: Sender
    reply_to: str
    website: str
    contact: str
    language: str
    units: str
    answers: str = ""
    """By when a question is answered, in the club's words."""
    sign_off: str = ""
    """Last line of what is sent, in the club's words; empty for name, post and club."""
    colour: str = ""
    """Its own colour, such as "#1b4d3e"; empty for ours."""
    logo: str = field(default="", repr=False)
    """A PNG in a data URL (RFC 2397); empty where the plan names none."""
    boards: str = ""
    """Where notices hang, in the club's words."""
    southern: bool = False
    """Whether it lies south of the equator, so that its seasons are half a year turned."""
    country: str = ""
    """ISO 3166 code, such as GB-ENG; empty where the plan names none."""


@dataclass(frozen=True, slots=True)
class Approval:
    """Who approved the work, if that is known."""

    pending: bool
    by: str
    date: dt.date | None
    reference: str


@dataclass(frozen=True, slots=True)
class Photograph:
    """A picture of the club's own."""

    data: str = field(repr=False)
    """A JPEG in a data URL (RFC 2397)."""
    shows: str
    caption: str
    works: tuple[str, ...]
    """Works that it belongs to; none where it belongs to all, or to nothing that is planned."""


@dataclass(frozen=True, slots=True)
class Edition:
    """One of the notices that a club issues one after the other, each in place of the last."""

    issued: dt.date
    version: int = 1
    """1 for the first; each that replaces another has the next."""
    first_issued: dt.date | None = None
    """When the first of them was issued; None where it is the first itself."""
    draft: bool = False
    """Whether it was to be approved, so that nobody outside has anything of it."""

    @property
    def begun(self) -> dt.date:
        """When golfers first heard of the work."""
        return self.first_issued or self.issued

    @classmethod
    def numbered(cls, number: str) -> Self:
        """Return the one of a printed number, its first forgotten.

        Raises
        ------
        ValueError
            If it is no such number.
        """
        issued, _, version = number.partition("-")
        try:
            return cls(dt.date.fromisoformat(issued), int(version))
        except ValueError as error:
            raise ValueError(f"{number} is not the number of a notice") from error

    @property
    def number(self) -> str:
        """What is printed on every document, and by which the pack is found: "20260914-1"."""
        return f"{self.issued:%Y%m%d}-{self.version}"
