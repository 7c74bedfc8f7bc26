"""Whether many walks say the same for one reason: walked alike, they are also read wrong alike.

Walkers who end here and there and then leave from one place prove that place each by himself.
Those who all came the same way do not: what makes one recording's part doubtful does so in all.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.walker_result import WalkerResult
from audit.settings.class_shows import ClassShowsSettings


def read_alike(
    walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> float | None:
    """Give how sure the middle walk is of where a leg ended, where that is all they have.

    None where they came by different ways, or where the parts of their walks are sure enough
    for the scatter of the places to be the whole error.
    """
    here = [one.legs[leg] for one in walkers]
    claims = np.array([(one.miss.east_m, one.miss.north_m) for one in here if one.miss is not None])
    if not len(claims):
        return None
    apart_m = float(np.median(np.hypot(*(claims - np.median(claims, axis=0)).T)))
    sure = _middle_sure(walkers, leg)
    return sure if apart_m <= settings.gathered_m and sure < settings.sure_place else None


def _middle_sure(walkers: Sequence[WalkerResult], leg: int) -> float:
    """Give the middle probability that the part up to the point, and that from it, are right."""
    return float(
        np.median([min(one.confidence or 0.0 for one in of.legs[leg : leg + 2]) for of in walkers])
    )
