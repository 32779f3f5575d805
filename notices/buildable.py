"""Whether a plan can be built: everything that is found in it, for all who have to know."""

from __future__ import annotations

from notices.findings import Finding
from notices.plan.load import LoadedPlan
from notices.plan.own_words import own_texts
from notices.programme.model import Programme


def all_findings(loaded: LoadedPlan, programme: Programme) -> tuple[Finding, ...]:
    """Return what is found in the club's own texts, and then what is found in its works.

    `LoadedPlan.refuse` stops at those with which nothing can be built; `LoadedPlan.located` gives
    each its place.

    Parameters
    ----------
    loaded
        The plan.
    programme
        What was worked out from it.
    """
    texts = tuple(own_texts(loaded.plan))
    if not texts:
        return programme.findings
    # Without texts to check, nobody waits for what reads them.
    from notices.wording.text_check import check_texts  # noqa: PLC0415

    return (*check_texts(programme, texts), *programme.findings)
