"""Zip files without times, so that the same content always gives the same bytes."""

from __future__ import annotations

import io
import re
import zipfile

TIME = (1980, 1, 1, 0, 0, 0)
"""Earliest time that a zip can hold."""
_STAMP = re.compile(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*")


def with_fixed_times(data: bytes) -> bytes:
    """Return a workbook with a fixed time in its zip entries and properties.

    The library that writes workbooks puts the time of saving into both.
    """
    stream = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(stream, "w") as new:
        for entry in old.infolist():
            part = old.read(entry)
            if entry.filename == "docProps/core.xml":
                part = _STAMP.sub(rb"\g<1>1980-01-01T00:00:00Z", part)
            described = zipfile.ZipInfo(entry.filename, TIME)
            described.external_attr = 0o644 << 16
            new.writestr(described, part, zipfile.ZIP_DEFLATED, 9)
    return stream.getvalue()
