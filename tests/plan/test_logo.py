"""A club's logo stays clear where it was clear, loses what is empty around it, and shows on paper."""

from __future__ import annotations

import base64
import datetime as dt
import io
from pathlib import Path

import pytest
from PIL import Image

import notices
from notices.errors import PlanFault
from notices.plan.logo import read_logo
from notices.plan.refusal import Refusal
from tests.plan.test_photographs import RED, near, photograph

CLEAR = (0, 0, 0, 0)
GREEN = (20, 70, 40, 255)
PLAN = """
club: {name: Fallow Moor Golf Club, logo: logo.png}
course: {greens: [{green: 1-9}]}
works: [{operation: hollow tining, dates: 2027-08-16 to 2027-08-17}]
"""


def written(picture: Image.Image, path: Path, kind: str = "PNG") -> Path:
    picture.save(path, kind)
    return path


def mark(
    size: tuple[int, int], box: tuple[int, int, int, int], ground: object = CLEAR
) -> Image.Image:
    """A green block on a ground."""
    picture = Image.new("RGBA", size, ground)  # type: ignore[arg-type]
    picture.paste(GREEN, box)
    return picture


def opened(data: str) -> Image.Image:
    head, _, content = data.partition(",")
    assert head == "data:image/png;base64"
    return Image.open(io.BytesIO(base64.b64decode(content)))


@pytest.mark.parametrize("ground", [CLEAR, (255, 255, 255, 255), (255, 255, 255, 90)])
def test_what_is_empty_around_it_falls_away(ground: object, tmp_path: Path) -> None:
    """The block is 60 wide and 30 high, wherever it stands."""
    written(mark((200, 100), (40, 10, 100, 40), ground), tmp_path / "logo.png")
    assert opened(read_logo(tmp_path, "logo.png")).size == (60, 30)


def test_what_is_clear_within_it_stays_clear(tmp_path: Path) -> None:
    picture = mark((60, 30), (0, 0, 60, 30))
    picture.paste(CLEAR, (20, 10, 40, 20))
    written(picture, tmp_path / "logo.png")
    read = opened(read_logo(tmp_path, "logo.png"))
    assert [read.getpixel(spot) for spot in ((5, 5), (30, 15))] == [GREEN, CLEAR]


@pytest.mark.parametrize(
    ("size", "kept"),
    [
        # 800 of 3200 pixels are a quarter, and so are 75 of 300.
        ((3200, 300), (800, 75)),
        # 300 of 1200 pixels are a quarter, and so are 100 of 400.
        ((400, 1200), (100, 300)),
        ((64, 64), (64, 64)),
    ],
)
def test_a_large_one_is_made_smaller(
    size: tuple[int, int], kept: tuple[int, int], tmp_path: Path
) -> None:
    written(mark(size, (0, 0, *size)), tmp_path / "logo.png")
    assert opened(read_logo(tmp_path, "logo.png")).size == kept


@pytest.mark.parametrize(
    ("size", "is_enough"),
    [
        # On A3 it is 18 mm high: 18 ÷ 25.4 × 150 = 106.3 pixels.
        ((200, 106), False),
        ((200, 107), True),
        # One of 7 to 1 is set half as high as one of 3.5 to 1: 53.1 pixels.
        ((371, 53), False),
        ((378, 54), True),
    ],
)
def test_one_that_is_small_for_paper_is_told(
    size: tuple[int, int], tmp_path: Path, *, is_enough: bool
) -> None:
    written(mark((400, 200), (0, 0, *size)), tmp_path / "logo.png")
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    plan = notices.load_plan(tmp_path / "plan.yaml").plan
    findings = notices.work_out(plan, dt.date(2027, 3, 1)).findings
    told = [finding for finding in findings if finding.code == "logo-too-small"]
    if is_enough:
        assert told == []
        return
    (finding,) = told
    assert finding.path == ("club", "logo")
    assert f"the logo is {size[0]} by {size[1]} pixels" in finding.message


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_kind_is_read_and_nothing_of_the_camera_stays(kind: str, tmp_path: Path) -> None:
    (tmp_path / "logo").write_bytes(photograph(kind=kind, orientation=6))
    read = opened(read_logo(tmp_path, "logo"))
    assert (read.format, read.size) == ("PNG", (40, 80))  # 80 by 40, turned upright
    assert near(read.convert("RGB").getpixel((20, 10)), RED)
    assert not dict(read.getexif())
    assert not {"exif", "icc_profile", "dpi"} & read.info.keys()


def test_one_in_canonical_form_comes_back_as_it_is(tmp_path: Path) -> None:
    """Its edges are soft once it is made smaller, and fade towards white."""
    disc = Image.radial_gradient("L").resize((900, 900))
    picture = Image.merge("RGBA", (disc, disc, disc, disc.point(lambda value: 255 - value)))
    written(picture, tmp_path / "logo.png")
    first = read_logo(tmp_path, "logo.png")
    assert read_logo(tmp_path, first) == first


def test_greys_in_sixteen_bits_are_those_of_eight(tmp_path: Path) -> None:
    """100 of 255 is 25700 of 65535: each level of eight bits is 257 of sixteen."""
    written(Image.new("I;16", (60, 30), 25_700), tmp_path / "logo.png")
    grey = opened(read_logo(tmp_path, "logo.png")).convert("RGB").getpixel((30, 15))
    assert near(grey, (100, 100, 100))


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"not a picture", "cannot be read as a picture"),
        (b"", "cannot be read as a picture"),
        (photograph()[:200], "cannot be read as a picture"),
    ],
)
def test_what_is_no_picture_is_refused(content: bytes, says: str, tmp_path: Path) -> None:
    (tmp_path / "logo.png").write_bytes(content)
    with pytest.raises(Refusal, match=says):
        read_logo(tmp_path, "logo.png")


@pytest.mark.parametrize("name", ["data:image/png;base64,!!!", "data:image/png;base64,AAAA"])
def test_a_broken_one_in_the_plan_itself_is_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="cannot be read"):
        read_logo(tmp_path, name)


@pytest.mark.parametrize("name", ["crest.svg", "Crest.PDF", "crest.eps"])
def test_a_drawing_is_refused_before_it_is_opened(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="save it as PNG"):
        read_logo(tmp_path, name)  # there is no such file


@pytest.mark.parametrize("colour", [(255, 255, 255, 255), (0, 0, 0, 0), (250, 250, 245, 255)])
def test_one_that_nobody_sees_on_paper_is_refused(colour: object, tmp_path: Path) -> None:
    picture = Image.new("RGBA", (60, 30), CLEAR)
    picture.paste(colour, (10, 10, 50, 20))  # type: ignore[arg-type]
    written(picture, tmp_path / "logo.png")
    with pytest.raises(Refusal, match="shows on white paper"):
        read_logo(tmp_path, "logo.png")


def test_a_missing_one_is_told_at_its_place(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text(PLAN, "utf-8")
    with pytest.raises(PlanFault) as fault:
        notices.load_plan(tmp_path / "plan.yaml")
    (found,) = fault.value.findings
    assert found.message == 'there is no file "logo.png" beside the plan'
    assert found.place
    # The first line of the plan is empty.
    assert found.place.line == 2


def test_the_canonical_form_needs_no_other_file(tmp_path: Path) -> None:
    written(mark((60, 30), (0, 0, 60, 30)), tmp_path / "logo.png")
    (tmp_path / "plan.yaml").write_text(PLAN, "utf-8")
    plan = notices.load_plan(tmp_path / "plan.yaml").plan
    assert plan.club.logo
    assert opened(plan.club.logo).size == (60, 30)
