"""The plan as the club wrote it: pydantic guards the door.

Every quantity is kept in one unit (millimetres, square metres, kg/m², t/m³, km/h,
°C, percent, minutes) and is written back in canonical words, so that the JSON of a
plan is itself a plan. The sentence under each field is its description.
"""

from __future__ import annotations

import datetime as dt
import re
import zoneinfo
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainSerializer,
    field_validator,
    model_serializer,
    model_validator,
)

from notices.operations import CATALOGUE, WhileWorking
from notices.plan import quantities as q
from notices.plan.days import (
    DayRange,
    all_days,
    format_days,
    parse_clock,
    parse_days,
    parse_working_day,
)
from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.nearest import nearest

FORMAT_VERSION: Literal[1] = 1


def _quantity(parse: Callable[[Any], Any], write: Callable[[Any], str]) -> tuple[Any, Any]:
    return BeforeValidator(parse), PlainSerializer(write, return_type=str)


def _text(value: Any) -> Any:
    """A name that YAML took for a number is still a name."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    return value


Text = Annotated[str, BeforeValidator(_text), Field(min_length=1, max_length=2000)]
LengthMm = Annotated[float, *_quantity(q.length_mm, q.format_length_mm)]
LengthM = Annotated[float, *_quantity(q.length_m, q.format_length_m)]
AreaM2 = Annotated[float, *_quantity(q.area_m2, q.format_area_m2)]
DensityTM3 = Annotated[float, *_quantity(q.density_t_m3, q.format_density_t_m3)]
Percent = Annotated[float, *_quantity(q.percent, q.format_percent)]
TemperatureC = Annotated[float, *_quantity(q.temperature_c, q.format_temperature_c)]
SpeedKmH = Annotated[float, *_quantity(q.speed_km_h, q.format_speed_km_h)]
Days = Annotated[tuple[DayRange, ...], *_quantity(parse_days, format_days)]
GreenRefs = Annotated[tuple[GreenRef, ...], *_quantity(parse_greens, format_greens)]
Clock = Annotated[
    dt.time, BeforeValidator(parse_clock), PlainSerializer(lambda t: f"{t:%H:%M}", return_type=str)
]


def _one_day(value: Any) -> dt.date:
    days = all_days(parse_days(value))
    if len(days) != 1:
        raise ValueError("one date is wanted here, not several")
    return days[0]


Day = Annotated[
    dt.date, BeforeValidator(_one_day), PlainSerializer(lambda d: d.isoformat(), return_type=str)
]


def _address(value: Any) -> str:
    from email_validator import EmailNotValidError, validate_email  # noqa: PLC0415, start-up time

    if not isinstance(value, str):
        raise ValueError("an email address is wanted here")  # noqa: TRY004, shown to a person
    try:
        return validate_email(value, check_deliverability=False, allow_smtputf8=False).normalized
    except EmailNotValidError as error:
        raise ValueError(f'"{value}" is not an email address: {str(error).rstrip(".")}') from None


Address = Annotated[str, BeforeValidator(_address)]


class Part(BaseModel):
    """What all parts of a plan share: frozen, and no key that we do not know."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, use_attribute_docstrings=True, arbitrary_types_allowed=True
    )


class Sender(Part):
    """Who signs the notices."""

    role: Text = "Course Manager"
    """Post of the person, such as Course Manager."""
    name: Text | None = None
    """Name of the person, if it is to be shown."""
    email: Address
    """Address that mail and calendar come from."""


class Position(Part):
    """Where the club is, for daylight and time zone."""

    latitude: Annotated[float, Field(ge=-90, le=90)]
    """Degrees north; south is negative."""
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Degrees east; west is negative."""
    timezone: Text
    """Name in the IANA time zone database, such as Europe/London."""

    @field_validator("timezone")
    @classmethod
    def _known_zone(cls, value: str) -> str:
        try:
            zoneinfo.ZoneInfo(value)
        except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError):
            raise ValueError(
                f'there is no time zone "{value}": write one such as Europe/London'
            ) from None
        return value


class Club(Part):
    """Who the notices come from."""

    name: Text
    """Full name of the club."""
    sender: Sender | None = None
    """Who signs."""
    reply_to: Address | None = None
    """Where answers to the email go."""
    website: Annotated[str, Field(pattern=r"^https://[^\s<>\"]+$")] | None = None
    """Address of the club's site, starting with https://."""
    place: Position | None = None
    """Where the club is."""
    language: Literal["en-GB", "en-US"] = "en-GB"
    """Language of the notices."""
    units: Literal["metric", "imperial"] = "metric"
    """Units in the notices."""
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")] | None = None
    """Three letters, such as GBP."""
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}(-[A-Z0-9]{1,3})?$")] | None = None
    """ISO 3166 code, such as GB-ENG."""
    contact: Text | None = None
    """Sentence that says whom to ask."""


