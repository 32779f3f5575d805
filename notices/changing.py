"""Edit a plan file in place: postpone a work, or record that it is finished.

Only the values that change are written anew. The edited text must load and be one that can be
built before it replaces the file, and the file as it was is kept beside it.
"""

from __future__ import annotations

import datetime as dt
import enum
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from notices import disk
from notices.buildable import all_findings
from notices.errors import EditFault, PlanFault
from notices.findings import Finding, Place, Weight, ended
from notices.plan.days import all_days
from notices.plan.followers import named_works, work_called
from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.load import LoadedPlan, load_plan
from notices.plan.model import Observed
from notices.plan.places import place_in_a_sentence
from notices.plan.postpone import put_off, write_put_off
from notices.plan.record import Record, write_record
from notices.plan.refusal import Refusal
from notices.plan.workbook_layout import OBSERVED
from notices.plan.yaml_edits import PlanText
from notices.programme.lay_out import club_greens
from notices.programme.model import Programme, Work
from notices.programme.outcomes import Outcome, outcomes
from notices.programme.records import work_on_record
from notices.programme.work_out import work_out

WORKBOOKS = (".xlsx", ".ods", ".xls")


class _Command(enum.Enum):
    """What is to be done with a work: how a refusal names it, and how to do it in a workbook."""

    POSTPONE = "to postpone", "Write the new dates there"
    FINISH = "to finish", "Write the work and its days there, in a row of its own"

    def __init__(self, purpose: str, by_hand: str) -> None:
        self.purpose = purpose
        self.by_hand = by_hand


@dataclass(frozen=True)
class Changed:
    """A plan before and after a change to its file."""

    before: Programme
    after: Programme
    backup: Path
    """The file as it was."""
    doubts: tuple[Finding, ...]
    """Findings to think about again that were not there before, with their places."""
    left: tuple[str, ...] = ()
    """What stands on the old days and was not moved, a sentence each."""

    @property
    def new_outcomes(self) -> tuple[Outcome, ...]:
        """What can be said of promises now, and could not be before."""
        before = outcomes(self.before)
        return tuple(outcome for outcome in outcomes(self.after) if outcome not in before)


def postpone(
    path: Path,
    work: str,
    to: dt.date | None,
    day: dt.date | None,
    *,
    today: dt.date,
    alone: bool = False,
    reason: str = "",
) -> Changed:
    """Put a work off, with what goes with it and what follows it.

    Parameters
    ----------
    path
        The plan file.
    work
        Its id or its kind.
    to
        The new first day; None for the reserve dates.
    day
        The one day that is put off; None for all of them.
    today
        Date of issue, where the plan has none.
    alone
        Whether works of the same dates stay where they are.
    reason
        Why, such as heavy rain, told with the new dates; empty to tell none.

    Raises
    ------
    EditFault
        If it cannot be done, with the reason; the file is then as it was.
    PlanFault
        If the plan is at fault already.
    """
    _refuse_workbook(path, work, _Command.POSTPONE)
    file = _read(path, today)
    plan = file.loaded.plan
    try:
        index = _index(file.loaded, work, _Command.POSTPONE)
        move = put_off(plan, index, to, day, alone=alone)
        greens_on = _greens_by_day(file.programme, index) if day is not None else {}
        write_put_off(file.text, file.loaded, move, greens_on, " ".join(reason.split()))
    except Refusal as error:
        raise EditFault(_sentence(error)) from None
    left = tuple(
        f"{what} still stands on {_span_of_days(both)}"
        for what, dates in (
            *(
                (f"The closure of {place_in_a_sentence(shut.what)}", shut.dates)
                for shut in plan.closures
            ),
            *((f"The restriction on {one.what}", one.dates) for one in plan.restrictions),
        )
        if (both := set(all_days(dates)) & set(move.days))
    )
    asked = {"--to": to.isoformat() if to else "reserve"}
    return replace(_write(file, today, asked), left=left)


