"""Distance over the ground must not grow with the logging rate, nor with a restless receiver."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, measure, receiver


@pytest.fixture(scope="module")
def kilometre():
    return HandWalk().halt(60).mark("start").walk(90, 1000).mark("claim").halt(60)


@pytest.mark.parametrize("every_s", [1, 2, 5, 10, 20, 30])
@pytest.mark.parametrize("noise_m", [2.0, 3.0, 5.0])
def test_kilometre_is_a_kilometre_at_every_logging_rate(kilometre, every_s, noise_m) -> None:
    paths = []
    for seed in range(6):
        clean = kilometre.clean(every_s, receiver(seed, noise_m))
        found = measure(
            card_of((0, 0), (1000, 0)), clean, [kilometre.portion()], kilometre.halts, noise_m
        )
        paths.append(found.legs[0].measures.path_m)
    # 2 % of the way; single walks also differ by where the receiver had its ends
    assert np.mean(paths) == pytest.approx(1000.0, abs=20.0)


def test_fuzz_of_a_halt_adds_nothing() -> None:
    # Ten minutes of a receiver that wanders by 6 m would add hundreds of metres if summed.
    with_halt = HandWalk().halt(60).mark("start").walk(90, 400).halt(600).walk(90, 400)
    with_halt.mark("claim").halt(60)
    without = HandWalk().halt(60).mark("start").walk(90, 800).mark("claim").halt(60)
    card = card_of((0, 0), (800, 0))
    excess, raw = [], []
    for seed in range(6):
        paths = []
        for walk in (with_halt, without):
            clean = walk.clean(1, receiver(seed, 6.0))
            found = measure(card, clean, [walk.portion()], walk.halts, 6.0)
            paths.append(found.legs[0].measures.path_m)
            if walk is with_halt:
                inside = (clean.time_s > walk.halts[1][0]) & (clean.time_s < walk.halts[1][1])
                steps = np.hypot(np.diff(clean.east_m[inside]), np.diff(clean.north_m[inside]))
                raw.append(steps.sum())
        excess.append(paths[0] - paths[1])
    assert min(raw) > 300.0  # the fuzz is there
    assert abs(np.mean(excess)) < 16.0  # 2 % of 800 m


def test_path_is_never_shorter_than_the_straight_way() -> None:
    walk = HandWalk().halt(60).mark("start").walk(33, 250).mark("claim").halt(60)
    angle = np.radians(33.0)
    card = card_of((0, 0), (250 * np.sin(angle), 250 * np.cos(angle)))
    for seed in range(10):
        clean = walk.clean(1, receiver(seed, 8.0))
        found = measure(card, clean, [walk.portion()], walk.halts, 8.0).legs[0].measures
        assert found.path_m >= found.straight_m - 1e-9


def test_winding_way_is_longer_than_the_straight_one() -> None:
    # Four tacks of 100 m, 30 degrees to either side: 400 m of way, 346.4 m straight.
    walk = HandWalk().halt(60).mark("start")
    for azimuth in (120, 60, 120, 60):
        walk.walk(azimuth, 100)
    walk.mark("claim").halt(60)
    clean = walk.clean()
    found = measure(card_of((0, 0), (346.41, 0)), clean, [walk.portion()], walk.halts)
    measures = found.legs[0].measures
    assert measures.straight_m == pytest.approx(346.41, abs=0.05)
    # Three corners of 60 degrees, each rounded off by about 3 m.
    assert 388.0 < measures.path_m < 400.0
