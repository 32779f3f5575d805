"""A club's own texts: files in a folder beside the plan, laid over ours by the same names.

``texts: our-texts`` names the folder. In it ``operations/hollow-tining.md`` takes the place of our
text on hollow tining, ``why.md`` that of the story, and so on. A plan carries the texts themselves
once it is read, so that a pack needs no other file.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Annotated

from pydantic import Field, field_validator

from notices.paths import templates_folder
from notices.plan.beside import files_beside
from notices.plan.fields import Text
from notices.plan.nearest import nearest, quoted
from notices.plan.own_operations import LARGEST_TEXT
from notices.plan.part import Part
from notices.plan.refusal import Refusal

MOST_TEXTS = 200
"""More than all of ours, in two languages."""

LARGEST_TOGETHER = 300_000
"""Bytes of all texts; ours take a sixth of it. A pack's plan carries them and must be read again."""

_NOT_TO_REPLACE = ("glossary.md",)
"""What other texts are measured by."""


@cache
def text_names() -> tuple[str, ...]:
    """Return the names of the texts that a club may lay its own over, such as why.md."""
    folder = templates_folder() / "en-GB"
    names = (path.relative_to(folder).as_posix() for path in folder.rglob("*.md"))
    return tuple(sorted(n for n in names if not n.startswith("_") and n not in _NOT_TO_REPLACE))


def unknown_text(name: str) -> Refusal:
    """Return what to say of a name that none of our texts has."""
    # A file is misspelt more often than put into the wrong folder.
    guess = nearest(name, text_names()) or _of_same_name(name)
    hint = f'did you mean "{guess}"?' if guess else "name it as the text that it replaces"
    return Refusal(f"there is no text {quoted(name)} to replace", hint)


def _of_same_name(name: str) -> str | None:
    files = {known.rpartition("/")[2]: known for known in text_names()}
    guess = nearest(name.rpartition("/")[2], files)
    return files[guess] if guess else None


class OwnText(Part):
    """A text of the club's own in place of ours."""

    name: Text
    """Name of the text that it replaces, such as operations/hollow-tining.md."""
    text: Annotated[str, Field(min_length=1, max_length=LARGEST_TEXT)]
    """Markdown, or the name of a file beside the plan that holds it."""

    @field_validator("name")
    @classmethod
    def _of_ours(cls, name: str) -> str:
        if name not in text_names():
            raise unknown_text(name)
        return name


def read_texts(value: object) -> object:
    """Read texts one by one, as a plan in canonical form has them.

    Raises
    ------
    Refusal
        With a sentence for the person who typed it.
    """
    if isinstance(value, str):  # load puts the texts here; this one had no folder to read from
        raise Refusal("the folder of texts has not been read", "load the plan from its file")
    return value


def read_folder(folder: Path, name: str) -> dict[str, str | Refusal]:
    """Return the texts in a folder beside the plan, or what is wrong with each.

    Raises
    ------
    Refusal
        When the folder itself cannot be read; the message is for a person.
    """
    files = files_beside(
        folder,
        name,
        ending=".md",
        most=MOST_TEXTS,
        largest=LARGEST_TEXT,
        otherwise="say it in fewer words",
    )
    if not files:
        raise Refusal(
            f"the folder {quoted(name)} holds no text",
            "put files such as operations/hollow-tining.md into it",
        )
    if sum(len(data) for data in files.values() if isinstance(data, bytes)) > LARGEST_TOGETHER:
        raise Refusal(
            f"the texts in {quoted(name)} are larger than {LARGEST_TOGETHER // 1000} kB together",
            "say it in fewer words",
        )
    return {
        found: data if isinstance(data, Refusal) else _text(found, data)
        for found, data in files.items()
    }


def _text(name: str, data: bytes) -> str | Refusal:
    if name not in text_names():
        return unknown_text(name)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return Refusal("this cannot be read", "save it as UTF-8 text")
    if not text.strip():
        return Refusal("this text is empty", "write it, or take the file out to have ours back")
    return text
