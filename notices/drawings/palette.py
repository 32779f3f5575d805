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
MEADOW = "#dfe7d2"
"""Ground of growing grass; prints as a light grey, and all texts may stand on it."""
LINE = "#dedad0"
"""Thin lines of a chart, so light that letters may cross them."""
SHADE = "#f1efe8"
"""Ground of weekends and other times that lie behind the rest."""
TURF = "#55743f"
"""Blades of grass; always as strokes."""
WATER = "#1c5b8f"
"""Water; always as a dashed line or drops."""
THATCH, ROOT_ZONE, SUBSOIL = "#d9c39a", "#e6d8c3", "#d5c4b6"
"""Layers below the turf, each with a texture of its own."""
GRAIN = "#b98d3e"
"""Grains of sand."""
LAWN = "#e8eee0"
"""Turf seen from above, with blades in TURF on it."""
GAP = "#2e2620"
"""An opening seen from above: as dark as a hole is."""
