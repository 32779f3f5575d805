"""Daily temperatures from a table that a weather station or a forecast writes (CSV).

The first line names the columns: a date and either a mean or a lowest and a highest temperature.
Other columns are left alone, and so is a day without a value: it keeps its monthly mean.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence
from pathlib import Path

from notices.agronomy.growth import HIGHEST_MEAN_C, mean_of_day
from notices.plan.beside import read_beside
from notices.plan.csv_table import TableFault, csv_rows, shortened
from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal

NAMES: Mapping[str, tuple[str, ...]] = {
    "date": ("date", "day"),
    "mean": ("mean", "average", "temperature", "temp", "tmean", "tavg"),
    "min": ("min", "minimum", "lowest", "low", "tmin"),
    "max": ("max", "maximum", "highest", "high", "tmax"),
}
"""What a column may be called, after its unit and words such as "temperature" are taken away."""

NAMED = 'write "date,mean" or "date,min,max" in the first line, and below it a line a day'

LARGEST = 1_000_000


def read_temperatures(folder: Path, name: str) -> dict[dt.date, float]:
    """Return the mean temperature of each day in a table [°C], in the order of the days.

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        Name of a CSV file in it.

    Raises
    ------
    Refusal
        When there is no such file; the message is for a person.
    TableFault
        When the file is no such table.
    """
    data = read_beside(
        folder,
        name,
        what="a table of temperatures",
        largest=LARGEST,
        otherwise="export fewer years",
    )
    rows = csv_rows(data)
    if not rows:
        raise TableFault([(None, Refusal("this table is empty", NAMED))])
    (first_line, header), *body = rows
    try:
        columns = _columns(header)
    except Refusal as refused:
        raise TableFault([(first_line, refused)]) from None
    found: dict[dt.date, float] = {}
    lines: dict[dt.date, int] = {}
    faults: list[tuple[int | None, Refusal]] = []
    for line, row in body:
        try:
            day, mean = _day(row, columns)
        except Refusal as error:
            faults.append((line, error))
            continue
        if day in lines:
            twice = Refusal(f"{day} stands in line {lines[day]} already", "keep one of them")
            faults.append((line, twice))
            continue
        lines[day] = line
        if mean is not None:
            found[day] = mean
    if not found and not faults:
        faults = [(first_line, Refusal("no day has a temperature", "write a line for each day"))]
    if faults:
        raise TableFault(shortened(faults))
    return dict(sorted(found.items()))


def _columns(header: Sequence[str]) -> dict[str, int]:
    """Return where each column stands."""
    columns: dict[str, int] = {}
    for index, cell in enumerate(header):
        if re.search(r"°\s*f|\bf\b|fahrenheit", cell.casefold()):
            raise Refusal(f"the column {quoted(cell)} is in °F", "export the table in °C")
        words = re.sub(r"\(.*?\)|\[.*?\]|°\s*c|\bc\b", " ", cell.casefold())
        words = re.sub(r"[\W_]+", " ", words).strip()
        short = re.sub(r"\b(air|daily|temperature|temp|2m)\b", " ", words).split()
        name = " ".join(short) or words
        kind = next((kind for kind, names in NAMES.items() if name in names), None)
        if kind is None and re.search(r"\b(temperature|temp)\b", words) and not short:
            kind = "mean"
        if kind in columns:
            raise Refusal(f"a second column is called {quoted(cell)}", "keep one of them")
        if kind is not None:
            columns[kind] = index
    if "date" not in columns or not ("mean" in columns or {"min", "max"} <= columns.keys()):
        raise Refusal("the first line does not name the columns", NAMED)
    return columns


def _day(row: Sequence[str], columns: Mapping[str, int]) -> tuple[dt.date, float | None]:
    """Return the day of a line and its mean temperature, if it has one."""
    cells = {kind: row[at] if at < len(row) else "" for kind, at in columns.items()}
    day = _date(cells["date"])
    if "mean" in cells:
        return day, _temperature(cells["mean"])
    lowest, highest = _temperature(cells["min"]), _temperature(cells["max"])
    if lowest is None or highest is None:
        return day, None
    if lowest > highest:
        raise Refusal(
            f"the lowest temperature, {lowest:g} °C, is above the highest, {highest:g} °C",
            "change their places",
        )
    return day, mean_of_day(lowest, highest)


def _date(cell: str) -> dt.date:
    written = re.match(r"[0-9]{4}-[0-9]{2}-[0-9]{2}(?=$|[T ])", cell)
    try:
        return dt.date.fromisoformat(written[0] if written else "")
    except ValueError:
        raise Refusal(
            f"{quoted(cell)} is not a date", "write year-month-day such as 2027-08-16"
        ) from None


def _temperature(cell: str) -> float | None:
    if not cell:
        return None
    if not re.fullmatch(r"[-−+]?[0-9]{1,3}(?:\.[0-9]{1,9})?", cell):
        raise Refusal(f"{quoted(cell)} is not a temperature", "write degrees Celsius such as 14.2")
    value = float(cell.replace("−", "-"))
    if abs(value) > HIGHEST_MEAN_C:
        raise Refusal(f"{cell} °C is no mean temperature on Earth", "export the table in °C")
    return value
