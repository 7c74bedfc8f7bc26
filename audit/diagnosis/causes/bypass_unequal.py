"""An obstacle was walked round, and not walked back as far as it was walked out."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.left_aside import left_aside_m, passed_on_one_side
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one step in cross-track that stays, the heading as planned before and after."""
    unequal = [one for one in leg.bypasses if not one.equal]
    aside_m = left_aside_m(unequal)
    several = len(passed_on_one_side(leg.bypasses)) > 1
    if several or abs(aside_m) < settings.least_step_m:
        return ()
    slanted = all(one.slanted for one in unequal)
    odds = settings.slant_odds if slanted else settings.unequal_odds
    return (Expected(aside_m=aside_m, odds=odds),)


CAUSE = Cause(
    name="bypass-unequal",
    kind="shape",
    expects=expects,
)
