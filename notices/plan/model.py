"""The plan as the club wrote it: pydantic guards the door.

Every quantity is kept in one unit (millimetres, square metres, kg/m², t/m³, km/h,
°C, percent, minutes) and is written back in canonical words, so that the JSON of a
plan is itself a plan. The sentence under each field is its description, which a
person reads when the field is missing.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import (
    BeforeValidator,
    Field,
    SerializerFunctionWrapHandler,
    ValidationInfo,
    field_validator,
    model_serializer,
    model_validator,
)

from notices.agronomy.growth import HIGHEST_MEAN_C
from notices.agronomy.loads import LORRY_T
from notices.agronomy.sand import MOST_PER_DRESSING_KG_M2, WASTE_FRACTION
from notices.operations import (
    CATALOGUE,
    CLEARING_CORES,
    HAULING_SAND,
    Operation,
    WhileWorking,
)
from notices.plan.days import DayRange, all_days
from notices.plan.fields import (
    Address,
    AreaM2,
    Clock,
    Colour,
    CourseName,
    Day,
    Days,
    DensityTM3,
    GreenRefs,
    LengthM,
    LengthMm,
    Number,
    OperationName,
    Percent,
    PictureFile,
    RateKgM2,
    Reopening,
    SpeedKmH,
    StateWhileWorking,
    TemperatureC,
    Text,
    WeightT,
    WholeNumber,
    WorkingDay,
    Zone,
)
from notices.plan.followers import AfterWork
from notices.plan.green_choice import GreenChoice, WorkGreens
from notices.plan.moments import Mailed, MomentOfNotice, SendDay
from notices.plan.nearest import quoted
from notices.plan.own_operations import OwnOperation
from notices.plan.own_texts import OwnText, read_texts
from notices.plan.part import Part
from notices.plan.refusal import Refusal

__all__ = [
    "FORMAT_VERSION",
    "Accepted",
    "Approval",
    "ClearingCores",
    "Closure",
    "Club",
    "Course",
    "Crew",
    "Decision",
    "Fixture",
    "GreenChoice",
    "GreenLine",
    "HaulingSand",
    "Machine",
    "Mailing",
    "Measurement",
    "Observed",
    "Part",
    "Plan",
    "Position",
    "Restriction",
    "Sand",
    "Sender",
    "Soil",
    "Work",
]

FORMAT_VERSION: Literal[1] = 1


class Sender(Part):
    """Who signs the notices."""

    role: Text | None = None
    """Post of the person, such as Course Manager, which it is when left out."""
    name: Text | None = None
    """Name of the person, if it is to be shown."""
    email: Address
    """Address that mail and calendar come from."""


class Position(Part):
    """Where the club is, for daylight and time zone."""

    latitude: Annotated[Number, Field(ge=-90, le=90)]
    """Degrees north; south is negative."""
    longitude: Annotated[Number, Field(ge=-180, le=180)]
    """Degrees east; west is negative."""
    timezone: Zone
    """Name in the IANA time zone database, such as Europe/London."""


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
    units: Literal["metric", "imperial"] | None = None
    """Units in the notices; imperial in American English, else metric, when left out."""
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")] | None = None
    """Three letters, such as GBP."""
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}(-[A-Z0-9]{1,3})?$")] | None = None
    """ISO 3166 code, such as GB-ENG."""
    contact: Text | None = None
    """Sentence that says whom to ask."""
    answers: Text | None = None
    """By when a question is answered, such as within two working days."""
    sign_off: Text | None = None
    """Last line of what is sent; name, post and club when left out."""
    colour: Colour | None = None
    """The club's own colour, such as "#1b4d3e", in quotes."""
    logo: PictureFile | None = None
    """The club's own logo: name of a file beside the plan, JPEG, PNG or WebP."""
    boards: Text | None = None
    """Where notices hang, in words: the clubhouse and the halfway hut."""


