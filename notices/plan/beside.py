"""Files that a plan names: they lie beside it, and nothing outside its folder is opened.

A plan may come from somebody else. So a name is a name and no path, on any system, and a link in
the folder is followed only to a file that lies in it too.
"""

from __future__ import annotations

from pathlib import Path

from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal


def read_beside(folder: Path, name: str, *, what: str, largest: int, otherwise: str) -> bytes:
    """Return what a file beside the plan holds.

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        As it stands in the plan.
    what
        The file in words, such as "a calendar".
    largest
        How many bytes are read at most.
    otherwise
        What to do about a larger file, such as "export fewer years".

    Raises
    ------
    Refusal
        When it cannot be read, or lies elsewhere.
    """
    if name in (".", "..") or any(sign in name for sign in "/\\:"):
        raise _elsewhere(what)
    path = folder / name
    try:
        if path.is_symlink() and not path.resolve().is_relative_to(folder.resolve()):
            raise _elsewhere(what)
        # A pipe or a device could be read for ever.
        if path.exists() and not path.is_file():
            raise _not_opened(name)
        with path.open("rb") as stream:
            data = stream.read(largest + 1)
    except FileNotFoundError:
        guess = nearest(name, sorted(entry.name for entry in folder.iterdir()))
        hint = f'did you mean "{guess}"?' if guess else "check the name"
        raise Refusal(f"there is no file {quoted(name)} beside the plan", hint) from None
    except Refusal:
        raise
    except (OSError, ValueError, RuntimeError):  # a NUL in the name; links in a circle
        raise _not_opened(name) from None
    if len(data) > largest:
        raise Refusal(f"{quoted(name)} is larger than {_size(largest)}", otherwise)
    return data


def _elsewhere(what: str) -> Refusal:
    return Refusal(
        f"{what} must lie beside the plan",
        "put the file into the plan's folder and write its name only",
    )


def _not_opened(name: str) -> Refusal:
    return Refusal(f"{quoted(name)} cannot be opened", "check that it is a file")


def _size(count: int) -> str:
    return f"{count // 1_000_000} MB" if count >= 1_000_000 else f"{count // 1_000} kB"
