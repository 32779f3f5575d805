"""What a course manager should think about again: small checks, each returns its findings.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable, Iterator

from notices.findings import Finding, Weight
from notices.look import is_darkened, look_of
from notices.plan.logo import size_of_logo
from notices.plan.model import Plan
from notices.programme.agronomic_checks import AGRONOMIC_CHECKS
from notices.programme.climate import is_southern, may_be_british
from notices.programme.cut_checks import CUT_CHECKS
from notices.programme.fixture_checks import FIXTURE_CHECKS
from notices.programme.green_names import plan_greens
from notices.programme.lay_out import DEFAULT_AREA_M2
from notices.programme.letter_checks import letters_not_printed
from notices.programme.model import Decided, Fixture, PlayStatus, Programme
from notices.programme.order_checks import ORDER_CHECKS
from notices.programme.photographs import photograph_of_nothing
from notices.programme.play_checks import fewer_than_nine_holes, nowhere_to_putt
from notices.programme.reserve_checks import RESERVE_CHECKS
from notices.programme.season_checks import SEASON_CHECKS
from notices.programme.time_checks import (
    day_too_long,
    hired_people_every_day,
    light_not_known,
    machine_in_two_places,
    not_enough_people,
    work_before_light,
)
from notices.programme.trench_checks import TRENCH_CHECKS
from notices.programme.turf_checks import turf_not_rooted
from notices.units import MM_PER_INCH

_CLASH_REMEDY = (
    "Move the work or the fixture, write the decision taken, or accept the finding with a reason"
)

Check = Callable[[Programme, Plan], Iterator[Finding]]


def check_programme(programme: Programme, plan: Plan) -> list[Finding]:
    """Return every finding, in the order of the checks."""
    return [finding for check in CHECKS for finding in check(programme, plan)]


def no_sender(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Mail and calendar must come from somebody."""
    if programme.club.sender.placeholder:
        yield Finding(
            "no-sender",
            Weight.THINK_AGAIN,
            f"the plan names no sender, so mail and calendar carry {programme.club.sender.email}",
            "Add club: sender: with a role and an email address",
            ("club",),
        )