class GreenLine(Part):
    """One or more greens and the size of each."""

    green: GreenRefs
    """Numbers and names, such as 1-18 or Putting green."""
    course: CourseName | None = None
    """Course or nine that they belong to, where there are several."""
    also: GreenRefs | None = None
    """Further hole that is played to this green, where two share one."""
    area: AreaM2 | None = None
    """Area of each green named."""


class Soil(Part):
    """What lies under the greens."""

    clay: Percent
    """Share of clay by weight."""
    sand: Percent
    """Share of sand by weight."""

    @field_validator("sand")
    @classmethod
    def _not_over_whole(cls, sand: float, info: ValidationInfo) -> float:
        if sand + info.data.get("clay", 0) > 100:
            raise Refusal(
                "clay and sand together are more than 100 %", "write the shares of one sample"
            )
        return sand


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
    drains: Text | None = None
    """Drain or ditch that mole channels run into, in words."""
    mowing_height: LengthMm | None = None
    """Usual height of cut in summer."""
    monthly_mean_temperature: (
        Annotated[
            tuple[Annotated[Number, Field(ge=-40, le=45)], ...], Field(min_length=12, max_length=12)
        ]
        | None
    ) = None
    """Twelve monthly means of air temperature in °C, January first."""
    temperatures: Text | None = None
    """File name of a table (CSV) of daily temperatures that lies beside the plan."""
    daily_mean_temperature: (
        dict[Day, Annotated[Number, Field(ge=-HIGHEST_MEAN_C, le=HIGHEST_MEAN_C)]] | None
    ) = None
    """Mean air temperature of single days in °C, by date; a table is written out as this."""

    @model_validator(mode="after")
    def _one_place_for_days(self) -> Course:
        if self.temperatures is not None and self.daily_mean_temperature is not None:
            raise Refusal(
                "daily temperatures stand in the plan and in a table at once", "keep one of them"
            )
        return self

    @field_validator("greens")
    @classmethod
    def _one_spelling(cls, lines: tuple[GreenLine, ...]) -> tuple[GreenLine, ...]:
        """Give a green that is named twice the capitals of its first line."""
        first: dict[str, str] = {}
        for line in lines:
            for green in line.green:
                if isinstance(green, str):
                    first.setdefault(green.casefold(), green)
        return tuple(
            line.model_copy(
                update={
                    "green": tuple(
                        first[green.casefold()] if isinstance(green, str) else green
                        for green in line.green
                    )
                }
            )
            for line in lines
        )


class Machine(Part):
    """How fast this club gets over a green at one kind of work."""

    operation: OperationName
    """Kind of work."""
    width: LengthM
    """Working width."""
    speed: SpeedKmH
    """Speed while working."""
    efficiency: Annotated[Percent, Field(gt=0)] = 60.0
    """Share of the time in which the machine really works."""
    minutes_between_greens: Annotated[Number, Field(ge=0, le=240)] = 8
    """Moving and setting up."""
    people: Annotated[WholeNumber, Field(ge=1, le=50)] = 1
    """People that the work needs."""


class ClearingCores(Part):
    """How fast this club gets cores off a green."""

    people: Annotated[WholeNumber, Field(ge=1, le=50)] = CLEARING_CORES.people
    """People with shovels, boards and a blower."""
    m3_per_person_hour: Annotated[Number, Field(ge=0.05, le=50)] = CLEARING_CORES.m3_per_person_hour
    """Cubic metres that one person clears in an hour, as they lay in the ground."""


class HaulingSand(Part):
    """How fast this club gets sand from the heap to a green."""

    people: Annotated[WholeNumber, Field(ge=1, le=50)] = HAULING_SAND.people
    """People who load and drive."""
    m3_per_load: Annotated[Number, Field(ge=0.05, le=50)] = HAULING_SAND.m3_per_load
    """Cubic metres in a load."""
    minutes_per_load: Annotated[Number, Field(ge=0, le=240)] = HAULING_SAND.minutes_per_load
    """Loading, there and back."""


