"""The same walk turned, mirrored or moved is the same walk: only what must change changes.

No outside truth is needed here: metres and degrees do not depend on where north is
drawn, and a walk seen in a mirror has every sign turned round.
"""

from __future__ import annotations

import numpy as np
import pytest
from diagnosis.made_evidence import explain
from relations.audited import audit_on_grid, made, mirrored, shifted, turned

from audit.diagnosis.gather_evidence import gather_evidence
from audit.settings import DiagnosisSettings

WALKS = [(7, "ordinary"), (21, "trained"), (5, "skilled-person"), (12, "novice"), (3, "noisy")]
WITHIN_DEG = 0.05
WITHIN_M = 0.2


OF_DIGITS = {
    "azimuth-digits",
    "bezel-wrong-way",
    "digit-wrong",
    "digits-transposed",
    "easting-northing-swapped",
    "mils-as-degrees",
    "neighbour-azimuth",
    "wrong-grid-line",
    "wrong-mil-circle",
    "wrong-plotting-scale",
}
"""Mistakes whose size hangs on where grid north is."""


@pytest.fixture(scope="module", params=WALKS, ids=lambda walk: f"{walk[1]}-{walk[0]}")
def here(request):
    return audit_on_grid(*made(*request.param))


def assert_same(here, there, *, sign: float = 1.0, by_s: float = 0.0) -> None:
    """The same answer but for the sign of turns and the reading of the clock."""
    interval_s = here.clean.median_interval_s
    assert [leg.status for leg in there.match.legs] == [leg.status for leg in here.match.legs]
    assert there.match.noise_m == pytest.approx(here.match.noise_m, abs=0.01)
    walked = 0
    for one, other in zip(here.match.legs, there.match.legs, strict=True):
        if one.start_s is None:
            continue
        assert other.start_s - by_s == pytest.approx(one.start_s, abs=interval_s)
        assert other.claim_s - by_s == pytest.approx(one.claim_s, abs=interval_s)
        assert other.confidence == pytest.approx(one.confidence, abs=0.02)
    for one, other in zip(here.measures.legs, there.measures.legs, strict=True):
        mine, its = one.measures, other.measures
        if mine is None:
            continue
        walked += 1
        error = sign * its.azimuth_error_deg
        if abs(mine.azimuth_error_deg) > 179.0:
            error = abs(error) * np.sign(mine.azimuth_error_deg)
        assert error == pytest.approx(mine.azimuth_error_deg, abs=WITHIN_DEG)
        assert its.heading.sd_deg == pytest.approx(mine.heading.sd_deg, abs=WITHIN_DEG)
        for name in ("straight_m", "path_m", "miss_m", "miss_along_m", "nearest_m"):
            assert getattr(its, name) == pytest.approx(getattr(mine, name), abs=WITHIN_M), name
        assert sign * its.miss_across_m == pytest.approx(mine.miss_across_m, abs=WITHIN_M)
        for line in ("cross_track", "own_cross_track"):
            curve, its_curve = getattr(mine, line), getattr(its, line)
            assert sign * its_curve.end_m == pytest.approx(curve.end_m, abs=WITHIN_M)
            assert its_curve.max_abs_m == pytest.approx(curve.max_abs_m, abs=WITHIN_M)
            assert its_curve.rms_m == pytest.approx(curve.rms_m, abs=WITHIN_M)
        assert its.found == mine.found
        assert its.duration_s == pytest.approx(mine.duration_s, abs=2 * interval_s)
    assert walked > 0
    spans = [(span.kind, span.leg) for span in here.measures.spans]
    assert [(span.kind, span.leg) for span in there.measures.spans] == spans


def assert_same_causes(here, there) -> None:
    settings = DiagnosisSettings()
    one = explain(gather_evidence(here.measures.legs, here.card), settings)
    other = explain(gather_evidence(there.measures.legs, there.card), settings)
    said = {
        leg: [{of.cause: of.probability for of in found} for found in (findings, other[leg])]
        for leg, findings in one.items()
    }
    # Digits of azimuths and references know no turning: what they take, others lose. What all
    # legs share is weighed on all of them, so that each leg's loss is in part every other's; and
    # from where a wrong digit put its end, the next leg may have been measured.
    taken = {
        leg: sum(max(mine.get(cause, 0.0), its.get(cause, 0.0)) for cause in OF_DIGITS)
        for leg, (mine, its) in said.items()
    }
    by_all = sum(taken.values()) / len(taken)
    for leg, (mine, its) in said.items():
        near = 0.05 + taken[leg] + taken.get(leg - 1, 0.0) + by_all
        for cause in (mine.keys() | its.keys()) - OF_DIGITS:
            assert its.get(cause, 0.0) == pytest.approx(mine.get(cause, 0.0), abs=near)


@pytest.mark.parametrize("degrees", [37.0, 90.0, 180.0, 261.5])
def test_turned_about_the_grid(here, degrees) -> None:
    there = audit_on_grid(*turned(here.clean, here.card, degrees))
    assert_same(here, there)
    assert_same_causes(here, there)


def test_seen_in_a_mirror(here) -> None:
    there = audit_on_grid(*mirrored(here.clean, here.card))
    assert_same(here, there, sign=-1.0)
    assert_same_causes(here, there)


def test_moved_on_the_grid(here) -> None:
    assert_same(here, audit_on_grid(*shifted(here.clean, here.card, (12_345.6, -6_543.2))))


def test_recorded_at_another_time(here) -> None:
    by_s = 86_400.0 * 400 + 3_723.0
    there = audit_on_grid(*shifted(here.clean, here.card, (0.0, 0.0), by_s))
    assert_same(here, there, by_s=by_s)


def test_miss_turns_with_the_grid(here) -> None:
    """What is a direction on the map turns with the map."""
    there = audit_on_grid(*turned(here.clean, here.card, 90.0))
    for one, other in zip(here.measures.legs, there.measures.legs, strict=True):
        if one.measures is None:
            continue
        east, north = one.measures.ledger.total
        assert other.measures.ledger.total == pytest.approx((north, -east), abs=WITHIN_M)
        turn = (other.measures.heading.azimuth.degrees - one.measures.heading.azimuth.degrees) % 360
        assert turn == pytest.approx(90.0, abs=WITHIN_DEG)
