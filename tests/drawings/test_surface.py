"""The green from above: true to size on paper, and as the recovery model has it."""

from __future__ import annotations

import itertools
import math
import re
import xml.etree.ElementTree as ET

import pypdfium2  # type: ignore[import-untyped,unused-ignore]
import pytest

from notices.drawings.model import Drawing
from notices.drawings.palette import TURF
from notices.drawings.surface import as_it_heals, surface
from notices.operations import Opening
from notices.paths import templates_folder
from notices.programme.model import Period, Work
from notices.programme.openings import StageOfHealing
from notices.rendering.pdf import write_pdf
from notices.wording.words import Words
from tests.drawings.clubs import NAMES
from tests.drawings.hard_plans import OPENS, clubs, drawn
from tests.drawings.metrics import SVG, faults, texts_in
from tests.wording import small_plans as small

SURFACES = [name for name in drawn() if ": surface" in name]
AFTER = [name for name in SURFACES if name.endswith("-after")]


class Measured:
    """A square of green, read back from its SVG and turned into millimetres of green."""

    def __init__(self, drawing: Drawing) -> None:
        self.root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
        self.scale = float(self.root.attrib["data-scale"])

    def openings(self, work: Work) -> list[dict[str, float]]:
        (group,) = (g for g in self.root.iter(f"{SVG}g") if g.get("data-work") == work.id)
        return [
            {key: float(value) / self.scale for key, value in shape.attrib.items() if key in SIZES}
            | {"pass": float(shape.attrib["data-pass"])}
            for shape in group
            if shape.get("class") == "opening"
        ]

    @property
    def square(self) -> tuple[float, float]:
        (patch,) = (r for r in self.root.iter(f"{SVG}rect") if r.get("class") == "patch")
        return tuple(float(patch.attrib[k]) / self.scale for k in ("width", "height"))  # type: ignore[return-value]


SIZES = {"x", "y", "width", "height", "cx", "cy", "r"}


@pytest.mark.parametrize("name", SURFACES)
def test_the_square_is_six_inches_or_fifteen_centimetres(name: str) -> None:
    words, drawing = drawn()[name]
    side = 152.4 if words.programme.club.units == "imperial" else 150.0
    assert Measured(drawing).square == pytest.approx((side, side), abs=0.01)


@pytest.mark.parametrize("name", AFTER)
def test_holes_and_slits_fall_where_the_plan_has_them(name: str) -> None:
    words, drawing = drawn()[name]
    measured = Measured(drawing)
    period = words.programme.periods[int(name.split("surface-")[1].split("-", maxsplit=1)[0]) - 1]
    for work in period.works:
        if work.operation.opening is Opening.HOLES:
            _holes_fall_right(measured.openings(work), work)
        elif work.operation.opening is Opening.SLITS:
            slits = measured.openings(work)
            width, apart = (work.settings.number(k) for k in ("blade_width", "blade_spacing"))
            assert all(slit["width"] == pytest.approx(width, abs=0.002) for slit in slits)
            for turn in {slit["pass"] for slit in slits}:
                lefts = sorted(slit["x"] for slit in slits if slit["pass"] == turn)
                for one, other in itertools.pairwise(lefts):
                    assert other - one == pytest.approx(apart, abs=0.002)


def _holes_fall_right(holes: list[dict[str, float]], work: Work) -> None:
    key = "hole_diameter" if "hole_diameter" in work.settings.values else "tine_diameter"
    along, across = work.settings.pair("spacing")
    assert holes
    for turn in {hole["pass"] for hole in holes}:
        own = [hole for hole in holes if hole["pass"] == turn]
        assert all(
            2 * hole["r"] == pytest.approx(work.settings.number(key), abs=0.002) for hole in own
        )
        for axis, step in (("cx", across), ("cy", along)):
            values = sorted({round(hole[axis], 4) for hole in own})
            for one, other in itertools.pairwise(values):
                assert other - one == pytest.approx(step, abs=0.002)


def test_as_many_holes_as_the_pattern_has() -> None:
    """Withy Hollow: 150 ÷ 75 = 2 deep holes each way, 150 ÷ 50 = 3 cores each way."""
    words, drawing = drawn()["withy-hollow: surface-2-after"]
    works = {work.operation.name: work for work in words.programme.works}
    measured = Measured(drawing)
    assert len(measured.openings(works["deep solid tining"])) == 2 * 2
    assert len(measured.openings(works["hollow tining"])) == 3 * 3


def test_a_trench_leaves_room_for_all_holes() -> None:
    """Cores 50 mm apart, three each way, though the trench is 100 mm wide."""
    words, drawing = drawn()["a trench among holes: surface-1-after"]
    works = {work.operation.name: work for work in words.programme.works}
    assert len(Measured(drawing).openings(works["hollow tining"])) == 3 * 3
    said = "Drain trenching: 10 cm wide, the next one is 3 m away, 3.3 % of the surface."
    assert said in drawing.description


def main(words: Words) -> Period:
    return max(words.programme.periods, key=lambda period: len(period.works))