class Crew(Part):
    """Who does the work and when."""

    people: Annotated[WholeNumber, Field(ge=1, le=200)]
    """The club's own team."""
    hired_people: Annotated[WholeNumber, Field(ge=0, le=200)] = 0
    """People who come with hired machines on renovation days."""
    hired_dates: Days | None = None
    """Days on which they are there; every day of work when left out."""
    working_day: WorkingDay = (dt.time(7), dt.time(15, 30))
    """From when to when, such as 06:30 to 15:30."""
    machines: tuple[Machine, ...] = ()
    """The club's machines, where they differ from the usual."""
    kept_back: Annotated[WholeNumber, Field(ge=0, le=200)] | None = None
    """People who do the routine work meanwhile; one in five of the club's own when left out."""
    breaks: Annotated[Number, Field(ge=0, le=240)] = 60
    """Minutes of rest in the middle of the working day."""
    dew_off: Clock | None = None
    """From when sand may be spread; 10:00 in autumn and 09:00 otherwise when left out."""
    drying: Annotated[Number, Field(ge=0, le=480)] | None = None
    """Minutes that sand dries on a green before it is brushed or rolled; an hour when left out,
    and none for kiln-dried sand."""
    clearing_cores: ClearingCores | None = None
    """How fast cores are cleared, where it differs from the usual."""
    hauling_sand: HaulingSand | None = None
    """How fast sand is hauled, where it differs from the usual."""
    hour_price: Annotated[Number, Field(ge=0)] | None = None
    """Price of one person's hour in the club's currency."""

    @field_validator("kept_back")
    @classmethod
    def _somebody_left(cls, kept: int | None, info: ValidationInfo) -> int | None:
        there = info.data.get("people", 0) + info.data.get("hired_people", 0)
        if kept is not None and 0 < there <= kept:
            raise Refusal(
                f"{kept} are kept back and there are only {there}", "leave somebody for the work"
            )
        return kept


class Sand(Part):
    """What is known of the dressing sand."""

    density: DensityTM3 = 1.6
    """Tonnes per cubic metre as delivered and dry."""
    price_per_tonne: Annotated[Number, Field(ge=0)] | None = None
    """Price in the club's currency."""
    waste: Annotated[Percent, Field(le=50)] = 100 * WASTE_FRACTION
    """Share that misses the holes, ordered on top."""
    most_per_dressing: RateKgM2 = MOST_PER_DRESSING_KG_M2
    """What a single dressing can work in."""
    lorry_load: WeightT = LORRY_T
    """What a full lorry brings."""
    kiln_dried: bool = False
    """Whether it comes kiln-dried, and can be brushed in at once."""


class Work(Part):
    """One planned piece of work."""

    operation: OperationName
    """Kind of work, by its trade term."""
    dates: Days
    """Day or days."""
    after: AfterWork | None = None
    """Work that this one follows, in place of dates and greens: hollow tining, +1 day."""
    reserve_dates: Days = ()
    """Days kept free in case of rain."""
    greens: WorkGreens | None = None
    """Greens, all numbered ones when left out."""
    settings: Annotated[dict[str, Any], Field(default_factory=dict)]
    """Settings of the work; read against the catalogue by plan.settings."""
    while_working: StateWhileWorking | None = None
    """What a green is to golfers on the day."""
    temporary: Text | None = None
    """Where its temporary greens lie and how good they are, such as 40 m short, cut to 6 mm."""
    services_checked: bool = False
    """Whether irrigation, cables and drains have been located and marked."""
    reopen: Reopening | None = None
    """When a green comes back into play: days after the work."""
    hire: Annotated[Number, Field(ge=0)] | None = None
    """Price of machines and people hired for the work, in the club's currency."""
    id: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)] | None = None
    """Name that the work keeps when its dates change."""
    why: Text | None = None
    """Why this club does it, and at this time; the club's own words, told with our reasons."""
    put_off_because: Text | None = None
    """Why its dates are others than before, such as heavy rain; told with the new dates."""
    note: Text | None = None
    """The club's own words, shown as they are."""

    @field_validator("temporary")
    @classmethod
    def _of_temporary_greens(cls, temporary: str | None, info: ValidationInfo) -> str | None:
        state = info.data.get("while_working")
        if temporary and state not in (None, WhileWorking.TEMPORARY):
            raise Refusal(
                f"this describes temporary greens, and a green is {state.value} while working",
                "write while_working: temporary green, or take temporary out",
            )
        return temporary

    @field_validator("reserve_dates")
    @classmethod
    def _reserve_follows(
        cls, reserve: tuple[DayRange, ...], info: ValidationInfo
    ) -> tuple[DayRange, ...]:
        days, kept = set(all_days(info.data.get("dates", ()))), all_days(reserve)
        if not days or not kept:
            return reserve
        if both := days & set(kept):
            raise Refusal(
                f"{min(both)} is a day of the work and a reserve date at once", "keep one of them"
            )
        if kept[0] < min(days):
            raise Refusal(
                f"{kept[0]} comes before the work, which begins on {min(days)}",
                "write reserve dates that follow it",
            )
        return reserve

    @field_validator("greens")
    @classmethod
    def _greens_on_days(
        cls, greens: GreenChoice | None, info: ValidationInfo
    ) -> GreenChoice | None:
        days = set(all_days(info.data.get("dates", ())))
        for day, _ in greens.by_day if greens and days else ():
            if day not in days:
                raise Refusal(
                    f"greens are named for {day}, which is not among the dates",
                    "add the day to the dates, or take its greens out",
                )
        return greens


