"""From a plan to its programme."""

from __future__ import annotations

import datetime as dt
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import replace

from notices.agronomy.climate import BRITISH_MEAN
from notices.agronomy.growth import ANNUAL_MEADOW_GRASS_OPTIMUM_C, Climate, Grass
from notices.plan.days import all_days
from notices.plan.green_list import parse_greens
from notices.plan.model import Closure as WrittenClosure
from notices.plan.model import Plan
from notices.programme import figures
from notices.programme.checks import check_programme
from notices.programme.lay_out import green_keys, lay_out_greens, lay_out_works
from notices.programme.model import (
    Approval,
    Closure,
    Club,
    Decision,
    Figure,
    Fixture,
    Green,
    PlayStatus,
    Programme,
    Restriction,
    Sender,
    Work,
)
from notices.programme.pace import club_paces
from notices.programme.periods import group_works, make_period
from notices.programme.play import Statuses, play_status
from notices.programme.recovery import RecoveryModel, recover_works
from notices.programme.sand import sand_by_green


def work_out(plan: Plan, issued: dt.date) -> Programme:
    """Work out everything that follows from a plan.

    Parameters
    ----------
    plan
        A plan that has been read and checked.
    issued
        Date of issue of the notices; nothing here asks a clock.

    Returns
    -------
    Programme
        With its figures and findings; the findings carry paths into the plan, not places.
    """
    greens = lay_out_greens(plan)
    works = lay_out_works(plan, greens)
    climate = climate_of(plan)
    recovery_model = RecoveryModel(climate)
    needs = sand_by_green(works, plan.sand.density)
    recoveries = recover_works(works, needs, recovery_model)
    paces = club_paces(plan.crew)
    periods = tuple(make_period(group, recoveries, recovery_model) for group in group_works(works))
    closures = tuple(_closures(plan, greens))
    statuses = play_status(greens, works, periods, closures)

    found: list[Figure] = []
    climate_default = plan.course.monthly_mean_temperature is None
    for work in works:
        found += figures.figures_of_surface(work, greens)
        own = [need for need in needs if need.work == work.id]
        found += figures.figures_of_sand(
            work,
            own,
            greens,
            plan.sand.density,
            density_given="density" in plan.sand.model_fields_set,
        )
        found += figures.figures_of_time(work, greens, paces)
        found += figures.figures_of_growth(work, climate, default_used=climate_default)
        found += figures.figures_of_recovery(
            work, recoveries[work.id], default_used=climate_default or _rests_on_default(work)
        )

    programme = Programme(
        club=_club(plan),
        issued=issued,
        greens=greens,
        works=works,
        periods=periods,
        closures=closures,
        fixtures=tuple(_fixtures(plan, statuses)),
        restrictions=tuple(
            Restriction(r.what, all_days(r.dates), r.exception or "", r.ask or "")
            for r in plan.restrictions
        ),
        decision=(
            Decision(
                plan.decision.by,
                plan.decision.when,
                plan.decision.confirmed,
                plan.decision.where or "",
            )
            if plan.decision
            else None
        ),
        approval=(
            Approval(
                plan.approval.pending,
                plan.approval.by or "",
                plan.approval.date,
                plan.approval.reference or "",
            )
            if plan.approval
            else None
        ),
        status=statuses,
        figures=tuple(found),
        recoveries=recoveries,
        sand=needs,
    )
    return _with_findings(programme, plan)


def climate_of(plan: Plan) -> Climate:
    """Return the club's climate; without monthly means, that of the British lowlands."""
    course = plan.course
    grass = Grass(course.grass)
    optimum = course.optimum_temperature
    if optimum is None and grass is Grass.COOL_SEASON and plan.club.language == "en-GB":
        optimum = ANNUAL_MEADOW_GRASS_OPTIMUM_C
    return Climate.from_monthly_means(
        course.monthly_mean_temperature or BRITISH_MEAN, grass, optimum
    )


def slug(name: str) -> str:
    """Return a name as it can stand in addresses and identities: small letters and hyphens."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-") or "club"


def _club(plan: Plan) -> Club:
    club, name = plan.club, slug(plan.club.name)
    # RFC 2606: .invalid can never be delivered to, so a placeholder does no harm.
    address = club.sender.email if club.sender else f"office@{name}.invalid"
    return Club(
        name=club.name,
        slug=name,
        sender=Sender(
            role=club.sender.role if club.sender else "Course Manager",
            name=(club.sender.name or "") if club.sender else "",
            email=address,
            placeholder=club.sender is None,
        ),
        reply_to=club.reply_to or "",
        website=club.website or "",
        contact=club.contact or "",
        language=club.language,
        units=club.units,
    )


_GREENS = re.compile(r"(?:greens?|holes?)\s+(.+)", re.IGNORECASE)


def _closures(plan: Plan, greens: Mapping[str, Green]) -> list[Closure]:
    counts: dict[str, int] = {}
    closures = []
    for index, written in enumerate(plan.closures):
        name = slug(written.what)
        counts[name] = counts.get(name, 0) + 1
        closures.append(
            Closure(
                id=f"closure-{name}-{counts[name]}",
                what=written.what,
                greens=_greens_closed(written, greens),
                whole_course=written.what.strip().lower() in ("course", "the course"),
                dates=all_days(written.dates),
                instead=written.instead or "",
                reason=written.reason or "",
                plan_index=index,
            )
        )
    return closures


def _greens_closed(closure: WrittenClosure, greens: Mapping[str, Green]) -> tuple[str, ...]:
    match = _GREENS.fullmatch(closure.what.strip())
    if not match:
        return green_keys([closure.what], greens) if closure.what in greens else ()
    try:
        return green_keys(parse_greens(match[1]), greens)
    except (ValueError, KeyError):
        return ()


def _fixtures(plan: Plan, statuses: Statuses) -> list[Fixture]:
    fixtures = []
    for index, written in enumerate(plan.fixtures):
        if written.date is None or written.name is None:
            continue
        on_day = statuses.get(written.date, {})
        away = (PlayStatus.CLOSED, PlayStatus.TEMPORARY)
        fixtures.append(
            Fixture(
                name=written.name,
                date=written.date,
                kind=written.kind,
                closed_greens=tuple(g for g, s in on_day.items() if s in away),
                recovering_greens=tuple(g for g, s in on_day.items() if s is PlayStatus.RECOVERING),
                plan_index=index,
            )
        )
    return sorted(fixtures, key=lambda fixture: (fixture.date, fixture.name))


def _rests_on_default(work: Work) -> bool:
    return work.settings.rests_on_default(*work.settings.values)


def _with_findings(programme: Programme, plan: Plan) -> Programme:
    reasons = {accepted.finding: accepted for accepted in plan.accepted}
    open_findings, accepted = [], []
    for finding in check_programme(programme, plan):
        if (reason := reasons.get(finding.code)) is not None:
            accepted.append((finding, reason.by, reason.why))
        else:
            open_findings.append(finding)
    return replace(programme, findings=tuple(open_findings), accepted=tuple(accepted))
