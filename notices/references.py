"""The bibliography: every source once, cited everywhere else by its key.

A docstring cites an entry as ``[key]_``. The status says how far a figure can be trusted,
and travels with it to whoever reads the figure.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

Status = Literal[
    "published", "trade press", "derived", "club record", "common practice", "judgement"
]
"""From strongest to weakest: "published" is a journal, university, standards body, national
agency or governing body; "trade press" includes recognised practitioner-scientists. A "club
record" stands beside them: for its own greens it beats any book."""


@dataclass(frozen=True, slots=True)
class Reference:
    """One source of figures."""

    key: str
    text: str
    url: str = ""
    status: Status = "published"


_ENTRIES = (
    # Holes
    Reference(
        "woods2009",
        "M. Woods, “Core aeration of putting greens: how much is enough?”, "
        "Asian Turfgrass Center, 2009",
        status="trade press",
    ),
    Reference(
        "woods2019",
        "M. Woods, Asian Turfgrass Center, since 2019: no fixed percentage, "
        "let measured organic matter decide",
        status="trade press",
    ),
    Reference(
        "ervin_nichols",
        "Ervin and Nichols, organic matter dilution program, Virginia Tech and USGA",
    ),
    Reference(
        "gcsaa_forum2013",
        "GCSAA members’ forum, worked example of inside and outside tine diameters, 2013",
        status="trade press",
    ),
    Reference(
        "hartwiger_obrien2001",
        "Hartwiger and O’Brien, “Core aeration by the numbers”, USGA Green Section Record, 2001",
    ),
    Reference(
        "carrow",
        "Carrow, on organic matter and pore space, as reported in the trade press",
    ),
    # Sand
    Reference(
        "woods2021",
        "M. Woods, “Organic matter reduction by hollow-tines, solid-tines, and sand "
        "topdressing”, Asian Turfgrass Center, 2021",
        status="trade press",
    ),
    Reference(
        "woods2017",
        "M. Woods, on depth and mass of sand, 2017",
        status="trade press",
    ),
    Reference(
        "daniels2018",
        "Daniels, “The Goldilocks principle for sand topdressing”, USGA, 2018",
    ),
    Reference(
        "obrien_hartwiger2003",
        "O’Brien and Hartwiger, “Aeration and topdressing for the 21st century”, "
        "USGA Green Section Record 41, 2003",
    ),
    Reference(
        "whitlark_thompson2019",
        "Whitlark and Thompson, USGA Green Section Record 57(9), 2019",
    ),
    Reference(
        "uk_trade_press",
        "British trade press on rates of top dressing",
        status="trade press",
    ),
    # Growth
    Reference(
        "gelernter_stowell2005",
        "Gelernter and Stowell, “Improved overseeding programs 1: the role of weather”, "
        "Golf Course Management, 2005; constants in °C as given by M. Woods",
    ),
    Reference(
        "pace_turf",
        "PACE Turf, bands of growth potential",
        status="trade press",
    ),
    Reference(
        "meadow_grass_optimum",
        "Optimum of about 18 °C for annual meadow-grass and fine fescue, "
        "as used in England and Canada",
        status="trade press",
    ),
    Reference(
        "met_office_stations",
        "Met Office, historic station data, monthly mean temperatures averaged over 1991–2020 "
        "(Open Government Licence; official normals may differ by 0.1 °C)",
    ),
    # Recovery
    Reference(
        "landreth2007",
        "Landreth, Karcher and Richardson, "
        "USGA Turfgrass and Environmental Research Online 6(19), 2007",
    ),
    Reference("mcclellan_moeller", "McClellan and Moeller, USGA, on recovery from coring"),
    Reference("moeller2012", "Moeller, USGA, 2012, on recovery in cool soil"),
    Reference(
        "atkinson2012",
        "Atkinson, McCarty and Bridges, Agronomy Journal 104(6), 2012",
    ),
    Reference("miller_brotherton2020", "Miller and Brotherton, 2020, on quality after coring"),
    Reference("horttechnology2022", "HortTechnology, October 2022, on green cover after coring"),
    Reference("usga2024", "USGA, 2024, on needle tining"),
    Reference(
        "recovery_model",
        "Model of this program, fitted to published recovery times: "
        "growth days = opening width ÷ (2 × sideways growth)",
        status="derived",
    ),
    Reference(
        "club_record",
        "club record: when the club’s own greens came back in earlier seasons",
        status="club record",
    ),
    Reference(
        "club_measurement",
        "club record: what the club measured on its own greens",
        status="club record",
    ),
    # Mole drains
    Reference("ahdb_moles", "AHDB, “Field drainage: use of mole drains”"),
    Reference("agriculture_victoria2002", "Agriculture Victoria, AG0949, 2002"),
    Reference("ghane2022", "Ghane, Michigan State University Extension, 2022"),
    Reference("dhakad2014", "Dhakad et al., Current World Environment 9(2), 2014"),
    # Work time
    Reference(
        "iowa_pm696",
        "Iowa State University Extension, PM 696 / A3-24, "
        "“Estimating field capacity of farm machines”",
    ),
    Reference(
        "johnson1954",
        "Johnson, “Optimal two- and three-stage production schedules with setup times included”, "
        "Naval Research Logistics Quarterly 1(1), 1954 (from memory)",
    ),
    Reference(
        "mitten1959",
        "Mitten, “Sequencing n jobs on two machines with arbitrary time lags”, "
        "Management Science 5(3), 1959 (from memory)",
    ),
    Reference(
        "graham1969",
        "Graham, “Bounds on multiprocessing timing anomalies”, "
        "SIAM Journal on Applied Mathematics 17(2), 1969 (from memory)",
    ),
    # Daylight
    Reference("usno", "US Naval Observatory, tables of sunrise, sunset and twilight"),
    Reference("nrel_spa", "Reda and Andreas, solar position algorithm, NREL/TP-560-34302"),
    Reference(
        "noaa_solar",
        "NOAA Global Monitoring Laboratory, solar calculator, "
        "after Meeus, “Astronomical algorithms” (from memory)",
    ),
    # Rules of play
    Reference(
        "rules_of_golf2023",
        "R&A and USGA, Rules of Golf, 2023, with section 8 of the Committee Procedures",
    ),
    Reference(
        "england_golf",
        "England Golf, on scores that count for handicap: temporary greens, measured length, "
        "preferred lies",
    ),
    # Not a publication, and said so
    Reference("definition", "plain geometry or the definition of a unit", status="derived"),
    Reference(
        "common_practice",
        "common practice, no published source",
        status="common practice",
    ),
    Reference("judgement", "a judgement of the makers, no source", status="judgement"),
)

REFERENCES: Mapping[str, Reference] = MappingProxyType({entry.key: entry for entry in _ENTRIES})
"""Every source by its key, in the order of the subjects."""
