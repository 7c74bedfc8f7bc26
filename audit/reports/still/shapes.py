"""The outlines of signs, by their area in square pixels as charts give it."""

from __future__ import annotations

import math
import re
from functools import lru_cache

from audit.reports.still.beyond import BeyondStillError
from audit.reports.still.paper import px

_TALL = math.sqrt(3.0) / 2.0
_NUMBER = re.compile(r"-?\d*\.?\d+")
_OWN = re.compile(r"[MLZ\d.,\s-]+")


@lru_cache(maxsize=256)
def outline(shape: str, area_px: float) -> str:
    """Give the path of a sign round its place.

    Raises
    ------
    BeyondStillError
        For a sign that none of our charts has.
    """
    side = math.sqrt(area_px)
    reach = px(side / 2)
    if shape == "circle":
        arc = f"A{reach},{reach},0,1,1,"
        return f"M{reach},0{arc}-{reach},0{arc}{reach},0"
    if shape == "square":
        return f"M-{reach},-{reach}h{px(side)}v{px(side)}h-{px(side)}Z"
    if shape == "diamond":
        return f"M-{reach},0L0,-{reach}L{reach},0L0,{reach}Z"
    if shape == "triangle-up":
        tall = px(side / 2 * _TALL)
        return f"M0,-{tall}L-{reach},{tall}L{reach},{tall}Z"
    if _OWN.fullmatch(shape):  # given as a path of its own, from -1 to 1
        return _NUMBER.sub(lambda found: px(float(found.group()) * side / 2), shape)
    raise BeyondStillError(shape)
