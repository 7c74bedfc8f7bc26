"""Whether a point was reached: found, missed, or too close to call."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from statistics import NormalDist

import numpy as np

from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_details import PointReached, PointVerdict
from audit.settings import MeasuringSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Approach:
    """How near a walk came to a point within a stretch of time.

    ``unseen_m`` is by how much nearer it may have come in silences of the recording.
    """

    nearest_m: float
    unseen_m: float = 0.0

    @property
    def possible_m(self) -> float:
        """The nearest that the walker may have come."""
        return max(self.nearest_m - self.unseen_m, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherReading:
    """What holds if another portion of the walk was this leg.

    ``doubt`` is the probability of that, ``stretches_s`` all the time that may then have
    been the leg's.
    """

    doubt: float
    stretches_s: tuple[tuple[float, float], ...]


def other_readings(
    clean: CleanTrack, match: Match, leg: LegMatch, settings: MeasuringSettings
) -> tuple[OtherReading, ...]:
    """Give what the match leaves open of when a leg was walked.

    If its own portion is wrong, it may be anywhere in the recording but on legs that are
    sure; nor before the first of those where it comes later in the plan, for whoever stood
    at the start of a loop had not yet come to its end. If the next one's is, the search for
    its point may have gone on up to the next claim.
    """
    begin, end = float(clean.time_s[0]), float(clean.time_s[-1])
    walked = match.walked_in_turn()
    free, since = [], begin
    for one in walked:
        start_s, claim_s = one.times_s
        if one.leg != leg.leg and 1.0 - one.confidence < settings.certain_miss:
            if since > begin or one.leg > leg.leg:
                free.append((since, start_s))
            since = claim_s
    free.append((since, end))
    readings = [OtherReading(doubt=1.0 - leg.confidence, stretches_s=tuple(free))]
    own_start_s, own_claim_s = leg.times_s
    later = [one for one in walked if one.leg != leg.leg and one.times_s[0] >= own_claim_s]
    following = next(iter(later), None)
    if following is not None:
        doubt = leg.confidence * (1.0 - following.confidence)
        stretch = (own_start_s, following.times_s[1])
        readings.append(OtherReading(doubt=doubt, stretches_s=(stretch,)))
    return tuple(readings)


def judge_point(
    approach: Approach,
    others: Sequence[tuple[float, Approach]],
    radius_m: float,
    sd_m: float,
    settings: MeasuringSettings,
) -> PointReached:
    """Judge a nearest approach by the radius and its standard error per axis.

    Benefit of the doubt is the rule: inside the radius is found, and a miss must be
    certain: 97.5 in 100 against the nearest that the walker may have come. ``others``
    are the probabilities of other readings of the match with the approaches that they
    have; they count in.
    """
    doubt = sum(chance for chance, _ in others)
    weighed = ((1.0 - doubt, approach), *others)
    possible = sum(
        # Within the radius would be found, under another reading as under this one.
        chance * (1.0 if near_m <= radius_m else share_within(near_m, radius_m, sd_m))
        for chance, near_m in ((chance, one.possible_m) for chance, one in weighed)
    )
    verdict: PointVerdict
    if approach.nearest_m <= radius_m:
        verdict = "found"
    else:
        verdict = "missed" if possible < settings.certain_miss else "too close to call"
    return PointReached(
        verdict=verdict,
        probability=sum(
            chance * share_within(one.nearest_m, radius_m, sd_m) for chance, one in weighed
        ),
        radius_m=radius_m,
        sd_m=sd_m,
        unseen_m=approach.unseen_m,
        doubt=doubt,
        elsewhere_m=min((one.nearest_m for _, one in others), default=None),
    )


@lru_cache(maxsize=256)
def share_within(distance_m: float, radius_m: float, sd_m: float) -> float:
    """Give the probability that a place seen at a distance really lies within the radius.

    The error is normal, ``sd_m`` per axis: the circle cut into strips across the line of
    sight, each with its share of the normal plane.
    """
    if sd_m <= 0.0:
        return 1.0 if distance_m <= radius_m else 0.0
    cdf = NormalDist().cdf
    # Narrow at the rim, where their height changes fast.
    strips = radius_m * np.sin(np.linspace(-np.pi / 2.0, np.pi / 2.0, 201))
    middle = (strips[1:] + strips[:-1]) / 2.0
    half = np.sqrt(np.maximum(radius_m**2 - middle**2, 0.0)) / sd_m
    below = [cdf(edge) for edge in ((strips - distance_m) / sd_m).tolist()]
    tall = [2.0 * cdf(one) - 1.0 for one in half.tolist()]
    share = sum((high - low) * one for (low, high), one in zip(pairwise(below), tall, strict=True))
    return float(np.clip(share, 0.0, 1.0))


def unseen_approach(
    clean: CleanTrack,
    times_s: tuple[float, float],
    target: FloatArray,
    nearest_m: float,
    speed_m_s: float,
) -> float:
    """Give by how much nearer than seen the walker may have come in silences of the recording.

    In a silence of T seconds between A and B he can have been at no place X with
    |AX| + |XB| > speed x T; so he came no nearer to the point P than
    (|AP| + |PB| - speed x T) / 2, by the triangle inequality.
    """
    possible = nearest_m
    for gap in clean.gaps:
        if gap.end_s <= times_s[0] or gap.start_s >= times_s[1]:
            continue
        ends = np.array([[clean.east_m[i], clean.north_m[i]] for i in (gap.before, gap.before + 1)])
        way = float(np.hypot(*(ends - target).T).sum())
        possible = min(possible, max((way - speed_m_s * (gap.end_s - gap.start_s)) / 2.0, 0.0))
    return nearest_m - possible
