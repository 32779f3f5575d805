"""The file of a workbook, looked through before anybody opens it.

A workbook is a zip of XML (.xlsx, .ods) or a small file system of its own (.xls). Each can be made
so that a reader fills the memory, follows a name out of the file, or shows what no person sees.
So the parts are unpacked here with their sizes counted, entities are refused before they are
read, and what is handed on holds XML and nothing else. On the way the cells with formulas and
those that are merged are noted: their values are not what a person typed into them.
"""

from __future__ import annotations

import io
import posixpath
import re
import zipfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

# Every declaration of a document type is refused below, and with it every entity.
from xml.parsers import expat

from notices.plan.refusal import Refusal
from notices.plan.xls_file import Refusals, look_through_xls

LARGEST_BOOK = 5_000_000
MOST_PARTS = 500
LARGEST_UNPACKED = 40_000_000
LAST_ROW, LAST_COLUMN = 10_000, 200
"""A cell further out has the reader set up all that lie between."""
MOST_CELLS = 100_000
MOST_TEXT = 10_000_000
"""Letters in all cells together: one text can be said to stand in any number of them."""

Cell = tuple[int, int]
"""Row and column, both from 1."""

BROKEN = Refusal("this workbook is damaged", "open it in a spreadsheet program and save it again")
_CLOSED = Refusal(
    "this workbook is protected by a password", "save it again without a password to open it"
)
_MACROS = Refusal(
    "this workbook holds macros, and Notices runs none", "save it as .xlsx, without macros"
)
_NO_BOOK = Refusal("this is no workbook", "save it as .xlsx or .ods")
_BINARY = Refusal("this is a binary workbook", "save it as .xlsx")
_TOO_BIG = Refusal("this workbook unpacks to more than a plan can be", "check that it is the file")
_FAR = Refusal(
    f"a cell beyond row {LAST_ROW} or column {LAST_COLUMN} is filled",
    "delete what lies beyond the lists of the plan",
)
_ENTITIES = Refusal(
    "this workbook declares entities, which no spreadsheet program writes",
    "open it in a spreadsheet program and save it again",
)


@dataclass(frozen=True, slots=True)
class LookedThrough:
    """A workbook that may be opened, and what is special in it, by the names of its sheets."""

    data: bytes
    formulas: Mapping[str, frozenset[Cell]] = field(default_factory=dict)
    merged: Mapping[str, frozenset[Cell]] = field(default_factory=dict)
    """Cells that others are merged into; of each such block the first."""


