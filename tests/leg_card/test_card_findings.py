"""A plan that disagrees with itself: what is found, what is let pass, and which slip it fits.

The slips and their sizes are those of the trade: with G from grid to magnetic north and
C from true to grid north, leaving G out turns a leg by +G, the wrong way by +2G, twice by
-G, and declination for G by -C (plain algebra on magnetic = grid - G, D = G + C).
"""

from __future__ import annotations

import dataclasses

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from leg_card.plans import A, B, grid_point, leg, mgrs_point, place, plan

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.leg_card import CardFinding, work_out_card
from audit.leg_card.check_plan import check_plan
from audit.plan import PlannedLeg
from audit.reports.check_report import render_check
from audit.settings import CardSettings, Settings
from audit.units import degrees_from_mils, wrap_degrees

G_WEST = -7.0


def findings(stated: PlannedLeg, **values: object) -> tuple[CardFinding, ...]:
    settled = {"grid_magnetic_angle_deg": G_WEST, "paces_per_100m": 65.0} | values
    return tuple(
        found for found in work_out_card(plan((A, B), (stated,), **settled)).findings if found.leg
    )


def only(stated: PlannedLeg, **values: object) -> CardFinding:
    (found,) = findings(stated, **values)
    assert found.leg == "1"
    assert found.message.startswith("Leg 1: ")
    return found


@pytest.mark.parametrize(
    ("given_deg", "words"),
    [
        (240.0, "the back azimuth"),
        (67.0, "the magnetic azimuth written for the grid one"),
        (53.0, "applied, and the wrong way"),
        (150.0, "a quarter turn"),
        (330.0, "a quarter turn"),
    ],
)
def test_a_grid_azimuth_is_held_against_the_points(given_deg: float, words: str) -> None:
    found = only(leg(grid_azimuth=GridAzimuth(given_deg)))
    assert (found.what, found.given) == ("grid_azimuth_deg", given_deg)
    assert found.computed == pytest.approx(60.0, abs=1e-6)
    assert words in found.message


@pytest.mark.parametrize(
    ("given_deg", "words"),
    [
        (60.0, "the grid-magnetic angle left out"),
        (53.0, "the grid-magnetic angle applied the wrong way"),
        (74.0, "the grid-magnetic angle applied twice"),
        (247.0, "the back azimuth"),
        (240.0, "the back azimuth with the grid-magnetic angle left out"),
    ],
)
@pytest.mark.parametrize("with_grid", [True, False])
def test_a_magnetic_azimuth_is_held_against_the_grid(
    given_deg: float, words: str, with_grid: bool
) -> None:
    grid = GridAzimuth(60.0) if with_grid else None
    found = only(leg(grid_azimuth=grid, magnetic_azimuth=MagneticAzimuth(given_deg)))
    assert (found.what, found.given) == ("magnetic_azimuth_deg", given_deg)
    assert found.computed == pytest.approx(67.0, abs=1e-6)
    assert f"It fits {words}" in found.message


@pytest.mark.parametrize(
    ("grid_deg", "slips"),
    # Points give 060.0, and magnetic 067.0 is right by the angle of 7 west.
    [(70.0, ("azimuth-digits",)), (53.0, None), (58.0, None), (90.0, None)],
)
def test_a_grid_azimuth_that_is_wrong_alone_is_found_alone(grid_deg, slips) -> None:
    """Bug: the right magnetic azimuth was accused too, or in place of the wrong grid azimuth."""
    found = only(
        leg(grid_azimuth=GridAzimuth(grid_deg), magnetic_azimuth=MagneticAzimuth(67.0)),
    )
    assert (found.what, found.given) == ("grid_azimuth_deg", grid_deg)
    assert found.computed == pytest.approx(60.0, abs=1e-6)
    assert found.message.endswith("Its magnetic azimuth, 067.0, agrees with them.")
    assert slips is None or found.slips == slips


