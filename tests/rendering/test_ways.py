"""A sheet is set in the largest way that fits, and no way is set in vain."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path

import pytest

from notices.documents.model import Fit, Section, Sheet
from notices.rendering import pdf, sheets, ways
from notices.wording.blocks import Paragraph
from tests.documents.reading import Sheet as Read
from tests.rendering.test_sheets import sheet


def counted(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return a list that fills with the pages that are laid out."""
    laid_out: list[str] = []

    def lay_out(html: str, *, base: Path) -> pdf.Layout:
        laid_out.append(html)
        return pdf.lay_out(html, base=base)

    monkeypatch.setattr(ways, "lay_out", lay_out)
    return laid_out


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


def test_what_cannot_fit_is_passed_over(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of forty lines 36 stand on a page, and 43 close ones do (see above): a close way is tried.

    Of a hundred and twenty, three pages and more, even nine tenths do not: the last way is tried.
    """
    lines = tuple(Paragraph.of("Mown grass is green.") for _ in range(40))
    fits = (
        Fit(),
        Fit("close", room=0.9),
        Fit("close", frozenset({"more"}), room=0.9),
        Fit("close closer", frozenset({"words"}), room=0.1),
    )
    for blocks, tried in ((lines, ["", "close"]), (3 * lines, ["", "close closer"])):
        one = sheet("long")
        document = dataclasses.replace(one.document, sections=(Section("words", blocks),))
        with monkeypatch.context() as patched:
            laid_out = counted(patched)
            sheets.write_sheet(Sheet(document, "_reading", fits))
        assert re.findall('<body class="(.*)">', "".join(laid_out)) == tried


def test_a_guess_that_was_wrong_costs_a_try_and_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """Forty close lines stand on a page, whatever their way says of its room: it is found."""
    lines = tuple(Paragraph.of("Mown grass is green.") for _ in range(40))
    one = sheet("long")
    document = dataclasses.replace(one.document, sections=(Section("words", lines),))
    fits = (Fit(), Fit("", frozenset({"more"}), room=0.8), Fit("close", room=0.7))
    laid_out = counted(monkeypatch)
    made = sheets.write_sheet(Sheet(document, "_reading", fits))
    assert Read.read(made.content).pages == 1
    assert len(laid_out) == len(fits)


def test_another_size_of_a_sheet_is_set_in_the_way_that_fitted(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The first goes from its first way to its third, which drops the words; the other begins there."""
    fits = (Fit(), Fit("close"), Fit("", frozenset({"words"})))
    long = sheet("long", "Mown grass is green and short in May. " * 300)
    first = dataclasses.replace(long, fits=fits)
    document = dataclasses.replace(first.document, name="other")
    other = dataclasses.replace(first, document=document, template="reading")
    alone = [sheets.write_sheet(one).content for one in (first, other)]
    laid_out = counted(monkeypatch)
    made = sheets.write_sheets([first, other], {})
    assert [file.name for file in made] == ["long.pdf", "other.pdf"]
    assert [file.content for file in made] == alone
    assert len(laid_out) == 2 + 1


def test_a_way_is_set_once_whatever_pages_it_may_take(monkeypatch: pytest.MonkeyPatch) -> None:
    """On one side neither way fits; on both sides the first does, and it is laid out already."""
    ways = tuple(Fit(styles, pages=pages) for pages in (1, 9) for styles in ("", "close"))
    long = sheet("long", "Mown grass is green and short in May. " * 300)
    laid_out = counted(monkeypatch)
    sheets.write_sheet(dataclasses.replace(long, fits=ways))
    assert len(laid_out) == len({"", "close"})
    assert len(set(laid_out)) == len(laid_out)


def test_what_is_much_too_long_begins_with_a_closer_way(monkeypatch: pytest.MonkeyPatch) -> None:
    """Forty lines of twenty letters are two pages of four hundred letters, and one in half the room."""
    lines = tuple(Paragraph.of("Mown grass is green.") for _ in range(40))
    one = sheet("long")
    document = dataclasses.replace(one.document, sections=(Section("words", lines),))
    fits = (Fit(), Fit("close", room=0.4))
    for letters, tried in ((400, ["close"]), (4000, ["", "close"])):
        with monkeypatch.context() as patched:
            laid_out = counted(patched)
            sheets.write_sheet(Sheet(document, "_reading", fits, letters=letters))
        assert re.findall('<body class="(.*)">', "".join(laid_out)) == tried
