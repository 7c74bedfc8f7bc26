"""What of a measured leg the diagnosis may look at."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, measure

from audit.diagnosis.gather_evidence import gather_evidence


def test_evidence_is_taken_from_measures_and_card() -> None:
    card = card_of((0, 0), (400, 0), (400, 300), (0, 300), angle_deg=-7.0)
    walk = HandWalk().halt(60).mark("start").walk(95, 420).mark("claim").halt(60)
    measures = measure(card, walk.clean(), [walk.portion()], walk.halts)
    found = measures.legs[0].measures
    (leg,) = gather_evidence(measures.legs, card)  # the others were not walked
    assert leg.leg == 0
    assert leg.turn_deg == pytest.approx(5.0, abs=0.01)
    assert np.exp(leg.log_ratio) == pytest.approx(1.05, abs=1e-3)
    assert leg.planned_magnetic_deg == pytest.approx(97.0, abs=0.01)  # 90 - (-7)
    assert leg.grid_magnetic_angle_deg == -7.0
    assert leg.convergence_deg == card.angles.convergence_deg
    assert leg.confidence == 0.99
    assert leg.log_ratio_sd == pytest.approx(found.straight_sd_m / 420.0, rel=1e-3)
