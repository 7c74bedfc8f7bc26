"""Points that the walker went to after the last leg that he walked, by no way of the course."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import LegMatch
from audit.matching.route import course_points
from audit.matching.walk_layout import WalkLaidOut


def with_points_gone_to(
    legs: Sequence[LegMatch], laid_out: WalkLaidOut, card: LegCard
) -> tuple[LegMatch, ...]:
    """Call the legs before such a point skipped: the walk went on after they were left out.

    Gone to is a point at which the walker rested, or where the recording ends. One where
    an earlier leg began or ended does not count: from a loop everybody walks home by it.
    """
    walked = [leg for leg in legs if leg.claim_s is not None]
    if not walked:
        return tuple(legs)
    last = walked[-1]
    gone_to = _last_gone_to(last, laid_out, card)
    return tuple(
        replace(leg, status="skipped")
        if last.leg < leg.leg <= gone_to and leg.status == "not-started"
        else leg
        for leg in legs
    )


def _last_gone_to(last: LegMatch, laid_out: WalkLaidOut, card: LegCard) -> int:
    """Give the last leg at whose end the walker was after the last leg walked; -1 for none."""
    samples, movement = laid_out.samples, laid_out.movement
    near_m = card.arrival_radius_m + movement.noise_m
    points = course_points(card)
    next_point = last.leg + (1 if last.status == "unfinished" else 2)
    before, later = points[:next_point], points[next_point:]
    new = np.hypot(*(later[:, None] - before).T).min(axis=0) > 2.0 * near_m
    stands = np.concatenate([movement.halts.reshape(-1, 2), [[len(samples) - 1] * 2]])
    stands = stands[samples.time_s[stands[:, 0]] > (last.claim_s or 0.0)]
    places = np.array([samples.smooth[a : b + 1].mean(axis=0) for a, b in stands.tolist()])
    if not len(later) or not len(places):
        return -1
    there = (np.hypot(*(later[:, None] - places).T) <= near_m).any(axis=0) & new
    return len(card.legs) - len(later) + int(np.flatnonzero(there)[-1]) if there.any() else -1
