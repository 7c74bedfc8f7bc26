"""The worked sums give what the manuals' own examples give, and what the findings say.

Conversions: the examples of the soldier's manual and of TC 3-25.26, chapter 6, as kept
in tests/truth (magnetic = grid - G; back azimuth 180 degrees on).
"""

from __future__ import annotations

import math
import re

import pytest
from leg_card.plans import A, B, grid_point, leg, plan
from truth.check_values import check_values

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.leg_card.check_plan import PlanCheck, check_plan
from audit.leg_card.worked_sums import SumLine
from audit.reports.check_report import render_check
from audit.units import wrap_degrees
from audit.words import Words
from audit.words.in_other_units import Units

DOCTRINE = check_values("doctrine")


def checked(*legs, **values) -> PlanCheck:
    settled = {"grid_magnetic_angle_deg": -7.0, "paces_per_100m": 65.0} | values
    return check_plan(plan((A, B), legs or (leg(),), **settled))


def line(check: PlanCheck, what: str) -> SumLine:
    (found,) = [one for one in check.sums[0].lines if one.what == what]
    return found


def examples(pattern: str):
    """Give (azimuth, G east positive, answer) of the manuals' conversions."""
    found = []
    for row in DOCTRINE:
        shaped = re.match(pattern + r" (\d+), G-M (\d+)(.*)", row.inputs)
        if shaped:
            west = "west" in shaped[3] or "W" in shaped[3]
            angle = -float(shaped[2]) if west else float(shaped[2])
            found.append((float(shaped[1]), angle, float(row.expected)))
    assert len(found) >= 2
    return found


@pytest.mark.parametrize(("grid", "angle", "magnetic"), examples("grid"))
def test_grid_to_magnetic_as_the_manuals_work_it(grid, angle, magnetic):
    reckoned = leg(end="C", grid_azimuth=GridAzimuth(grid), distance_m=700.0)
    worked = line(checked(reckoned, grid_magnetic_angle_deg=angle), "magnetic_azimuth_deg")
    assert worked.computed == pytest.approx(magnetic)
    assert worked.working == f"{grid:05.1f} - {angle:.1f}"


@pytest.mark.parametrize(("magnetic", "angle", "grid"), examples("mag"))
def test_magnetic_to_grid_is_the_same_sum_read_backwards(magnetic, angle, grid):
    reckoned = leg(end="C", grid_azimuth=GridAzimuth(grid), distance_m=700.0,
                   magnetic_azimuth=MagneticAzimuth(magnetic))  # fmt: skip
    check = checked(reckoned, grid_magnetic_angle_deg=angle)
    assert [one for one in check.findings if one.leg] == []
    assert line(check, "magnetic_azimuth_deg").agrees is True


@pytest.mark.parametrize(
    ("azimuth", "back"),
    [
        (float(row.inputs.split()[1]), float(row.expected))
        for row in DOCTRINE
        if re.fullmatch(r"azimuth \d+", row.inputs)
    ],
)
def test_back_azimuths_as_the_manuals_have_them(azimuth, back):
    grid = GridAzimuth(wrap_degrees(azimuth - 7.0))
    check = checked(leg(end="C", grid_azimuth=grid, distance_m=700.0))
    assert line(check, "back_magnetic_azimuth_deg").computed == pytest.approx(back)


def test_paces_as_the_question_bank_has_them():
    # 195 paces at 65 to 100 m are 300 m.
    check = checked(leg(distance_m=300.0, paces=195.0))
    assert line(check, "paces").computed == pytest.approx(195.0)
    assert line(check, "paces").agrees is True


def test_azimuth_and_distance_by_hand():
    # 866 m east and 500 m north: arc tangent 60 degrees, 1000 m.
    check = checked()
    azimuth, distance = line(check, "grid_azimuth_deg"), line(check, "distance_m")
    assert azimuth.working == "866 m east, 500 m north"
    assert azimuth.computed == pytest.approx(math.degrees(math.atan2(866.0254, 500.0)), abs=1e-4)
    assert distance.working == "root of 866² + 500²"
    assert distance.computed == pytest.approx(1000.0, abs=0.01)  # m
    assert (azimuth.given, azimuth.agrees) == (None, None)


