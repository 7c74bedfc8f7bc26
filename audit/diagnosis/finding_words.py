"""The one sentence of a finding: the number predicted, and the number seen."""

from __future__ import annotations

import math

from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.predicted import Predicted
from audit.units import direction_degrees

_EIGHTHS = (
    "north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"
)  # fmt: skip


def evidence_sentence(
    cause: str, leg: LegEvidence, bias_deg: float, predicted: Predicted | None = None
) -> str:
    """Say what a cause predicts for a leg and what was seen there."""
    seen = _seen_words(leg)
    logged = _log_words(leg)
    if predicted is not None:
        return f"Predicts {_predicted_words(predicted)}; {_what_was_seen(predicted, leg)}{logged}."
    seen = f"{seen[:1].upper()}{seen[1:]}, {_distance_words(leg)}"
    if cause == "within-skill":
        seen += f"; on all legs together about {turn_words(bias_deg, 1)}"
    return f"{seen}{logged}."


def _predicted_words(predicted: Predicted) -> str:
    if predicted.shift_m is not None:
        return f"an end {place_words(predicted.shift_m)} of the point"
    if predicted.unit == "deg":
        return turn_words(predicted.number, 1)
    if predicted.unit == "ratio":
        return f"{predicted.number:.2f} of the distance"
    return f"{abs(predicted.number):.0f} m {'too far' if predicted.number > 0.0 else 'short'}"


def _what_was_seen(predicted: Predicted, leg: LegEvidence) -> str:
    if predicted.shift_m is not None:
        seen = predicted.seen_shift_m or (0.0, 0.0)
        return f"ended {place_words(seen)} of it"
    if predicted.unit == "deg":
        return _seen_words(leg) if predicted.of_leg else f"seen {turn_words(predicted.seen, 1)}"
    if predicted.unit == "ratio":
        return f"walked {predicted.seen:.2f} of it"
    far = "too far" if predicted.seen > 0.0 else "short"
    error = 1.96 * leg.log_ratio_sd * leg.length_m
    return f"walked {abs(predicted.seen):.0f} m {far}, give or take {error:.0f} m"


def place_words(shift_m: tuple[float, float]) -> str:
    """Write a vector: "100 m east"."""
    eighth = math.floor(direction_degrees(*shift_m) / 45.0 + 0.5) % len(_EIGHTHS)
    return f"{math.hypot(*shift_m):.0f} m {_EIGHTHS[eighth]}"


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
