from __future__ import annotations

import textwrap
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.errors import PlanFault
from notices.findings import Finding, Place, Weight
from notices.plan import yaml_file
from notices.plan.source import MOST_FAULTS, PlanSource
from notices.plan.yaml_file import read_yaml


@pytest.fixture(params=["with the C part", "without it"])
def _both_parsers(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    if request.param == "without it":
        monkeypatch.setattr(yaml_file, "_LOADER", yaml.SafeLoader)


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    return tmp_path / "plan.yaml"


def read(path: Path, content: str | bytes) -> PlanSource:
    data = content.encode() if isinstance(content, str) else content
    path.write_bytes(data)
    return read_yaml(path)


def faults(path: Path, content: str | bytes) -> tuple[Finding, ...]:
    with pytest.raises(PlanFault) as caught:
        read(path, content)
    findings = caught.value.findings
    assert findings
    for finding in findings:
        assert finding.weight is Weight.CANNOT_BUILD
        assert finding.place
        assert finding.place.file == str(path)
        assert "\n" not in str(finding)
        assert not finding.message.endswith(".")
        assert not finding.suggestion.endswith(".")
    return findings


def fault(path: Path, content: str | bytes) -> tuple[str, int | None, int | None, str]:
    (finding,) = faults(path, content)
    assert finding.place
    return finding.code, finding.place.line, finding.place.column, finding.message


PLAN = textwrap.dedent("""\
    club:
      name: Marlpit Common
      place: {latitude: 53.10, longitude: -2.20}
    works:
      - operation: hollow tining
        dates: 2026-10-12 to 2026-10-14
        settings:
          depth: 50 mm
      - operation: brushing
    closures:
    """)


@pytest.mark.usefixtures("_both_parsers")
@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("12", 12),
        ("-3", -3),
        ("0", 0),
        ("0.55", 0.55),
        ("-2.20", -2.2),
        ("true", True),
        ("False", False),
        ("", None),
        ("~", None),
        ("null", None),
        ("no", "no"),
        ("off", "off"),
        ("Yes", "Yes"),
        ("08:30", "08:30"),
        ("2026-10-12", "2026-10-12"),
        ("2026-09-31", "2026-09-31"),
        ("1_000", "1_000"),
        ("1e3", "1e3"),
        ("0x1F", "0x1F"),
        ("007", "007"),
        ("+5", "+5"),
        (".5", ".5"),
        (".nan", ".nan"),
        (".inf", ".inf"),
        ("1234567890123456", "1234567890123456"),
        ("9" * 5000, "9" * 5000),
        ("1-9, 12", "1-9, 12"),
        ('"12"', "12"),
        ("'true'", "true"),
        ('""', ""),
        ("[1, a]", [1, "a"]),
        ("{x: 1}", {"x": 1}),
        ("|\n  two\n  lines\n", "two\nlines\n"),
        ("=", "="),
    ],
)
def test_reads_values(plan: Path, typed: str, value: Any) -> None:
    found = read(plan, f"key: {typed}").data["key"]
    assert found == value
    assert type(found) is type(value)


@pytest.mark.usefixtures("_both_parsers")
def test_knows_where_everything_stands(plan: Path) -> None:
    source = read(plan, PLAN)
    file = str(plan)
    assert source.file == file
    assert source.place(()) == Place(file, 1, 1)
    assert source.place(("club", "name")) == Place(file, 2, 9)
    assert source.place(("club", "name"), key=True) == Place(file, 2, 3)
    assert source.place(("club", "place", "longitude")) == Place(file, 3, 39)
    assert source.place(("works", 0, "settings", "depth")) == Place(file, 8, 14)
    assert source.place(("works", 0, "settings"), key=True) == Place(file, 7, 5)
    assert source.place(("works", 1)) == Place(file, 9, 5)


@pytest.mark.usefixtures("_both_parsers")
def test_a_missing_key_stands_where_its_block_does(plan: Path) -> None:
    source = read(plan, PLAN)
    assert source.place(("works", 1, "dates")) == source.place(("works", 1))
    assert source.place(("works", 1, "dates"), key=True) == source.place(("works", 1))
    assert source.place(("works", 9)) == source.place(("works",))
    assert source.place(("course", "greens"), key=True) == source.place(())