def colour_darkened(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Text in a club's colour must be readable (WCAG 2.2, 1.4.3)."""
    colour = programme.club.colour
    if colour and is_darkened(colour):
        yield Finding(
            "colour-darkened",
            Weight.INFORMATION,
            f"text in the club's colour {colour} would be hard to read, so headings and links are "
            f"set in the darker {look_of(colour).accent}",
            "Nothing needs doing; name a darker colour if you would rather choose it yourself",
            ("club", "colour"),
        )


LOGO_INCHES = 18 / MM_PER_INCH
"""How high a logo stands in the head of the notice on A3."""
LOGO_WIDEST = 3.5
"""Times its height: a wider one is set lower, as `rendering.logo` has it."""
PIXELS_TO_THE_INCH = 150
"""With fewer a picture looks blurred in the hand (judgement)."""


def logo_too_small(_programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A logo taken from a page of the web is often too small for paper."""
    if plan.club.logo is None:
        return
    width, height = size_of_logo(plan.club.logo)
    inches = LOGO_INCHES * min(1.0, LOGO_WIDEST * height / width)
    needed = math.ceil(inches * PIXELS_TO_THE_INCH)
    if height < needed:
        yield Finding(
            "logo-too-small",
            Weight.INFORMATION,
            f"the logo is {width} by {height} pixels without its empty edge, which is few for paper: "
            "it will look blurred on the notice board",
            f"Save it at least {needed} pixels high, if there is a larger one",
            ("club", "logo"),
        )


def services_not_checked(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Work that enters the ground: assume buried services until shown otherwise (HSE HSG47)."""
    for work in programme.works:
        if work.operation.enters_ground and not work.services_checked:
            yield Finding(
                "services-not-checked",
                Weight.THINK_AGAIN,
                f"{work.operation.name} goes into the ground, and the plan does not say that "
                "irrigation, cables and drains have been located and marked",
                "Have them located and marked first, then write services_checked: true",
                ("works", work.plan_index),
                work=work.id,
                greens=work.greens,
                dates=work.dates,
            )


def fixture_on_closed_greens(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Golf is planned while greens are closed or on temporary greens."""
    for fixture in programme.fixtures:
        if fixture.closed_greens:
            yield Finding(
                "fixture-in-closure",
                Weight.INFORMATION if fixture.goes_ahead else Weight.THINK_AGAIN,
                f"{fixture.name} on {fixture.date} finds {_away(programme, fixture)}"
                f"{_as_decided(fixture)}",
                "" if fixture.goes_ahead else _CLASH_REMEDY,
                ("fixtures", fixture.plan_index),
                greens=fixture.closed_greens,
                dates=(fixture.date,),
            )


def fixture_in_recovery(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Golf is planned before the greens putt smoothly."""
    for fixture in programme.fixtures:
        if fixture.recovering_greens and not fixture.closed_greens:
            yield Finding(
                "fixture-in-recovery",
                Weight.INFORMATION if fixture.goes_ahead else Weight.THINK_AGAIN,
                f"{fixture.name} on {fixture.date} comes before "
                f"{plan_greens(programme.greens, fixture.recovering_greens)} "
                f"{'putts' if len(fixture.recovering_greens) == 1 else 'putt'} well again"
                f"{_as_decided(fixture)}",
                "" if fixture.goes_ahead else _CLASH_REMEDY,
                ("fixtures", fixture.plan_index),
                greens=fixture.recovering_greens,
                dates=(fixture.date,),
            )


def recovery_into_winter(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Growth stops before the greens have healed."""
    for period in programme.periods:
        waiting = [r for r in period.recoveries if r.growth_stops]
        if waiting:
            stop = min(r.growth_stops for r in waiting if r.growth_stops)
            returns = [r.growth_returns for r in waiting if r.growth_returns]
            spring = f"; it does not return before about {max(returns)}" if returns else ""
            greens = tuple(recovery.green for recovery in waiting)
            yield Finding(
                "recovery-into-winter",
                Weight.THINK_AGAIN,
                f"{plan_greens(programme.greens, greens)} may not have healed when growth stops, "
                f"about {stop} in an ordinary year{spring}",
                "Work earlier in the season if you can; the notices say plainly that marks stay",
                ("works", period.opening_works[0].plan_index, "dates"),
                work=period.opening_works[0].id,
                greens=greens,
                dates=period.days,
            )


def work_before_issue(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Some of it has begun when the notices go out: in the middle of the work, or by a slip."""
    works = [work for work in programme.works if work.dates[0] < programme.issued]
    if works:
        first = min(works, key=lambda work: work.dates[0])
        yield Finding(
            "date-past",
            Weight.INFORMATION,
            _begun(len(works), f"{first.operation.name} begins", "works begin", first.dates[0]),
            "",
            ("works", first.plan_index, "dates"),
            work=first.id,
            dates=first.dates,
        )
    closures = [shut for shut in programme.closures if shut.dates[0] < programme.issued]
    if closures:
        shut = min(closures, key=lambda shut: shut.dates[0])
        one = f"the closure of {shut.what} begins"
        yield Finding(
            "date-past",
            Weight.INFORMATION,
            _begun(len(closures), one, "closures begin", shut.dates[0]),
            "",
            ("closures", shut.plan_index, "dates"),
            dates=shut.dates,
        )


def _begun(count: int, one: str, several: str, first: dt.date) -> str:
    if count == 1:
        return f"{one} on {first}, before the date of issue"
    return f"{count} {several} before the date of issue, the first on {first}"


def nothing_to_fill(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A dressing is to fill holes, and there are none."""
    for work in programme.works:
        if "fill" not in work.settings.given:
            continue
        empty = tuple(
            need.green for need in programme.sand if need.work == work.id and not need.fills
        )
        if empty:
            where = plan_greens(programme.greens, empty)
            yield Finding(
                "nothing-to-fill",
                Weight.THINK_AGAIN,
                f"this dressing is to fill holes, but no work opens any on {where} before it",
                "Give a rate, or move the dressing after the holes are made",
                ("works", work.plan_index, "settings", "fill"),
                work=work.id,
                greens=empty,
                dates=work.dates,
            )


def rests_on_defaults(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """Say what the estimates rest on where the plan is silent."""
    if plan.works and plan.course.monthly_mean_temperature is None:
        turned = ", half a year turned," if is_southern(plan.club) else ""
        yield Finding(
            "temperatures-not-stated",
            Weight.INFORMATION if may_be_british(plan) else Weight.THINK_AGAIN,
            "recovery is worked out with the mean temperatures of four British and Irish "
            f"stations{turned}{'' if may_be_british(plan) else ' which are hardly those of your place'}",
            "Add course: monthly_mean_temperature: with twelve figures for your place",
            ("course",),
        )
    assumed = tuple(key for key, green in programme.greens.items() if not green.area_given)
    if assumed:
        yield Finding(
            "area-not-stated",
            Weight.INFORMATION,
            f"greens without an area are taken to be {DEFAULT_AREA_M2:g} m² each",
            "Add the area of each green",
            ("course", "greens"),
            greens=assumed,
        )


CHECKS: tuple[Check, ...] = (
    no_sender,
    colour_darkened,
    logo_too_small,
    letters_not_printed,
    photograph_of_nothing,
    services_not_checked,
    *AGRONOMIC_CHECKS,
    *ORDER_CHECKS,
    turf_not_rooted,
    *RESERVE_CHECKS,
    *SEASON_CHECKS,
    *TRENCH_CHECKS,
    fixture_on_closed_greens,
    fixture_in_recovery,
    *FIXTURE_CHECKS,
    fewer_than_nine_holes,
    nowhere_to_putt,
    recovery_into_winter,
    work_before_issue,
    day_too_long,
    not_enough_people,
    hired_people_every_day,
    machine_in_two_places,
    work_before_light,
    nothing_to_fill,
    *CUT_CHECKS,
    rests_on_defaults,
    light_not_known,
)


def _as_decided(fixture: Fixture) -> str:
    if fixture.decided is Decided.MOVED:
        return f", and was moved there from {fixture.moved_from}"
    if fixture.goes_ahead:
        counts = "" if fixture.decided is Decided.PLAY_ON else " and does not count"
        return f"; it goes ahead{counts}, as decided"
    return ""


def _away(programme: Programme, fixture: Fixture) -> str:
    """Say which greens are closed, and which have temporary ones."""
    found = {
        status: tuple(
            green
            for green in fixture.closed_greens
            if programme.status_on(fixture.date, green) is status
        )
        for status in (PlayStatus.CLOSED, PlayStatus.TEMPORARY)
    }
    closed, replaced = (
        plan_greens(programme.greens, greens) if greens else "" for greens in found.values()
    )
    few = "a temporary green" if len(found[PlayStatus.TEMPORARY]) == 1 else "temporary greens"
    parts = (closed and f"{closed} closed", replaced and f"{few} in place of {replaced}")
    return " and ".join(filter(None, parts))


__all__ = ["CHECKS", "Check", "check_programme"]
