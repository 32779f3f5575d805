"""A section through a green to scale, before and after the work.

One work alone fills its picture and has its dimensions written in it; several works together have
labels at the side and show the way of the water. Each picture has one scale, the same across and
down, and its root states it: ``data-scale`` is units of the drawing to a millimetre. The blades of
grass and everything below a broken edge are not to scale.
"""

from __future__ import annotations

from collections.abc import Sequence

from notices.drawings.columns import columns_for, framed
from notices.drawings.model import Drawing
from notices.drawings.section_of_many import of_many
from notices.drawings.section_of_one import of_one
from notices.drawings.sizes import PAGE, Sizes
from notices.operations import Opening
from notices.programme.model import Work
from notices.programme.openings import cuts
from notices.wording import below_ground as say
from notices.wording.words import Words


def cross_section(
    words: Words, works: Sequence[Work], name: str = "section", sizes: Sizes = PAGE
) -> Drawing | None:
    """Draw a section through a green, before and after works.

    Parameters
    ----------
    words
        Wording of the programme.
    works
        One work, drawn as large as fits and with its dimensions; or several, drawn together.
    name
        Name of the drawing without the suffix of its size.
    sizes
        Size of the drawing: for a telephone it is laid out anew, with letters of the same size.

    Returns
    -------
    Drawing or None
        None if none of the works opens the ground.
    """
    found = cuts(works, words.programme)
    if not found:
        return None
    sanded = any(work.operation.opening is Opening.SAND for work in works)
    columns = columns_for(sizes)
    if len(found) == 1 and not sanded:
        title = f"{say.name_of(words, found[0].work)}: below the green"
        caption = say.caption_of_one(words, found[0].work)
        picture = of_one(words, found[0], columns)
    else:
        title = "Below the green, before and after"
        caption = say.caption(words, found, sanded=sanded)
        picture = of_many(words, works, columns)
    description = f"{say.description(words, found, caption, sanded=sanded)} {picture.said}".rstrip()
    return framed(picture, columns, name + sizes.suffix, title, description, caption)
