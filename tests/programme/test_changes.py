"""What is different between two programmes: found by identity, read both ways, carried out."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Callable
from dataclasses import replace

from hypothesis import given, settings

from notices.plan.model import Plan
from notices.programme.answers_as_json import changes_as_json
from notices.programme.changes import Days, Spot, calendar_of, compare
from notices.programme.model import (
    Aspect,
    Change,
    ChangeKind,
    Changes,
    Move,
    Programme,
    Subject,
)
from notices.programme.work_out import work_out
from tests.programme.strategies import plans

ProgrammeOf = Callable[..., Programme]

ISSUED = dt.date(2026, 1, 5)
COURSE = """
course:
  greens: [{green: 1-6, area: 500 m2}, {green: Putting green, area: 300 m2}]
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
works:
"""
CORES = "{operation: hollow tining, id: cores, dates: 2026-09-14 to 2026-09-15"
THE_14TH, THE_15TH, THE_17TH = (dt.date(2026, 9, day) for day in (14, 15, 17))


def few(examples: int) -> Callable[[Callable[..., None]], Callable[..., None]]:
    return settings(max_examples=examples, deadline=None)


def dates(programme: Programme) -> dict[tuple[Subject, str], dict[Spot, Days]]:
    return {
        (subject, key): dict(spots)
        for subject, by_key in calendar_of(programme).items()
        for key, spots in by_key.items()
    }


def carried_out(
    calendar: dict[tuple[Subject, str], dict[Spot, Days]], changes: Changes
) -> dict[tuple[Subject, str], dict[Spot, Days]]:
    """Take the old days out and put the new ones in, as the changes say."""
    after = {
        key: {spot: set(days) for spot, days in spots.items()} for key, spots in calendar.items()
    }
    no_dates = (ChangeKind.RESERVE, ChangeKind.IN_THE_WAY, ChangeKind.CLEAR)
    for change in changes.changes:
        if change.kind in no_dates or change.subject is Subject.PERIOD:
            continue
        spots = after.setdefault((change.subject, change.id), {})
        for move in change.moves:
            for green in move.greens or ("",):
                days = spots.setdefault((green, move.ordinal), set())
                days -= set(move.before)
                days |= set(move.after)
    return {
        key: {spot: tuple(sorted(days)) for spot, days in spots.items() if days}
        for key, spots in after.items()
        if any(spots.values())
    }


PAIRS = (
    (ChangeKind.ADDED, ChangeKind.DROPPED),
    (ChangeKind.EXTENDED, ChangeKind.SHORTENED),
    (ChangeKind.GREENS_ADDED, ChangeKind.GREENS_LEFT_OUT),
    (ChangeKind.WORSE, ChangeKind.BETTER),
    (ChangeKind.LATER, ChangeKind.SOONER),
    (ChangeKind.IN_THE_WAY, ChangeKind.CLEAR),
)
MIRRORED = dict(PAIRS) | {other: one for one, other in PAIRS}


def mirrored(change: Change) -> Change:
    """Return the same change as one who looks from the new programme to the old would tell it."""
    return replace(
        change,
        kind=MIRRORED.get(change.kind, change.kind),
        moves=tuple(replace(move, before=move.after, after=move.before) for move in change.moves),
        before=change.after,
        after=change.before,
    )


@few(25)
@given(plans(), plans())
def test_changes_lead_from_one_plan_to_the_other_and_back(one: Plan, other: Plan) -> None:
    old, new = work_out(one, ISSUED), work_out(other, ISSUED)
    there, back = compare(old, new), compare(new, old)
    assert not compare(old, old)
    assert carried_out(dates(old), there) == dates(new)
    assert carried_out(dates(new), back) == dates(old)
    assert Counter(mirrored(change) for change in back.changes) == Counter(there.changes)


def changes_of(programme_of: ProgrammeOf, before: str, after: str) -> Changes:
    return compare(programme_of(COURSE + before), programme_of(COURSE + after))


def test_a_work_that_moves_in_part_is_told_with_its_greens(programme_of: ProgrammeOf) -> None:
    # Six greens over two days: three a day in the order of the list.
    changes = changes_of(
        programme_of,
        f"  - {CORES}}}\n",
        "  - {operation: hollow tining, id: cores, dates: '2026-09-14, 2026-09-17'}\n",
    )
    assert changes.of(ChangeKind.MOVED) == (
        Change(
            ChangeKind.MOVED,
            Subject.WORK,
            "cores",
            "hollow tining",
            (Move((THE_15TH,), (THE_17TH,), ("4", "5", "6")),),
        ),
    )


def test_more_days_and_fewer_days(programme_of: ProgrammeOf) -> None:
    short, long = f"  - {CORES}}}\n", f"  - {CORES.replace('09-15', '09-16')}}}\n"
    assert changes_of(programme_of, short, long).of(ChangeKind.EXTENDED)
    assert changes_of(programme_of, long, short).of(ChangeKind.SHORTENED)


def test_greens_that_are_no_longer_included(programme_of: ProgrammeOf) -> None:
    day = CORES.replace(" to 2026-09-15", "")
    changes = changes_of(
        programme_of,
        f"  - {day}, greens: '1-6, Putting green'}}\n",
        f"  - {day}, greens: 1-6}}\n",
    )
    (left,) = changes.about(Subject.WORK)
    assert (left.kind, left.moves) == (
        ChangeKind.GREENS_LEFT_OUT,
        (Move((THE_14TH,), (), ("Putting green",)),),
    )


def test_a_work_without_an_id_is_known_by_its_kind_and_number(programme_of: ProgrammeOf) -> None:
    first = "  - {operation: brushing, dates: 2026-09-01}\n"
    second = "  - {operation: brushing, dates: 2026-10-01}\n"
    changes = changes_of(programme_of, first + second, first)
    assert [(c.kind, c.id) for c in changes.changes] == [(ChangeKind.DROPPED, "brushing-2")]
    assert changes.stands == ("brushing-1",)


def test_harder_and_easier_play(programme_of: ProgrammeOf) -> None:
    closed = f"  - {CORES}, while_working: closed, reopen: 2 days later}}\n"
    easy = f"  - {CORES}, while_working: temporary green, reopen: next morning}}\n"
    worse = changes_of(programme_of, easy, closed).of(ChangeKind.WORSE)
    # What is worked on on the 14th is closed until the 16th, so that on the 15th all six are.
    assert [(c.name, c.aspect, c.before, c.after) for c in worse] == [
        ("hollow tining", Aspect.WHILE_WORKING, "temporary green", "closed"),
        ("hollow tining", Aspect.REOPEN, "1", "2"),
        ("holes left", None, "6", "0"),
    ]
    assert len(changes_of(programme_of, closed, easy).of(ChangeKind.BETTER)) == 3


def test_a_setting_is_told_in_the_words_in_which_it_is_typed(programme_of: ProgrammeOf) -> None:
    thin, thick = (f"  - {CORES}, settings: {{tine_diameter: {w}}}}}\n" for w in ("10 mm", "13 mm"))
    changes = changes_of(programme_of, thin, thick).of(ChangeKind.OTHERWISE)
    assert ("tine_diameter", "10 mm", "13 mm") in {(c.setting, c.before, c.after) for c in changes}


def test_fixtures_that_move_come_and_get_in_the_way(programme_of: ProgrammeOf) -> None:
    plan = f"  - {CORES}}}\nfixtures:\n  - {{name: Medal, date: 2026-09-12}}\n"
    moved = plan.replace("2026-09-12", "2026-09-15") + "  - {name: Bowl, date: 2026-06-01}\n"
    changes = changes_of(programme_of, plan, moved)
    assert {(c.kind, c.id) for c in changes.about(Subject.FIXTURE)} == {
        (ChangeKind.MOVED, "Medal"),
        (ChangeKind.IN_THE_WAY, "Medal"),
        (ChangeKind.ADDED, "Bowl"),
    }
    (met,) = changes.of(ChangeKind.IN_THE_WAY)
    assert (met.aspect, met.greens) == (Aspect.CLOSED, ("4", "5", "6"))


def test_closures_and_restrictions(programme_of: ProgrammeOf) -> None:
    plan = f"  - {CORES}}}\nclosures:\n  - {{what: course, dates: 2026-11-02}}\n"
    other = plan.replace("2026-11-02", "2026-11-02 to 2026-11-03, reason: frost")
    other += "restrictions: [{what: buggies, dates: 2026-11-02}]\n"
    changes = changes_of(programme_of, plan, other)
    assert [(c.kind, c.subject, c.aspect) for c in changes.changes] == [
        (ChangeKind.EXTENDED, Subject.CLOSURE, None),
        (ChangeKind.OTHERWISE, Subject.CLOSURE, Aspect.REASON),
        (ChangeKind.ADDED, Subject.RESTRICTION, None),
    ]


def test_later_recovery_follows_from_later_work(programme_of: ProgrammeOf) -> None:
    later = f"  - {CORES.replace('14 to 2026-09-15', '28 to 2026-09-29')}}}\n"
    changes = changes_of(programme_of, f"  - {CORES}}}\n", later)
    assert [(c.id, c.name) for c in changes.of(ChangeKind.LATER)] == [
        ("cores", "open again"),
        ("cores", "putting well"),
    ]


def test_the_date_of_issue_alone_is_no_change(programme_of: ProgrammeOf) -> None:
    plan = f"{COURSE}  - {CORES}}}\n"
    assert not compare(programme_of(plan), programme_of(plan, dt.date(2026, 6, 1)))


def test_changes_as_data(programme_of: ProgrammeOf) -> None:
    later = f"  - {CORES}, reserve_dates: 2026-09-17}}\n"
    data = changes_as_json(changes_of(programme_of, f"  - {CORES}}}\n", later))
    assert data["stands"] == []
    (reserve,) = [change for change in data["changes"] if change["kind"] == "reserve dates changed"]
    assert reserve["moves"] == [{"greens": [], "ordinal": 1, "before": [], "after": ["2026-09-17"]}]


def test_a_setting_and_a_circumstance_are_one_aspect_in_data(programme_of: ProgrammeOf) -> None:
    thin = f"  - {CORES}, note: Thinner tines this year., settings: {{tine_diameter: 10 mm}}}}\n"
    data = changes_as_json(changes_of(programme_of, f"  - {CORES}}}\n", thin))
    otherwise = [one for one in data["changes"] if one["kind"] == "otherwise changed"]
    assert [(one["aspect"], one["after"]) for one in otherwise] == [
        ("tine_diameter", "10 mm"),
        ("note", "Thinner tines this year."),
    ]
