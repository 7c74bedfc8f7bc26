"""How well the moments of leaving and of the claim are known, in time and along the walk."""

from __future__ import annotations

import numpy as np

from audit.matching.leg_match import Reckoned
from audit.measurement.claims import SightBend
from audit.measurement.leg_details import CutError
from audit.measurement.places import Fixed
from audit.settings import ClaimSettings


def cut_error(
    fixed: Fixed,
    bend: SightBend | None,
    unseen: Reckoned | None = None,
    *,
    speed_m_s: float,
    interval_s: float,
    settings: ClaimSettings,
) -> CutError:
    """Give the error of a start or a claim by what marks it.

    Where the walker may have turned to a point in sight, ``bend`` adds the doubt
    whether he did to the doubt when. ``unseen`` is where the place was reckoned to be in a
    silence of the recorder: then the place has all of the error.
    """
    if unseen is not None:
        return CutError(
            marked_by="reckoned",
            time_sd_s=fixed.sd_m / max(speed_m_s, settings.slowest_m_s),
            along_sd_m=0.0,
            place_sd_m=fixed.sd_m,
        )
    logging_s = interval_s / np.sqrt(12.0)
    halted = fixed.halt_s[0] != fixed.halt_s[1]
    doubt_s = 0.0
    if bend is not None:
        apart_s = bend.arrived_s - bend.turned_s
        doubt_s = float(np.sqrt(bend.probability * (1.0 - bend.probability))) * apart_s
        if bend.probability > 0.5:
            turned_s = float(np.hypot(bend.turned_sd_s, logging_s))
            time_s = float(np.hypot(turned_s, doubt_s))
            along_m = float(np.hypot(time_s * speed_m_s, settings.turn_along_sd_m))
            return CutError(
                marked_by="turn to the point",
                time_sd_s=time_s,
                along_sd_m=along_m,
                place_sd_m=fixed.sd_m,
            )
    if halted:
        # The place of a halt does not depend on when in it he came or left.
        along = np.hypot(settings.halt_along_sd_m, settings.halt_logging * logging_s * speed_m_s)
        return CutError(
            marked_by="halt",
            time_sd_s=float(np.hypot(np.hypot(settings.halt_time_sd_s, logging_s), doubt_s)),
            along_sd_m=float(np.hypot(along, doubt_s * speed_m_s)),
            place_sd_m=fixed.sd_m,
        )
    time_s = float(np.hypot(np.hypot(settings.way_time_sd_s, logging_s), doubt_s))
    return CutError(
        marked_by="way",
        time_sd_s=time_s,
        along_sd_m=time_s * speed_m_s,
        place_sd_m=fixed.sd_m,
    )
