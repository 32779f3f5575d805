"""The one kind of error that a person can mend.

    NoticesError
    ├── PlanFault      the plan cannot be used as it stands
    ├── TextFault      a text of the club's own cannot be used
    ├── UnknownFigure  no figure, or more than one, has the name that was asked for
    ├── PackFault      the pack cannot be written where it was asked for
    ├── EarlierFault   an earlier pack cannot be read
    ├── EditFault      a plan cannot be changed as asked
    └── FolderFault    a new plan, or one converted, cannot be put where it was asked for

Anything else that is raised is a bug and may crash loudly.
"""

from __future__ import annotations

from collections.abc import Sequence

from notices.findings import Finding


class NoticesError(Exception):
    """Base class; ``str()`` is a sentence fit for the person at the keyboard."""

    exit_status = 1


class PlanFault(NoticesError):
    """The plan cannot be used; carries every problem found, not only the first."""

    def __init__(self, findings: Sequence[Finding]) -> None:
        self.findings = tuple(findings)
        super().__init__("\n".join(str(finding) for finding in self.findings))


class TextFault(NoticesError):
    """A text of the club's own cannot be used."""


class UnknownFigure(NoticesError):
    """No single figure has the name that was asked for; says which come near."""


class PackFault(NoticesError):
    """The pack cannot be written; nothing of it was left behind."""


class EarlierFault(NoticesError):
    """An earlier pack cannot be read, or is none."""


class EditFault(NoticesError):
    """A plan cannot be changed as asked; it is as it was."""


class FolderFault(NoticesError):
    """A new plan cannot be put where it was asked for; what was there is as it was."""
