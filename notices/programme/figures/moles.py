"""Mole channels: which deep holes meet one, and how long channels last elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from notices.agronomy import moles
from notices.operations import Opening
from notices.programme.channels import holes_over_channels
from notices.programme.figures.quantity import Quantity, in_mm
from notices.programme.model import Figure, Input, Work
from notices.programme.sand import diameter_setting, hole_diameter_mm

MEET = Quantity(
    "deep holes that meet a channel",
    "percent",
    "100 × ({hole_diameter_mm} + width of the channel where the hole ends) ÷ {channel_spacing_mm}; "
    "none where the hole ends above the channel's top, which is "
    "{channel_depth_mm} − {channel_diameter_mm} ÷ 2",
    ("definition",),
)
LIFE = {
    end: Quantity(
        f"life of channels on farmland, {end}",
        "years",
        "as published for farmland, over 10 years in a stable clay of 45 %; not promised on a green",
        ("ahdb_moles",),
        "year",
    )
    for end in ("low", "high")
}


def figures_of_channels(works: Sequence[Work]) -> Iterator[Figure]:
    """Yield what is known of mole channels and of the deep holes that come after them."""
    for work in works:
        if work.operation.opening is Opening.CHANNELS:
            for end, years in zip(("low", "high"), moles.LIFE_ON_FARMLAND_YEARS, strict=True):
                yield LIFE[end].of(
                    work.id, float(years), (Input("years", years),), default_used=True
                )
    seen: set[str] = set()
    for meeting in holes_over_channels(works):
        holes, ploughed = meeting.holes.settings, meeting.channels.settings
        if meeting.holes.id in seen:
            continue  # a second set of channels below the same holes: the first is told
        seen.add(meeting.holes.id)
        yield MEET.of(
            meeting.holes.id,
            meeting.percent,
            (
                in_mm("hole diameter", hole_diameter_mm(meeting.holes)),
                in_mm("hole depth", holes.number("depth")),
                in_mm("channel diameter", ploughed.number("channel_diameter")),
                in_mm("channel depth", ploughed.number("depth")),
                in_mm("channel top", meeting.channel_top_mm),
                in_mm("channel spacing", ploughed.number("spacing")),
                Input("channels", meeting.channels.id),
                Input("greens", len(meeting.greens)),
            ),
            default_used=holes.rests_on_default(diameter_setting(meeting.holes), "depth")
            or ploughed.rests_on_default("channel_diameter", "depth", "spacing"),
        )
