"""The errors of the ends that a leg would have had are those that a simulation shows."""

from __future__ import annotations

import math
from types import SimpleNamespace

import numpy as np
import pytest

from audit.azimuths import GridAzimuth
from audit.coaching.what_if import what_if
from audit.units import direction_degrees, unit_vector

PLANNED_M, PLACE_M, START_MOMENT_M, CLAIM_MOMENT_M = 600.0, (4.0, 6.0), 3.0, 8.0
DRAWS = 1500


def measured(start, claim, own_sd_deg):
    """Give card and measures of a leg that was planned 600 m north, with these ends."""
    way = claim - start
    card = SimpleNamespace(
        azimuth=GridAzimuth(0.0),
        distance_m=PLANNED_M,
        line=np.array([[0.0, 0.0], [0.0, PLANNED_M]]),
        end=SimpleNamespace(half_square_m=0.0),
    )
    ends = [
        SimpleNamespace(place_sd_m=place, along_sd_m=along)
        for place, along in zip(PLACE_M, (START_MOMENT_M, CLAIM_MOMENT_M), strict=True)
    ]
    along = START_MOMENT_M**2 + CLAIM_MOMENT_M**2
    measures = SimpleNamespace(
        under_way=False,
        heading=SimpleNamespace(
            azimuth=GridAzimuth(direction_degrees(float(way[0]), float(way[1]))),
            own_sd_deg=own_sd_deg,
        ),
        start=SimpleNamespace(east_m=start[0], north_m=start[1]),
        claim=SimpleNamespace(east_m=claim[0], north_m=claim[1]),
        ledger=SimpleNamespace(total=tuple(claim - np.array([0.0, PLANNED_M]))),
        miss_sd_m=math.hypot(PLACE_M[1], CLAIM_MOMENT_M / math.sqrt(2.0)),
        straight_sd_m=math.sqrt(PLACE_M[0] ** 2 + PLACE_M[1] ** 2 + along),
        details=SimpleNamespace(start_error=ends[0], claim_error=ends[1]),
    )
    return card, measures


@pytest.mark.parametrize("ratio", [0.7, 1.0, 1.3])
@pytest.mark.parametrize("turn_deg", [0.0, 20.0, 178.0])
def test_the_claims_error_is_counted_once(turn_deg, ratio):
    """Bug: what of the claim's error goes with the turn or the length was counted twice."""
    rng = np.random.default_rng(1_100_205)
    walked = unit_vector(turn_deg)
    right = np.zeros(2), ratio * PLANNED_M * walked
    own_sd_deg = math.degrees(math.hypot(*PLACE_M) / (ratio * PLANNED_M))
    wanted = {
        "planned_azimuth": np.array([0.0, (ratio - 1.0) * PLANNED_M]),
        "planned_distance": PLANNED_M * (walked - unit_vector(0.0)),
    }
    squares, told = dict.fromkeys(wanted, 0.0), dict.fromkeys(wanted, 0.0)
    for _ in range(DRAWS):
        start, claim = (
            place + rng.normal(0.0, sd_m, 2) + rng.normal(0.0, moment_m) * walked
            for place, sd_m, moment_m in zip(
                right, PLACE_M, (START_MOMENT_M, CLAIM_MOMENT_M), strict=True
            )
        )
        found = what_if(*measured(start, claim, own_sd_deg))
        assert found is not None
        for name, end in wanted.items():
            other = getattr(found, name)
            off = np.array([other.east_m, other.north_m]) - end
            squares[name] += float(off @ off) / (2.0 * DRAWS)
            told[name] += other.sd_m / DRAWS
    for name, square in squares.items():
        assert math.sqrt(square) == pytest.approx(told[name], rel=0.05), name
