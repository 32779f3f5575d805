"""From a file to a plan: every problem found at once, each with its place."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from notices.errors import PlanFault
from notices.findings import Finding, Place, Weight
from notices.plan.csv_table import TableFault
from notices.plan.days import all_days
from notices.plan.fixture_calendar import read_calendar
from notices.plan.followers import with_followers
from notices.plan.logo import read_logo
from notices.plan.messages import Path as PlanPath
from notices.plan.messages import explain
from notices.plan.model import Fixture, Plan
from notices.plan.own_operations import file_named_in, read_text, whole_catalogue
from notices.plan.own_texts import read_folder
from notices.plan.photographs import check_picture, is_picture, read_photograph
from notices.plan.refusal import Refusal
from notices.plan.settings import read_settings, write_settings
from notices.plan.source import MOST_FAULTS, PlanSource
from notices.plan.temperatures import read_temperatures
from notices.plan.typed_checks import check_typed, fault, tidy
from notices.plan.yaml_file import read_yaml

DAYS_BEFORE, DAYS_AFTER = 60, 300
"""How far around the planned days a fixture calendar is read."""
LONGEST_READ = dt.timedelta(days=5 * 366)
"""A slip in a year must not have us write out every week of a century."""
MOST_CALENDARS = 20
WORKBOOKS = (".xlsx", ".ods", ".xls", ".xlsm", ".xlsb")
"""What is taken for a workbook; the last two are refused with what to save them as."""


@dataclass(frozen=True, slots=True)
class LoadedPlan:
    """A plan and the file that it came from."""

    plan: Plan
    source: PlanSource
    fixture_lines: tuple[int, ...] = ()
    """For each fixture, the line of the plan's list that it comes from."""
    text_files: Mapping[PlanPath, tuple[str, str]] = field(default_factory=dict)
    """For each text from a file beside the plan, the file and what it holds."""

    def located(self, findings: Iterable[Finding]) -> tuple[Finding, ...]:
        """Return the findings with their places in the file filled in."""
        return _in_its_words(
            self.source,
            (
                finding if finding.place else finding.at(self._place(finding.path))
                for finding in findings
            ),
        )

    def refuse(self, findings: Iterable[Finding]) -> None:
        """Stop where something was found with which nothing can be built.

        Raises
        ------
        PlanFault
            With each of those findings and its place.
        """
        stopping = [found for found in findings if found.weight is Weight.CANNOT_BUILD]
        if stopping:
            raise PlanFault(self.located(stopping))

    def _place(self, path: PlanPath) -> Place:
        """A line of a text stands in the text's own file, if it has one."""
        if path and path[:-1] in self.text_files and isinstance(path[-1], int):
            file, text = self.text_files[path[:-1]]
            return Place(file, path[-1], text=text.splitlines()[path[-1] - 1])
        if path in self.text_files:
            return Place(self.text_files[path][0])
        return self.source.place(self._typed(path))

    def _typed(self, path: PlanPath) -> PlanPath:
        """A fixture from a calendar stands where the calendar is named."""
        if path[:1] == ("fixtures",) and len(path) > 1 and isinstance(path[1], int):
            return ("fixtures", self.fixture_lines[path[1]], *path[2:])
        return path


def load_plan(path: Path, content: bytes | None = None) -> LoadedPlan:
    """Read and check a plan file.

    Parameters
    ----------
    path
        The file; others that the plan names lie beside it.
    content
        What is about to be written into it, to be read in place of what it holds.

    Raises
    ------
    PlanFault
        With every problem in the file.
    """
    source, findings = tidy(_read(path, content))
    findings += source.findings
    source = _with_tables(source, path, findings)
    text_files = {
        **_bring_own_texts(source, path, findings),
        **_bring_folder(source, path, findings),
    }
    source, faults = with_followers(source)
    findings += [fault(source, ("works", n, key), *error.sentences) for n, key, error in faults]
    findings += check_typed(source)
    plan: Plan | None = None
    fixtures: list[tuple[int, Fixture]] = []
    try:
        plan = Plan.model_validate(
            source.data, context=whole_catalogue(source.data.get("operations")).keys()
        )
    except ValidationError as error:
        findings += _faults_of_model(error, source, findings)
    if plan is not None and not findings:
        plan = _with_temperatures(plan, path, source, findings)
        plan = _with_logo(plan, path, source, findings)
        plan = _with_photographs(plan, path, source, findings)
        fixtures = _fixtures(plan, path, source, findings)
        plan = _with_settings(plan).model_copy(update={"fixtures": tuple(f for _, f in fixtures)})
    if plan is None or findings:
        told = sorted(dict.fromkeys(findings), key=source.order)[:MOST_FAULTS]
        raise PlanFault(_in_its_words(source, told))
    return LoadedPlan(plan, source, tuple(line for line, _ in fixtures), text_files)


