"""How far each work reaches below the thatch that was measured."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Green
from notices.programme.thatch import ThroughThatch

BELOW = Quantity(
    "depth below the thatch",
    "mm",
    "depth of the holes or slits − depth of the thatch; usual are 10 to 15 mm",
    ("definition", "common_practice"),
)


def figures_of_thatch(
    found: Iterable[ThroughThatch], greens: Mapping[str, Green]
) -> Iterator[Figure]:
    """Yield it for each work on each green whose thatch is known."""
    for each in found:
        removes = each.work.operation.removes_core
        yield BELOW.of(
            each.work.id,
            each.below_mm,
            {
                "depth_mm": each.work.settings.number("depth"),
                "thatch_mm": each.thatch_mm,
                "measured": each.measurement.date.isoformat(),
                "material": "removed" if removes else "only opened",
            },
            green=greens[each.green],
            default_used=each.work.settings.rests_on_default("depth"),
        )
