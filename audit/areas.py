"""Areas of the ground that matter to a course: its bounds, and where nobody is to go."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

AreaKind = Literal["bounds", "no-go", "hazard", "road"]
AREA_KINDS: tuple[AreaKind, ...] = get_args(AreaKind)
"""The ground of the course; where nobody may go; where care is needed; roads, which are lines."""

Ring = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """One area, or a line: a hazard all along, or a road.

    Attributes
    ----------
    parts : tuple of polygons
        Each polygon is its outer ring and then its holes, each ring (longitude, latitude)
        in degrees on WGS 84. Empty where the area is a line.
    lines : tuple of rings
        The lines of a hazard without breadth, a cliff's edge or a stream, or of a road.
    """

    name: str
    kind: AreaKind
    parts: tuple[tuple[Ring, ...], ...] = ()
    lines: tuple[Ring, ...] = ()
