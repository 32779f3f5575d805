"""Differences between the languages that notices are written in.

The texts on each kind of work are in ``templates/LANGUAGE/``. Here are the date patterns and the
terms for sentences made in code. A new language needs an entry in LANGUAGES, a folder of texts,
and a look at every sentence that comes out.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class DatePatterns:
    """Date patterns, in the letters of Unicode TR 35 (Babel)."""

    locale: str
    day: str
    short_day: str
    date: str
    """Day, month and year."""
    weekday: str
    month_day: str
    year: str
    """Suffix that adds a year, as {}, to a day."""
    month_last: bool
    """Whether a span within one month names the month once, at its end."""
    clock: str
    """Pattern of the time of day for strftime."""


@dataclass(frozen=True, slots=True)
class Terms:
    """Trade terms that differ between the languages."""

    renovation: str
    """A period of several kinds of work on greens."""
    to_sand: str
    """Verb for work with sand: we spread sand, we topdress."""
    dressing: str
    """Noun for spreading sand once."""
    to_tine: str
    """Verb for work with tines: we tine, we aerify."""
    autumn: str
    new_turf: str
    stone: str
    """Material around a drain."""
    reserve_day: str
    top_up: str
    """Sand that is spread again some weeks later."""
    booking: str
    """Noun for the reservation of a visitor."""
    fixture: str
    """A competition, or a day of visitors."""
    that_day: str
    """Phrase for a day named before: from 06:30 on the day."""
    to_agree: str
    """Verb for a committee's decision on dates."""
    notice_board: str
    paper: str
    """Paper to print a sheet on."""
    large_paper: str
    colour: str
    course_manager: str
    labour: str
    lorry_load: str
    percent: str
    """Percent sign, with the space before it if there is one."""


@dataclass(frozen=True, slots=True)
class Language:
    """One language that notices are written in."""

    tag: str
    dates: DatePatterns
    terms: Terms

    def with_percent(self, text: str) -> str:
        """Return the text with percent signs as the language writes them: 4.9 %; 4.9%."""
        return _PERCENT.sub(self.terms.percent, text)

    def reserve_days(self, count: int) -> str:
        """Return the label of days kept free for rain, such as "Reserve days" or "Rain dates"."""
        return f"{self.terms.reserve_day}{'' if count == 1 else 's'}"

    def clock(self, time: dt.time) -> str:
        """Write a time of day: 06:30; 6:30 a.m.; noon."""
        text = time.strftime(self.dates.clock)
        if "M" not in text:
            return text
        if (time.hour, time.minute) == (12, 0):
            return "noon"
        return text.lstrip("0").replace("AM", "a.m.").replace("PM", "p.m.")

    def clock_span(self, begins: str, ends: str) -> str:
        """Write a span of time with a.m. or p.m. only once: 06:30 to 07:00; 6:30 to 7:00 a.m."""
        for half in (" a.m.", " p.m."):
            if begins.endswith(half) and ends.endswith(half):
                begins = begins.removesuffix(half)
        return f"{begins} to {ends}"

    def clock_at(self, minutes: float) -> str:
        """Write minutes from midnight as a time of day, past midnight that of the new day."""
        hours, minute = divmod(round(minutes), 60)
        return self.clock(dt.time(hours % 24, minute))


_PERCENT = re.compile(r"(?<=\d)[ \N{NO-BREAK SPACE}]%")


_LANGUAGES = (
    Language(
        "en-GB",
        DatePatterns(
            locale="en_GB",
            day="EEEE d MMMM",
            short_day="EEE d MMM",
            date="d MMMM y",
            weekday="EEE d",
            month_day="d MMM",
            year=" {}",
            month_last=True,
            clock="%H:%M",
        ),
        Terms(
            renovation="Greens renovation",
            to_sand="spread sand",
            dressing="dressing",
            to_tine="tine",
            autumn="autumn",
            new_turf="new turf",
            stone="stone",
            reserve_day="Reserve day",
            top_up="top-up",
            booking="booking",
            fixture="Fixture",
            to_agree="agree",
            that_day="on the day",
            notice_board="Notice board",
            paper="A4",
            large_paper="A3",
            colour="colour",
            course_manager="Course Manager",
            labour="labour",
            lorry_load="lorry load",
            percent=" %",
        ),
    ),
    Language(
        "en-US",
        DatePatterns(
            locale="en_US",
            day="EEEE, MMMM d",
            short_day="EEE, MMM d",
            date="MMMM d, y",
            weekday="EEE d",
            month_day="MMM d",
            year=", {}",
            month_last=False,
            clock="%I:%M %p",
        ),
        Terms(
            renovation="Greens aerification",
            to_sand="topdress",
            dressing="topdressing",
            to_tine="aerify",
            autumn="fall",
            new_turf="new sod",
            stone="gravel",
            reserve_day="Rain date",
            top_up="follow-up topdressing",
            booking="tee time",
            fixture="Event",
            to_agree="approve",
            that_day="that day",
            notice_board="Bulletin board",
            paper="Letter or A4",
            large_paper="Tabloid or A3",
            colour="color",
            course_manager="Superintendent",
            labour="labor",
            lorry_load="truckload",
            percent="%",
        ),
    ),
)

LANGUAGES: Mapping[str, Language] = MappingProxyType({entry.tag: entry for entry in _LANGUAGES})
"""Every language by its tag (BCP 47)."""
