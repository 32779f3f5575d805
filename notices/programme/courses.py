"""What the courses of a club are called."""

from __future__ import annotations

from notices.plan import club_greens

KINDS_OF_COURSE = club_greens.KINDS_OF_COURSE
"""What a course's name may end with, so that nothing need be added to say that it is one."""