def _read(path: Path, content: bytes | None) -> PlanSource:
    if path.suffix.lower() not in WORKBOOKS:
        return read_yaml(path, content)
    from notices.plan.workbook import read_workbook  # noqa: PLC0415, only who has one waits

    return read_workbook(path, content)


def _in_its_words(source: PlanSource, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings in the words of the file: keys in YAML, headings in a workbook."""
    if not source.sheets:
        return tuple(findings)
    from notices.plan.workbook_words import in_workbook_words  # noqa: PLC0415, only who has one

    return tuple(in_workbook_words(finding) for finding in findings)


def canonical(plan: Plan) -> dict[str, Any]:
    """Return the plan in canonical form: itself a plan that can be built.

    It holds what the club gave and no default, so that a figure still says when it rests on one.
    Empty parts are left out; quantities stand in the words in which one types them.
    """
    data = plan.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_unset=True)
    catalogue = plan.catalogue
    for work, written in zip(plan.works, data.get("works", ()), strict=True):
        written["settings"] = write_settings(catalogue[work.operation], work.settings)
        if work.after is not None:
            del written["dates"]  # they follow
    filled: dict[str, Any] = _without_empty(data)
    return {"notices": plan.notices} | filled


def _without_empty(value: Any) -> Any:  # noqa: ANN401, whatever JSON can hold
    if isinstance(value, dict):
        inside = {key: _without_empty(item) for key, item in value.items()}
        return {key: item for key, item in inside.items() if item not in ([], {})}
    if isinstance(value, list):
        return [_without_empty(item) for item in value]
    return value


def _with_tables(source: PlanSource, path: Path, findings: list[Finding]) -> PlanSource:
    works = source.data.get("works")
    if not isinstance(works, list) or not any(isinstance(w, dict) and "table" in w for w in works):
        return source
    from notices.plan.works_table import with_tables  # noqa: PLC0415, only who has one waits

    source, found = with_tables(source, path.parent)
    findings += found
    return source


TextFiles = dict[PlanPath, tuple[str, str]]


def _bring_own_texts(source: PlanSource, path: Path, findings: list[Finding]) -> TextFiles:
    """Put texts of the club's own in the place of the files that hold them."""
    files: TextFiles = {}
    for part in ("operations", "texts"):
        entries = source.data.get(part)
        for index, own in enumerate(entries if isinstance(entries, list) else ()):
            text = own.get("text") if isinstance(own, dict) else None
            name = file_named_in(text) if isinstance(text, str) else ""
            if not name:
                continue
            spot: PlanPath = (part, index, "text")
            try:
                own["text"] = read_text(path.parent, name)
            except Refusal as error:
                findings.append(fault(source, spot, *error.sentences))
            else:
                files[spot] = (str(path.parent / name), own["text"])
    return files


def _bring_folder(source: PlanSource, path: Path, findings: list[Finding]) -> TextFiles:
    """Put the texts that are laid over ours in the place of the folder that holds them."""
    folder = source.data.get("texts")
    if not isinstance(folder, str):
        return {}
    texts: list[dict[str, str]] = []
    source.data["texts"] = texts
    try:
        found = read_folder(path.parent, folder)
    except Refusal as error:
        findings.append(fault(source, ("texts",), *error.sentences))
        return {}
    files: TextFiles = {}
    for name, text in found.items():
        file = str(path.parent / folder / name)
        if isinstance(text, Refusal):
            findings.append(fault(source, ("texts",), *text.sentences).at(Place(file)))
        else:
            files["texts", len(texts), "text"] = (file, text)
            texts.append({"name": name, "text": text})
    return files


def _faults_of_model(
    error: ValidationError, source: PlanSource, found: Sequence[Finding]
) -> Iterator[Finding]:
    """Return what pydantic found, without what the other checks have said more exactly."""
    paths = {finding.path for finding in found}
    for details in error.errors(include_url=False)[:MOST_FAULTS]:
        path, message, suggestion = explain(details)
        if path in paths or any(_says_more(f, path, message) for f in found):
            continue
        if (
            details["type"] == "too_short"
            and len(details["input"]) > details["ctx"]["actual_length"]
        ):
            continue  # pydantic counts only the items that are in order; the others are told anyway
        paths.add(path)
        unknown = details["type"] == "extra_forbidden"
        yield fault(source, path, message, suggestion, key=unknown)


def _says_more(finding: Finding, path: PlanPath, message: str) -> bool:
    """Tell whether a finding says the same of a spot within this one."""
    return finding.message == message and finding.path[: len(path)] == path


def _with_settings(plan: Plan) -> Plan:
    catalogue = plan.catalogue
    works = (
        work.model_copy(
            update={"settings": read_settings(catalogue[work.operation], work.settings)[0]}
        )
        for work in plan.works
    )
    return plan.model_copy(update={"works": tuple(works)})


def _with_temperatures(plan: Plan, path: Path, source: PlanSource, findings: list[Finding]) -> Plan:
    """Write the days of a table into the plan, which then needs no other file."""
    name = plan.course.temperatures
    if name is None:
        return plan
    spot: PlanPath = ("course", "temperatures")
    try:
        days = read_temperatures(path.parent, name)
    except TableFault as error:
        for line, refused in error.faults:
            place = Place(str(path.parent / name), line)
            findings.append(fault(source, spot, *refused.sentences).at(place))
        return plan
    except Refusal as error:
        findings.append(fault(source, spot, *error.sentences))
        return plan
    course = plan.course.model_copy(update={"temperatures": None, "daily_mean_temperature": days})
    return plan.model_copy(update={"course": course})


def _with_logo(plan: Plan, path: Path, source: PlanSource, findings: list[Finding]) -> Plan:
    """Put the logo into the plan, which then needs no other file."""
    if plan.club.logo is None:
        return plan
    try:
        logo = read_logo(path.parent, plan.club.logo)
    except Refusal as error:
        findings.append(fault(source, ("club", "logo"), *error.sentences))
        return plan
    return plan.model_copy(update={"club": plan.club.model_copy(update={"logo": logo})})


def _with_photographs(plan: Plan, path: Path, source: PlanSource, findings: list[Finding]) -> Plan:
    """Put the pictures into the plan, which then needs no other file."""
    shown = []
    for index, photograph in enumerate(plan.photographs):
        try:
            if is_picture(photograph.file):
                check_picture(photograph.file)
                shown.append(photograph)
                continue
            picture = read_photograph(path.parent, photograph.file)
            shown.append(photograph.model_copy(update={"file": picture}))
        except Refusal as error:
            spot: PlanPath = ("photographs", index, "file")
            findings.append(fault(source, spot, *error.sentences))
    return plan.model_copy(update={"photographs": tuple(shown)}) if shown else plan


def _fixtures(
    plan: Plan, path: Path, source: PlanSource, findings: list[Finding]
) -> list[tuple[int, Fixture]]:
    """Return the fixtures with the events of calendars, each with the line it comes from."""
    planned = [work.dates for work in plan.works] + [closure.dates for closure in plan.closures]
    days = [day for dates in planned for day in all_days(dates)]
    first = min(days) - dt.timedelta(days=DAYS_BEFORE)
    last = min(max(days) + dt.timedelta(days=DAYS_AFTER), first + LONGEST_READ)
    zone = plan.club.place.timezone if plan.club.place else None
    fixtures: list[tuple[int, Fixture]] = []
    named: set[str] = set()
    # What has a line of its own, perhaps with what was decided, counts before the calendar's.
    typed = {_event(fixture) for fixture in plan.fixtures}
    for index, fixture in enumerate(plan.fixtures):
        if fixture.calendar is None:
            fixtures.append((index, fixture))
            continue
        spot: PlanPath = ("fixtures", index, "calendar")
        if fixture.calendar in named or len(named) == MOST_CALENDARS:
            twice = fixture.calendar in named
            what = "this calendar is named already" if twice else "this is one calendar too many"
            remedy = "Take it out" if twice else f"Name at most {MOST_CALENDARS}"
            findings.append(fault(source, spot, what, remedy))
            continue
        named.add(fixture.calendar)
        try:
            events = read_calendar(
                path.parent, fixture.calendar, first=first, last=last, zone=zone, template=fixture
            )
        except Refusal as error:
            findings.append(fault(source, spot, *error.sentences))
        else:
            fixtures += ((index, event) for event in events if _event(event) not in typed)
    return fixtures


def _event(fixture: Fixture) -> tuple[str, dt.date | None]:
    return " ".join((fixture.name or "").split()).casefold(), fixture.date
