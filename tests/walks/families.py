"""The named families of made walks.

All numbers are chosen. Receiver noise follows what still receivers show (published:
autocorrelation bends near a minute, with a slow part of many minutes; 3 to 7 m under
trees), compass skill the standards of 3 degrees sighted and 10 held low. How often a
mistake happens is published nowhere.

``trained``, ``ordinary`` and ``novice`` are set so that the research prototype of the
matching scores on them about what it scored on the walks that it was measured on
(0.97, 0.91 and 0.78 of the legs; here 0.96, 0.89 and 0.79 in 200 development walks).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from walks.difficulties import Difficulty


def _scaled(chances: Mapping[str, float], by: float) -> dict[str, float]:
    return {cause: chance * by for cause, chance in chances.items()}


WALK_MISTAKES = {
    "gm-angle-omitted": 0.07,
    "gm-angle-reversed": 0.03,
    "gm-angle-doubled": 0.02,
    "declination-for-gm-angle": 0.02,
    "gm-angle-stale": 0.02,
    "steady-bias": 0.06,
    "pace-long": 0.05,
    "pace-short": 0.05,
    "single-double-pace": 0.006,
    "wrong-mil-circle": 0.006,
    "sidehill": 0.05,
    "wrong-start": 0.02,
}

LEG_MISTAKES = {
    "gm-angle-omitted": 0.010,
    "gm-angle-reversed": 0.004,
    "gm-angle-doubled": 0.003,
    "reciprocal": 0.006,
    "right-angle": 0.003,
    "bezel-clicks": 0.020,
    "dial-misread": 0.020,
    "bezel-wrong-way": 0.003,
    "mils-as-degrees": 0.003,
    "azimuth-digits": 0.004,
    "neighbour-azimuth": 0.004,
    "magnetic-disturbance": 0.006,
    "hundred-miscounted": 0.030,
    "early-stop": 0.015,
    "overshoot": 0.040,
    "bypass-paced": 0.010,
    "bypass-unequal": 0.015,
    "obstacle-one-side": 0.010,
    "veer": 0.030,
    "handrail": 0.012,
    "digits-transposed": 0.004,
    "digit-wrong": 0.008,
    "easting-northing-swapped": 0.002,
    "wrong-plotting-scale": 0.003,
    "wrong-point": 0.006,
    "passed-unseen": 0.020,
}

CLEAN = Difficulty(
    name="clean",
    legs=(3, 8),
    leg_m=(150.0, 900.0),
    marked=0.0,
    approach_m=(60.0, 300.0),
    halt_at_point_s=(30.0, 120.0),
)
"""No error of walker or receiver, a halt at every point: the truth is plain to see."""

TRAINED = Difficulty(
    name="trained",
    leg_m=(150.0, 2000.0),
    bias_sd_deg=1.2,
    leg_sd_deg=1.8,
    sighting_sd_deg=1.5,
    wander_deg=(3.0, 6.0),
    pace_sd=0.03,
    leg_pace_sd=0.015,
    walk_mistakes=_scaled(WALK_MISTAKES, 0.3),
    leg_mistakes=_scaled(LEG_MISTAKES, 0.2),
    notices=0.7,
    halt_at_point=0.97,
    halts_per_km=0.3,
    boxed=0.05,
    sees=0.95,
    finds=0.97,
    skips=0.02,
    approach_m=(0.0, 500.0),
    vehicle=0.05,
    pace_strip=0.05,
    two_walks=0.02,
    noise_m=(2.0, 4.0),
    correlation_s=(15.0, 120.0),
    slow_share=(0.0, 0.4),
    white_m=0.2,
    spikes_per_h=0.3,
    gaps_per_h=0.1,
    interval_s=(1.0, 1.0, 1.0, 2.0, 4.0, 5.0),
    decimals=(6, 6, 7, 8),
)

ORDINARY = Difficulty(
    name="ordinary",
    leg_m=(100.0, 2000.0),
    close_points=0.03,
    collinear=0.03,
    bias_sd_deg=2.0,
    leg_sd_deg=3.0,
    sighting_sd_deg=2.5,
    wander_deg=(5.0, 9.0),
    pace_sd=0.05,
    leg_pace_sd=0.025,
    walk_mistakes=_scaled(WALK_MISTAKES, 0.7),
    leg_mistakes=_scaled(LEG_MISTAKES, 0.4),
    halt_at_point=0.93,
    halts_per_km=0.6,
    boxed=0.1,
    sees=0.85,
    finds=0.88,
    halt_before_search=0.8,
    skips=0.06,
    swaps=0.02,
    repeats=0.015,
    lost=0.01,
    abandons=0.03,
    approach_m=(0.0, 900.0),
    vehicle=0.1,
    pace_strip=0.05,
    two_walks=0.03,
    starts_late=0.03,
    ends_early=0.03,
    noise_m=(2.5, 6.0),
    correlation_s=(20.0, 150.0),
    slow_share=(0.0, 0.6),
    white_m=0.3,
    under_trees=0.15,
    spikes_per_h=1.0,
    gaps_per_h=0.5,
    interval_s=(1.0, 1.0, 2.0, 4.0, 5.0, 8.0, 10.0, 15.0),
    by_distance=0.1,
    decimals=(5, 6, 6, 7),
)

WORST_DAY = Difficulty(
    name="worst-day",
    legs=(3, 12),
    leg_m=(80.0, 1500.0),
    leg_median_m=350.0,
    close_points=0.05,
    collinear=0.05,
    speed_m_s=(0.6, 1.3),
    bias_sd_deg=3.0,
    leg_sd_deg=5.0,
    sighting_sd_deg=4.0,
    wander_deg=(6.0, 15.0),
    wander_s=(15.0, 60.0),
    pace_sd=0.08,
    leg_pace_sd=0.05,
    walk_mistakes=_scaled(WALK_MISTAKES, 1.6),
    leg_mistakes=_scaled(LEG_MISTAKES, 1.3),
    notices=0.3,
    halt_at_point=0.75,
    halt_at_point_s=(8.0, 240.0),
    halts_per_km=1.2,
    boxed=0.15,
    sees=0.7,
    finds=0.75,
    sight_m=(6.0, 25.0),
    halt_before_search=0.55,
    skips=0.15,
    swaps=0.04,
    repeats=0.03,
    lost=0.03,
    abandons=0.08,
    approach_m=(0.0, 1200.0),
    vehicle=0.1,
    pace_strip=0.08,
    two_walks=0.04,
    starts_late=0.06,
    ends_early=0.06,
    noise_m=(4.0, 10.0),
    correlation_s=(20.0, 180.0),
    slow_share=(0.0, 0.8),
    white_m=0.4,
    under_trees=0.4,
    spikes_per_h=2.0,
    gaps_per_h=1.5,
    gap_s=(20.0, 300.0),
    interval_s=(1.0, 1.0, 2.0, 4.0, 5.0, 10.0, 15.0, 20.0, 30.0, 60.0),
    by_distance=0.15,
    decimals=(5, 6, 6, 7),
)

NOVICE = replace(
    WORST_DAY,
    name="novice",
    leg_sd_deg=4.0,
    sighting_sd_deg=3.5,
    wander_deg=(5.0, 11.0),
    wander_s=(15.0, 50.0),
    pace_sd=0.07,
    leg_pace_sd=0.04,
    walk_mistakes=WALK_MISTAKES,
    leg_mistakes=_scaled(LEG_MISTAKES, 0.8),
    halt_at_point=0.9,
    halts_per_km=0.9,
    boxed=0.12,
    finds=0.8,
    halt_before_search=0.7,
    skips=0.1,
    swaps=0.02,
    repeats=0.02,
    lost=0.01,
    abandons=0.06,
    starts_late=0.04,
    ends_early=0.04,
    noise_m=(3.0, 7.0),
    correlation_s=(20.0, 180.0),
    slow_share=(0.0, 0.7),
    under_trees=0.4,
    interval_s=(1.0, 1.0, 2.0, 4.0, 5.0, 10.0, 15.0, 20.0, 30.0),
    by_distance=0.12,
)
"""Novices under trees: gaps, searches, skipped points; still people who halt at points."""

DIFFICULTIES: dict[str, Difficulty] = {
    difficulty.name: difficulty
    for difficulty in (
        CLEAN,
        replace(CLEAN, name="clean-marked", marked=1.0),
        replace(CLEAN, name="noisy", noise_m=(4.0, 8.0), correlation_s=(20.0, 90.0)),
        replace(CLEAN, name="sparse", noise_m=(3.0, 3.0), interval_s=(30.0, 60.0)),
        replace(
            CLEAN,
            name="skilled-person",
            bias_sd_deg=2.0,
            leg_sd_deg=2.5,
            wander_deg=(4.0, 8.0),
            pace_sd=0.04,
            leg_pace_sd=0.02,
            noise_m=(3.0, 4.0),
        ),
        TRAINED,
        ORDINARY,
        NOVICE,
        WORST_DAY,
    )
}
