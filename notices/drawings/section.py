"""A section through a green to scale, before and after the work.

One work alone fills its picture and carries its measures; several stand together, with labels at
the side and the way of the water. Each picture has one scale, the same across and down, and says
it on its root: ``data-scale`` is units of the drawing to a millimetre. The blades of grass and what
lies below a broken edge are not to scale.
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
        How the programme is put into words.
    works
        One work, drawn as large as it fits and with its measures; or several, drawn together.
    name
        Name of the drawing, without what its size adds.
    sizes
        Where it is to be seen: on a telephone it is laid out anew, with letters as large.

    Returns
    -------
    Drawing or None
        None where nothing of the works opens the ground.
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
