"""Conversion of a plan from one kind of file to another."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from notices.disk import too_late_to_stop
from notices.errors import FolderFault
from notices.plan.load import canonical, load_plan
from notices.plan.photographs import picture_bytes

YAML, WORKBOOK = (".yaml", ".yml"), ".xlsx"


def convert_plan(plan: Path, other: Path) -> None:
    """Write a plan into another file, YAML or a workbook by its suffix.

    The new file holds the plan in canonical form and needs no other but its pictures: fixtures of
    a calendar, temperatures of a table and the club's own texts are written out. Logo and
    photographs are written beside it.

    Raises
    ------
    PlanFault
        If the plan cannot be read.
    FolderFault
        If the other file is there already, or cannot be written.
    """
    suffix = other.suffix.lower()
    if suffix not in (*YAML, WORKBOOK):
        raise FolderFault(f"{other}: end the name in .yaml or .xlsx, to say what to write")
    data = canonical(load_plan(plan).plan)
    pictures = pictures_apart(data, other.stem)
    if other.exists():
        raise FolderFault(f"{other} is there already: name a new file")
    content = as_file(data, suffix)
    with too_late_to_stop():
        for name, picture in pictures.items():
            path = other.with_name(name)
            if not _holds(path, picture):
                _write_new(path, picture)
        _write_new(other, content)


def pictures_apart(data: dict[str, Any], stem: str) -> dict[str, bytes]:
    """Move the pictures out of a plan, where nobody can read them, and return them by file name.

    Parameters
    ----------
    data
        Plan in canonical form; the file names take the place of its pictures.
    stem
        First part of the file names.
    """
    held = [(data["club"], "logo", f"{stem}-logo.png")] if "logo" in data["club"] else []
    for number, photograph in enumerate(data.get("photographs", ()), 1):
        held.append((photograph, "file", f"{stem}-photograph-{number}.jpg"))
    files = {}
    for part, key, name in held:
        files[name], part[key] = picture_bytes(part[key]), name
    return files


def _holds(path: Path, content: bytes) -> bool:
    """Tell whether a file already has this content, as after a conversion there and back."""
    try:
        return path.stat().st_size == len(content) and path.read_bytes() == content
    except (OSError, ValueError):
        return False


def _write_new(path: Path, content: bytes) -> None:
    try:
        with path.open("xb") as stream:
            stream.write(content)
    except FileExistsError:
        raise FolderFault(f"{path} is there already: name a new file") from None
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name
        reason = (error.strerror if isinstance(error, OSError) else None) or "not a file name"
        raise FolderFault(f"{path} cannot be written: {reason.lower()}") from None


def as_file(data: Mapping[str, Any], suffix: str) -> bytes:
    """Return the bytes of a plan file, of the kind that the suffix names."""
    if suffix == WORKBOOK:
        from notices.convert.as_workbook import plan_as_workbook  # noqa: PLC0415, start-up time

        return plan_as_workbook(data)
    from notices.convert.as_yaml import plan_as_yaml  # noqa: PLC0415, start-up time

    return plan_as_yaml(data).encode()
