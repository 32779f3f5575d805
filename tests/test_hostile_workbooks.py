"""Whatever workbook somebody sends: a plan or a finding in bounded time and memory, nothing run.

Each file is read in a process of its own with a gigabyte of memory, as in ``test_hostile.py``.
"""

from __future__ import annotations

import io
import re
import struct
import zipfile
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.convert.as_workbook import plan_as_workbook
from notices.errors import NoticesError
from notices.plan.load import load_plan
from tests.convert.workbooks import PLAN
from tests.test_hostile import said_of

BOOK = plan_as_workbook(PLAN)
SHEET = "xl/worksheets/sheet2.xml"
"""The sheet Club."""

ENTITIES = (
    '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">'
    + "".join(
        f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True)
    )
    + "]>"
)
OUTSIDE = '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>'


Change = Callable[[bytes], bytes]


def remade(change: Mapping[str, Change], more: Mapping[str, bytes] | None = None) -> bytes:
    """The workbook with some of its parts changed, and others added."""
    stream = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(BOOK)) as old,
        zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for name in old.namelist():
            part = old.read(name)
            new.writestr(name, change[name](part) if name in change else part)
        for name, part in (more or {}).items():
            new.writestr(name, part)
    return stream.getvalue()


def cells(xml: str, at: str = "</sheetData>") -> bytes:
    return remade({SHEET: lambda part: part.replace(at.encode(), xml.encode() + at.encode())})


def declared(doctype: str) -> bytes:
    def before(part: bytes) -> bytes:
        return doctype.encode() + part.replace(b"<t>Name", b"<t>&a;Name")

    return remade({SHEET: before})


