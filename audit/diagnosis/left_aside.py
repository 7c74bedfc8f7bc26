"""What walking round obstacles leaves of a line: steps aside that are not taken back."""

from __future__ import annotations

from collections.abc import Iterable

from audit.measurement.leg_details import Bypass


def left_aside_m(bypasses: Iterable[Bypass]) -> float:
    """Give how far right of their line all these bypasses together put the walk."""
    return sum(
        (one.out_m - one.back_m) * (1.0 if one.side == "right" else -1.0) for one in bypasses
    )


def passed_on_one_side(bypasses: Iterable[Bypass]) -> tuple[Bypass, ...]:
    """Give the obstacles that were passed without a way back, if all were on one side."""
    passed = tuple(one for one in bypasses if not one.returned)
    return passed if len({one.side for one in passed}) == 1 else ()
