"""Where each text of a drawing stands, by the metrics of our own fonts, and what lies below it.

``assert_well_set(svg)`` is what a test of a drawing calls: every text is inside the picture, inside
its own box where it names one, on no other text, and of enough contrast with what is drawn below.

A ``<text>`` names a box with ``data-box="x y width height"``, in the coordinates of its own x and
y. Understood are x and y, font-size, font-weight, font-style, font-family, text-anchor, fill and
transform (translate, scale, rotate, matrix), each its own or taken over from a group around it, and
``<tspan>`` with x, y and dy. Whatever else would move a text is refused: a test that overlooked
it would prove nothing.
"""

from __future__ import annotations

import io
import itertools
import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

import resvg_py
from fontTools.ttLib import TTFont
from PIL import Image

from notices.paths import templates_folder

SVG = "{http://www.w3.org/2000/svg}"

FACES = {
    ("Notices Sans", "normal", "normal"): "NoticesSans-Regular",
    ("Notices Sans", "bold", "normal"): "NoticesSans-Bold",
    ("Notices Sans", "normal", "italic"): "NoticesSans-Italic",
    ("Notices Serif", "bold", "normal"): "NoticesSerif-Bold",
}

INHERITED = ("font-size", "font-weight", "font-style", "font-family", "text-anchor", "fill")
UNDERSTOOD = frozenset({"x", "y", "dy", "transform", "id", "class", *INHERITED})
"""Attributes that a text may carry, beside data-*."""

LEAST_CONTRAST = 4.5
"""WCAG 2.2, success criterion 1.4.3, level AA."""

Matrix = tuple[float, float, float, float, float, float]
"""As SVG writes it: x' = a·x + c·y + e, y' = b·x + d·y + f."""

UNMOVED: Matrix = (1, 0, 0, 1, 0, 0)


