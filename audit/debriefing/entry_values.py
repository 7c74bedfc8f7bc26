"""Values that several entries of the documents have: pairs, intervals, the names of causes."""

from __future__ import annotations

from typing import Annotated

from audit.guide.cause_names import CAUSE_NAMES

CauseName = Annotated[str, CAUSE_NAMES]
"""One of the catalogue, "within-skill" and "cannot-tell" among them."""
EastNorth = Annotated[list[float], "[east, north] in metres"]
MetresInterval = Annotated[list[float], "[low, high] in metres"]
SecondsInterval = Annotated[list[float], "[low, high] in seconds"]
Interval = Annotated[list[float], "[low, high] in degrees; straddles north where low > high"]