class GreenLine(Part):
    """One or more greens and the size of each."""

    green: GreenRefs
    """Numbers and names, such as 1-18 or Putting green."""
    area: AreaM2 | None = None
    """Area of each green named."""


class Soil(Part):
    """What lies under the greens."""

    clay: Percent
    """Share of clay by weight."""
    sand: Percent
    """Share of sand by weight."""

    @model_validator(mode="after")
    def _not_over_whole(self) -> Soil:
        if self.clay + self.sand > 100:
            raise ValueError("clay and sand together are more than 100 %")
        return self


class Course(Part):
    """The greens and what they grow in."""

    greens: Annotated[tuple[GreenLine, ...], Field(min_length=1)]
    """The greens; a later line overrides an earlier one."""
    grass: Literal["cool-season", "warm-season"] = "cool-season"
    """Kind of grass."""
    optimum_temperature: TemperatureC | None = None
    """Mean air temperature at which the grass grows best."""
    soil: Soil | None = None
    """Soil under the greens."""
    mowing_height: LengthMm | None = None
    """Usual height of cut in summer."""
    monthly_mean_temperature: (
        Annotated[
            tuple[Annotated[float, Field(ge=-40, le=45)], ...], Field(min_length=12, max_length=12)
        ]
        | None
    ) = None
    """Twelve monthly means of air temperature in °C, January first."""


def _operation(value: Any) -> str:
    words = " ".join(re.split(r"[\s_]+", str(value).strip().lower()))
    if words in CATALOGUE:
        return words
    guess = nearest(words, CATALOGUE)
    hint = f'did you mean "{guess}"?' if guess else f"known are {', '.join(CATALOGUE)}"
    raise ValueError(f'there is no operation "{value}": {hint}')


class Machine(Part):
    """How fast this club gets over a green at one kind of work."""

    operation: Annotated[str, BeforeValidator(_operation)]
    """Kind of work."""
    width: LengthM
    """Working width."""
    speed: SpeedKmH
    """Speed while working."""
    efficiency: Percent = 60.0
    """Share of the time in which the machine really works."""
    minutes_between_greens: Annotated[float, Field(ge=0, le=240)] = 8
    """Moving and setting up."""
    people: Annotated[int, Field(ge=1, le=50)] = 1
    """People that the work needs."""


class Crew(Part):
    """Who does the work and when."""

    people: Annotated[int, Field(ge=1, le=200)]
    """The club's own team."""
    hired_people: Annotated[int, Field(ge=0, le=200)] = 0
    """People who come with hired machines on renovation days."""
    working_day: Annotated[
        tuple[dt.time, dt.time],
        BeforeValidator(parse_working_day),
        PlainSerializer(lambda t: f"{t[0]:%H:%M} to {t[1]:%H:%M}", return_type=str),
    ] = (dt.time(7), dt.time(15, 30))
    """From when to when, such as 06:30 to 15:30."""
    machines: tuple[Machine, ...] = ()
    """The club's machines, where they differ from the usual."""


class Sand(Part):
    """What is known of the dressing sand."""

    density: DensityTM3 = 1.6
    """Tonnes per cubic metre as delivered and dry."""
    price_per_tonne: Annotated[float, Field(ge=0)] | None = None
    """Price in the club's currency."""


@dataclass(frozen=True, slots=True)
class GreenChoice:
    """Which greens a work takes: a plain list, or a list for each day."""

    plain: tuple[GreenRef, ...] = ()
    by_day: tuple[tuple[dt.date, tuple[GreenRef, ...]], ...] = ()


