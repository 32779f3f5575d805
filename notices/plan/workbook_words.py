"""What there is to say about a plan in a workbook, in the words of the workbook.

Readers and checks speak of a plan by its keys, as it stands in YAML. Who keeps it in a workbook
has sheets, headings and cells instead. So each key is said here by the heading that the table of
the workbook has for it, and `key: value` by what to type, and where.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from notices.findings import Finding
from notices.plan.messages import Path, listed
from notices.plan.workbook_layout import (
    SHEETS,
    Column,
    Sheet,
    Takes,
    Way,
    all_settings,
    heading_of_setting,
)

_KEYS = {step for sheet in SHEETS for column in sheet.columns for step in (*sheet.way, *column.way)}
# A month is a number, and so is much else; of two keys the longer is looked for first.
_KEY = "|".join(sorted((key for key in _KEYS if not key.isdigit()), key=len, reverse=True))
_SETTINGS = "|".join(sorted((setting.name for setting in all_settings()), key=len, reverse=True))

_BRACES = re.compile(r"\{([^{}]*)\}")
# One key with a colon may be the end of a clause ("once on each green: keep one"), so one alone
# counts after these words only; a chain of them ("course: soil:") counts wherever it stands.
_TYPED = re.compile(
    rf"(?P<before>\b(?:write|add|correct|and|such as) |)(?P<under>\bunder |)"
    rf"\b(?P<keys>(?:{_KEY}):(?: (?:{_KEY}):)*)"
    rf"(?: (?!(?:with|in|to|names)\b)(?P<value>\"[^\"]*\"|[^,;]+?)(?=$|[,;]| and (?:{_KEY}):))?"
    rf"(?P<of_it> with [^;]*|)",
    re.IGNORECASE,
)
_NAMED = re.compile(
    rf"\b(?P<verb>(?:add|take) )(?P<keys>(?:{_KEY})(?:(?:, or |, | or | and )(?:{_KEY}))*)\b",
    re.IGNORECASE,
)
_LONG_KEY = re.compile(rf"\"?\b(?=[a-z]+_)({_KEY})\b\"?")
_SETTING = re.compile(rf"\"({_SETTINGS})\"")
_KNOWN = "Known are "
_A_FEW = 3
"""More columns than these are said by the first and the last of them, or by their sheet."""


def in_workbook_words(finding: Finding) -> Finding:
    """Return a finding about a plan in a workbook by its headings, not by keys."""
    speaker = _Speaker(_sheet_of(finding), finding.path)
    if missing := speaker.missing(finding):
        return replace(finding, message=missing[0], suggestion=missing[1])
    return replace(
        finding,
        message=speaker.single_keys(finding.message),
        suggestion=speaker.suggestion(finding.suggestion),
    )


def _sheet_of(finding: Finding) -> Sheet | None:
    """Return the sheet that a finding is about: the one of its cell, else the one of its path."""
    if finding.place and finding.place.sheet:
        return next((sheet for sheet in SHEETS if sheet.name == finding.place.sheet), None)
    way = _way(finding.path)
    return next(
        (sheet for sheet in SHEETS if sheet.way and way[: len(sheet.way)] == sheet.way), None
    )


def _way(path: Path) -> Way:
    return tuple(step for step in path if isinstance(step, str))


@dataclass(frozen=True, slots=True)
class _Found:
    """What keys lead to: some columns of a sheet, or with none the whole of it."""

    sheet: Sheet
    columns: tuple[Column, ...] = ()


@dataclass(frozen=True, slots=True)
class _Speaker:
    """Says keys to somebody who looks at one sheet."""

    sheet: Sheet | None
    path: Path

    def missing(self, finding: Finding) -> tuple[str, str] | None:
        """Return what is missing, and what would be right, where that is what was found."""
        if not self.path or finding.message != f'"{self.path[-1]}" is missing':
            return None
        if (found := self._find(self._place)) is None:
            return None
        if found.columns:
            return f"{self._name(found)} is missing", finding.suggestion
        return f"no row of the sheet {_quoted(found.sheet.name)} is filled", found.sheet.line

    def suggestion(self, text: str) -> str:
        if text.startswith(_KNOWN) and "settings" in self.path:
            headings = [_quoted(heading_of_setting(key)) for key in text[len(_KNOWN) :].split(", ")]
            return f"{_KNOWN}{', '.join(headings)}"
        text = _BRACES.sub(lambda match: match[1].replace(", ", " and "), text)
        text = _TYPED.sub(self._typed, text)
        return self.single_keys(_NAMED.sub(self._named, text))

    @property
    def _place(self) -> Way:
        return _way(self.path)

    def _typed(self, match: re.Match[str]) -> str:
        keys = tuple(match["keys"].replace(":", "").split())
        if len(keys) == 1 and not match["before"] and not match["under"]:
            return match[0]
        value = (match["value"] or "").strip('"')
        found = self._find((*keys, value)) if value in _KEYS else None
        if found:
            value = "yes"
        found = found or self._find(keys)
        if found is None:
            return match[0]
        if not found.columns:
            place = f"the sheet {_quoted(found.sheet.name)}"
            return f"{match['before']}{'on ' if match['under'] else ''}{place}{match['of_it']}"
        if not value:
            of_it = match["of_it"] if len(found.columns) == 1 else ""
            return f"{match['before']}{match['under']}{self._name(found)}{self._on(found)}{of_it}"
        if found.columns[0].takes is Takes.YES_NO:
            value = {"true": "yes", "false": "no"}.get(value, value)
        where = "under" if found.sheet.is_list else "beside"
        return f'{match["before"]}"{value}" {where} {self._name(found)}{self._on(found)}'

    def _named(self, match: re.Match[str]) -> str:
        def heading(key: re.Match[str]) -> str:
            found = self._find((key[0],))
            own = found and found.columns and found.sheet is self.sheet
            return self._name(found) if found and own else key[0]

        return match["verb"] + re.sub(rf"\b(?:{_KEY})\b", heading, match["keys"])

    def single_keys(self, text: str) -> str:
        """Say keys that stand alone; a word of one part may be any word, outside of settings."""

        def heading(match: re.Match[str]) -> str:
            found = self._find((match[1],))
            return self._name(found) if found and found.columns else match[0]

        text = _LONG_KEY.sub(heading, text)
        return _SETTING.sub(heading, text) if "settings" in self.path else text

    def _find(self, keys: Way) -> _Found | None:
        """Return what keys lead to: on the sheet that one looks at, else from the top of the plan."""
        if self.sheet:
            own = [
                column for column in self.sheet.columns if column.way and column.way[-1] == keys[-1]
            ]
            exact = [column for column in own if (*self.sheet.way, *column.way) == keys]
            near = [column for column in own if column.way[:1] == self._place[:1]]
            if exact or (own and len(keys) == 1):
                return _Found(self.sheet, tuple(exact or near or own))
        for sheet in SHEETS:
            if keys == sheet.way:
                return _Found(sheet)
            columns = tuple(
                column
                for column in sheet.columns
                if (whole := (*sheet.way, *column.way))[: len(keys)] == keys
                and len(whole) > len(sheet.way)
            )
            if columns:
                return _Found(sheet, columns)
        return None

    def _name(self, found: _Found) -> str:
        # Days have three columns, and the first of them is enough to find the others by.
        first = {column.way: column for column in reversed(found.columns)}
        headings = [_quoted(column.heading) for column in reversed(first.values())]
        if len(headings) > _A_FEW:
            return f"{headings[0]} to {headings[-1]}"
        return listed(headings)

    def _on(self, found: _Found) -> str:
        return "" if found.sheet is self.sheet else f" on the sheet {_quoted(found.sheet.name)}"


def _quoted(heading: str) -> str:
    return f'"{heading}"'