def moments(name: str, moment: StageOfHealing) -> tuple[Words, Measured]:
    words = Words(clubs()[name])
    drawing = surface(words, main(words), moment)
    assert drawing is not None
    return words, Measured(drawing)


AT_ITS_BEST = [18.0] * 12
"""Each day brings a whole growth day to a British green, whose optimum is 18 °C."""


def test_what_is_still_open_is_drawn_narrower_and_what_has_healed_is_not_drawn() -> None:
    """Slits of 3 mm, 20 mm deep, take 22 days (2 × 12.7 ÷ 1.2), and eleven of them to half of it.

    Cores of 13 mm have healed after 13 ÷ 1.2, which is eleven days too.
    """
    slits, cores = (small.work(name, "2027-08-09") for name in ("scarifying", "hollow tining"))
    words = Words(small.programme(small.plan(slits, cores, temperatures=AT_ITS_BEST)))
    (period,) = words.programme.periods
    first, smooth = (
        surface(words, period, moment) for moment in (StageOfHealing.AFTER, StageOfHealing.SMOOTH)
    )
    assert first is not None
    assert smooth is not None
    scarifying, tining = words.programme.works
    before, after = Measured(first), Measured(smooth)
    middles = [
        [slit["x"] + slit["width"] / 2 for slit in measured.openings(scarifying)]
        for measured in (before, after)
    ]
    assert middles[0] == pytest.approx(middles[1], abs=0.01)  # the same square
    for slit in after.openings(scarifying):
        assert slit["width"] == pytest.approx(3 * (1 - 11 / 22), abs=0.002)
    assert before.openings(tining)
    assert [group.get("data-work") for group in after.root.iter(f"{SVG}g")] == [scarifying.id]
    assert "Scarifying: half closed." in smooth.description
    assert "Nothing is left to see of hollow tining." in smooth.caption


def test_sand_still_shows_in_what_it_fills() -> None:
    """Sand is in cores of 18 mm that close in 18 ÷ 1.2 = 15 days.

    It putts smoothly three to ten days after the dressing: in the middle of them, 6.5, on the seventh.
    """
    cores = small.work("hollow tining", "2027-08-09", settings={"tine_diameter": "18 mm"})
    sand = small.work("top dressing", "2027-08-09", settings={"fill": "holes"})
    words = Words(small.programme(small.plan(cores, sand, temperatures=AT_ITS_BEST)))
    (period,) = words.programme.periods
    drawing = surface(words, period, StageOfHealing.SMOOTH)
    assert drawing is not None
    tining = next(each for each in words.programme.works if each.operation.name == "hollow tining")
    wide = {round(2 * hole["r"], 3) for hole in Measured(drawing).openings(tining)}
    assert wide == {round(18 * (1 - 7 / 15), 3)}
    assert "Hollow tining: half closed, the sand still shows." in drawing.description


@pytest.mark.parametrize("name", NAMES)
def test_what_an_example_has_healed_by_then_is_not_drawn(name: str) -> None:
    """By the dates of each work alone: a member who lays the sheet beside the green must see it."""
    words = Words(clubs()[name])
    for period in words.programme.periods:
        drawing = surface(words, period, StageOfHealing.SMOOTH)
        shown = (
            {g.get("data-work") for g in Measured(drawing).root.iter(f"{SVG}g")}
            if drawing
            else set()
        )
        for each in period.works:
            if each.operation.opening in OPENS:
                healed = words.programme.greens_back[each.id].fully_healed.expected
                assert (each.id in shown) == (healed > period.putting_well.expect_by), each.id


def test_one_square_will_do_where_nothing_is_left_once_it_putts_smoothly() -> None:
    """Withy Hollow: healed by 15 September, when it putts smoothly. Marlpit Common: 31 October, 2 November."""
    found = {
        name: [each.name for each in as_it_heals(words, main(words), "", 0.5)]
        for name, words in (
            (name, Words(clubs()[name])) for name in ("withy-hollow", "marlpit-common")
        )
    }
    assert found == {"withy-hollow": ["smooth"], "marlpit-common": ["smooth", "healed"]}


def test_nothing_is_left_when_it_has_healed() -> None:
    for name in ("withy-hollow", "tansy-down", "everything"):
        _, healed = moments(name, StageOfHealing.HEALED)
        assert [shape for shape in healed.root.iter() if shape.get("class") == "opening"] == []


def test_filled_holes_show_as_sand_and_open_ones_dark() -> None:
    words, drawing = drawn()["withy-hollow: surface-2-after"]
    root = ET.fromstring(drawing.svg)  # noqa: S314
    fills = {
        group.get("data-work"): {s.get("fill") for s in group if s.get("class") == "opening"}
        for group in root.iter(f"{SVG}g")
    }
    works = {work.operation.name: work.id for work in words.programme.works}
    assert fills[works["hollow tining"]] == {"#f3ead6"}
    assert fills[works["scarifying"]] == {"#2e2620"}


