"""A new folder with a plan that explains itself, and the schema by which an editor checks it."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping
from pathlib import Path
from string import Template

from notices.disk import too_late_to_stop
from notices.errors import FolderFault
from notices.paths import examples_folder, templates_folder
from notices.plan.load import canonical, load_plan
from notices.plan.schema import FILE_NAME, FIRST_LINE, plan_schema
from notices.plan.yaml_file import read_yaml

PLAN, WORKBOOK = "plan.yaml", "plan.xlsx"
NOTICE = dt.timedelta(weeks=5)
"""What members should hear before the first day of work, at the least."""
SEASON = (8, 16)
"""From when in the year on greens are opened while they still heal fast: the middle of August."""
SHOWS_ALL = "marlpit-common"
"""The example whose rows show in a workbook how each is written."""
PICTURE = ".png"
"""Examples have pictures of what comes of them; a plan needs those only that it names."""


def coming_season(today: dt.date) -> dt.date:
    """Return the Monday on which the work of the coming season may begin."""
    for year in (today.year, today.year + 1):
        day = dt.date(year, *SEASON)
        monday = day + dt.timedelta(days=-day.weekday() % 7)
        if monday - today >= NOTICE:
            break
    return monday


def start_plan(
    folder: Path, today: dt.date, example: str | None = None, *, workbook: bool = False
) -> tuple[Path, ...]:
    """Write a plan and its schema into a new folder, or into an empty one.

    Parameters
    ----------
    folder
        Made with the folders above it if need be.
    today
        The dates in the plan are those of the season that comes after this day.
    example
        Name of an example to copy in place of the plan that explains itself; its dates stay.
    workbook
        Write a workbook to be filled in, in place of YAML and its schema.

    Returns
    -------
    tuple of Path
        The files, the plan first.

    Raises
    ------
    FolderFault
        When there is something in the folder already, or it cannot be written.
    """
    if workbook:
        files = _workbook(example)
    else:
        files = _example(example) if example else {PLAN: _explained(today)}
        files[PLAN] = FIRST_LINE.encode() + files[PLAN]
        files[FILE_NAME] = schema_text().encode()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if any(folder.iterdir()):
            raise FolderFault(f"{folder} is not empty: name a new folder")
        with too_late_to_stop():
            for name, content in files.items():
                with (folder / name).open("xb") as stream:
                    stream.write(content)
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name
        reason = (error.strerror if isinstance(error, OSError) else None) or "not a folder's name"
        raise FolderFault(f"{folder} cannot be written: {reason.lower()}") from None
    return tuple(folder / name for name in files)


def schema_text() -> str:
    """Return the schema as it is written into a file."""
    return json.dumps(plan_schema(), ensure_ascii=False, indent=1) + "\n"


def _explained(today: dt.date) -> bytes:
    first = coming_season(today)
    days: Mapping[str, dt.date] = {
        **{
            name: first + dt.timedelta(days=number)
            for number, name in enumerate(("first", "second", "third", "fourth", "fifth"))
        },
        # The Saturday eight weeks after the week of work.
        "fixture": first + dt.timedelta(days=5, weeks=8),
    }
    text = (templates_folder() / "new" / PLAN).read_text("utf-8")
    return Template(text).substitute(days).encode()


def _workbook(example: str | None) -> dict[str, bytes]:
    """Return a workbook of an example, or an empty one that shows how each row is written."""
    from notices.convert.as_workbook import plan_as_workbook  # noqa: PLC0415, start-up time
    from notices.convert.between import pictures_apart  # noqa: PLC0415, start-up time

    plan = examples_folder() / (example or SHOWS_ALL) / PLAN
    if not example:
        return {WORKBOOK: plan_as_workbook({}, read_yaml(plan).data)}
    data = canonical(load_plan(plan).plan)
    pictures = pictures_apart(data, Path(WORKBOOK).stem)
    return {WORKBOOK: plan_as_workbook(data), **pictures}


def _example(name: str) -> dict[str, bytes]:
    folder = examples_folder() / name
    plan = (folder / PLAN).read_text("utf-8")
    return {
        path.name: path.read_bytes()
        for path in sorted(folder.iterdir(), key=lambda path: (path.name != PLAN, path.name))
        if path.suffix != PICTURE or path.name in plan
    }
