"""How a plan lies in a workbook: which sheet and which heading each part of it has.

Reader and writer both go by this table, so that neither knows a heading that the other does not.
A form has a line for each value; a list has a column for each, and a row for each item. The
sentence under a heading is that of the model.
"""

from __future__ import annotations

import enum
import itertools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from notices.operations import CATALOGUE, Kind, Setting
from notices.plan.moments import Moment

Way = tuple[str, ...]
"""Keys that lead to a value: from the top of the plan in a form, within an item in a list."""


class Takes(enum.Enum):
    """What a cell takes; decides how it looks and what a spreadsheet may have made of it."""

    WORDS = "words"
    QUANTITY = "a quantity with its unit"
    PERCENT = "a percentage"
    NUMBER = "a number"
    DAY = "a date"
    LAST_DAY = "the last day of a stretch"
    MORE_DAYS = "days in words, or a date"
    CLOCK = "a time of day"
    YES_NO = "yes or no"
    MARK = "a mark for rows that do not count"
    HINT = "nothing: it shows something"


@dataclass(frozen=True, slots=True)
class Column:
    """One value: a column of a list, or a line of a form."""

    heading: str
    way: Way
    takes: Takes = Takes.WORDS
    says: str = ""
    """What is said about it, where the model's own sentence does not do."""
    such_as: str = ""
    """How it is typed."""
    choices: tuple[str, ...] = ()
    only_choices: bool = True
    width: int = 0
    """In characters; 0 for what is usual."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of the workbook."""

    name: str
    line: str
    """What it is for, in a sentence or two."""
    columns: tuple[Column, ...]
    way: Way = ()
    """Of a list: where in the plan its items are."""
    is_list: bool = True
    sections: Mapping[str, str] | None = None
    """Of a form: the heading before which each title stands."""


MARK = Column(
    "Example",
    (),
    Takes.MARK,
    "Rows with this word do not count",
    choices=("example",),
    width=12,
)
EXAMPLE = "example"

_OPERATIONS = tuple(CATALOGUE)
_STATES = ("closed", "temporary green", "open")
_REOPENING = ("when finished", "next morning", "2 days later")
_KINDS_OF_FIXTURE = ("competition", "visitors", "society", "match", "away match", "open")
_DECISIONS = ("play on", "does not count", "moved", "cancelled")
_MOMENTS = tuple(moment.value for moment in Moment)
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def all_settings() -> tuple[Setting, ...]:
    """Return every setting that a kind of work has, each once, in the order of the catalogue."""
    found: dict[str, Setting] = {}
    for operation in CATALOGUE.values():
        for setting in operation.settings:
            found.setdefault(setting.name, setting)
    return tuple(found.values())


def in_words(key: str) -> str:
    """Return a key as a heading: "Tine diameter" for tine_diameter."""
    words = key.replace("_", " ")
    return words[:1].upper() + words[1:]


_TYPED: Mapping[Kind, tuple[Takes, str]] = {
    Kind.LENGTH: (Takes.QUANTITY, "13 mm"),
    Kind.SPACING: (Takes.QUANTITY, "50 x 50 mm"),
    Kind.AREA: (Takes.QUANTITY, "60 m2"),
    Kind.RATE: (Takes.QUANTITY, "0.7 kg/m2"),
    Kind.COUNT: (Takes.NUMBER, "2"),
    Kind.WORDS: (Takes.WORDS, ""),
    Kind.FILL: (Takes.WORDS, ""),
}
_HEADINGS = {"from": "From height", "to": "To height"}
"""Settings whose keys say too little by themselves."""


def heading_of_setting(key: str) -> str:
    """Return the heading under which a setting stands."""
    return _HEADINGS.get(key, in_words(key))


def _settings() -> tuple[Column, ...]:
    return tuple(
        Column(
            heading_of_setting(setting.name),
            ("settings", setting.name),
            _TYPED[setting.kind][0],
            _of(setting.name),
            such_as="5 mm" if setting.name in _HEADINGS else _TYPED[setting.kind][1],
            choices=("holes",) if setting.kind is Kind.FILL else (),
            width=13,
        )
        for setting in all_settings()
    )


def _of(setting: str) -> str:
    having = [entry.name for entry in CATALOGUE.values() if entry.setting(setting)]
    return f"For {', '.join(having)}" if len(having) <= 3 else "For several operations"


def _column(
    *way: str, takes: Takes = Takes.WORDS, heading: str = "", such_as: str = "", width: int = 0
) -> Column:
    return Column(heading or in_words(way[-1]), way, takes, such_as=such_as, width=width)


