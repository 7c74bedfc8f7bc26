"""The sums of a debrief are taken on one thread, and whoever calls gets his threads back."""

from __future__ import annotations

import numpy as np
import pytest
from threadpoolctl import threadpool_info, threadpool_limits
from walks import make_walk

import audit
from audit.one_thread import on_one_thread


def threads() -> set[int]:
    return {one["num_threads"] for one in threadpool_info() if one["user_api"] == "blas"}


@pytest.fixture
def two_threads():
    with threadpool_limits(2, user_api="blas"):
        if threads() != {2}:
            pytest.skip("linear algebra whose threads cannot be set")
        yield


@pytest.mark.usefixtures("two_threads")
def test_a_function_is_held_to_one_thread_and_its_caller_gets_his_back():
    assert on_one_thread(threads)() == {1}
    assert threads() == {2}


@pytest.mark.usefixtures("two_threads")
def test_threads_come_back_after_an_error():
    @on_one_thread
    def refused() -> None:
        raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        refused()
    assert threads() == {2}


@pytest.mark.usefixtures("two_threads")
def test_a_debrief_is_held_to_one_thread():
    """Bug: called from Python it cost three times the processor time of the command."""
    seen: list[set[int]] = []

    def heights(_grid: str, places: np.ndarray) -> np.ndarray:
        seen.append(threads())
        return np.full(len(places), 100.0)

    walk = make_walk(1, "ordinary")
    audit.debrief(walk.plan, walk.track, heights=heights)
    assert seen
    assert set.union(*seen) == {1}
    assert threads() == {2}
