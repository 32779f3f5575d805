"""Make the pictures of the README: the first page of a built notice, as a PNG.

Run by hand when the notices look different:

    python .ci/make_pictures.py PACK examples/withy-hollow
"""

from __future__ import annotations

import sys
from pathlib import Path

import pypdfium2 as pdfium

WIDTH_PX = 720
COLOURS = 32


def main() -> None:
    """Draw the board notice of a pack into a folder."""
    pack, folder = (Path(argument) for argument in sys.argv[1:3])
    document = pdfium.PdfDocument(pack / "board-notice-a4.pdf")
    page = document[0]
    image = page.render(scale=WIDTH_PX / page.get_width()).to_pil()
    target = folder / "board-notice.png"
    image.quantize(COLOURS).save(target, optimize=True)
    print(target, target.stat().st_size, "bytes")


if __name__ == "__main__":
    main()