def look_through(data: bytes) -> LookedThrough:
    """Return what may be opened of a workbook.

    Raises
    ------
    Refusal
        With a sentence for the person whose file it is.
    """
    if data.startswith(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"):
        found = look_through_xls(
            data,
            last=(LAST_ROW, LAST_COLUMN),
            most_text=300_000_000,
            refusals=Refusals(BROKEN, _CLOSED, _MACROS, _FAR, _TOO_BIG),
        )
        return LookedThrough(data, *found)
    if not data.startswith(b"PK"):
        raise _NO_BOOK
    parts = _unpacked(data)
    if any(name.endswith("vbaProject.bin") or _is_script(name) for name in parts):
        raise _MACROS
    if "xl/workbook.bin" in parts:
        raise _BINARY
    xml = {name: part for name, part in parts.items() if _is_xml(name)}
    if "xl/workbook.xml" in xml:
        read = _read_xlsx(xml)
    elif "content.xml" in xml:
        read = _read_ods(xml)
    else:
        raise _NO_BOOK
    return LookedThrough(_packed(xml), read.by_sheet(read.formulas), read.by_sheet(read.merged))


def _is_script(name: str) -> bool:
    return name.startswith(("Basic/", "Scripts/"))


def _is_xml(name: str) -> bool:
    return name.endswith((".xml", ".rels")) or name == "mimetype"


def _unpacked(data: bytes) -> dict[str, bytes]:
    """Return the parts of a zip; those that are no XML are named only."""
    parts: dict[str, bytes] = {}
    left = LARGEST_UNPACKED
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            entries = archive.infolist()
            if len(entries) > MOST_PARTS:
                raise _TOO_BIG
            for entry in entries:
                if entry.flag_bits & 1:
                    raise _CLOSED
                if entry.filename in parts or entry.compress_type not in (
                    zipfile.ZIP_STORED,
                    zipfile.ZIP_DEFLATED,
                ):
                    raise BROKEN
                parts[entry.filename] = b""
                if _is_xml(entry.filename):
                    with archive.open(entry) as stream:
                        parts[entry.filename] = stream.read(left + 1)
                    left -= len(parts[entry.filename])
                    if left < 0:
                        raise _TOO_BIG
    except (zipfile.BadZipFile, zlib.error, OSError, ValueError, RuntimeError, EOFError) as error:
        if isinstance(error, Refusal):
            raise
        raise BROKEN from None
    return parts


def _packed(parts: Mapping[str, bytes]) -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as archive:
        for name, part in parts.items():
            archive.writestr(zipfile.ZipInfo(name), part)
    return stream.getvalue()


class _Scan:
    """What is gathered from the parts of a workbook, and counted against the limits."""

    def __init__(self) -> None:
        self.formulas: set[tuple[str, Cell]] = set()
        self.merged: set[tuple[str, Cell]] = set()
        self._cells = 0
        self._letters = 0

    def count(self, last: Cell, *, cells: int = 1, letters: int = 0) -> None:
        if last[0] > LAST_ROW or last[1] > LAST_COLUMN:
            raise _FAR
        self._cells += cells
        self._letters += letters * cells
        if self._cells > MOST_CELLS or self._letters > MOST_TEXT:
            raise _TOO_BIG

    @staticmethod
    def by_sheet(found: set[tuple[str, Cell]]) -> dict[str, frozenset[Cell]]:
        names = {name for name, _ in found}
        return {name: frozenset(cell for sheet, cell in found if sheet == name) for name in names}


_Attributes = Mapping[str, str]


def _parse(
    part: bytes,
    start: Callable[[str, _Attributes], None] = lambda _name, _attributes: None,
    end: Callable[[str], None] = lambda _name: None,
    text: Callable[[str], None] | None = None,
) -> None:
    """Read a part of XML element by element, by names without their namespaces."""
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.buffer_text = True

    def begin(name: str, attributes: dict[str, str]) -> None:
        start(_local(name), {_local(key): value for key, value in attributes.items()})

    def refuse(*_: object) -> None:
        raise _ENTITIES

    parser.StartElementHandler = begin
    parser.EndElementHandler = lambda name: end(_local(name))
    parser.StartDoctypeDeclHandler = refuse
    if text is not None:
        parser.CharacterDataHandler = text
    try:
        parser.Parse(part, True)  # noqa: FBT003, expat takes no keyword
    except expat.ExpatError:
        raise BROKEN from None


def _local(name: str) -> str:
    return name.rpartition(" ")[2]


def _read_xlsx(parts: Mapping[str, bytes]) -> _Scan:
    scan = _Scan()
    lengths = _shared_lengths(parts)
    names = dict(_sheets_of_xlsx(parts))
    for part_name, part in parts.items():
        if part_name == "mimetype":
            continue
        if part_name in names:
            sheet = _XlsxSheet(scan, names[part_name], lengths)
            _parse(part, sheet.start, sheet.end, sheet.text)
        else:
            _parse(part)
    return scan


def _sheets_of_xlsx(parts: Mapping[str, bytes]) -> Iterator[tuple[str, str]]:
    """Give the part and the name of each sheet (ECMA-376 part 1, 18.2.19)."""
    targets: dict[str, str] = {}
    sheets: list[tuple[str, str]] = []

    def relation(name: str, attributes: _Attributes) -> None:
        if name == "Relationship":
            targets[attributes.get("Id", "")] = attributes.get("Target", "")

    def sheet(name: str, attributes: _Attributes) -> None:
        if name == "sheet":
            sheets.append((attributes.get("id", ""), attributes.get("name", "")))

    _parse(parts.get("xl/_rels/workbook.xml.rels", b"<none/>"), relation)
    _parse(parts["xl/workbook.xml"], sheet)
    for key, name in sheets:
        yield posixpath.normpath(posixpath.join("/xl", targets.get(key, ""))).lstrip("/"), name


def _shared_lengths(parts: Mapping[str, bytes]) -> list[int]:
    """Return how long each text is that cells may share."""
    lengths: list[int] = []

    def start(name: str, _attributes: _Attributes) -> None:
        if name == "si":
            lengths.append(0)

    def text(letters: str) -> None:
        if lengths:
            lengths[-1] += len(letters)

    _parse(parts.get("xl/sharedStrings.xml", b"<none/>"), start, text=text)
    return lengths


class _XlsxSheet:
    """Reads the cells of one sheet (ECMA-376 part 1, 18.3.1)."""

    _REF = re.compile("([A-Z]{1,3})([0-9]{1,7})")

    def __init__(self, scan: _Scan, name: str, lengths: list[int]) -> None:
        self._scan, self._name, self._lengths = scan, name, lengths
        self._row, self._column = 0, 0
        self._shares = self._holds = self._in_value = False
        self._letters = ""
        self._length = 0

    def start(self, name: str, attributes: _Attributes) -> None:
        if name == "row":
            typed = attributes.get("r", "")
            self._row = int(typed) if re.fullmatch("[0-9]{1,7}", typed) else self._row + 1
            self._column = 0
        elif name == "c":
            self._column += 1
            if "r" in attributes:
                self._row, self._column = self._cell(attributes["r"])
            self._shares = attributes.get("t") == "s"
            self._holds, self._letters, self._length = False, "", 0
        elif name == "f":
            self._scan.formulas.add((self._name, (self._row, self._column)))
        elif name in ("v", "is"):
            self._holds = self._in_value = True
        elif name == "mergeCell":
            first = self._cell(attributes.get("ref", "").partition(":")[0])
            self._scan.merged.add((self._name, first))

    def text(self, letters: str) -> None:
        if self._in_value:
            self._length += len(letters)
            self._letters = (self._letters + letters)[:10]

    def end(self, name: str) -> None:
        if name in ("v", "is"):
            self._in_value = False
        elif name == "c" and self._holds:
            length = self._length
            if self._shares and self._letters.isdecimal():
                number = int(self._letters)
                length = self._lengths[number] if number < len(self._lengths) else 0
            self._scan.count((self._row, self._column), letters=length)

    def _cell(self, ref: str) -> Cell:
        found = self._REF.fullmatch(ref)
        if not found:
            raise BROKEN
        column = 0
        for letter in found[1]:
            column = 26 * column + ord(letter) - ord("A") + 1
        return int(found[2]), column


def _read_ods(parts: Mapping[str, bytes]) -> _Scan:
    scan = _Scan()
    for name, part in parts.items():
        if name == "mimetype":
            continue
        if name == "content.xml":
            book = _OdsBook(scan)
            _parse(part, book.start, book.end, book.text)
        elif name == "META-INF/manifest.xml":
            _parse(part, _refuse_encrypted)
        else:
            _parse(part)
    return scan


def _refuse_encrypted(name: str, _attributes: _Attributes) -> None:
    if name == "encryption-data":
        raise _CLOSED


class _OdsBook:
    """Reads the cells of all sheets (OpenDocument 1.3 part 3, 9.1)."""

    def __init__(self, scan: _Scan) -> None:
        self._scan = scan
        self._name = ""
        self._row = self._rows = self._column = self._columns = 0
        self._holds = False
        self._length = 0

    def start(self, name: str, attributes: _Attributes) -> None:
        if name == "table":
            self._name = attributes.get("name", "")
            self._row = self._rows = 0
        elif name == "table-row":
            self._row += self._rows or 1
            self._rows = self._number(attributes, "number-rows-repeated")
            self._column, self._columns = 0, 1
        elif name in ("table-cell", "covered-table-cell"):
            self._column += self._columns
            self._columns = self._number(attributes, "number-columns-repeated")
            self._holds, self._length = "value-type" in attributes, 0
            here = (self._name, (self._row, self._column))
            if "formula" in attributes:
                self._scan.formulas.add(here)
            spanned = ("number-columns-spanned", "number-rows-spanned")
            if any(self._number(attributes, key) > 1 for key in spanned):
                self._scan.merged.add(here)
        elif name == "s":  # so many spaces
            self._length += self._number(attributes, "c")

    def text(self, letters: str) -> None:
        self._length += len(letters)

    def end(self, name: str) -> None:
        if name in ("table-cell", "covered-table-cell") and (self._holds or self._length):
            last = (self._row + self._rows - 1, self._column + self._columns - 1)
            self._scan.count(last, cells=self._rows * self._columns, letters=self._length)
            self._holds, self._length = False, 0

    @staticmethod
    def _number(attributes: _Attributes, key: str) -> int:
        typed = attributes.get(key, "1")
        if not re.fullmatch("[0-9]{1,9}", typed):
            raise BROKEN
        return max(1, int(typed))
