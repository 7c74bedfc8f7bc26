"""Azimuths that carry their north, and the conversions that the manuals teach."""

from __future__ import annotations

import dataclasses
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth.check_values import CheckValue, check_values

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles, TrueAzimuth
from audit.units import turn_degrees

NORTHS = (GridAzimuth, TrueAzimuth, MagneticAzimuth)
ANGLES = st.floats(-720.0, 720.0)
SMALL = st.floats(-180.0, 180.0)
ROUNDING_DEG = 1e-9


def angles(g_deg: float, c_deg: float = 0.0) -> NorthAngles:
    return NorthAngles(grid_magnetic_angle_deg=g_deg, convergence_deg=c_deg)


def doctrine(pattern: str) -> list[CheckValue]:
    return [row for row in check_values("doctrine") if re.match(pattern, row.inputs)]


@pytest.mark.parametrize("value", doctrine("mag "), ids=lambda row: row.inputs)
def test_magnetic_to_grid_as_the_manuals_do_it(value: CheckValue) -> None:
    # TC 3-25.26 (FM 3-25.26) chapter 6 and exercises on it: exact.
    magnetic, size = map(int, re.findall(r"\d+", value.inputs)[:2])
    west = "W" in value.inputs or "westerly" in value.inputs
    found = angles(-size if west else size).grid_from_magnetic(MagneticAzimuth(magnetic))
    assert found == GridAzimuth(float(value.expected))


@pytest.mark.parametrize("value", doctrine("grid "), ids=lambda row: row.inputs)
def test_grid_to_magnetic_as_the_manuals_do_it(value: CheckValue) -> None:
    # TC 3-25.26 (FM 3-25.26) chapter 6: exact; grid 2 with 16 east passes through north.
    grid, size = map(int, re.findall(r"\d+", value.inputs)[:2])
    west = "westerly" in value.inputs
    found = angles(-size if west else size).magnetic(GridAzimuth(grid))
    assert found == MagneticAzimuth(float(value.expected))


@pytest.mark.parametrize("value", doctrine("azimuth "), ids=lambda row: row.inputs)
@pytest.mark.parametrize("north", NORTHS)
def test_back_azimuths_as_the_manuals_have_them(
    value: CheckValue, north: type[GridAzimuth]
) -> None:
    # TC 3-25.26 chapter 6: add or subtract 180; exact.
    assert north(float(value.inputs.split()[1])).back() == north(float(value.expected))


@pytest.mark.parametrize("north", NORTHS)
@given(degrees=ANGLES)
def test_azimuths_are_in_range_and_the_back_azimuth_of_the_back_is_the_first(
    north: type[GridAzimuth], degrees: float
) -> None:
    azimuth = north(degrees)
    assert 0.0 <= azimuth.degrees < 360.0
    assert azimuth.back().back().turn_to(azimuth) == pytest.approx(0.0, abs=ROUNDING_DEG)
    assert abs(azimuth.turn_to(azimuth.back())) == pytest.approx(180.0, abs=ROUNDING_DEG)


@given(grid=ANGLES, g_deg=SMALL, c_deg=SMALL)
def test_conversions_undo_each_other(grid: float, g_deg: float, c_deg: float) -> None:
    norths, azimuth = angles(g_deg, c_deg), GridAzimuth(grid)
    for back in (
        norths.grid_from_magnetic(norths.magnetic(azimuth)),
        norths.grid_from_true(norths.true(azimuth)),
    ):
        assert back.turn_to(azimuth) == pytest.approx(0.0, abs=ROUNDING_DEG)


@given(grid=ANGLES, g_deg=SMALL, c_deg=SMALL)
def test_true_less_magnetic_is_the_declination(grid: float, g_deg: float, c_deg: float) -> None:
    # D = G + C: the definition of the three angles.
    norths, azimuth = angles(g_deg, c_deg), GridAzimuth(grid)
    true, magnetic = norths.true(azimuth), norths.magnetic(azimuth)
    seen = turn_degrees(magnetic.degrees, true.degrees)
    assert turn_degrees(g_deg + c_deg, seen) == pytest.approx(0.0, abs=ROUNDING_DEG)


@pytest.mark.parametrize(("first", "second", "turn"), [(359, 1, 2), (1, 359, -2), (0, 180, 180)])
def test_turns_pass_through_north(first: float, second: float, turn: float) -> None:
    assert GridAzimuth(first).turn_to(GridAzimuth(second)) == turn
    assert GridAzimuth(first).turned(turn) == GridAzimuth(second)


def test_turning_to_the_back_is_plus_180_from_either_side() -> None:
    assert GridAzimuth(10.0).turn_to(GridAzimuth(190.0)) == 180.0
    assert GridAzimuth(190.0).turn_to(GridAzimuth(10.0)) == 180.0


def test_north_has_one_name() -> None:
    assert GridAzimuth(360.0) == GridAzimuth(0.0) == GridAzimuth(-0.0) == GridAzimuth(-360.0)
    assert str(GridAzimuth(-0.0).degrees) == "0.0"
    assert hash(GridAzimuth(360.0)) == hash(GridAzimuth(0.0))


@pytest.mark.parametrize("first", NORTHS)
@pytest.mark.parametrize("second", NORTHS)
def test_norths_do_not_mix(first: type[GridAzimuth], second: type[GridAzimuth]) -> None:
    one, other = first(68.0), second(68.0)
    if first is second:
        assert one.turn_to(other) == 0.0
        assert one == other
        return
    assert one != other
    with pytest.raises(TypeError, match="cannot be compared"):
        one.turn_to(other)


@pytest.mark.parametrize(
    ("method", "wanted"),
    [
        ("magnetic", GridAzimuth),
        ("true", GridAzimuth),
        ("grid_from_magnetic", MagneticAzimuth),
        ("grid_from_true", TrueAzimuth),
    ],
)
@pytest.mark.parametrize("north", NORTHS)
def test_an_angle_is_put_only_on_the_azimuth_that_it_belongs_to(
    method: str, wanted: type[GridAzimuth], north: type[GridAzimuth]
) -> None:
    turn = getattr(angles(-7.0, 1.6), method)
    if north is wanted:
        assert turn(north(68.0)) != north(68.0)
        return
    with pytest.raises(TypeError, match=f"a {wanted.__name__} is wanted here, not a "):
        turn(north(68.0))


@pytest.mark.parametrize("north", NORTHS)
def test_bare_numbers_do_not_pass_for_azimuths(north: type[GridAzimuth]) -> None:
    azimuth = north(68.0)
    assert azimuth != 68.0
    with pytest.raises(TypeError):
        azimuth + 1.0  # type: ignore[operator]
    with pytest.raises(TypeError):
        azimuth - north(1.0)  # type: ignore[operator]
    with pytest.raises(TypeError):
        azimuth < north(1.0)  # type: ignore[operator]  # noqa: B015


def test_azimuths_do_not_change() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        GridAzimuth(1.0).degrees = 2.0  # type: ignore[misc]
