"""The catalogue of kinds of work: trade terms, settings, and effects on the surface."""

from notices.operations.catalogue import CATALOGUE, CLEARING_CORES, HAULING_SAND
from notices.operations.model import (
    OPTIONAL_SECTIONS,
    REQUIRED_SECTIONS,
    TEXT_SECTIONS,
    Clearing,
    Hauling,
    Kind,
    Noticed,
    Opening,
    Operation,
    Pace,
    Setting,
    SettingValue,
    Weather,
    WhileWorking,
)

__all__ = [
    "CATALOGUE",
    "CLEARING_CORES",
    "HAULING_SAND",
    "OPTIONAL_SECTIONS",
    "REQUIRED_SECTIONS",
    "TEXT_SECTIONS",
    "Clearing",
    "Hauling",
    "Kind",
    "Noticed",
    "Opening",
    "Operation",
    "Pace",
    "Setting",
    "SettingValue",
    "Weather",
    "WhileWorking",
]
