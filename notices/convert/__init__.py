"""Conversion of a plan into YAML, or into a workbook that a person fills in."""
