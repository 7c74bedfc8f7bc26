"""How well a line was kept: inside its band, inside its corridor, and where it was left."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from audit.geodesy.along_line import metres_about
from audit.measurement.leg_details import LineKept
from audit.measurement.leg_measures import CrossTrack, Place
from audit.settings import MeasuringSettings
from audit.statistics.spread import TWO_SIDED_95
from audit.units import FloatArray


def measure_line_kept(
    curve: CrossTrack,
    walk: FloatArray,
    sd_m: float,
    place_at: Callable[[int], Place],
    settings: MeasuringSettings,
) -> LineKept:
    """Judge a cross-track curve by its noise, ``sd_m`` across the line.

    Parameters
    ----------
    walk : float array, shape (n, 2)
        The places of the curve, of which ``place_at`` gives one by its index.
    """
    band_m = TWO_SIDED_95 * sd_m
    # Behind its start nobody is on a line: the back azimuth leads along the same one.
    behind_m = np.maximum(-curve.along_m, 0.0)
    off = np.hypot(curve.offset_m, behind_m)
    weight = metres_about(walk)
    total = float(weight.sum()) or 1.0
    kept = LineKept(
        band_m=band_m,
        in_band_share=float(weight[off <= band_m].sum() / total),
        corridor_m=settings.corridor_m,
        corridor_share=float(weight[off <= settings.corridor_m].sum() / total),
    )
    inside = np.flatnonzero(off <= band_m)
    if len(inside) and inside[-1] == len(off) - 1:
        return kept
    left = int(inside[-1]) + 1 if len(inside) else 0
    return LineKept(
        band_m=kept.band_m,
        in_band_share=kept.in_band_share,
        corridor_m=kept.corridor_m,
        corridor_share=kept.corridor_share,
        left=place_at(left),
        left_along_m=float(curve.along_m[left]),
        left_side="right" if curve.offset_m[left] > 0.0 else "left",
    )
