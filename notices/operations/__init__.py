"""The catalogue of kinds of work: terms, settings, what each does to the surface."""

from notices.operations.catalogue import CATALOGUE
from notices.operations.model import (
    TEXT_SECTIONS,
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
    "TEXT_SECTIONS",
    "Kind",
    "Noticed",
    "Opening",
    "Operation",
    "Pace",
    "Setting",
    "SettingValue",
    "WhileWorking",
]
