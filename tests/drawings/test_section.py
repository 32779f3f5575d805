"""Sections through a green: everything below the grass measures what the plan says."""

from __future__ import annotations

import itertools
import re
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest

from notices.drawings.model import Drawing
from notices.drawings.section import cross_section
from notices.operations import Opening
from notices.programme.model import Work
from notices.wording.words import Words
from tests.documents.building import ISSUED
from tests.drawings.hard_plans import CLAY, DAY, US, at_once, clubs, drawn
from tests.drawings.metrics import SVG, texts_in
from tests.wording.small_plans import programme, work

NEAR = 0.002
"""Places in a drawing are written to a thousandth."""

SECTIONS = [
    name
    for name, (_, drawing) in drawn().items()
    if 'class="panel"' in drawing.svg and 'class="cut ' in drawing.svg
]


class Measured:
    """A section, read back from its SVG and turned into millimetres."""

    def __init__(self, drawing: Drawing) -> None:
        self.root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
        self.scale = float(self.root.attrib["data-scale"])
        before, after = self.all("rect", "panel")
        self.surface = float(after.attrib["y"])
        assert float(before.attrib["y"]) == self.surface
        self.after = (float(after.attrib["x"]), float(after.attrib["width"]))
        self.bottom = self.surface + float(after.attrib["height"])

    def close_ups(self) -> list[tuple[float, float, float]]:
        """Surface, lower edge and scale of the close-up, if there is one."""
        found = []
        for group in self.all("g", "close-up"):
            (panel,) = self.all("rect", "near-panel", group)
            top, high = float(panel.attrib["y"]), float(panel.attrib["height"])
            found.append((top, top + high, float(group.attrib["data-scale"])))
        return found

    def all(self, tag: str, name: str, within: ET.Element | None = None) -> list[ET.Element]:
        found = (self.root if within is None else within).iter(f"{SVG}{tag}")
        return [shape for shape in found if shape.get("class") == name]

    def near(self, work: Work) -> ET.Element:
        (group,) = (g for g in self.root.iter(f"{SVG}g") if g.get("data-near") == work.id)
        return group

    def of(self, work: Work) -> ET.Element:
        (group,) = (g for g in self.root.iter(f"{SVG}g") if g.get("data-work") == work.id)
        return group

    def mm(self, shape: ET.Element, name: str) -> float:
        return float(shape.attrib[name]) / self.scale

    def middles(self, shapes: list[ET.Element]) -> dict[str, list[float]]:
        """Middles of openings by pass, in millimetres from the left edge of the panel."""
        found: dict[str, list[float]] = {}
        for shape in shapes:
            left = (float(shape.attrib["x"]) - self.after[0]) / self.scale
            found.setdefault(shape.attrib["data-pass"], []).append(
                left + self.mm(shape, "width") / 2
            )
        return {turn: sorted(places) for turn, places in found.items()}


def of_one(words: Words, name: str) -> list[tuple[Work, bool]]:
    """Works in a drawing, each with whether it stands alone."""
    number, _, alone = name.split(": section-")[1].removesuffix("-phone").partition("-")
    alone = alone.removeprefix("phone")
    period = words.programme.periods[int(number) - 1]
    works = [w for w in period.works if w.operation.opening in WIDTHS]
    return [(w, True) for w in works if w.id == alone] if alone else [(w, False) for w in works]


WIDTHS = {
    Opening.HOLES: ("tine_diameter", "hole_diameter"),
    Opening.SLITS: ("blade_width",),
    Opening.TRENCHES: ("width",),
    Opening.CHANNELS: ("channel_diameter",),
}


def setting(work: Work, *names: str) -> float:
    return next(work.settings.number(name) for name in names if name in work.settings.values)