class Closure(Part):
    """Something that is closed, with or without work on it."""

    what: Text
    """course, greens LIST, holes LIST, or free words such as practice ground."""
    dates: Days
    """Day or days."""
    instead: Text | None = None
    """What golfers use meanwhile."""
    temporary: Text | None = None
    """Where the temporary greens lie and how good they are, such as 40 m short, cut to 6 mm."""
    reason: Text | None = None
    """Why."""

    @model_validator(mode="after")
    def _of_temporary_greens(self) -> Closure:
        if self.temporary and "temporary green" not in (self.instead or "temporary green").lower():
            raise Refusal(
                "this describes temporary greens, and golfers use something else instead",
                "write instead: temporary greens, or take temporary out",
            )
        return self


class Fixture(Part):
    """A date in the club's calendar of play, or a calendar file full of them."""

    name: Text | None = None
    """Name of the event."""
    date: Day | None = None
    """Its day."""
    kind: Literal["competition", "visitors", "society", "match", "away match", "open"] = (
        "competition"
    )
    """What sort of event; an away match is played elsewhere and meets no work."""
    course: CourseName | None = None
    """Course or nine that it is played on, where there are several; any when left out."""
    decision: Literal["play on", "does not count", "moved", "cancelled", "canceled"] | None = None
    """What has been decided where it meets the work."""
    moved_to: Day | None = None
    """Its new day, where it is moved and the day is known."""
    calendar: Text | None = None
    """File name of an iCalendar export that lies beside the plan."""

    @model_validator(mode="after")
    def _one_form(self) -> Fixture:
        if self.calendar is not None and (self.name is not None or self.date is not None):
            raise Refusal(
                "this names a calendar and a fixture at once", "give each a line of its own"
            )
        if self.calendar is None and (self.name is None or self.date is None):
            missing = " and ".join(
                word for word, given in (("name", self.name), ("date", self.date)) if given is None
            )
            raise Refusal(f"this fixture has no {missing}", "add it, or name a calendar")
        return self

    @model_validator(mode="after")
    def _decided(self) -> Fixture:
        if self.calendar is not None and (self.decision or self.moved_to):
            raise Refusal(
                "a decision is about one fixture, and this names a calendar",
                "give the fixture a line of its own, with the name and date of the calendar",
            )
        if self.moved_to is not None and self.decision not in (None, "moved"):
            raise Refusal(
                f"this fixture has a new day, and {quoted(self.decision)} is decided",
                'write decision: moved, or take "moved_to" out',
            )
        if self.moved_to is not None and self.moved_to == self.date:
            raise Refusal(
                f"this fixture is moved to {self.date}, which is its day already",
                "write the new day",
            )
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
    def _pending_word(cls, value: object) -> object:
        if not isinstance(value, str):
            return value
        if value.strip().lower() == "pending":
            return {"pending": True}
        raise Refusal(
            f"{quoted(value)} is not understood", 'write "pending", or a block with by and date'
        )

    @model_validator(mode="after")
    def _by_somebody(self) -> Approval:
        if not self.pending and self.by is None:
            raise Refusal("nobody is named who approved", 'add by, or write approval: "pending"')
        return self

    @model_serializer(mode="wrap")
    def _write(self, handler: SerializerFunctionWrapHandler) -> str | dict[str, Any]:
        written: dict[str, Any] = handler(self)
        return "pending" if written == {"pending": True} else written


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
    about: Text | None = None
    """Work or fixture that it is about, by id, kind or name; all of them when left out."""
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
    """With its unit, such as 105 g."""
    speed: LengthM | None = None
    """How far a ball rolls."""


