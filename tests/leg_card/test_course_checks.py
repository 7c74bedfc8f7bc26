"""What a check finds of the course as a whole: age of the angle, sheet, squares, one shared sum."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest
from leg_card.plans import DAY, A, B, grid_point, leg, mgrs_point, plan

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.geodesy.grids import course_grid
from audit.leg_card import work_out_card
from audit.leg_card.check_plan import check_plan
from audit.leg_card.written_reference import written_reference
from audit.magnetics.declination import declination
from audit.positions import Position


def found(checked, what):
    return [one for one in checked.findings if one.what == what]


def test_an_old_angle_is_brought_up_to_date():
    # Cape Town: 0.23 degrees west a year by WMM2025 (tests/truth), so 1.2 in five years.
    points = (grid_point("A", 261_000.0, 6_243_000.0, "EPSG:32734"),
              grid_point("B", 262_000.0, 6_243_000.0, "EPSG:32734"))  # fmt: skip
    today = work_out_card(plan(points)).angles.grid_magnetic_angle_deg
    old = plan(points, grid_magnetic_angle_deg=round(today + 1.2, 1),
               grid_magnetic_angle_date=dt.date(2021, 10, 3))  # fmt: skip
    (one,) = found(check_plan(old), "grid_magnetic_angle_date")
    assert one.computed == pytest.approx(today, abs=0.2)  # deg
    assert "5.0 years before the walk" in one.message
    assert one.slips == ("gm-angle-stale",)


def angle_findings(given_deg, of, **values):
    """Give the findings of an angle on Harrow Moor, where the model has 14.7 east for 2019."""
    points = (mgrs_point("A", "11U NR 1480 3620"), mgrs_point("B", "11U NR 1528 3677"))
    dated = plan(points, date=dt.date(2026, 12, 5), grid_magnetic_angle_deg=given_deg,
                 grid_magnetic_angle_date=of, **values)  # fmt: skip
    return check_plan(dated).findings


@pytest.mark.parametrize("given_deg", [12.5, 13.0, -14.7])
def test_a_dated_angle_is_held_against_the_model_of_its_date(given_deg):
    """Bug: it was held against the walk's, and told to be moved further away from it."""
    (one,) = angle_findings(given_deg, dt.date(2019, 7, 1))
    assert one.what == "grid_magnetic_angle_deg"
    assert one.computed == pytest.approx(14.7, abs=0.1)  # deg
    assert "do not go together" in one.message
    assert "becomes" not in one.message
    assert one.slips == (("east-for-west",) if given_deg < 0.0 else ())


@pytest.mark.parametrize(("given_deg", "current_deg"), [(15.5, 14.7), (14.8, 14.0)])
def test_an_angle_that_fits_its_date_gets_the_sum(given_deg, current_deg):
    """Bug: of an angle with a date it was said how old its map could be."""
    (one,) = angle_findings(given_deg, dt.date(2019, 7, 1))
    assert one.computed == pytest.approx(current_deg, abs=0.06)  # deg
    assert f"becomes {current_deg}° east" in one.message
    assert "could carry it" not in one.message


def test_no_sum_leads_away_from_the_model():
    """Bug: 13.5, near the 13.9 of the day of the walk, was to become 12.6."""
    (one,) = angle_findings(13.5, dt.date(2019, 7, 1))
    assert one.what == "grid_magnetic_angle_date"
    assert "becomes" not in one.message
    assert "nearer to the latter" in one.message


def test_an_angle_of_a_year_after_the_walk_is_found():
    """Bug: an angle of 2031 was right for a walk in 2026."""
    (one,) = angle_findings(13.9, dt.date(2031, 7, 1), grid_magnetic_angle_year_only=True)
    assert (one.what, one.given) == ("grid_magnetic_angle_date", "2031")
    assert "of 2031, and the walk of 2026-12-05" in one.message
    assert not angle_findings(13.9, dt.date(2026, 12, 31))  # a map may be for its whole year