def test_steps_that_lead_nowhere_are_passed_over(plan: Path) -> None:
    source = read(plan, PLAN)
    assert source.place(("works", "tuple", 0, "function-after", "dates")) == source.place(
        ("works", 0, "dates")
    )


def test_a_value_that_is_missing_stands_after_its_colon(plan: Path) -> None:
    assert read(plan, PLAN).place(("closures",)) == Place(str(plan), 10, 10)


def test_columns_count_characters(plan: Path) -> None:
    assert read(plan, "a: {é𝄞: x, b: y}").place(("a", "b")) == Place(str(plan), 1, 15)


def test_keeps_values_as_typed(plan: Path) -> None:
    source = read(plan, "name: 1.50\nlist: [x]\nnumber: 7\n")
    assert source.data["name"] == 1.5
    assert source.typed(("name",)) == "1.50"
    assert source.typed(("list", 0)) == "x"
    assert source.typed(("number",)) == "7"
    assert source.typed(("list",)) is None
    assert source.typed(("missing",)) is None
    assert source.typed(()) is None


@pytest.mark.parametrize("newline", ["\n", "\r\n", "\r"])
def test_reads_any_ends_of_lines_and_a_byte_order_mark(plan: Path, newline: str) -> None:
    source = read(plan, b"\xef\xbb\xbf" + PLAN.replace("\n", newline).encode())
    assert source.data["club"]["name"] == "Marlpit Common"
    assert source.place(("club", "name")) == Place(str(plan), 2, 9)
    assert source.place(("club",), key=True) == Place(str(plan), 1, 1)


