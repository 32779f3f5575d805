"""A drawing: SVG with a title and a text that says what it shows."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing, complete in itself."""

    name: str
    title: str
    description: str
    """What it shows, for those who do not see it: no fact may stand in the drawing alone."""
    svg: str
    width: float
    height: float
    """Size in the units of the SVG's view box; one unit is one CSS pixel."""
    caption: str = ""
    """What to say below it to those who do see it; empty where it speaks for itself."""

    @property
    def told(self) -> str:
        """What stands for it where it is read aloud."""
        same = self.description in ("", self.title)
        return self.title if same else f"{self.title}. {self.description}"
