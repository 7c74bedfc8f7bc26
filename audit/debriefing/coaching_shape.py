"""The shape of what coaching adds to debrief.json, field by field."""

from __future__ import annotations

from typing import Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict

from audit.debriefing.entry_values import EastNorth


class HopEntry(TypedDict):
    """From one known number to the next: the steps between, and what was added there."""

    steps: list[str]
    kind: Literal["direction", "distance", "point"]
    error: float
    """Degrees clockwise, or metres."""
    tolerance: float
    off_m: float
    """How far off this alone leads at the end of the leg."""
    entered: bool
    """More than is ordinary."""
    slips: list[str]
    sentence: str


class StepsEntry(TypedDict):
    """At which steps an error entered, from card, log and recording."""

    entered: list[str]
    sentences: list[str]
    hops: list[HopEntry]


class OtherEndEntry(TypedDict):
    """Where a leg would have ended, from its planned point."""

    miss: EastNorth
    miss_m: float
    sd_m: float
    """Standard error per axis."""


class WhatIfEntry(TypedDict):
    """What one thing done right would have been worth, all else as it was walked."""

    planned_azimuth: OtherEndEntry
    planned_distance: OtherEndEntry


class KeepEntry(TypedDict):
    """Something that went well."""

    what: str
    evidence: str
    skill: Literal["azimuth", "distance", "arriving", "finding", "through", "log", "recording"]
    legs: list[str]
    """Those that show it; empty for a habit."""


class WorkOnEntry(TypedDict):
    """Something to practise."""

    cause: str
    certain: bool
    """Whether a mistake is named; otherwise it is one of two, or a part of what remains."""
    what: str
    evidence: str
    exercise: str
    legs: list[str]
    one_of: list[str]
    """Both causes, where it was one of two and no leg tells them apart; otherwise empty."""


class CoachingEntry(TypedDict):
    """Two things to keep and two to work on, fewer where nothing else stands out."""

    keep: list[KeepEntry]
    work_on: list[WorkOnEntry]
    left_aside: list[str]
    """Walked legs that are neither praised nor blamed, as too little of them is sure."""
