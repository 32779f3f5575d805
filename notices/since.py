"""What was issued before, worked out again, so that the next notice can follow it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from notices.errors import EarlierFault
from notices.findings import Finding, Weight
from notices.pack.earlier import Earlier, find_earlier
from notices.pack.manifest import Notice
from notices.plan.load import LoadedPlan, canonical, load_plan
from notices.programme.model import Edition, Programme
from notices.programme.work_out import work_out


@dataclass(frozen=True)
class Before:
    """An earlier notice: what it said, and what people have of it."""

    programme: Programme
    calendars: Mapping[str, bytes]
    """By the names of their files."""
    is_pack: bool
    """False for a plan alone."""

    @property
    def edition(self) -> Edition:
        """Which notice it was."""
        return self.programme.edition


def before(path: Path, today: dt.date) -> Before:
    """Work out an earlier pack as of its day of issue, or a plan alone.

    Parameters
    ----------
    path
        A plan file, or the folder of a pack.
    today
        Date of issue of a plan that has none.

    Raises
    ------
    EarlierFault
        If it is a folder and no pack.
    PlanFault
        If the plan is at fault.
    """
    earlier = find_earlier(path)
    loaded = load_plan(earlier.plan)
    programme = work_out(loaded.plan, earlier.issued or loaded.plan.issued or today)
    programme = replace(programme, replaces=_replaced(earlier))
    return Before(programme, _calendars(earlier, loaded, programme), earlier.manifest is not None)


def follow(programme: Programme, earlier: Before) -> Programme:
    """Return a programme that comes in place of an earlier one.

    Raises
    ------
    EarlierFault
        If it would be issued before the one that it replaces.
    """
    if programme.issued < earlier.edition.issued:
        raise EarlierFault(
            f"The notice would be issued on {programme.issued}, before the one of "
            f"{earlier.edition.issued} that it replaces; name the day with --today"
        )
    findings = programme.findings
    if not earlier.is_pack:
        findings += (
            Finding(
                "counted-from-a-plan",
                Weight.INFORMATION,
                "changes to the calendar are counted from a plan, as if it had been the first notice",
                "Name the pack that was sent, where there is one, so that no program takes the "
                "new dates for old ones",
            ),
        )
    return replace(
        programme, replaces=earlier.edition, earlier=earlier.programme, findings=findings
    )


def notice_of(programme: Programme) -> Notice:
    """Return what the manifest of a pack says of its place among the club's notices."""
    replaced = programme.replaces.number if programme.replaces else ""
    edition = programme.edition
    return Notice(edition.number, edition.version, replaced, edition.begun.isoformat())


def _replaced(earlier: Earlier) -> Edition | None:
    """Return the notice before the earlier one, as far as the later ones count on it."""
    manifest = earlier.manifest
    if manifest is None or manifest.notice.version == 1:
        return None
    try:
        begun = dt.date.fromisoformat(manifest.notice.begun)
    except ValueError:
        begun = manifest.issued
    return Edition(manifest.issued, manifest.notice.version - 1, begun)


def _calendars(earlier: Earlier, loaded: LoadedPlan, programme: Programme) -> Mapping[str, bytes]:
    """Return the calendars that people have; of a plan alone, those that it would have given."""
    if earlier.manifest is not None:
        return earlier.calendars
    from notices.documents.pack import write_documents  # noqa: PLC0415, start-up time
    from notices.rendering.whole_pack import render_calendars  # noqa: PLC0415, start-up time

    documents = write_documents(programme, canonical(loaded.plan))
    return {file.name: file.content for file in render_calendars(documents, {}).values()}
