"""The catalogue of kinds of work: terms, settings, what each does to the surface."""

from notices.operations.catalogue import CATALOGUE
from notices.operations.model import (
    Kind,
    Noticed,
    Opening,
    Operation,
    Pace,
    Setting,
    SettingValue,
    WhileWorking,
)

__all__ = [
    "CATALOGUE",
    "Kind",
    "Noticed",
    "Opening",
    "Operation",
    "Pace",
    "Setting",
    "SettingValue",
    "WhileWorking",
]