def test_a_line_that_a_finding_is_about_does_not_agree():
    check = checked(leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=MagneticAzimuth(53.0)))
    assert line(check, "magnetic_azimuth_deg").agrees is False
    assert line(check, "grid_azimuth_deg").agrees is True


def test_a_reckoned_leg_has_no_sums_from_points():
    check = checked(leg(end="C", grid_azimuth=GridAzimuth(60.0), distance_m=700.0))
    assert [one.what for one in check.sums[0].lines] == [
        "magnetic_azimuth_deg", "back_magnetic_azimuth_deg", "paces"
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("units", "sum_", "paces"),
    [
        (Units(), ("400 m", 65.0), 260.0),
        (Units(length="yards"), ("437 yd", 59.4), 260.0),
        (Units(paces="double", paces_counted="single"), ("400 m", 32.5), 130.0),
        (Units(length="yards", paces="double", paces_counted="single"), ("437 yd", 29.7), 130.0),
    ],
)
def test_the_sum_of_paces_comes_out_in_the_units_it_is_shown_in(units, sum_, paces):
    """Bug: yards were multiplied by paces to 100 m, and single paces by double ones."""
    reckoned = leg(end="C", grid_azimuth=GridAzimuth(80.0), distance_m=400.0)
    shown = Words(units=units).told(line(checked(reckoned), "paces").working)
    distance, rate = re.match(r"(\d+ \w+) x ([\d.]+) / 100", shown).groups()
    assert (distance, float(rate)) == (sum_[0], pytest.approx(sum_[1], abs=0.06))
    assert float(distance.split()[0]) * float(rate) / 100.0 == pytest.approx(paces, abs=0.6)


CORNER = grid_point("corner", 700_000.0, 3_580_500.0).position


def test_a_leg_along_via_positions_is_worked_piece_by_piece():
    """Bug: the azimuth straight across stood beside the distance along the positions."""
    check = checked(leg(via=(CORNER,), distance_m=1366.0))
    north, east = check.sums[0].pieces
    figures = [[round(one.computed, 1) for one in piece.lines] for piece in (north, east)]
    assert figures == [[0.0, 7.0, 187.0, 500.0, 325.0], [90.0, 97.0, 277.0, 866.0, 562.9]]
    text = render_check(check)
    assert "A to via 1" in text
    assert "060.0" not in text  # where nobody walks
    stated = checked(leg(via=(CORNER,), grid_azimuth=GridAzimuth(60.0)))
    assert "straight across, where nobody walks" in render_check(stated)
    assert "060.0" in render_check(stated)


def test_a_true_azimuth_is_worked_on_as_the_card_does():
    """Bug: the card turned the true azimuth of the plan, the check that of the points."""
    check = checked(leg(true_azimuth=TrueAzimuth(61.5)))
    (on_card,) = check.card.legs
    assert line(check, "grid_from_true_deg").computed == pytest.approx(on_card.azimuth.degrees)
    assert line(check, "magnetic_azimuth_deg").computed == pytest.approx(on_card.magnetic.degrees)


def test_a_reckoned_leg_has_the_sums_of_its_magnetic_azimuth():
    """Bug: it had its paces only."""
    reckoned = leg("1", "A", "there", magnetic_azimuth=MagneticAzimuth(151.0), distance_m=500.0)
    check = checked(reckoned)
    assert line(check, "grid_azimuth_deg").computed == pytest.approx(144.0)
    assert line(check, "grid_azimuth_deg").working == "151.0 + (-7.0)"
    assert line(check, "back_magnetic_azimuth_deg").computed == pytest.approx(331.0)
