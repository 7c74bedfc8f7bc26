"""The one sentence of a finding: the number predicted, and the number seen."""

from __future__ import annotations

import math

from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.predicted import Predicted
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.settings import DiagnosisSettings
from audit.statistics.spread import TWO_SIDED_95
from audit.units import direction_degrees, turn_degrees
from audit.words import Sentence, sentence
from audit.words.compass_points import nearest_eighth
from audit.words.figures import Length, Number, Percent, Turn

_SHOWN_DEG = 0.05
"""Half of the last digit of a turn."""
_ANGLES = ("gm-angle-omitted", "gm-angle-reversed", "gm-angle-doubled")
_SET_ALIKE_DEG = 0.5
"""Azimuths that are less than this apart are the same, be one of them written in whole degrees."""


def evidence_sentence(
    cause: str,
    leg: LegEvidence,
    bias_deg: float,
    predicted: Predicted | None = None,
    *,
    both: Predicted | None = None,
    scatter: WalkersScatter | None = None,
    settings: DiagnosisSettings | None = None,
) -> Sentence:
    """Say what a cause predicts for a leg and what was seen there.

    ``both`` is what it predicts together with a mistake that all legs share. The walker's own
    ``scatter`` is told where more than the error of measuring lies between the two.
    """
    logged = _log_words(leg, cause)
    if predicted is not None:
        return sentence(
            "evidence-predicted",
            predicted=_predicted_words(predicted),
            beside="" if both is None else sentence("evidence-beside", both=_predicted_words(both)),
            seen=_what_was_seen(predicted, leg),
            scatter=_scatter_words(both or predicted, leg, scatter or WalkersScatter()),
            log=logged,
        )
    settings = settings or DiagnosisSettings()
    bias: str = ""
    start: str = ""
    if cause == WITHIN_SKILL:
        bias = sentence("evidence-together", turn=turn_words(bias_deg, 1))
        if math.hypot(*leg.start_off_m) >= settings.told_start_m:
            words = "evidence-recorded-from" if leg.under_way else "evidence-began-off"
            start = sentence(words, place=place_words(leg.start_off_m))
    return sentence(
        "evidence-unpredicted",
        seen=_seen_words(leg, begin=True),
        distance=_distance_words(leg),
        bias=bias,
        start=start,
        log=logged,
        why=_why_not(leg, settings) if cause == CANNOT_TELL else "",
    )


def carried_sentence(leg: LegEvidence, turn_deg: float, log_ratio: float) -> Sentence:
    """Say what a leg measured from where the one before was plotted comes to, and what was seen."""
    return sentence(
        "evidence-carried",
        turn=turn_words(turn_deg, 0),
        far=_share_words(log_ratio),
        seen=_seen_words(leg),
        distance=_distance_words(leg),
        log=_log_words(leg, CANNOT_TELL),
    )


def _why_not(leg: LegEvidence, settings: DiagnosisSettings) -> Sentence:
    """Say why no mistake is named: the portion, a swerve that many things make, or look-alikes."""
    if leg.confidence < settings.portion_in_doubt:
        return sentence("evidence-why-portion")
    other = None if leg.shape is None else leg.shape.other
    least_deg, rare = settings.off_line_deg[0], settings.swerve_nats[0]
    if other is not None and other.nats >= rare and abs(other.turn_deg) >= least_deg:
        return sentence("evidence-why-swerve", length=Length(metres=other.length_m))
    return sentence("evidence-why-more")


def _predicted_words(predicted: Predicted) -> Sentence:
    if predicted.shift_m is not None:
        words = "evidence-an-end" if predicted.of_point else "evidence-an-end-from-start"
        return sentence(words, place=place_words(predicted.shift_m))
    if predicted.unit == "deg":
        turn_deg = turn_degrees(0.0, predicted.number)
        # Half a circle lies on either side: on that to which the leg was seen to turn.
        half = 180.0 - abs(turn_deg) < _SHOWN_DEG
        return turn_words(math.copysign(turn_deg, predicted.seen) if half else turn_deg, 1)
    if predicted.aside:
        return _aside_words(predicted.number)
    if predicted.unit == "ratio":
        return sentence("evidence-ratio", ratio=Number(value=predicted.number, decimals=2))
    return far_words(predicted.number)


def far_words(length_m: float) -> Sentence:
    """Write "50 m too far"."""
    size = Length(metres=abs(length_m))
    return sentence("figure-too-far" if length_m > 0.0 else "figure-short", size=size)


def _aside_words(right_m: float) -> Sentence:
    """Write "40 m right" of the line that was held."""
    words = "figure-right" if right_m > 0.0 else "figure-left"
    return sentence(words, size=Length(metres=abs(right_m)))


def _what_was_seen(predicted: Predicted, leg: LegEvidence) -> Sentence:
    if predicted.shift_m is not None:
        seen = predicted.seen_shift_m or (0.0, 0.0)
        return sentence("evidence-ended", place=place_words(seen))
    if predicted.unit == "deg":
        if predicted.of_leg:
            return _seen_words(leg)
        return sentence("evidence-seen-turn", turn=turn_words(predicted.seen, 1))
    if predicted.aside:
        return sentence("evidence-ended-aside", aside=_aside_words(predicted.seen))
    return _distance_seen(predicted, leg)