@pytest.mark.parametrize("name", SECTIONS)
def test_it_is_to_scale(name: str) -> None:
    words, drawing = drawn()[name]
    measured = Measured(drawing)
    works = of_one(words, name)
    assert works
    for planned, alone in works:
        group = measured.of(planned)
        width = setting(planned, *WIDTHS[planned.operation.opening])
        depth = planned.settings.number("depth")
        if planned.operation.opening is Opening.CHANNELS:
            channels = measured.all("circle", "channel", group)
            for channel in channels:
                assert 2 * measured.mm(channel, "r") == pytest.approx(width, rel=0.01)
                low = (float(channel.attrib["cy"]) - measured.surface) / measured.scale
                assert low == pytest.approx(depth, rel=0.001)
            middles = {"0": [measured.mm(channel, "cx") for channel in channels]}
            spacing = planned.settings.number("spacing")
        else:
            openings = measured.all("rect", "opening", group)
            for opening in openings:
                assert float(opening.attrib["y"]) == measured.surface
                wide, deep = measured.mm(opening, "width"), measured.mm(opening, "height")
                assert wide == pytest.approx(width, abs=NEAR / measured.scale)
                assert deep == pytest.approx(depth, abs=NEAR / measured.scale)
            middles = measured.middles(openings)
            pair = planned.settings.values.get(
                "spacing", planned.settings.values.get("blade_spacing")
            )
            spacing = pair[1] if isinstance(pair, tuple) else float(pair or 0)
        several = alone or planned.operation.opening in (Opening.HOLES, Opening.SLITS)
        assert max(len(found) for found in middles.values()) >= (2 if several else 1)
        for found in middles.values():
            for left, right in itertools.pairwise(found):
                assert right - left == pytest.approx(spacing, abs=3 * NEAR / measured.scale)


@pytest.mark.parametrize("name", SECTIONS)
def test_openings_stay_within_the_panel(name: str) -> None:
    measured = Measured(drawn()[name][1])
    left, right = measured.after[0], sum(measured.after)
    for opening in measured.all("rect", "opening"):
        x, wide = float(opening.attrib["x"]), float(opening.attrib["width"])
        assert left - NEAR <= x
        assert x + wide <= right + NEAR
        assert measured.surface + float(opening.attrib["height"]) <= measured.bottom
    for channel in measured.all("circle", "channel"):
        x, y, radius = (float(channel.attrib[key]) for key in ("cx", "cy", "r"))
        assert left - NEAR <= x - radius
        assert x + radius <= right + NEAR
        assert y + radius <= measured.bottom


@pytest.mark.parametrize("name", SECTIONS)
def test_the_ruler_measures_the_same(name: str) -> None:
    """Figures stand as far apart as they say, from 0 at the surface."""
    words, drawing = drawn()[name]
    measured = Measured(drawing)
    imperial = words.programme.club.units == "imperial"
    for surface, bottom, scale in (
        (measured.surface, measured.bottom, measured.scale),
        *measured.close_ups(),
    ):
        beside = [
            text
            for text in texts_in(drawing.svg)
            if text.box.right < 42 and surface - 24 < text.box.top and text.box.bottom < bottom + 9
        ]
        unit = next(text.text for text in beside if text.text in ("mm", "cm", "inches"))
        assert (unit == "inches") == imperial
        in_mm = {"mm": 1.0, "cm": 10.0, "inches": 25.4}[unit]
        figures = {
            t.box.bottom: number(t.text) for t in beside if re.fullmatch(r"[\d. ½¼¾/]+", t.text)
        }
        zero = min(figures)
        assert figures[zero] == 0
        assert len(figures) >= 2
        for y, figure in figures.items():
            assert (y - zero) / scale == pytest.approx(
                figure * in_mm, rel=1e-4, abs=2 * NEAR / scale
            )


def number(figure: str) -> float:
    for sign, value in (("½", " 1/2"), ("¼", " 1/4"), ("¾", " 3/4")):
        figure = figure.replace(sign, value)
    return float(sum(Fraction(part) for part in figure.split()))


def test_sand_fills_what_is_filled() -> None:
    """Withy Hollow: cores of 75 mm to the bottom, of deep holes the top 60 mm, slits not at all."""
    words, drawing = drawn()["withy-hollow: section-2"]
    measured = Measured(drawing)
    works = {work.operation.name: work for work in words.programme.works}
    for name, depth in (("hollow tining", 75), ("deep solid tining", 60)):
        filled = measured.all("rect", "filled", measured.of(works[name]))
        assert filled
        for sand in filled:
            assert measured.mm(sand, "height") == pytest.approx(depth, abs=0.01)
    assert measured.all("rect", "filled", measured.of(works["scarifying"])) == []


