"""What would settle a cause, where card and log of the walker have not answered it yet."""

from __future__ import annotations

import math
from collections.abc import Mapping

from audit.diagnosis.cause import Cause
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.on_paper import OnPaper
from audit.settings import DiagnosisSettings
from audit.words import sentence

_BY_COUNT = {
    "early-stop": "",
    "hundred-miscounted": sentence("settle-hundred-miscounted-by-log"),
    "overshoot": sentence("settle-overshoot-by-log"),
    "wrong-ruler": "",
}
"""What is left to settle a cause once the log has given the count."""
_CARD_AZIMUTH = frozenset(
    {
        "gm-angle-omitted",
        "gm-angle-reversed",
        "declination-for-gm-angle",
        "right-angle",
        "azimuth-digits",
    }
)
"""Asks for the azimuth, or the sum, on the walker's own card."""
_CARD_LENGTH = frozenset({"hundred-miscounted", "wrong-ruler"})
"""Proven where the distance, or the paces, of the walker's own card are out by as much."""
_HALF_A_HUNDRED_M = 50.0
_NOTED = frozenset({"dial-misread", "neighbour-azimuth"})
"""Asks for the azimuth that was set."""
_REFERENCE = frozenset({"digits-transposed", "digit-wrong"})
"""Asks for the reference on the walker's own sheet."""


def what_settles(
    causes: Mapping[str, Cause],
    names: tuple[str, str | None],
    leg: LegEvidence,
    settings: DiagnosisSettings,
) -> str:
    """Say what would settle a leg: what its cause needs, or, for an undecided one, its rival.

    What the walker's card and log have answered is not asked again.
    """
    for name in names:
        if name is not None and name in causes:
            answered = _answered(name, leg, settings)
            return causes[name].settles if answered is None else answered
    return ""


def _answered(name: str, leg: LegEvidence, settings: DiagnosisSettings) -> str | None:
    """Say what card and log leave of a question, "" if nothing; None where they are not asked."""
    proven = leg.on_paper is not None and _stands_on(leg.on_paper, name, leg.length_m)
    noted_deg = leg.set_turn_deg
    noted = noted_deg is not None and abs(noted_deg) >= settings.least_turn_deg
    if proven or (name in _NOTED and noted):
        return ""
    if leg.log_count_ratio is not None and name in _BY_COUNT:
        return _BY_COUNT[name]
    turn_deg = None if leg.on_paper is None else leg.on_paper.turn_deg
    if name not in _CARD_AZIMUTH or turn_deg is None:
        return None
    wrong_on_card = abs(turn_deg) >= settings.least_turn_deg
    return "" if wrong_on_card or noted_deg is not None else sentence("settle-what-was-set")


def _stands_on(paper: OnPaper, name: str, length_m: float) -> bool:
    """Tell whether the card gives the reference that is asked for, or is out in the distance."""
    if name in _REFERENCE:
        return paper.end_off_m is not None
    return name in _CARD_LENGTH and _is_off(paper.log_ratio, length_m)


def _is_off(log_ratio: float | None, length_m: float) -> bool:
    """Tell whether a distance on the card is out by what is no rounding."""
    return log_ratio is not None and abs(math.expm1(log_ratio)) * length_m >= _HALF_A_HUNDRED_M
