"""Halts, the path between them and the receiver's noise, on walks drawn by hand."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, receiver

from audit.matching.halts import find_movement
from audit.matching.walk_samples import sample_walk

S = SETTINGS.matching


def movement_of(clean):
    samples = sample_walk(clean, S)
    return samples, find_movement(samples, S)


@pytest.mark.parametrize("every_s", [1, 5, 10])
@pytest.mark.parametrize("noise_m", [0.0, 3.0])
def test_halts_of_a_minute_are_found_where_they_are(every_s, noise_m) -> None:
    walk = HandWalk().halt(90).walk(90, 300).halt(60).walk(0, 300).halt(120)
    clean = walk.clean(every_s, receiver(2, noise_m) if noise_m else None)
    samples, movement = movement_of(clean)
    found = samples.time_s[movement.halts]
    assert len(found) == 3
    for (first, last), (begun, ended) in zip(found, walk.halts, strict=True):
        assert first == pytest.approx(begun, abs=max(10.0, 1.5 * every_s))
        assert last == pytest.approx(ended, abs=max(10.0, 1.5 * every_s))
    assert movement.halted_s[-1] == pytest.approx(270.0, abs=40.0)
    assert movement.walking_m_s == pytest.approx(1.25, abs=0.15)


def test_even_walk_has_no_halt_and_its_path() -> None:
    _, movement = movement_of(HandWalk().walk(33, 1000).clean())
    assert len(movement.halts) == 0
    # The first and the last step hold fixes of one side only: half a second at each end.
    assert movement.path_m[-1] == pytest.approx(1000.0, abs=2.0)
    assert movement.halted_s[-1] == 0.0
    assert movement.noise_m == S.prior_noise_m  # nothing to learn it from
    assert movement.noise_from_s == 0.0


def test_path_does_not_grow_while_halted() -> None:
    walk = HandWalk().walk(90, 300).halt(900).walk(90, 300)
    _, movement = movement_of(walk.clean(1, receiver(5, 5.0)))
    assert movement.path_m[-1] == pytest.approx(600.0, rel=0.08)
    assert np.all(np.diff(movement.path_m) >= 0.0)


@pytest.mark.parametrize("noise_m", [2.5, 4.0, 8.0])
def test_noise_is_estimated_from_long_halts(noise_m) -> None:
    found = []
    for seed in range(8):
        walk = HandWalk().halt(400).walk(90, 400).halt(400).walk(0, 400).halt(400)
        found.append(movement_of(walk.clean(1, receiver(seed, noise_m)))[1].noise_m)
    # Twenty minutes hold some 40 independent looks: a tenth; the prior pulls toward 5 m.
    assert np.mean(found) == pytest.approx(noise_m, rel=0.2)


def test_noise_keeps_within_its_limits() -> None:
    still = HandWalk().halt(3000).walk(90, 300)
    assert movement_of(still.clean())[1].noise_m == S.least_noise_m
    assert movement_of(still.clean(1, receiver(1, 60.0)))[1].noise_m <= S.most_noise_m