def test_a_true_azimuth_that_agrees_with_the_points_shows_the_grid_azimuth_to_be_wrong() -> None:
    card = work_out_card(plan((A, B), grid_magnetic_angle_deg=G_WEST))
    right = TrueAzimuth(round(60.0 + card.angles.convergence_deg, 1))
    found = only(leg(grid_azimuth=GridAzimuth(70.0), true_azimuth=right))
    assert found.what == "grid_azimuth_deg"


def test_no_slip_is_named_of_a_grid_azimuth_that_the_points_would_let_pass() -> None:
    coarse = (mgrs_point("A", "16S GF 4832 5828"), mgrs_point("B", "16S GF 4865 5865"))
    two = (
        leg(grid_azimuth=GridAzimuth(40.0), magnetic_azimuth=MagneticAzimuth(49.0)),
        leg("2", "B", "C", grid_azimuth=GridAzimuth(40.7)),
    )
    third = mgrs_point("C", "16S GF 4908 5915")
    (found,) = work_out_card(plan((*coarse, third), two, grid_magnetic_angle_deg=-7.5)).findings
    assert (found.what, found.slips) == ("grid_azimuth_deg", ())


def test_no_digit_is_blamed_where_the_points_let_both_azimuths_pass() -> None:
    # By the points 041.7 and 049.2; both are off them by less than their squares allow.
    two = (mgrs_point("A", "16S GF 4832 5828"), mgrs_point("B", "16S GF 4865 5865"))
    stated = leg(grid_azimuth=GridAzimuth(40.8), magnetic_azimuth=MagneticAzimuth(50.3))
    (found,) = work_out_card(plan(two, (stated,), grid_magnetic_angle_deg=-7.5)).findings
    assert (found.what, found.slips) == ("magnetic_azimuth_deg", ())


def test_the_magnetic_azimuth_is_wrong_where_the_grid_azimuth_agrees_with_the_points() -> None:
    found = only(leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=MagneticAzimuth(60.0)))
    assert (found.what, found.slips) == ("magnetic_azimuth_deg", ("gm-angle-omitted",))


def test_declination_for_the_grid_magnetic_angle_is_named() -> None:
    # C is 1.1 east here; azimuths to a tenth, so that it shows: -C.
    card = work_out_card(plan((A, B), grid_magnetic_angle_deg=G_WEST))
    wrong_deg = round(67.0 - card.angles.convergence_deg, 1)
    found = only(leg(grid_azimuth=GridAzimuth(60.01), magnetic_azimuth=MagneticAzimuth(wrong_deg)))
    assert "It fits the declination used for the grid-magnetic angle." in found.message


@pytest.mark.parametrize(
    ("times", "words"), [(0.0, "the convergence left out"), (-1.0, "applied the wrong way")]
)
def test_a_true_azimuth_is_held_against_the_grid(times: float, words: str) -> None:
    card = work_out_card(plan((A, B), grid_magnetic_angle_deg=G_WEST))
    given_deg = round(60.01 + times * card.angles.convergence_deg, 2)
    found = only(leg(grid_azimuth=GridAzimuth(60.01), true_azimuth=TrueAzimuth(given_deg)))
    assert found.what == "true_azimuth_deg"
    assert words in found.message


def test_an_error_that_no_slip_fits_is_only_stated() -> None:
    found = only(leg(grid_azimuth=GridAzimuth(113.0)))
    assert "It fits" not in found.message
    assert "53.0° away" in found.message


@pytest.mark.parametrize(
    ("given_m", "words"),
    [
        (500.0, "a ruler for maps of twice the scale"),
        (2000.0, "a ruler for maps of half the scale"),
        (900.0, "a hundred metres too little"),
        (1200.0, "2 hundred metres too much"),
    ],
)
def test_a_distance_is_held_against_the_points(given_m: float, words: str) -> None:
    found = only(leg(distance_m=given_m))
    assert (found.what, found.given) == ("distance_m", given_m)
    assert found.computed == pytest.approx(1000.0, abs=0.001)
    assert words in found.message


