"""Sheets are set where they changed, in one process or several, and come out in their order."""

from __future__ import annotations

import dataclasses
import datetime as dt
import signal
import tempfile
from pathlib import Path

import pytest

from notices.documents.model import Document, Fit, Imprint, Section, Sheet
from notices.programme.model import Edition
from notices.rendering import sheets
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
