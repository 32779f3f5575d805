"""The programme: everything that follows from a plan, in records that nothing changes.

Documents choose from these records and word them; no figure is worked out later.
"""

from notices.plan.moments import Moment
from notices.programme.model.better_dates import BetterDate, BetterDates
from notices.programme.model.changes import Aspect, Change, ChangeKind, Changes, Move, Subject
from notices.programme.model.club import (
    Approval,
    Club,
    Decision,
    Edition,
    Mailing,
    Photograph,
    Sender,
)
from notices.programme.model.course import NINE, USUAL_PROFILE, Green, Hole, Profile, Subsoil
from notices.programme.model.figures import Figure, Input, Measured, Reading, SandOnGreen, Value
from notices.programme.model.fixtures import AWAY_MATCH, Decided, Fixture
from notices.programme.model.patterns import Layout, Pattern
from notices.programme.model.play import (
    WHOLE_DAY,
    Closure,
    DayOfPlay,
    HolesInPlay,
    PlayStatus,
    Restriction,
    RuleInPlay,
    RuleOfGolf,
    ScoreDay,
    Start,
    Stretch,
)
from notices.programme.model.programme import Programme
from notices.programme.model.recovery import (
    FittedRate,
    GreensBack,
    Recovery,
    RestOfGrowth,
    Season,
    SeasonOnRecord,
    Seen,
)
from notices.programme.model.timetable import (
    DayTimetable,
    Limit,
    Task,
    clock,
    to_five,
    told_from,
    told_until,
)
from notices.programme.model.works import (
    Meeting,
    OtherWork,
    Period,
    Promise,
    Settings,
    Visit,
    Work,
)

__all__ = [
    "AWAY_MATCH",
    "NINE",
    "USUAL_PROFILE",
    "WHOLE_DAY",
    "Approval",
    "Aspect",
    "BetterDate",
    "BetterDates",
    "Change",
    "ChangeKind",
    "Changes",
    "Closure",
    "Club",
    "DayOfPlay",
    "DayTimetable",
    "Decided",
    "Decision",
    "Edition",
    "Figure",
    "FittedRate",
    "Fixture",
    "Green",
    "GreensBack",
    "Hole",
    "HolesInPlay",
    "Input",
    "Layout",
    "Limit",
    "Mailing",
    "Measured",
    "Meeting",
    "Moment",
    "Move",
    "OtherWork",
    "Pattern",
    "Period",
    "Photograph",
    "PlayStatus",
    "Profile",
    "Programme",
    "Promise",
    "Reading",
    "Recovery",
    "RestOfGrowth",
    "Restriction",
    "RuleInPlay",
    "RuleOfGolf",
    "SandOnGreen",
    "ScoreDay",
    "Season",
    "SeasonOnRecord",
    "Seen",
    "Sender",
    "Settings",
    "Start",
    "Stretch",
    "Subject",
    "Subsoil",
    "Task",
    "Value",
    "Visit",
    "Work",
    "clock",
    "to_five",
    "told_from",
    "told_until",
]
