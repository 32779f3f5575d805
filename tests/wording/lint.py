"""What may stand in no text that a golfer reads, whatever the plan."""

from __future__ import annotations

import re
from collections.abc import Iterator

from notices.wording.blocks import Block, Bullets, Heading, Paragraph
from notices.wording.reading_ease import LONGEST_SENTENCE, sentences_of, words_of

FAULTS = {
    "a gap or a leftover of the template": re.compile(r"\{|\}|\bNone\b|[Uu]ndefined"),
    "a leftover of the markup": re.compile(r"[*_#`<>\\]|&\w+;|\]\("),
    "a doubled word": re.compile(r"\b(?!that\b)([a-z]+) \1\b", re.IGNORECASE),
    "a doubled blank": re.compile(r"  |\n"),
    "a blank before a stop": re.compile(r" [.,;:!?)]"),
    "a doubled stop": re.compile(r"[.,;:]{2}"),
    "one of many": re.compile(
        r"\b(?:1|one) (?:days|weeks|greens|holes|inches|feet|times)\b|\bgreens? (\d+) and \1\b"
    ),
    "many of one": re.compile(r"\bgreen \d+ (?:and|to) \d"),
    "a straight quotation mark": re.compile(r"['\"]"),
    "a date for machines": re.compile(r"\d{4}-\d\d"),
    "an empty pair of brackets": re.compile(r"\(\s*\)"),
    "nothing in words": re.compile(r"\bno (?:days|weeks)\b|\bno to\b"),
    "praise of ourselves": re.compile(
        r"\b(?:best greens|perfect|amazing|world.class|pristine)\b", re.IGNORECASE
    ),
    "pleading": re.compile(
        r"\b(?:sorry|apolog\w+|patience|bear with|inconvenien\w+)\b", re.IGNORECASE
    ),
    "the word of a manual": re.compile(
        r"\b(?:aerobic|anaerobic|infiltration|hydraulic|macropores?|organic matter|agronom\w+|"
        r"compaction|rootzone|porosity|photosynthe\w+|senescen\w+|utili[sz]e|commence\w*|"
        r"prior to|in order to)\b",
        re.IGNORECASE,
    ),
}

AMERICAN = re.compile(
    r"\b(?:\w*color\w*|gray\w*|\w*center\w*|fertiliz\w*|aerif\w*|plow\w*|program|programs|sod|"
    r"topdress\w*|superintendent|cart|carts|\w*meters?|fall|gotten|toward)\b",
    re.IGNORECASE,
)
NOT_AMERICAN = {"fall"}
"""Things fall in Britain too."""

BRITISH = re.compile(
    r"""\b(?:\w*colour\w* | grey\w* | \w*centre\w* | fertilis\w* | aerat\w* | \w*metres? | mould\w*
    | plough\w* | programmes? | autumn\w* | top[ -]dress\w* | clean-up | scarif\w* | hollow\ tin\w*
    | turves | turfing | greenkeeper\w* | \w+ised? | \w+ising | labour\w* | favour\w* | whilst
    | towards | afterwards | ageing | licence | height\ of\ cut | shut | tyres? | judgement
    # Turns of phrase.
    | money\ off | top-ups? | fixtures? | fortnights? | agree\ the | part-way | hand\w*\ (?:it\ )?round
    | limits\ besides | reserve\ (?:day|date)s? | societies | bugg(?:y|ies) | trolleys? | car\ parks?
    | bank\ holidays? | diar(?:y|ies) | notice\ boards? | lorr(?:y|ies)
    | at\ the\ weekend | in\ hospital | post\ (?:it|one) | mend\w*
    | \d+\ (?=%))(?:\b|(?=%))""",
    re.IGNORECASE | re.VERBOSE,
)
NOT_BRITISH = {"raised", "raise", "raising", "otherwise", "promise", "promised", "rise", "noise"}


def lines(blocks: tuple[Block, ...]) -> Iterator[str]:
    """Yield the words of a text's blocks; no text holds anything but these."""
    for block in blocks:
        match block:
            case Paragraph():
                yield block.text
            case Bullets(items):
                yield from ("".join(run.text for run in item) for item in items)
            case Heading(text, _):
                yield f"{text}."
            case _:
                raise AssertionError(f"no text holds {block}")


def british(text: str) -> list[str]:
    return [m[0] for m in BRITISH.finditer(text) if m[0].lower() not in NOT_BRITISH]


def american(text: str) -> list[str]:
    return [m[0] for m in AMERICAN.finditer(text) if m[0].lower() not in NOT_AMERICAN]


def faults_in(text: str, language: str, longest: int = LONGEST_SENTENCE) -> list[str]:
    """Return what is wrong with a paragraph, or with one line of a list."""
    found = [f"{what}: {match[0]!r}" for what, p in FAULTS.items() if (match := p.search(text))]
    if not text.endswith((".", "!", "?")):
        found.append(f"no full stop: {text[-20:]!r}")
    if not text[:1].isupper() and not text.startswith("“"):
        found.append(f"a small letter first: {text[:20]!r}")
    foreign = american(text) if language == "en-GB" else british(text)
    found += [f"not {language}: {word}" for word in foreign]
    found += [
        f"{len(words_of(sentence))} words: {sentence}"
        for sentence in sentences_of(text)
        if len(words_of(sentence)) > longest
    ]
    return found
