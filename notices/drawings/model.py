"""A drawing: SVG with a title and a description."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing, complete in itself."""

    name: str
    title: str
    description: str
    """Text for people who cannot see it, with every fact that the drawing shows."""
    svg: str
    width: float
    height: float
    """Size in the units of the SVG's view box; one unit is one CSS pixel."""
    caption: str = ""
    """Text below it for people who can see it; empty if the drawing speaks for itself."""

    @property
    def told(self) -> str:
        """Title and description, to be read aloud in place of the drawing."""
        same = self.description in ("", self.title)
        return self.title if same else f"{self.title}. {self.description}"
