"""The interval of a walked azimuth that is told: of the portion, not of the doubt about it."""

from __future__ import annotations

import pytest

from audit.azimuths import GridAzimuth
from audit.measurement.places_and_headings import Heading


def heading(low_deg, high_deg, sd_deg, own_sd_deg=None, azimuth_deg=5.0):
    return Heading(
        azimuth=GridAzimuth(azimuth_deg),
        low_deg=low_deg,
        high_deg=high_deg,
        sd_deg=sd_deg,
        as_matched_sd_deg=own_sd_deg,
    )


def test_another_portion_does_not_widen_what_is_told_of_this_one() -> None:
    """Bug: a straight leg of 206 m had walked "5° ±41°", for the other reading led elsewhere."""
    doubted = heading(284.0, 6.0, 25.0, own_sd_deg=0.5)
    assert doubted.widened
    assert doubted.as_told_95_deg == pytest.approx((4.02, 5.98))
    assert doubted.told_half_95_deg == pytest.approx(0.98)


def test_without_such_a_doubt_the_interval_is_told_as_it_is() -> None:
    plain = heading(358.0, 11.0, 3.4, own_sd_deg=3.2)
    assert not plain.widened
    assert plain.as_told_95_deg == (358.0, 11.0)
    assert plain.told_half_95_deg == 6.5


@pytest.mark.parametrize(
    ("azimuth_deg", "may_be"),
    [(358.5, True), (0.0, True), (10.9, True), (11.5, False), (357.0, False)],
)
def test_as_planned_is_what_lies_in_the_interval(azimuth_deg, may_be) -> None:
    """Bug: half the width was taken to either side of a walked azimuth off its middle."""
    assert heading(358.0, 11.0, 3.4).may_be(azimuth_deg) is may_be


def test_a_leg_too_short_for_its_noise_may_be_any_azimuth() -> None:
    anywhere = heading(0.0, 360.0 - 1e-9, 104.0)
    assert all(anywhere.may_be(float(azimuth)) for azimuth in range(360))
