"""A stretch on another bearing counts by how this walker wanders elsewhere, and where he was seen."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagnosis.made_evidence import legs

from audit.diagnosis.explain import explain_walk
from audit.diagnosis.line_shape import LineShape, OtherBearing
from audit.diagnosis.own_wander import against_own_wander, with_silence
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
SWERVE = OtherBearing(
    turn_deg=14.0, length_m=200.0, right_m=50.0, nats=10.6, even_nats=0.1, spread_deg=4.4,
    sought_nats=3.2,
)  # fmt: skip
"""Of a leg of 394 m: its rest held to 4.4 degrees, by chance or by care."""


def walk(wander_deg: float):
    """Four legs held in the azimuth with so much wander, and one with the swerve."""
    plain = LineShape(bend_deg=0.0, bend_sd_deg=8.0, wander_deg=wander_deg)
    swerved = LineShape(bend_deg=2.0, bend_sd_deg=8.0, wander_deg=11.0, chord_m=390.0, other=SWERVE)
    found = legs(0.5, 1.8, 6.5, -1.2, 0.7, sd_deg=0.8)
    return tuple(
        replace(leg, shape=swerved if leg.leg == 2 else plain, length_m=394.0) for leg in found
    )


def test_who_wanders_so_on_every_leg_follows_nothing():
    """Bug: slow wandering by 6.5 degrees was named "led along by a feature of the ground"."""
    top = explain_walk(against_own_wander(walk(6.5)), S).findings[2][0]
    assert top.cause == "within-skill"


def test_who_holds_his_other_lines_is_led_aside_where_one_swerves():
    """The same stretch of a walker who wanders by 4 degrees stands out as before."""
    held = against_own_wander(walk(4.0))
    assert held == walk(4.0)
    top = explain_walk(held, S).findings[2][0]
    assert (top.cause, top.probability > 0.8) == ("handrail", True)


def test_one_other_leg_does_not_say_how_a_walker_wanders():
    two = walk(9.0)[2:4]
    assert against_own_wander(two) == two


def test_a_stretch_counts_less_the_more_of_its_leg_lies_in_a_silence():
    """Bug: a leg of which an eighth was not recorded was named as led along by the ground."""
    shape = LineShape(bend_deg=0.0, bend_sd_deg=8.0, other=SWERVE)
    half = with_silence(shape, 0.5).other
    assert half is not None
    assert half.nats == pytest.approx(5.3)
    assert with_silence(shape, 0.0) == shape
