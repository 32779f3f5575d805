"""From a plan that is read to a pack in its folder: every stage once, in their order."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from notices import __version__, since
from notices.buildable import all_findings
from notices.findings import Finding, Weight
from notices.pack.write import PackReport, is_current, known_files, made_from, write_pack
from notices.plan.load import LoadedPlan, canonical
from notices.programme.left_behind import LEFT_BEHIND
from notices.programme.model import Programme
from notices.programme.work_out import work_out
from notices.stack import roomy


@dataclass(frozen=True, slots=True)
class Built:
    """What came of building."""

    programme: Programme
    report: PackReport | None
    """What became of the folder; None where the same pack stood there already."""

    @property
    def left_behind(self) -> tuple[Finding, ...]:
        """Doubts that only a comparison with the notice before finds."""
        return tuple(one for one in self._think_again if one.code == LEFT_BEHIND)

    @property
    def doubts(self) -> tuple[Finding, ...]:
        """Doubts that a check of the plan finds too."""
        return tuple(one for one in self._think_again if one.code != LEFT_BEHIND)

    @property
    def _think_again(self) -> Iterator[Finding]:
        return (one for one in self.programme.findings if one.weight is Weight.THINK_AGAIN)


@roomy
def build_pack(
    loaded: LoadedPlan,
    issued: dt.date,
    out: Path,
    *,
    replaces: Path | None = None,
    told: Callable[[int, int], None] = lambda _done, _of: None,
) -> Built:
    """Build the whole pack of a plan.

    Parameters
    ----------
    loaded
        The plan, with its places.
    issued
        The day of issue.
    out
        The folder to write; a pack that stands there is replaced whole.
    replaces
        The pack, or the plan, of the notice before this one.
    told
        Hears how many files are done, and of how many.

    Raises
    ------
    PlanFault
        If the work cannot be done, or a text of the club's own cannot be filled.
    EarlierFault
        If what is replaced is no pack or plan, or was issued later.
    PackFault
        If the folder cannot be written, or holds what is not a pack.
    """
    programme = work_out(loaded.plan, issued)
    loaded.refuse(all_findings(loaded, programme))
    earlier = since.before(replaces, issued) if replaces else None
    if earlier is not None:
        programme = since.follow(programme, loaded.plan, earlier)
    plan = canonical(loaded.plan)
    notice = since.notice_of(programme)
    others = [notice.replaces, *earlier.sources] if earlier else []
    source = made_from(plan, issued, *others)
    if is_current(out, source):
        return Built(programme, None)
    # Whoever has the pack already does not wait for what makes one.
    from notices.documents.pack import write_documents  # noqa: PLC0415
    from notices.programme.patterns import with_patterns  # noqa: PLC0415
    from notices.rendering.whole_pack import render_pack  # noqa: PLC0415

    programme = with_patterns(programme, loaded.plan)
    documents = write_documents(programme, plan)
    issue = since.let_stand(documents, programme, earlier)
    files = render_pack(issue.documents, told, known_files(out), issue.published, issue.standing)
    report = write_pack(
        files, out, version=__version__, issued=issued, made_from=source, notice=notice
    )
    return Built(programme, report)
