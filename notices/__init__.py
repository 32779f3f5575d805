"""Notices: planned work on golf greens, worked out and explained to those who play on them.

From a plan file to a pack in its folder::

    from notices.building import build_pack

    build_pack(load_plan(path), issued, folder)

The steps of that, for those who want what one of them gives::

    programme = work_out(loaded.plan, issued)
    loaded.refuse(all_findings(loaded, programme))
    programme = with_patterns(programme, loaded.plan)
    documents = write_documents(programme, canonical(loaded.plan))
    files = render_pack(documents)
    write_pack(files, folder, version=__version__, issued=issued)

`LoadedPlan.refuse` stops where the work cannot be done at all, or a text of the club's own cannot
be filled; `explain` says how one figure was worked out. `with_patterns` adds what the committee
compares; without it that part is left out.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from notices.buildable import all_findings
    from notices.documents.pack import write_documents
    from notices.pack.write import write_pack
    from notices.plan.load import canonical, load_plan
    from notices.programme.patterns import with_patterns
    from notices.programme.work_out import work_out
    from notices.rendering.reading_check import check_words
    from notices.rendering.whole_pack import render_pack
    from notices.wording.explain import explain

__version__ = "0.1.0"

__all__ = [
    "__version__",
    "all_findings",
    "canonical",
    "check_words",
    "explain",
    "load_plan",
    "render_pack",
    "with_patterns",
    "work_out",
    "write_documents",
    "write_pack",
]

_HOMES = {
    "all_findings": "notices.buildable",
    "canonical": "notices.plan.load",
    "check_words": "notices.rendering.reading_check",
    "explain": "notices.wording.explain",
    "load_plan": "notices.plan.load",
    "render_pack": "notices.rendering.whole_pack",
    "with_patterns": "notices.programme.patterns",
    "work_out": "notices.programme.work_out",
    "write_documents": "notices.documents.pack",
    "write_pack": "notices.pack.write",
}


def __getattr__(name: str) -> object:
    # PEP 562: a name is imported when it is used, so that --help does not wait for pydantic.
    if name in _HOMES:
        return getattr(importlib.import_module(_HOMES[name]), name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
