"""Words in drawings of the ground: names and sizes of openings, captions, descriptions."""

from __future__ import annotations

from collections.abc import Sequence

from notices.operations import Opening
from notices.programme.model import Profile, Subsoil, Work
from notices.programme.openings import Cut, Sand, StageOfHealing
from notices.wording import measures, texts
from notices.wording.blocks import Paragraph
from notices.wording.lists import and_list, counted, number, sentence
from notices.wording.words import Words

SUBSOIL = {Subsoil.CLAY: "clay", Subsoil.SAND: "sand", Subsoil.SOIL: "soil"}


def length(words: Words, mm: float) -> str:
    """Write a length in the club's units."""
    return measures.length(mm, words.programme.club.units)


def sizes(words: Words, cut: Cut) -> list[str]:
    """Return width, depth and distance of openings, each in a few words."""
    width = cut.channel or cut.width
    found = [f"{length(words, width)} wide", depth(words, cut), apart(words, cut)]
    if cut.passes > 1:
        found.append(counted(cut.passes, "pass", "passes"))
    return found


def depth(words: Words, cut: Cut) -> str:
    """Return the depth of openings in words."""
    return f"{length(words, cut.depth)} deep"


def apart(words: Words, cut: Cut) -> str:
    """Return the distance between openings in words, along and across if the two differ."""
    across, along = length(words, cut.across), length(words, cut.along)
    return f"{across} apart" if not cut.along or along == across else f"{along} by {across} apart"


def filling(words: Words, cut: Cut) -> str:
    """Return the filling of openings in words; empty if they stay open."""
    if not cut.filled:
        return ""
    if cut.filled < cut.depth:
        return f"sand in the top {length(words, cut.filled)}"
    return "filled with sand"


def in_words(words: Words, cut: Cut) -> str:
    """Describe openings, as in "Hollow tining: holes 13 mm wide, 75 mm deep"."""
    told = [*sizes(words, cut), *filter(None, [filling(words, cut)])]
    return f"{words.title(cut.work)}: {nouns(cut.kind)} {', '.join(told)}."


def nouns(kind: Opening) -> str:
    """Return the plural noun for a kind of opening."""
    return _NOUNS[kind]


_NOUNS = {
    Opening.HOLES: "holes",
    Opening.SLITS: "slits",
    Opening.CHANNELS: "channels",
    Opening.TRENCHES: "drains",
}


def thatch(words: Words, profile: Profile) -> str:
    """Return the depth of the thatch in words, measured or typical."""
    depth = length(words, profile.thatch_mm)
    match len(profile.thatch_measured):
        case 0:
            return f"typically {depth}"
        case 1:
            return f"{depth}, measured"
        case _:
            return f"up to {depth}, measured"


def layers(words: Words, profile: Profile) -> str:
    """Return a sentence that lists the layers from the top."""
    told = [f"thatch ({thatch(words, profile)})"]
    if profile.root_zone_mm is not None:
        told.append(f"root zone (typically to {length(words, profile.root_zone_mm)})")
    told.append(SUBSOIL[profile.subsoil])
    return f"Layers from the top: turf, {and_list(told)}."


def lying(words: Words, sand: Sand) -> str:
    """Return "in the grass", after the depth of the sand if it is more than a film."""
    deep = f"{length(words, sand.on_surface)} " if sand.on_surface >= LEAST_FILM_MM else ""
    return f"{deep}in the grass"


LEAST_FILM_MM = 0.2
"""Least depth of sand that is stated; thinner sand is hardly a grain deep."""


def lets_water_down(words: Words, found: Sequence[Cut]) -> bool:
    """Tell whether any opening reaches through the thatch, to give water a way down."""
    return any(cut.bottom > words.programme.profile.thatch_mm for cut in found)


def rain_before(profile: Profile) -> tuple[str, str]:
    """Return two short lines about rain before the work."""
    if profile.subsoil is Subsoil.SAND:
        return ("rain goes in", "slowly")
    return ("rain stays", "on top")


def caption(words: Words, found: Sequence[Cut], *, sanded: bool) -> str:
    """Return the caption of a section of several works, in short sentences for golfers."""
    profile = words.programme.profile
    kinds = {cut.kind for cut in found}
    facts: dict[str, object] = {
        "opens": lets_water_down(words, found),
        "ways": and_list([nouns(kind) for kind in (Opening.SLITS, Opening.HOLES) if kind in kinds]),
        "channels": Opening.CHANNELS in kinds,
        "trenches": Opening.TRENCHES in kinds,
        "drains": bool(profile.drains) and Opening.HOLES in kinds,
        "on_sand": profile.subsoil is Subsoil.SAND,
        "filled": any(cut.filled for cut in found),
        "sanded": sanded,
    }
    return _sentences(words, "below-ground", facts)


def caption_of_one(words: Words, work: Work) -> str:
    """Return the caption of a section of one work: the work in a sentence, and the scale."""
    return f"{sentence(words.operation(work).line)} The picture is to scale below the grass."


def caption_of_grass(words: Words, work: Work, shown_mm: float) -> str:
    """Return the caption of a close-up of the grass, with the width of green shown."""
    told = sentence(words.operation(work).line)
    return f"{told} This is a close-up: each side shows {length(words, shown_mm)} of green."


def in_words_of_grass(
    words: Words, work: Work, before: float, after: float, lies: Sand | None
) -> str:
    """Describe grass, as in "Raising the height of cut: grass 5 mm high in place of 3.5 mm"."""
    told = []
    if before != after:
        told.append(f"{grass(words, after)} in place of {length(words, before)}")
    if lies is not None:
        told.append(f"{sand(words, lies.on_surface)}, grass {length(words, after)} high")
    return f"{words.title(work)}: {and_list(told)}."


