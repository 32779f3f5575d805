"""Sheets are set where they changed, in one process or several, and come out in their order."""

from __future__ import annotations

import dataclasses
import datetime as dt
import re
import signal
import tempfile
from pathlib import Path

import pytest

from notices.documents.model import Document, Fit, Imprint, Section, Sheet
from notices.programme.model import Edition
from notices.rendering import pdf, sheets
from notices.rendering.files import RenderedFile
from notices.wording.blocks import Paragraph
from tests.documents.reading import Sheet as Read


def sheet(name: str, words: str = "Words.") -> Sheet:
    document = Document(
        name=name,
        title=f"Sheet {name}",
        language="en-GB",
        club="Fallow Moor Golf Club",
        imprint=Imprint(Edition(dt.date(2027, 3, 1))),
        summary="Summary.",
        sections=(Section("words", (Paragraph.of(words),)), Section("more", ())),
        facts=(),
    )
    return Sheet(document, "_reading")


def counted(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return a list that fills with the pages that are laid out."""
    laid_out: list[str] = []

    def lay_out(html: str, *, base: Path) -> pdf.Layout:
        laid_out.append(html)
        return pdf.lay_out(html, base=base)

    monkeypatch.setattr(sheets, "lay_out", lay_out)
    return laid_out


def test_what_is_known_is_taken_as_it_is() -> None:
    known = RenderedFile("one.pdf", "application/pdf", b"as before", sheets.source(sheet("one")))
    heard: list[int] = []
    made = sheets.write_sheets([sheet("one"), sheet("two")], {known.source: known}, heard.append)
    assert made[0] == known
    assert [file.name for file in made] == ["one.pdf", "two.pdf"]
    assert Read.read(made[1].content).title.startswith("Sheet two")
    assert heard == [1, 2]


@pytest.mark.parametrize(
    "other",
    [
        sheet("one", "Other words."),
        sheet("two"),
        dataclasses.replace(sheet("one"), pages=2),
        dataclasses.replace(sheet("one"), fits=(Fit(), Fit("tight"))),
    ],
)
def test_whatever_changes_a_sheet_changes_its_source(other: Sheet) -> None:
    assert sheets.source(other) != sheets.source(sheet("one"))
    assert sheets.source(sheet("one")) == sheets.source(sheet("one"))


def test_several_processes_set_what_one_sets() -> None:
    many = [sheet(str(number)) for number in range(sheets.FEW + 1)]
    together = sheets.write_sheets(many, {})
    assert [file.content for file in together] == [sheets.write_sheet(one).content for one in many]


def leaves_a_folder(of: Sheet) -> RenderedFile:
    tempfile.mkdtemp()
    return RenderedFile(f"{of.document.name}.pdf", sheets.PDF, b"%PDF")


def test_processes_leave_nothing_behind_when_they_are_stopped(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    monkeypatch.setattr(sheets, "write_sheet", leaves_a_folder)
    monkeypatch.setattr("os.sched_getaffinity", lambda _process: {0, 1})
    monkeypatch.setattr(sheets, "_forks", lambda: True)

    def stop(done: int) -> None:
        if done == 1:
            assert list(tmp_path.iterdir())
            signal.raise_signal(signal.SIGINT)

    with pytest.raises(KeyboardInterrupt):
        sheets.write_sheets([sheet(str(number)) for number in range(sheets.FEW + 1)], {}, stop)
    assert list(tmp_path.iterdir()) == []


def test_the_first_way_that_fits_is_taken() -> None:
    """A paragraph of 2,400 words takes more than one page at 10.5 points; nothing takes one."""
    long = sheet("long", "Mown grass is green and short in May. " * 300)
    assert Read.read(sheets.write_sheet(long).content).pages > 1
    short = dataclasses.replace(long, fits=(Fit(), Fit("", frozenset({"words"}))))
    assert Read.read(sheets.write_sheet(short).content).pages == 1


def test_a_last_page_of_a_few_lines_is_saved_where_closer_letters_save_it() -> None:
    """Forty paragraphs of one line: two pages, or one where letters and margins are closer.

    A page has 297 - 15 - 19 = 263 mm, of which the head takes about 22. A line of 10.5 points takes
    10.5 × 1.38 × 0.353 + 1.5 = 6.6 mm, so 36 stand on the first page. A close one takes
    10 × 1.3 × 0.353 + 1 = 5.6 mm, and 43 do.
    """
    one = sheet("long")
    section = Section("words", tuple(Paragraph.of("Mown grass is green.") for _ in range(40)))
    document = dataclasses.replace(one.document, sections=(section,))
    ways = {
        "closer": (Fit(), Fit("close")),
        "fewer": (Fit(), Fit("close", frozenset({"more"}))),  # nothing is left out for that
    }
    pages = {
        name: Read.read(
            sheets.write_sheet(Sheet(document, "_reading", fits, pages=2)).content
        ).pages
        for name, fits in ways.items()
    }
    assert pages == {"closer": 1, "fewer": 2}


def test_what_is_a_little_too_long_is_tried_in_the_next_way(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Of forty lines 36 stand on a page, and 43 close ones do (see above): 40/36 is less than 5/4.

    A text of two pages and more is not: it goes to the third of its four ways, and then to the last.
    """
    lines = tuple(Paragraph.of("Mown grass is green.") for _ in range(40))
    ways = (
        Fit(),
        Fit("close"),
        Fit("close", frozenset({"more"})),
        Fit("close", frozenset({"words"})),
    )
    for blocks, tried in ((lines, ["", "close"]), (3 * lines, ["", "close", "close"])):
        one = sheet("long")
        document = dataclasses.replace(one.document, sections=(Section("words", blocks),))
        with monkeypatch.context() as patched:
            laid_out = counted(patched)
            sheets.write_sheet(Sheet(document, "_reading", ways))
        assert re.findall('<body class="(.*)">', "".join(laid_out)) == tried


def test_another_size_of_a_sheet_is_set_in_the_way_that_fitted(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The first tries its three ways, of which two keep all words; the other only the third."""
    ways = (Fit(), Fit("close"), Fit("", frozenset({"words"})))
    long = sheet("long", "Mown grass is green and short in May. " * 300)
    first = dataclasses.replace(long, fits=ways)
    document = dataclasses.replace(first.document, name="other")
    other = dataclasses.replace(first, document=document, template="reading")
    alone = [sheets.write_sheet(one).content for one in (first, other)]
    laid_out = counted(monkeypatch)
    made = sheets.write_sheets([first, other], {})
    assert [file.name for file in made] == ["long.pdf", "other.pdf"]
    assert [file.content for file in made] == alone
    assert len(laid_out) == 3 + 1


def test_a_way_is_set_once_whatever_pages_it_may_take(monkeypatch: pytest.MonkeyPatch) -> None:
    """On one side neither way fits; on both sides the first does, and it is laid out already."""
    ways = tuple(Fit(styles, pages=pages) for pages in (1, 9) for styles in ("", "close"))
    long = sheet("long", "Mown grass is green and short in May. " * 300)
    laid_out = counted(monkeypatch)
    sheets.write_sheet(dataclasses.replace(long, fits=ways))
    assert len(laid_out) == len({"", "close"})
    assert len(set(laid_out)) == len(laid_out)
