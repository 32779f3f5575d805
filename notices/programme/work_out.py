"""From a plan to its programme."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from dataclasses import replace
from itertools import chain

from notices.plan.club_greens import ClubGreens
from notices.plan.days import all_days
from notices.plan.model import Plan
from notices.plan.places import read_place
from notices.programme import figures
from notices.programme.accepting import doubtful_acceptances, weighed
from notices.programme.checks import check_programme
from notices.programme.climate import ClubClimate, club_climate, is_southern
from notices.programme.cost import figures_of_cost, sand_order
from notices.programme.fixtures import fixtures_of
from notices.programme.holes_in_play import days_of_play
from notices.programme.hours import stretches_by_day
from notices.programme.lay_out import club_greens, lay_out_greens, lay_out_works
from notices.programme.measured import measured_on_greens
from notices.programme.model import (
    Approval,
    Closure,
    Club,
    Decision,
    Figure,
    Mailing,
    Programme,
    Restriction,
    Sender,
)
from notices.programme.pace import club_paces
from notices.programme.periods import group_works, make_period
from notices.programme.photographs import photographs
from notices.programme.play import play_status
from notices.programme.profile import profile_of
from notices.programme.records import filled_works, fit_records, seen_by_work
from notices.programme.recovery import RecoveryModel, recover_works
from notices.programme.rules_of_play import rules_in_play, score_days
from notices.programme.same_greens import with_others
from notices.programme.sand import filled_by, sand_of
from notices.programme.season import greens_back, season
from notices.programme.slugs import ALL, slug
from notices.programme.thatch import through_thatch
from notices.programme.timetable import timetables
from notices.programme.weather import go_or_no_go


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
    programme, climate, recovery_model = _first_pass(plan, issued)
    programme = replace(
        programme,
        figures=_figures(programme, plan, climate, recovery_model),
        season=season(programme.periods, climate, recovery_model),
        greens_back=greens_back(programme.recoveries),
    )
    programme = _with_timetables(programme, plan)
    programme = replace(programme, stretches=stretches_by_day(programme))
    programme = replace(programme, play=days_of_play(programme))
    programme = replace(programme, rules=rules_in_play(programme), scores=score_days(programme))
    return _with_findings(programme, plan)


def _first_pass(plan: Plan, issued: dt.date) -> tuple[Programme, ClubClimate, RecoveryModel]:
    """Work out days, recovery, fixtures and play: all that figures and timetables are made of."""
    greens = lay_out_greens(plan)
    works = lay_out_works(plan)
    climate = club_climate(plan)
    needs = sand_of(plan, works)
    records, unused_records = fit_records(
        plan.observed, works, filled_works(filled_by(works, needs)), climate.climate
    )
    recovery_model = RecoveryModel(climate.climate, records)
    recoveries = recover_works(works, needs, recovery_model)
    periods = with_others(
        [
            make_period(group, works, recoveries, needs, recovery_model)
            for group in group_works(works)
        ]
    )
    club = club_greens(plan)
    closures = tuple(_closures(plan, club))
    statuses = play_status(greens, works, periods, closures)
    programme = Programme(
        club=_club(plan),
        issued=issued,
        greens=greens,
        works=works,
        periods=periods,
        closures=closures,
        fixtures=tuple(fixtures_of(plan, greens, statuses)),
        restrictions=tuple(
            Restriction(r.what, all_days(r.dates), r.exception or "", r.ask or "")
            for r in plan.restrictions
        ),
        decision=_decision(plan),
        approval=_approval(plan),
        status=statuses,
        figures=(),
        recoveries=recoveries,
        sand=needs,
        texts={text.name: text.text for text in plan.texts},
        weather=go_or_no_go(works, climate.monthly_means),
        records=records,
        unused_records=unused_records,
        measured=measured_on_greens(plan, works),
        seen=seen_by_work(plan.observed, works, club),
        mailings=tuple(Mailing(m.document, m.moment, m.send) for m in plan.mailings),
        photographs=photographs(plan.photographs, works),
        profile=profile_of(plan, works),
    )
    return programme, climate, recovery_model


def _figures(
    programme: Programme, plan: Plan, climate: ClubClimate, recovery_model: RecoveryModel
) -> tuple[Figure, ...]:
    """Return every figure, work by work, then those of periods and of the whole plan."""
    bought = figures.SandPrice.of(plan)
    paces = club_paces(plan.crew)
    found: list[Figure] = []
    for work in programme.works:
        needs = [need for need in programme.sand if need.work == work.id]
        own = [
            *figures.figures_of_surface(work, programme.greens),
            *figures.figures_of_sand(work, needs, programme.greens, bought, programme.works),
        ]
        found += own
        found += figures.figures_of_time(work, programme.greens, paces)
        found += figures.figures_of_hands(work, programme.greens, plan.crew, own)
        found += figures.figures_of_growth(work, climate)
    ingredients = figures.Ingredients.of(programme, climate, recovery_model)
    recovered = {
        work.id: list(figures.figures_of_recovery(work, programme.recoveries[work.id], ingredients))
        for work in programme.works
    }
    found += chain.from_iterable(recovered.values())
    for period in programme.periods:
        leading = period.opening_works or period.works
        own = [figure for work in leading for figure in recovered[work.id]]
        found += figures.figures_of_promises(period, own)
        found += figures.figures_of_cut(period)
    ordered = [f for f in found if f.quantity == "sand" and f.green == ALL]
    found += figures.figures_of_order(ordered, bought)
    found += figures.figures_of_years(programme.works, programme.sand, programme.greens, bought)
    found += figures.figures_of_channels(programme.works)
    found += figures.figures_of_thatch(through_thatch(programme.works, plan), programme.greens)
    found += figures.figures_of_measurements(programme.measured, programme.greens)
    found += figures.figures_of_records(programme.works, programme.records, climate)
    return tuple(found)


def _with_timetables(programme: Programme, plan: Plan) -> Programme:
    """Lay out every day; its length is a figure like any other, and so is what it costs."""
    days = timetables(programme, plan)
    lengths = figures.figures_of_days(days.values())
    programme = replace(programme, timetables=days, figures=(*programme.figures, *lengths))
    costs = tuple(figures_of_cost(programme, plan))
    return replace(
        programme,
        figures=(*programme.figures, *costs),
        sand_order=sand_order(programme, plan),
    )


def _club(plan: Plan) -> Club:
    club, name = plan.club, slug(plan.club.name)
    # RFC 2606: .invalid can never be delivered to, so a placeholder does no harm.
    address = club.sender.email if club.sender else f"office@{name}.invalid"
    return Club(
        name=club.name,
        slug=name,
        sender=Sender(
            role=(club.sender.role or "") if club.sender else "",
            name=(club.sender.name or "") if club.sender else "",
            email=address,
            placeholder=club.sender is None,
        ),
        reply_to=club.reply_to or "",
        website=club.website or "",
        contact=club.contact or "",
        answers=club.answers or "",
        sign_off=club.sign_off or "",
        colour=club.colour or "",
        logo=club.logo or "",
        boards=club.boards or "",
        language=club.language,
        country=club.country or "",
        units=club.units or ("imperial" if club.language == "en-US" else "metric"),
        southern=is_southern(club),
    )


def _decision(plan: Plan) -> Decision | None:
    written = plan.decision
    if written is None:
        return None
    return Decision(written.by, written.when, written.confirmed, written.where or "")


def _approval(plan: Plan) -> Approval | None:
    written = plan.approval
    if written is None:
        return None
    return Approval(written.pending, written.by or "", written.date, written.reference or "")


def _closures(plan: Plan, club: ClubGreens) -> list[Closure]:
    counts: Counter[str] = Counter()
    closures = []
    for index, written in enumerate(plan.closures):
        name = slug(written.what, "place")
        counts[name] += 1
        place = read_place(written.what, club)
        closures.append(
            Closure(
                id=f"closure-{name}-{counts[name]}",
                what=written.what,
                greens=place.greens,
                whole_course=place.whole_course,
                dates=all_days(written.dates),
                instead=written.instead or _temporary(written.temporary, place.greens),
                temporary=written.temporary or "",
                reason=written.reason or "",
                plan_index=index,
                part=place.part,
                holes=place.holes,
                courses=place.courses,
            )
        )
    return sorted(closures, key=lambda closure: (closure.dates[0], closure.plan_index))


def _temporary(described: str | None, greens: tuple[str, ...]) -> str:
    """Say what golfers use where the plan only describes the temporary greens."""
    if not described:
        return ""
    return "a temporary green" if len(greens) == 1 else "temporary greens"


def _with_findings(programme: Programme, plan: Plan) -> Programme:
    open_findings, accepted, used = weighed(check_programme(programme, plan), programme, plan)
    doubtful = doubtful_acceptances(plan, programme, used)
    return replace(programme, findings=(*open_findings, *doubtful), accepted=accepted)
