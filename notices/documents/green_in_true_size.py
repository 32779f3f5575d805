"""A square of green on paper in true size, as members see it who walk onto the green after the work."""

from __future__ import annotations

from notices.documents import phrases
from notices.documents.model import Document, Entry, Fact, Fit, Section, Sheet
from notices.drawings.surface import as_it_heals, signs, surface
from notices.programme.model import Programme
from notices.programme.openings import StageOfHealing
from notices.wording.blocks import Paragraph, Picture
from notices.wording.period import PeriodWords
from notices.wording.words import Words

_BESIDE = 400.0
"""Width of the column beside the square on A4 in landscape [CSS pixels]."""
BODY, NOTE = 14.0, 12.6
"""Size of the letters of the sheet, and of a caption: 10.5 and 9.45 points."""
_LATER = 1 / 3
"""Size of the squares that show the green later: two of them fit beside the large one."""


SMALLER = {
    1: "This square is a third of that size.",
    2: "These two squares are a third of that size.",
}
"""The sentence above the smaller squares, by their number."""

FITS = (
    Fit(),
    Fit("close", room=0.7),
    Fit("closest", room=0.65),
    Fit("closest alone", frozenset({"smaller", "smooth", "healed"}), room=0.65),
)
"""Ways to set the sheet: where many kinds of work stand beside the square, it is alone."""


def greens_in_true_size(programme: Programme) -> Entry | None:
    """Return the sheet with what to do with it; None where nothing is to be seen on the greens."""
    document = green_in_true_size(programme)
    if document is None:
        return None
    language = Words(programme).language
    size = language.with_percent("100 %")
    return Entry(
        "The green in true size",
        "Members at the counter",
        f"Print one on {language.terms.paper} at {size}, not fitted to the page. "
        "Lay it out at the counter with a golf ball on it: people see how large the holes are.",
        (Sheet(document, "true-size", FITS),),
        again="No need to print it again.",
    )


def green_in_true_size(programme: Programme) -> Document | None:
    """Draw the green of the main period just after the work, and smaller as it heals."""
    words = Words(programme)
    main = words.main_period()
    if main is None:
        return None
    after = surface(words, main, StageOfHealing.AFTER, "square", keyed=False, letters=NOTE)
    if after is None:
        return None
    told = PeriodWords(words, main)
    beside = signs(words, main, _BESIDE, letters=BODY)
    heals = as_it_heals(words, main, "", _LATER, keyed=False)
    well = list(phrases.good_again(told))[-1]
    sections = [
        Section("square", (Picture(after.name),)),
        Section("when", (Paragraph.of(f"{told.name()}: {told.when()}."),)),
        Section("signs", (Picture("signs"),), "Just after the work"),
        Section("well", (Paragraph.of(well.text),), "Putting well"),
        Section("smaller", (Paragraph.of(SMALLER[len(heals)]),) if heals else ()),
        Section("smooth", (Picture("smooth"),)),
        Section("healed", (Picture("healed"),)),
    ]
    drawings = [each for each in (after, beside, *heals) if each is not None]
    shown = {each.name for each in drawings}
    return Document.of(
        programme,
        name="green-in-true-size",
        title="The green in true size",
        summary="A square of green just after the work, in true size, and as it heals.",
        sections=(phrases.as_drawn(section, shown) for section in sections),
        facts=(
            Fact("when", told.when(), main.days, main.greens),
            Fact("good again", well.text),
        ),
        drawings=drawings,
    )
