"""Lines of a recording thinned for drawing; figures are never made from them."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.settings import ReportSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DisplayLine:
    """One stretch to draw; ``points`` has shape (n, 2), n >= 2."""

    kind: str
    points: FloatArray


def tolerance_m(metres_per_pixel: float, settings: ReportSettings) -> float:
    """Give how far a drawn line may lie off the recording, in whole metres, to be stated."""
    return math.ceil(max(settings.thinning_m, settings.thinning_px * metres_per_pixel))


def thinned(points: FloatArray, within_m: float) -> FloatArray:
    """Leave out points of a line that it passes within a distance of; shape (k, 2), k >= 2."""
    if len(points) < 2:
        return np.repeat(points, 2, axis=0)
    import shapely  # noqa: PLC0415

    line = shapely.LineString(points).simplify(within_m, preserve_topology=False)
    kept: FloatArray = shapely.get_coordinates(line)
    # What lies within the distance of one place as a whole may come back empty.
    return kept if len(kept) >= 2 else points[[0, -1]]


def walked_lines(debrief: Debrief, within_m: float) -> list[DisplayLine]:
    """Give the recording as lines to draw, one a span that has a way to draw, by kind.

    Kinds: "walked" (walking and halt of a leg), "bypass", "search", "gap" and "other"
    (what belongs to no leg).
    """
    where = debrief.clean.places()
    lines = []
    for span in debrief.spans:
        kind = "walked" if span.leg is not None else "other"
        kind = span.kind if span.kind in {"search", "gap", "bypass"} else kind
        if span.first == span.last:  # between two fixes
            continue
        portion = where[span.first : span.last + 1]
        lines.append(DisplayLine(kind=kind, points=thinned(portion, within_m)))
    return lines
