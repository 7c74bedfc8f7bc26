"""The pace count of strips whose truth is planted, and how honest its error is."""

from __future__ import annotations

import numpy as np
import pytest
from pacing.made_strips import recording, straight, winding
from truth.check_values import check_values

from audit.errors import InputRefusedError
from audit.pacing.pace_count import pace_count
from audit.pacing.recorded_walk import recorded_walk
from audit.settings import Settings

SEEDS = range(40)
_Z95 = 1.96


def test_a_clean_strip_gives_its_pace():
    # 300 m in 195 double paces: 65 to 100 m (exercise on TC 3-25.26).
    count = pace_count([recording(straight(300.0))], each=[195.0])
    assert count.pace == "double"
    assert count.strips[0].length.by == "ends"
    assert count.counted.per_100m == pytest.approx(65.0, abs=0.3)


def test_single_paces_are_known_by_their_number():
    # 116 single paces to 100 m on the level (STP 21-1-SMCT 071-329-1006).
    assert pace_count([recording(straight(600.0))], each=[696.0]).pace == "single"
    assert pace_count([recording(straight(600.0))], each=[390.0]).pace == "double"
    assert pace_count([recording(straight(600.0))], each=[390.0], pace="single").pace == "single"


@pytest.mark.parametrize("length_m", [150.0, 600.0])
def test_the_length_of_a_straight_strip_is_as_good_as_it_says(length_m):
    off, said = [], []
    for seed in SEEDS:
        track = recording(straight(length_m), np.random.default_rng(seed))
        (strip,) = pace_count([track], each=[0.65 * length_m]).strips
        assert strip.length.by == "ends"
        off.append(strip.length.metres - length_m)
        said.append(strip.length.sd_m)
    held = np.abs(off) <= _Z95 * np.array(said)
    # 95 in 100, less twice the chance error of 40 strips (a binomial law).
    assert held.mean() >= 0.95 - 2.0 * np.sqrt(0.95 * 0.05 / len(SEEDS))
    assert np.mean(said) < 2.0 * np.std(off)  # and no wider than it need be
    assert abs(np.mean(off)) < 2.0 * np.std(off) / np.sqrt(len(SEEDS)) + 0.5


def test_the_interval_holds_the_walkers_pace():
    # A walker of 65 to 100 m who is 3 in 100 off on any one strip; receivers of all sorts.
    held = []
    for seed in range(5000, 5060):
        rng = np.random.default_rng(seed)
        noise_m, tau_s = float(rng.uniform(2.5, 7.0)), float(rng.uniform(20.0, 120.0))
        paces = float(round(3.0 * 65.0 * np.exp(0.03 * rng.standard_normal())))
        track = recording(straight(300.0), rng, noise_m=noise_m, correlation_s=tau_s)
        rate = pace_count([track], each=[paces]).counted
        held.append(abs(rate.per_100m - 65.0) <= _Z95 * rate.sd)
    # 95 in 100, less twice the chance error of 60 strips (a binomial law).
    assert np.mean(held) >= 0.95 - 2.0 * np.sqrt(0.95 * 0.05 / len(held))


def test_a_longer_strip_is_worth_more_and_a_measured_one_most():
    rng = np.random.default_rng(5)
    short = pace_count([recording(straight(100.0), rng)], each=[65.0]).counted
    long = pace_count([recording(straight(600.0), rng)], each=[390.0]).counted
    measured = pace_count([recording(straight(100.0), rng)], each=[65.0], strip_m=100.0)
    assert long.sd < 0.6 * short.sd
    assert measured.counted.per_100m == 65.0
    assert measured.counted.sd < 0.5 * short.sd
    assert measured.strips[0].length.by == "given"


def test_one_length_of_a_winding_way_is_that_of_its_path():
    errors = []
    for seed in range(12):
        track = recording(winding(2000.0), np.random.default_rng(seed))
        (strip,) = pace_count([track], each=[1300.0]).strips
        assert strip.length.by == "path"
        errors.append((strip.length.metres - 2000.0) / strip.length.sd_m)
    assert np.abs(errors).max() < 3.0
    assert np.abs(np.mean(errors)) < 1.0


def test_several_strips_pool_and_their_differences_count():
    tracks = [recording(straight(600.0), np.random.default_rng(seed)) for seed in (1, 2, 3)]
    even = pace_count(tracks, each=[390.0, 392.0, 389.0]).counted
    uneven = pace_count(tracks, each=[350.0, 430.0, 391.0]).counted
    one = pace_count(tracks[:1], each=[390.0]).counted
    assert even.sd < one.sd
    assert uneven.sd > 2.0 * even.sd
    assert even.metres == pytest.approx(1800.0, abs=40.0)
    together = pace_count(tracks, together=1171.0)
    assert together.counted.per_100m == pytest.approx(even.per_100m)
    assert together.strips[0].counted is None


def test_standing_about_adds_nothing_to_the_way():
    # A receiver that wanders for ten minutes at either end walks no metre.
    places = straight(400.0, stand_s=600.0)
    walk = recorded_walk(recording(places, np.random.default_rng(8)), Settings())
    assert walk.walked_m == pytest.approx(400.0, abs=25.0)


