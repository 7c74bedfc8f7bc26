"""At what sizes mistakes are rehearsed that have none of their own, and what tells ends apart."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RehearsalSettings:
    """How mistakes are walked on paper; all chosen unless a source is named."""

    veer_deg: float = 30.0
    """Heading at the end of an evenly bent line less that at its start."""
    bypass_side_m: float = 40.0
    bypass_ahead_m: float = 60.0
    bypass_back_share: float = 0.5
    """Sides of a boxed obstacle; of an unequal one only half is walked back."""
    bypass_side_share: float = 0.2
    bypass_ahead_share: float = 0.3
    bypass_begins_share: float = 0.4
    """Of the leg, what a side and the way past it are at the most, and where it is come to."""
    dodge_m: float = 15.0
    dodge_share: float = 0.1
    dodges: int = 3
    """Obstacles passed on one side, and how far aside each leaves the walker; of a short leg no
    more than this share of it."""
    handrail_deg: float = 35.0
    handrail_m: float = 200.0
    disturbed_deg: float = 40.0
    disturbed_m: float = 80.0
    """Iron and wires act within 55 m to either side at most (FM 21-26, 1993, 9-1)."""
    off_share: float = 0.4
    off_begins_share: float = 0.3
    """No stretch on another bearing takes more than this share of a leg; it begins after so
    much."""
    wrong_start_m: float = 100.0
    passed_on_m: float = 100.0
    wrong_place_m: float = 100.0
    """How far off a marker stands that was put in a wrong place, on either axis of the grid."""
    datum_m: float = 200.0
    """From a map on an older datum: some hundred metres, as regional datums of the last century
    lie off WGS 84 (common practice, no source); the map in hand says how far and where to."""
    told_apart: float = 0.95
    """Two ends are told apart where a measured one would be laid to the right mistake so often."""
    most_told_pairs: int = 6
    """Of look-alikes of a leg on the page, the likeliest; all are in the document."""
    told_pairs_tried: int = 6
    """For so many of the likeliest look-alikes of a leg a change is looked for."""
    lengthen_m: tuple[float, ...] = (50.0, -50.0, 100.0, -100.0, 150.0, -150.0, 200.0, 300.0)
    turn_deg: tuple[float, ...] = (5.0, -5.0, 10.0, -10.0, 15.0, -15.0, 20.0, -20.0, 30.0, -30.0)
    together_m: float = 100.0
    together_deg: float = 10.0
    """Changes of a leg that are tried, alone and one of each together, these up to so much."""
    hidden: float = 0.95
    """A mistake that ends where so many ordinary walks do hides in ordinary error; the usual."""
    shortest_leg_m: float = 200.0
    """No leg is shortened below this."""
    walking_m_s: float = 1.2
    fix_s: float = 5.0
    halt_s: float = 60.0
    """Of the teaching tracks: pace, time between fixes, and the halt at either end."""
    probe_m: float = 30.0
    """The fall of the ground across a leg is taken this far to either side."""
