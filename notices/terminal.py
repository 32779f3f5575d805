"""Terminal output: findings with the lines they are about, and the progress of a build."""

from __future__ import annotations

import contextlib
import os
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING

import click

from notices.excerpt import excerpt
from notices.findings import Finding, Place, Weight, ended

if TYPE_CHECKING:
    from click._termui_impl import ProgressBar

WAIT = 1.0
"""Seconds before a progress bar appears."""

_COLOURS = {
    Weight.CANNOT_BUILD: "red",
    Weight.THINK_AGAIN: "yellow",
    Weight.INFORMATION: "blue",
}


def wants_no_colour() -> bool:
    """Tell whether the person has asked for output without colours (https://no-color.org)."""
    return bool(os.environ.get("NO_COLOR")) or os.environ.get("TERM") == "dumb"


def show_findings(findings: Sequence[Finding], *, lines: bool = True, err: bool = False) -> None:
    """Print findings, the weightiest first, each with its place and its suggestion."""
    for number, weight in enumerate(kind for kind in Weight if _of(kind, findings)):
        if number and lines:
            click.echo(err=err)
        heading = f"{weight.value[:1].upper()}{weight.value[1:]}:"
        click.echo(click.style(heading, bold=True), err=err)
        for finding in _of(weight, findings):
            if lines:
                click.echo(err=err)
            click.echo(in_lines(finding) if lines else in_one_line(finding), err=err)


def _of(weight: Weight, findings: Sequence[Finding]) -> list[Finding]:
    return [finding for finding in findings if finding.weight is weight]


def in_one_line(finding: Finding) -> str:
    """Return a finding in one line for other programs: file, line, column and message."""
    return f"{finding}{_code(finding)}"


def in_lines(finding: Finding) -> str:
    """Return a finding in several lines: message, the line it is about, and suggestion."""
    if not finding.place:
        return in_one_line(finding)
    place = click.style(f"{finding.place}:", bold=True)
    first = f"{place} {ended(finding.message)}{_code(finding)}"
    rest = [*_line(finding.place, finding.weight)]
    if finding.suggestion:
        rest.append(f"  {ended(finding.suggestion)}")
    return "\n".join([first, *rest])


def _code(finding: Finding) -> str:
    # A club accepts a finding by its code; a fault cannot be accepted.
    return "" if finding.weight is Weight.CANNOT_BUILD else f" ({finding.code})"


def _line(place: Place, weight: Weight) -> Iterator[str]:
    if place.line is None or place.column is None or not place.text.strip():
        return
    shown, caret = excerpt(place.text, place.mark or place.column)
    number = f"{place.cell or place.line:>5} | "
    yield f"{number}{shown}"
    margin = " " * (len(number) - 2) + "| "
    yield margin + caret.replace("^", click.style("^", fg=_COLOURS[weight], bold=True))


@contextlib.contextmanager
def progress(label: str) -> Iterator[Callable[[int, int], None]]:
    """Yield a function to report how much of how much is done; a bar appears if it takes long.

    The bar is drawn only on a terminal, and on standard error, so that it never lands in a file.
    """
    started = time.monotonic()
    with contextlib.ExitStack() as stack:
        bar: list[ProgressBar[int]] = []

        def told(done: int, of: int) -> None:
            if not sys.stderr.isatty() or time.monotonic() - started < WAIT:
                return
            if not bar:
                shown = click.progressbar(length=of, label=label, file=sys.stderr)
                bar.append(stack.enter_context(shown))
            bar[0].update(done - bar[0].pos)

        yield told