def finish(
    path: Path,
    work: str,
    *,
    greens: str | None,
    done: dt.date | None,
    putting_smoothly: dt.date | None,
    healed: dt.date | None,
    today: dt.date,
) -> tuple[Changed, Record]:
    """Record that a work is done, or when its greens had come back.

    Parameters
    ----------
    path
        The plan file.
    work
        Its id or its kind.
    greens
        The greens that it is about, as one types them; None for all of the work.
    done
        When it was done; the last planned day when None, or that of the record there is.
    putting_smoothly, healed
        When the greens putted smoothly, and when nothing was left to see; None where not known.
    today
        Date of issue, where the plan has none.

    Raises
    ------
    EditFault
        If it cannot be done, with the reason; the file is then as it was.
    PlanFault
        If the plan is at fault already.
    """
    _refuse_workbook(path, work, _Command.FINISH)
    file = _read(path, today)
    loaded, programme = file.loaded, file.programme
    try:
        planned = programme.works[_index(loaded, work, _Command.FINISH)]
        refs = _chosen(loaded, planned, greens)
        record = Record(
            planned.operation.name,
            done or _day_done(loaded, programme, planned, refs),
            refs,
            putting_smoothly,
            healed,
        )
        if done:
            _check_done(programme, planned, done)
        write_record(file.text, loaded.plan, record)
    except Refusal as error:
        raise EditFault(_sentence(error)) from None
    days = {"--on": done, "--putting-smoothly": putting_smoothly, "--healed": healed}
    asked = {option: day.isoformat() for option, day in days.items() if day}
    return _write(file, today, asked), record


def _refuse_workbook(path: Path, work: str, command: _Command) -> None:
    """Say where in a workbook the change is to be made by hand: only YAML is edited in place."""
    if path.suffix.lower() not in WORKBOOKS:
        return
    loaded = load_plan(path)
    try:
        index = _index(loaded, work, command)
    except Refusal as error:
        raise EditFault(_sentence(error)) from None
    match command:
        case _Command.POSTPONE:
            dates = Finding("workbook", Weight.CANNOT_BUILD, "", path=("works", index, "dates"))
            place = loaded.located([dates])[0].place
        case _Command.FINISH:
            place = Place(str(path), sheet=OBSERVED.name)
    raise EditFault(
        f"{place}: this is a workbook, and the command changes only plans in YAML. "
        f"{command.by_hand}, or go on with a plan in YAML: notices convert {path} {path.with_suffix('.yaml')}"
    )


@dataclass(frozen=True)
class _PlanFile:
    """A plan file before its change, and its text to be edited."""

    path: Path
    content: bytes
    loaded: LoadedPlan
    programme: Programme
    text: PlanText


def _read(path: Path, today: dt.date) -> _PlanFile:
    loaded = load_plan(path)
    if loaded.source.tables:
        raise EditFault(
            f"{path} takes works from a table, and only works in the plan itself can be changed "
            "this way; change the dates in the table"
        )
    with disk.faults_in_words(path, EditFault, "ask its owner for the right to"):
        content = path.read_bytes()
    programme = work_out(loaded.plan, loaded.plan.issued or today)
    return _PlanFile(path, content, loaded, programme, PlanText(content.decode("utf-8")))


def _write(file: _PlanFile, today: dt.date, asked: Mapping[str, str]) -> Changed:
    """Write the changed plan, if it is still one that can be built."""
    changed = file.text.result().encode()
    if changed == file.content:
        raise EditFault(f"{file.path} says so already")
    before = file.programme
    try:
        loaded = load_plan(file.path, changed)
        after = work_out(loaded.plan, loaded.plan.issued or today)
        loaded.refuse(all_findings(loaded, after))
    except PlanFault as fault:
        _refuse_what_stood_before(file, fault)
        told = dict.fromkeys(_as_fault_of_option(finding, asked) for finding in fault.findings)
        raise EditFault("\n".join(told)) from None
    backup = disk.replace_file(file.path, file.content, changed, EditFault)
    known = {_identity(finding) for finding in before.findings}
    doubts = (
        finding
        for finding in after.findings
        if finding.weight is Weight.THINK_AGAIN and _identity(finding) not in known
    )
    return Changed(before, after, backup, loaded.located(doubts))


