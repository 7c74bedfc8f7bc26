"""How a line is read: steps, what counts as held, as another bearing; all chosen."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShapeSettings:
    """What makes a bend, and a stretch on another bearing."""

    step_m: float = 8.0
    """Headings are taken over steps of this length."""
    own_wander_m: float = 40.0
    """Headings this far apart along the way are separate evidence of a bearing held."""
    least_steps: int = 12
    least_chord_m: float = 80.0
    longest_of_chord: float = 3.0
    """A leg of fewer steps, a shorter one, and a walk that is so much longer show no line."""
    held_deg: float = 50.0
    """Within so much of the leg's own heading its line was held."""
    least_held_steps: int = 8
    """Of fewer steps that were held no bend is told; chosen."""
    clipped_deg: float = 75.0
    """No single step counts for more."""
    shortest_other_steps: int = 3
    longest_other_share: float = 0.55
    """Of a leg, what one stretch on another bearing may be."""
    least_wander_deg: float = 4.0
    """Nobody is taken to hold his line better than this from step to step; chosen."""
