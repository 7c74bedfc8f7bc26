"""A plan on the grid of another map: same places, same ways, other numbers."""

from __future__ import annotations

import numpy as np
import pyproj
import pytest
from leg_card.plans import A, B, grid_point, leg, mgrs_point, plan

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.errors import InputRefusedError
from audit.leg_card.check_plan import check_plan
from audit.leg_card.onto_grid import plan_onto_grid
from audit.leg_card.plan_differences import plan_differences

C = grid_point("C", 701_500.0, 3_580_200.0)
STATED = plan(
    (A, B, C),
    (
        leg("1", "A", "B", grid_azimuth=GridAzimuth(60.0), distance_m=1000.0, paces=650.0),
        leg("2", "B", "C", magnetic_azimuth=MagneticAzimuth(122.0)),
        leg("3", "C", "end of leg 3", true_azimuth=TrueAzimuth(200.0), distance_m=2400.0),
        leg("4", "end of leg 3", "end of leg 4", grid_azimuth=GridAzimuth(10.0), paces=900.0),
    ),
    grid_magnetic_angle_deg=-6.2,
    paces_per_100m=65.0,
    safety_azimuth=GridAzimuth(180.0),
)
OTHER = "EPSG:32617"


def places(of):
    card = check_plan(of).card
    return {point.name: (point.longitude_deg, point.latitude_deg) for point in card.points}


def test_every_place_stays_where_it_is_dead_reckoned_ends_too():
    geod = pyproj.Geod(ellps="WGS84")
    before, after = places(STATED), places(plan_onto_grid(STATED, OTHER))
    assert before.keys() == after.keys()
    for name, (longitude, latitude) in before.items():
        _, _, apart_m = geod.inv(longitude, latitude, *after[name])
        assert apart_m < 0.001


def test_the_numbers_are_those_that_proj_gives_on_the_other_grid():
    moved = plan_onto_grid(STATED, OTHER)
    to_other = pyproj.Transformer.from_crs("EPSG:32616", OTHER, always_xy=True)
    east, north = to_other.transform([700_000.0, 700_866.0254], [3_580_000.0, 3_580_500.0])
    way = east[1] - east[0], north[1] - north[0]
    wanted_deg = np.degrees(np.arctan2(*way)) % 360.0
    assert moved.legs[0].grid_azimuth.degrees == pytest.approx(wanted_deg, abs=1e-4)
    assert moved.legs[0].distance_m == pytest.approx(np.hypot(*way), abs=0.01)
    # D = G + C on either grid (TC 3-25.26, declination diagram): the declination is one.
    first = A.position.longitude_deg, A.position.latitude_deg
    convergences = [
        pyproj.Proj(code).get_factors(*first).meridian_convergence for code in ("EPSG:32616", OTHER)
    ]
    declinations = [
        each.grid_magnetic_angle_deg + convergence
        for each, convergence in zip((STATED, moved), convergences, strict=True)
    ]
    assert declinations[0] == pytest.approx(declinations[1], abs=1e-6)
    assert moved.safety_azimuth.degrees == pytest.approx(
        180.0 + convergences[0] - convergences[1], abs=1e-6
    )


def test_what_the_compass_is_set_to_stays():
    before = check_plan(STATED).card
    after = check_plan(plan_onto_grid(STATED, OTHER)).card
    for one, other in zip(before.legs, after.legs, strict=True):
        # The card has one angle for the whole course, convergence changes along it.
        assert abs(one.magnetic.turn_to(other.magnetic)) < 0.05
        assert one.paces == pytest.approx(other.paces, rel=0.002)
    assert plan_onto_grid(STATED, OTHER).legs[1].magnetic_azimuth == MagneticAzimuth(122.0)


def test_a_slip_stays_a_slip():
    slipped = plan((A, B), (leg(grid_azimuth=GridAzimuth(70.0), distance_m=1000.0),))
    for each in (slipped, plan_onto_grid(slipped, OTHER)):
        found = [finding for finding in check_plan(each).findings if finding.leg == "1"]
        assert [finding.what for finding in found] == ["grid_azimuth_deg"]
        assert found[0].given - found[0].computed == pytest.approx(10.0, abs=0.01)


