"""Slips among the digits of a latitude and longitude, worked out by hand."""

from __future__ import annotations

import pytest

from audit.leg_card.written_degrees import written_degrees
from audit.positions import Position


def slips(given: str, latitude_deg: float, longitude_deg: float):
    position = Position(given=given, latitude_deg=latitude_deg, longitude_deg=longitude_deg)
    written = written_degrees(position)
    assert written is not None
    return {
        (round(slip.latitude_deg, 6), round(slip.longitude_deg, 6)): slip
        for slip in written.slips()
    }


def test_two_decimals_swapped() -> None:
    found = slips("36.51234, -84.23000", 36.51234, -84.23)
    slip = found[36.52134, -84.23]
    assert (slip.name, slip.text) == ("digits-transposed", "36.52134, -84.23000")


def test_one_digit_wrong() -> None:
    slip = slips("36.51234, -84.23000", 36.51234, -84.23)[36.51234, -84.26]
    assert (slip.name, slip.rank) == ("digit-wrong", 1)
    assert "(3 for 6)" in slip.what


def test_the_wrong_side_of_greenwich() -> None:
    assert slips("51.2, 1.9", 51.2, 1.9)[51.2, -1.9].name == "wrong-hemisphere"


def test_minutes_and_seconds_stay_below_sixty() -> None:
    # 36° 30' 15" N is 36.504167; with the tens and units of its minutes swapped 36° 03' 15".
    found = slips("36°30'15\"N 84°13'48\"W", 36 + 30 / 60 + 15 / 3600, -(84 + 13 / 60 + 48 / 3600))
    assert found[round(36 + 3 / 60 + 15 / 3600, 6), -84.23].name == "digits-transposed"
    assert all(abs(latitude) <= 90.0 for latitude, _ in found)
    # 48" with its digits swapped would be 84": no seconds.
    assert not any('84"W' in slip.text for slip in found.values())


@pytest.mark.parametrize("given", ["16S GF 4182 4279", "441820 4142790", "the old gate", ""])
def test_what_is_no_pair_of_degrees(given) -> None:
    assert written_degrees(Position(given=given, latitude_deg=37.4, longitude_deg=-84.2)) is None