@pytest.mark.parametrize("given_km", [1.0, 0.99])
def test_kilometres_written_for_metres_are_named(given_km: float) -> None:
    """Bug: a distance of 0.5 was told as "0 m", and the right paces were accused."""
    found = only(leg(distance_m=given_km, paces=650.0))
    assert (found.what, found.slips) == ("distance_m", ("kilometres-for-metres",))
    assert f"the plan gives {given_km:g} m; between its points it is 1000 m" in found.message


def test_the_straight_distance_of_a_leg_along_a_line_is_named() -> None:
    corner = grid_point("corner", 700_866.0254, 3_580_000.0).position
    found = only(leg(distance_m=1000.0, via=(corner,)))
    assert found.computed == pytest.approx(1366.0254, abs=0.001)
    assert "the straight line, not the one through the via positions" in found.message


def test_the_way_to_the_first_via_position_is_named() -> None:
    corner = grid_point("corner", 700_866.0254, 3_580_000.0).position
    found = only(leg(grid_azimuth=GridAzimuth(90.0), via=(corner,)))
    assert "the way to the first via position" in found.message


@pytest.mark.parametrize(
    ("given", "words"), [(1300.0, "single paces"), (325.0, "double paces"), (800.0, "")]
)
def test_paces_are_held_against_the_distance(given: float, words: str) -> None:
    found = only(leg(paces=given))
    assert (found.what, found.given) == ("paces", given)
    assert found.computed == pytest.approx(650.0, abs=0.001)
    assert words in found.message


def test_a_stated_distance_leads_the_paces() -> None:
    assert findings(leg(distance_m=990.0, paces=643.0)) == ()


def test_without_a_rate_paces_stand_unchecked() -> None:
    assert findings(leg(paces=9.0), paces_per_100m=None) == ()


def test_nothing_stated_is_nothing_found() -> None:
    assert findings(leg()) == ()


def test_a_dead_reckoned_leg_is_not_held_against_itself() -> None:
    reckoned = leg(end="C", grid_azimuth=GridAzimuth(95.0), distance_m=700.0, paces=455.0)
    assert findings(reckoned) == ()


def test_its_magnetic_azimuth_still_is_held_against_its_grid_azimuth() -> None:
    reckoned = leg(
        end="C",
        grid_azimuth=GridAzimuth(95.0),
        magnetic_azimuth=MagneticAzimuth(88.0),
        distance_m=700.0,
    )
    assert "the wrong way" in only(reckoned).message


def test_coarse_references_allow_more() -> None:
    # Two 1 km squares side by side: a direction between them is hardly known.
    coarse = (mgrs_point("A", "16S GF 41 42"), mgrs_point("B", "16S GF 44 42"))
    fine = (mgrs_point("A", "16S GF 4150 4250"), mgrs_point("B", "16S GF 4450 4250"))
    stated = leg(grid_azimuth=GridAzimuth(100.0), distance_m=3400.0)
    assert work_out_card(plan(coarse, (stated,))).findings == ()
    found = work_out_card(plan(fine, (stated,))).findings
    assert [one.what for one in found] == ["grid_azimuth_deg", "distance_m"]


def test_numbers_as_coarsely_written_are_let_pass() -> None:
    # Mils to the nearest ten, whole degrees, a distance to the nearest fifty, tens of paces.
    for stated in (
        leg(grid_azimuth=GridAzimuth(degrees_from_mils(1070.0))),
        leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=MagneticAzimuth(67.0)),
        leg(distance_m=1000.0, paces=650.0),
    ):
        assert findings(stated) == ()


