"""Whether a leg's miss came with its start: the walker set off from another place."""

from __future__ import annotations

import math

from audit.debriefing.finished_debrief import LegDebrief


def inherited(leg: LegDebrief) -> bool:
    """Tell whether most of a miss was there when the leg began, and is worth telling."""
    measures = leg.audit.measures
    if measures is None or measures.under_way:
        return False
    start, total = measures.ledger.inherited, measures.ledger.total
    own_m = math.hypot(total[0] - start[0], total[1] - start[1])
    least_m = max(leg.settings.reports.told_inherited_m, 3.0 * measures.miss_sd_m)
    return measures.miss_m >= least_m and math.hypot(*start) > 2.0 * own_m
