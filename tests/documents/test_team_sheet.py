"""What the team reads of a day: checks, hours and times that fit the work of that day."""

from __future__ import annotations

from collections.abc import Iterator

from notices.documents.committee_risks import risks
from notices.documents.team_sheet import team_sheet
from notices.programme.model import Programme
from notices.wording.blocks import Block, Bullets, KeyFacts, Paragraph, Table
from notices.wording.words import Words
from tests.wording.small_plans import plan, programme, work

CLAY = {"soil": {"clay": "47 %", "sand": "18 %"}, "drains": "a ditch"}


def texts(blocks: tuple[Block, ...]) -> Iterator[str]:
    """All that is said, piece by piece."""
    for block in blocks:
        match block:
            case Paragraph():
                yield block.text
            case Bullets():
                yield from ("".join(run.text for run in item) for item in block.items)
            case KeyFacts():
                yield from (f"{row.label}: {row.text}" for row in block.rows)
            case Table():
                yield from (cell for row in block.rows for cell in row)
            case _:
                pass


def page(made: Programme, number: int = 0) -> str:
    return " | ".join(texts(team_sheet(made).sections[number].blocks))


def on_clay(*operations: str) -> Programme:
    typed = plan(*(work(name, "2027-06-01") for name in operations))
    return programme(typed | {"course": typed["course"] | CLAY})


def test_channels_want_moist_clay_and_begin_at_the_drain() -> None:
    made = on_clay("mole ploughing")
    for told in (page(made), " ".join(t for s, _ in risks(Words(made)) for t in texts(s.blocks))):
        assert "only when the clay is moist below and firm on top" in told
        assert "Each channel is drawn from the drain or ditch upwards." in told
    assert "clay" not in page(on_clay("hollow tining"))