@settings(max_examples=60, deadline=None)
@given(
    st.floats(0.0, 359.9), st.floats(150.0, 6000.0), st.floats(-20.0, 20.0), st.integers(50, 130)
)
def test_a_card_filled_in_from_its_own_sums_has_no_findings(
    azimuth_deg: float, distance_m: float, g_deg: float, rate: int
) -> None:
    import math

    end = grid_point(
        "B",
        700_000.0 + distance_m * math.sin(math.radians(azimuth_deg)),
        3_580_000.0 + distance_m * math.cos(math.radians(azimuth_deg)),
    )
    bare = plan((A, end), (leg(),), grid_magnetic_angle_deg=g_deg, paces_per_100m=float(rate))
    (worked,) = work_out_card(bare).legs
    assert worked.paces is not None
    filled = leg(
        grid_azimuth=GridAzimuth(round(worked.azimuth.degrees)),
        magnetic_azimuth=MagneticAzimuth(round(worked.magnetic.degrees)),
        true_azimuth=TrueAzimuth(round(worked.true.degrees)),
        distance_m=round(worked.distance_m),
        paces=round(worked.paces),
    )
    card = work_out_card(dataclasses.replace(bare, legs=(filled,)))
    assert [found for found in card.findings if found.leg] == []


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 359), st.floats(3.0, 40.0), st.booleans(), st.sampled_from([1, 2, -1]))
def test_a_wrong_sum_of_the_angle_is_always_found(
    grid_deg: int, size_deg: float, west: bool, times: int
) -> None:
    g_deg = -round(size_deg) if west else round(size_deg)
    wrong = MagneticAzimuth(wrap_degrees(grid_deg - g_deg + times * g_deg))
    reckoned = leg(
        end="C", grid_azimuth=GridAzimuth(grid_deg), magnetic_azimuth=wrong, distance_m=700.0
    )
    assume(abs(g_deg) > 1)
    found = only(reckoned, grid_magnetic_angle_deg=float(g_deg))
    named = {1: "left out", 2: "the wrong way", -1: "twice"}[times]
    assert named in found.message


# The grid


@pytest.mark.parametrize("code", ["EPSG:32618", "EPSG:32716", "EPSG:27700", "EPSG:32601"])
def test_a_grid_of_elsewhere_is_found(code: str) -> None:
    card = work_out_card(plan((A, B), grid=code))
    found = next(one for one in card.findings if one.what == "grid")
    assert (found.leg, found.given, found.computed) == (None, code, "EPSG:32616")
    assert "° outside the area" in found.message


def test_the_next_zone_is_noted_and_the_right_ones_are_not() -> None:
    # 84.87 W is 0.87 degrees west of zone 17; on NAD83 the same zone 16 has its own code.
    card = work_out_card(plan((A, B), grid="EPSG:32617"))
    assert any("0.9° outside the area of the grid EPSG:32617" in n for n in card.notes)
    for code in ("EPSG:32616", "EPSG:26916"):
        card = work_out_card(plan((A, B), grid=code))
        assert not [n for n in card.notes if "outside" in n]
        assert card.findings == ()


@pytest.mark.parametrize("code", ["EPSG:32632", "EPSG:25832"])
def test_western_norway_belongs_to_zone_32(code: str) -> None:
    bergen = (place("A", 5.32, 60.39), place("B", 5.34, 60.38))
    card = work_out_card(plan(bergen, grid=code))
    assert card.findings == ()
    assert not [n for n in card.notes if "outside" in n]


# The grid-magnetic angle itself


@pytest.mark.parametrize(
    ("given_deg", "words"),
    [
        (5.8, "east written for west"),
        (-5.8 + 8.0, ""),
    ],
)
def test_the_stated_angle_is_held_against_the_model(given_deg: float, words: str) -> None:
    model_deg = work_out_card(plan((A, B))).angles.grid_magnetic_angle_deg
    card = work_out_card(plan((A, B), grid_magnetic_angle_deg=given_deg))
    (found,) = card.findings
    assert (found.leg, found.what, found.given) == (None, "grid_magnetic_angle_deg", given_deg)
    assert found.computed == pytest.approx(model_deg, abs=1e-9)
    assert words in found.message
    # It is used all the same.
    assert card.angles.grid_magnetic_angle_deg == given_deg


def test_an_angle_within_two_errors_and_half_a_degree_passes() -> None:
    bare = work_out_card(plan((A, B)))
    assert bare.declination_sd_deg is not None
    allowed_deg = 2.0 * bare.declination_sd_deg + 0.5
    for share, count in ((0.99, 0), (1.01, 1), (-0.99, 0), (-1.01, 1)):
        given_deg = bare.angles.grid_magnetic_angle_deg + share * allowed_deg
        card = work_out_card(plan((A, B), grid_magnetic_angle_deg=given_deg))
        assert len(card.findings) == count, share