def grass(words: Words, mm: float) -> str:
    """Return the height of grass in words."""
    return f"grass {length(words, mm)} high"


def sand(words: Words, mm: float) -> str:
    """Return the depth of sand in the grass after one dressing in words."""
    return f"sand {length(words, mm)} deep"


def in_words_of_turf(words: Words, work: Work, mm: float) -> str:
    """Describe new turf, as in "Turfing: new turf, typically 30 mm thick, laid edge to edge"."""
    turf = words.language.terms.new_turf
    thick = f"typically {length(words, mm)} thick"
    return f"{words.title(work)}: {turf}, {thick}, laid edge to edge on the root zone."


def description(words: Words, found: Sequence[Cut], caption: str, *, sanded: bool) -> str:
    """Describe everything that a section shows, for people who cannot see it."""
    profile = words.programme.profile
    alone = len(found) == 1 and not sanded
    told = [caption, *(in_words(words, cut) for cut in found)]
    if sanded:
        told.append("Sand lies between the blades of grass.")
    told.append(layers(words, profile))
    told.append("A ruler beside it shows the depth.")
    if not alone and lets_water_down(words, found):
        told.append("A dashed line shows the way of the water.")
    return " ".join(told)


PARTS_OF_A_CHANNEL = ("Slot", "Channel")
"""Names of the parts of a channel, from the top down."""


def parts_of_a_drain(words: Words) -> tuple[str, str, str]:
    """Return the names of the parts of a drain, from the top down."""
    return ("Grass and root zone", words.language.terms.stone.capitalize(), "Pipe")


def close_up(times: int) -> str:
    """Return the title of a close-up, with its magnification."""
    larger = "twice" if times == 2 else f"{number(times)} times"
    return f"Close-up of the framed part, {larger} as large."


def scale_note(profile: Profile, *, drained: bool) -> str:
    """Return a note on which parts of a section are to scale, and which are only typical."""
    scale = "Below the grass all is to scale"
    scale += ", but for the drain." if drained else "."
    if not profile.thatch_measured:
        return f"{scale} The layers are typical ones."
    return scale if profile.root_zone_mm is None else f"{scale} The root zone is a typical one."


def surface_caption(
    words: Words,
    moment: StageOfHealing,
    side_mm: float,
    found: Sequence[Cut],
    gone: Sequence[Cut],
    *,
    sanded: bool,
) -> str:
    """Return the caption of a square of the surface at a moment, naming works that have healed."""
    facts: dict[str, object] = {
        "moment": moment.value,
        "size": length(words, side_mm),
        "filled": any(cut.filled for cut in found),
        "unfilled": any(not cut.filled and cut.kind is not Opening.TRENCHES for cut in found),
        "seams": any(cut.kind is Opening.TRENCHES for cut in found),
        "left": bool(found),
        "gone": _named(words, gone),
        "sanded": sanded,
    }
    return _sentences(words, "surface", facts)


def _named(words: Words, found: Sequence[Cut]) -> str:
    """Name works in a sentence, or "the other works" if they are many."""
    names = list(dict.fromkeys(words.title(cut.work).lower() for cut in found))
    return "the other works" if len(names) > _NAMED else and_list(names)


_NAMED = 3
"""Most works named in a sentence."""


def on_top(words: Words, cut: Cut, side_mm: float) -> list[str]:
    """Return width and distance of openings in a square of the surface, in words."""
    lone = cut.across > side_mm
    told = [f"the next one is {length(words, cut.across)} away" if lone else apart(words, cut)]
    if cut.kind is not Opening.CHANNELS:
        told.insert(0, f"{length(words, cut.width)} wide")
    if cut.passes > 1:
        told.append(counted(cut.passes, "pass", "passes"))
    return told


def later(cut: Cut, closed: float) -> str:
    """Describe openings at the time when the green putts smoothly, closed by a share."""
    far = next(words for most, words in _CLOSED if closed < most)
    if cut.kind is Opening.TRENCHES:
        return "the seams still show"
    return f"{far}, the sand still shows" if cut.filled else far


_CLOSED = (
    (0.2, "hardly closed"),
    (0.29, "a quarter closed"),
    (0.42, "a third closed"),
    (0.58, "half closed"),
    (0.8, "two thirds closed"),
    (1.0, "almost closed"),
)
"""Closed shares of openings, as upper limits, in words."""


def size_note(words: Words, scale: float, bar_mm: float) -> str:
    """Return a note on the scale of a square of the surface; in true size it tells of the bar beside it."""
    said = words.language.with_percent(f"In {_SIZES[round(1 / scale)]} when printed at 100 %.")
    return f"{said} This line is then {length(words, bar_mm)} long." if scale == 1 else said


_SIZES = {1: "true size", 2: "half of its true size", 3: "a third of its true size"}


def _sentences(words: Words, name: str, facts: dict[str, object]) -> str:
    blocks = texts.plain_text(words.programme.club.language, name, facts)
    return " ".join(block.text for block in blocks if isinstance(block, Paragraph))


def share(words: Words, work: Work) -> str:
    """Return the share of the surface that a work disturbs; empty where there is no such figure."""
    figure = words.programme.figure("surface disturbed", work.id)
    if figure is None or figure.value is None:
        return ""
    # Set in a drawing, which no later stage looks through for words.
    return words.language.with_percent(f"{figure.value:.{1 if figure.value < 10 else 0}f} %")


OF_THE_SURFACE = "of the surface"
"""What a share is part of."""


def name_of(words: Words, work: Work) -> str:
    """Return the name of a work as a label."""
    return sentence(words.title(work)).removesuffix(".")
