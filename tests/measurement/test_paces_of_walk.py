"""Pace counts of legs and of a course, against sums on paper and plain least squares."""

from __future__ import annotations

import math

import numpy as np
import pytest
from measurement.hand_made import clean_of

from audit.measurement.leg_details import GroundWalked, LegPaces
from audit.measurement.paces_of_walk import (
    Cadence,
    paces_between,
    rates_by_ground,
    read_cadence,
    walk_paces,
)
from audit.settings import PaceSettings

S = PaceSettings()


def ground(up_m=0.0, level_m=0.0, down_m=0.0, *, trusted=True) -> GroundWalked:
    return GroundWalked(
        trusted=trusted, why_not="", along_m=np.empty(0), elevation_m=np.empty(0),
        uphill_m=up_m, level_m=level_m, downhill_m=down_m,
    )  # fmt: skip


def counted(paces: float | None, by_cadence: float | None = None) -> LegPaces:
    return LegPaces(
        predicted=None, counted=paces, per_100m=None, per_100m_sd=None, by_cadence=by_cadence
    )


@pytest.mark.parametrize(
    ("written", "unit", "own"),
    [
        # Walkers take 90 to 125 steps a minute; devices write them, or those of one foot.
        (112.0, "double", 56.0),
        (112.0, "single", 112.0),
        (56.0, "double", 56.0),
        (56.0, "single", 112.0),
        (80.0, "double", 80.0),
    ],
)
def test_a_cadence_is_brought_into_the_paces_that_the_walker_counts(written, unit, own) -> None:
    read = read_cadence(np.full(30, written), unit, S)
    assert read is not None
    assert read.per_min == pytest.approx(np.full(30, own))


def test_standing_and_silence_tell_no_cadence() -> None:
    """Most of it zero or unknown: what there is while walking decides, if it is enough."""
    moving = np.full(S.least_cadences, 110.0)
    mixed = np.concatenate([moving, np.zeros(60), np.full(60, np.nan)])
    read = read_cadence(mixed, "double", S)
    assert read is not None
    assert read.per_min[:3].tolist() == [55.0, 55.0, 55.0]
    assert read_cadence(mixed[1:], "double", S) is None
    assert read_cadence(None, "double", S) is None


def test_a_cadence_adds_up_to_the_paces_between_two_moments() -> None:
    """From 60 to 120 a minute in 100 s, evenly: 90 a minute, 150 paces; a part by its own mean."""
    time_s = np.arange(0.0, 101.0, 5.0)
    clean = clean_of(1000.0 + time_s, np.column_stack([time_s, time_s]))
    cadence = Cadence(per_min=60.0 + 0.6 * time_s)
    assert paces_between(clean, cadence, 1000.0, 1100.0, S) == pytest.approx(150.0)
    # 20 to 60 s: 72 to 96 a minute, 84 on the mean, for 40 s.
    assert paces_between(clean, cadence, 1020.0, 1060.0, S) == pytest.approx(84.0 * 40.0 / 60.0)


def test_what_is_missing_of_a_cadence_is_filled_up_to_a_limit() -> None:
    time_s = np.arange(0.0, 101.0, 5.0)
    clean = clean_of(1000.0 + time_s, np.column_stack([time_s, time_s]))
    for known_until, found in ((75.0, 100.0), (70.0, 100.0), (65.0, None)):
        per_min = np.where(time_s <= known_until, 60.0, np.nan)
        paces = paces_between(clean, Cadence(per_min=per_min), 1000.0, 1100.0, S)
        assert paces == (None if found is None else pytest.approx(found)), known_until
    nothing = Cadence(per_min=np.full(len(time_s), np.nan))
    assert paces_between(clean, nothing, 1000.0, 1100.0, S) is None


def test_paces_of_a_course_are_all_paces_over_all_metres() -> None:
    """260 on 400 m and 400 on 600 m are 66 to 100 m; legs without a count are left out."""
    legs = [(counted(260.0, 250.0), ground(level_m=400.0), 400.0),
            (counted(400.0), ground(level_m=600.0), 600.0),
            (counted(None), ground(level_m=900.0), 900.0)]  # fmt: skip
    found = walk_paces(legs, "double", S)
    assert found.counted is not None
    assert found.counted.per_100m == pytest.approx(66.0)
    assert found.counted.metres == 1000.0
    # Off the common rate by 4 each way, and by the usual 3 in 100 of 264 and 396 paces.
    square = 2.0 * 4.0**2 + ((0.03 * 264.0) ** 2 + (0.03 * 396.0) ** 2) / 2.0
    assert found.counted.sd == pytest.approx(100.0 * math.sqrt(square * 3.0 / 2.0) / 1000.0)
    assert found.by_cadence is not None
    assert (found.by_cadence.per_100m, found.by_cadence.metres) == (pytest.approx(62.5), 400.0)
    assert walk_paces(legs[2:], "double", S).counted is None


def test_rates_by_ground_are_those_of_least_squares_with_what_is_usual() -> None:
    """The prior as three more rows of an ordinary least-squares problem."""
    legs = [(300.0, ground(250.0, 150.0, 0.0), 400.0), (390.0, ground(50.0, 350.0, 200.0), 600.0),
            (200.0, ground(0.0, 100.0, 210.0), 310.0)]  # fmt: skip
    found = rates_by_ground(legs, S)
    usual = (300.0 + 390.0 + 200.0) / (400.0 + 600.0 + 310.0)
    metres = np.array([[250.0, 150.0, 0.0], [50.0, 350.0, 200.0], [0.0, 100.0, 210.0]])
    counts = np.array([300.0, 390.0, 200.0])
    rows = np.vstack([metres / (0.03 * counts)[:, None], np.eye(3) / (0.15 * usual)])
    wanted = np.append(counts / (0.03 * counts), np.full(3, 1.0 / 0.15))
    rate, *_ = np.linalg.lstsq(rows, wanted, rcond=None)
    sd = np.sqrt(np.diag(np.linalg.inv(rows.T @ rows)))
    for number, name in enumerate(("uphill", "level", "downhill")):
        assert found[name].per_100m == pytest.approx(100.0 * rate[number])
        assert found[name].sd == pytest.approx(100.0 * sd[number])
        assert found[name].metres == pytest.approx(metres[:, number].sum())


def test_ground_that_was_hardly_walked_or_is_not_known_has_no_rate() -> None:
    legs = [(260.0, ground(199.0, 200.0, 1.0), 400.0), (1.0, ground(1e4, trusted=False), 1e4)]
    assert set(rates_by_ground(legs, S)) == {"level"}
    assert rates_by_ground(legs[1:], S) == {}


def test_paces_counted_on_legs_without_way_have_no_rate() -> None:
    # Found by trying whole walks: a count of 400 for a leg whose two ends are one place.
    legs = [(counted(400.0), ground(), 0.0)]
    found = walk_paces(legs, "double", S)
    assert (found.counted, found.counted_on) == (None, {})


def test_of_one_leg_the_usual_error_of_a_count_is_all_there_is() -> None:
    """3 in 100 of 260 paces, its square doubled: one leg cannot show how legs differ."""
    found = walk_paces([(counted(260.0), ground(level_m=400.0), 400.0)], "double", S).counted
    assert found is not None
    assert found.sd == pytest.approx(100.0 * 0.03 * 260.0 * math.sqrt(2.0) / 400.0)
