"""The command line: reads options, calls the stages, says what happened.

What there is to say of a plan is found out elsewhere (`checking`, `building`, `changing`, `since`).

Data and findings go to standard output, progress and errors to standard error. Exit
status: 0 done, 1 the plan or a file is at fault, 2 wrong usage, 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import atexit
import datetime as dt
import gc
import json
import os
import re
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

import notices
from notices import terminal
from notices.errors import NoticesError, PlanFault
from notices.findings import Finding
from notices.paths import example_names

if TYPE_CHECKING:
    from notices.changing import Changed
    from notices.checking import Checked
    from notices.plan.load import LoadedPlan
    from notices.programme.model import Programme

INTERRUPTED = 128 + 2
"""What shells expect of a program that was ended by the signal of Ctrl-C, which is number 2."""

SWEPT_AFTER = 1_500_000
"""Things that Python makes before it looks for rings of them that nobody needs any more.

They fill some 300 MB; the whole pack of the full example makes fewer.
"""

RESERVE = "reserve"
"""What stands in the place of a day for the reserve dates of a work."""


def _day(typed: str) -> dt.date:
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        raise click.BadParameter("write the date as 2027-07-19") from None


def _day_or_reserve(typed: str) -> dt.date | str:
    return RESERVE if typed == RESERVE else _day(typed)


_PLAN = click.argument("plan", type=click.Path(path_type=Path))
_TODAY = click.option(
    "--today",
    type=_day,
    metavar="DATE",
    help="Date of issue, such as 2027-07-19, in place of the plan's own.",
)
_LINES = click.option(
    "--lines/--no-lines",
    default=True,
    help="Show the line of the plan below each finding, or put each finding on one line.",
)
_QUIET = click.option("-q", "--quiet", is_flag=True, help="Say only what stops the work.")
_VERBOSE = click.option("-v", "--verbose", is_flag=True, help="Say more of what is done.")


class _Faults(click.Group):
    """Shows what a person can mend as a sentence; everything else is a bug."""

    def invoke(self, ctx: click.Context) -> object:
        if terminal.wants_no_colour():
            ctx.color = False
        try:
            return super().invoke(ctx)
        except PlanFault as fault:
            terminal.show_findings(fault.findings, err=True)
            ctx.exit(fault.exit_status)
        except NoticesError as fault:
            click.echo(str(fault), err=True)
            ctx.exit(fault.exit_status)
        except KeyboardInterrupt:
            # What writes is not broken off once it has begun to put things in their places.
            click.echo("\nStopped: nothing was written.", err=True)
            ctx.exit(INTERRUPTED)


def run() -> None:
    """Run a command in a process that ends with it."""
    # Most of what a command makes is needed until it ends: looking through it again and again, and
    # taking it apart in the end, would be a fifth of what it does.
    gc.set_threshold(SWEPT_AFTER)
    atexit.register(gc.freeze)
    main()


@click.group(
    cls=_Faults,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="Exit status: 0 done, 1 the plan or a file is at fault, 2 wrong usage, 130 stopped.",
)
@click.version_option(notices.__version__, prog_name="notices")
def main() -> None:
    """Work on golf greens, planned once and explained to everyone.

    \b
    Example:
      notices new our-club
      notices check our-club/plan.yaml
      notices build our-club/plan.yaml --out pack
    """  # noqa: D301, click wants the sign itself


@main.command()
@_PLAN
@_TODAY
@click.option("--json", "as_json", is_flag=True, help="Write the findings as JSON.")
@click.option(
    "--better-dates",
    "better",
    is_flag=True,
    help="Try every other start in the same month for works whose dates clash.",
)
@click.option(
    "--patterns",
    is_flag=True,
    help="Lay the main works out in other ways, from all greens at once to a visit a week.",
)
@click.option(
    "--words",
    is_flag=True,
    help="Measure how easy each document is to read, and your own words in it.",
)
@_LINES
@_QUIET
@_VERBOSE
def check(
    plan: Path,
    today: dt.date | None,
    *,
    as_json: bool,
    better: bool,
    patterns: bool,
    words: bool,
    lines: bool,
    quiet: bool,
    verbose: bool,
) -> None:
    """Say what is wrong with a plan, or should be thought about again.

    \b
    Example:
      notices check plan.yaml
      notices check plan.yaml --words
    """  # noqa: D301, click wants the sign itself
    try:
        loaded = notices.load_plan(plan)
    except PlanFault as fault:
        _show_faults(fault.findings, as_json=as_json, lines=lines)
        sys.exit(fault.exit_status)
    # Who has a plan at fault does not wait for what works one out.
    from notices.checking import check_plan  # noqa: PLC0415

    checked = check_plan(
        loaded, _issued(loaded, today), better_dates=better, patterns=patterns, words=words
    )
    if verbose:
        _show_what_was_read(plan, loaded, checked.programme)
    if quiet:
        checked = checked.only_stopping()
    if as_json:
        click.echo(json.dumps(checked.as_json(), ensure_ascii=False))
    else:
        _show_checked(checked, lines=lines, quiet=quiet)
    if checked.stopping:
        sys.exit(PlanFault.exit_status)


@main.command()
@_PLAN
@click.option(
    "--out",
    required=True,
    type=click.Path(path_type=Path),
    help="Folder for the pack; one that notices made before is replaced whole.",
)
@click.option(
    "--since",
    metavar="OLD",
    type=click.Path(path_type=Path),
    help="The pack, or the plan, that this one replaces; it is kept.",
)
@_TODAY
@_QUIET
@_VERBOSE
def build(
    plan: Path,
    out: Path,
    since: Path | None,
    today: dt.date | None,
    *,
    quiet: bool,
    verbose: bool,
) -> None:
    """Write the whole pack: email, notice board, calendar, figures.

    Every document bears the number of the notice. With --since, what says the same as before keeps
    its number and its file, and the front page tells what to send, print and put up. What is new
    says what it replaces, and the calendar takes the place of the old one wherever that was
    imported.

    \b
    Example:
      notices build plan.yaml --out pack
      notices build plan.yaml --out pack-2 --since pack
    """  # noqa: D301, click wants the sign itself
    from notices.building import build_pack  # noqa: PLC0415, start-up time

    if since is not None and out.resolve() == since.resolve():
        raise click.UsageError(f"{out} is the pack that is replaced: name a new folder for --out")
    with terminal.progress("Building") as told:
        loaded = notices.load_plan(plan)
        built = build_pack(loaded, _issued(loaded, today), out, replaces=since, told=told)
    if quiet:
        return
    report = built.report
    if verbose and report:
        for name in report.changed:
            click.echo(f"{out / name}: written", err=True)
        for name in report.removed:
            click.echo(f"{out / name}: removed", err=True)
    if report and (report.changed or report.removed):
        click.echo(f"{out}: {len(report.written)} files. Open {out / 'index.html'}", err=True)
    else:
        click.echo(f"{out}: nothing has changed", err=True)
    if built.left_behind:
        terminal.show_findings(loaded.located(built.left_behind), lines=True)
    if built.doubts:
        found = _counted(len(built.doubts), "finding")
        click.echo(f"{found} to think about again: notices check {_typed(plan)}", err=True)


@main.command(epilog=f"Examples: {', '.join(example_names())}.")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--from",
    "example",
    type=click.Choice(example_names()),
    metavar="EXAMPLE",
    help="Copy this example instead, with its own dates.",
)
@click.option(
    "--today",
    type=_day,
    metavar="DATE",
    help="Plan for the season that comes after this day, not after today.",
)
@click.option(
    "--workbook", is_flag=True, help="Start a workbook to fill in (.xlsx), in place of YAML."
)
def new(folder: Path, example: str | None, today: dt.date | None, *, workbook: bool) -> None:
    """Start a plan that explains itself, in a folder of its own.

    \b
    Example:
      notices new our-club
      notices new our-club --workbook
    """  # noqa: D301, click wants the sign itself
    from notices.starter import start_plan  # noqa: PLC0415, start-up time

    day = _today(today) or dt.datetime.now().astimezone().date()
    plan, *others = start_plan(folder, day, example, workbook=workbook)
    for path in (plan, *others):
        click.echo(f"{path}: written", err=True)
    program = "a spreadsheet program" if workbook else "a text editor"
    click.echo(f"Open {plan} in {program}, then: notices check {_typed(plan)}", err=True)


@main.command()
@_PLAN
@click.argument("other", type=click.Path(path_type=Path))
def convert(plan: Path, other: Path) -> None:
    """Write a plan as a workbook, or a workbook as YAML.

    OTHER is a new file that ends in .xlsx or .yaml. It holds the same plan and needs no other
    file: fixtures of a calendar and texts beside the plan are written out in it.

    \b
    Example:
      notices convert plan.yaml plan.xlsx
    """  # noqa: D301, click wants the sign itself
    from notices.convert.between import convert_plan  # noqa: PLC0415, start-up time

    convert_plan(plan, other)
    click.echo(f"{other}: written", err=True)


@main.command()
def schema() -> None:
    """Write the JSON Schema of a plan, by which editors complete and check.

    A new plan has it beside it as plan.schema.json; write it there again after an update.

    \b
    Example:
      notices schema
    """  # noqa: D301, click wants the sign itself
    from notices.starter import schema_text  # noqa: PLC0415, start-up time

    click.echo(schema_text(), nl=False)


@main.command()
@_PLAN
@click.argument("figure")
@_TODAY
def explain(plan: Path, figure: str, today: dt.date | None) -> None:
    """Work one figure out by hand: formula, numbers put in, result, source.

    FIGURE is its id in programme.json, or the end of it, or words of it that no other has.

    \b
    Example:
      notices explain plan.yaml hollow-tining-1/surface-disturbed/all
      notices explain plan.yaml lorry-loads/all
    """  # noqa: D301, click wants the sign itself
    loaded = notices.load_plan(plan)
    programme = notices.work_out(loaded.plan, _issued(loaded, today))
    click.echo(notices.explain(programme, figure))


@main.command()
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Write the changes as JSON.")
def compare(old: Path, new: Path, *, as_json: bool) -> None:
    """Say what has changed from one plan to another: what moved, came, went or got worse.

    OLD and NEW are plan files or packs.

    \b
    Example:
      notices compare pack plan.yaml
    """  # noqa: D301, click wants the sign itself
    from notices import since  # noqa: PLC0415, start-up time
    from notices.programme import changes  # noqa: PLC0415, start-up time
    from notices.programme.answers_as_json import changes_as_json  # noqa: PLC0415, start-up time
    from notices.wording.changes import ChangeWords  # noqa: PLC0415, start-up time

    before, after = (since.before(path, _this_day()).programme for path in (old, new))
    found = changes.compare(before, after)
    said = ChangeWords.of(before, after, found)
    if as_json:
        data = {**changes_as_json(found), "text": list(said.sentences())}
        click.echo(json.dumps(data, ensure_ascii=False))
    else:
        click.echo(said.whole())


@main.command()
@_PLAN
@click.option(
    "--today",
    type=_day,
    metavar="DATE",
    help="The day to look at, such as 2027-08-09; today when left out.",
)
@click.option("--json", "as_json", is_flag=True, help="Write the list as JSON.")
def due(plan: Path, today: dt.date | None, *, as_json: bool) -> None:
    """Say what is to be sent, printed, put up, taken down, ordered or confirmed now.

    It also says which promised dates have passed with nothing on record. PLAN may be a pack: one
    that replaces another asks only for the sheets that are new with it.

    \b
    Example:
      notices due plan.yaml --today 2027-08-09
      notices due pack-2
    """  # noqa: D301, click wants the sign itself
    from notices import since  # noqa: PLC0415, start-up time
    from notices.documents.to_do import to_do  # noqa: PLC0415, start-up time
    from notices.programme import duties, duties_again  # noqa: PLC0415, start-up time
    from notices.programme.answers_as_json import duty_as_json  # noqa: PLC0415, start-up time
    from notices.wording import duties as wording  # noqa: PLC0415, start-up time
    from notices.wording.words import Words  # noqa: PLC0415, start-up time

    day = _today(today) or _this_day()
    of = since.before(plan, day)
    words = Words(of.programme)
    asked = duties_again.asked_again(of.programme, to_do(of.programme), of.changed)
    found = duties.due(asked, day)
    if as_json:
        listed = [
            {**duty_as_json(one, day), "text": wording.as_seen(words, one, day)} for one in found
        ]
        click.echo(json.dumps(listed, ensure_ascii=False))
    else:
        click.echo(wording.due_in_words(words, found, day))


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("number")
def trace(folder: Path, number: str) -> None:
    """Find the pack behind the number that is printed on a document.

    FOLDER is where the packs are kept, each in a folder of its own. Later packs in which the
    document still stands under that number are named too.

    \b
    Example:
      notices trace packs 20260914-1
    """  # noqa: D301, click wants the sign itself
    from notices.pack.earlier import find_number  # noqa: PLC0415, start-up time

    for found in find_number(folder, number):
        notice, departs = found.manifest.notice, found.departs
        click.echo(f"{found.folder}: notice {notice.number}, issued {found.manifest.issued}")
        if found.standing:
            click.echo(
                f"  Still in force from notice {number.strip()}: {', '.join(found.standing)}."
            )
        if notice.replaces:
            click.echo(f"  It replaces notice {notice.replaces}.")
        click.echo(f"  The plan behind it: {found.folder / 'plan.json'}")
        click.echo(f"  Its figures: {found.folder / 'programme.json'}")
        others = [*departs.changed, *departs.missing]
        click.echo(
            f"  Not as it was written: {', '.join(others)}."
            if others
            else f"  All {len(found.manifest.files)} files are as they were written."
        )


_WORK = click.argument("work")


@main.command()
@_PLAN
@_WORK
@click.option(
    "--to",
    type=_day_or_reserve,
    metavar="reserve|DATE",
    required=True,
    help="The new first day, such as 2026-10-15, or the reserve dates.",
)
@click.option(
    "--day", type=_day, metavar="DATE", help="Put off this day alone, with the greens of it."
)
@click.option("--alone", is_flag=True, help="Leave works of the same dates where they are.")
@click.option(
    "--reason", default="", help="Why, such as heavy rain: golfers are told with the new dates."
)
def postpone(
    plan: Path, work: str, to: dt.date | str, day: dt.date | None, *, alone: bool, reason: str
) -> None:
    """Put a work off in the plan file, with the works that go with it and those that follow it.

    WORK is its id, or its kind. Only the dates and the reason change; comments and order stay, and
    the file as it was is kept beside it. A plan that would then not build is left alone.

    \b
    Example:
      notices postpone plan.yaml autumn-cores --to reserve --day 2026-10-13
      notices postpone plan.yaml autumn-cores --to 2026-10-19 --reason "heavy rain"
    """  # noqa: D301, click wants the sign itself
    from notices import changing  # noqa: PLC0415, start-up time

    changed = changing.postpone(
        plan,
        work,
        to if isinstance(to, dt.date) else None,
        day,
        today=_this_day(),
        alone=alone,
        reason=reason,
    )
    _show_changed(plan, changed)


@main.command()
@_PLAN
@_WORK
@click.option("--greens", help="Greens that it is about, such as 1-6; all of the work if left out.")
@click.option(
    "--on", type=_day, metavar="DATE", help="When it was done; its last planned day if left out."
)
@click.option(
    "--putting-smoothly",
    "putting",
    type=_day,
    metavar="DATE",
    help="When these greens putted smoothly again.",
)
@click.option("--healed", type=_day, metavar="DATE", help="When nothing was left to see on them.")
def finished(
    plan: Path,
    work: str,
    *,
    greens: str | None,
    on: dt.date | None,
    putting: dt.date | None,
    healed: dt.date | None,
) -> None:
    """Record in the plan file that a work is done, and later when its greens had come back.

    WORK is its id, or its kind. The record goes into "observed", from which later plans learn how
    fast your greens come back. The file as it was is kept beside it.

    \b
    Example:
      notices finished plan.yaml autumn-cores --on 2026-10-15
      notices finished plan.yaml autumn-cores --putting-smoothly 2026-11-02
    """  # noqa: D301, click wants the sign itself
    from notices import changing  # noqa: PLC0415, start-up time
    from notices.wording.outcomes import outcome_in_words  # noqa: PLC0415, start-up time
    from notices.wording.words import Words  # noqa: PLC0415, start-up time

    changed, record = changing.finish(
        plan,
        work,
        greens=greens,
        done=on,
        putting_smoothly=putting,
        healed=healed,
        today=_this_day(),
    )
    seen = "".join(f", {key.replace('_', ' ')} on {day}" for key, day in record.seen.items())
    click.echo(f"Recorded: {record.operation} done on {record.done}{seen}.")
    for outcome in changed.new_outcomes:
        click.echo(outcome_in_words(Words(changed.after), outcome))
    _show_next(plan, changed)


def _show_changed(plan: Path, changed: Changed) -> None:
    from notices.programme.changes import compare  # noqa: PLC0415, start-up time
    from notices.wording.changes import ChangeWords  # noqa: PLC0415, start-up time

    found = compare(changed.before, changed.after)
    click.echo(ChangeWords.of(changed.before, changed.after, found).whole())
    if changed.left:
        click.echo("\nLook at what was not moved:\n")
        for sentence in changed.left:
            click.echo(f"- {sentence}.")
    if changed.doubts:
        click.echo()
        terminal.show_findings(changed.doubts)
    _show_next(plan, changed)


def _typed(path: Path) -> str:
    """Return a path as one types it in a command: in quotes where it has spaces."""
    return f'"{path}"' if re.search(r"[\s&()';]", str(path)) else str(path)


def _show_next(plan: Path, changed: Changed) -> None:
    click.echo(f"{plan}: changed; {changed.backup} is the plan as it was", err=True)
    click.echo(
        f"Build the new pack: notices build {_typed(plan)} --out NEW-PACK --since OLD-PACK",
        err=True,
    )


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}{'s' * (number != 1)}"


def _issued(loaded: LoadedPlan, today: dt.date | None) -> dt.date:
    """Return the date of issue: --today, else SOURCE_DATE_EPOCH, the plan's, or today's."""
    return _today(today) or loaded.plan.issued or dt.datetime.now().astimezone().date()


def _this_day() -> dt.date:
    return _today(None) or dt.datetime.now().astimezone().date()


def _today(today: dt.date | None) -> dt.date | None:
    """Return the day that the command or else the environment names."""
    if today is not None:
        return today
    if epoch := os.environ.get("SOURCE_DATE_EPOCH"):
        try:
            return dt.datetime.fromtimestamp(int(epoch), dt.UTC).date()
        except (ValueError, OverflowError, OSError):
            raise click.UsageError("SOURCE_DATE_EPOCH is not a number of seconds") from None
    return None


def _show_what_was_read(plan: Path, loaded: LoadedPlan, programme: Programme) -> None:
    parts = {
        "green": programme.greens,
        "work": loaded.plan.works,
        "closure": loaded.plan.closures,
        "fixture": loaded.plan.fixtures,
    }
    read = ", ".join(_counted(len(part), noun) for noun, part in parts.items())
    click.echo(f"{plan}: {read}; issued {programme.issued}", err=True)


def _show_faults(findings: Sequence[Finding], *, as_json: bool, lines: bool) -> None:
    from notices.programme.as_json import located_finding_as_json  # noqa: PLC0415, start-up time

    if as_json:
        data = [located_finding_as_json(finding) for finding in findings]
        click.echo(json.dumps(data, ensure_ascii=False))
    else:
        terminal.show_findings(findings, lines=lines)


def _show_checked(checked: Checked, *, lines: bool, quiet: bool) -> None:
    """Show the findings, then dates that clear those that clash, and other ways to lay out."""
    other_ways = checked.other_ways()
    if checked.findings:
        terminal.show_findings(checked.findings, lines=lines)
    elif not other_ways and not quiet:
        click.echo("Nothing to say: the plan is in order.")
    if checked.findings and other_ways:
        click.echo()
    if other_ways:
        click.echo(other_ways)
