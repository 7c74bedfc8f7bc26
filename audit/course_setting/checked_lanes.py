"""What a check of lanes finds: frozen records, no arithmetic."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from typing import Literal

from audit.forecast.course_forecast import CourseForecast
from audit.leg_card import CardLeg, LegCard
from audit.settings import CourseSettingSettings
from audit.units import FloatArray

FindingKind = Literal[
    "uneven",
    "twin-points",
    "point-in-no-go",
    "point-in-hazard",
    "point-out-of-bounds",
    "leg-through-no-go",
    "leg-through-hazard",
    "leg-out-of-bounds",
    "point-near-no-go",
    "point-near-hazard",
    "walks-reach-no-go",
    "walks-reach-hazard",
    "safety-bearing-missing",
    "safety-bearing-through-no-go",
    "safety-bearing-through-hazard",
    "safety-bearings-differ",
    "dark-before-the-end",
    "dark-soon-after-the-end",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneFinding:
    """Something for the course setter to look at.

    Attributes
    ----------
    lane : str
        Name of the lane; "" for the ground as a whole.
    what : str
        The leg, the point or the figure that it is about.
    message : str
        The whole of it in a sentence or two.
    longitude_deg, latitude_deg : float or None
        Where to look, for what has a place.
    """

    kind: FindingKind
    lane: str
    what: str
    message: str
    longitude_deg: float | None = None
    latitude_deg: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Daylight:
    """The sun at a place on a day, UTC; None where it does not rise or set that day.

    ``civil_dawn`` and ``civil_dusk`` are when its middle stands 6 degrees below the horizon.
    ``always`` says which it is where it neither rises nor sets.
    """

    civil_dawn: dt.datetime | None
    sunrise: dt.datetime | None
    sunset: dt.datetime | None
    civil_dusk: dt.datetime | None
    always: Literal["", "light", "dark"] = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LightAt:
    """Whether it is light at a place at a moment: not darker than civil twilight.

    Attributes
    ----------
    moment : datetime
        UTC, as are the others.
    since, until : datetime or None
        The civil dawn and dusk about a light moment, the dusk and dawn about a dark one; None
        where there is none within two days.
    """

    moment: dt.datetime
    light: bool
    since: dt.datetime | None
    until: dt.datetime | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lane:
    """One lane: its plan worked out, and heights along its legs where they are known.

    ``heights`` has one array a leg, at the places that the stations of the leg's line give.
    """

    name: str
    source: str
    card: LegCard
    heights: tuple[FloatArray, ...] | None = None

    @property
    def legs(self) -> tuple[CardLeg, ...]:
        """The legs that are known beforehand: none where the points come in any order."""
        return () if self.card.order == "free" else self.card.legs


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneFigures:
    """What lanes are compared by; without legs, what is of legs is None, and ``times_s`` empty.

    Attributes
    ----------
    climb_m, descent_m : float or None
        None where no heights are known.
    times_s : tuple of (rule, seconds)
        By every rule of walking time; rules that use heights take unknown ground for level.
    mean_chance : float
        Mean over the legs of the chance to end within sight.
    least_chance, least_chance_leg
        The hardest leg.
    twins : int
        Points of the lane that are too near another.
    at_start, at_end : LightAt or None
        The light at the first point when the lane is begun, and at the last when it ends by
        the slowest rule; None where no start is given, or the plan has no date or one at an
        end of the calendar, and the end without legs.
    """

    legs: int | None
    length_m: float | None
    longest_m: float | None
    longest_leg: str | None
    climb_m: float | None
    descent_m: float | None
    times_s: tuple[tuple[str, float], ...]
    mean_chance: float | None
    least_chance: float | None
    least_chance_leg: str | None
    twins: int
    at_start: LightAt | None
    at_end: LightAt | None

    @property
    def light_left_s(self) -> float | None:
        """Seconds from the end to civil dusk; less than 0, those since dusk; None without one."""
        end = self.at_end
        if end is None:
            return None
        dusk = end.until if end.light else end.since
        return None if dusk is None else (dusk - end.moment).total_seconds()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CheckedLane:
    """A lane with its figures and, where it has legs, its forecast."""

    lane: Lane
    figures: LaneFigures
    forecast: CourseForecast | None
    daylight: Daylight | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LanesCheck:
    """The whole check, and what it was judged by.

    ``notes`` say what was taken and what could not be looked at.
    """

    lanes: tuple[CheckedLane, ...]
    findings: tuple[LaneFinding, ...]
    notes: tuple[str, ...]
    settings: CourseSettingSettings = field(default_factory=CourseSettingSettings)
