"""What holds of every debrief, whatever was recorded."""

from __future__ import annotations

import json
from functools import cache
from itertools import pairwise

import jsonschema
import numpy as np
import pytest
from schema.make_schema import SHIPPED

from audit.reports.json_report import render_json


@cache
def validator() -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(json.loads(SHIPPED.read_text(encoding="utf-8")))


def check(debrief) -> None:
    """The document is valid JSON of finite numbers, spans cover all, ledgers add up."""
    text = render_json(debrief)
    document = json.loads(text, parse_constant=pytest.fail)  # NaN and Infinity
    assert [error.message for error in validator().iter_errors(document)] == []
    spans = debrief.spans
    assert spans[0].first == 0
    assert spans[-1].last == len(debrief.clean) - 1
    assert all(before.last == after.first for before, after in pairwise(spans))
    for leg in debrief.legs:
        measures = leg.audit.measures
        assert (measures is not None) == (leg.audit.status == "walked")
        if measures is None:
            continue
        ledger = measures.ledger
        parts = (ledger.inherited, ledger.plan, ledger.heading, ledger.distance, ledger.detour)
        assert np.sum(parts, axis=0) == pytest.approx(ledger.total, abs=1e-6)
        assert sum(cause.probability for cause in leg.causes) == pytest.approx(1.0, abs=1e-9)
        # Of a claim in a silence only the place is reckoned: nobody was seen to be there.
        reckoned = measures.details.claim_error.marked_by == "reckoned"
        assert reckoned or measures.nearest_m <= measures.miss_m + 1e-9


def walked(debrief) -> list:
    return [leg.audit for leg in debrief.legs if leg.audit.status == "walked"]
