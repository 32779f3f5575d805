"""From a plan in one kind of file to the same plan in another."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from notices.errors import FolderFault
from notices.plan.load import canonical, load_plan

YAML, WORKBOOK = (".yaml", ".yml"), ".xlsx"


def convert_plan(plan: Path, other: Path) -> None:
    """Write a plan into another file: YAML or a workbook, as its name ends.

    The new file holds the plan in canonical form, and so stands by itself: fixtures of a calendar,
    temperatures of a table and texts of the club's own are written out.

    Raises
    ------
    PlanFault
        When the plan cannot be read.
    FolderFault
        When the other file is there already, or cannot be written.
    """
    suffix = other.suffix.lower()
    if suffix not in (*YAML, WORKBOOK):
        raise FolderFault(f"{other}: end the name in .yaml or .xlsx, to say what to write")
    data = canonical(load_plan(plan).plan)
    content = as_file(data, suffix)
    try:
        with other.open("xb") as stream:
            stream.write(content)
    except FileExistsError:
        raise FolderFault(f"{other} is there already: name a new file") from None
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name
        reason = (error.strerror if isinstance(error, OSError) else None) or "not a file name"
        raise FolderFault(f"{other} cannot be written: {reason.lower()}") from None


def as_file(data: Mapping[str, Any], suffix: str) -> bytes:
    """Return a plan in canonical form as the bytes of a file of this kind."""
    if suffix == WORKBOOK:
        from notices.convert.as_workbook import plan_as_workbook  # noqa: PLC0415, start-up time

        return plan_as_workbook(data)
    from notices.convert.as_yaml import plan_as_yaml  # noqa: PLC0415, start-up time

    return plan_as_yaml(data).encode()
