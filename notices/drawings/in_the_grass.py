"""A close-up of the grass before and after work that opens nothing, with its height and the sand.

The grass is as high as it is mown, the sand as deep as the part that does not fall into holes,
both to scale; ``data-scale`` on the root is units of the drawing to a millimetre.
"""

from __future__ import annotations

from notices.drawings import lettering, textures
from notices.drawings.close_up import layer_of_sand
from notices.drawings.columns import HEAD, RULER, Picture, columns_for, framed, heads
from notices.drawings.ground import Frame, key_of_layers, layer_names, layers
from notices.drawings.labels import DETAIL
from notices.drawings.model import Drawing
from notices.drawings.ruler import ruler
from notices.drawings.sizes import PAGE, Sizes
from notices.drawings.svg import LINE, Rect, lines
from notices.programme.model import Work
from notices.programme.openings import deepest_sand, heights_of_cut
from notices.units import MM_PER_INCH
from notices.wording import below_ground as say
from notices.wording.words import Words

_APART = 14.0
_TALL, _GROUND = 120.0, 60.0
"""Largest height of grass or sand, and height of the ground below it."""
_SHOWN = {
    "metric": (5.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0),
    "imperial": tuple(MM_PER_INCH * part for part in (0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0)),
}
"""Widths of green that a picture may show: round numbers [mm]."""


def in_the_grass(
    words: Words, work: Work, name: str = "grass", sizes: Sizes = PAGE
) -> Drawing | None:
    """Draw the grass before and after a work, enlarged.

    Parameters
    ----------
    words
        Wording of the programme.
    work
        A dressing, or a change of the height of cut.
    name
        Name of the drawing without the suffix of its size.
    sizes
        Size of the drawing.

    Returns
    -------
    Drawing or None
        None if the grass is as high as before and no sand lies in it.
    """
    programme, columns = words.programme, columns_for(sizes)
    before, after = heights_of_cut([work], programme)
    sand = deepest_sand([work], programme)
    film = sand.on_surface if sand and sand.on_surface >= say.LEAST_FILM_MM else 0.0
    if before == after and not film:
        return None
    told = [say.grass(words, before), say.sand(words, film) if film else say.grass(words, after)]
    wide = (columns.width - RULER - _APART - 1) / 2
    highest = max(before, after, film)
    shown = next(mm for mm in _SHOWN[programme.club.units] if highest * wide / mm <= _TALL)
    scale = wide / shown
    rows = [lettering.lines_of(lettering.unbroken(each), wide, DETAIL) for each in told]
    surface = HEAD + max(map(len, rows)) * LINE * DETAIL + highest * scale + 26
    left = Rect(RULER, surface, wide, _GROUND)
    right = Rect(RULER + wide + _APART, surface, wide, _GROUND)
    frame = Frame(left, right, scale)
    parts = [
        heads(frame),
        *(
            lines(row, (panel.x, HEAD + LINE * DETAIL), DETAIL)
            for row, panel in zip(rows, (left, right), strict=True)
        ),
        ruler(RULER - 6, surface, _GROUND, scale, programme.club.units, above=highest * scale),
    ]
    for panel, high, deep in ((left, before, 0.0), (right, after, film)):
        tall = high * scale
        parts += [
            layers(panel, scale, programme.profile, programme.profile.root_zone_mm),
            layer_of_sand(panel, deep * scale),
            textures.mown_grass(Rect(panel.x, surface - tall, wide, tall), (), class_="grass"),
        ]
    parts.append(layer_names(frame, programme.profile, programme.profile.root_zone_mm))
    key = say.in_words_of_grass(words, work, before, after, sand if film else None)
    named, more = key_of_layers(frame, programme.profile, [], (2, surface + _GROUND + 10))
    parts.append(named)
    foot = surface + _GROUND + 24 + more
    said = lettering.lines_of(lettering.unbroken(key), columns.width - 4, DETAIL)
    parts.append(lines(said, (2, foot), DETAIL))
    height = foot + (len(said) - 1) * LINE * DETAIL + 8
    title = f"{say.name_of(words, work)}: close-up of the grass"
    caption = say.caption_of_grass(words, work, shown)
    description = f"{caption} {key} A ruler beside it shows heights and depths."
    picture = Picture("".join(parts), height, scale)
    return framed(picture, columns, name + sizes.suffix, title, description, caption)
