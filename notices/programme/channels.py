"""Deep holes that come after mole channels: where the two may meet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from notices.agronomy import moles
from notices.operations import Opening
from notices.programme.model import Work
from notices.programme.sand import hole_diameter_mm

DEEP_MM = 150.0
"""Holes of common coring end above it, and mole channels lie below it (common practice)."""


@dataclass(frozen=True, slots=True)
class HolesOverChannels:
    """Deep holes over channels that were drawn before them on the same greens."""

    channels: Work
    holes: Work
    greens: tuple[str, ...]

    @property
    def percent(self) -> float:
        """Share of the holes on these greens that break into a channel, on average [%]."""
        ploughed = self.channels.settings
        return moles.holes_meeting_channels_percent(
            hole_diameter_mm(self.holes),
            self.holes.settings.number("depth"),
            ploughed.number("channel_diameter"),
            ploughed.number("depth"),
            ploughed.number("spacing") / 1000,
        )

    @property
    def channel_top_mm(self) -> float:
        """Depth of the top of the channels [mm]."""
        ploughed = self.channels.settings
        return moles.channel_top_mm(ploughed.number("depth"), ploughed.number("channel_diameter"))


def holes_over_channels(works: Sequence[Work]) -> tuple[HolesOverChannels, ...]:
    """Return, for each work with deep holes, the last mole ploughing before it on its greens."""
    found = []
    for holes in works:
        if holes.operation.opening is not Opening.HOLES or holes.settings.number("depth") < DEEP_MM:
            continue
        by_channels: dict[str, list[str]] = {}
        for green in holes.greens:
            before = [
                work
                for work in works
                if work.operation.opening is Opening.CHANNELS
                and work.days_on(green)
                and _done(work, green) < _done(holes, green)
            ]
            if before:
                last = max(before, key=lambda work: _done(work, green))
                by_channels.setdefault(last.id, []).append(green)
        found += [
            HolesOverChannels(work, holes, tuple(by_channels[work.id]))
            for work in works
            if work.id in by_channels
        ]
    return tuple(found)


def _done(work: Work, green: str) -> tuple[object, ...]:
    return (work.last_day_on(green), work.operation.order, work.plan_index)
