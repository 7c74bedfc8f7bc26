"""The standard that a walk is graded by: frozen records, each figure with its source."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

RoadRule = Literal["none", "cross only", "keep off"]
"""Whether roads may be used, only be crossed, or be kept off by a distance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What each part counts in the coaching score; only their ratios matter."""

    points: float = 60.0
    time: float = 10.0
    azimuth: float = 15.0
    distance: float = 15.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Standard:
    """What is asked of a walk. None: not asked.

    Attributes
    ----------
    name, edition : str
        As it is printed on every sheet.
    points_to_find : int or None
        Of the points of a lane, its last among them; None: all.
    radius_m : float or None
        Within this of a point is found; None: the arrival radius of the plan.
    survey_sd_m : float
        How well the points themselves are surveyed, standard error per axis; added to
        the error of each approach.
    time_limit_s, late_grace_s : float or None
        From start to finish; how late a walk may come in and still count.
    late_penalty_per_min : float
        Taken off the coaching score for each minute that was begun after the limit.
    azimuth_tolerance_deg, distance_tolerance : float or None
        Of a leg; the second is a share of the planned distance.
    order : "planned" or "free"
        "free": a point counts whenever it was visited.
    road_rule, road_distance_m
        Held against roads where a class is given some; a human judges it.
    weights : Weights
        Of the coaching score, which never overrides the verdict.
    sources : tuple of (str, str)
        Each figure's name and where it is published.
    """

    name: str
    edition: str = ""
    points_to_find: int | None = None
    radius_m: float | None = None
    survey_sd_m: float = 0.0
    time_limit_s: float | None = None
    late_grace_s: float = 0.0
    late_penalty_per_min: float = 0.0
    azimuth_tolerance_deg: float | None = None
    distance_tolerance: float | None = None
    order: Literal["planned", "free"] = "planned"
    road_rule: RoadRule = "none"
    road_distance_m: float | None = None
    weights: Weights = field(default_factory=Weights)
    sources: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    source: str = field(default="", compare=False)
