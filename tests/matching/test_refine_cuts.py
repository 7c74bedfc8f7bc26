"""Cuts put to the second where two straight pieces meet."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import BEGIN, SETTINGS, HandWalk, receiver

from audit.matching.refine_cuts import refine_cut

S = SETTINGS.matching


@pytest.mark.parametrize("off_s", [-9.0, -4.0, 0.0, 4.0, 9.0])
def test_bend_without_a_halt_is_found_to_the_second(off_s) -> None:
    clean = HandWalk().walk(90, 200).walk(0, 200).clean()
    found = refine_cut(clean, BEGIN + 160.0 + off_s, -np.inf, np.inf, S)
    assert found == pytest.approx(BEGIN + 160.0, abs=1.0)


def test_bend_is_found_under_noise() -> None:
    errors = []
    for seed in range(20):
        clean = HandWalk().walk(90, 200).walk(0, 200).clean(1, receiver(seed, 3.0))
        errors.append(refine_cut(clean, BEGIN + 166.0, -np.inf, np.inf, S) - BEGIN - 160.0)
    assert np.median(np.abs(errors)) <= 3.0
    assert np.max(np.abs(errors)) <= 6.0 + S.refine_move_s


def test_straight_walk_leaves_the_cut_where_it_is() -> None:
    clean = HandWalk().walk(90, 400).clean()
    assert refine_cut(clean, BEGIN + 150.0, -np.inf, np.inf, S) == BEGIN + 150.0


def test_cut_does_not_pass_its_neighbours() -> None:
    clean = HandWalk().walk(90, 200).walk(0, 200).clean()
    found = refine_cut(clean, BEGIN + 152.0, BEGIN + 140.0, BEGIN + 156.0, S)
    assert BEGIN + 140.0 <= found <= BEGIN + 156.0


@pytest.mark.parametrize("every_s", [10, 30])
def test_sparse_recordings_and_those_without_times_are_left_alone(every_s) -> None:
    walk = HandWalk().walk(90, 200).walk(0, 200)
    for clean in (walk.clean(every_s), walk.clean(timed=False)):
        assert refine_cut(clean, BEGIN + 152.0, -np.inf, np.inf, S) == BEGIN + 152.0