def ods(content: str, more: Mapping[str, bytes] | None = None) -> bytes:
    """A workbook of the other kind with these rows on the sheet Club."""
    spaces = " ".join(
        f'xmlns:{key}="urn:oasis:names:tc:opendocument:xmlns:{key}:1.0"'
        for key in ("office", "table", "text", "meta")
    )
    xml = (
        f'<?xml version="1.0"?><office:document-content {spaces}><office:body><office:spreadsheet>'
        f'<table:table table:name="Club">{content}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", xml)
        for name, part in (more or {}).items():
            archive.writestr(name, part)
    return stream.getvalue()


def ods_row(text: str, cell: str = "", row: str = "") -> str:
    return (
        f'<table:table-row {row}><table:table-cell office:value-type="string" {cell}>'
        f"<text:p>{text}</text:p></table:table-cell></table:table-row>"
    )


SHARING = b"".join(
    b'<row r="%d">%s</row>' % (row, b'<c t="s"><v>0</v></c>' * 90) for row in range(100, 1100)
)
"""90,000 cells with the same text."""

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def ole(name: str, stream: bytes = b"") -> bytes:
    """The smallest file system of the older kind: a header, a table, a directory, one stream."""
    stream = stream.ljust(4096, b"\0")
    sectors = len(stream) // 512
    header = OLE + bytes(16) + struct.pack("<5H", 62, 3, 0xFFFE, 9, 6) + bytes(10)
    header += (
        struct.pack("<2I", 1, 1) + bytes(4) + struct.pack("<5I", 4096, 0xFFFFFFFE, 0, 0xFFFFFFFE, 0)
    )
    header += struct.pack("<I", 0) + b"\xff" * (108 * 4)
    chain = [*range(3, 2 + sectors), 0xFFFFFFFE]
    table = struct.pack(f"<{2 + sectors}I", 0xFFFFFFFD, 0xFFFFFFFE, *chain).ljust(512, b"\xff")

    def entry(title: str, kind: int, start: int, size: int) -> bytes:
        letters = (title + "\0").encode("utf-16-le")
        head = letters.ljust(64, b"\0") + struct.pack(
            "<HBB3I", len(letters), kind, 1, *[0xFFFFFFFF] * 3
        )
        return head.ljust(116, b"\0") + struct.pack("<IQ", start, size)

    directory = entry("Root Entry", 5, 0xFFFFFFFE, 0) + entry(name, 2, 2, len(stream))
    return header + table + directory.ljust(512, b"\0") + stream


def records(*parts: tuple[int, bytes]) -> bytes:
    return b"".join(struct.pack("<HH", kind, len(body)) + body for kind, body in parts)


REFUSED: Mapping[str, tuple[bytes, str]] = {
    "no workbook": (b"club: {name: x}\n", "this is no workbook"),
    "an empty file": (b"", "this is no workbook"),
    "half of one": (BOOK[:9000], "this workbook is damaged"),
    "a zip of something else": (
        BOOK[:4] + bytes(100),
        "this workbook is damaged",
    ),
    "laughs": (declared(ENTITIES), "this workbook declares entities"),
    "a file from outside": (declared(OUTSIDE), "this workbook declares entities"),
    "macros": (remade({}, {"xl/vbaProject.bin": b"x"}), "this workbook holds macros"),
    "a cell far away": (
        cells('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
        "a cell beyond",
    ),
    "a bomb": (
        remade({SHEET: lambda part: part + b" " * 200_000_000}),
        "this workbook unpacks to more than a plan can be",
    ),
    "a thousand parts": (
        remade({}, {f"xl/x{n}": b"" for n in range(1000)}),
        "this workbook unpacks to more",
    ),
    "a long text in many cells": (
        remade(
            {SHEET: lambda part: part.replace(b"</sheetData>", SHARING + b"</sheetData>")},
            {"xl/sharedStrings.xml": b"<sst><si><t>" + b"x" * 100_000 + b"</t></si></sst>"},
        ),
        "this workbook unpacks to more",
    ),
    "texts that are counted wrong": (
        remade(
            {SHEET: lambda part: part.replace(b"</sheetData>", SHARING + b"</sheetData>")},
            {
                "xl/sharedStrings.xml": b'<sst count="9999999999" uniqueCount="9999999999">'
                b"<si><t>x</t></si></sst>"
            },
        ),
        "this workbook is damaged",
    ),
    "an ods with repeated cells": (
        ods(
            ods_row(
                "x", 'table:number-columns-repeated="16384"', 'table:number-rows-repeated="1048576"'
            )
        ),
        "a cell beyond",
    ),
    "an ods with repeated texts": (
        ods(
            ods_row(
                "x" * 3000,
                'table:number-columns-repeated="200"',
                'table:number-rows-repeated="400"',
            )
        ),
        "this workbook unpacks to more",
    ),
    "an ods with spaces": (
        ods(ods_row('<text:s text:c="999999999"/>')),
        "this workbook unpacks to more",
    ),
    "an ods with a password": (
        ods("", {"META-INF/manifest.xml": b"<m><e><encryption-data/></e></m>"}),
        "this workbook is protected by a password",
    ),
    "an ods with macros": (ods("", {"Basic/script.xml": b"<x/>"}), "this workbook holds macros"),
    "a password": (ole("EncryptedPackage"), "this workbook is protected by a password"),
    "an old one with macros": (ole("_VBA_PROJECT_CUR"), "this workbook holds macros"),
    "an old one with nothing": (ole("Other"), "this workbook is damaged"),
    "an old one with a password": (
        ole("Workbook", records((0x0809, bytes(16)), (0x002F, bytes(6)))),
        "this workbook is protected by a password",
    ),
    "an old one with a cell far away": (
        ole(
            "Workbook",
            records((0x0809, bytes(16)), (0x0203, struct.pack("<HHHd", 65000, 1, 0, 1.0))),
        ),
        "a cell beyond",
    ),
    "an old one cut off": (ole("Workbook")[:1000], "this workbook is damaged"),
    "an old one in a circle": (
        ole("Workbook").replace(struct.pack("<I", 5), struct.pack("<I", 2), 1),
        "this workbook is damaged",
    ),
}


LARGE = ("laughs", "a bomb", "a long text in many cells", "a cell far away")
"""Read in a process of their own, as are the repeated cells; the others are small."""


@pytest.mark.parametrize("name", REFUSED)
def test_what_may_not_be_opened_is_told_plainly(name: str, tmp_path: Path) -> None:
    data, said = REFUSED[name]
    path = tmp_path / "plan.xlsx"
    path.write_bytes(data)
    if name in LARGE or name.startswith("an ods with repeated"):
        assert said in said_of(path)
        return
    with pytest.raises(NoticesError, match=re.escape(said)):
        load_plan(path)


READ: Mapping[str, bytes] = {
    "an ods with empty rows to the end": ods(
        ods_row("Name") + '<table:table-row table:number-rows-repeated="1048000">'
        '<table:table-cell table:number-columns-repeated="16384"/></table:table-row>'
    ),
    "styled cells to the end": cells('<row r="1048576"><c r="XFD1048576" s="1"/></row>'),
    "a wrong sheet": remade({SHEET: lambda _: b"<x/>"}),
    "no shared texts": remade({"xl/sharedStrings.xml": lambda _: b"<x/>"}),
    "a deep nest": remade({"xl/styles.xml": lambda _: b"<x>" * 300_000 + b"</x>" * 300_000}),
    "an old one with no sheet": ole("Workbook", records((0x0809, bytes(16)), (0x000A, b""))),
}


@pytest.mark.parametrize("name", READ)
def test_odd_workbooks_are_read_or_refused(name: str, tmp_path: Path) -> None:
    path = tmp_path / "plan.ods"
    path.write_bytes(READ[name])
    said_of(path)


@settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=st.data())
def test_a_scratched_workbook_is_read_or_refused(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    """A byte of a part is changed, or the zip itself is."""
    part = data.draw(st.sampled_from([SHEET, "xl/workbook.xml", "xl/styles.xml"]))
    noise = data.draw(st.binary(min_size=1, max_size=3))
    whole = data.draw(st.booleans())

    def scratched(content: bytes) -> bytes:
        at = data.draw(st.integers(0, len(content) - 1))
        return content[:at] + noise + content[at + len(noise) :]

    path = tmp_path_factory.getbasetemp() / "scratched.xlsx"
    path.write_bytes(scratched(BOOK) if whole else remade({part: scratched}))
    try:
        load_plan(path)
    except NoticesError as error:
        assert str(error)  # noqa: PT017, any other error fails the test
