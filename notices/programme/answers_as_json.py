"""What single commands answer, as plain JSON types: changes, duties and better dates.

In the manner of ``as_json.py``, which writes what stays with a pack.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from notices.programme.as_json import Json
from notices.programme.duties import Duty
from notices.programme.model import BetterDates, Changes


def changes_as_json(changes: Changes) -> Json:
    """Return changes as plain JSON types."""
    return {
        "changes": [
            {
                "kind": change.kind.value,
                "subject": change.subject.value,
                "id": change.id,
                "name": change.name,
                "moves": [
                    {
                        "greens": list(move.greens),
                        "ordinal": move.ordinal,
                        "before": [day.isoformat() for day in move.before],
                        "after": [day.isoformat() for day in move.after],
                    }
                    for move in change.moves
                ],
                "aspect": (change.aspect.value if change.aspect else change.setting) or None,
                "before": change.before or None,
                "after": change.after or None,
                "greens": list(change.greens),
            }
            for change in changes.changes
        ],
        "stands": list(changes.stands),
    }


def duty_as_json(duty: Duty, today: dt.date) -> Json:
    """Return a duty as plain JSON types, seen from a day."""
    return {
        "id": duty.id,
        "kind": duty.kind.value,
        "first": duty.first.isoformat(),
        "last": duty.last.isoformat(),
        "late": duty.missed_on(today),
        "document": duty.document or None,
        "moment": duty.moment.value if duty.moment else None,
        "subject": duty.subject.value if duty.subject else None,
        "works": list(duty.works),
        "greens": list(duty.greens),
        "date": duty.day.isoformat() if duty.day else None,
        "up": list(duty.up),
        "down": list(duty.down),
    }


def better_dates_as_json(found: Sequence[BetterDates]) -> list[Json]:
    """Return the dates that clear each clash, for whoever asks for them alone."""
    return [
        {
            "works": list(one.works),
            "days": [day.isoformat() for day in one.days],
            "clashes": list(dict.fromkeys(clash.code for clash in one.clashes)),
            "options": [
                {
                    "start": option.start.isoformat(),
                    "move_days": option.move,
                    "putting_days_more": option.putting_days,
                    "healing_days_more": option.healing_days,
                    "weekend": [day.isoformat() for day in option.weekend],
                }
                for option in one.options
            ],
            "tried": one.tried,
            "good": one.good,
            "failed": dict(one.failed),
            "not_tried": one.not_tried,
        }
        for one in found
    ]
