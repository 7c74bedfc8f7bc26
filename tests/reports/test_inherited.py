"""A leg that began off its point and went as planned has no miss of its own."""

from __future__ import annotations

from dataclasses import replace

import pytest
from reports.sample_debrief import sample_debrief

from audit.debriefing.finished_debrief import LegDebrief
from audit.diagnosis.finding import Finding
from audit.reports import wording


def leg(start: tuple[float, float], total: tuple[float, float], cause: str) -> LegDebrief:
    one = sample_debrief().legs[0]
    measures = one.audit.measures
    ledger = replace(measures.ledger, inherited=start, total=total)
    miss_m = (total[0] ** 2 + total[1] ** 2) ** 0.5
    measures = replace(measures, ledger=ledger, miss_m=miss_m, miss_sd_m=4.0)
    found = (Finding(cause=cause, probability=0.92, evidence=""),)
    return replace(one, audit=replace(one.audit, measures=measures), causes=found)


@pytest.mark.parametrize(
    ("start", "total", "cause", "came_with_it"),
    [
        ((60.0, 0.0), (64.0, 3.0), "within-skill", True),  # 5 m of its own
        ((60.0, 0.0), (64.0, 60.0), "within-skill", False),  # 60 m of its own
        ((9.0, 0.0), (10.0, 0.0), "within-skill", False),  # nothing worth telling
        ((60.0, 0.0), (64.0, 3.0), "veer", False),
    ],
)
def test_a_miss_that_came_with_the_start(start, total, cause, came_with_it) -> None:
    said = str(wording.cause(leg(start, total, cause)))
    assert said.endswith("(92 %)")
    assert ("a start away from its point" in said) is came_with_it