def _choice(*way: str, of: tuple[str, ...], only: bool = True, width: int = 18) -> Column:
    return Column(in_words(way[-1]), way, choices=of, only_choices=only, width=width)


def _yes_no(*way: str, heading: str = "") -> Column:
    return Column(heading or in_words(way[-1]), way, Takes.YES_NO, choices=("yes", "no"), width=12)


def _days(key: str, words: str = "") -> tuple[Column, ...]:
    """Return the three columns that days take: a first, a last, and what does not fit into two."""
    named = f" {words}" if words else ""
    return (
        Column(f"First{named} day", (key,), Takes.DAY, width=16),
        Column(f"Last{named} day", (key,), Takes.LAST_DAY, "Empty for a single day", width=16),
        Column(
            f"Further{named} days",
            (key,),
            Takes.MORE_DAYS,
            "Only where the days do not follow one another",
            such_as="2027-08-20, 2027-08-23",
            width=22,
        ),
    )


_D, _N, _Q, _P, _C = Takes.DAY, Takes.NUMBER, Takes.QUANTITY, Takes.PERCENT, Takes.CLOCK
_GREENS = "1-6, 9, Putting green"

CLUB = Sheet(
    "Club",
    "Who the notices come from. Only the name is needed.",
    (
        _column("issued", takes=_D, heading="Date of issue"),
        _column("club", "name"),
        _column("club", "contact"),
        _column("club", "answers"),
        _column("club", "sign_off"),
        _column("club", "boards", such_as="the clubhouse"),
        Column("Colour", ("club", "colour"), says="The club’s own colour, such as #1b4d3e"),
        _column("club", "logo", such_as="crest.png"),
        _column("club", "reply_to", such_as="office@club.example"),
        _column("club", "website", such_as="https://www.club.example"),
        _choice("club", "language", of=("en-GB", "en-US")),
        _choice("club", "units", of=("metric", "imperial")),
        _column("club", "currency"),
        _column("club", "country"),
        _column("club", "sender", "role", heading="Sender role"),
        _column("club", "sender", "name", heading="Sender name"),
        _column("club", "sender", "email", heading="Sender email", such_as="course@club.example"),
        _column("club", "place", "latitude", takes=_N),
        _column("club", "place", "longitude", takes=_N),
        _column("club", "place", "timezone"),
    ),
    is_list=False,
    sections={"Sender role": "Who signs", "Latitude": "Where the club is"},
)

GREENS = Sheet(
    "Greens",
    "The greens and the size of each. A later row counts more than an earlier one.",
    (
        _column("green", such_as=_GREENS, width=26),
        _column("course", such_as="Oak", width=18),
        _column("also", such_as="16", width=18),
        _column("area", takes=_Q, such_as="480 m2", width=18),
    ),
    ("course", "greens"),
)

CLIMATE = Sheet(
    "Turf and climate",
    "What grows on the greens, in which ground and at what temperatures. "
    "What you leave empty has a usual value, and a figure that rests on one says so.",
    (
        _choice("course", "grass", of=("cool-season", "warm-season")),
        _column("course", "mowing_height", takes=_Q, such_as="3.5 mm"),
        _column("course", "drains"),
        _column("course", "soil", "clay", takes=_P, such_as="38 %"),
        _column("course", "soil", "sand", takes=_P, heading="Sand in the soil", such_as="22 %"),
        _column("course", "optimum_temperature", takes=_Q, such_as="18 C"),
        *(
            Column(month, ("course", "monthly_mean_temperature", str(number)), _N, "In °C")
            for number, month in enumerate(_MONTHS)
        ),
        _column("course", "temperatures", heading="File of daily temperatures"),
    ),
    is_list=False,
    sections={
        "Clay": "The ground",
        "Optimum temperature": "Temperatures",
        "January": "Mean temperature of each month: fill all twelve or none",
        "File of daily temperatures": "Single days",
    },
)

CREW = Sheet(
    "Crew",
    "Who does the work and when. Without people on this sheet no working day is worked out.",
    (
        _column("crew", "people", takes=_N),
        _column("crew", "hired_people", takes=_N),
        _column("crew", "hired_dates", takes=Takes.MORE_DAYS, such_as="2027-08-23 to 2027-08-29"),
        _column("crew", "working_day", such_as="06:30 to 15:30"),
        _column("crew", "kept_back", takes=_N),
        _column("crew", "breaks", takes=_N),
        _column("crew", "dew_off", takes=_C),
        _column("crew", "drying", takes=_N),
        _column("crew", "hour_price", takes=_N),
        _column("crew", "clearing_cores", "people", takes=_N, heading="People clearing cores"),
        _column(
            "crew",
            "clearing_cores",
            "m3_per_person_hour",
            takes=_N,
            heading="Cubic metres per person and hour",
        ),
        _column("crew", "hauling_sand", "people", takes=_N, heading="People hauling sand"),
        _column("crew", "hauling_sand", "m3_per_load", takes=_N, heading="Cubic metres per load"),
        _column("crew", "hauling_sand", "minutes_per_load", takes=_N, heading="Minutes per load"),
    ),
    is_list=False,
    sections={
        "People clearing cores": "Clearing cores",
        "People hauling sand": "Hauling sand",
    },
)

