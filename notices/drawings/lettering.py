"""Widths of letters, so that words in a drawing stay in their place.

The widths are those of our own fonts; a test compares them.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from functools import lru_cache
from html import unescape

ABOVE, BELOW = 0.75, 0.22
"""Reach of letters above and below their baseline, as shares of their size."""

UNKNOWN = 1000
"""Width of a character that is not in the tables."""

_SIGNS = (
    " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"
    "\xa0£€×÷°²³·½¼¾ßæÆøØðþıł–—‘’“”…−"
)
"""Characters in the tables; letters with accents need no entry, being as wide as those without."""

# Widths in thousandths of the size, character by character.
_REGULAR = (
    "200 289 426 497 497 824 609 249 303 303 418 497 249 311 249 350 497 497 497 497 497 497 "
    "497 497 497 497 249 249 497 497 497 425 847 543 588 571 615 527 494 617 652 263 479 579 "
    "486 727 647 664 566 664 569 534 536 645 515 786 513 476 539 303 350 303 497 500 542 504 "
    "553 456 555 496 292 504 544 246 247 495 255 829 547 542 555 555 347 419 338 544 467 719 "
    "446 467 425 303 241 303 497 200 497 497 497 497 331 367 367 249 808 781 796 576 778 822 "
    "542 664 544 555 247 298 480 800 249 249 426 426 948 497 "
)
_BOLD = (
    "200 340 537 528 528 857 667 300 344 344 457 528 300 332 300 339 528 528 528 528 528 528 "
    "528 528 528 528 300 300 528 528 528 463 902 573 605 582 635 548 524 638 674 301 509 614 "
    "518 762 665 684 596 684 613 556 556 665 556 813 567 525 541 344 339 344 528 500 555 527 "
    "573 468 573 518 341 534 571 276 278 548 286 857 572 555 573 573 398 443 383 568 523 776 "
    "514 521 460 344 268 344 528 200 528 528 528 528 365 376 376 300 846 809 818 632 781 845 "
    "555 684 558 573 277 359 480 800 300 300 537 537 978 528 "
)
_WIDTHS = {
    bold: dict(zip(_SIGNS, map(int, widths.split()), strict=True))
    for bold, widths in ((False, _REGULAR), (True, _BOLD))
}


def width_of(text: str, size: float, *, bold: bool = False) -> float:
    """Return the width of a text without kerning, which only makes it narrower."""
    return size / 1000 * _thousandths(text, bold)


@lru_cache(maxsize=1 << 14)
def _thousandths(text: str, bold: bool) -> int:
    widths = _WIDTHS[bold]
    return sum(widths.get(sign) or _bare(sign, widths) for sign in text)


def _bare(sign: str, widths: Mapping[str, int]) -> int:
    return widths.get(unicodedata.normalize("NFD", sign)[0], UNKNOWN)


_TEXT = re.compile(r"<text\b([^>]*)>([^<]*)</text>")
_FONT_SIZE = re.compile(r' font-size="([\d.]+)"')


def held(svg: str) -> str:
    """Return a drawing whose words keep their widths in any font that a screen has.

    A web page carries no fonts, and those of telephones run wider than ours.
    """
    return _TEXT.sub(_held, svg)


def _held(found: re.Match[str]) -> str:
    attributes, words = found.groups()
    size = _FONT_SIZE.search(attributes)
    if size is None or not words:
        return found[0]
    wide = width_of(unescape(words), float(size[1]), bold='font-weight="bold"' in attributes)
    held = f' textLength="{wide:.1f}" lengthAdjust="spacingAndGlyphs"'
    return f"<text{attributes}{held}>{words}</text>"


def unbroken(text: str) -> str:
    """Return the text with a no-break space after each number, before its unit or noun."""
    return re.sub(r"(?<=[\d½¼¾]) (?=\S)", "\N{NO-BREAK SPACE}", text)


def fitted(text: str, room: float, size: float, *, bold: bool = False) -> str:
    """Return the text, cut short with an ellipsis if it is wider than ``room``."""
    if width_of(text, size, bold=bold) <= room:
        return text
    while text and width_of(f"{text}…", size, bold=bold) > room:
        text = text[:-1].rstrip(" ,;:")
    return f"{text}…" if text else ""


def lines_of(
    text: str, room: float, size: float, *, bold: bool = False, most: int | None = None
) -> list[str]:
    """Break a text into lines at its spaces; a word, or a last line, that is too long is cut."""
    lines: list[str] = []
    wide, space = 0, _thousandths(" ", bold)
    for word in text.split(" "):
        long = _thousandths(word, bold)
        if lines and size / 1000 * (wide + space + long) <= room:
            lines[-1] = f"{lines[-1]} {word}"
            wide += space + long
        else:
            lines.append(word)
            wide = long
    if most is not None and len(lines) > most:
        lines = [*lines[: most - 1], " ".join(lines[most - 1 :])]
    return [fitted(line, room, size, bold=bold) for line in lines]
