"""Length of text messages on a phone (3GPP TS 23.038, section 6).

References
----------
3GPP TS 23.038, "Alphabets and language-specific information", section 6.2.1: a message of one part
holds 160 characters of the default alphabet, of which those of the extension table take two; with
any other character it is sent as UCS-2 and holds 70. Parts of a longer message hold 153 and 67
(TS 23.040, section 9.2.3.24.1: six octets of header).
"""

from __future__ import annotations

from collections.abc import Iterable

_BASIC = set(
    "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà"
)
_EXTENDED = set("\f^{}\\[~]|€")

ONE_PART, PARTS = 160, 153
ONE_PART_UCS2, PARTS_UCS2 = 70, 67

_PLAIN = str.maketrans({"’": "'", "‘": "'", "“": '"', "”": '"', "–": "-", "—": "-", "…": "..."})
"""Plain forms of typographic characters, which would more than halve the room in a message."""


def for_phones(text: str) -> str:
    """Return a text with plain forms of typographic characters, as phones type them."""
    return text.translate(_PLAIN)


def characters(text: str) -> int:
    """Return the number of characters that a phone counts, two for each of the extension table."""
    if not is_default(text):
        return len(text.encode("utf-16-be")) // 2
    return sum(2 if sign in _EXTENDED else 1 for sign in text)


def is_default(text: str) -> bool:
    """Tell whether all characters belong to the default alphabet."""
    return set(text) <= _BASIC | _EXTENDED


def parts(text: str) -> int:
    """Return the number of parts in which a message is sent."""
    one, each = (ONE_PART, PARTS) if is_default(text) else (ONE_PART_UCS2, PARTS_UCS2)
    count = characters(text)
    return 1 if count <= one else -(-count // each)


def first_within(candidates: Iterable[str], limit: int) -> str:
    """Return the first wording that takes no more characters than the limit; empty if none."""
    return next((text for text in candidates if characters(text) <= limit), "")
