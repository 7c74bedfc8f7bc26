"""Declination against the model's own published values and against two other programs."""

from __future__ import annotations

import datetime as dt
import io
import math
from contextlib import redirect_stdout

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from truth.check_values import CheckValue, check_values, each

from audit.magnetics import declination as module
from audit.magnetics.declination import declination
from audit.units import turn_degrees

DAY = dt.date(2026, 11, 25)


def day_of(year: float) -> dt.date:
    """Give the day of a decimal year; 2025.5 is noon of the middle day and falls to its start."""
    start = dt.date(int(year), 1, 1)
    days = (dt.date(int(year) + 1, 1, 1) - start).days
    return start + dt.timedelta(days=round((year - int(year)) * days))


@each("wmm2025_report")
def test_wmm2025_report_table(value: CheckValue) -> None:
    # WMM2025 technical report (NOAA NCEI and BGS, 2024), table of test values: 0.01 deg, its
    # own last digit. 2027.5 is half a day from a day's start.
    year = float(value.given("year"))
    found = declination(
        float(value.given("lon")) - (360.0 if float(value.given("lon")) > 180.0 else 0.0),
        float(value.given("lat")),
        date=day_of(year),
        height_m=1000.0 * float(value.given("height_km")),
    )
    assert turn_degrees(found.degrees, float(value.expected)) == pytest.approx(0.0, abs=0.01)


@each("wmm2025_highprec")
def test_wmm2025_high_precision_values(value: CheckValue) -> None:
    # NCEI's high-precision test values, D from the printed X and Y: 0.0001 deg at whole years.
    year = float(value.given("year"))
    tolerance_deg = 0.0001 if year == int(year) else 0.001
    found = declination(
        float(value.given("lon")),
        float(value.given("lat")),
        date=day_of(year),
        height_m=1000.0 * float(value.given("height_km")),
    )
    assert turn_degrees(found.degrees, float(value.expected)) == pytest.approx(
        0.0, abs=tolerance_deg
    )


@each("wmm2025_other_impl")
def test_values_printed_for_other_programs(value: CheckValue) -> None:
    # The read-me of the model's makers, and a documentation example: as many digits as printed.
    found = declination(
        float(value.given("lon")),
        float(value.given("lat")),
        date=dt.date.fromisoformat(value.given("date")),
        height_m=1000.0 * float(value.given("height_km")),
    )
    assert found.degrees == pytest.approx(float(value.expected), abs=float(value.tolerance))


@each("gm_angle")
def test_declination_of_places_on_a_day(value: CheckValue) -> None:
    found = declination(
        float(value.given("lon")),
        float(value.given("lat")),
        date=dt.date.fromisoformat(value.given("date")),
    )
    assert found.degrees == pytest.approx(float(value.wanted("D")), abs=0.0001)
    assert found.model == "WMM-2025"


@each("igrf14")
def test_igrf14_is_a_second_opinion(value: CheckValue) -> None:
    # IGRF-14 test table (IAGA): another model of the same field, so 0.3 deg.
    year = float(value.given("year"))
    found = declination(
        float(value.given("lon")),
        float(value.given("lat")),
        date=day_of(year),
        height_m=1000.0 * float(value.given("height_km")),
    )
    assert turn_degrees(found.degrees, float(value.expected)) == pytest.approx(0.0, abs=0.3)


PLACES = [
    (-84.95, 32.35),
    (-1.9, 51.2),
    (10.75, 59.91),
    (130.84, -12.46),
    (149.13, -35.28),
    (-70.91, -53.16),
    (36.82, -1.29),
]


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("year", [2012, 2017, 2022, 2026])
def test_every_model_agrees_with_igrf14(place: tuple[float, float], year: int) -> None:
    # ppigrf 2.1.0 (IAGA); it prints to standard output. IGRF is definitive to 2020: 0.3 deg.
    import ppigrf

    date = dt.datetime(year, 6, 1)  # noqa: DTZ001
    with redirect_stdout(io.StringIO()):
        east, north, _ = ppigrf.igrf(*place, 0.0, date)
    expected = math.degrees(math.atan2(float(east.squeeze()), float(north.squeeze())))
    found = declination(*place, date=date.date())
    assert found.degrees == pytest.approx(expected, abs=0.3)


@pytest.mark.parametrize("place", PLACES)
def test_the_makers_own_program_agrees(place: tuple[float, float]) -> None:
    # wmm-calculator 1.4.4, by the group that makes the model; 1e-4 deg.
    import numpy as np
    import wmm

    model = wmm.wmm_calc()
    model.setup_time(np.array([2026]), np.array([11]), np.array([25]))
    model.setup_env(np.array([place[1]]), np.array([place[0]]), np.array([0.0]))
    expected = float(np.squeeze(model.get_all()["dec"]))
    assert declination(*place, date=DAY).degrees == pytest.approx(expected, abs=1e-4)


def test_the_error_formula() -> None:
    # WMM2025: sqrt(0.26^2 + (5417 / H)^2); 0.3754 deg at H = 20000 nT.
    (value,) = check_values("wmm_error_model")
    assert math.hypot(0.26, 5417.0 / 20_000.0) == pytest.approx(float(value.expected), abs=0.0005)
    for place in PLACES:
        found = declination(*place, date=DAY)
        wanted = math.hypot(0.26, 5417.0 / found.horizontal_nt)
        assert found.sd_deg == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(
    ("place", "per_year"),
    [
        # Rates printed with the comparison of models for 2026-11-25 (0.001 deg a year).
        ((-84.95, 32.35), -0.066),
        ((-1.9, 51.2), 0.174),
        ((18.96, 69.65), 0.268),
        ((18.42, -33.92), -0.231),
    ],
)
def test_yearly_change(place: tuple[float, float], per_year: float) -> None:
    found = declination(*place, date=DAY)
    assert found.yearly_change_deg == pytest.approx(per_year, abs=0.002)