def test_an_old_map_is_thought_of() -> None:
    # Cape Town, 0.23 deg a year west: four degrees east of today is some 17 years ago.
    points = (place("A", 18.42, -33.92), place("B", 18.43, -33.92))
    today = work_out_card(plan(points)).angles.grid_magnetic_angle_deg
    (found,) = work_out_card(plan(points, grid_magnetic_angle_deg=today + 4.0)).findings
    assert "A map about 17 years old could carry it" in found.message


def test_a_computed_angle_leaves_room_for_the_maps_own() -> None:
    # Nobody who took G from a map may be blamed for the model's error: 1.2 deg here.
    bare = work_out_card(plan((A, B)))
    near = MagneticAzimuth(60.0 - bare.angles.grid_magnetic_angle_deg + 1.0)
    stated = leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=near)
    assert findings(stated, grid_magnetic_angle_deg=None) == ()


def test_thresholds_can_be_changed() -> None:
    stated = leg(grid_azimuth=GridAzimuth(63.0))
    loose = Settings(card=CardSettings(azimuth_slack_deg=5.0))
    course = plan((A, B), (stated,), grid_magnetic_angle_deg=-5.8)
    assert len(work_out_card(course).findings) == 1
    assert work_out_card(course, settings=loose).findings == ()


def legs_by(angle_deg: float, course_deg: float):
    """Give the findings of three legs worked with one angle on a course that states another."""
    points = (
        A,
        B,
        grid_point("C", 701_000.0, 3_581_500.0),
        grid_point("D", 699_500.0, 3_581_000.0),
    )
    ways = ((60.0, "A", "B"), (7.63, "B", "C"), (251.57, "C", "D"))
    legs = tuple(
        leg(
            str(number),
            start,
            end,
            grid_azimuth=GridAzimuth(round(grid_deg, 1)) if number != 2 else None,
            magnetic_azimuth=MagneticAzimuth(round(grid_deg - angle_deg, 1)),
        )
        for number, (grid_deg, start, end) in enumerate(ways, start=1)
    )
    return check_plan(plan(points, legs, grid_magnetic_angle_deg=course_deg))


def test_legs_are_not_blamed_for_the_wrong_side_of_the_courses_angle() -> None:
    """Bug: each leg that had been worked with the right angle was a thing of its own."""
    angle_deg = round(work_out_card(plan((A, B))).angles.grid_magnetic_angle_deg, 1)
    checked = legs_by(angle_deg, -angle_deg)
    (one,) = checked.findings
    assert one.slips == ("east-for-west",)
    assert (
        "With the right angle nothing is wrong with the magnetic azimuths of legs 1, 2 and 3."
        in (one.message)
    )
    lines = [line for sums in checked.sums for line in sums.lines]
    stated = [line for line in lines if line.what == "magnetic_azimuth_deg"]
    assert [(line.agrees, line.by_course) for line in stated] == [(False, True)] * 3
    assert "DIFFERS by the course's angle" in render_check(checked)


def test_legs_that_were_worked_with_the_wrong_angle_agree_with_it() -> None:
    angle_deg = round(work_out_card(plan((A, B))).angles.grid_magnetic_angle_deg, 1)
    checked = legs_by(-angle_deg, -angle_deg)
    assert [one.what for one in checked.findings] == ["grid_magnetic_angle_deg"]
    assert "With the right angle" not in checked.findings[0].message


@pytest.mark.parametrize(
    ("given_m", "named"),
    [
        (730.0, "one digit wrong (730 for 760)"),
        (725.0, "one digit wrong (725 for 765)"),
        (670.0, "two digits swapped (670 for 760)"),
        (662.0, "a hundred metres too little"),
        (823.0, ""),
    ],
)
def test_a_slip_of_a_distance_is_named_where_it_leads_to_the_points(given_m, named) -> None:
    """Bug: 730 for a leg of 762 m was told as one wrong digit, for 740."""
    # Hut to Tarn: root of 380 and 660 squared is 761.6 m, references of eight figures.
    points = (mgrs_point("A", "11U NR 1655 3702"), mgrs_point("B", "11U NR 1617 3768"))
    (found,) = work_out_card(plan(points, (leg(distance_m=given_m),))).findings
    assert found.what == "distance_m"
    assert named in found.message
    assert bool(found.slips) == bool(named)