def moss(slope_deg: int) -> dict[str, float]:
    """Give single paces to 100 m from Moss's steps on a slope, up, level and down."""
    steps = {row.given("slope"): row for row in check_values("step_length")}
    inches = {
        "uphill": float(steps[str(slope_deg)].wanted("up")),
        "level": float(steps["0"].wanted("up")),
        "downhill": float(steps[str(slope_deg)].wanted("down")),
    }
    return {name: 100.0 / (0.0254 * step) for name, step in inches.items()}


def made_hill(cadences: dict[str, float], slope_deg: float = 5.7) -> dict[str, np.ndarray]:
    """Give 3 km up, 3 km level, 3 km down, with its own speed and cadence on each."""
    rise = np.tan(np.radians(slope_deg))
    speeds = {"uphill": 0.9, "level": 1.3, "downhill": 1.2}
    speed = np.concatenate([np.full(int(3000.0 / v), v) for v in speeds.values()])
    slope = np.concatenate(
        [
            np.full(int(3000.0 / v), s)
            for v, s in zip(speeds.values(), (rise, 0.0, -rise), strict=True)
        ]
    )
    per_min = np.concatenate(
        [np.full(int(3000.0 / v), cadences[name] / 100.0 * v * 60.0) for name, v in speeds.items()]
    )
    along = np.concatenate([[0.0], np.cumsum(speed)])
    height = 300.0 + np.concatenate([[0.0], np.cumsum(speed * slope)])
    return {
        "places": np.column_stack([along, np.zeros_like(along)]),
        "height_m": height,
        "cadence_per_min": np.concatenate([[0.0], per_min]),
    }


@pytest.mark.parametrize("slope_deg", [5, 10])
@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_cadence_tells_uphill_level_and_downhill_apart(factor, slope_deg):
    # Some devices write one foot a minute, some both.
    planted = {name: single / 2.0 for name, single in moss(slope_deg).items()}
    hill = made_hill(planted, slope_deg)
    hill["cadence_per_min"] *= factor
    track = recording(hill.pop("places"), np.random.default_rng(2), **hill)
    count = pace_count([track])
    assert count.counted is None
    assert set(count.by_cadence_on) == set(planted)
    for name, per_100m in planted.items():
        rate = count.by_cadence_on[name]
        assert rate.per_100m == pytest.approx(per_100m, abs=_Z95 * rate.sd)
        assert rate.sd < 0.04 * per_100m
    single = pace_count([track], pace="single").by_cadence.per_100m
    assert single == pytest.approx(2.0 * count.by_cadence.per_100m)


def test_a_device_that_loses_count_makes_no_rate_smaller():
    hill = made_hill({"uphill": 65.0, "level": 65.0, "downhill": 65.0})
    hill["cadence_per_min"][1000:1600] = 0.0
    track = recording(hill.pop("places"), np.random.default_rng(3), **hill)
    count = pace_count([track])
    assert count.by_cadence.per_100m == pytest.approx(65.0, abs=_Z95 * count.by_cadence.sd)
    assert count.strips[0].cadence.left_out_m > 400.0


def test_counts_on_three_grounds_tell_them_apart():
    tracks, counts = [], []
    for slope, per_100m in ((0.1, 75.0), (0.0, 65.0), (-0.1, 66.0)) * 2:
        places = straight(800.0, 1.1)
        height = 300.0 + slope * np.hypot(*places.T)
        tracks.append(recording(places, np.random.default_rng(len(tracks)), height_m=height))
        counts.append(8.0 * per_100m)
    told = pace_count(tracks, each=counts).counted_on
    assert told["uphill"].per_100m == pytest.approx(75.0, abs=_Z95 * told["uphill"].sd)
    assert told["uphill"].per_100m > told["level"].per_100m + 5.0


@pytest.mark.parametrize(
    ("places", "paces", "match"),
    [
        (straight(600.0), 3900.0, r"64\d paces to 100 m of it; pace counts run from 30 to 250"),
        # Bug: the count made "250 paces" and was refused as beyond 250.
        (straight(600.0), 1502.0, r"250\.\d+ paces to 100 m of it; pace counts run from 30 to 250"),
        (straight(600.0), 39.0, r"6\.4\d paces to 100 m"),
        (np.zeros((300, 2)), 65.0, "nobody walking as far as 20 m"),
        (np.zeros((1, 2)), 65.0, "fewer than two places"),
    ],
)
def test_what_is_no_strip_is_refused(places, paces, match):
    track = recording(places, np.random.default_rng(4) if places.any() else None)
    with pytest.raises(InputRefusedError, match=match) as refused:
        pace_count([track], each=[paces])
    assert refused.value.problems[0].file == "strip.gpx"


def test_a_ride_to_the_strip_is_no_part_of_it():
    ride = np.column_stack([np.linspace(-3000.0, 0.0, 250), np.zeros(250)])
    places = np.vstack([ride[:-1], winding(1500.0)])
    (strip,) = pace_count([recording(places)], each=[980.0]).strips
    assert strip.length.metres == pytest.approx(1500.0, abs=60.0)
    assert strip.ridden_m == pytest.approx(3000.0, abs=60.0)


def test_without_counts_or_cadence_there_is_no_pace_count():
    assert pace_count([recording(straight(300.0))]).best is None
