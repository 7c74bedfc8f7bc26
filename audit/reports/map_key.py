"""The key of the map: what this one shows, and no sign that is not on it."""

from __future__ import annotations

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.reports import digits
from audit.reports.display_lines import DisplayLine
from audit.reports.figure_map import map_lines
from audit.reports.map_frame import MapFrame, map_frame
from audit.reports.map_layers import claims_reckoned, letters
from audit.words import say

_SEEN_PX = 6.0
"""A line that reaches less far is covered by the signs at its ends; chosen: half a claim's sign."""
_ORDER = (
    "planned",
    "walked",
    "bypass",
    "search",
    "other",
    "gap",
    "point",
    "claim",
    "reckoned",
    "miss",
    "halt",
)


def map_key(debrief: Debrief) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what the map of this walk shows, in the order of the key."""
    frame = map_frame(debrief)
    lettered = letters(debrief, frame)
    shown = {line.kind for line in map_lines(debrief, frame) if _seen(line, frame)}
    shown |= {"point"}
    claims = claims_reckoned(debrief)
    if claims:
        shown |= {"walked", *("reckoned" if one else "claim" for one in claims)}
    for letter, kind in (("S", "search"), ("B", "bypass"), ("H", "halt")):
        if lettered[letter]:
            shown.add(kind)
    radius = digits.stated_metres(debrief.card.arrival_radius_m)
    return [(sign, say(f"map-{sign}", radius=radius)) for sign in _ORDER if sign in shown]


def _seen(line: DisplayLine, frame: MapFrame) -> bool:
    """Tell whether a line can be made out on the map."""
    east, north = np.clip(
        line.points, [frame.west_m, frame.south_m], [frame.east_m, frame.north_m]
    ).T
    return bool(np.hypot(np.ptp(east), np.ptp(north)) >= _SEEN_PX * frame.metres_per_pixel)