def _scatter_words(predicted: Predicted, leg: LegEvidence, scatter: WalkersScatter) -> str:
    """Say how a walker scatters anyway, where his leg is off what was predicted by more than error.

    Without it the two numbers seem to exclude each other, which they do not.
    """
    if predicted.shift_m is not None or predicted.aside or not predicted.of_leg:
        return ""
    if predicted.unit == "deg":
        off_deg = abs(turn_degrees(predicted.number, predicted.seen))
        if off_deg <= _half_interval_deg(leg) or scatter.turn_deg < 0.5:
            return ""
        size = Turn(degrees=scatter.turn_deg, degrees_decimals=0)
        return sentence("evidence-scatter-heading", size=size)
    off, unit = abs(predicted.number - predicted.seen), predicted.unit
    most = _half_interval_m(leg) if unit == "m" else _half_interval_ratio(predicted, leg)
    if leg.under_way or off <= most or scatter.log_ratio < 0.005:
        return ""
    return sentence("evidence-scatter-distance", share=Percent(share=scatter.log_ratio))


def _half_interval_deg(leg: LegEvidence) -> float:
    return leg.half_interval_deg or TWO_SIDED_95 * leg.turn_sd_deg


def _half_interval_m(leg: LegEvidence) -> float:
    return TWO_SIDED_95 * leg.log_ratio_sd * leg.length_m


def _half_interval_ratio(predicted: Predicted, leg: LegEvidence) -> float:
    return TWO_SIDED_95 * leg.log_ratio_sd * predicted.seen


def _distance_seen(predicted: Predicted, leg: LegEvidence) -> Sentence:
    if leg.under_way:
        return _distance_words(leg)
    if predicted.unit == "ratio":
        return sentence(
            "evidence-walked-ratio",
            ratio=Number(value=predicted.seen, decimals=2),
            error=Number(value=max(_half_interval_ratio(predicted, leg), 0.01), decimals=2),
        )
    return sentence(
        "evidence-walked-length",
        length=far_words(predicted.seen),
        error=Length(metres=_half_interval_m(leg)),
    )


def place_words(shift_m: tuple[float, float]) -> Sentence:
    """Write a vector: "100 m east"."""
    return sentence(
        "figure-at-direction",
        size=Length(metres=math.hypot(*shift_m)),
        direction=sentence(f"figure-{nearest_eighth(direction_degrees(*shift_m))}"),
    )


def _seen_words(leg: LegEvidence, *, begin: bool = False) -> Sentence:
    error = _half_interval_deg(leg)
    digits = 1 if error < 3.0 else 0
    words = {
        "begin": "yes" if begin else "no",
        "error": Turn(degrees=error, degrees_decimals=digits),
    }
    if round(abs(leg.turn_deg), digits) == 0.0:
        return sentence("evidence-on-card", **words)
    return sentence("evidence-off-card", turn=turn_words(leg.turn_deg, digits), **words)


def _distance_words(leg: LegEvidence) -> Sentence:
    if leg.under_way:
        return sentence("evidence-distance-in-part")
    return _share_words(leg.log_ratio)


def _share_words(log_ratio: float) -> Sentence:
    share = math.exp(log_ratio) - 1.0
    if abs(share) < 0.005:
        return sentence("evidence-distance-right")
    way = "long" if share > 0.0 else "short"
    return sentence(f"evidence-distance-{way}", share=Percent(share=abs(share)))


def _log_words(leg: LegEvidence, cause: str) -> str:
    """Say what the log has; beside a wrong angle, that it may have been written from the card."""
    if leg.set_turn_deg is None:
        return ""
    planned = _setting_words(
        leg.set_turn_deg, alike="evidence-set-as-planned", off="evidence-set-off"
    )
    own_deg = None if leg.on_paper is None else leg.on_paper.turn_deg
    if own_deg is None:
        copied = cause in _ANGLES and abs(leg.set_turn_deg) < _SET_ALIKE_DEG
        return sentence("evidence-log-as-card" if copied else "evidence-log", setting=planned)
    # The walker's own card comes first: by it the compass was to be set, right or wrong.
    beside = _setting_words(
        turn_degrees(own_deg, leg.set_turn_deg),
        alike="evidence-set-as-own-card",
        off="evidence-set-off-own-card",
    )
    if abs(own_deg) >= _SET_ALIKE_DEG:
        beside = sentence("evidence-set-which-is", beside=beside, planned=planned)
    return sentence("evidence-log", setting=beside)


def _setting_words(turn_deg: float, *, alike: str, off: str) -> Sentence:
    """Say what was set beside what should have been."""
    if abs(turn_deg) < _SET_ALIKE_DEG:
        return sentence(alike)
    return sentence(off, turn=turn_words(turn_deg, 1))


def turn_words(turn_deg: float, digits: int) -> Sentence:
    """Write a turn with its side in words; a turn that rounds to nothing has no side."""
    if round(abs(turn_deg), digits) == 0.0:
        return sentence("evidence-no-turn", size=Turn(degrees=0.0, degrees_decimals=0))
    size = Turn(degrees=turn_deg, degrees_decimals=digits)
    return sentence("figure-right" if turn_deg > 0.0 else "figure-left", size=size)