def _choice(value: Any) -> GreenChoice:
    if isinstance(value, GreenChoice):
        return value
    if not isinstance(value, Mapping):
        return GreenChoice(plain=parse_greens(value))
    by_day = []
    for days, greens in value.items():
        dates = all_days(parse_days(days))
        if len(dates) > 1:
            raise ValueError(f'"{days}": give each day its own line of greens')
        by_day.append((dates[0], parse_greens(greens)))
    if not by_day:
        raise ValueError("no day is given: write the greens, or a day with its greens")
    if len({day for day, _ in by_day}) < len(by_day):
        raise ValueError("a day stands here twice")
    return GreenChoice(by_day=tuple(sorted(by_day)))


def _write_choice(choice: GreenChoice | None) -> str | dict[str, str] | None:
    if choice is None:
        return None
    if choice.by_day:
        return {day.isoformat(): format_greens(greens) for day, greens in choice.by_day}
    return format_greens(choice.plain)


_REOPEN_LATER = re.compile(r"(\d{1,3}) days? later")


def _reopen(value: Any) -> int:
    if isinstance(value, str):
        words = " ".join(value.lower().split())
        if words == "when finished":
            return 0
        if words == "next morning":
            return 1
        if match := _REOPEN_LATER.fullmatch(words):
            return int(match[1])
    raise ValueError(
        f'"{value}" is not understood: write "when finished", "next morning" or "2 days later"'
    )


def _write_reopen(days: int | None) -> str | None:
    if days is None:
        return None
    return {0: "when finished", 1: "next morning"}.get(days, f"{days} days later")


def _while_working(value: Any) -> WhileWorking:
    for choice in WhileWorking:
        if str(value).strip().lower() == choice.value:
            return choice
    raise ValueError(f'"{value}" is not understood: write "closed", "temporary green" or "open"')


class Work(Part):
    """One planned piece of work."""

    operation: Annotated[str, BeforeValidator(_operation)]
    """Kind of work, by its trade term."""
    dates: Days
    """Day or days."""
    reserve_dates: Days = ()
    """Days kept free in case of rain."""
    greens: Annotated[
        GreenChoice | None,
        BeforeValidator(_choice),
        PlainSerializer(_write_choice, return_type=Any),
    ] = None
    """Greens, all numbered ones when left out."""
    settings: dict[str, Any] = {}
    """Settings of the work; read against the catalogue by plan.settings."""
    while_working: Annotated[WhileWorking, BeforeValidator(_while_working)] | None = None
    """What a green is to golfers on the day."""
    services_checked: bool = False
    """Whether irrigation, cables and drains have been located and marked."""
    reopen: Annotated[
        int | None, BeforeValidator(_reopen), PlainSerializer(_write_reopen, return_type=Any)
    ] = None
    """When a green comes back into play: days after the work."""
    id: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)] | None = None
    """Name that the work keeps when its dates change."""
    note: Text | None = None
    """The club's own words, shown as they are."""

    @model_validator(mode="after")
    def _days_agree(self) -> Work:
        days = set(all_days(self.dates))
        for day, _ in self.greens.by_day if self.greens else ():
            if day not in days:
                raise ValueError(f"greens are named for {day}, which is not among the dates")
        if self.reserve_dates:
            reserve = all_days(self.reserve_dates)
            if days & set(reserve):
                raise ValueError(
                    f"{min(days & set(reserve))} is a working day and a reserve date at once"
                )
            if min(reserve) < min(days):
                raise ValueError("a reserve date stands before the first day of the work")
        return self


class Closure(Part):
    """Something that is closed, with or without work on it."""

    what: Text
    """course, greens LIST, holes LIST, or free words such as practice ground."""
    dates: Days
    """Day or days."""
    instead: Text | None = None
    """What golfers use meanwhile."""
    reason: Text | None = None
    """Why."""


class Fixture(Part):
    """A date in the club's calendar of play, or a calendar file full of them."""

    name: Text | None = None
    """Name of the event."""
    date: Day | None = None
    """Its day."""
    kind: Literal["competition", "visitors", "society", "match", "open"] = "competition"
    """What sort of event."""
    calendar: Text | None = None
    """File name of an iCalendar export that lies beside the plan."""

    @model_validator(mode="after")
    def _one_form(self) -> Fixture:
        if self.calendar is not None and (self.name is not None or self.date is not None):
            raise ValueError("give either a calendar or a name and date, not both")
        if self.calendar is None and (self.name is None or self.date is None):
            raise ValueError("a fixture needs a name and a date, or a calendar")
        return self


