"""Runs of samples, counted on paper."""

from __future__ import annotations

import numpy as np
import pytest

from audit.statistics.runs import runs_of_one, runs_of_true


@pytest.mark.parametrize(
    ("holds", "runs"),
    [
        ("", []),
        ("000", []),
        ("111", [[0, 3]]),
        ("0110", [[1, 3]]),
        ("1001011", [[0, 1], [3, 4], [5, 7]]),
    ],
)
def test_a_run_of_what_holds_begins_and_ends_with_it(holds, runs) -> None:
    assert runs_of_true(np.array([one == "1" for one in holds], dtype=bool)).tolist() == runs


@pytest.mark.parametrize(
    ("values", "runs"),
    [
        ([], []),
        ([5.0], [[0, 1]]),
        ([2, 2, 2], [[0, 3]]),
        ([0.0, 1.0, 1.0, -1.0, 0.0, 0.0], [[0, 1], [1, 3], [3, 4], [4, 6]]),
    ],
)
def test_runs_of_one_value_are_all_samples_in_their_order(values, runs) -> None:
    assert runs_of_one(np.array(values)).tolist() == runs
