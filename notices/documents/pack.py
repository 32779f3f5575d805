"""All documents of a pack."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from notices.documents.board_notice import board_notice
from notices.documents.calendar import calendar
from notices.documents.index import Index, index
from notices.documents.member_email import member_email
from notices.documents.model import CalendarDocument, Document, Letter
from notices.programme.as_json import programme_as_json
from notices.programme.model import Programme


@dataclass(frozen=True, slots=True)
class PackDocuments:
    """What goes into a pack, before it is rendered."""

    index: Index
    member_email: Letter
    board_notice: Document
    calendar: CalendarDocument
    records: Mapping[str, Mapping[str, object]]
    """Files for machines, by name: plain data to be written as JSON."""


def write_documents(programme: Programme, plan: Mapping[str, object]) -> PackDocuments:
    """Write every document of a pack.

    Parameters
    ----------
    programme
        The plan, worked out.
    plan
        The plan in canonical form; the pack carries it, so that it can be built again.
    """
    return PackDocuments(
        index=index(programme),
        member_email=member_email(programme),
        board_notice=board_notice(programme),
        calendar=calendar(programme),
        records={"programme.json": programme_as_json(programme), "plan.json": plan},
    )
