"""Adding up alternatives by their costs, against scipy's logsumexp."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import logsumexp

from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, total_cost, total_costs

cost = st.floats(-50.0, 500.0)


@settings(max_examples=80, deadline=None)
@given(costs=st.lists(cost, min_size=1, max_size=30))
def test_total_is_minus_logsumexp(costs) -> None:
    values = np.array(costs)
    assert total_cost(values) == pytest.approx(-logsumexp(-values), abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(data=st.data(), count=st.integers(1, 12))
def test_combined_is_taken_element_by_element(data, count) -> None:
    rows = np.array([data.draw(st.lists(cost, min_size=count, max_size=count)) for _ in range(3)])
    assert combined(*rows) == pytest.approx(-logsumexp(-rows, axis=0), abs=1e-9)


@settings(max_examples=80, deadline=None)
@given(pairs=st.lists(st.tuples(st.integers(0, 9), cost), max_size=40))
def test_runs_are_combined_one_by_one(pairs) -> None:
    pairs.sort(key=lambda pair: pair[0])
    keys = np.array([key for key, _ in pairs], dtype=np.int64)
    costs = np.array([value for _, value in pairs], dtype=np.float64)
    found = Runs(keys, 10).combined(costs)
    for key in range(10):
        mine = costs[keys == key]
        expected = -logsumexp(-mine) if len(mine) else IMPOSSIBLE
        assert found[key] == pytest.approx(expected, abs=1e-9)


def test_nothing_is_impossible_and_stays_a_number() -> None:
    assert total_cost(np.empty(0)) == IMPOSSIBLE
    both = combined(np.array([IMPOSSIBLE, 3.0]), np.array([IMPOSSIBLE, IMPOSSIBLE]))
    assert np.isfinite(both).all()
    assert both[1] == pytest.approx(3.0)
    assert both[0] > IMPOSSIBLE / 2


@settings(max_examples=40, deadline=None)
@given(data=st.data(), count=st.integers(1, 12))
def test_rows_are_combined_each_by_itself(data, count) -> None:
    rows = np.array([data.draw(st.lists(cost, min_size=count, max_size=count)) for _ in range(3)])
    assert total_costs(rows).tolist() == [total_cost(row) for row in rows]
    keys = np.sort(np.array(data.draw(st.lists(st.integers(0, 9), min_size=count, max_size=count))))
    runs = Runs(keys, 10)
    assert runs.combined(rows).tolist() == [runs.combined(row).tolist() for row in rows]