@pytest.mark.parametrize(
    ("name", "drain"),
    [
        ("withy-hollow: section-2", True),  # channels, and the plan names a drain
        ("a drain named: section-1-hollow-tining-1", False),  # one work alone: its measures only
        ("marlpit-common: section-1", False),
        ("skelmarram-links: section-1", False),
        ("everything: section-1", True),
        ("everything in inches: section-1", True),  # channels lead to a drain, named or not
        ("a trench among holes: section-1", False),  # the trench has its pipe
    ],
)
def test_a_drain_is_drawn_only_where_there_is_one(name: str, drain: bool) -> None:
    drawing = drawn()[name][1]
    assert ('class="drain"' in drawing.svg) == drain
    assert ("not to scale" in {text.text for text in texts_in(drawing.svg)}) == drain


def words_on(name: str) -> set[str]:
    return {text.text for text in texts_in(drawn()[name][1].svg)}


def test_layers_are_those_of_the_plan() -> None:
    assert {"Clay", "Root zone", "typically 13 mm"} <= words_on("withy-hollow: section-2")
    assert {"Sand"} <= words_on("skelmarram-links: section-1")
    assert not {"Root zone", "Clay"} & words_on("skelmarram-links: section-1")
    assert "22 mm, measured" in words_on("marlpit-common: section-1")
    # 180 mm on one green and 22 on another.
    assert "up to 18 cm, measured" in words_on("thick thatch: section-1")


def test_every_measure_that_is_drawn_is_said() -> None:
    description = drawn()["withy-hollow: section-2"][1].description
    for said in (
        "Scarifying: slits 2 mm wide, 20 mm deep, 40 mm apart.",
        "Mole ploughing: channels 45 mm wide, 30 cm deep, 1 m apart.",
        "Deep solid tining: holes 18 mm wide, 22.5 cm deep, 75 mm apart, sand in the top 60 mm.",
        "Hollow tining: holes 13 mm wide, 75 mm deep, 50 mm apart, filled with sand.",
        "thatch (typically 13 mm), root zone (typically to 15 cm) and clay",
    ):
        assert said in description


WORKS = {
    "slits": work("scarifying", DAY),
    "holes": work("hollow tining", DAY),
    "channels": work("mole ploughing", DAY),
    "drains": work("drain trenching", DAY),
    "sand": work("top dressing", DAY),
}
SUBSETS = [
    chosen
    for size in range(2, len(WORKS) + 1)
    for chosen in itertools.combinations(WORKS, size)
    if chosen != ("sand",)
]


@pytest.mark.parametrize("chosen", SUBSETS, ids="-".join)
def test_the_caption_names_the_way_of_the_water_and_nothing_else(chosen: tuple[str, ...]) -> None:
    data = at_once(*(WORKS[name] for name in chosen), soil=CLAY)
    words = Words(programme(data, ISSUED))
    drawing = cross_section(words, words.programme.works)
    assert drawing is not None
    caption = drawing.caption
    assert ("slits" in caption) == ("slits" in chosen)
    assert (" holes" in caption) == ("holes" in chosen)
    assert ("channels" in caption) == ("channels" in chosen)
    assert ("sand" in caption.lower()) == ("sand" in chosen)
    # A way to a drain only where one is dug or channels lead to one.
    assert ("drain" in caption) == bool({"channels", "drains"} & set(chosen))


def test_each_english_has_its_own_words() -> None:
    works = (work("hollow tining", DAY), work("top dressing", DAY))
    british = Words(programme(at_once(*works), ISSUED))
    american = Words(programme(at_once(*works, club=US), ISSUED))
    said = [cross_section(words, words.programme.works) for words in (british, american)]
    at_home, overseas = (drawing.caption for drawing in said if drawing)
    assert at_home == (
        "This is a slice through a green, before and after the work. Before, rain stays on top. "
        "After, water runs down the holes and into the ground below. The sand keeps the way open."
    )
    assert overseas == (
        "Here is a slice through a green, before and after the work. Before, rain sits on top. "
        "After, water moves down the holes and into the ground below. "
        "The sand helps keep the way open."
    )


def test_a_scratch_is_no_way_for_water() -> None:
    """Slits of 2 mm end in the thatch: nothing is promised of water, and none is drawn."""
    drawing = drawn()["shallow slits and sand: section-1"][1]
    assert "water" not in drawing.caption
    assert "way of the water" not in words_on("shallow slits and sand: section-1")


