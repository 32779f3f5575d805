"""How a reader of one value refuses it: what is wrong, and apart from it what would be right."""

from __future__ import annotations


class Refusal(ValueError):
    """A value that cannot be read, in two sentences for the person who typed it.

    Parameters
    ----------
    message
        What is wrong, without a full stop.
    suggestion
        What would be right, as it follows after a colon: in small letters, without a full stop.
    """

    def __init__(self, message: str, suggestion: str = "") -> None:
        super().__init__(f"{message}: {suggestion}" if suggestion else message)
        self.message = message
        self._suggestion = suggestion

    @property
    def suggestion(self) -> str:
        """What would be right, as a sentence of its own."""
        return self._suggestion[:1].upper() + self._suggestion[1:]

    @property
    def sentences(self) -> tuple[str, str]:
        """What is wrong, and what would be right."""
        return self.message, self.suggestion
