"""Colours of drawings, which are the same whatever colour a club sets."""

from notices.look import HOUSE

INK = HOUSE.ink
"""Text and lines."""
QUIET = HOUSE.quiet
"""Lesser text; 6:1 on paper and more than 4.5:1 on sand."""
PAPER = HOUSE.paper
SAND = HOUSE.sand
"""Background of what matters most; prints as a light grey."""
LOAM = HOUSE.accent
"""Accent: headings, rules, marks."""
MEADOW = "#dfe7d2"
"""Background of growing grass; prints as a light grey, and every text colour is readable on it."""
LINE = "#dedad0"
"""Thin lines of a chart, so light that letters may cross them."""
SHADE = "#f1efe8"
"""Background of weekends and other times behind a chart."""
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
