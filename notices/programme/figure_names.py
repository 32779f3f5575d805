"""A figure found by its identity, or by as much of it as no other figure has."""

from __future__ import annotations

import difflib
import re
from collections.abc import Sequence

from notices.errors import UnknownFigure
from notices.programme.model import Figure
from notices.programme.slugs import ALL

MOST_NEAR = 6
"""So many other figures are offered where a name fits none or several."""


def find_figure(figures: Sequence[Figure], name: str) -> Figure:
    """Return the one figure that a name means.

    Raises
    ------
    UnknownFigure
        Where no figure has it, or several do; with those that come near.
    """
    asked = name.strip().casefold()
    words = re.findall(r"[a-z0-9]+", asked)
    for fits in (
        [figure for figure in figures if figure.id == asked],
        [figure for figure in figures if asked and figure.id.endswith(f"/{asked.lstrip('/')}")],
        [figure for figure in figures if words and _has(figure, words)],
    ):
        if len(fits) == 1:
            return fits[0]
        if fits:
            raise UnknownFigure(f"{len(fits)} figures have this name:\n{_listed(fits)}")
    # One green stands for all of them: nine like figures would help nobody.
    of_a_kind = {figure.id.rpartition("/")[0]: figure.id for figure in reversed(figures)}
    near = difflib.get_close_matches(asked, of_a_kind.values(), n=MOST_NEAR, cutoff=0)
    by_id = {figure.id: figure for figure in figures}
    raise UnknownFigure(
        f'there is no figure "{name}". Near it are:\n{_listed([by_id[each] for each in near])}'
    )


def _has(figure: Figure, words: Sequence[str]) -> bool:
    own = set(re.findall(r"[a-z0-9]+", figure.id))
    return own.issuperset(words)


def _listed(figures: Sequence[Figure]) -> str:
    # Figures over all greens first: they are what is asked for more often than not.
    first = sorted(figures, key=lambda figure: figure.green != ALL)[:MOST_NEAR]
    return "\n".join(f"  {figure.id}" for figure in first) + (
        f"\n  and {len(figures) - MOST_NEAR} more" if len(figures) > MOST_NEAR else ""
    )
