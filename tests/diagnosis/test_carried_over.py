"""A leg measured from where the one before was plotted wrongly makes no mistake of its own."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from diagnosis.made_evidence import legs

from audit.diagnosis.accounts import accounts_of
from audit.diagnosis.cause import Expected
from audit.diagnosis.explain import explain_walk
from audit.diagnosis.leg_densities import length_density
from audit.diagnosis.ordinary import ordinary_paces
from audit.settings import DiagnosisSettings
from audit.units import direction_degrees, turn_degrees, unit_vector

S = DiagnosisSettings()
_LEGS_M = ((600.0, 40.0), (650.0, 75.0), (520.0, 130.0), (700.0, 200.0), (450.0, 290.0))
"""Planned lengths and azimuths; the second leg's point is plotted wrongly."""


def walked(shift_m: tuple[float, float], *, then: tuple[float, float] | None = None):
    """Give a walk whose second leg was made for a place so far off its point.

    ``then`` is what was added to the way of the leg after; None: it was measured from there.
    """
    walk, ends = [], {1: shift_m, 2: then or (-shift_m[0], -shift_m[1])}
    for leg, (length_m, azimuth_deg) in zip(legs(*(0.0,) * 5), _LEGS_M, strict=True):
        way = length_m * unit_vector(azimuth_deg) + np.array(ends.get(leg.leg, (0.0, 0.0)))
        turn = turn_degrees(azimuth_deg, direction_degrees(float(way[0]), float(way[1])))
        went_m = float(np.hypot(*way))
        walk.append(
            replace(
                leg,
                planned_deg=azimuth_deg,
                length_m=length_m,
                turn_deg=turn + 0.8 * (-1.0) ** leg.leg,
                log_ratio=math.log(went_m / length_m) + 0.01,
                end_m=(500_000.0 + 4125.0, 5_300_000.0 + 6785.0),
                half_square_m=5.0,
                went_on=True,
            )
        )
    off = walk[2].length_m * math.exp(walk[2].log_ratio) * unit_vector(
        walk[2].planned_deg + walk[2].turn_deg
    ) - walk[2].length_m * unit_vector(walk[2].planned_deg)
    walk[1] = replace(walk[1], next_off_m=(float(off[0]), float(off[1])), next_m=520.0)
    return tuple(walk)


@pytest.mark.parametrize("shift_m", [(0.0, -200.0), (200.0, 0.0), (300.0, 0.0)])
def test_a_leg_measured_from_a_wrong_plot_is_not_blamed_for_another(shift_m):
    """Bug: the leg after a wrongly plotted point was told to have a wrong digit of its own."""
    told = explain_walk(walked(shift_m), S)
    assert told.findings[1][0].cause in {"digit-wrong", "digits-transposed"}
    assert told.findings[2][0].cause == "cannot-tell"
    assert told.carried[2].probability > 0.8
    assert str(told.findings[2][0].evidence).startswith("Carried over from the plot")
    assert set(told.carried) == {2}


def test_a_mistake_that_the_plot_before_does_not_make_is_still_named():
    """A back azimuth on the leg after is nobody's plot."""
    way = -2.0 * 520.0 * unit_vector(130.0)
    told = explain_walk(walked((200.0, 0.0), then=(float(way[0]), float(way[1]))), S)
    assert told.findings[2][0].cause == "reciprocal"
    assert not told.carried


def test_a_leg_from_a_right_plot_carries_nothing_over():
    """Where no point was plotted wrongly, no leg is weighed from one."""
    assert not explain_walk(walked((0.0, 0.0), then=(0.0, 0.0)), S).carried


def test_a_hundred_is_a_hundred_metres_of_a_leg_measured_from_elsewhere():
    """Bug: a hundred was so large a share of the planned leg, however far the walker aimed."""
    way = Expected(log_ratio=math.log1p(200.0 / 554.0), in_metres=True)
    leg = replace(legs(0.0)[0], length_m=554.0)
    plain, *_ = accounts_of(leg, S)
    aimed = replace(plain, aimed_log_ratio=math.log(2.0), log_ratio=math.log1p(200.0 / 1108.0))
    paces = ordinary_paces(replace(S, own_pace_sd=0.001))
    best = [
        float(density.max())
        for density in length_density(leg, [aimed, replace(aimed, log_ratio=0.31)], way, paces, S)
    ]
    assert best[0] > 5.0 * best[1]
    as_share = length_density(leg, [aimed], replace(way, in_metres=False), paces, S)
    assert best[0] > 5.0 * float(as_share.max())
