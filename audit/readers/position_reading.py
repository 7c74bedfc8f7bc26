"""What reading a written position gives: the place, its grid, or why it cannot be taken."""

from __future__ import annotations

from dataclasses import dataclass

from audit.errors import AuditError
from audit.positions import Position


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionReading:
    """A place, and the code of the grid that its reference is drawn on (None: no grid)."""

    position: Position
    grid_code: str | None = None


class PositionRefusedError(AuditError):
    """A written position cannot be taken.

    Attributes
    ----------
    rule, remedy : str
        What is wrong, to follow the quoted value; and what to write instead.
    needs_grid : bool
        Whether it could be taken if the right course grid were named.
    """

    def __init__(self, rule: str, remedy: str, *, needs_grid: bool = False) -> None:
        self.rule, self.remedy, self.needs_grid = rule, remedy, needs_grid
        super().__init__(f"{rule}. {remedy}")


def two_readings(first: str, second: str, remedy: str) -> PositionRefusedError:
    """Give the refusal of a position that can be meant in two ways."""
    return PositionRefusedError(f"can be read as {first} or as {second}", remedy)