@dataclass(frozen=True)
class Box:
    """An upright box in the units of the view box."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box) -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def within(self, other: Box, slack: float = 0.01) -> bool:
        return (
            self.left >= other.left - slack
            and self.top >= other.top - slack
            and self.right <= other.right + slack
            and self.bottom <= other.bottom + slack
        )


@dataclass(frozen=True)
class Placed:
    """One run of letters in one line."""

    text: str
    box: Box
    own_box: Box | None
    fill: str
    size: float
    """Height of its em in the units of the view box."""


@dataclass(frozen=True)
class Face:
    """What a font says of its letters, in parts of an em."""

    advances: Mapping[int, float]
    above: float
    below: float

    def width(self, text: str) -> float:
        """Width without kerning; a sign that the font lacks counts as a whole em."""
        return sum(self.advances.get(ord(sign), 1.0) for sign in text)


@cache
def face(family: str = "Notices Sans", weight: str = "normal", style: str = "normal") -> Face:
    name = FACES[
        (family, "normal" if weight == "400" else "bold" if weight == "700" else weight, style)
    ]
    with TTFont(templates_folder() / "fonts" / f"{name}.ttf") as font:
        em = font["head"].unitsPerEm
        glyphs, widths, shapes = font.getBestCmap(), font["hmtx"], font["glyf"]
        return Face(
            {sign: widths[glyph][0] / em for sign, glyph in glyphs.items()},
            shapes[glyphs[ord("l")]].yMax / em,
            -shapes[glyphs[ord("p")]].yMin / em,
        )


def texts_in(svg: str) -> tuple[Placed, ...]:
    """Return every line of letters with the box that it fills."""
    root = ET.fromstring(svg)  # noqa: S314, it was drawn here
    return tuple(_walk(root, UNMOVED, {"font-size": "16", "fill": "#000000"}))


def view_box(svg: str) -> Box:
    left, top, width, height = (
        float(part)
        for part in ET.fromstring(svg).attrib["viewBox"].split()  # noqa: S314
    )
    return Box(left, top, left + width, top + height)


def faults(svg: str) -> list[str]:
    """Say what is wrong with the texts of a drawing, as far as their places go."""
    placed, picture = texts_in(svg), view_box(svg)
    found = [f"“{t.text}” leaves the picture" for t in placed if not t.box.within(picture)]
    found += [
        f"“{t.text}” leaves its box: {t.box} is not within {t.own_box}"
        for t in placed
        if t.own_box is not None and not t.box.within(t.own_box)
    ]
    found += [
        f"“{one.text}” and “{other.text}” overlap"
        for one, other in itertools.combinations(placed, 2)
        if one.box.overlaps(other.box)
    ]
    return found


def faint(svg: str, *, pixels_per_unit: float = 2.0) -> list[str]:
    """Say which texts are too faint for what is drawn below them, lines and textures included.

    The drawing is painted without its letters, and every pixel below a text is looked at.
    """
    placed = texts_in(svg)
    bare = re.sub(r"<text\b.*?</text>", "", svg, flags=re.DOTALL)
    picture, box = _painted(bare, pixels_per_unit), view_box(svg)
    found = []
    for text in placed:
        crop = picture.crop(
            (
                max(0, math.floor((text.box.left - box.left) * pixels_per_unit)),
                max(0, math.floor((text.box.top - box.top) * pixels_per_unit)),
                min(picture.width, math.ceil((text.box.right - box.left) * pixels_per_unit)),
                min(picture.height, math.ceil((text.box.bottom - box.top) * pixels_per_unit)),
            )
        )
        colours = crop.getcolors(crop.width * crop.height) or []
        worst = min((contrast(text.fill, _hex(colour)) for _, colour in colours), default=21.0)
        if worst < LEAST_CONTRAST:
            found.append(f"“{text.text}” has a contrast of only {worst:.1f} with what lies below")
    return found


def assert_well_set(svg: str) -> None:
    """Fail with all that is wrong with the texts of a drawing."""
    pixels = 600 / (view_box(svg).right - view_box(svg).left)
    wrong = faults(svg) + faint(svg, pixels_per_unit=pixels)
    assert not wrong, "\n".join(wrong)
    assert texts_in(svg), "the drawing has no text at all"


def contrast(one: str, other: str) -> float:
    """Contrast of two colours (WCAG 2.2)."""
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    assert re.fullmatch(r"#[0-9a-f]{6}", colour), f"{colour} is not written as #rrggbb"
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _hex(colour: Any) -> str:
    return "#{:02x}{:02x}{:02x}".format(*colour)


def _painted(svg: str, pixels_per_unit: float) -> Image.Image:
    box = view_box(svg)
    drawn = resvg_py.svg_to_bytes(
        svg_string=svg,
        width=max(1, round((box.right - box.left) * pixels_per_unit)),
        dpi=96,  # without it a size in millimetres is none
        background="#ffffff",
        skip_system_fonts=True,
    )
    with Image.open(io.BytesIO(drawn)) as picture:
        return picture.convert("RGB")


def _walk(element: ET.Element, moved: Matrix, style: Mapping[str, str]) -> Iterator[Placed]:
    tag = element.tag.removeprefix(SVG)
    if tag in ("defs", "title", "desc", "pattern", "clipPath"):
        return
    style = {**style, **{k: element.attrib[k] for k in INHERITED if k in element.attrib}}
    moved = _times(moved, _matrix(element.get("transform", "")))
    if tag == "text":
        yield from _lines(element, moved, style)
        return
    assert tag != "svg" or moved == UNMOVED, "a drawing inside a drawing"
    for child in element:
        yield from _walk(child, moved, style)


def _lines(element: ET.Element, moved: Matrix, style: Mapping[str, str]) -> Iterator[Placed]:
    _only_understood(element)
    own = element.get("data-box")
    own_box = None
    if own:
        left, top, width, height = (float(part) for part in own.split())
        own_box = _moved(Box(left, top, left + width, top + height), moved)
    x, y = float(element.get("x", "0")), float(element.get("y", "0"))
    if (element.text or "").strip():
        assert len(element) == 0, "letters before a tspan: their width would have to be added up"
        yield _placed(element.text or "", x, y, moved, style, own_box)
        return
    for line in element:
        assert line.tag == f"{SVG}tspan"
        assert "x" in line.attrib, "a tspan without an x of its own"
        assert not (line.tail or "").strip()
        _only_understood(line)
        y = float(line.get("y", y)) + float(line.get("dy", "0"))
        spoken = {**style, **{k: line.attrib[k] for k in INHERITED if k in line.attrib}}
        yield _placed(line.text or "", float(line.attrib["x"]), y, moved, spoken, own_box)


def _only_understood(element: ET.Element) -> None:
    other = {name for name in element.attrib if not name.startswith("data-")} - UNDERSTOOD
    assert not other, f"the metrics of a text with {', '.join(sorted(other))} are not known here"


def _placed(
    text: str, x: float, y: float, moved: Matrix, style: Mapping[str, str], own: Box | None
) -> Placed:
    size = float(style["font-size"])
    letters = face(
        style.get("font-family", "none given"),
        style.get("font-weight", "normal"),
        style.get("font-style", "normal"),
    )
    wide = letters.width(text) * size
    anchor = style.get("text-anchor", "start")
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
    upright = Box(left, y - letters.above * size, left + wide, y + letters.below * size)
    grown = math.hypot(moved[0], moved[1])
    return Placed(text, _moved(upright, moved), own, style["fill"], size * grown)


def _moved(box: Box, moved: Matrix) -> Box:
    """Return the upright box around a box that may have been turned."""
    a, b, c, d, e, f = moved
    corners = itertools.product((box.left, box.right), (box.top, box.bottom))
    points = [(a * x + c * y + e, b * x + d * y + f) for x, y in corners]
    across, down = zip(*points, strict=True)
    return Box(min(across), min(down), max(across), max(down))


def _times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    k, m, n, o, p, q = other
    return (
        a * k + c * m,
        b * k + d * m,
        a * n + c * o,
        b * n + d * o,
        a * p + c * q + e,
        b * p + d * q + f,
    )


def _matrix(transform: str) -> Matrix:
    found = UNMOVED
    for name, inside in re.findall(r"(\w+)\(([^)]*)\)", transform):
        numbers = [float(part) for part in re.split(r"[\s,]+", inside.strip())]
        found = _times(found, _step(name, numbers))
    return found


def _step(name: str, numbers: list[float]) -> Matrix:
    match name, numbers:
        case "matrix", [a, b, c, d, e, f]:
            return (a, b, c, d, e, f)
        case "translate", [x, *rest]:
            return (1, 0, 0, 1, x, rest[0] if rest else 0)
        case "scale", [x, *rest]:
            return (x, 0, 0, rest[0] if rest else x, 0, 0)
        case "rotate", [angle, *centre]:
            turn = math.radians(angle)
            turned = (math.cos(turn), math.sin(turn), -math.sin(turn), math.cos(turn), 0.0, 0.0)
            if not centre:
                return turned
            x, y = centre
            return _times(_times((1, 0, 0, 1, x, y), turned), (1, 0, 0, 1, -x, -y))
        case _:
            raise AssertionError(f"the transform {name} is not known here")