def test_yearly_change_is_known_to_the_last_day_of_a_model() -> None:
    first = declination(-84.95, 32.35, date=dt.date(2025, 1, 1)).yearly_change_deg
    last = declination(-84.95, 32.35, date=dt.date(2029, 12, 31)).yearly_change_deg
    assert first == pytest.approx(last, abs=0.02)


# The traps of the libraries, one by one


def test_trap_2_declination_less_convergence_is_the_grid_magnetic_angle() -> None:
    # With PROJ's sign of convergence; the GDA manual's sign would give -4.03 here.
    from audit.geodesy.grids import course_grid

    convergence_deg = course_grid("EPSG:32616").convergence_deg(-84.95, 32.35)
    found = declination(-84.95, 32.35, date=DAY).degrees - convergence_deg
    assert found == pytest.approx(-6.2287, abs=0.001)


def test_trap_3_the_librarys_grid_variation_is_not_used() -> None:
    # pygeomag's gv is for polar stereographic charts: 2.095 at Aberdeen, where D is 0.005.
    assert declination(-2.09, 57.15, date=DAY).degrees == pytest.approx(0.005, abs=0.0005)


@pytest.mark.parametrize(
    ("place", "word"),
    [
        ((0.0, 91.0), "latitude"),
        ((0.0, -95.0), "latitude"),
        ((361.0, 0.0), "longitude"),
        ((-181.0, 0.0), "longitude"),
        ((float("nan"), 0.0), "longitude"),
        ((0.0, float("nan")), "latitude"),
    ],
)
def test_trap_4_places_out_of_range_are_refused(place: tuple[float, float], word: str) -> None:
    # pygeomag answers for all of them.
    with pytest.raises(ValueError, match=f"{word} .* out of range"):
        declination(*place, date=DAY)


def test_trap_5_the_standard_error_is_a_third_of_a_degree_not_nothing() -> None:
    # wmm-calculator 1.4.4 answers 0.00001 deg.
    assert 0.25 < declination(-84.95, 32.35, date=DAY).sd_deg < 0.5


def test_trap_6_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    declination(-84.95, 32.35, date=DAY)
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize(
    ("date", "model"),
    [
        (dt.date(2010, 1, 1), "WMM-2010"),
        (dt.date(2014, 12, 31), "WMM-2010"),
        (dt.date(2015, 1, 1), "WMM-2015v2"),
        (dt.date(2019, 12, 31), "WMM-2015v2"),
        (dt.date(2020, 1, 1), "WMM-2020"),
        (dt.date(2024, 12, 31), "WMM-2020"),
        (dt.date(2025, 1, 1), "WMM-2025"),
        (dt.date(2029, 12, 31), "WMM-2025"),
    ],
)
def test_trap_the_model_is_the_one_of_the_date(date: dt.date, model: str) -> None:
    # Left to itself the library takes its newest model for every date.
    assert declination(-84.95, 32.35, date=date).model == model


@pytest.mark.parametrize("date", [dt.date(1999, 6, 1), dt.date(2009, 12, 31), dt.date(2030, 1, 1)])
def test_trap_a_date_without_a_model_says_what_to_write_instead(date: dt.date) -> None:
    with pytest.raises(ValueError, match=date.isoformat()) as refused:
        declination(-84.95, 32.35, date=date)
    assert "give grid_magnetic_angle_deg as printed on the map" in str(refused.value)


def test_trap_heights_are_metres_here_and_kilometres_in_the_library() -> None:
    # 40 N 105 W on 2026-11-25: 7.5146 deg at sea level, 7.5124 at 1 km, 7.5081 at 3 km.
    for height_m, expected in ((0.0, 7.5146), (1_000.0, 7.5124), (3_000.0, 7.5081)):
        found = declination(-105.0, 40.0, date=DAY, height_m=height_m)
        assert found.degrees == pytest.approx(expected, abs=0.0001)


@pytest.mark.parametrize("height_m", [-5_000.0, 1e6, float("nan")])
def test_heights_out_of_range_are_refused(height_m: float) -> None:
    with pytest.raises(ValueError, match="height"):
        declination(-105.0, 40.0, date=DAY, height_m=height_m)


def test_a_moment_counts_as_its_day() -> None:
    moment = dt.datetime(2026, 11, 25, 17, 30, tzinfo=dt.UTC)
    assert declination(0.0, 50.0, date=moment) == declination(0.0, 50.0, date=DAY)


def test_a_model_is_read_once() -> None:
    module._model.cache_clear()
    for place in PLACES:
        declination(*place, date=DAY)
    assert module._model.cache_info().misses == 1


def test_near_the_magnetic_pole_the_error_says_so() -> None:
    # WMM technical report: under 2000 nT lies the blackout zone.
    found = declination(164.0, 86.5, date=DAY)
    assert found.horizontal_nt < 2_000.0
    assert found.sd_deg > 2.0


@settings(max_examples=60, deadline=None)
@given(st.floats(-180.0, 180.0), st.floats(-90.0, 90.0))
def test_declination_is_a_turn_everywhere(longitude_deg: float, latitude_deg: float) -> None:
    found = declination(longitude_deg, latitude_deg, date=DAY)
    assert -180.0 < found.degrees <= 180.0
    assert found.sd_deg >= 0.26


def test_the_library_is_only_read_when_it_is_needed() -> None:
    import subprocess
    import sys

    code = "import sys, audit.leg_card; print('pygeomag' in sys.modules, 'mgrs' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "False"]
