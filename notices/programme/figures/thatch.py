"""How far each work reaches below the thatch that was measured."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Green, Input
from notices.programme.thatch import ThroughThatch

BELOW = Quantity(
    "depth below the thatch",
    "mm",
    "{depth_mm} − {thatch_mm}; usual are 10 to 15 mm",
    ("definition", "common_practice"),
)


def figures_of_thatch(
    found: Iterable[ThroughThatch], greens: Mapping[str, Green]
) -> Iterator[Figure]:
    """Yield it for each work on each green whose thatch is known."""
    for each in found:
        removes, depth = each.work.operation.removes_core, each.work.settings.number("depth")
        yield BELOW.of(
            each.work.id,
            each.below_mm,
            (
                Input("depth_mm", depth, "depth of the holes or slits", "mm"),
                Input("thatch_mm", each.thatch_mm, "depth of the thatch", "mm"),
                Input("measured", each.measurement.date.isoformat()),
                Input("material", "removed" if removes else "only opened"),
            ),
            green=greens[each.green],
            default_used=each.work.settings.rests_on_default("depth"),
        )
