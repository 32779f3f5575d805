"""Photographs are turned upright, lose what the camera wrote into them, and are refused when broken."""

from __future__ import annotations

import base64
import io
from pathlib import Path

import pytest
from PIL import Image

from notices.plan import photographs
from notices.plan.photographs import check_picture, is_picture, read_photograph
from notices.plan.refusal import Refusal

RED, BLUE = (200, 0, 0), (0, 0, 200)
ORIENTATION, GPS, NORTH = 0x0112, 0x8825, 1
"""Tags of Exif 2.32: how the camera was held, and where it was."""


def photograph(size: tuple[int, int] = (80, 40), orientation: int = 1, kind: str = "JPEG") -> bytes:
    """A picture whose left half is red and whose right half is blue."""
    picture = Image.new("RGB", size, RED)
    picture.paste(BLUE, (size[0] // 2, 0, *size))
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    exif.get_ifd(GPS)[NORTH] = "N"
    out = io.BytesIO()
    picture.save(out, kind, exif=exif, quality=95)
    return out.getvalue()


def opened(data: str) -> Image.Image:
    assert is_picture(data)
    return Image.open(io.BytesIO(base64.b64decode(data.partition(",")[2])))


def near(one: object, other: tuple[int, int, int]) -> bool:
    return isinstance(one, tuple) and all(abs(a - b) < 30 for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_kind_is_read_and_nothing_of_the_camera_stays(kind: str, tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(photograph(kind=kind))
    picture = opened(read_photograph(tmp_path, "a"))
    assert (picture.format, picture.size) == ("JPEG", (80, 40))
    assert not dict(picture.getexif())
    assert b"Exif" not in base64.b64decode(read_photograph(tmp_path, "a").partition(",")[2])
    assert near(picture.getpixel((10, 20)), RED)
    assert near(picture.getpixel((70, 20)), BLUE)


def test_it_is_turned_upright(tmp_path: Path) -> None:
    """Orientation 6: the row that comes first is the right side of what was seen (Exif 2.32).

    So the left column of the file, red, is the top of the picture.
    """
    (tmp_path / "a.jpg").write_bytes(photograph(orientation=6))
    picture = opened(read_photograph(tmp_path, "a.jpg"))
    assert picture.size == (40, 80)
    assert near(picture.getpixel((20, 10)), RED)
    assert near(picture.getpixel((20, 70)), BLUE)


def test_a_large_one_is_made_smaller(tmp_path: Path) -> None:
    (tmp_path / "a.jpg").write_bytes(photograph((2800, 1400)))
    assert opened(read_photograph(tmp_path, "a.jpg")).size == (1400, 700)


def test_what_is_clear_becomes_white(tmp_path: Path) -> None:
    out = io.BytesIO()
    Image.new("RGBA", (40, 40), (0, 0, 0, 0)).save(out, "PNG")
    (tmp_path / "a.png").write_bytes(out.getvalue())
    assert near(opened(read_photograph(tmp_path, "a.png")).getpixel((5, 5)), (255, 255, 255))


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"not a picture", "cannot be read as a picture"),
        (photograph()[:200], "cannot be read as a picture"),
        (b"", "cannot be read as a picture"),
        (b"GIF89a" + bytes(40), "cannot be read as a picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "cannot be read as a picture"),
    ],
)
def test_what_is_no_photograph_is_refused(content: bytes, says: str, tmp_path: Path) -> None:
    (tmp_path / "a.jpg").write_bytes(content)
    with pytest.raises(Refusal, match=says):
        read_photograph(tmp_path, "a.jpg")


def test_one_with_too_many_pixels_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(photographs, "MOST_PIXELS", 80 * 40 - 1)
    (tmp_path / "a.jpg").write_bytes(photograph())
    with pytest.raises(Refusal, match="million pixels"):
        read_photograph(tmp_path, "a.jpg")


def test_a_picture_in_the_plan_itself_is_checked(tmp_path: Path) -> None:
    (tmp_path / "a.jpg").write_bytes(photograph())
    check_picture(read_photograph(tmp_path, "a.jpg"))
    for broken in ("data:image/jpeg;base64,!!!", "data:image/jpeg;base64,AAAA"):
        with pytest.raises(Refusal):
            check_picture(broken)
