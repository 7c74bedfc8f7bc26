"""Whether a recording has times to go by, and which of its fixes have them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes
from audit.matching.leg_match import Cleaning
from audit.settings import CleaningSettings
from audit.units import FloatArray
from audit.words import sentence

GPS_BEGAN_S = 315_964_800.0
"""1980-01-06T00:00:00Z, the first second of GPS time (IS-GPS-200, 3.3.4)."""


def keep_timed(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, bool, list[Cleaning]]:
    """Give the fixes to go by, whether by their times, and what was left out.

    A file may mix tracks with times and tracks without (saved tracks of older
    receivers lose them). One kind is kept: the timed one, unless it shows less than
    a fair share of the way that the other shows.
    """
    cleaning: list[Cleaning] = []
    times = _without_unset_clock(fixes.time_s, cleaning)
    has = np.isfinite(times)
    bare = ~has
    if not has.any():
        detail = sentence("recording-detail-no-times")
        return fixes, False, [*cleaning, Cleaning(what="no-times", count=len(fixes), detail=detail)]
    fixes = fixes.at_times(times)
    if bare.any():
        share = settings.timed_share
        if _way_m(fixes, has) < share * _way_m(fixes, bare):
            kept = _mostly_bare_parts(fixes, bare)
            cleaning.append(_few_times(kept))
            return fixes.take(kept), False, cleaning
        cleaning.append(_left_out_bare(fixes, bare))
        fixes = fixes.take(has)
    standing = _standing_clock(fixes, settings.spike_slack_m)
    if standing is not None:
        return fixes, False, [*cleaning, standing]
    return fixes, True, cleaning


def never_set(time_s: FloatArray) -> bool:
    """Tell whether most times are from before satellites gave any: then none says the day."""
    return bool(2 * (time_s < GPS_BEGAN_S).sum() > np.isfinite(time_s).sum())


def _without_unset_clock(time_s: FloatArray, cleaning: list[Cleaning]) -> FloatArray:
    """Blank times from before satellites gave any, unless most are: then say that."""
    early = time_s < GPS_BEGAN_S
    count = int(early.sum())
    if count == 0:
        return time_s
    if never_set(time_s):
        detail = sentence("recording-detail-never-set")
        cleaning.append(Cleaning(what="clock-not-set", count=count, detail=detail))
        return time_s
    detail = sentence("recording-detail-before-set")
    cleaning.append(Cleaning(what="clock-not-set", count=count, detail=detail))
    return np.where(early, np.nan, time_s)


def _way_m(fixes: Fixes, which: NDArray[np.bool_]) -> float:
    """Give the length of the lines through the fixes picked, part by part."""
    some = fixes.take(which)
    return float(some.steps_m()[np.diff(some.segment) == 0].sum())


def _mostly_bare_parts(fixes: Fixes, bare: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Pick the fixes of those parts of the file in which most have no time."""
    _, part = np.unique(fixes.segment, return_inverse=True)
    bare_share = np.bincount(part, weights=bare) / np.bincount(part)
    picked: NDArray[np.bool_] = bare_share[part] > 0.5
    return picked if picked.any() else np.ones(len(fixes), dtype=np.bool_)


def _few_times(kept: NDArray[np.bool_]) -> Cleaning:
    left_out = int((~kept).sum())
    detail = sentence("recording-detail-few-times", count=left_out)
    return Cleaning(what="few-times", count=left_out, detail=detail)


def _left_out_bare(fixes: Fixes, bare: NDArray[np.bool_]) -> Cleaning:
    whole = np.setdiff1d(fixes.segment[bare], fixes.segment[~bare])
    detail = sentence("recording-detail-no-time")
    if len(whole):
        numbers = ", ".join(str(number + 1) for number in whole[:5])
        more = max(0, len(whole) - 5)
        detail = sentence("recording-detail-no-time-parts", numbers=numbers, more=more)
    return Cleaning(what="no-time", count=int(bare.sum()), detail=detail)


def _standing_clock(fixes: Fixes, slack_m: float) -> Cleaning | None:
    """Say that times are of no use: too many fixes far apart carry the same one."""
    ordered = fixes.sorted_by(fixes.time_s)
    later = np.diff(ordered.time_s, prepend=-np.inf) > 0.0
    fresh, same = np.flatnonzero(later), np.flatnonzero(~later)
    first = fresh[np.searchsorted(fresh, same) - 1]
    hidden = int((ordered.apart_m(first, same) > slack_m).sum())
    if len(fresh) >= 2 and 2 * hidden <= len(fixes):
        return None
    detail = sentence("recording-detail-single-time")
    if len(fixes) > 1:
        detail = sentence("recording-detail-stood", count=len(fixes), times=len(fresh))
    return Cleaning(what="no-times", count=len(fixes), detail=detail)