def test_a_year_is_told_as_it_is_written():
    """Bug: 2019 was told as 2019-07-01, a day that no map has."""
    (one,) = angle_findings(15.0, dt.date(2019, 7, 1), grid_magnetic_angle_year_only=True)
    assert "is of 2019, 7 years before the walk" in one.message
    (one,) = angle_findings(14.0, dt.date(2025, 7, 1), grid_magnetic_angle_year_only=True)
    assert "is of 2025, a year before the walk" in one.message


@pytest.mark.parametrize(("days", "count"), [(360, 0), (370, 1)])
def test_an_angle_is_old_after_a_year(days, count):
    aged = plan((A, B), grid_magnetic_angle_deg=-6.0,
                grid_magnetic_angle_date=DAY - dt.timedelta(days=days))  # fmt: skip
    assert len(found(check_plan(aged), "grid_magnetic_angle_date")) == count


def test_the_yearly_change_is_the_models():
    rate = declination(18.4, -33.9, date=DAY).yearly_change_deg
    assert rate == pytest.approx(-0.231, abs=0.01)  # deg a year, WMM2025 at Cape Town


def test_a_point_off_the_sheet_is_found_with_how_far():
    corner, other = mgrs_point("", "16S GF 40 30").position, mgrs_point("", "16S GF 45 35").position
    points = (mgrs_point("A", "16S GF 4110 3110"), mgrs_point("B", "16S GF 4650 3210"))
    (one,) = found(check_plan(plan(points, sheet=(corner, other))), "sheet")
    assert one.message.startswith("B lies 505 m east of the map sheet")
    assert found(check_plan(plan(points)), "sheet") == []


def test_a_wrong_square_is_named_where_the_plan_states_nothing_else():
    points = (mgrs_point("A", "16S GF 4110 3110"), mgrs_point("B", "16S GG 4150 3170"))
    checked = check_plan(plan(points))
    one, length = found(checked, "position")
    assert one.slips[0] == "wrong-100km-square"
    assert one.computed in ("16S GF 4150 3170", "16S GG 4110 3110")
    assert length.computed == pytest.approx(100_601.0, abs=2.0)  # m


def test_legs_that_share_another_angle_say_so_once():
    legs = tuple(
        leg(str(n), end=f"C{n}", grid_azimuth=GridAzimuth(a),
            magnetic_azimuth=MagneticAzimuth(a + 5.0), distance_m=500.0)
        for n, a in enumerate((40.0, 140.0, 250.0), start=1)
    )  # fmt: skip
    card = work_out_card(plan((A,), legs, grid_magnetic_angle_deg=-8.0))
    (one,) = [
        found for found in card.findings if found.leg is None and "legs that give" in found.message
    ]
    assert one.computed == pytest.approx(-5.0)
    assert all("Its own sum uses 5.0° west" in f.message for f in card.findings if f.leg)


def test_coarse_references_are_told_by_leg():
    six = (mgrs_point("A", "16S GF 411 311"), mgrs_point("B", "16S GF 415 314"))
    (one,) = found(check_plan(plan(six)), "reference_precision")
    # 1.96 x sqrt(50² + 50²) / sqrt(3) = 80.0 m on 500 m: 9.1 degrees, by hand.
    assert "±9°" in one.message
    assert "6 figures, squares of 100 m" in one.message
    assert "50 m either way" in one.message
    eight = (mgrs_point("A", "16S GF 4110 3110"), mgrs_point("B", "16S GF 4150 3140"))
    assert found(check_plan(plan(eight)), "reference_precision") == []


def test_a_lost_decimal_point_of_the_angle_is_named():
    (one,) = found(
        check_plan(plan((A, B), grid_magnetic_angle_deg=-60.0)), "grid_magnetic_angle_deg"
    )
    assert "a decimal point lost (-60 for -6)" in one.message
    assert one.slips == ("decimal-point",)


