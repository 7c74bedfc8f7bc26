"""The one sentence of a finding: the number predicted, and the number seen."""

from __future__ import annotations

import math

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.diagnosis.evidence import LegEvidence


def evidence_sentence(cause: str, leg: LegEvidence, bias_deg: float) -> str:
    """Say what a cause predicts for a leg and what was seen there."""
    seen = _seen_words(leg)
    for known in DIRECTION_CAUSES:
        if known.name == cause:
            predicted = turn_words(known.predicts_deg(leg), 1)
            return f"Predicts {predicted}; {seen}{_log_words(leg)}."
    seen = f"{seen[:1].upper()}{seen[1:]}, {_distance_words(leg)}"
    if cause == "within-skill":
        seen += f"; on all legs together about {turn_words(bias_deg, 1)}"
    return f"{seen}{_log_words(leg)}."


def _seen_words(leg: LegEvidence) -> str:
    error = leg.half_interval_deg or 1.96 * leg.turn_sd_deg
    digits = 1 if error < 3.0 else 0
    off = turn_words(leg.turn_deg, digits)
    where = "on the card's azimuth" if off == "0° off" else f"{off} of the card"
    return f"walked {where}, give or take {error:.{digits}f}°"


def _distance_words(leg: LegEvidence) -> str:
    per_cent = 100.0 * (math.exp(leg.log_ratio) - 1.0)
    if abs(per_cent) < 0.5:
        return "the distance right"
    return f"{abs(per_cent):.0f} % {'long' if per_cent > 0.0 else 'short'}"


def _log_words(leg: LegEvidence) -> str:
    if leg.set_turn_deg is None:
        return ""
    return f"; by the log the compass was set {_setting_words(leg.set_turn_deg)}"


def _setting_words(turn_deg: float) -> str:
    """Say what was set beside what should have been."""
    if abs(turn_deg) < 0.5:
        return "as the card says"
    return f"{turn_words(turn_deg, 1)} of what the card says"


def turn_words(turn_deg: float, digits: int) -> str:
    """Write a turn with its side in words; a turn that rounds to nothing has no side."""
    size = f"{abs(turn_deg):.{digits}f}"
    if float(size) == 0.0:
        return "0° off"
    return f"{size}° {'right' if turn_deg > 0.0 else 'left'}"
