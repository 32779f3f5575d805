"""A digest of everything that makes a pack: our own code, the templates, and the libraries.

If none of it has changed, the same content gives the same bytes and need not be rendered again.
"""

from __future__ import annotations

import hashlib
import importlib.metadata
from functools import cache
from pathlib import Path

from notices.paths import templates_folder

_LIBRARIES = (
    "babel",
    "css-inline",
    "fonttools",
    "icalendar",
    "jinja2",
    "markdown",
    "pillow",
    "pydyf",
    "pyphen",
    "resvg-py",
    "tinycss2",
    "weasyprint",
)
"""Distributions whose version affects the files of a pack."""


@cache
def makers() -> str:
    """Return a digest of the code, templates and libraries that turn a plan into a pack.

    It covers our code and not only our version, so that whoever works on the code never gets files
    that an earlier state of it made.
    """
    digest = hashlib.sha256()
    code = sorted(Path(__file__).parent.rglob("*.py"))
    templates = (path for path in sorted(templates_folder().rglob("*")) if path.is_file())
    for path in (*code, *templates):
        digest.update(path.name.encode())
        digest.update(path.read_bytes())
    for name in _LIBRARIES:
        digest.update(f"{name} {importlib.metadata.version(name)}\n".encode())
    return digest.hexdigest()
