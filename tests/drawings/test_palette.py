"""Contrast of every text on its ground, by the formula of WCAG 2.2 (relative luminance)."""

from __future__ import annotations

import re

import pytest

from notices.drawings import palette
from notices.look import HOUSE
from notices.paths import templates_folder
from tests.drawings.metrics import LEAST_CONTRAST as TEXT
from tests.drawings.metrics import contrast

Rules = dict[str, dict[str, str]]


def test_the_formula() -> None:
    """Black on white is 21:1; #767676 is the lightest grey that passes on white (WebAIM)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert contrast("#777777", "#ffffff") < TEXT


@pytest.mark.parametrize("text", ["INK", "QUIET", "LOAM"])
@pytest.mark.parametrize("ground", ["PAPER", "SAND"])
def test_the_palette(text: str, ground: str) -> None:
    assert contrast(getattr(palette, text), getattr(palette, ground)) >= TEXT


@pytest.mark.parametrize("text", ["INK", "QUIET"])
@pytest.mark.parametrize("ground", ["MEADOW", "SHADE", "LINE"])
def test_the_grounds_of_charts(text: str, ground: str) -> None:
    assert contrast(getattr(palette, text), getattr(palette, ground)) >= TEXT


def with_colours(template: str) -> str:
    """Return a template with the colours of our own look in their places."""
    source = (templates_folder() / template).read_text("utf-8")
    return re.sub(r"\{\{ look\.(\w+) \}\}", lambda name: str(getattr(HOUSE, name[1])), source)


def styles(template: str) -> str:
    source = with_colours(template)
    return "\n".join(re.findall(r"<style.*?>(.*?)</style>", source, flags=re.DOTALL)) or source


def rules_in(css: str) -> Rules:
    """Return what each selector declares, later rules over earlier ones."""
    found: Rules = {}
    for selectors, body in re.findall(r"([^{}]+)\{([^{}]*)\}", css):
        declared = dict(re.findall(r"([\w-]+)\s*:\s*([^;]+?)\s*(?:!important)?\s*(?:;|$)", body))
        for selector in selectors.split(","):
            found.setdefault(selector.strip(), {}).update(declared)
    return found


def light_and_dark(css: str) -> tuple[Rules, Rules]:
    """Return the rules of a light page, and those of a dark one with the light ones below them."""
    match = re.search(r"@media \(prefers-color-scheme: dark\) \{(.*?\})\s*\n\}", css, re.DOTALL)
    assert match is not None
    light = rules_in(re.sub(r"@media[^{]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}", "", css))
    dark = {selector: dict(declared) for selector, declared in light.items()}
    for selector, declared in rules_in(match[1]).items():
        dark.setdefault(selector, {}).update(declared)
    return light, dark


# Which text stands on which ground, as mail/_base.html.j2 nests them.
MAIL = [
    ("body", "body"),
    (".ground", ".ground"),
    (".sheet", ".sheet"),
    (".club", ".head"),
    ("h1", ".head"),
    (".draft", ".draft"),
    ("h2", ".sheet"),
    ("h3", ".sheet"),
    ("a", ".sheet"),
    ("a", ".foot"),
    (".facts th", ".facts th"),
    (".facts td", ".facts td"),
    (".days th", ".days th"),
    (".days td", ".days td"),
    (".foot", ".foot"),
]

# As web/_base.html.j2 nests them; names of variables.
WEB = [
    ("ink", "ground"),
    ("ink", "paper"),
    ("ink", "sand"),
    ("quiet", "ground"),
    ("quiet", "paper"),
    ("accent", "ground"),
    ("accent", "paper"),
    ("warn", "ground"),
    ("warn", "paper"),
]


@pytest.mark.parametrize("scheme", [0, 1], ids=["light", "dark"])
@pytest.mark.parametrize(("text", "ground"), MAIL)
def test_the_email(text: str, ground: str, scheme: int) -> None:
    rules = light_and_dark(styles("mail/_base.html.j2"))[scheme]
    assert contrast(rules[text]["color"], rules[ground]["background-color"]) >= TEXT


def test_rows_of_days_are_readable_in_the_dark() -> None:
    """A row's header has a ground of its own and takes its colour from all headers of the table."""
    for rules in light_and_dark(styles("mail/_base.html.j2")):
        ground = rules[".days .row"]["background-color"]
        assert contrast(rules[".days th"]["color"], ground) >= TEXT


@pytest.mark.parametrize("scheme", [0, 1], ids=["light", "dark"])
@pytest.mark.parametrize(("text", "ground"), WEB)
def test_the_page(text: str, ground: str, scheme: int) -> None:
    variables = light_and_dark(styles("web/_base.html.j2"))[scheme][":root"]
    assert contrast(variables[f"--{text}"], variables[f"--{ground}"]) >= TEXT


@pytest.mark.parametrize("text", ["header", "header p"])
def test_the_head_of_the_page(text: str) -> None:
    rules, _ = light_and_dark(styles("web/_base.html.j2"))
    assert contrast(rules[text]["color"], rules["header"]["background"]) >= TEXT


PRINTED = [f"print/{path.name}" for path in sorted(templates_folder().glob("print/*.j2"))]


@pytest.mark.parametrize("template", PRINTED)
def test_everything_printed(template: str) -> None:
    """Any colour of a text on any ground of the sheet."""
    source = with_colours(template)
    texts = re.findall(r"(?<![\w-])color: (#\w{6})", source)
    grounds = re.findall(r"background(?:-color)?: (#\w{6})", source)
    for text in texts:
        for ground in ("#ffffff", *grounds):
            assert contrast(text, ground) >= TEXT


@pytest.mark.parametrize("template", ["mail/_base.html.j2", "web/_base.html.j2", *PRINTED])
def test_no_text_is_transparent_or_named(template: str) -> None:
    """A colour that this test cannot read would pass unseen."""
    css = with_colours(template)
    for value in re.findall(r"(?<![\w-])color: ([^;]+);", css):
        assert re.fullmatch(r"#[0-9a-f]{6}(?: !important)?|inherit|var\(--\w+\)", value), value