MACHINES = Sheet(
    "Machines",
    "How fast your machines get over a green, where they differ from the usual.",
    (
        _choice("operation", of=_OPERATIONS, only=False, width=26),
        _column("width", takes=_Q, such_as="0.8 m"),
        _column("speed", takes=_Q, such_as="1.2 km/h"),
        _column("efficiency", takes=_P, such_as="60 %"),
        _column("minutes_between_greens", takes=_N),
        _column("people", takes=_N),
    ),
    ("crew", "machines"),
)

SAND = Sheet(
    "Sand",
    "What is known of the dressing sand. What you leave empty has a usual value.",
    (
        _column("sand", "density", takes=_Q, such_as="1.55 t/m3"),
        _column("sand", "price_per_tonne", takes=_N),
        _column("sand", "waste", takes=_P, such_as="5 %"),
        _column("sand", "most_per_dressing", takes=_Q, such_as="3 kg/m2"),
        _column("sand", "lorry_load", takes=_Q, such_as="20 t"),
        _yes_no("sand", "kiln_dried"),
    ),
    is_list=False,
)

HINT = Column(
    "What belongs to it",
    (),
    Takes.HINT,
    "The settings of this kind of work, with what each is when you leave it empty",
    width=60,
)

WORKS = Sheet(
    "Works",
    "A row for each piece of work. Choose the operation: grey cells to the right do not belong "
    "to it.",
    (
        _choice("operation", of=_OPERATIONS, only=False, width=24),
        *_days("dates"),
        _column("greens", such_as=_GREENS, width=22),
        *_days("reserve_dates", "reserve"),
        _choice("while_working", of=_STATES, width=16),
        _column("temporary", width=30),
        _yes_no("services_checked"),
        _choice("reopen", of=_REOPENING, only=False, width=15),
        _column("after", such_as="hollow tining, +1 day", width=22),
        _column("hire", takes=_N, width=12),
        _column("id", such_as="autumn-cores", width=18),
        _column("why", width=34),
        _column("put_off_because", such_as="heavy rain", width=24),
        _column("note", width=34),
        HINT,
        *_settings(),
    ),
    ("works",),
)

GREENS_BY_DAY = Sheet(
    "Greens by day",
    "Only where a work does certain greens on certain days. "
    "Leave the greens of that work empty on the sheet Works.",
    (
        Column(
            "Work",
            ("work",),
            says="Its operation; its id where there are several; or the number of its row on Works",
            width=26,
        ),
        Column("Day", ("day",), _D, "A day of that work", width=16),
        Column("Greens", ("greens",), says="What is done on this day", such_as="1-6", width=26),
    ),
    ("works", "greens"),
)

CLOSURES = Sheet(
    "Closures",
    "What is closed, with or without work on it.",
    (
        _column("what", width=26),
        *_days("dates"),
        _choice("instead", of=("temporary greens",), only=False, width=24),
        _column("temporary", width=30),
        _column("reason", width=34),
    ),
    ("closures",),
)

FIXTURES = Sheet(
    "Fixtures",
    "What is played, so that work keeps clear of it. "
    "A row names an event, or the file of a calendar that lies beside the workbook.",
    (
        _column("name", width=30),
        _column("date", takes=_D, width=16),
        _choice("kind", of=_KINDS_OF_FIXTURE),
        _column("course", such_as="Oak", width=18),
        _choice("decision", of=_DECISIONS),
        _column("moved_to", takes=_D, width=16),
        _column("calendar", such_as="fixtures.ics", width=22),
    ),
    ("fixtures",),
)

RESTRICTIONS = Sheet(
    "Restrictions",
    "What golfers cannot use for a while.",
    (
        _column("what", width=26),
        *_days("dates"),
        _column("except", width=26),
        _column("ask", width=22),
    ),
    ("restrictions",),
)

DECISIONS = Sheet(
    "Decisions",
    "Who approved the work, and who decides on the morning.",
    (
        _yes_no("approval", "pending", heading="Approval pending"),
        _column("approval", "by", heading="Approved by"),
        _column("approval", "date", takes=_D, heading="Approved on"),
        _column("approval", "reference", such_as="minute 14"),
        _column("decision", "by", heading="Decided by"),
        _column("decision", "when", heading="Decided when", such_as="16:00 the day before"),
        _column("decision", "confirmed", takes=_C),
        _column("decision", "where", heading="Announced where"),
    ),
    is_list=False,
    sections={"Decided by": "On the morning"},
)

