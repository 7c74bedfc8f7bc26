"""What leaving for a leg, or arriving at its end, costs at each cut by how he went there."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.cuts import Cuts
from audit.settings import MatchingSettings
from audit.units import FloatArray


def cost_at_cuts(
    cuts: Cuts, halt_edge: NDArray[np.bool_], gain_rest: float, settings: MatchingSettings
) -> FloatArray:
    """Cost of leaving or arriving at each cut: rest or a sharp turn is likely.

    Mid-stride is not; and who rests long has reached a point and plans the next leg,
    while a short halt may as well be a look at the compass.
    """
    turn = cuts.turn_deg
    straight = _falling(turn, settings.bend_deg, settings.bend_soft_deg)
    sharp = 1.0 - _falling(turn, settings.sharp_bend_deg, settings.sharp_bend_soft_deg)
    walking = settings.cost_mid_stride * straight - settings.gain_sharp_bend * sharp
    hidden = cuts.unseen & (turn > settings.bend_deg)
    walking = np.where(hidden, -settings.gain_unseen, walking)
    longer = np.tanh((cuts.rest_s - settings.rest_usual_s) / settings.rest_range_s)
    resting = -settings.gain_halt - gain_rest * longer
    return np.asarray(np.where(halt_edge, np.minimum(resting, walking), walking))


def _falling(value: FloatArray, middle: float, width: float) -> FloatArray:
    """Fall smoothly from 1 well below the middle to 0 well above it."""
    return np.asarray(0.5 - 0.5 * np.tanh((value - middle) / (2.0 * width)))
