"""Findings for people who do not write the plan, in whole sentences and in their own terms."""

from __future__ import annotations

import datetime as dt
import re

from notices.calendar_days import each_day
from notices.findings import Finding
from notices.operations import CATALOGUE
from notices.programme.green_names import plan_greens
from notices.wording import measures
from notices.wording.amounts import time_of_day
from notices.wording.lists import counted, sentence
from notices.wording.words import Words

OF_THE_PLAN_FILE = frozenset(
    {
        "accepted-for-several",
        "no-sender",
        "not-used-yet",
        "place-not-stated",
        "record-not-used",
        "nothing-measured",
    }
)
"""Codes of findings that matter only to whoever writes the plan."""

TOLD_ELSEWHERE = frozenset({"surface-against-targets", "sand-against-totals", "coring-and-thatch"})
"""Codes of findings that a committee reads beside the figures and the measurements."""

_ISO = r"(\d{4}-\d\d-\d\d)"
_SPAN = re.compile(rf"{_ISO} to {_ISO}")
_DAY = re.compile(_ISO)
_BREAK = re.compile(r"; |: (?=[a-z])")
_DRESSING = re.compile(r"(?<!top )\bdressing\b|(?<!top )\bdressing(?=s\b)")
_RUN = re.compile(r"\b(\d{1,2})-(\d{1,2})\b")
_GREENS = re.compile(r"\b(\d+) greens?\b")
_CLOCK = re.compile(r"\b([012]\d):([0-5]\d)\b")


def for_the_committee(found: Finding) -> bool:
    """Tell whether a committee decides about a finding, or wants to know it."""
    return found.code not in OF_THE_PLAN_FILE | TOLD_ELSEWHERE


def finding_in_words(words: Words, found: Finding) -> str:
    """Return a finding in short sentences, without advice on what to write into the plan."""
    text = found.message.replace(" (common practice)", "").replace("'", "’")
    text = measures.in_units(_greens(words, found, text), words.programme.club.units)
    parts = [sentence(part) for part in _BREAK.split(text)]
    text = _named(words, _timed(words, _dated(words, " ".join(parts))))
    text = _RUN.sub(r"\1 to \2", text)
    return _GREENS.sub(lambda match: counted(int(match[1]), "green"), text)


def finding_dates(found: Finding) -> tuple[dt.date, ...]:
    """Return every day that the words of a finding name."""
    days: set[dt.date] = set()
    for first, last in _SPAN.findall(found.message):
        days.update(each_day(dt.date.fromisoformat(first), dt.date.fromisoformat(last)))
    days |= {dt.date.fromisoformat(day) for day in _DAY.findall(found.message)}
    return tuple(sorted(days))


def _greens(words: Words, found: Finding, text: str) -> str:
    """Replace the plan's list of greens by the names that the club's readers use."""
    if not found.greens:
        return text
    course = words.programme.greens
    return text.replace(plan_greens(course, found.greens), words.greens(found.greens))


def _dated(words: Words, text: str) -> str:
    def span(match: re.Match[str]) -> str:
        first, last = map(dt.date.fromisoformat, match.groups())
        length = (last - first).days
        return words.dates.days(first + dt.timedelta(days=n) for n in range(length + 1))

    text = _SPAN.sub(span, text)
    return _DAY.sub(lambda match: words.dates.day(dt.date.fromisoformat(match[0])), text)


def _timed(words: Words, text: str) -> str:
    said = _CLOCK.sub(lambda m: words.language.clock(time_of_day(60 * int(m[1]) + int(m[2]))), text)
    return said.replace("m..", "m.")  # 6:30 a.m. at the end of a sentence


def _named(words: Words, text: str) -> str:
    """Replace names of works by the titles that the club's readers know."""
    titles = {work.operation.name: words.title(work).lower() for work in words.programme.works}
    # A term that contains another comes first, and a term that no work has stays as it is.
    known = sorted({*CATALOGUE, *titles}, key=len, reverse=True)
    pattern = re.compile("|".join(re.escape(name) for name in known), re.IGNORECASE)

    def title(match: re.Match[str]) -> str:
        said = titles.get(match[0].lower(), match[0])
        return f"{said[:1].upper()}{said[1:]}" if match[0][:1].isupper() else said

    return _DRESSING.sub(words.language.terms.dressing, pattern.sub(title, text))
