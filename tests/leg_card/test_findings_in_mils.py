"""Azimuths that a plan gives in mils: told as it has them, and the slips that only mils have."""

from __future__ import annotations

import pytest
from leg_card.plans import A, B, leg, plan

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.leg_card import CardFinding, work_out_card
from audit.units import degrees_from_mils


def mil_leg(grid_mil: float, magnetic_mil: float) -> CardFinding:
    """Give what is found of a leg of 60 degrees, 1067 mil, where the plan gives mils."""
    # G is 5 degrees west: the magnetic azimuth is 65 degrees, 1156 mil.
    stated = leg(
        grid_azimuth=GridAzimuth(degrees_from_mils(grid_mil)),
        magnetic_azimuth=MagneticAzimuth(degrees_from_mils(magnetic_mil)),
        in_mils=("grid", "magnetic"),
    )
    card = work_out_card(plan((A, B), (stated,), grid_magnetic_angle_deg=-5.0))
    (found,) = [one for one in card.findings if one.what == "magnetic_azimuth_deg"]
    return found


def test_an_azimuth_in_mils_is_told_in_mils() -> None:
    """Bug: 1067 mil in the magnetic field was told as 060.0, a number that is not on the card."""
    found = mil_leg(1067.0, 1067.0)
    assert "a magnetic azimuth of 1067 mil (060.0); grid 1067 mil (060.0) with" in found.message
    assert "gives 1156 mil (065.0)" in found.message
    assert found.slips == ("gm-angle-omitted",)


@pytest.mark.parametrize(
    ("magnetic_mil", "slip", "words"),
    [
        (65.0, "mils-as-degrees", "degrees written as mils (65 degrees are 1156 mil)"),
        (1083.0, "wrong-mil-circle", "mils of 6000 to the circle (1083 for 1155)"),
    ],
)
def test_the_other_scales_of_an_azimuth_in_mils_are_tried(magnetic_mil, slip, words) -> None:
    """Bug: degrees in a field of mils, and mils of another circle, were no known slip."""
    found = mil_leg(1067.0, magnetic_mil)
    assert slip in found.slips
    assert words in found.message