MAILINGS = Sheet(
    "Mailings",
    "When each message goes out.",
    (
        _choice("document", of=("member email",), only=False, width=22),
        _choice("moment", of=_MOMENTS),
        _column("send", takes=Takes.MORE_DAYS, width=24),
    ),
    ("mailings",),
)

OBSERVED = Sheet(
    "Past recovery",
    "When greens really came back in earlier years. Later estimates go by it.",
    (
        _choice("operation", of=_OPERATIONS, only=False, width=24),
        _column("done", takes=_D, width=16),
        _column("putting_smoothly", takes=_D, width=18),
        _column("healed", takes=_D, width=16),
        _column("opening", takes=_Q, such_as="13 mm", width=22),
        _column("greens", such_as="1-9", width=22),
    ),
    ("observed",),
)

MEASUREMENTS = Sheet(
    "Measurements",
    "What was measured on the greens.",
    (
        _column("date", takes=_D, width=16),
        _column("green", such_as="7", width=18),
        _column("thatch_depth", takes=_Q, such_as="22 mm"),
        _column("organic_matter", takes=_P, such_as="5.1 %"),
        _column("firmness", such_as="105 g"),
        _column("speed", such_as="2.7 m"),
    ),
    ("measurements",),
)

DAILY = Sheet(
    "Daily temperatures",
    "Mean temperature of single days in °C, from a weather station. They replace the month’s mean.",
    (
        Column("Date", ("date",), _D, "The day", width=16),
        Column("Mean temperature", ("mean",), _N, "In °C", width=16),
    ),
    ("course", "daily_mean_temperature"),
)

OWN_OPERATIONS = Sheet(
    "Own operations",
    "Kinds of work that the list of operations does not have. Use their names on the sheet Works.",
    (
        _column("name", width=22),
        _choice("opens", of=("nothing", "holes", "slits", "channels", "trenches", "turf")),
        _column("text", width=40),
        _choice("noticed", of=("hardly", "a little", "clearly")),
        _column("order", takes=_N, width=16),
        _choice("while_working", of=_STATES),
        _choice("reopen", of=_REOPENING, only=False),
        _yes_no("filled"),
        _yes_no("removes_material"),
        _yes_no("enters_ground"),
        _yes_no("product_label"),
        *_settings(),
    ),
    ("operations",),
)

PHOTOGRAPHS = Sheet(
    "Photographs",
    "Pictures of the club’s own that explain the work; the files lie beside the workbook.",
    (
        _column("file", such_as="cores.jpg", width=24),
        _column("shows", such_as="A row of cores on green 7", width=40),
        _column("caption", width=40),
        _column("work", such_as="hollow tining", width=22),
    ),
    ("photographs",),
)

OWN_TEXTS = Sheet(
    "Own texts",
    "Texts of the club’s own that take the place of the ones in the program.",
    (
        _column("name", such_as="operations/hollow-tining.md", width=34),
        _column("text", width=60),
    ),
    ("texts",),
)

ACCEPTED = Sheet(
    "Accepted findings",
    "Findings that the club has seen and lives with. The check shows the code of each.",
    (
        _column("finding", such_as="fixture-in-recovery", width=28),
        _column("about", such_as="Autumn Medal", width=26),
        _column("by", width=26),
        _column("why", width=50),
    ),
    ("accepted",),
)

SHEETS: tuple[Sheet, ...] = (
    *(CLUB, GREENS, WORKS, GREENS_BY_DAY, CLOSURES, FIXTURES, CREW, MACHINES, SAND, CLIMATE),
    *(RESTRICTIONS, DECISIONS, MAILINGS, OBSERVED, MEASUREMENTS, PHOTOGRAPHS),
    *(DAILY, OWN_OPERATIONS, OWN_TEXTS, ACCEPTED),
)
"""Every sheet that is read, in the order of the workbook: what most clubs need stands first."""

READ_ME, LISTS = "Read me", "Lists"
"""Sheets that a workbook also has, and that nobody reads into a plan."""


def groups(sheet: Sheet) -> Iterator[tuple[Way, list[tuple[int, Column]]]]:
    """Return the columns of a list by what they give: three of days give one value."""
    numbered = [pair for pair in enumerate(sheet.columns) if pair[1].takes is not Takes.HINT]
    for way, columns in itertools.groupby(numbered, key=lambda pair: pair[1].way):
        yield way, list(columns)
