"""A club lays its own texts over ours: a folder beside the plan, and the pack stays complete."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest
from click.testing import CliRunner

import notices
from notices.cli import main
from notices.errors import PlanFault
from notices.paths import templates_folder
from notices.programme.model import Moment
from notices.rendering.files import RenderedFile
from notices.wording.moments import message
from notices.wording.questions import questions
from notices.wording.said import lines_of
from notices.wording.words import Words

pytestmark = pytest.mark.usefixtures("few_documents")

PLAN = """\
club: {name: Bramble Hill Golf Club}
course:
  greens: [{green: 1-9, area: 400 m2}]
works:
  - {operation: hollow tining, dates: 2027-08-16, services_checked: true}
texts: ours
"""

CORES = (templates_folder() / "en-GB" / "operations" / "hollow-tining.md").read_text("utf-8")
OWN_CORES = CORES.replace("Hollow tines take small cores out", "Bramble Hill takes cores out")

STORY = "Our clay needs air.\n{% if holes %}\nSo we make holes.\n{% endif %}\n"


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN, "utf-8")
    write(path, "operations/hollow-tining.md", OWN_CORES)
    write(path, "why.md", STORY)
    return path


def write(plan: Path, name: str, text: str) -> None:
    file = plan.parent / "ours" / name
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8")


def pack(path: Path) -> dict[str, RenderedFile]:
    plan = notices.load_plan(path).plan
    programme = notices.work_out(plan, dt.date(2027, 7, 1))
    documents = notices.write_documents(programme, notices.canonical(plan))
    return {file.name: file for file in notices.render_pack(documents)}


def words(path: Path) -> Words:
    return Words(notices.work_out(notices.load_plan(path).plan, dt.date(2027, 7, 1)))


def faults(path: Path) -> str:
    with pytest.raises(PlanFault) as fault:
        notices.load_plan(path)
    return str(fault.value)


def checked(path: Path) -> tuple[int, list[dict[str, object]]]:
    run = CliRunner().invoke(main, ["check", str(path), "--json", "--today", "2027-07-01"])
    return run.exit_code, json.loads(run.stdout)


def test_its_texts_take_the_place_of_ours_and_the_pack_carries_them(
    plan: Path, tmp_path: Path
) -> None:
    files = pack(plan)
    text = " ".join(files["member-email.txt"].content.decode().split())
    assert "Bramble Hill takes cores out of each green." in text
    assert "Our clay needs air. So we make holes." in text
    carried = json.loads(files["plan.json"].content)["texts"]
    assert carried == [
        {"name": "operations/hollow-tining.md", "text": OWN_CORES},
        {"name": "why.md", "text": STORY},
    ]
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "plan.json").write_bytes(files["plan.json"].content)
    again = pack(elsewhere / "plan.json")
    assert again["member-email.txt"].content == files["member-email.txt"].content
    assert again["plan.json"].content == files["plan.json"].content


def test_questions_and_moments_can_be_replaced_too(plan: Path) -> None:
    write(plan, "questions/money-off.md", "question: A refund?\naudience: members\n\nAsk us.\n")
    before = (templates_folder() / "en-GB" / "moments" / "finished.md").read_text("utf-8")
    write(
        plan, "moments/finished.md", before.replace("Thank you for playing", "Thanks for playing")
    )
    told = words(plan)
    (money,) = [one for one in questions(told) if one.slug == "money-off"]
    assert (money.question, lines_of(money.answer)) == ("A refund?", ["Ask us."])
    (period,) = told.programme.periods
    assert (
        "Thanks for playing around us."
        in lines_of(message(told, period, Moment.FINISHED).opening)[0]
    )
    assert checked(plan)[0] == 0


def test_a_question_without_an_answer_is_not_asked(plan: Path) -> None:
    write(plan, "questions/the-other-club.md", "question: And they?\naudience: members\n")
    assert "the-other-club" not in [one.slug for one in questions(words(plan))]


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (
            "operations/holow-tining.md",
            'there is no text "operations/holow-tining.md" to replace. Did you mean "operations/ho',
        ),
        ("hollow-tining.md", 'Did you mean "operations/hollow-tining.md"?'),
        ("qwertz.md", "Name it as the text that it replaces."),
        ("glossary.md", 'there is no text "glossary.md" to replace'),
        ("_phrases.md", 'there is no text "_phrases.md" to replace'),
    ],
)
def test_a_name_that_none_of_ours_has_is_told_at_its_file(plan: Path, name: str, said: str) -> None:
    write(plan, name, "x")
    told = faults(plan)
    assert said in told
    assert told.startswith(str(plan.parent / "ours" / name))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("our", 'there is no folder "our" beside the plan. Did you mean "ours"?'),
        ("../ours", "a folder of texts must lie beside the plan"),
        ("plan.yaml", '"plan.yaml" is no folder'),
        ("empty", 'the folder "empty" holds no text'),
    ],
)
def test_a_folder_that_cannot_be_read_is_told_in_the_plan(plan: Path, name: str, said: str) -> None:
    (plan.parent / "empty").mkdir()
    plan.write_text(PLAN.replace("texts: ours", f"texts: {name}"), "utf-8")
    told = faults(plan)
    assert said in told
    assert told.startswith(f"{plan}:6:")


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xfe", "Save it as UTF-8 text"),
        (b" \n", "this text is empty"),
        (b"x" * 20_001, "larger than 20 kB"),
    ],
)
def test_a_file_that_is_no_text_is_told(plan: Path, content: bytes, said: str) -> None:
    (plan.parent / "ours" / "why.md").write_bytes(content)
    assert said in faults(plan)


def test_texts_that_no_pack_could_carry_are_refused(plan: Path) -> None:
    for number in range(16):
        write(plan, f"moments/{number}.md", "x" * 19_000)  # 304,000 in all
    assert "are larger than 300 kB together" in faults(plan)


def test_a_link_out_of_the_folder_is_not_followed(plan: Path, tmp_path: Path) -> None:
    secret = tmp_path.parent / "secret.md"
    secret.write_text("A secret.", "utf-8")
    (plan.parent / "ours" / "cautions.md").symlink_to(secret)
    assert "cautions.md" not in [text.name for text in notices.load_plan(plan).plan.texts]
    (plan.parent / "far").symlink_to(tmp_path.parent)
    plan.write_text(PLAN.replace("texts: ours", "texts: far"), "utf-8")
    assert "must lie beside the plan" in faults(plan)


@pytest.mark.parametrize(
    ("name", "text", "line", "said"),
    [
        ("why.md", "Our clay.\n\n{{ hole }}\n", 3, "'hole' is not known. Did you mean 'holes'?"),
        ("why.md", "Our clay.\n{% if holes %}\n", 2, "why.md: "),
        ("why.md", "{% for x in holes %}{% endfor %}", 1, "can name things and phrases"),
        ("why.md", "{{ holes.__class__ }}", 1, "can name things and phrases"),
        ("operations/hollow-tining.md", CORES.replace("## Why\n", "## Because\n"), 1, "## Why"),
        ("operations/turfing.md", "title: Turf\n", 1, "this lacks line:, ## What we do, ## Why"),
        ("moments/finished.md", "subject: Done\n\n## Members\nDone.\n", 1, "## Visitors, ## Shop"),
        ("questions/why-sand.md", "question: Sand?\naudience: all\n\nYes.", 2, "Write members or"),
        ("questions/why-sand.md", "question: Sand?\n\nYes.", 1, "this lacks audience:"),
    ],
)
def test_a_text_that_cannot_be_used_is_told_by_check_with_its_line(
    plan: Path, name: str, text: str, line: int, said: str
) -> None:
    write(plan, name, text)
    status, found = checked(plan)
    (one,) = [one for one in found if one["code"] == "text-cannot-be-filled"]
    assert status == 1
    assert (one["file"], one["line"]) == (str(plan.parent / "ours" / name), line)
    assert said in f"{one['message']}. {one['suggestion']}"
    built = CliRunner().invoke(main, ["build", str(plan), "--out", str(plan.parent / "out")])
    assert built.exit_code == 1
    assert not (plan.parent / "out").exists()


def test_html_in_a_text_is_words(plan: Path) -> None:
    write(
        plan,
        "why.md",
        "<script>alert(1)</script> [x](javascript:alert(1)) ![p](https://x.example/p)\n",
    )
    page = pack(plan)["member-email.html"].content.decode()
    assert "<script>alert" not in page
    assert "javascript:" not in page.replace("](javascript:", "")
    assert "x.example/p" not in "".join(p.split('src="')[-1] for p in page.split("<img")[1:])


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("[{name: wy.md, text: x}]", 'Did you mean "why.md"?'),
        ("[{name: why.md, text: x}, {name: why.md, text: y}]", '"why.md" is replaced twice'),
        ("[{name: why.md, text: story.md}]", 'there is no file "story.md" beside the plan'),
    ],
)
def test_texts_may_be_typed_one_by_one(plan: Path, typed: str, said: str) -> None:
    plan.write_text(PLAN.replace("texts: ours", f"texts: {typed}"), "utf-8")
    assert said in faults(plan)


def test_a_text_may_lie_beside_the_plan(plan: Path) -> None:
    (plan.parent / "story.md").write_text("It {{ holds }}.\n", "utf-8")
    typed = "texts: [{name: why.md, text: story.md}]"
    plan.write_text(PLAN.replace("texts: ours", typed), "utf-8")
    (found,) = checked(plan)[1][:1]
    assert (found["file"], found["line"]) == (str(plan.parent / "story.md"), 1)


def test_long_sentences_in_it_are_told_at_the_file(plan: Path) -> None:
    write(plan, "why.md", f"{'We do it for you and '.capitalize() * 6}for us.\n")
    run = CliRunner().invoke(
        main, ["check", str(plan), "--words", "--json", "--today", "2027-07-01"]
    )
    (one,) = [one for one in json.loads(run.stdout) if one["code"] == "sentence-too-long"]
    assert one["file"] == str(plan.parent / "ours" / "why.md")
