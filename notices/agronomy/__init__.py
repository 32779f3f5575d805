"""Pure functions of numbers: each with its formula, its units and its source.

No file, no clock, no plan: what goes in is a number or a date, what is wrong is a ValueError.
"""
