"""Words of the club that our fonts cannot print as they stand.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from notices.findings import Finding, Weight
from notices.letters import not_printed, printable
from notices.plan.messages import Path
from notices.plan.model import Part, Plan
from notices.programme.model import Programme

MOST_NAMED = 5
"""So many signs are named of one field."""

NOT_WORDS = frozenset({"file", "calendar", "temperatures"})
"""Fields that name a file and are not printed."""


def letters_not_printed(_programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A sheet shows a question mark for letters of other scripts, and leaves out small pictures."""
    for path, text in _words(plan, ()):
        # Nearly all texts are plain, and that is quickly seen.
        if text.isascii() or not (missing := not_printed(text)):
            continue
        named = " ".join(missing[:MOST_NAMED]) + (" and more" if len(missing) > MOST_NAMED else "")
        short = " ".join(printable(text).split())[:60]
        yield Finding(
            "letters-not-printed",
            Weight.INFORMATION,
            f"our fonts have no {named}, so sheets show this as “{short}”; email and web pages "
            "show it as you wrote it",
            "Write it in Latin letters if it is to stand on paper",
            path,
        )


def _words(value: object, path: Path) -> Iterator[tuple[Path, str]]:
    """Yield every text of a plan with its way."""
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, Part):
        for name, field in type(value).model_fields.items():
            if name in value.model_fields_set and name not in NOT_WORDS:
                yield from _words(getattr(value, name), (*path, field.alias or name))
    elif isinstance(value, Mapping):
        for key, item in value.items():
            yield from _words(item, (*path, str(key)))
    elif isinstance(value, tuple) and any(isinstance(item, str | Part) for item in value):
        for index, item in enumerate(value):
            yield from _words(item, (*path, index))
