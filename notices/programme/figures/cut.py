"""How the height of cut comes down again after the greens putt well."""

from __future__ import annotations

from collections.abc import Iterator

from notices.agronomy import cut
from notices.agronomy.recovery import DateRange
from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Input, Period

AFTER, AFTER_ONE = "days after the last day of work", "day after the last day of work"


def figures_of_cut(period: Period) -> Iterator[Figure]:
    """Yield, for each step down after a raised cut, when it is due at the earliest and latest."""
    promise = period.putting_well
    smooth = DateRange(promise.expect_by, promise.expect_by, promise.at_worst)
    last = max(period.days)
    for work in period.works:
        if work.operation.name != "raising the height of cut":
            continue
        usual, raised = work.settings.number("from"), work.settings.number("to")
        for number, height in enumerate(cut.heights_on_the_way_down(raised, usual), 1):
            due = cut.days_of_step(number, smooth)
            for end, since, day, days in (
                ("early", smooth.early, due.early, cut.DAYS_PER_STEP[0]),
                ("late", smooth.late, due.late, cut.DAYS_PER_STEP[1]),
            ):
                yield Quantity(
                    f"cut lowered, step {number}, {end}",
                    AFTER,
                    "day on which the greens putt well + {step} × {days_between_steps}; "
                    f"steps of {cut.STEP_MM:g} mm from the raised height to the usual one",
                    ("common_practice",),
                    AFTER_ONE,
                ).of(
                    work.id,
                    None if day is None else float((day - last).days),
                    (
                        Input("last_day", last.isoformat()),
                        Input("putting_well", since.isoformat() if since else None),
                        Input("step", number, "number of the step"),
                        Input("days_between_steps", days),
                        Input("raised_mm", raised, "raised", "mm"),
                        Input("usual_mm", usual, "usual", "mm"),
                        Input("height_mm", height, "height", "mm"),
                        Input("day", day.isoformat() if day else None),
                    ),
                    default_used=True,  # how fast the cut comes down is the book's
                )
