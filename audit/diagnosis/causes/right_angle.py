"""The azimuth was taken off the wrong edge, a quarter of the circle out."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = +90 or -90.

    A quarter turn is the protractor's: where the walker's own card does not show it, he misread
    the dial by it, and seldom writes down what it really showed.
    """
    return tuple(
        Expected(
            weight=0.5,
            turn_deg=turn,
            turn_sd_deg=settings.turned_about_sd_deg,
            logged=settings.slip_logged,
            logged_past_card=settings.misread_logged,
            measured=settings.made_on_paper,
        )
        for turn in (90.0, -90.0)
    )


CAUSE = Cause(
    name="right-angle",
    kind="turn",
    expects=expects,
)
