"""Work that is counted in place of time: the same on every machine, whatever else it does."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from unittest import mock

import numpy as np


def calls_of(job: Callable[[], object]) -> int:
    """Give how many functions a job calls."""
    calls = 0

    def called(_frame: object, event: str, _argument: object) -> None:
        nonlocal calls
        if event in {"call", "c_call"}:
            calls += 1

    sys.setprofile(called)
    try:
        job()
    finally:
        sys.setprofile(None)
    return calls


@contextmanager
def portions_counted() -> Iterator[list[int]]:
    """Note how many portions are weighed as legs, each time that some are."""
    from audit.matching.walk_evidence import Evidence

    weighed, weigh = [], Evidence.portion_costs

    def counting(*arguments: object) -> object:
        costs = weigh(*arguments)
        weighed.append(np.size(costs))
        return costs

    with mock.patch.object(Evidence, "portion_costs", counting):
        yield weighed
