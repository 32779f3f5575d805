"""A zip that is the same whenever it is written: with no clock in it."""

from __future__ import annotations

import io
import re
import zipfile

TIME = (1980, 1, 1, 0, 0, 0)
"""The earliest that a zip can say."""
_STAMP = re.compile(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*")


def with_fixed_times(data: bytes) -> bytes:
    """Return a workbook whose zip and properties say no time at all.

    A library that writes workbooks notes the moment of saving in both.
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