@pytest.mark.parametrize(("given_deg", "count"), [(-70.0, 1), (-7.0, 0), (2.0, 0), (14.0, 1)])
def test_without_a_date_only_what_no_year_can_give_is_found(given_deg, count):
    undated = plan((A, B), date=None, grid_magnetic_angle_deg=given_deg)
    said = found(check_plan(undated), "grid_magnetic_angle_deg")
    assert len(said) == count
    if given_deg == -70.0:
        assert "a decimal point lost (-70 for -7)" in said[0].message


@pytest.mark.parametrize(
    ("given", "half_m", "grid", "text"),
    [
        ("16sgf41824279", 5.0, "EPSG:32616", "16S GF 4182 4279"),
        ("16S GF 418 427", 50.0, "EPSG:32616", "16S GF 418 427"),
        ("SU 1234 5678", 5.0, "EPSG:27700", "SU 1234 5678"),
    ],
)
def test_a_reference_is_taken_apart_as_it_was_written(given, half_m, grid, text):
    from audit.readers.position_text import read_position

    position = read_position(given, grid if grid == "EPSG:27700" else None).position
    assert position.half_square_m == half_m
    written = written_reference(position, course_grid(grid))
    assert written is not None
    assert written.text == text
    longitude, latitude = written.place(written.halves)
    assert (longitude, latitude) == pytest.approx(
        (position.longitude_deg, position.latitude_deg),
        abs=1e-6,  # deg, a decimetre
    )


def test_degrees_are_no_digits_of_a_grid():
    position = replace(A.position, given="36.5123, -84.2311")
    assert written_reference(position, course_grid("EPSG:32616")) is None
    bare = Position(longitude_deg=-84.0, latitude_deg=36.0)
    assert written_reference(bare, course_grid("EPSG:32616")) is None


@pytest.mark.parametrize("given", ["N 56.1234 W 4.1234", "N 56 7.4 W 4 7.4", "NN 1660 7120"])
def test_what_names_no_square_of_its_step_is_no_national_reference(given):
    """Bug: "N 56.1234 W 4.1234" was taken apart as a reference in a square N."""
    position = Position(
        longitude_deg=-4.1234, latitude_deg=56.1234, given=given, half_square_m=50.0
    )
    assert written_reference(position, course_grid("EPSG:27700")) is None


def test_a_radius_of_less_than_a_metre_is_told_as_it_is():
    """Bug: "the arrival radius is 0 m" for half a metre."""
    points = (mgrs_point("A", "16S GF 4110 3110"), mgrs_point("B", "16S GF 4150 3170"))
    checked = check_plan(plan(points, arrival_radius_m=0.5))
    (one,) = found(checked, "reference_precision")
    assert "the arrival radius is 0.5 m" in one.message
    assert any("wider than the arrival radius of 0.5 m" in note for note in checked.card.notes)


def test_a_leg_to_a_whole_square_is_not_too_long_while_its_point_may_lie_near():
    """Bug: digits of the other point were told to be swapped, 30 km from the square's middle."""
    points = (mgrs_point("A", "16S GF"), mgrs_point("B", "16S GF 4150 3170"))
    assert found(check_plan(plan(points)), "position") == []


def test_a_digit_read_a_square_too_far_and_carried_is_the_slip_of_its_point():
    """Bug: for 4204 written for 4194 two other points were told to have wrong digits."""
    points = (
        mgrs_point("Start", "16S GF 4149 4279"),
        mgrs_point("Knoll", "16S GF 4204 4325"),
        mgrs_point("Ford", "16S GF 4260 4350"),
    )
    legs = (
        leg("1", "Start", "Knoll", grid_azimuth=GridAzimuth(44.4), distance_m=643.0),
        leg("2", "Knoll", "Ford", grid_azimuth=GridAzimuth(69.3), distance_m=706.0),
    )
    (one,) = found(check_plan(plan(points, legs)), "position")
    assert (one.computed, one.slips) == ("16S GF 4194 4325", ("digit-wrong",))
    assert "one digit of its easting off by one and carried (20 for 19)" in one.message
    assert "would make legs 1 and 2 right" in one.message
