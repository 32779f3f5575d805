"""Data types of the catalogue of kinds of work."""

from __future__ import annotations

import enum
from dataclasses import dataclass


class Kind(enum.Enum):
    """Quantity that a setting measures; decides how it is typed and in which unit it is kept."""

    LENGTH = "length"  # millimetres
    SPACING = "spacing"  # (along, across) in millimetres
    AREA = "area"  # square metres
    RATE = "rate"  # kilograms per square metre
    COUNT = "count"  # whole number
    WORDS = "words"  # free text by the club
    FILL = "fill"  # the word "holes"


class Opening(enum.Enum):
    """Kind of opening that a work makes in the turf; decides which formulas apply to it."""

    NONE = "none"
    HOLES = "holes"
    SLITS = "slits"
    CHANNELS = "channels"
    SAND = "sand"
    TRENCHES = "trenches"
    BARE = "bare"  # turf lifted and laid


class Noticed(enum.IntEnum):
    """Degree to which a golfer notices the work afterwards."""

    HARDLY = 1
    A_LITTLE = 2
    CLEARLY = 3


class Weather(enum.Enum):
    """Weather that a kind of work needs (common practice); notices put it into words."""

    NO_FROST = "no frost or thaw"
    GROUND_NOT_WET = "not while the top 100 mm of the ground is wet"
    MOULDED_BELOW = "moist enough to mould at the depth of the channels, firm on top"
    DRY = "not before the surface and the sand are dry"
    LABEL = "as the label of the product says"


class WhileWorking(enum.StrEnum):
    """State of a green for golfers on a day when the work is done on it."""

    OPEN = "open"
    TEMPORARY = "temporary green"
    CLOSED = "closed"


SettingValue = float | int | str | tuple[float, float]


@dataclass(frozen=True, slots=True)
class Setting:
    """One thing that a person may set for a kind of work.

    ``low`` and ``high`` are the sane limits, in the unit of the kind; a value outside them is
    refused as a typing error.
    """

    name: str
    kind: Kind
    default: SettingValue | None = None
    low: float = 0.0
    high: float = float("inf")


@dataclass(frozen=True, slots=True)
class Pace:
    """Pace of a small team on a green with the usual machine.

    Common practice, without a published source; the plan's ``crew.machines`` overrides it.
    """

    width_m: float
    speed_km_h: float
    efficiency: float
    people: int
    minutes_between_greens: float


TEXT_SECTIONS = (
    *("what we do", "why", "why now", "if we do not"),
    *("what you will see", "your game", "how long"),
)
"""Headings, in this order, of the text on each kind of work."""

OPTIONAL_SECTIONS = ("why now", "if we do not")
"""Headings that a club's own text on a kind of work may leave out."""

REQUIRED_SECTIONS = tuple(name for name in TEXT_SECTIONS if name not in OPTIONAL_SECTIONS)


@dataclass(frozen=True, slots=True)
class Clearing:
    """Pace at which people clear what a machine has lifted, with shovels, boards and a blower.

    Common practice, without a published source; the plan's ``crew.clearing_cores`` overrides it.
    """

    people: int
    m3_per_person_hour: float
    """Volume cleared, as it lay in the ground."""


@dataclass(frozen=True, slots=True)
class Hauling:
    """Pace at which sand gets from the heap to the green.

    Common practice, without a published source; the plan's ``crew.hauling_sand`` overrides it.
    """

    people: int
    m3_per_load: float
    minutes_per_load: float
    """Time to load, drive there and come back."""


@dataclass(frozen=True, slots=True)
class Operation:
    """One kind of work on a green, named by its trade term."""

    name: str
    order: int
    """Rank in a full renovation; documents name the works of one day in this order."""
    opening: Opening
    noticed: Noticed
    settings: tuple[Setting, ...] = ()
    pace: Pace | None = None
    clearing: Clearing | None = None
    """Work by hand that follows the machine on each green; None if the machine's crew does it."""
    hauling: Hauling | None = None
    """Work beside each green before the machine starts."""
    while_working: WhileWorking = WhileWorking.CLOSED
    reopen_days: int = 1
    """Days until the green returns to play: 0 as soon as it is finished, 1 the next morning."""
    filled: bool = False
    """Whether a dressing fills these openings, so that its sand includes their volume."""
    removes_core: bool = False
    """Whether material leaves the green."""
    enters_ground: bool = False
    """Whether buried pipes and cables must be located and marked first."""
    weather: tuple[Weather, ...] = (Weather.NO_FROST,)
    """Weather that it needs."""
    text: str = ""
    """The club's own text in Markdown; empty for kinds of work with a text in templates."""

    @property
    def slug(self) -> str:
        """Name as used in file names, IDs and calendars."""
        return self.name.replace(" ", "-")

    def setting(self, name: str) -> Setting | None:
        """Return the setting of that name, or None."""
        return next((setting for setting in self.settings if setting.name == name), None)
