"""Which signs and fillings a class page shows, so that its keys list no other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from audit.reports.class_matrix import LaneTable
from audit.reports.class_tables import Bar, LegRow, TimeRow


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownSigns:
    """Grades of the points, whether one is left out, and fillings of the bars of legs and times."""

    grades: frozenset[str]
    left_out: bool
    bars: frozenset[str]
    times: frozenset[str]


def shown_signs(
    tables: Sequence[LaneTable], legs: Sequence[LegRow], times: Sequence[TimeRow]
) -> ShownSigns:
    """Look through all that is set on the page."""
    cells = [cell for table in tables for row in table.rows for cell in row.cells]
    left_out = any(cell.left_out for cell in cells)
    left_out |= any(not counts for table in tables for _, _, counts in table.columns)
    return ShownSigns(
        grades=frozenset(cell.grade for cell in cells),
        left_out=left_out,
        bars=_filled(row.bar for row in legs),
        times=_filled(row.bar for row in times),
    )


def _filled(bars: Iterable[Bar]) -> frozenset[str]:
    return frozenset(kind for bar in bars for kind, _, _ in bar.parts)
