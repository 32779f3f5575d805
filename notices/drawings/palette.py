"""The colours that drawings use; they stay as they are whatever colour a club sets."""

from notices.look import HOUSE

INK = HOUSE.ink
"""Text and lines."""
QUIET = HOUSE.quiet
"""Lesser text; 6:1 on paper and more than 4.5:1 on sand."""
PAPER = HOUSE.paper
SAND = HOUSE.sand
"""Ground of what matters most; prints as a light grey."""
LOAM = HOUSE.accent
"""Accent: headings, rules, marks."""
