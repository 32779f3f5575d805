"""HTML of documents, from one Jinja environment for web pages, paper and mail."""

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
from notices.wording.dates import unbroken

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
    environment.filters["unbroken"] = unbroken
    environment.filters["photo"] = as_data
    environment.filters["logo_on_page"] = logo.on_page
    environment.filters["logo_in_mail"] = logo.in_mail
    environment.filters["width_on_paper"] = logo.width_on_paper
    return environment


def _svg(source: str) -> Markup:
    """Mark one of our drawings as safe HTML; its texts were escaped when it was drawn."""
    return Markup(source)  # noqa: S704, see above


def _svg_as_picture(source: str) -> str:
    """Return a data: URL of a drawing, with only letters that our fonts have."""
    drawn = base64.b64encode(printable(source).encode()).decode("ascii")
    return f"data:image/svg+xml;base64,{drawn}"


def _brief(text: str, most: int) -> str:
    """Return the text cut after a whole word to at most ``most`` letters, "…" included."""
    return textwrap.shorten(text, most, placeholder="…")


def _css(text: str) -> Markup:
    """Return the text escaped for a quoted string of a style sheet (CSS Syntax 3, 4.3.5).

    Only paper has such strings. Letters that no font has are replaced first, because the later
    check cannot see them once they are escaped.
    """
    escaped = (
        sign if sign.isalnum() or sign in " .,:-" else f"\\{ord(sign):x} "
        for sign in printable(text)
    )
    return Markup("".join(escaped))  # noqa: S704, no character with a meaning in HTML is left


def fill(template: str, *, document: Document, **content: object) -> str:
    """Fill a template with a document and further content.

    An undefined name is an error, and everything is escaped, whatever a plan holds.
    """
    source = _environment().get_template(template)
    return source.render(content, document=document, look=document.look).strip() + "\n"


def inline_styles(html: str) -> str:
    """Move the rules of the style sheet into the elements, because Gmail's phone page needs it."""
    inliner = css_inline.CSSInliner(
        load_remote_stylesheets=False, keep_style_tags=False, keep_at_rules=False
    )
    return inliner.inline(html)
