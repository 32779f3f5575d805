"""Tables that other programs write as CSV, line by line, and how their faults are gathered."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence

from notices.plan.refusal import Refusal

MOST_TOLD = 10
"""So many faults of one table are told; the rest are counted."""


class TableFault(Exception):
    """What is wrong with a table, each sentence with its line."""

    def __init__(self, faults: Iterable[tuple[int | None, Refusal]]) -> None:
        self.faults = tuple(faults)
        super().__init__("; ".join(str(refused) for _, refused in self.faults))


def csv_rows(data: bytes) -> list[tuple[int, list[str]]]:
    """Return the lines that hold anything, split into cells, each with its number.

    Raises
    ------
    TableFault
        When this is no such table.
    """
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        unread = Refusal("this is not plain text", "save it as CSV in UTF-8")
        raise TableFault([(None, unread)]) from None
    first = next((line for line in text.splitlines() if line.strip()), "")
    sign = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text), delimiter=sign)
    found = []
    try:
        for row in reader:
            cells = [cell.strip() for cell in row]
            if any(cells):
                # A table with semicolons may write the decimal comma.
                found.append((reader.line_num, cells if sign == "," else _with_points(cells)))
    except csv.Error:
        refused = Refusal("this line is no line of a CSV table", "export the table again")
        raise TableFault([(reader.line_num, refused)]) from None
    return found


def _with_points(cells: Sequence[str]) -> list[str]:
    return [re.sub(r"^([-−]?[0-9]+),([0-9]+)$", r"\1.\2", cell) for cell in cells]


def shortened(
    faults: Sequence[tuple[int | None, Refusal]],
) -> Iterator[tuple[int | None, Refusal]]:
    """Give the first faults of a table, and say how many there are more."""
    yield from faults[:MOST_TOLD]
    if len(faults) > MOST_TOLD:
        more = Refusal(f"{len(faults) - MOST_TOLD} lines more are at fault, from this one on")
        yield faults[MOST_TOLD][0], more
