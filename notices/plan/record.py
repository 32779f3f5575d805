"""What became of a work, written into the plan's list of what was observed."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from notices.plan.green_list import GreenRef, format_greens
from notices.plan.model import Plan
from notices.plan.yaml_edits import PlanText


@dataclass(frozen=True, slots=True)
class Record:
    """What was seen of one work, on all its greens or on some."""

    operation: str
    done: dt.date
    greens: tuple[GreenRef, ...] | None = None
    putting_smoothly: dt.date | None = None
    healed: dt.date | None = None

    @property
    def seen(self) -> dict[str, str]:
        """The days on which greens had come back, as they are written."""
        days = {"putting_smoothly": self.putting_smoothly, "healed": self.healed}
        return {key: day.isoformat() for key, day in days.items() if day is not None}


def write_record(text: PlanText, plan: Plan, record: Record) -> None:
    """Add a record to the text of a plan, or to the record that is there of the same work."""
    for index, known in enumerate(plan.observed):
        if (known.operation, known.done, known.greens) == (
            record.operation,
            record.done,
            record.greens,
        ):
            for key, day in record.seen.items():
                path = ("observed", index, key)
                if text.has(path):
                    text.set(path, day)
                else:
                    text.add(("observed", index), key, day)
            return
    entry = {"operation": record.operation, "done": record.done.isoformat()}
    if record.greens is not None:
        entry["greens"] = format_greens(record.greens)
    text.append("observed", entry | record.seen)
