"""Close-ups of the grass and of laid turf: as high and as deep as the plan says."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from notices.drawings.in_the_grass import in_the_grass
from notices.drawings.model import Drawing
from notices.drawings.sizes import PAGE, PHONE
from notices.operations import CATALOGUE, Opening
from notices.wording.words import Words
from tests.documents.building import ISSUED
from tests.drawings.hard_plans import DAY, at_once, drawn
from tests.drawings.metrics import SVG, texts_in
from tests.wording.small_plans import programme, work

SIZES = pytest.mark.parametrize("sizes", [PAGE, PHONE], ids=["page", "phone"])


class Measured:
    """A close-up, read back from its SVG and turned into millimetres."""

    def __init__(self, drawing: Drawing) -> None:
        self.root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
        self.scale = float(self.root.attrib["data-scale"])
        self.surface = float(self.all("rect", "panel")[0].attrib["y"])

    def all(self, tag: str, name: str) -> list[ET.Element]:
        return [each for each in self.root.iter(f"{SVG}{tag}") if each.get("class") == name]

    def heights_of_grass(self) -> list[float]:
        """How high the blades reach before and after the work, from the strokes themselves."""
        found = []
        for grass in self.all("path", "grass"):
            feet, reaches = zip(
                *(
                    (float(foot), float(up))
                    for foot, up in re.findall(r"M\S+ (\S+?)l\S+ (\S+?)(?=M|$)", grass.attrib["d"])
                ),
                strict=True,
            )
            assert set(feet) == {round(self.surface, 1)}
            found.append(-min(reaches) / self.scale)
        return found

    def sand(self) -> list[float]:
        layers = self.all("rect", "sand-layer")
        for layer in layers:
            low = float(layer.attrib["y"]) + float(layer.attrib["height"])
            assert low == pytest.approx(self.surface, abs=0.002)
        return [float(layer.attrib["height"]) / self.scale for layer in layers]


def close_up(planned: dict[str, object]) -> tuple[Words, Drawing | None]:
    words = Words(programme(at_once(planned), ISSUED))
    (only,) = words.programme.works
    return words, in_the_grass(words, only)


@SIZES
def test_sand_is_as_deep_as_what_lies_on_the_surface(sizes: object) -> None:
    """0.7 kg/m² ÷ 1.55 t/m³ = 0.45 mm; the grass stays at 4.2 mm."""
    data = at_once(
        work("top dressing", DAY, settings={"rate": "0.7 kg/m2"}), mowing_height="4.2 mm"
    )
    words = Words(programme(data | {"sand": {"density": "1.55 t/m3"}}, ISSUED))
    drawing = in_the_grass(words, words.programme.works[0], sizes=sizes)  # type: ignore[arg-type]
    assert drawing is not None
    measured = Measured(drawing)
    assert measured.sand() == pytest.approx([0.7 / 1.55], abs=0.001)
    # Strokes are written to a tenth of a unit.
    assert measured.heights_of_grass() == pytest.approx([4.2, 4.2], abs=0.06 / measured.scale)
    assert "sand 0.5 mm deep, grass 4.2 mm high" in drawing.description


def test_sand_that_falls_into_holes_does_not_lie_in_the_grass() -> None:
    """Cores of 13 mm, 75 mm deep, 50 mm apart take π × 13² ÷ 4 × 75 ÷ 50² = 4 mm of sand."""
    data = at_once(
        work("hollow tining", DAY), work("top dressing", DAY, settings={"rate": "5 kg/m2"})
    )
    words = Words(programme(data, ISSUED))
    assert in_the_grass(words, words.programme.works[1]) is None


@pytest.mark.parametrize("operation", ["raising the height of cut", "clean-up cut"])
def test_grass_is_as_high_as_it_is_mown(operation: str) -> None:
    _, drawing = close_up(work(operation, DAY, settings={"from": "4 mm", "to": "6.5 mm"}))
    assert drawing is not None
    measured = Measured(drawing)
    assert measured.heights_of_grass() == pytest.approx([4, 6.5], abs=0.06 / measured.scale)
    assert measured.sand() == []
    assert "grass 6.5 mm high in place of 4 mm" in drawing.description


@pytest.mark.parametrize(
    "operation",
    [
        name
        for name, entry in CATALOGUE.items()
        if entry.opening is Opening.NONE and name != "raising the height of cut"
    ],
)
def test_where_nothing_changes_nothing_is_drawn(operation: str) -> None:
    """A clean-up cut keeps the height, from 5 mm to 5 mm, where the plan says no more."""
    assert close_up(work(operation, DAY))[1] is None


IN_GRASS = [name for name, (_, drawing) in drawn().items() if 'class="grass"' in drawing.svg]


@pytest.mark.parametrize("name", IN_GRASS)
def test_the_ruler_measures_up_and_down_from_the_surface(name: str) -> None:
    drawing = drawn()[name][1]
    measured = Measured(drawing)
    imperial = drawn()[name][0].programme.club.units == "imperial"
    said = [text for text in texts_in(drawing.svg) if text.box.right < 34]
    unit = next(text.text for text in texts_in(drawing.svg) if text.text in IN_MM)
    assert (unit == "inches") == imperial
    marks = {
        text.box.bottom: value for text in said if (value := in_figures(text.text)) is not None
    }
    (zero,) = (y for y, value in marks.items() if value == 0)
    assert len(marks) >= 2
    for y, value in marks.items():
        assert abs(y - zero) / measured.scale == pytest.approx(value * IN_MM[unit], abs=0.01)


IN_MM = {"mm": 1.0, "cm": 10.0, "inches": 25.4}


def in_figures(text: str) -> float | None:
    text = {"½": "1/2", "¼": "1/4", "¾": "3/4"}.get(text, text)
    match = re.fullmatch(r"(\d+(?:\.\d+)?)(?:/(\d+))?", text)
    return float(match[1]) / float(match[2] or 1) if match else None


@pytest.mark.parametrize("name", [name for name in drawn() if "turfing" in name])
def test_new_turf_is_as_thick_as_is_usual_and_says_so(name: str) -> None:
    drawing = drawn()[name][1]
    measured = Measured(drawing)
    pieces = measured.all("rect", "turf")
    assert len(pieces) == 2
    left, right = pieces
    assert float(left.attrib["x"]) + float(left.attrib["width"]) == pytest.approx(
        float(right.attrib["x"]), abs=0.002
    )
    for piece in pieces:
        assert float(piece.attrib["y"]) == measured.surface
        assert float(piece.attrib["height"]) / measured.scale == pytest.approx(30, abs=0.01)
    # 30 mm ÷ 25.4 = 1.18 inches, to an eighth 1 1/8.
    imperial = drawn()[name][0].programme.club.units == "imperial"
    thick = "typically 1 1/8 inches thick" if imperial else "typically 30 mm thick"
    assert thick in drawing.description
