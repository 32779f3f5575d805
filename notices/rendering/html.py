"""Documents into HTML: one Jinja environment for page, paper and mail."""

from __future__ import annotations

import base64
import textwrap
from functools import cache

import css_inline
import jinja2
from markupsafe import Markup

from notices.documents.model import Document
from notices.drawings.lettering import held
from notices.letters import printable
from notices.paths import templates_folder
from notices.rendering import logo
from notices.rendering.photographs import as_data
from notices.wording import blocks

_TESTS = {
    "paragraph": blocks.Paragraph,
    "bullets": blocks.Bullets,
    "heading": blocks.Heading,
    "keyfacts": blocks.KeyFacts,
    "table": blocks.Table,
    "picture": blocks.Picture,
    "photo": blocks.Photo,
    "notes": blocks.Notes,
    "folded": blocks.Folded,
}


@cache
def _environment() -> jinja2.Environment:
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(templates_folder()),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    for name, kind in _TESTS.items():
        environment.tests[name] = lambda value, kind=kind: isinstance(value, kind)
    environment.filters["svg_as_picture"] = _svg_as_picture
    environment.filters["svg_on_screen"] = lambda source: _svg(held(source))
    environment.filters["css"] = _css
    environment.filters["brief"] = _brief
    environment.filters["photo"] = as_data
    environment.filters["logo_on_page"] = logo.on_page
    environment.filters["logo_in_mail"] = logo.in_mail
    environment.filters["width_on_paper"] = logo.width_on_paper
    return environment


def _svg(source: str) -> Markup:
    """Let a drawing of ours into a page; its texts were escaped when it was drawn."""
    return Markup(source)  # noqa: S704, see above


def _svg_as_picture(source: str) -> str:
    """Return the address of a drawing that stands beside a page, in letters that our fonts have."""
    drawn = base64.b64encode(printable(source).encode()).decode("ascii")
    return f"data:image/svg+xml;base64,{drawn}"


def _brief(text: str, most: int) -> str:
    """Return words as they stand where there is room for so many letters only, whole if they fit."""
    return textwrap.shorten(text, most, placeholder="…")


def _css(text: str) -> Markup:
    """Return words as they stand inside a quoted string of a style sheet (CSS Syntax 3, 4.3.5).

    Only paper has such words. Once they are escaped, nobody sees which of them no font has.
    """
    escaped = (
        sign if sign.isalnum() or sign in " .,:-" else f"\\{ord(sign):x} "
        for sign in printable(text)
    )
    return Markup("".join(escaped))  # noqa: S704, nothing is left that markup knows


def fill(template: str, *, document: Document, **content: object) -> str:
    """Fill a template with a document and what else it asks for.

    Every name must be known to it and everything is escaped, whatever a plan holds.
    """
    source = _environment().get_template(template)
    return source.render(content, document=document, look=document.look).strip() + "\n"


def inline_styles(html: str) -> str:
    """Move the rules of a style sheet into the elements, as Gmail's phone page asks."""
    inliner = css_inline.CSSInliner(
        load_remote_stylesheets=False, keep_style_tags=False, keep_at_rules=False
    )
    return inliner.inline(html)
