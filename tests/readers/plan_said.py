"""What a plan that was read says, and what is said of one that was refused."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from audit.errors import InputRefusedError
from audit.plan import Plan


def legs_of(plan: Plan) -> list[tuple[str, str, str]]:
    return [(leg.name, leg.start, leg.end) for leg in plan.legs]


def stops_of(plan: Plan) -> list[str]:
    return [plan.legs[0].start, *(leg.end for leg in plan.legs)]


def refusal(read: Callable[..., Plan], *asked, **options) -> list[str]:
    """Every problem with which a reader refuses what it is asked to read."""
    with pytest.raises(InputRefusedError) as refused:
        read(*asked, **options)
    return [str(problem) for problem in refused.value.problems]
