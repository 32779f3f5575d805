"""Print the command that README.md gives under a marker: ``readme_block.py README.md tests``.

The marker is an HTML comment on a line of its own, ``<!-- run: tests -->``, and the fenced block must
be the next thing after it. CI runs what this prints, so that the README cannot rot unnoticed.
"""

from __future__ import annotations

import sys
from pathlib import Path


def block_after(marker: str, text: str) -> str:
    """Return the lines inside the fence that follows the marker."""
    lines = iter(text.splitlines())
    if not any(line.strip() == f"<!-- run: {marker} -->" for line in lines):
        sys.exit(f"README: there is no line <!-- run: {marker} -->")
    fence = next((line for line in lines if line.strip()), "")
    if not fence.startswith("```"):
        sys.exit(f"README: no fenced block directly after <!-- run: {marker} -->")
    block: list[str] = []
    for line in lines:
        if line.startswith("```"):
            return "\n".join(block)
        block.append(line)
    sys.exit(f"README: the block after <!-- run: {marker} --> is never closed")


if __name__ == "__main__":
    readme, wanted = sys.argv[1:]
    print(block_after(wanted, Path(readme).read_text(encoding="utf-8")))