@pytest.mark.parametrize(
    ("distance_m", "said"),
    [(710.0, []), (350.0, ["distance_m"]), (1640.0, ["distance_m"])],
)
def test_numbers_that_fit_a_place_of_a_wide_square_are_right(distance_m, said) -> None:
    """Bug: "two digits of its northing swapped" of A, where B in its square fits exactly.

    From A the square of B reaches from 420 m away, to the north, to 1579 m in its far corner.
    """
    points = (mgrs_point("A", "16S GF 4033 5557"), mgrs_point("B", "16S GF 40 56"))
    numbers = {"grid_azimuth": GridAzimuth(45.5), "magnetic_azimuth": MagneticAzimuth(53.0)}
    course = plan(points, (leg(**numbers, distance_m=distance_m),), grid_magnetic_angle_deg=-7.5)
    assert [one.what for one in work_out_card(course).findings] == said


@pytest.mark.parametrize(("given_m", "named"), [(885.0, ""), (870.0, ""), (808.0, "straight line")])
def test_a_slip_on_via_positions_is_named_as_strictly(given_m, named) -> None:
    """Bug: 870 for a way of 937 m along via positions was a hundred metres too little."""
    points = (mgrs_point("A", "11U NR 1602 3641"), mgrs_point("B", "11U NR 1655 3702"))
    vias = tuple(mgrs_point("", f"11U NR {at}").position for at in ("1635 3650", "1640 3690"))
    (found,) = work_out_card(plan(points, (leg(via=vias, distance_m=given_m),))).findings
    assert bool(found.slips) == bool(named)
    assert named in found.message
    assert "hundred" not in found.message


def test_a_magnetic_azimuth_in_the_field_of_the_true_one_is_named() -> None:
    """Bug: it was told as the azimuth of a leg that happened to have the same."""
    course = plan((A, B), (leg(true_azimuth=TrueAzimuth(60.0)),), grid_magnetic_angle_deg=-12.0)
    right = work_out_card(course).angles
    magnetic_deg = right.magnetic(GridAzimuth(60.0)).degrees
    legs = (
        leg("1", true_azimuth=TrueAzimuth(magnetic_deg)),
        leg("2", "B", "there", grid_azimuth=GridAzimuth(magnetic_deg - 1.0), distance_m=500.0),
    )
    card = work_out_card(plan((A, B), legs, grid_magnetic_angle_deg=-12.0))
    (found,) = [one for one in card.findings if one.leg == "1"]
    assert found.slips == ("magnetic-for-true",)
    assert "the magnetic azimuth written for the true one" in found.message


def test_an_azimuth_in_half_degrees_is_rounded_to_half_degrees() -> None:
    """Bug: 049.5 beside 060.5 was held to a tenth: with an angle of 10.8 it is right."""
    rounded = leg(grid_azimuth=GridAzimuth(60.5), magnetic_azimuth=MagneticAzimuth(49.5))
    course = plan((A, B), (rounded,), grid_magnetic_angle_deg=10.8)
    assert not [one for one in work_out_card(course).findings if one.leg is not None]
    finer = leg(grid_azimuth=GridAzimuth(60.4), magnetic_azimuth=MagneticAzimuth(49.2))
    course = plan((A, B), (finer,), grid_magnetic_angle_deg=10.8)
    assert [one for one in work_out_card(course).findings if one.leg is not None]


def test_a_right_angle_clears_no_more_than_what_it_alone_makes_differ() -> None:
    """Bug: nothing was wrong "with what differs on leg 3", which was off its points by 49°."""
    angle_deg = round(work_out_card(plan((A, B))).angles.grid_magnetic_angle_deg, 1)
    (finding, *_) = legs_by(angle_deg, -angle_deg).findings
    assert "what differs" not in finding.message
