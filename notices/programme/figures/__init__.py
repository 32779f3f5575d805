"""The figures of a programme: every number with its formula, its inputs and its source."""

from notices.programme.figures.cut import figures_of_cut
from notices.programme.figures.growth import figures_of_growth
from notices.programme.figures.measured import figures_of_measurements
from notices.programme.figures.moles import figures_of_channels
from notices.programme.figures.recovery import (
    Ingredients,
    figures_of_promises,
    figures_of_records,
    figures_of_recovery,
)
from notices.programme.figures.sand import SandPrice, figures_of_order, figures_of_sand
from notices.programme.figures.surface import figures_of_surface
from notices.programme.figures.thatch import figures_of_thatch
from notices.programme.figures.work_time import figures_of_days, figures_of_hands, figures_of_time
from notices.programme.figures.year import figures_of_years

__all__ = [
    "Ingredients",
    "SandPrice",
    "figures_of_channels",
    "figures_of_cut",
    "figures_of_days",
    "figures_of_growth",
    "figures_of_hands",
    "figures_of_measurements",
    "figures_of_order",
    "figures_of_promises",
    "figures_of_records",
    "figures_of_recovery",
    "figures_of_sand",
    "figures_of_surface",
    "figures_of_thatch",
    "figures_of_time",
    "figures_of_years",
]
