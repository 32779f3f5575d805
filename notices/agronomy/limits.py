"""The range within which an argument means something; outside it, a ValueError that says so."""

from __future__ import annotations

import math


def finite(name: str, value: float) -> float:
    """Return `value` unchanged where it is a finite number.

    Raises
    ------
    ValueError
        If it is infinite or not a number.
    """
    if not math.isfinite(value):
        raise ValueError(f"{name} must be a finite number, not {value}.")
    return value


def non_negative(name: str, value: float) -> float:
    """Return `value` unchanged where it is finite and not below zero.

    Raises
    ------
    ValueError
        If it is negative, infinite or not a number.
    """
    if not (math.isfinite(value) and value >= 0):
        raise ValueError(f"{name} must be a finite number, zero or more, not {value}.")
    return value


def positive(name: str, value: float) -> float:
    """Return `value` unchanged where it is finite and above zero.

    Raises
    ------
    ValueError
        If it is zero, negative, infinite or not a number.
    """
    if not (math.isfinite(value) and value > 0):
        raise ValueError(f"{name} must be a finite number above zero, not {value}.")
    return value


def between(name: str, value: float, low: float, high: float) -> float:
    """Return `value` unchanged where it lies from `low` to `high`, both included.

    Raises
    ------
    ValueError
        If it lies outside or is not a number.
    """
    if not low <= value <= high:
        raise ValueError(f"{name} must lie between {low:g} and {high:g}, not {value}.")
    return value


def fraction(name: str, value: float) -> float:
    """Return `value` unchanged where it is above 0 and at most 1.

    Raises
    ------
    ValueError
        If it lies outside; a percentage in place of a fraction is the usual cause.
    """
    if not 0 < value <= 1:
        raise ValueError(f"{name} must be a fraction above 0 and at most 1, not {value}.")
    return value


def count(name: str, value: int) -> int:
    """Return `value` unchanged where it is a whole number of at least one.

    Raises
    ------
    ValueError
        If it is below one or not whole.
    """
    if not math.isfinite(value) or value < 1 or value != int(value):
        raise ValueError(f"{name} must be a whole number, 1 or more, not {value}.")
    return value
