"""The shape of what debrief.json tells of a miss against the forecast of its leg."""

from __future__ import annotations

from typing import Literal

from typing_extensions import TypedDict


class EllipseEntry(TypedDict):
    """An ellipse of equal density about the middle of a forecast."""

    major_m: float
    """Longer semi-axis."""
    minor_m: float
    major_deg: float
    """Grid azimuth of the longer axis, in [0, 180)."""


class ForecastEntry(TypedDict):
    """Where ordinary walks of the leg end, and where among them this one did."""

    along_m: float
    """Middle of the ends, beyond the point; right of it is across_m."""
    across_m: float
    along_sd_m: float
    across_sd_m: float
    ellipse_50: EllipseEntry
    ellipse_95: EllipseEntry
    chance_in_sight: float
    """That an ordinary walk ends within the arrival radius."""
    began_off_m: float
    """How far from its start the leg was begun."""
    quantile: float
    """Share of ordinary walks begun where this one was that end nearer, by the ellipses."""
    whole_quantile: float
    """The same against a leg begun at its start."""
    where: Literal[
        "inside the 50 % ellipse",
        "between the 50 % and the 95 % ellipse",
        "outside the 95 % ellipse",
    ]
    """By quantile."""
