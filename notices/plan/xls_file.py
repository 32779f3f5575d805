"""The older kind of workbook (.xls), looked through: a small file system with one long record file.

Only as much of both is read as tells what may not be opened, and which cells hold formulas or are
merged: [MS-CFB] for the file system, [MS-XLS] for the records.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from dataclasses import dataclass

from notices.plan.refusal import Refusal

Cell = tuple[int, int]
_END = 0xFFFFFFFA
"""Sector numbers from here on mean that there is none."""

_CELLS = {
    *(0x0006, 0x00BD, 0x00D6, 0x00FD),
    *(0x0203, 0x0204, 0x0205, 0x027E),
}
"""Records that begin with the row and column of a cell; those of empty cells are left out."""
_SEVERAL = {0x00BD}
"""Those that end with the last column of a row of cells."""
_FORMULA, _MERGED, _SHEET, _LOCKED, _BEGIN = 0x0006, 0x00E5, 0x0085, 0x002F, 0x0809
_LABEL, _TEXTS, _CONTINUED = 0x00FD, 0x00FC, 0x003C
_LONGEST_TEXT = 65_535


@dataclass(frozen=True, slots=True)
class Refusals:
    """What is said of a file that may not be opened."""

    broken: Refusal
    closed: Refusal
    macros: Refusal
    far: Refusal
    too_big: Refusal


def look_through_xls(
    data: bytes, *, last: Cell, most_text: int, refusals: Refusals
) -> tuple[dict[str, frozenset[Cell]], dict[str, frozenset[Cell]]]:
    """Return the cells with formulas and the merged ones, by the names of the sheets.

    Raises
    ------
    Refusal
        One of those given, where the file may not be opened.
    """
    try:
        streams = _streams(data)
    except (struct.error, IndexError, ValueError):
        raise refusals.broken from None
    if "EncryptedPackage" in streams:
        raise refusals.closed
    if any(name.startswith("_VBA_PROJECT") for name in streams):
        raise refusals.macros
    book = streams.get("Workbook") or streams.get("Book")
    if book is None:
        raise refusals.broken
    found = _Book(last, most_text, refusals)
    try:
        for at, kind, body in _records(book):
            found.take(at, kind, body)
    except (struct.error, IndexError, UnicodeDecodeError):
        raise refusals.broken from None
    return (
        {name: frozenset(cells) for name, cells in found.formulas.items()},
        {name: frozenset(cells) for name, cells in found.merged.items()},
    )


class _Book:
    """What is gathered from the records of a workbook, and counted against the limits."""

    def __init__(self, last: Cell, most_text: int, refusals: Refusals) -> None:
        self.formulas: dict[str, set[Cell]] = {}
        self.merged: dict[str, set[Cell]] = {}
        self._last, self._most_text, self._refusals = last, most_text, refusals
        self._names: dict[int, str] = {}
        self._sheet = ""
        self._labels = self._shared = self._before = 0

    def take(self, at: int, kind: int, body: bytes) -> None:
        if kind == _LOCKED:
            raise self._refusals.closed
        if kind == _SHEET:
            start, _state, _kind, length, wide = struct.unpack_from("<IBBBB", body)
            letters = body[8 : 8 + length * (2 if wide & 1 else 1)]
            self._names[start] = letters.decode("utf-16-le" if wide & 1 else "latin-1")
        elif kind == _BEGIN:
            self._sheet = self._names.get(at, "")
        elif kind == _TEXTS or (kind == _CONTINUED and self._before == _TEXTS):
            self._shared += len(body)
            kind = _TEXTS
        elif kind in _CELLS:
            self._cell(kind, body)
        elif kind == _MERGED:
            (count,) = struct.unpack_from("<H", body)
            for number in range(count):
                top, _bottom, left, _right = struct.unpack_from("<HHHH", body, 2 + 8 * number)
                self.merged.setdefault(self._sheet, set()).add((top + 1, left + 1))
        self._before = kind

    def _cell(self, kind: int, body: bytes) -> None:
        row, column = struct.unpack_from("<HH", body)
        final = struct.unpack_from("<H", body, len(body) - 2)[0] if kind in _SEVERAL else 0
        if row >= self._last[0] or max(column, final) >= self._last[1]:
            raise self._refusals.far
        self._labels += kind == _LABEL
        if self._labels * min(self._shared, _LONGEST_TEXT) > self._most_text:
            raise self._refusals.too_big
        if kind == _FORMULA:
            self.formulas.setdefault(self._sheet, set()).add((row + 1, column + 1))


def _records(book: bytes) -> Iterator[tuple[int, int, bytes]]:
    at = 0
    while at + 4 <= len(book):
        kind, length = struct.unpack_from("<HH", book, at)
        yield at, kind, book[at + 4 : at + 4 + length]
        at += 4 + length


def _streams(data: bytes) -> dict[str, bytes | None]:
    """Return the streams by their names; only that of the workbook is read."""
    (shift,) = struct.unpack_from("<H", data, 30)
    if shift not in (9, 12):
        raise ValueError("no size of a sector")
    size = 1 << shift
    tables = _tables(data, size)
    table: list[int] = []
    for sector in tables:
        table += struct.unpack_from(f"<{size // 4}I", data, (sector + 1) * size)
    (directory_at,) = struct.unpack_from("<I", data, 48)
    directory = _chain(data, table, directory_at, size)
    small_below, small_table_at = struct.unpack_from("<II", data, 56)
    entries: dict[str, tuple[int, int]] = {}
    root = (_END, 0)
    for at in range(0, len(directory) - 127, 128):
        (length,) = struct.unpack_from("<H", directory, at + 64)
        kind = directory[at + 66]
        start, count = struct.unpack_from("<II", directory, at + 116)
        if kind == 0 or not 2 <= length <= 64:
            continue
        if kind == 5:
            root = (start, count)
        entries[directory[at : at + length - 2].decode("utf-16-le", "replace")] = (start, count)
    found: dict[str, bytes | None] = dict.fromkeys(entries)
    for name in ("Workbook", "Book"):
        if name not in entries:
            continue
        start, count = entries[name]
        if count >= small_below:
            found[name] = _chain(data, table, start, size)[:count]
        else:
            small = _chain(data, table, root[0], size)
            small_chain = _chain(data, table, small_table_at, size)
            small_table = list(struct.unpack(f"<{len(small_chain) // 4}I", small_chain))
            found[name] = _chain(small, small_table, start, 64, first=0)[:count]
    return found


def _tables(data: bytes, size: int) -> list[int]:
    """Return the sectors that hold the table of sectors."""
    sectors = list(struct.unpack_from("<109I", data, 76))
    following, count = struct.unpack_from("<II", data, 68)
    for _ in range(min(count, len(data) // size)):
        if following >= _END:
            break
        more = struct.unpack_from(f"<{size // 4}I", data, (following + 1) * size)
        sectors += more[:-1]
        following = more[-1]
    return [sector for sector in sectors if sector < _END]


def _chain(data: bytes, table: list[int], sector: int, size: int, first: int = 1) -> bytes:
    """Return the sectors that follow one another, none of them twice."""
    found = []
    seen: set[int] = set()
    while sector < _END:
        if sector in seen:
            raise ValueError("a chain of sectors that runs in a circle")
        seen.add(sector)
        found.append(data[(sector + first) * size : (sector + first + 1) * size])
        sector = table[sector]
    return b"".join(found)
