"""How large what is the same on all legs of a walk is: a steady turn, a pace that is off."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from audit.diagnosis.cause import Cause
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.leg_densities import STEADY_PACES, STEADY_TURNS
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.weigh_walk import States, Weighed
from audit.settings import DiagnosisSettings

STEADY = frozenset({*STEADY_TURNS, *STEADY_PACES})
_LEAST_SHARE = 1e-3


def steady_sizes(
    evidence: Sequence[LegEvidence], weighed: Weighed, settings: DiagnosisSettings
) -> Mapping[str, float]:
    """Give by cause the turn in degrees, or the logarithm of the ratio, that all legs share.

    It is the mean of what the legs show, each by the probability that the cause acts on it
    and nothing else does, and by its own error; where that comes to less than the least that
    has a name, the least on its side.
    """
    sizes = {}
    for cause in (one for one in CAUSES if one.name in STEADY):
        turns = cause.kind == "turn"
        scatter = weighed.scatter.turn_deg if turns else weighed.scatter.log_ratio
        shares = [_alone(states, cause.name) for states in weighed.states]
        weights, seen = [], []
        for leg, share in zip(evidence, shares, strict=True):
            sd = leg.turn_sd_deg if turns else leg.log_ratio_sd
            weights.append(share / (sd**2 + scatter**2))
            seen.append(leg.turn_deg if turns else leg.log_ratio)
        ways = _ways(cause, evidence[0], settings)
        if ways and sum(shares) > _LEAST_SHARE:
            mean = sum(w * s for w, s in zip(weights, seen, strict=True)) / sum(weights)
            nearest = min(ways, key=lambda way: abs(way - mean))
            within = abs(mean) >= min(map(abs, ways)) and mean * nearest > 0.0
            sizes[cause.name] = mean if within else nearest
    return sizes


def made_by(states: States, cause: str) -> float:
    """Give the probability that a cause acts on a leg."""
    return sum(share for (_, turn, length), share in states.items() if cause in turn + length)


def _alone(states: States, cause: str) -> float:
    """Give the probability that nothing but a cause acts on a leg, for it has account 0."""
    return sum(
        share
        for (account, turn, length), share in states.items()
        if account == 0 and (cause,) in (turn, length)
    )


def _ways(cause: Cause, leg: LegEvidence, settings: DiagnosisSettings) -> list[float]:
    turns = cause.kind == "turn"
    return [way.turn_deg if turns else way.log_ratio for way in cause.expects(leg, settings)]
