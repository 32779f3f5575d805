"""What all parts of a plan share."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """A part of a plan: frozen, and no key that we do not know."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        allow_inf_nan=False,
        # Only Plan is used to read; what it consists of needs no reader of its own.
        defer_build=True,
    )
