"""Errors written into the plan of a real walk come back out of the audit.

hike-handheld-long is open data (described beside it): 24.5 km on foot, a fix about
every 13 s. Points are its own turns; the walk is as it was, so the plan is what errs.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from real.own_turns import own_turns

import audit
from audit.azimuths import GridAzimuth
from audit.leg_card import work_out_card
from audit.units import turn_degrees, wrap_degrees

LEGS_AROUND = 3
TURN_DEG = 8.0
RATIO = 1.2


@pytest.fixture(scope="module")
def hike(shared_tracks):
    track = audit.read_track(shared_tracks / "hike-handheld-long.gpx")
    turns = own_turns(track, 30.0)
    return track, turns, work_out_card(turns.plan)


def plain_legs(hike) -> list[int]:
    """Legs of 250 m and more that end in a turn nobody can overlook."""
    _, _, card = hike
    azimuth = np.array([leg.azimuth.degrees for leg in card.legs])
    bend = np.abs(turn_degrees(azimuth[:-1], azimuth[1:]))
    return [
        n
        for n in range(1, len(card.legs) - 1)
        if card.legs[n].distance_m >= 250.0 and bend[n] >= 30.0
    ]


def with_errors(hike, chosen: int, *, turn_deg: float = 0.0, ratio: float = 1.0):
    """Audit the legs around one whose card has an error planted; give its measures."""
    track, turns, card = hike
    first = max(0, chosen - LEGS_AROUND)
    plan = turns.between(first, min(chosen + LEGS_AROUND + 1, len(card.legs)))
    true = card.legs[chosen]
    legs = list(plan.legs)
    legs[chosen - first] = replace(
        legs[chosen - first],
        grid_azimuth=GridAzimuth(wrap_degrees(true.azimuth.degrees + turn_deg)),
        distance_m=true.distance_m * ratio,
    )
    found = audit.debrief(replace(plan, legs=tuple(legs)), track)
    return found.legs[chosen - first].audit.measures


@pytest.fixture(scope="module")
def trials(hike):
    """Each plain leg: as it is, with its azimuth turned, and with its distance changed."""
    rng = np.random.default_rng(20)
    rows = []
    for chosen in rng.permutation(plain_legs(hike))[:8].tolist():
        turn, ratio = rng.choice([-TURN_DEG, TURN_DEG]), rng.choice([RATIO, 1.0 / RATIO])
        as_it_is = with_errors(hike, chosen)
        turned = with_errors(hike, chosen, turn_deg=float(turn))
        longer = with_errors(hike, chosen, ratio=float(ratio))
        rows.append((chosen, as_it_is, turn, turned, ratio, longer))
    assert len(rows) >= 8
    return rows


def test_azimuth_error_in_the_plan_is_given_back(trials) -> None:
    within = []
    for chosen, as_it_is, turn, turned, _, _ in trials:
        off = None
        if as_it_is is not None and turned is not None:
            off = turned.azimuth_error_deg + turn - as_it_is.azimuth_error_deg
        print(chosen, off)
        within.append(off is not None and abs(off) <= 2.0)
    assert np.mean(within) >= 0.9


def test_distance_error_in_the_plan_is_given_back(trials) -> None:
    within = []
    for chosen, as_it_is, _, _, ratio, longer in trials:
        off = None
        if as_it_is is not None and longer is not None:
            off = longer.distance_ratio * ratio / as_it_is.distance_ratio - 1.0
        print(chosen, ratio, off)
        within.append(off is not None and abs(off) <= 0.03)
    # A distance a fifth off moves the ends of one leg in eight a little along a winding trail.
    assert np.mean(within) >= 0.85
