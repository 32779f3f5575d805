"""What is to be done besides the work, the signs among it: they are chosen where they are written."""

from __future__ import annotations

from notices.documents.tee_sign import signs
from notices.programme.duties import Duty, Hung, duties
from notices.programme.model import Programme


def to_do(programme: Programme) -> tuple[Duty, ...]:
    """Return everything that is to be done besides the work itself, by date."""
    hung = [Hung(sign.large, sign.days[0], sign.days[-1]) for sign in signs(programme)]
    return duties(programme, signs=hung)
