"""Causes weighed against each other and against ordinary error, over all legs of a walk."""

from __future__ import annotations

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.diagnosis.direction_odds import direction_odds
from audit.diagnosis.distance_odds import distance_odds
from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.finding import Finding
from audit.diagnosis.finding_words import evidence_sentence
from audit.diagnosis.walk_stories import WITHIN
from audit.settings import DiagnosisSettings


def explain(
    evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings
) -> dict[int, tuple[Finding, ...]]:
    """Give the findings of every walked leg, most probable first, adding up to 1.

    One leg proves little: whether the angle was left out on this walk at all, how
    much this walker turns off anyway and how much he scatters are weighed over all
    legs together. What the match itself may have got wrong goes to "cannot-tell".
    """
    if not evidence:
        return {}
    directions = direction_odds(evidence, settings)
    good_distance = distance_odds(evidence, settings)
    findings = {}
    for number, leg in enumerate(evidence):
        odds = directions.each[number]
        within = float(odds[WITHIN] * good_distance[number])
        named = dict(
            zip([cause.name for cause in DIRECTION_CAUSES], odds[2:].tolist(), strict=True)
        )
        shares = {name: leg.confidence * share for name, share in named.items()}
        shares["within-skill"] = leg.confidence * within
        shares["cannot-tell"] = max(0.0, 1.0 - sum(shares.values()))
        findings[leg.leg] = _sorted_findings(shares, leg, directions.bias_deg)
    return findings


def _sorted_findings(
    shares: dict[str, float], leg: LegEvidence, bias_deg: float
) -> tuple[Finding, ...]:
    order = sorted(shares, key=lambda name: (-shares[name], name))
    return tuple(
        Finding(
            cause=name,
            probability=shares[name],
            evidence=evidence_sentence(name, leg, bias_deg),
        )
        for name in order
    )
