"""How sure the ends are that a leg would have had: what of the errors of its own ends is left.

A leg from s to c has walked d = (c - s) e along its direction e; u is the planned direction, D
the planned distance, n across e. Start and claim are known to within ds and dc: each has the
receiver's error on both axes and, along e, that of its moment. The direction is the one from s to
c, so that an error of the ends turns it by n (dc - ds) / d and leaves nothing across.

With the planned azimuth the leg ends at s + d u, known to within

    ds + (e (dc - ds)) u :

of the claim's error what lies across is gone, and of the start's what lies along, but for the turn
t between e and u. Squared and summed over both axes, with the variances S and C of the places per
axis and s2 and c2 of the moments,

    S + C + c2 + 2 (1 - cos t) (S + s2).

With the planned distance it ends at s + D e, known to within ds + k (n (dc - ds)) n with k = D / d:
along, only the start's error is left; across, it is drawn out or in with the line,

    S + s2 + k k C + (1 - k)^2 S.

Where the heading is less sure than its ends make it, as where obstacles were walked round, the
rest of its error moves the end across by the length that turns with it: d, or d - D. Half of the
sum is the square per axis; to it comes that of the point's reference.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures


@dataclass(frozen=True, slots=True, kw_only=True)
class EndErrors:
    """Variances of a leg's ends in square metres, and of what else turns its direction.

    ``start`` and ``claim`` are those of the places per axis, ``start_moment`` and
    ``claim_moment`` what comes to them along the leg; ``reference`` that of the point, per axis;
    ``turned`` that of the heading in square radians, beyond what the ends make of it.
    """

    start: float
    claim: float
    start_moment: float
    claim_moment: float
    reference: float
    turned: float

    def of_planned_azimuth(self, cosine: float, walked_m: float) -> float:
        """Give the standard error per axis of the end with the planned azimuth, in metres.

        ``cosine`` is of the turn from it.
        """
        both = self.start + self.claim + self.claim_moment
        both += 2.0 * (1.0 - cosine) * (self.start + self.start_moment)
        return self._per_axis(both, walked_m)

    def of_planned_distance(self, planned_m: float, walked_m: float) -> float:
        """Give the standard error per axis of the end with the planned distance, in metres."""
        drawn = planned_m / max(walked_m, 1.0)
        both = self.start + self.start_moment
        both += drawn**2 * self.claim + (1.0 - drawn) ** 2 * self.start
        return self._per_axis(both, walked_m - planned_m)

    def _per_axis(self, both: float, lever_m: float) -> float:
        return math.sqrt((both + self.turned * lever_m**2) / 2.0 + self.reference)


def end_errors(card: CardLeg, measures: LegMeasures, walked_m: float) -> EndErrors:
    """Take the errors of a leg's ends apart; without details both ends are taken to be alike."""
    reference = card.end.half_square_m**2 / 3.0
    if measures.details is None:
        start = claim = measures.straight_sd_m**2 / 2.0
        start_moment = claim_moment = 0.0
    else:
        began, ended = measures.details.start_error, measures.details.claim_error
        start, claim = began.place_sd_m**2, ended.place_sd_m**2
        start_moment, claim_moment = began.along_sd_m**2, ended.along_sd_m**2
    by_ends = (start + claim) / max(walked_m, 1.0) ** 2
    heading = math.radians(measures.heading.own_sd_deg) ** 2
    return EndErrors(
        start=start,
        claim=claim,
        start_moment=start_moment,
        claim_moment=claim_moment,
        reference=reference,
        turned=max(heading - by_ends, 0.0),
    )
