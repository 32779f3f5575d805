"""What `notices check` finds out about a plan, as data for those who show it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace

from notices.buildable import all_findings
from notices.findings import Finding, Weight
from notices.plan.load import LoadedPlan, canonical
from notices.plan.own_words import own_words
from notices.programme import better_dates as clear_dates
from notices.programme.answers_as_json import better_dates_as_json
from notices.programme.as_json import Json, located_finding_as_json, pattern_as_json
from notices.programme.model import BetterDates, Programme
from notices.programme.work_out import work_out


@dataclass(frozen=True, slots=True)
class Checked:
    """A plan that loads, and what was found in it."""

    programme: Programme
    """With other ways to lay out the works, where they were asked for."""
    findings: tuple[Finding, ...]
    """Each with its place."""
    better_dates: tuple[BetterDates, ...] | None = None
    """None where they were not asked for, or nothing can be built."""
    with_patterns: bool = False
    """Whether the other ways were asked for, and something can be built."""

    @property
    def stopping(self) -> tuple[Finding, ...]:
        """Findings with which nothing can be built."""
        return tuple(one for one in self.findings if one.weight is Weight.CANNOT_BUILD)

    def only_stopping(self) -> Checked:
        """Return the same without the findings that stop nothing."""
        return replace(self, findings=self.stopping)

    def other_ways(self) -> str:
        """Return better dates and other ways to lay out in words; empty where not asked for."""
        said = []
        if self.better_dates is not None:
            from notices.wording.better_dates import (  # noqa: PLC0415, start-up time
                better_dates_in_words,
            )

            said.append(better_dates_in_words(self.better_dates))
        if self.with_patterns:
            from notices.wording.patterns import patterns_in_words  # noqa: PLC0415, start-up time
            from notices.wording.words import Words  # noqa: PLC0415, start-up time

            said.append(patterns_in_words(Words(self.programme)))
        return "\n\n".join(said)

    def as_json(self) -> list[Json] | Json:
        """Return the findings as a list, or within an object beside what else was asked for."""
        findings = [located_finding_as_json(finding) for finding in self.findings]
        more: Json = {}
        if self.better_dates is not None:
            more["better_dates"] = better_dates_as_json(self.better_dates)
        if self.with_patterns:
            more["patterns"] = [pattern_as_json(pattern) for pattern in self.programme.patterns]
        return {"findings": findings, **more} if more else findings


def check_plan(
    loaded: LoadedPlan,
    issued: dt.date,
    *,
    better_dates: bool = False,
    patterns: bool = False,
    words: bool = False,
) -> Checked:
    """Check a plan.

    Parameters
    ----------
    loaded
        The plan, with its places.
    issued
        The day of issue.
    better_dates
        Whether to try other starts for works whose dates clash.
    patterns
        Whether to lay the main works out in other ways.
    words
        Whether to measure how easy the documents are to read, and the club's own words in them.
    """
    programme = work_out(loaded.plan, issued)
    checked = Checked(programme, loaded.located(all_findings(loaded, programme)))
    if checked.stopping:
        return checked
    if words:
        found = loaded.located(_findings_in_words(loaded, programme))
        checked = replace(checked, findings=(*checked.findings, *found))
    if better_dates:
        checked = replace(checked, better_dates=clear_dates.better_dates(loaded.plan, programme))
    if patterns:
        from notices.programme.patterns import with_patterns  # noqa: PLC0415, start-up time

        laid_out = with_patterns(programme, loaded.plan)
        checked = replace(checked, programme=laid_out, with_patterns=True)
    return checked


def _findings_in_words(loaded: LoadedPlan, programme: Programme) -> tuple[Finding, ...]:
    # Setting pages takes libraries that nobody else waits for.
    from notices.documents.pack import write_documents  # noqa: PLC0415
    from notices.rendering.reading_check import check_words  # noqa: PLC0415

    documents = write_documents(programme, canonical(loaded.plan))
    return tuple(check_words(documents, tuple(own_words(loaded.plan))))
