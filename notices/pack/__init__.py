"""The finished folder: written whole or not at all, with a manifest."""
