"""Characters that our fonts can print: those of Europe's languages in Latin script.

A character that they lack would be taken from whatever fonts a computer has, and the same plan
would give other bytes elsewhere; on a computer without one it would stop the build.
"""

from __future__ import annotations

import re
import unicodedata

_PRINTED = (
    r"\t\n\r\x20-\x7e"
    "\u00a0-\u012b\u012e-\u0131\u0134-\u0165\u0168-\u017f\u0192\u01a0\u01a1\u01af\u01b0"
    "\u01cd-\u01dc\u01e6\u01e7\u01f8\u01f9\u0218-\u021b\u1e80-\u1e85\u1e9e\u1ef2-\u1ef9"
    "\u2013\u2014\u2018-\u201a\u201c-\u201e\u2020\u2022\u2026\u2032\u2033\u2039\u203a\u2044"
    "\u20ac\u2122\u2212"
)
"""Characters that our fonts have, as regular-expression ranges; a test checks each in each font."""

_NOT_PRINTED = re.compile(f"[^{_PRINTED}]")


def printable(text: str) -> str:
    """Return a text with only characters that our fonts have.

    A letter loses an accent that they lack, a letter of another script becomes a question mark, and
    other characters, such as emoji, are left out.
    """
    return _NOT_PRINTED.sub(lambda sign: _instead_of(sign[0]), unicodedata.normalize("NFC", text))


def not_printed(text: str) -> tuple[str, ...]:
    """Return the characters of a text that `printable` replaces or leaves out, each once."""
    signs = unicodedata.normalize("NFC", text)
    return tuple(dict.fromkeys(_NOT_PRINTED.findall(signs)))


def _instead_of(sign: str) -> str:
    codes = unicodedata.decomposition(sign).split()
    parts = [chr(int(code, 16)) for code in codes if not code.startswith("<")]
    if parts:
        return "".join(_instead_of(part) if _NOT_PRINTED.match(part) else part for part in parts)
    return "?" if unicodedata.category(sign)[0] in "LN" else ""
