"""Files that a plan names: they lie beside it, and nothing outside its folder is opened.

A plan may come from somebody else. So a name is a name and no path, on any system, and a link in
the folder is followed only to a file that lies in it too.
"""

from __future__ import annotations

from itertools import islice
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
    path = _beside(folder, name, what)
    try:
        # A pipe or a device could be read for ever.
        if path.exists() and not path.is_file():
            raise _not_opened(name)
        return _read(path, name, largest, otherwise)
    except FileNotFoundError:
        raise _missing(folder, name, "file") from None
    except (OSError, ValueError, RuntimeError) as error:  # a NUL in the name; links in a circle
        raise error if isinstance(error, Refusal) else _not_opened(name) from None


def files_beside(
    folder: Path, name: str, *, ending: str, most: int, largest: int, otherwise: str
) -> dict[str, bytes | Refusal]:
    """Return what the files in a folder beside the plan hold, by their names within it.

    Hidden files, links and files of other kinds are passed over.

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        Name of the folder, as it stands in the plan.
    ending
        Of the names of the files.
    most
        How many files are read.
    largest
        How many bytes of each are read at most.
    otherwise
        What to do about a larger file.

    Raises
    ------
    Refusal
        When the folder cannot be read, or lies elsewhere. What is wrong with one file stands in
        its place.
    """
    path = _beside(folder, name, "a folder of texts")
    try:
        if not path.exists():
            raise _missing(folder, name, "folder")
        if not path.is_dir():
            raise Refusal(f"{quoted(name)} is no folder", "name a folder beside the plan")
        found = sorted(
            file
            for pattern in (f"*{ending}", f"*/*{ending}")
            for file in islice(path.glob(pattern), most + 1)
            if not file.name.startswith(".") and not file.is_symlink() and file.is_file()
        )
    except (OSError, ValueError, RuntimeError) as error:
        raise error if isinstance(error, Refusal) else _not_opened(name) from None
    if len(found) > most:
        raise Refusal(f"{quoted(name)} holds more than {most} texts", "take some of them out")
    files: dict[str, bytes | Refusal] = {}
    for file in found:
        within = file.relative_to(path).as_posix()
        try:
            files[within] = _read(file, within, largest, otherwise)
        except Refusal as refused:
            files[within] = refused
        except OSError:
            files[within] = _not_opened(within)
    return files


def _beside(folder: Path, name: str, what: str) -> Path:
    """Return the way to something beside the plan; a link must not lead out of the folder."""
    if name in (".", "..") or any(sign in name for sign in "/\\:"):
        raise _elsewhere(what)
    path = folder / name
    try:
        if path.is_symlink() and not path.resolve().is_relative_to(folder.resolve()):
            raise _elsewhere(what)
    except (OSError, RuntimeError):
        raise _not_opened(name) from None
    return path


def _read(path: Path, name: str, largest: int, otherwise: str) -> bytes:
    with path.open("rb") as stream:
        data = stream.read(largest + 1)
    if len(data) > largest:
        raise Refusal(f"{quoted(name)} is larger than {_size(largest)}", otherwise)
    return data


def _missing(folder: Path, name: str, kind: str) -> Refusal:
    entries = sorted(entry.name for entry in folder.iterdir() if entry.is_dir() or kind == "file")
    guess = nearest(name, entries)
    hint = f'did you mean "{guess}"?' if guess else "check the name"
    return Refusal(f"there is no {kind} {quoted(name)} beside the plan", hint)


def _elsewhere(what: str) -> Refusal:
    return Refusal(
        f"{what} must lie beside the plan",
        "put the file into the plan's folder and write its name only",
    )


def _not_opened(name: str) -> Refusal:
    return Refusal(f"{quoted(name)} cannot be opened", "check that it is a file")


def _size(count: int) -> str:
    return f"{count // 1_000_000} MB" if count >= 1_000_000 else f"{count // 1_000} kB"
