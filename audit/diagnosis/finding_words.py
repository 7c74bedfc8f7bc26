"""The one sentence of a finding: the number predicted, and the number seen."""

from __future__ import annotations

import math

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.diagnosis.evidence import LegEvidence


def evidence_sentence(cause: str, leg: LegEvidence, bias_deg: float) -> str:
    """Say what a cause predicts for a leg and what was seen there."""
    error = 1.96 * leg.turn_sd_deg
    digits = 1 if error < 3.0 else 0
    seen = (
        f"walked {turn_words(leg.turn_deg, digits)} of the card, give or take {error:.{digits}f}°"
    )
    if leg.set_turn_deg is not None:
        seen += f"; by the log the compass was set {_setting_words(leg.set_turn_deg)}"
    ratio = 100.0 * (math.exp(leg.log_ratio) - 1.0)
    distance = f"{abs(ratio):.0f} % {'long' if ratio >= 0.0 else 'short'}"
    for known in DIRECTION_CAUSES:
        if known.name == cause:
            predicted = turn_words(known.predicts_deg(leg), 1)
            return f"Consistent with {known.says}: that would be {predicted}; {seen}."
    if cause == "within-skill":
        usual = turn_words(bias_deg, 1)
        return f"Ordinary error: {seen}, {distance}; on all legs together about {usual}."
    return f"The evidence does not decide: {seen}, {distance}."


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
