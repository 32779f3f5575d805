"""Paths of templates and examples: at the top of a checkout, or inside the installed package."""

from __future__ import annotations

from functools import cache
from pathlib import Path


@cache
def templates_folder() -> Path:
    """Return the folder of templates, texts, styles and fonts.

    Raises
    ------
    FileNotFoundError
        If the installation is broken.
    """
    return _folder("templates", holding="fonts")


@cache
def examples_folder() -> Path:
    """Return the folder of example plans.

    Raises
    ------
    FileNotFoundError
        If the installation is broken.
    """
    return _folder("examples", holding="tansy-down")


def example_names() -> tuple[str, ...]:
    """Return the names of the examples, sorted."""
    return tuple(sorted(path.parent.name for path in examples_folder().glob("*/plan.yaml")))


def font_files() -> tuple[Path, ...]:
    """Return the font files for sheets and drawings."""
    return tuple(sorted((templates_folder() / "fonts").glob("*.ttf")))


def _folder(name: str, *, holding: str) -> Path:
    package = Path(__file__).resolve().parent
    for folder in (package / f"_{name}", package.parent / name):
        if (folder / holding).is_dir():
            return folder
    raise FileNotFoundError(f"the {name} of notices are missing: install it again")