def test_keeps_the_file_name_as_given(plan: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    plan.write_text("a: 1")
    monkeypatch.chdir(plan.parent)
    assert read_yaml(Path("plan.yaml")).place(("a",)) == Place("plan.yaml", 1, 4)


@pytest.mark.usefixtures("_both_parsers")
@pytest.mark.parametrize(
    ("content", "code", "line", "column"),
    [
        ("a: *x", "yaml-alias", 1, 4),
        ("a: &x 1", "yaml-alias", 1, 4),
        ("a: &x {b: 1}", "yaml-alias", 1, 4),
        ("a: !!python/object:os.system x", "yaml-tag", 1, 4),
        ("a: !mine {b: 1}", "yaml-tag", 1, 4),
        ("a: ! x", "yaml-tag", 1, 4),
        ("a:\n  <<: {b: 1}", "yaml-merge-key", 2, 3),
        ("a: 1\n---\nb: 2", "several-documents", 2, 1),
        ("7: x", "key-not-text", 1, 1),
        ("a: {true: x}", "key-not-text", 1, 5),
        ("~: x", "key-not-text", 1, 1),
        ("? [a]\n: b", "key-not-text", 1, 3),
        ("{name: Smith, Jones, kind: x}", "yaml-syntax", 1, 15),
        ("- a", "plan-not-a-block", 1, 1),
        ("a", "plan-not-a-block", 1, 1),
        ("", "plan-empty", 1, 1),
        ("# only a remark\n", "plan-empty", 1, 1),
        ("---\n...\n", "plan-empty", 1, 1),
        ("a: " + "[" * 50 + "]" * 50, "nested-too-deep", 1, 53),
        ("- " * 200_000, "nested-too-deep", 1, 101),
        ("a: b\x07", "invisible-character", 1, 5),
        ("a: b\u2028c", "invisible-character", 1, 5),
        ("é: 1\nb: \u0085", "invisible-character", 2, 4),
        ('a: "\\0"', "invisible-character", 1, 4),
    ],
)
def test_refuses_what_is_not_for_plans(
    plan: Path, content: str, code: str, line: int, column: int
) -> None:
    assert fault(plan, content)[:3] == (code, line, column)


@pytest.mark.usefixtures("_both_parsers")
@pytest.mark.parametrize(
    ("content", "line", "column", "message"),
    [
        ("a:\n\tb: c", 2, 1, "a tab stands here"),
        ("a: 1\n\tb: c", 2, 1, "a tab stands here"),
        ("a: @home", 1, 4, "a text cannot begin with @"),
        ("a: *very* good", 1, 4, "a text cannot begin with *"),
        ("a: > x", 1, 4, "a text cannot begin with >"),
        ("a: !x!y z", 1, 4, "a text cannot begin with !"),
        ("%a", 1, 1, "a line cannot begin with %"),
        ("a: b: c", 1, 5, "a second colon stands in this line"),
        ('a: "b', 1, 4, "the quotation mark opened here is never closed"),
        ("a: 'b\n---\n", 1, 4, "the quotation mark opened here is never closed"),
        ("a: [1, 2\nb: c", 1, 4, "the [ opened here is not closed, or a comma is missing"),
        ("a: {b: 1 c: 2}", 1, 4, "the { opened here is not closed, or a comma is missing"),
        ("a: {b: [1, 2}", 1, 8, "the [ opened here is not closed"),
        ("a: ]", 1, 4, "] cannot stand here"),
        ("a: - b", 1, 4, "a dash cannot stand here"),
        ("club:\n  name:Marlpit\n  b: c", 2, 7, 'a space is missing after the colon of "name"'),
        ("works:\n  - operation:x\n    b: c", 2, 14, "a space is missing after the colon"),
        ("a: b\nc\nd: e", 2, 1, "a colon is missing in this line"),
        ("a:\n  b: 1\n c: 2", 3, 2, "this line begins neither below its neighbours"),
        ("a: 1\n  b: 2", 2, 4, "this line does not fit below the line above it"),
        ("a: 'it's'", 1, 8, "this does not belong to the value before it"),
        ("a: b\n...\nc: d", 3, 1, "something stands here after the end of the plan"),
    ],
)
def test_says_in_plain_words_what_is_not_yaml(
    plan: Path, content: str, line: int, column: int, message: str
) -> None:
    found = fault(plan, content)
    assert found[:3] == ("yaml-syntax", line, column)
    assert message in found[3]


def test_a_wrong_escape_is_told(plan: Path) -> None:
    assert "a backslash in double quotes must be doubled" in fault(plan, 'a: "C:\\Users"')[3]


@pytest.mark.usefixtures("_both_parsers")
@pytest.mark.parametrize("opening", ["[", "[\n", "{a: ", "? ", "- "])
def test_no_depth_is_too_much(plan: Path, opening: str) -> None:
    assert fault(plan, "a:\n  " + opening * 200_000)[0] == "nested-too-deep"


@pytest.mark.usefixtures("_both_parsers")
@pytest.mark.parametrize("escape", ["\\ud800", "\\UFFFFFFFF", "\\x00"])
def test_escapes_that_are_no_letters_are_refused(plan: Path, escape: str) -> None:
    assert faults(plan, f'a: "{escape}"')


@pytest.mark.usefixtures("_both_parsers")
def test_reports_all_doubled_keys_at_once(plan: Path) -> None:
    source = read(plan, "a: 1\nb:\n  - {c: 1, c: 2}\na: 3\na: 4\n")
    found = source.findings
    assert source.data == {"a": 1, "b": [{"c": 1}]}
    assert [str(f.place).removeprefix(f"{plan}:") for f in found] == ["3:12", "4:1", "5:1"]
    assert {f.code for f in found} == {"doubled-key"}
    assert found[0].path == ("b", 0, "c")
    assert found[1].path == ("a",)
    assert found[1].message == 'the key "a" stands here a second time, after line 1'


def test_reports_faults_of_several_kinds_at_once(plan: Path) -> None:
    found = faults(plan, "a: *x\na: 1\nb: [\n")
    assert [f.code for f in found] == ["yaml-alias", "doubled-key", "yaml-syntax"]


def test_a_file_of_nothing_but_faults_ends_early(plan: Path) -> None:
    assert len(faults(plan, "a: 1\n" * 5000)) == MOST_FAULTS


def test_doubled_keys_do_not_hide_that_the_rest_is_broken(plan: Path) -> None:
    assert [f.code for f in faults(plan, "a: 1\na: 1\nb: [\n")] == ["doubled-key", "yaml-syntax"]


def test_says_which_byte_is_not_utf8(plan: Path) -> None:
    assert fault(plan, "a: 1\ncafé: Caf".encode() + b"\xe9\n") == (
        "file-not-utf8",
        2,
        10,
        "the byte E9 here is not UTF-8",
    )
    assert fault(plan, b"\xef\xbb\xbfa: \xe9")[1:3] == (1, 4)


@pytest.mark.parametrize("encoding", ["utf-16", "utf-32"])
def test_refuses_utf16_with_a_hint(plan: Path, encoding: str) -> None:
    assert fault(plan, PLAN.encode(encoding))[0] == "file-not-utf8"


@pytest.mark.parametrize("content", [b"PK\x03\x04\x00", PLAN.encode("utf-16-le"), b"\x00"])
def test_refuses_what_is_not_text(plan: Path, content: bytes) -> None:
    assert fault(plan, content)[0] == "file-not-text"


def test_refuses_a_large_file(plan: Path) -> None:
    code, _, _, message = fault(plan, b"#" * 1_000_001)
    assert code == "file-too-large"
    assert "larger than 1 MB" in message


def refusal(path: Path) -> Finding:
    with pytest.raises(PlanFault) as caught:
        read_yaml(path)
    (finding,) = caught.value.findings
    return finding


def test_refuses_a_folder(tmp_path: Path) -> None:
    assert refusal(tmp_path).code == "file-is-folder"


def test_a_missing_file_may_have_a_namesake(plan: Path) -> None:
    plan.write_text("a: 1")
    assert refusal(plan.with_name("plan.yml")).suggestion == 'Did you mean "plan.yaml"?'
    assert refusal(plan.with_name("zzz")).code == "file-missing"
    assert refusal(plan.parent / "none" / "plan.yaml").code == "file-missing"


@pytest.mark.parametrize("name", ["a\x00b", "x" * 5000])
def test_names_that_no_file_can_have(tmp_path: Path, name: str) -> None:
    assert refusal(tmp_path / name).code in ("file-unreadable", "file-missing")


def test_a_file_in_a_file_is_no_file(plan: Path) -> None:
    plan.write_text("a: 1")
    assert refusal(plan / "b").code == "file-unreadable"


def test_refuses_a_file_that_may_not_be_read(plan: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # chmod would not do: who runs tests as root may read everything.
    def locked(*_: object, **__: object) -> None:
        raise PermissionError

    monkeypatch.setattr(Path, "open", locked)
    assert refusal(plan).code == "file-unreadable"


anything = st.binary(max_size=60) | st.text(max_size=60).map(lambda t: t.encode(errors="replace"))
yamlish = st.text(
    st.sampled_from("ab12:-?[]{},&*!|>'\"%@`#~<=. \n\t\\é\u2028\ufeff"), max_size=60
).map(str.encode)
unhurried = settings(
    max_examples=300,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


@pytest.mark.usefixtures("_both_parsers")
@unhurried
@given(content=anything | yamlish)
def test_any_file_is_read_or_refused(plan: Path, content: bytes) -> None:
    plan.write_bytes(content)
    try:
        source = read_yaml(plan)
    except PlanFault as error:
        assert error.findings  # noqa: PT017, any other error fails the test
    else:
        assert isinstance(source.data, dict)
        _every_value_has_its_own_place(source, source.data, ())


def _every_value_has_its_own_place(
    source: PlanSource, value: object, path: tuple[str | int, ...]
) -> None:
    place = source.place(path)
    assert place.line
    assert place.column
    if isinstance(value, dict):
        for key, item in value.items():
            assert source.place((*path, key), key=True).line
            _every_value_has_its_own_place(source, item, (*path, key))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            _every_value_has_its_own_place(source, item, (*path, index))


plain = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Zl", "Zp"]), max_size=12)
trees = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**14), 10**14) | plain,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(plain, inner, max_size=4),
    max_leaves=12,
)


@unhurried
@given(data=st.dictionaries(plain, trees, min_size=1, max_size=4))
def test_reads_what_pyyaml_writes(plan: Path, data: dict[str, Any]) -> None:
    plan.write_text(
        yaml.safe_dump(data, allow_unicode=True, sort_keys=False, width=10_000), encoding="utf-8"
    )
    try:
        assert read_yaml(plan).data == data
    except PlanFault as error:
        # PyYAML makes a complex key of one that is too long for a line; ours never are.
        raise AssertionError(str(error)) from error
