"""Kinds of reader that documents are written for."""

from __future__ import annotations

import enum


class Audience(enum.StrEnum):
    """One kind of reader."""

    MEMBERS = "members"
    VISITORS = "visitors"
    """Visitors and societies."""
    SHOP = "shop"
    """Starter and shop."""
    COMMITTEE = "committee"
    TEAM = "team"
