"""What is at work when a pack is made: our own code, the templates, and the libraries that set it.

Where none of it has changed, the same content gives the same bytes and need not be set again.
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
"""Distributions whose version decides what a file of a pack looks like."""


@cache
def makers() -> str:
    """Return a digest of all that makes a pack out of a plan.

    Our own code is read and not only our version: whoever works on it must not be shown what it
    made before.
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
