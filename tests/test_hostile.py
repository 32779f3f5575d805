"""Whatever somebody sends: a plan or faults in bounded time and memory, and nothing is run.

Each file is read in a process of its own, which may use a gigabyte of memory and half a minute
of the processor; measured, the slowest takes a few seconds. ``tests/plan/test_any_plan.py`` has
the plans that are only wrong.
"""

from __future__ import annotations

import datetime as dt
import json
import resource
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import notices
from notices.documents.model import Sheet
from notices.errors import NoticesError, TextFault
from notices.plan.fixture_calendar import read_calendar
from notices.plan.load import load_plan
from notices.plan.model import Fixture
from notices.plan.refusal import Refusal
from notices.rendering.files import RenderedFile
from notices.rendering.ways import page_html
from tests.documents.reading import tight
from tests.plan import strategies
from tests.test_own_operation import PLAN as OWN_PLAN
from tests.test_own_operation import TEXT as OWN_TEXT

MEMORY, SECONDS = 1_000_000_000, 30
SOME = 990_000
"""Bytes that a plan may just have."""

PLAN = """\
club: {name: Tansy Down}
course: {greens: [{green: 1-9}]}
works:
  - {operation: rolling, dates: 2027-08-16}
"""

PROGRAM = """
import sys
from pathlib import Path
from notices.plan.load import load_plan
from notices.errors import PlanFault
try:
    load_plan(Path(sys.argv[1]))
except PlanFault as fault:
    assert 0 < len(fault.findings) <= 1000
    print(fault.findings[0].message[:200])
"""


def limited() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))


def said_of(path: Path) -> str:
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, str(path)],
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limited,
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.strip()


def lists(key: str, line: str, count: int = 40_000) -> bytes:
    return f"{PLAN}{key}:\n{line * count}".encode()[:SOME]


