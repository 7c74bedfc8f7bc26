"""What is said and drawn for people."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportSettings:
    """What is said and drawn for people."""

    named_cause_probability: float = 0.5
    """A cause is named alone from here on, below it with its runner-up; chosen: more likely
    than not."""
    shown_cause_probability: float = 0.05
    """Less probable candidates are counted and not told; chosen: one in twenty."""
    shown_causes: int = 4
    """No more candidates than this are told of one leg; chosen: they must be weighed at a look."""
    told_inherited_m: float = 25.0
    """A miss of this much or more is said to have come with the start where it did; chosen: below
    it most walkers see the point all the same."""
    ordinary_share: float = 0.3
    """A distance out by more than this share of the card's is not told as ordinary error; chosen:
    five times the ordinary scatter of a pace count."""
    alike_parts: float = 0.8
    """The second part of a miss is told with the largest from this share of it on; chosen: by
    less than a fifth one is not "mostly" the reason."""
    told_past_m: float = 50.0
    """After the claim straight on past the point by this much is told with how the leg ended;
    chosen: who looks about for a point in sight goes less far."""
    told_elsewhere_m: float = 50.0
    told_nearer_m: float = 20.0
    """A recording that comes so near to a point outside its leg's part is told to, if that is so
    much nearer than on the leg; chosen: further off nobody would have seen it."""
    told_stories: int = 2
    """So many mistakes that legs share are told at the head of the debrief; chosen."""
    thinning_m: float = 1.0
    """Drawn lines keep within this of the recording; chosen: below any receiver's noise."""
    thinning_px: float = 0.25
    """Or within this of a pixel of the drawing, where that is more; chosen: cannot be seen."""
    pictured_legs: int = 20
    """The page draws no more legs than this, those that missed by most; chosen: 40 kB a leg, in
    two megabytes of page. The others are told in few words; paper and picture files draw all."""
    long_course_legs: int = 36
    legs_a_picture_less: int = 12
    """On longer courses one leg less is drawn for so many legs more, but four at least; chosen:
    table, words and map of those take its room."""
    cursor_moments: int = 2400
    """The cursor of the page can stand at this many moments of the walk; chosen: every nine
    seconds of six hours, and 100 kB."""
