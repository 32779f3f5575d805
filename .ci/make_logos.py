"""Draw the logos of an invented club and of the worst plan, which no club has.

Run by hand, to change them:

    python .ci/make_logos.py
"""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from pathlib import Path

import resvg_py
from PIL import Image

from notices.drawings import svg
from notices.drawings.svg import Point, Rect

ROOT = Path(__file__).parents[1]

GREEN, WATER = "#2d4a35", "#6f8f86"
SIDE = 240.0
"""Of the logo, in units of its drawing."""


def leaf(foot: Point, angle: float, length: float) -> str:
    """Return the path of a narrow leaf; 0 points up and more turns it to the right."""
    x, y = foot
    way = math.radians(angle)
    across, along = (math.cos(way), math.sin(way)), (math.sin(way), -math.cos(way))

    def at(side: float, up: float) -> str:
        across_by, along_by = side * length, up * length
        return (
            f"{svg.number(x + across_by * across[0] + along_by * along[0])} "
            f"{svg.number(y + across_by * across[1] + along_by * along[1])}"
        )

    return f"M{at(0, 0)}Q{at(0.2, 0.5)} {at(0, 1)}Q{at(-0.2, 0.5)} {at(0, 0)}Z"


def withy() -> Iterator[str]:
    """Yield three rods of willow that stand in a hollow, above water."""
    for lean, height in ((-24.0, 150.0), (0.0, 185.0), (24.0, 150.0)):
        way = math.radians(lean)
        foot = (SIDE / 2 + 0.5 * lean, 204.0)
        top = (foot[0] + height * math.sin(way), foot[1] - height * math.cos(way))
        yield svg.path(
            svg.polyline([foot, top]), stroke=GREEN, stroke_width=6.0, stroke_linecap="round"
        )
        for step in (0.34, 0.52, 0.7, 0.88):
            on = (
                foot[0] + step * (top[0] - foot[0]),
                foot[1] + step * (top[1] - foot[1]),
            )
            for side in (-42.0, 42.0):
                yield svg.path(leaf(on, lean + side, 46 * (1.25 - step)), fill=GREEN)
    for depth, half in ((0.0, 104.0), (26.0, 58.0)):
        middle, y = SIDE / 2, 186.0 + depth
        yield svg.path(
            f"M{svg.number(middle - half)} {svg.number(y)}"
            f"Q{svg.number(middle)} {svg.number(y + 0.45 * half)} "
            f"{svg.number(middle + half)} {svg.number(y)}",
            fill="none",
            stroke=GREEN if not depth else WATER,
            stroke_width=9.0,
            stroke_linecap="round",
        )


def band() -> Iterator[str]:
    """Yield a band sixteen times as wide as high, pale at one end, clear between its marks."""
    for number in range(32):
        shade = 40 + 6 * number
        yield svg.rect(
            Rect(50.0 * number, 0, 30, 100), fill=f"rgb({shade},{shade},{min(255, shade + 20)})"
        )


def draw(target: Path, size: tuple[float, float], shapes: Iterator[str], width: int) -> None:
    """Draw shapes on clear ground into a PNG."""
    source = svg.document(*size, "Logo", "".join(shapes), ground=None)
    with Image.open(
        io.BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=source, width=width)))
    ) as picture:
        # A palette with clear entries: half the bytes of four channels.
        picture.quantize(32, method=Image.Quantize.FASTOCTREE).save(target, optimize=True)
    print(target.name, target.stat().st_size, "bytes")


def main() -> None:
    """Draw both."""
    draw(ROOT / "examples/withy-hollow/logo.png", (SIDE, SIDE), withy(), 300)
    draw(ROOT / "tests/hostile/logo.png", (1600.0, 100.0), band(), 1600)


if __name__ == "__main__":
    main()
