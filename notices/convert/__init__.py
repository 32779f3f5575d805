"""A plan written anew: as YAML, or as a workbook that a person fills in."""