def test_what_opens_nothing_has_no_section() -> None:
    for name in ("sand alone", "turf alone"):
        words = Words(clubs()[name])
        assert cross_section(words, words.programme.works) is None


CLOSE = [name for name in SECTIONS if 'class="close-up"' in drawn()[name][1].svg]


@pytest.mark.parametrize("name", CLOSE)
def test_a_close_up_is_to_scale_and_as_many_times_as_large_as_it_says(name: str) -> None:
    words, drawing = drawn()[name]
    measured = Measured(drawing)
    ((surface, bottom, scale),) = measured.close_ups()
    said = re.search(r"Close-up of the framed part, (.+?) as large\.", drawing.svg)
    assert said is not None
    times = {"twice": 2, **{f"{word} times": n for n, word in enumerate(COUNTED)}}.get(said[1])
    assert scale / measured.scale == pytest.approx(
        times or int(said[1].removesuffix(" times")), abs=1e-3
    )
    # The frame in the section is as deep, and as wide, as what is shown of it.
    (frame,) = measured.all("rect", "close-up-mark")
    (panel,) = measured.all("rect", "near-panel")
    low = float(frame.attrib["y"]) + float(frame.attrib["height"])
    assert (low - measured.surface) / measured.scale == pytest.approx(
        (bottom - surface) / scale, rel=1e-3, abs=0.05
    )
    assert float(frame.attrib["width"]) >= 6
    if float(frame.attrib["width"]) > 6:
        assert measured.mm(frame, "width") == pytest.approx(
            float(panel.attrib["width"]) / scale, rel=1e-3, abs=0.05
        )
    left, right = float(panel.attrib["x"]), float(panel.attrib["x"]) + float(panel.attrib["width"])
    for planned, _ in of_one(words, name):
        for opening in measured.all("rect", "near-opening", measured.near(planned)):
            x, wide = float(opening.attrib["x"]), float(opening.attrib["width"])
            assert left - NEAR <= x
            assert x + wide <= right + NEAR
            whole = left + NEAR < x and x + wide < right - NEAR
            width = setting(planned, *WIDTHS[planned.operation.opening])
            assert wide / scale == pytest.approx(width, abs=0.01) or not whole
            deep = min(planned.settings.number("depth"), (bottom - surface) / scale)
            assert float(opening.attrib["height"]) / scale == pytest.approx(deep, abs=0.01)


COUNTED = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"]


@pytest.mark.parametrize(
    ("name", "close"),
    [
        # Slits of 2 mm beside a channel 30 cm down: 380 ÷ 322.5 mm = 1.2 units to a millimetre.
        ("withy-hollow: section-2", True),
        ("withy-hollow: section-2-scarifying-1", False),
        ("withy-hollow: section-3-drain-trenching-1", True),  # a pipe, three metres from the next
        ("marlpit-common: section-1", False),  # holes of 13 mm, 50 mm deep
    ],
)
def test_a_close_up_is_drawn_only_of_what_cannot_be_seen(name: str, close: bool) -> None:
    assert (name in CLOSE) == close
    assert ("Close-up" in drawn()[name][1].description) == close


@pytest.mark.parametrize("name", [name for name in drawn() if name.endswith("-phone")])
def test_letters_are_large_enough_on_a_telephone(name: str) -> None:
    """Course page at 375 px: main 2 × 16, a folded part 2 × 17, a drawing 2 × 8: 293 are left."""
    drawing = drawn()[name][1]
    shrunk = min(1.0, (375 - 2 * 16 - 2 * 17 - 2 * 8) / drawing.width)
    assert min(text.size for text in texts_in(drawing.svg)) * shrunk >= 12


def test_numbers_on_a_telephone_have_a_key() -> None:
    """Each number stands at its opening and once more before its name."""
    said = [text.text for text in texts_in(drawn()["withy-hollow: section-2-phone"][1].svg)]
    names = ("Sand", "Thatch", "Scarifying", "Hollow", "Deep solid", "Mole", "Drain")
    for number, name in enumerate(names, 1):
        keyed = {after for one, after in itertools.pairwise(said) if one == str(number)}
        assert said.count(str(number)) >= 2
        assert any(text.startswith(name) for text in keyed), keyed