MASSES = {
    "50 MB": b"x" * 50_000_000,
    "brackets": b"[" * SOME,
    "braces": b"{a: " * (SOME // 4),
    "dashes": b"- " * (SOME // 2),
    "question marks": b"? " * (SOME // 2),
    "steps": "".join(" " * n + "a:\n" for n in range(1300)).encode(),
    "anchors": b"".join(b"- &a%d x\n" % n for n in range(80_000)),
    "aliases": b"a: &a x\nb: [" + b"*a," * 300_000,
    "laughs": b"a: &a [x,x]\n"
    + b"".join(b"b%d: &b%d [*b%d,*b%d]\n" % (n, n, n - 1, n - 1) for n in range(1, 40)),
    "keys": b"".join(b"k%d: 1\n" % n for n in range(90_000)),
    "one key": b"k: 1\n" * 190_000,
    "unknown keys": PLAN.encode() + b"".join(b"workz%d: 1\n" % n for n in range(70_000)),
    "nothings": lists("closures", "  -\n", 240_000),
    "works": lists("measurements", "  - {operation: x, dates: y}\n"),
    "fixtures": lists("fixtures", "  - {name: M, date: 2027-09-01}\n"),
    "calendars": lists("fixtures", "  - {calendar: f.ics}\n", 990),
    "texts": lists("operations", "  - {name: a b, text: no.md}\n", 990),
    "settings": (
        PLAN
        + "".join(
            "  - {operation: hollow tining, dates: 2027-08-16, settings: {"
            + ", ".join(f"d{n}: 1" for n in range(900))
            + "}}\n"
            for _ in range(100)
        )
    ).encode()[:SOME],
    "a name": PLAN.replace("Tansy Down", "x" * 900_000).encode(),
    "an address": PLAN.replace("}\nc", f", reply_to: '{'a' * 900_000}@x.example'}}\nc", 1).encode(),
    "a green": PLAN.replace("1-9", "1" + "-" * 900_000).encode(),
    "a number": PLAN.replace("1-9", "9" * 900_000).encode(),
    "a date": PLAN.replace("2027-08-16", "9" * 900_000).encode(),
    "dates": PLAN.replace("2027-08-16", f"'{'2027-08-16,' * 80_000}'").encode(),
    "an area": PLAN.replace("green: 1-9", f"green: 1-9, area: '{'1 ' * 400_000}m2'").encode(),
    "remarks": b"# x\n" * 240_000,
    "quotes": b"a: '" + b"''" * 480_000,
    "lines": b"\n" * SOME,
}


@pytest.mark.parametrize("name", MASSES)
def test_masses_are_read_or_refused_in_bounded_time_and_memory(name: str, tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(MASSES[name])
    (tmp_path / "f.ics").write_bytes(calendar(*(event(n, SATURDAY) for n in range(3000))))
    assert said_of(path)


def event(number: int, *lines: str) -> str:
    return "\r\n".join(
        ["BEGIN:VEVENT", f"UID:{number}", f"SUMMARY:M{number}", *lines, "END:VEVENT"]
    )


def calendar(*components: str) -> bytes:
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", *components, "END:VCALENDAR", ""]
    return "\r\n".join(lines).encode()


SATURDAY = "DTSTART;VALUE=DATE:20270821"
SIXTY = ",".join(str(number) for number in range(60))
ALL_DAY = f"BYHOUR=0,1,2,3;BYMINUTE={SIXTY};BYSECOND={SIXTY}"

CALENDARS = {
    "every second": calendar(event(1, "DTSTART:20270101T000000", f"RRULE:FREQ=DAILY;{ALL_DAY}")),
    "every nought days": calendar(event(1, SATURDAY, "RRULE:FREQ=DAILY;INTERVAL=0")),
    "30 February": calendar(
        *(event(n, SATURDAY, "RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30") for n in range(50))
    ),
    "since the year 1": calendar(event(1, "DTSTART;VALUE=DATE:00010101", "RRULE:FREQ=DAILY")),
    "a milliard of times": calendar(event(1, SATURDAY, "RRULE:FREQ=DAILY;COUNT=1000000000")),
    "a milliard of days": calendar(event(1, SATURDAY, "DURATION:P999999999D")),
    "daily for a century": calendar(event(1, SATURDAY, "DURATION:P36500D", "RRULE:FREQ=DAILY")),
    "20,000 events": calendar(*(event(n, SATURDAY) for n in range(20_000))),
    "3,000 that recur": calendar(
        *(event(n, "DTSTART;VALUE=DATE:20200801", "RRULE:FREQ=DAILY") for n in range(3_000))
    ),
    "100,000 exceptions": calendar(
        event(1, SATURDAY, "RRULE:FREQ=DAILY", "EXDATE;VALUE=DATE:" + "20270822," * 100_000 + "x")
    ),
    "events in events": b"BEGIN:VCALENDAR\r\n" + b"BEGIN:VEVENT\r\n" * 9_000,
    "calendars in calendars": b"BEGIN:VCALENDAR\r\n" * 100_000 + b"END:VCALENDAR\r\n" * 100_000,
    "folded lines": b"BEGIN:VCALENDAR\r\nX:" + b"a\r\n " * 1_200_000,
    "backslashes": calendar(event(1, SATURDAY, "COMMENT:" + "\\" * 4_000_000)),
    "parameters": calendar(event(1, "DTSTART" + ";A=1" * 900_000 + ":20270821T000000")),
    "a zone elsewhere": calendar(event(1, "DTSTART;TZID=../../../etc/passwd:20270821T000000")),
}


@pytest.mark.parametrize("name", CALENDARS)
def test_so_are_calendars(name: str, tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(f"{PLAN}fixtures: [{{calendar: f.ics}}]\n", "utf-8")
    (tmp_path / "f.ics").write_bytes(CALENDARS[name])
    said_of(path)


EXPORTS = [path.read_bytes() for path in sorted(Path(__file__).parent.glob("plan/calendars/*"))]

unhurried = settings(
    max_examples=100,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("hostile")


@unhurried
@given(data=st.data())
def test_an_export_with_scratches_is_read_or_refused(folder: Path, data: st.DataObject) -> None:
    lines = data.draw(st.sampled_from(EXPORTS)).split(b"\n")
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(lines) - 1))
        slip = data.draw(st.sampled_from(["drop", "double", "swap", "cut", "scratch"]))
        if slip == "drop" and len(lines) > 1:
            del lines[at]
        elif slip == "double":
            lines.insert(at, lines[at])
        elif slip == "swap":
            other = data.draw(st.integers(0, len(lines) - 1))
            lines[at], lines[other] = lines[other], lines[at]
        elif slip == "cut":
            lines[at] = lines[at][: data.draw(st.integers(0, len(lines[at])))]
        else:
            spot = data.draw(st.integers(0, len(lines[at])))
            lines[at] = lines[at][:spot] + data.draw(st.binary(max_size=3)) + lines[at][spot:]
    (folder / "f.ics").write_bytes(b"\n".join(lines))
    try:
        read_calendar(
            folder,
            "f.ics",
            first=dt.date(2027, 7, 1),
            last=dt.date(2027, 12, 31),
            zone="Europe/London",
            template=Fixture(calendar="f.ics"),
        )
    except Refusal as refusal:
        assert refusal.suggestion  # noqa: PT017, any other error fails the test


CODECS = (
    *("utf-8", "utf-8-sig", "utf-7", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "latin-1"),
    *("windows-1252", "windows-1251", "cp437", "cp037", "mac-roman", "iso-8859-15", "koi8-r"),
    *("shift_jis", "gb18030", "euc-kr", "big5"),
)


@unhurried
@given(
    plan=strategies.plans(),
    codec=st.sampled_from(CODECS),
    noise=st.binary(max_size=4),
    at=st.integers(0, 2000),
)
def test_any_encoding_is_read_or_refused(
    folder: Path, plan: dict[str, Any], codec: str, noise: bytes, at: int
) -> None:
    data = json.dumps(plan, ensure_ascii=False).encode(codec, "replace")
    path = folder / "plan.yaml"
    path.write_bytes(data[:at] + noise + data[at:])
    try:
        load_plan(path)
    except NoticesError as error:
        assert str(error)  # noqa: PT017, any other error fails the test


# Nothing that is typed is run


ATTACKS = [
    *("{{ 7 * 191 }}", "{% if 1 %}7{% endif %}", "{{ ''.__class__.__mro__ }}", "${7*191}"),
    *("{% include '/etc/passwd' %}", "{{ config }}", "{# gone #}", "<%= 7*191 %>", "{{ 1/0 }}"),
    *("{{", "{%", "#{7*191}", "%s%n", "{0}", "$(id)", "`id`", "<script>alert(1)</script>"),
]


def with_attack(attack: str) -> dict[str, Any]:
    """A plan with the attack in every place for free words."""
    quoted = attack
    return {
        "club": {
            "name": f"Club {quoted}",
            "sender": {"role": quoted, "name": quoted, "email": "course@club.example"},
            "contact": quoted,
        },
        "course": {"greens": [{"green": "1-9", "area": "400 m2"}]},
        "works": [
            {
                "operation": "hollow tining",
                "dates": "2027-08-16 to 2027-08-17",
                "reserve_dates": "2027-08-18",
                "note": quoted,
            },
            {
                "operation": "overseeding",
                "dates": "2027-08-16 to 2027-08-17",
                "settings": {"seed": quoted},
            },
            {"operation": "feeding", "dates": "2027-08-16", "settings": {"product": quoted}},
        ],
        "closures": [{"what": quoted, "dates": "2027-08-16", "instead": quoted, "reason": quoted}],
        "fixtures": [{"name": quoted, "date": "2027-08-20"}],
        "restrictions": [{"what": quoted, "dates": "2027-08-16", "except": quoted, "ask": quoted}],
        "approval": {"by": quoted, "reference": quoted},
        "decision": {"by": quoted, "when": quoted, "where": quoted},
        "accepted": [{"finding": "no-sender", "by": quoted, "why": quoted}],
    }


def built(folder: Path, plan: object) -> Iterator[RenderedFile]:
    """Render a pack, sheets only as far as the pages from which they are set."""
    path = folder / "plan.yaml"
    path.write_text(json.dumps(plan, ensure_ascii=False), "utf-8")
    loaded = notices.load_plan(path).plan
    programme = notices.work_out(loaded, dt.date(2027, 7, 1))
    documents = notices.write_documents(programme, notices.canonical(loaded))
    sheets = [item for item in documents.items if isinstance(item, Sheet)]
    assert sheets
    for sheet in sheets:
        page = page_html(sheet, sheet.fits[0])
        yield RenderedFile(f"{sheet.document.name}, for paper", "text/html", page.encode())
    entries = tuple(
        replace(entry, items=tuple(item for item in entry.items if item not in sheets))
        for entry in documents.entries
    )
    yield from notices.render_pack(replace(documents, entries=entries))


@pytest.mark.parametrize("attack", ATTACKS)
def test_template_syntax_is_words_like_any_other(attack: str, tmp_path: Path) -> None:
    files = {file.name: file.content for file in built(tmp_path, with_attack(attack))}
    text = files["member-email.txt"].decode()
    # In plain text it stands as it was typed, with its lines broken anew.
    assert tight(attack) in tight(text)
    for content in files.values():
        assert b"1337" not in content  # 7 × 191
        assert b"root:" not in content
        assert b"<script>alert" not in content or not content.startswith(b"<!DOCTYPE html>")


BOMBS = [
    *("{{ 1/0 }}", "{{ 'x' * 1000000000 }}", "{{ 9**9**9 }}", "{{ depth + 1 }}", "{{ depth() }}"),
    "{% for a in range(99999) %}{% for b in range(99999) %}{% endfor %}{% endfor %}",
    *("{{ ''.__class__.__mro__[1].__subclasses__() }}", "{{ cycler.__init__.__globals__ }}"),
    *("{% include '/etc/passwd' %}", "{% import '../../../etc/passwd' as x %}", "{{ self }}"),
    *("{{ range(10**9)|list }}", "{{ 'a'.ljust(10**9) }}", "{{ lipsum(n=1000000) }}"),
    *("{{ '%1000000000d' % 1 }}", "{{ ('a'*9999)|center(10**9) }}", "{{ '{0:999}'.format(1) }}"),
    *("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "{% extends 'why.md' %}", "{% raw %}"),
    "{% set s = namespace(x='a') %}{% for i in range(40) %}{% set s.x = s.x ~ s.x %}{% endfor %}",
    *("{{ nothing }}", '{{ "', "{{ say }}", "{{ say.nothing('x') }}", "{{ say.closes() }}"),
    *("{{ say.closes('x', 'y', 'z') }}", "{{ say.closes('x', no='y') }}", "{{ say['closes'] }}"),
    *(
        "{{ say.closes(1) }}",
        "{{ say.closes('') }}",
        "{{ say.closes.name }}",
        "{{ say.__class__ }}",
    ),
    "{% if " + "(" * 500 + "depth" + ")" * 500 + " %}x{% endif %}",
    "{% if depth %}" * 300 + "{% endif %}" * 300,
]


@pytest.mark.parametrize("bomb", BOMBS, ids=lambda bomb: bomb[:40])
def test_a_club_s_own_text_names_things_and_does_nothing(bomb: str, tmp_path: Path) -> None:
    text = OWN_TEXT.replace('{{ say.closes("The holes") }}', f"Soon. {bomb}")
    (tmp_path / "air-injection.md").write_text(text, "utf-8")
    path = tmp_path / "plan.yaml"
    path.write_text(OWN_PLAN, "utf-8")
    loaded = notices.load_plan(path).plan
    programme = notices.work_out(loaded, dt.date(2027, 7, 1))
    try:
        notices.write_documents(programme, notices.canonical(loaded))
    except TextFault as fault:
        assert "The text on air-injection cannot be filled: " in str(fault)  # noqa: PT017


PIECES = st.sampled_from(
    [
        *("{{ depth }}", "{% if depth %}", "{% endif %}", "{{", "}}", "{%", "%}", "## Why", "---"),
        *("title:", "line: x", "\n", "\n\n", "    ", "- ", "1. ", "> ", "`", "*", "[a](b)", "# "),
        *("<b>", "&amp;", "\t", "## What we do\n", "{{ say.closes('It') }}", "|", "\x1b", "é", ":"),
    ]
)


def pieces() -> Iterator[st.SearchStrategy[str]]:
    yield PIECES
    yield st.text(max_size=5)


@settings(unhurried, max_examples=30)
@given(parts=st.lists(st.one_of(*pieces()), max_size=12), at=st.integers(0, len(OWN_TEXT)))
def test_any_text_is_filled_or_refused(folder: Path, parts: list[str], at: int) -> None:
    text = OWN_TEXT[:at] + "".join(parts) + OWN_TEXT[at:]
    (folder / "air-injection.md").write_bytes(text.encode("utf-8", "surrogatepass"))
    path = folder / "plan.yaml"
    path.write_text(OWN_PLAN, "utf-8")
    try:
        loaded = notices.load_plan(path).plan
        programme = notices.work_out(loaded, dt.date(2027, 7, 1))
        notices.write_documents(programme, notices.canonical(loaded))
    except NoticesError as error:
        assert str(error)  # noqa: PT017, any other error fails the test