def test_there_and_back_is_the_same_plan():
    back = plan_onto_grid(plan_onto_grid(STATED, OTHER), "EPSG:32616")
    # What was put down so that dead reckoning ends at the same place is all that came to it,
    # and how finely the numbers were written.
    differs = {one for one in plan_differences(STATED, back) if "half_step" not in one}
    assert differs <= {"leg 3: grid_azimuth", "leg 4: distance_m"}
    assert back.legs[0].grid_azimuth.degrees == pytest.approx(60.0, abs=1e-6)
    assert back.legs[3].distance_m == pytest.approx(900.0 / 0.65, abs=0.001)


def test_a_leg_along_via_positions_is_turned_and_stretched_as_the_grids_are_at_its_start():
    via = (grid_point("v", 700_300.0, 3_580_600.0).position,)
    winding = plan((A, B), (leg(via=via, distance_m=1240.0, grid_azimuth=GridAzimuth(26.6)),))
    moved = plan_onto_grid(winding, OTHER).legs[0]
    factors = [
        pyproj.Proj(code).get_factors(A.position.longitude_deg, A.position.latitude_deg)
        for code in ("EPSG:32616", OTHER)
    ]
    longer = factors[1].meridional_scale / factors[0].meridional_scale
    turned = factors[0].meridian_convergence - factors[1].meridian_convergence
    assert moved.distance_m == pytest.approx(1240.0 * longer, abs=0.001)
    assert moved.grid_azimuth.degrees == pytest.approx(26.6 + turned, abs=1e-6)
    assert moved.via == via


@pytest.mark.parametrize(
    ("code", "match"),
    [("EPSG:27700", "does not reach the point"), ("EPSG:4326", "is no grid for a plan"),
     ("moor", "is no grid for a plan"), ("EPSG:3857", "does not reach the point")],
)  # fmt: skip
def test_a_grid_that_does_not_suit_the_course_is_refused(code, match):
    with pytest.raises(InputRefusedError, match=match):
        plan_onto_grid(STATED, code)


def rounded_course():
    """Give a course near the edge of its zone, with azimuths to half a degree and whole 5 m."""
    references = ("4068 3291", "4000 3339", "4016 3378", "4018 3315", "4028 3257")
    points = [mgrs_point(f"P{n}", f"11U QR {at}") for n, at in enumerate(references)]
    stated = ((305.0, 294.5, 830.0), (22.5, 12.0, 420.0), (178.0, 167.5, 630.0),
              (170.0, 159.5, 590.0))  # fmt: skip
    legs = [
        leg(
            str(n),
            f"P{n - 1}",
            f"P{n}",
            grid_azimuth=GridAzimuth(grid_deg),
            magnetic_azimuth=MagneticAzimuth(magnetic_deg),
            distance_m=distance_m,
            paces=round(0.62 * distance_m),
        )
        for n, (grid_deg, magnetic_deg, distance_m) in enumerate(stated, start=1)
    ]
    return plan(
        tuple(points),
        tuple(legs),
        grid="EPSG:32611",
        grid_magnetic_angle_deg=10.7,
        paces_per_100m=62.0,
    )


def test_a_right_plan_stays_right_since_its_rounding_goes_along():
    """Bug: converted azimuths had seven decimals, and were then held to the last of them."""
    right = rounded_course()
    assert not check_plan(right).findings
    moved = plan_onto_grid(right, "EPSG:32612")
    assert not check_plan(moved).findings
    assert moved.legs[0].grid_azimuth_half_step_deg == pytest.approx(0.5, abs=0.001)
    assert moved.legs[1].grid_azimuth_half_step_deg == pytest.approx(0.25, abs=0.02)
    assert [one.distance_half_step_m for one in moved.legs] == [5.0] * 4
    again = plan_onto_grid(moved, "EPSG:32611")
    assert again.legs[0].distance_half_step_m == 5.0
    assert not check_plan(again).findings