class Mailing(Part):
    """When a document goes out."""

    document: Mailed
    """Which document: member email, visitor notice or short message."""
    moment: MomentOfNotice
    """On what occasion."""
    send: SendDay
    """Such as 28 days before, the day before, when finished, or a date."""


class Observed(Part):
    """When greens really came back, in this year or an earlier one."""

    operation: OperationName
    """Kind of work."""
    done: Day
    """Day of the work."""
    putting_smoothly: Day | None = None
    """Day on which they putted smoothly."""
    healed: Day | None = None
    """Day on which nothing was left to see."""
    opening: LengthMm | None = None
    """Width of the holes or slits then, where it was another than in this plan."""
    greens: GreenRefs | None = None
    """Greens that this was seen on, all of the work when left out."""

    @field_validator("putting_smoothly", "healed")
    @classmethod
    def _after_the_work(cls, day: dt.date | None, info: ValidationInfo) -> dt.date | None:
        done = info.data.get("done")
        if day and done and day < done:
            raise Refusal(
                f"{day} is before the work was done, which was on {done}",
                "check which of the two is right",
            )
        return day


class Photograph(Part):
    """A picture of the club's own."""

    file: PictureFile
    """Name of a file beside the plan: JPEG, PNG or WebP."""
    shows: Text
    """What it shows, for those who do not see it."""
    caption: Text | None = None
    """What stands below it."""
    work: Text | None = None
    """Work that it belongs to, by its id or its kind; to all when left out."""


class Plan(Part):
    """A club's planned work, closures and all that goes with them."""

    notices: Literal[1] = FORMAT_VERSION
    """Version of this format."""
    issued: Day | None = None
    """Date of issue of the notices."""
    club: Club
    """The club that the notices come from."""
    course: Course
    """The greens, and what they grow in."""
    crew: Crew | None = None
    """Who does the work, and when."""
    sand: Sand = Sand()
    """Dressing sand."""
    operations: tuple[OwnOperation, ...] = ()
    """Kinds of work that the catalogue does not have."""
    texts: Annotated[tuple[OwnText, ...], BeforeValidator(read_texts)] = ()
    """Folder beside the plan whose texts take the place of ours, or the texts one by one."""
    works: tuple[Work, ...] = ()
    """The work that is planned."""
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
    photographs: tuple[Photograph, ...] = ()
    """Pictures that explain the work."""

    @property
    def catalogue(self) -> Mapping[str, Operation]:
        """Every kind of work that this plan may name."""
        return {**CATALOGUE, **{own.name: own.operation() for own in self.operations}}

    @field_validator("texts")
    @classmethod
    def _each_once(cls, texts: tuple[OwnText, ...]) -> tuple[OwnText, ...]:
        names = [text.name for text in texts]
        if twice := next((name for name in names if names.count(name) > 1), ""):
            raise Refusal(f"{quoted(twice)} is replaced twice", "keep one of the two texts")
        return texts

    @model_validator(mode="after")
    def _something_planned(self) -> Plan:
        if not self.works and not self.closures:
            raise Refusal("nothing is planned", "add works or closures")
        return self
