"""What of a strip's curve was seen, and where between the recorder was silent."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from audit.debriefing.finished_debrief import Debrief
from audit.reports.strip_frame import Strip
from audit.units import FloatArray


def silences(debrief: Debrief, strip: Strip) -> list[tuple[int, int]]:
    """Give each silence as two places of the curve: the last before it, the first after it.

    Of one in which the leg begins or ends that is the curve's own end, which is reckoned.
    """
    passed_s = strip.measures.curve_time_s
    found = []
    for gap in debrief.clean.gaps:
        if gap.start_s < passed_s[-1] and gap.end_s > passed_s[0]:
            before = int(np.searchsorted(passed_s, gap.start_s, side="right")) - 1
            after = int(np.searchsorted(passed_s, gap.end_s))
            found.append((max(before, 0), min(after, len(passed_s) - 1)))
    return found


def seen_parts(debrief: Debrief, strip: Strip) -> list[FloatArray]:
    """Give the curve between the silences, in pieces of two places at least."""
    edges = [place for silence in silences(debrief, strip) for place in silence]
    pairs = pairwise([0, *edges, len(strip.curve) - 1])
    # Of the pairs every second one is a silence.
    seen = [strip.curve[first : last + 1] for first, last in list(pairs)[::2]]
    return [part for part in seen if len(part) > 1]


def within_silences(debrief: Debrief, strip: Strip) -> NDArray[np.bool_]:
    """Tell of each place of the curve whether it lies in a silence, as a reckoned end does."""
    passed_s = strip.measures.curve_time_s
    unseen = np.zeros(len(passed_s), dtype=bool)
    for gap in debrief.clean.gaps:
        unseen |= (passed_s > gap.start_s) & (passed_s < gap.end_s)
    return unseen
