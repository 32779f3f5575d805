"""What is to be done besides the work, the signs among it: they are chosen where they are written."""

from __future__ import annotations

from notices.documents.tee_sign import signs
from notices.programme.duties import Duty, duties
from notices.programme.model import Programme
from notices.programme.news import what_is_ahead


def to_do(programme: Programme) -> tuple[Duty, ...]:
    """Return everything that is to be done besides the work itself, by date.

    The pages of the signs are those of the file, which is written of what is ahead.
    """
    hang = [(sign.days[0], sign.days[-1]) for sign in signs(what_is_ahead(programme))]
    return duties(programme, signs=hang)
