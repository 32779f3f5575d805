"""Where the templates are: in the checkout at top level, in the wheel inside the package."""

from __future__ import annotations

from functools import cache
from pathlib import Path


@cache
def templates_folder() -> Path:
    """Return the folder of templates, texts, styles and fonts.

    Raises
    ------
    FileNotFoundError
        When the installation is broken.
    """
    package = Path(__file__).resolve().parent
    for folder in (package / "_templates", package.parent / "templates"):
        if (folder / "fonts").is_dir():
            return folder
    raise FileNotFoundError("the templates of notices are missing: install it again")


def font_files() -> tuple[Path, ...]:
    """Return the fonts that print and pictures are set in."""
    return tuple(sorted((templates_folder() / "fonts").glob("*.ttf")))