class Restriction(Part):
    """Something that golfers cannot use for a while."""

    what: Text
    """Such as buggies or trolleys."""
    dates: Days
    """Day or days."""
    exception: Annotated[Text | None, Field(alias="except")] = None
    """Who may all the same."""
    ask: Text | None = None
    """Whom to ask."""


class Approval(Part):
    """Who approved the work."""

    pending: bool = False
    """Whether approval is still awaited; every file is then marked DRAFT."""
    by: Text | None = None
    """Which body."""
    date: Day | None = None
    """When."""
    reference: Text | None = None
    """Such as minute 14."""

    @model_validator(mode="before")
    @classmethod
    def _pending_word(cls, value: Any) -> Any:
        return {"pending": True} if value == "pending" else value

    @model_serializer(mode="wrap")
    def _write(self, handler: Any) -> Any:
        if self.pending:
            return "pending"
        return {key: value for key, value in handler(self).items() if key != "pending"}


class Decision(Part):
    """Who decides on the morning, and where golfers hear of it."""

    by: Text
    """Who decides."""
    when: Text
    """By when, in words."""
    confirmed: Clock | None = None
    """Time of the final word."""
    where: Text | None = None
    """Where it is announced."""


class Accepted(Part):
    """A finding that the club has seen and lives with."""

    finding: Text
    """Code of the finding."""
    by: Text
    """Who accepted it."""
    why: Text
    """The reason."""


class Measurement(Part):
    """What was measured on a green."""

    date: Day
    """Day of the measurement."""
    green: GreenRefs
    """Which green."""
    thatch_depth: LengthMm | None = None
    """Depth of the thatch."""
    organic_matter: Percent | None = None
    """By weight."""
    firmness: Text | None = None
    """With its unit."""
    speed: Text | None = None
    """Roll of a ball, with its unit."""


class Mailing(Part):
    """When a document goes out."""

    document: Text
    """Which document."""
    moment: Literal["announcement", "reminder", "day before", "progress", "finished"]
    """On what occasion."""
    send: Text
    """Such as 28 days before."""


class Observed(Part):
    """When greens really came back, in an earlier year."""

    operation: Annotated[str, BeforeValidator(_operation)]
    """Kind of work."""
    done: Day
    """Day of the work."""
    putting_smoothly: Day | None = None
    """Day on which they putted smoothly."""
    healed: Day | None = None
    """Day on which nothing was left to see."""

    @model_validator(mode="after")
    def _after_the_work(self) -> Observed:
        for day in (self.putting_smoothly, self.healed):
            if day is not None and day < self.done:
                raise ValueError(f"{day} is before the work was done")
        return self


class Plan(Part):
    """A club's planned work, closures and all that goes with them."""

    notices: Literal[1] = FORMAT_VERSION
    """Version of this format."""
    issued: Day | None = None
    """Date of issue of the notices."""
    club: Club
    """Who."""
    course: Course
    """Where."""
    crew: Crew | None = None
    """With whom."""
    sand: Sand = Sand()
    """Dressing sand."""
    works: tuple[Work, ...] = ()
    """What is to be done."""
    closures: tuple[Closure, ...] = ()
    """What is closed besides."""
    fixtures: tuple[Fixture, ...] = ()
    """What is played."""
    restrictions: tuple[Restriction, ...] = ()
    """What golfers must do without."""
    approval: Approval | None = None
    """By whom approved."""
    decision: Decision | None = None
    """Who decides on the day."""
    accepted: tuple[Accepted, ...] = ()
    """Findings that the club lives with."""
    measurements: tuple[Measurement, ...] = ()
    """What was measured."""
    mailings: tuple[Mailing, ...] = ()
    """When documents go out."""
    observed: tuple[Observed, ...] = ()
    """What earlier years taught."""

    @model_validator(mode="after")
    def _something_planned(self) -> Plan:
        if not self.works and not self.closures:
            raise ValueError("nothing is planned: add works or closures")
        return self
