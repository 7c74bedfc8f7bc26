"""How well a place is known, where that stands beside its position."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import checked_number


def with_half_square(
    table: Mapping[str, Any], reading: PositionReading | None, place: str, problems: ProblemList
) -> PositionReading | None:
    """Give the reading with the precision that its table states beside the position."""
    if reading is None or "half_square_m" not in table:
        return reading
    where = f"{place}, half_square_m"
    half_m = checked_number(table["half_square_m"], "half_square_m", where, problems)
    own_m = reading.position.half_square_m
    if half_m is None:
        return reading
    if own_m not in (0.0, half_m):
        rule = f"is not the {own_m:g} m of the square that the reference names"
        problems.add(where, half_m, rule, "Leave it out: the reference says it.")
    return replace(reading, position=replace(reading.position, half_square_m=half_m))
