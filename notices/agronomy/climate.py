"""Mean temperatures of British weather stations, for a club that has none of its own."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

STATIONS: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "Oxford": (5.2, 5.5, 7.5, 9.8, 12.9, 15.9, 18.1, 17.8, 15.0, 11.5, 7.9, 5.4),
        "Durham": (4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3),
        "Cardiff": (5.6, 5.8, 7.6, 10.0, 12.9, 15.7, 17.5, 17.2, 14.9, 11.6, 8.3, 6.0),
        "Armagh": (5.0, 5.3, 6.7, 8.8, 11.4, 14.0, 15.7, 15.5, 13.5, 10.3, 7.3, 5.2),
        "Lerwick": (4.2, 3.8, 4.6, 6.1, 8.1, 10.3, 12.2, 12.6, 11.1, 8.5, 6.2, 4.5),
    }
)
"""Mean air temperature by month, January first, 1991–2020 [°C] [met_office_stations]_."""

STATIONS_OF_BRITISH_MEAN = ("Oxford", "Durham", "Cardiff", "Armagh")
"""What an unnamed British club is taken to lie between; Lerwick, in the far north, would make
the mean too cold for nearly every one [judgement]_."""

BRITISH_MEAN: tuple[float, ...] = tuple(
    sum(month) / len(month)
    for month in zip(*(STATIONS[name] for name in STATIONS_OF_BRITISH_MEAN), strict=True)
)
"""Mean air temperature by month over `STATIONS_OF_BRITISH_MEAN`, unrounded [°C]."""
