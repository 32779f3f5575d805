"""The page of a day is as large as what it holds allows, and the height that we count is the true one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Any

import pytest

from notices.documents.day_heights import HIGH, SIZES, Size, height_of
from notices.documents.day_sheets import SPARE
from notices.documents.model import Document, Section
from notices.documents.model import Sheet as Paper
from notices.documents.team_sheet import team_sheets
from notices.paths import templates_folder
from notices.rendering.pdf import lay_out
from notices.rendering.sheets import write_sheet
from notices.rendering.ways import page_html
from tests.documents.building import BuiltPack, of
from tests.documents.on_paper import filled
from tests.wording.small_plans import plan, programme, work

LARGEST = SIZES[0].style
MM_PER_PX = 25.4 / 96


@of("alderfleet-park", "live-oak", "marlpit-common", "skelmarram-links", "withy-hollow")
@pytest.mark.parametrize("name", ["starter-sheet", "team-sheet"])
def test_a_day_is_as_large_as_its_page_allows(pack: BuiltPack, name: str) -> None:
    """A page less than three quarters full is in the largest size, or in that of a full day beside it."""
    sections = pack.documents.document(name).sections
    used = filled(pack.files[f"{name}.pdf"])
    assert len(used) == len(sections), "a page each"
    pages = [(section.style, share) for section, share in zip(sections, used, strict=True)]
    for style, beside in groupby(pages, key=lambda page: page[0]):
        fullest = max(share for _, share in beside)
        assert fullest > 0.75 or style == LARGEST, style
        assert fullest <= 1


@of("live-oak", "marlpit-common", "withy-hollow")
def test_days_of_the_same_works_are_in_one_size(pack: BuiltPack) -> None:
    styles: dict[frozenset[str], set[str]] = {}
    for section in pack.documents.document("team-sheet").sections[:-1]:
        day = section.name.removeprefix("day ")
        works = frozenset(
            one.id
            for one in pack.programme.works
            for visit in one.visits
            if visit.date.isoformat() == day
        )
        styles.setdefault(works, set()).add(section.style)
    assert all(len(of_works) == 1 for of_works in styles.values())


BUSY = ("verticutting", "scarifying", "hollow tining", "needle tining", "slitting", "top dressing")


def test_the_fullest_day_of_the_team_has_one_page() -> None:
    """Six jobs on nine greens: it needs the smallest letters, with one line to write on."""
    machine = {"width": "3 m", "speed": "6 km/h", "minutes_between_greens": 0, "people": 1}
    machines = [{"operation": operation, **machine} for operation in BUSY]
    crew = {"people": 8, "working_day": "06:00 to 20:00", "machines": machines}
    jobs = (work(operation, "2027-08-09", greens="1-9") for operation in BUSY)
    entry = team_sheets(programme(plan(*jobs, greens="1-9", crew=crew)))
    assert entry is not None
    (paper,) = entry.items
    assert isinstance(paper, Paper)
    day, safety = paper.document.sections
    assert day.style == SIZES[-1].style
    used = filled(write_sheet(paper).content)
    assert len(used) == 2, f"one of {day.heading}, one of {safety.heading}"
    assert 0.9 < used[0] < 1


def set_in(sizes: Sequence[Size], document: Document, section: Section) -> list[list[float]]:
    """Set the page of a day in some sizes; return the heights of its boxes page by page [mm]."""
    # The first page has a head, and no rule above its day.
    empty = Section("empty", (), "An empty page", SIZES[-1].style)
    sections = (empty, *(replace(section, style=size.style) for size in sizes))
    paper = Paper(replace(document, sections=sections), "day-sheet")
    layout = lay_out(page_html(paper, paper.fits[0]), base=templates_folder())
    return [
        [MM_PER_PX * float(box.margin_height()) for box in days_on(page._page_box)]
        for page in layout.document.pages
    ][1:]


def days_on(box: Any) -> Iterator[Any]:
    element = getattr(box, "element", None)
    if element is not None and "section" in (element.get("class") or "").split():
        yield box
        return
    for child in getattr(box, "children", ()):
        yield from days_on(child)


@of("alderfleet-park", "withy-hollow")
@pytest.mark.parametrize("name", ["starter-sheet", "team-sheet"])
@pytest.mark.parametrize("fullest", [False, True], ids=["short", "long"])
def test_the_height_of_a_day_is_counted_right(pack: BuiltPack, name: str, *, fullest: bool) -> None:
    """To a fiftieth, and never too low by more than what is kept free."""
    document = pack.documents.document(name)
    days = sorted(document.sections[1:-1], key=lambda day: counted(day, SIZES[-1]))
    day = days[-1 if fullest else 0]
    first = next(n for n, size in enumerate(SIZES) if size.style == day.style)
    set_so = set_in(SIZES[first:], document, day)
    assert len(set_so) == len(SIZES) - first, "a page each"
    for (high,), size in zip(set_so, SIZES[first:], strict=True):
        assert high == pytest.approx(counted(day, size), rel=0.02)
        assert high < counted(day, size) + (1 - SPARE) * HIGH


def counted(day: Section, size: Size) -> float:
    return height_of(day, size, to_write_on=True)
