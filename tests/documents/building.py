"""Builds packs in this process, and knows every day that a pack may speak of."""

from __future__ import annotations

import datetime as dt
import json
import re
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

import notices
from notices.pack.write import made_from
from notices.since import notice_of

if TYPE_CHECKING:  # conftest.py imports this module, and no test needs to wait for a library
    from notices.documents.pack import PackDocuments
    from notices.programme.model import Programme

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = sorted(path.parent.name for path in EXAMPLES.glob("*/plan.yaml"))

ISSUED = dt.date(2027, 3, 1)


def of(*names: str) -> pytest.MarkDecorator:
    """Mark a test whose pack is that of these examples, and no other."""
    return pytest.mark.parametrize("pack", names, indirect=True)


@dataclass(frozen=True)
class BuiltPack:
    """A pack with what it was made from."""

    programme: Programme
    documents: PackDocuments
    files: Mapping[str, bytes]
    folder: Path | None = None

    def text(self, name: str) -> str:
        return self.files[name].decode("utf-8")


def build(path: Path, issued: dt.date | None = None, out: Path | None = None) -> BuiltPack:
    """Build a plan; read the files back from the folder where there is one."""
    loaded = notices.load_plan(path)
    programme = notices.work_out(loaded.plan, issued or loaded.plan.issued or ISSUED)
    canonical = notices.canonical(loaded.plan)
    programme = notices.with_patterns(programme, loaded.plan)
    documents = notices.write_documents(programme, canonical)
    if out is None:
        return BuiltPack(programme, documents, FilesWhenAsked(documents))
    notices.write_pack(
        notices.render_pack(documents),
        out,
        version=notices.__version__,
        issued=programme.issued,
        made_from=made_from(canonical, programme.issued),
        notice=notice_of(programme),
    )
    files = {file.name: file.read_bytes() for file in out.iterdir()}
    return BuiltPack(programme, documents, files, out)


class FilesWhenAsked(Mapping[str, bytes]):
    """The files of a pack, each sheet set only when it is asked for: few tests look at all."""

    def __init__(self, documents: PackDocuments) -> None:
        from notices.documents.model import Sheet  # noqa: PLC0415

        self._sheets = {
            f"{item.document.name}.pdf": item for item in documents.items if isinstance(item, Sheet)
        }
        entries = (
            replace(entry, items=tuple(i for i in entry.items if not isinstance(i, Sheet)))
            for entry in documents.entries
        )
        others = notices.render_pack(replace(documents, entries=tuple(entries)))
        self._files = {file.name: file.content for file in others}

    def __getitem__(self, name: str) -> bytes:
        from notices.rendering.sheets import write_sheet  # noqa: PLC0415

        if name in self._sheets and name not in self._files:
            self._files[name] = write_sheet(self._sheets[name]).content
        return self._files[name]

    def __iter__(self) -> Iterator[str]:
        return iter(dict.fromkeys([*self._files, *self._sheets]))

    def __len__(self) -> int:
        return len(dict.fromkeys([*self._files, *self._sheets]))


def changed(example: str, folder: Path, *replaced: tuple[str, str]) -> Path:
    """Return the plan of an example after changes to its text, with all that lies beside it."""
    shutil.copytree(EXAMPLES / example, folder, dirs_exist_ok=True)
    path = folder / "plan.yaml"
    text = path.read_text("utf-8")
    for old, new in replaced:
        assert old in text, old
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    return path


def build_data(data: Mapping[str, object], folder: Path) -> BuiltPack:
    """Build a plan that a test has written down."""
    path = folder / "plan.yaml"
    path.write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")
    return build(path, ISSUED)


def days_of(programme: Programme) -> set[dt.date]:
    """Return every day that the programme knows of."""
    return {
        *_days(programme),
        *_days_away(programme),
        *_days_on_record(programme),
        *_days_for_the_committee(programme),
        *_days_of_other_ways(programme),
    }


def _days(programme: Programme) -> Iterator[dt.date]:
    yield programme.issued
    if programme.approval and programme.approval.date:
        yield programme.approval.date
    for work in programme.works:
        yield from (visit.date for visit in work.visits)
        yield from work.reserve_dates
    promises = [(p.open_again, p.putting_well, p.fully_healed) for p in programme.periods]
    promises += [(p.open_again, p.putting_well, p.fully_healed) for p in programme.patterns]
    for promise in chain.from_iterable(promises):
        yield promise.expect_by
        if promise.at_worst:
            yield promise.at_worst
    for closure in programme.closures:
        yield from closure.dates
    for fixture in programme.fixtures:
        yield fixture.date
        if fixture.moved_from:
            yield fixture.moved_from
    for restriction in programme.restrictions:
        yield from restriction.dates


def _days_away(programme: Programme) -> Iterator[dt.date]:
    """Yield the days with a green away; one that reopens after weeks is so on days without work."""
    for day, on_day in programme.status.items():
        if {status.value for status in on_day.values()} & {"closed", "temporary green"}:
            yield day


def _days_on_record(programme: Programme) -> Iterator[dt.date]:
    """Yield the days of earlier works, and those on which their greens had come back."""
    for fitted in programme.records.values():
        for record in fitted.records:
            yield record.done
            yield record.seen
            yield from (day for day in (record.putting_smoothly,) if day)
            early = record.forecast.early  # a span of days, as the book would have said
            late = record.forecast.late or early
            yield from (early + dt.timedelta(days=n) for n in range((late - early).days + 1))
    yield from (day for one in programme.measured for day in one.by_date)


def _days_for_the_committee(programme: Programme) -> Iterator[dt.date]:
    """Yield the day of the delivery, and those that findings name as the plan file does."""
    if programme.sand_order:
        yield programme.sand_order.deliver_by
    for found in (*programme.findings, *(one for one, _, _ in programme.accepted)):
        for day in re.findall(r"\d{4}-\d\d-\d\d", found.message):
            yield dt.date.fromisoformat(day)


def _days_of_other_ways(programme: Programme) -> Iterator[dt.date]:
    """Yield every day from the first to the last of each other layout: a table names those two."""
    for pattern in programme.patterns:
        first, last = pattern.dates[0], pattern.dates[-1]
        yield from (first + dt.timedelta(days=n) for n in range((last - first).days + 1))
