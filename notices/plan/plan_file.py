"""The file of a plan, before anybody looks at what it says."""

from __future__ import annotations

from pathlib import Path
from typing import NoReturn

from notices.errors import PlanFault
from notices.findings import Finding, Place, Weight
from notices.plan.nearest import nearest, quoted
from notices.plan.source import PlanPath


def refuse(code: str, place: Place, message: str, suggestion: str = "") -> NoReturn:
    """Stop at a fault after which nothing more can be read."""
    raise PlanFault([finding(code, place, message, suggestion)])


def finding(
    code: str, place: Place, message: str, suggestion: str = "", path: PlanPath = ()
) -> Finding:
    """Return a finding about how the file is written."""
    return Finding(
        code=code,
        weight=Weight.CANNOT_BUILD,
        message=message,
        suggestion=suggestion,
        path=path,
        place=place,
    )


def file_bytes(path: Path, largest: int) -> bytes:
    """Return what a plan file holds.

    Raises
    ------
    PlanFault
        When it cannot be read, or is larger than a plan can be.
    """
    place = Place(str(path))
    try:
        if path.is_dir():
            refuse(
                "file-is-folder", place, "this is a folder, not a plan", "Name the plan file in it"
            )
        with path.open("rb") as stream:
            data = stream.read(largest + 1)
    except FileNotFoundError:
        refuse("file-missing", place, "there is no such file", _near_file(path))
    except PermissionError:
        refuse(
            "file-unreadable", place, "this file may not be read", "Ask its owner for the right to"
        )
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name
        reason = (error.strerror if isinstance(error, OSError) else None) or "not a file name"
        refuse("file-unreadable", place, f"this file cannot be read: {reason.lower()}")
    if len(data) > largest:
        refuse(
            "file-too-large",
            place,
            f"this file is larger than {largest // 1_000_000} MB, too large for a plan",
            "Check that it is the right file",
        )
    return data


def _near_file(path: Path) -> str:
    try:
        guess = nearest(path.name, sorted(entry.name for entry in path.parent.iterdir()))
    except (OSError, ValueError):
        guess = None
    return f"Did you mean {quoted(guess)}?" if guess else "Check the name"
