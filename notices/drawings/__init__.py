"""Drawings in SVG, made from the programme."""