def test_the_share_of_the_surface_is_that_of_the_programme() -> None:
    """2 ÷ 40 = 5 %; π × 13² ÷ 4 ÷ 50² = 5.3 %; π × 18² ÷ 4 ÷ 75² = 4.5 %."""
    _, drawing = drawn()["withy-hollow: surface-2-after"]
    texts = [(t.text.replace("\N{NO-BREAK SPACE}", " "), t) for t in texts_in(drawing.svg)]
    said = " ".join(words for words, _ in texts)
    edge = next(text.box.right for words, text in texts if words == "of the surface")
    for work, share in (("Scarifying", 5.0), ("Hollow tining", 5.3), ("Deep solid tining", 4.5)):
        assert said.split(f"{work}:")[1].split("apart ")[1].startswith(f"{share} %")
        assert f"{share} % of the surface" in drawing.description.split(f"{work}:")[1]
        (own,) = (text for words, text in texts if words == f"{share} %")
        assert own.box.right == pytest.approx(edge, abs=0.1)
    assert 100 * math.pi * 13**2 / 4 / 50**2 == pytest.approx(5.3, abs=0.05)
    assert 100 * math.pi * 18**2 / 4 / 75**2 == pytest.approx(4.5, abs=0.05)


PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>A square</title>
<style>@page {{ size: A4; margin: 15mm }} body {{ margin: 0 }} svg {{ display: block }}</style>
</head><body>{}</body></html>"""


@pytest.mark.parametrize(
    ("name", "side_mm"),
    [
        ("withy-hollow: surface-2-after", 150.0),
        ("live-oak: surface-1-after", 152.4),
        ("marlpit-common: surface-1-smooth", 75.0),
    ],
)
def test_it_is_as_large_as_it_says_on_paper(name: str, side_mm: float) -> None:
    """The frame of the square is found among the shapes of the printed page."""
    drawing = drawn()[name][1]
    page = pypdfium2.PdfDocument(
        write_pdf(PAGE.format(drawing.svg), base=templates_folder()).content
    )[0]
    assert page.get_width() / 72 * 25.4 == pytest.approx(210, abs=0.1)
    picture = page.render(scale=254 / 72).to_pil().convert("L")  # ten pixels to a millimetre
    # The frame is the first and the last dark pixel of a row through the middle of the square.
    row = round(150 + 10 * side_mm / 4)
    dark = [x for x in range(picture.width) if picture.getpixel((x, row)) < 90]
    assert (dark[-1] - dark[0]) / 10 == pytest.approx(side_mm, abs=0.5)


def blades(drawing: Drawing) -> tuple[int, float, float]:
    """How many blades of grass there are, how wide they are, and how long the first is."""
    (turf,) = (
        path
        for path in Measured(drawing).root.iter(f"{SVG}path")
        if path.get("stroke") == TURF and path.get("class") is None
    )
    strokes = re.findall(r"l(\S+) (-\S+?)(?=M|$)", turf.attrib["d"])
    return len(strokes), float(turf.attrib["stroke-width"]), math.hypot(*map(float, strokes[0]))


def test_grass_is_as_much_smaller_as_the_square() -> None:
    words = Words(clubs()["withy-hollow"])
    large, small_one = (
        surface(words, main(words), StageOfHealing.AFTER, scale=scale) for scale in (1.0, 0.5)
    )
    assert large is not None
    assert small_one is not None
    (many, thick, long), (as_many, thin, short) = blades(large), blades(small_one)
    assert as_many == pytest.approx(many, rel=0.05)  # none stands at the very edge
    assert (thin, short) == pytest.approx((thick / 2, long / 2), abs=0.1)


def test_only_in_true_size_a_line_shows_how_long_it_is() -> None:
    words = Words(clubs()["withy-hollow"])
    for scale, bars in ((1.0, 1), (0.5, 0)):
        drawing = surface(words, main(words), StageOfHealing.AFTER, scale=scale)
        assert drawing is not None
        assert drawing.svg.count('class="bar"') == bars
        said = " ".join(text.text for text in texts_in(drawing.svg))
        assert said.count("This line is then 10 cm long.") == bars


def test_a_smaller_square_of_any_club_is_well_set_too() -> None:
    """As a briefing has it; 90 mm at 50 mm apart leave room for two holes each way."""
    found = {
        name: surface(words, words.programme.periods[0], StageOfHealing.AFTER, side_mm=90)
        for name, words in ((name, Words(programme)) for name, programme in clubs().items())
        if words.programme.periods
    }
    drawings = {name: drawing for name, drawing in found.items() if drawing is not None}
    assert "marlpit-common" in drawings
    for name, drawing in drawings.items():
        assert faults(drawing.svg) == [], name
    marlpit = Measured(drawings["marlpit-common"])
    assert marlpit.square == pytest.approx((90, 90), abs=0.01)
    works = clubs()["marlpit-common"].works
    tining = next(work for work in works if work.operation.name == "hollow tining")
    assert len(marlpit.openings(tining)) == 2 * 2