def _refuse_what_stood_before(file: _PlanFile, fault: PlanFault) -> None:
    """Stop at faults that were there before the change and remain: no option can mend them."""
    still = {_identity(finding) for finding in fault.findings}
    before = all_findings(file.loaded, file.programme)
    file.loaded.refuse(finding for finding in before if _identity(finding) in still)


def _as_fault_of_option(finding: Finding, asked: Mapping[str, str]) -> str:
    """Blame an option for a finding in the edited plan, since nobody gets to see that plan."""
    named = {option: day for option, day in asked.items() if day in finding.message} or asked
    options = " and ".join(f"{option} {day}" for option, day in named.items())
    sentences = (ended(part) for part in (finding.message, finding.suggestion) if part)
    return f"With {options} the plan could not be built: {' '.join(sentences)}"


def _identity(finding: Finding) -> tuple[str, str, str]:
    """Return what a finding keeps when the lines of the plan move."""
    return finding.code, finding.work, finding.message


def _index(loaded: LoadedPlan, work: str, command: _Command) -> int:
    named = named_works([(one.operation, one.id or "") for one in loaded.plan.works])
    words = " ".join(work.strip().lower().split())
    return work_called(words, named, command.purpose)


def _greens_by_day(programme: Programme, index: int) -> dict[dt.date, str]:
    """Return the greens of each day as they are typed; none where a green takes several days."""
    work = programme.works[index]
    if len(work.greens) < sum(len(visit.greens) for visit in work.main_visits):
        return {}
    return {visit.date: _typed(programme, visit.greens) for visit in work.main_visits}


def _typed(programme: Programme, keys: tuple[str, ...]) -> str:
    """Write greens as a plan has them: by the number of the hole, with its course if several."""
    several = len(programme.courses) > 1
    refs: list[GreenRef] = []
    for key in keys:
        green = programme.greens[key]
        if green.number is None:
            refs.append(key)
        else:
            refs.append(f"{green.course} {green.number}" if several else green.number)
    return format_greens(refs)


def _chosen(loaded: LoadedPlan, work: Work, greens: str | None) -> tuple[GreenRef, ...] | None:
    """Read the greens that are recorded; None where they are all of the work."""
    if greens is None:
        return None
    refs = parse_greens(greens)
    chosen = club_greens(loaded.plan).choose(refs)
    if chosen.problems:
        raise Refusal(chosen.problems[0].message, chosen.problems[0].suggestion)
    others = [key for key in chosen.greens if key not in work.greens]
    if others:
        raise Refusal(f"{work.operation.name} is not done on green {others[0]}")
    return None if set(chosen.greens) == set(work.greens) else refs


def _check_done(programme: Programme, work: Work, done: dt.date) -> None:
    """Refuse a day whose record would be that of another work, or of another season."""
    of_it = work_on_record(Observed(operation=work.operation.name, done=done), programme.works)
    if of_it is None or of_it.id != work.id:
        raise Refusal(
            f"--on {done} is no day of {work.operation.name}, planned for {_span_of_days(set(work.dates))}",
            "write the day on which it was done, or postpone the work first",
        )


def _day_done(
    loaded: LoadedPlan,
    programme: Programme,
    work: Work,
    refs: tuple[GreenRef, ...] | None,
) -> dt.date:
    """Return the day on record already, or else the last one planned for these greens."""
    for known in loaded.plan.observed:
        of_it = work_on_record(known, programme.works)
        if of_it is not None and of_it.id == work.id and known.greens == refs:
            return known.done
    keys = club_greens(loaded.plan).choose(refs).greens if refs else work.greens
    return max(work.last_day_on(key) for key in keys)


def _sentence(error: Refusal) -> str:
    words = str(error)
    return f"{words[:1].upper()}{words[1:]}"


def _span_of_days(days: set[dt.date]) -> str:
    first, last = min(days), max(days)
    return f"{first}" if first == last else f"{first} to {last}"
