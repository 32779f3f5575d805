"""The notice before this one, worked out again so that the next notice can follow it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from notices.documents.model import Imprint, file_names, imprint_of
from notices.errors import EarlierFault
from notices.findings import Finding, Weight
from notices.pack.earlier import Earlier, find_earlier
from notices.pack.manifest import Notice
from notices.plan.load import canonical, load_plan
from notices.plan.model import Plan
from notices.programme.accepting import with_more
from notices.programme.left_behind import left_behind
from notices.programme.model import Edition, Programme
from notices.programme.work_out import work_out

if TYPE_CHECKING:
    from notices.documents.pack import PackDocuments
    from notices.rendering.files import RenderedFile


@dataclass(frozen=True)
class Before:
    """An earlier notice: its programme and plan, and the files that people have."""

    programme: Programme
    plan: Plan
    earlier: Earlier

    @cached_property
    def calendars(self) -> Mapping[str, bytes]:
        """Calendars by file name; for a bare plan, the ones it would have produced."""
        if self.earlier.manifest is not None:
            return self.earlier.calendars
        from notices.documents.pack import write_documents  # noqa: PLC0415, start-up time
        from notices.rendering.whole_pack import render_calendars  # noqa: PLC0415, start-up time

        documents = write_documents(self.programme, canonical(self.plan))
        return {file.name: file.content for file in render_calendars(documents, {}).values()}

    @property
    def is_pack(self) -> bool:
        """Whether a pack was found; False for a bare plan."""
        return self.earlier.manifest is not None

    @property
    def changed(self) -> frozenset[str]:
        """Names, without endings, of the documents that were new or changed in that notice."""
        manifest = self.earlier.manifest
        files = manifest.files if manifest else ()
        number = self.edition.number
        return frozenset(entry.name.rpartition(".")[0] for entry in files if entry.number == number)

    @property
    def sources(self) -> tuple[str, ...]:
        """Inputs from the earlier notice that determine the next pack, byte for byte."""
        if self.earlier.manifest is not None:
            return (self.earlier.manifest.to_bytes().decode(),)
        return tuple(content.decode() for content in self.calendars.values())

    @property
    def edition(self) -> Edition:
        """Edition of the earlier notice."""
        return self.programme.edition


def before(path: Path, today: dt.date) -> Before:
    """Work out an earlier pack as of its day of issue, or a bare plan.

    Parameters
    ----------
    path
        A plan file, or the folder of a pack.
    today
        Day of issue for a plan that names none.

    Raises
    ------
    EarlierFault
        If the path is a folder without a pack.
    PlanFault
        If the plan is at fault.
    """
    earlier = find_earlier(path)
    loaded = load_plan(earlier.plan)
    programme = work_out(loaded.plan, earlier.issued or loaded.plan.issued or today)
    programme = replace(programme, replaces=_replaced(earlier))
    return Before(programme, loaded.plan, earlier)


def follow(programme: Programme, plan: Plan, earlier: Before) -> Programme:
    """Return a programme that replaces an earlier notice.

    Parameters
    ----------
    programme
        Programme of the new notice.
    plan
        Plan of the new notice.
    earlier
        The notice before.

    Raises
    ------
    EarlierFault
        If the new notice would be issued before the one it replaces.
    """
    if programme.issued < earlier.edition.issued:
        raise EarlierFault(
            f"The notice would be issued on {programme.issued}, before the one of "
            f"{earlier.edition.issued} that it replaces; name the day with --today"
        )
    found = list(left_behind(earlier.programme, programme))
    if not earlier.is_pack:
        found.append(
            Finding(
                "counted-from-a-plan",
                Weight.INFORMATION,
                "changes to the calendar are counted from a plan, as if it had been the first notice",
                "Name the pack that was sent, where there is one, so that no program takes the "
                "new dates for old ones",
            )
        )
    # Nobody outside saw a draft, so an approved notice changes nothing for them.
    told = programme.draft or not earlier.edition.draft
    return replace(
        with_more(programme, plan, found),
        replaces=earlier.edition,
        earlier=earlier.programme if told else None,
    )


@dataclass(frozen=True)
class Issue:
    """Documents of a notice, with the files of the one before that people have."""

    documents: PackDocuments
    """Documents, each with its imprint."""
    published: Mapping[str, bytes]
    """Earlier calendars by file name."""
    standing: Mapping[str, RenderedFile]
    """Unchanged files of the earlier pack by name."""


def let_stand(documents: PackDocuments, programme: Programme, before: Before | None) -> Issue:
    """Keep the number, date and file of each document whose content is unchanged.

    What hangs on a wall can then go on hanging. A file that somebody has edited in the earlier pack
    is made again, with its old number.

    Parameters
    ----------
    documents
        Documents of the new notice.
    programme
        Programme from which they were written.
    before
        Earlier notice; None if this is the first.
    """
    if before is None:
        return Issue(documents, {}, {})
    from notices.documents.pack import let_stand as give_imprints  # noqa: PLC0415, start-up time
    from notices.rendering.said import said_by  # noqa: PLC0415, start-up time

    manifest = before.earlier.manifest
    if manifest is None:
        return Issue(documents, before.calendars, {})
    said = said_by(documents.items)
    edition = programme.edition
    imprints = {
        entry.name: entry.imprint
        if entry.said == said.get(entry.name)
        else Imprint(edition, None if before.edition.draft else entry.imprint.edition)
        for entry in manifest.files
        if entry.imprint is not None
    }
    documents = give_imprints(documents, programme, imprints)
    old = {
        name
        for item in documents.items
        if imprint_of(item).edition.number != edition.number
        for name in file_names(item)
    }
    files = before.earlier.files()
    standing = {name: file for name, file in files.items() if name in old}
    return Issue(documents, before.calendars, standing)


def notice_of(programme: Programme) -> Notice:
    """Return the manifest entry that places a pack among the club's notices."""
    edition, before = programme.edition, programme.replaces
    return Notice(
        edition.number,
        edition.version,
        before.number if before else "",
        edition.begun.isoformat(),
        before.draft if before else False,
    )


def _replaced(earlier: Earlier) -> Edition | None:
    """Return the edition that the earlier notice replaced: only its number, date and draft are known."""
    manifest = earlier.manifest
    if manifest is None or manifest.notice.version == 1:
        return None
    try:
        begun = dt.date.fromisoformat(manifest.notice.begun)
        number, draft = manifest.notice.replaces, manifest.notice.after_draft
        return replace(Edition.numbered(number), first_issued=begun, draft=draft)
    except ValueError:
        return Edition(manifest.issued, manifest.notice.version - 1)
