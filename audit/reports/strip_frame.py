"""The frame of a cross-track strip: what length and breadth of ground it shows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures
from audit.measurement.lines_of_leg import line_length_m
from audit.reports.display_lines import tolerance_m
from audit.units import FloatArray

WIDTH_PX, HEIGHT_PX = 440, 150
SIDE_PX = 78
"""Room for the words beside the strips."""
_NARROWEST_SIDE_M = 20.0
_SIDE_ROOM, _ALONG_ROOM = 0.14, 0.03
"""Empty edge, as a share of what is shown."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Strip:
    """One strip of a leg that was walked.

    Attributes
    ----------
    curve : float array, shape (n, 2)
        Along the planned line, and to the right of it.
    along_m, side_m : (low, high)
        Ground shown; right of the line is positive.
    line_m : float
        Length of the planned line, at whose end the point stands.
    within_m : float
        How closely the drawn curve keeps to the recording.
    """

    leg: int
    card: CardLeg
    measures: LegMeasures
    curve: FloatArray
    noise_m: float
    radius_m: float
    along_m: tuple[float, float]
    side_m: tuple[float, float]
    line_m: float
    within_m: float


def strip_of_leg(debrief: Debrief, leg: int) -> Strip | None:
    """Frame a leg, or give None for one that was not walked."""
    measures, card = debrief.legs[leg].audit.measures, debrief.legs[leg].audit.card
    if measures is None:
        return None
    along, offset = measures.cross_track.along_m, measures.cross_track.offset_m
    noise_m, radius_m = debrief.quality.noise_m, debrief.card.arrival_radius_m
    side_m = max(_NARROWEST_SIDE_M, radius_m)
    line_m = line_length_m(card)
    along_range = with_room(
        min(0.0, float(along.min())), max(line_m, float(along.max())), _ALONG_ROOM
    )
    return Strip(
        leg=leg,
        card=card,
        measures=measures,
        curve=np.column_stack([along, offset]),
        noise_m=noise_m,
        radius_m=radius_m,
        along_m=along_range,
        side_m=with_room(
            min(float(offset.min()) - noise_m, -side_m),
            max(float(offset.max()) + noise_m, side_m),
            _SIDE_ROOM,
        ),
        line_m=line_m,
        within_m=tolerance_m(
            (along_range[1] - along_range[0]) / WIDTH_PX, debrief.settings.reports
        ),
    )


def with_room(low: float, high: float, share: float) -> tuple[float, float]:
    """Widen a range by a share of it at each end."""
    room = share * (high - low)
    return low - room, high + room
