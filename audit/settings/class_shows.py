"""When a class shows something of its course, its compasses, its legs or its company."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassShowsSettings:
    """Thresholds; chosen on made classes of the development seeds unless a source is named."""

    able_share: float = 0.6
    """Who found this share of the other points is able; chosen: below it a walker's misses say
    more of him than of the course."""
    least_walkers: int = 5
    """Of able walkers at a point; chosen: of fewer, chance alone lets all miss to one side."""
    gathered_m: float = 20.0
    gathered_sds: float = 3.0
    """Walkers stand at one place within this, or within so many of their standard errors;
    chosen: a marker is seen from farther, but left from nearer."""
    gathered_share: float = 0.5
    least_gathered: int = 4
    """Of the able walkers, and how many at least; chosen: some never find the marker, most do."""
    usual_noise_m: float = 4.5
    """Of a walker whose recording shows no noise of its own; chosen: a usual receiver."""
    least_other_legs: int = 3
    """Of a walker's other legs, for what he turns and paces to be known; chosen: the middle of
    fewer is one of them."""
    at_point_share: float = 0.25
    """Of those who gathered, as many may leave from the planned point itself; chosen: where more
    do, the marker is in its place, and the others took something else for it."""
    sure_place: float = 0.95
    """Walks that all came the same way are read alike: only where the middle one is so sure of
    its parts is their scatter the error of the place; chosen: as the interval told, 95 in 100."""
    shift_sds: float = 4.0
    """The place where claims lie on average is off by so many standard errors; chosen: once in
    some 3000 points by chance."""
    alike_share: float = 0.8
    """Of the able walkers do not find a point that all miss alike, and of a lane's walkers
    show one mistake with the grid-magnetic angle; chosen."""
    walkers_mistake_share: float = 0.5
    """Of a walker's measured legs, the likeliest cause of which is one mistake with the
    grid-magnetic angle; chosen: whoever converts wrong does so on all, but not all show it."""
    least_carriers: int = 3
    """Different people with one compass; chosen: two may make the same mistake."""
    least_turn_deg: float = 2.25
    """A smaller turn lies within what a lensatic compass is specified to (MIL-PRF-10436, from
    memory)."""
    like_angle_deg: float = 1.5
    """A turn this near to the grid-magnetic angle may be the angle left out, and is asked about so;
    chosen: as the diagnosis tells turns apart."""
    chance_of_turn: float = 0.02
    """Of a turn as large with any of the compasses by chance; chosen: a question to a person,
    asked in vain in one class of fifty."""
    shuffles: int = 2000
    """Of who carried what; chosen: gives a chance of 0.02 to a sixth of itself."""
    clip_sds: float = 2.5
    """A walker further off than this from the middle counts as far as this; chosen."""
    least_legs: int = 3
    least_leg_walkers: int = 6
    """Legs, and walkers of a leg, for the legs to be compared; chosen."""
    sure_leg: float = 0.7
    """Of a leg whose part of the walk is less sure the miss may be another leg's; chosen: as for
    what is put before the walker."""
    chance_of_leg: float = 0.05
    """That a leg no harder than the rest is called harder, over all legs together."""
    harder_by: float = 1.5
    """A leg whose misses are less than this many times the others' is not spoken of; chosen."""
    step_s: float = 10.0
    together_m: float = 20.0
    lag_s: float = 40.0
    """Within this of where the other is, was or will be, so much earlier or later: in his
    steps; chosen: voices carry farther, receivers err by half as much."""
    about_point_m: float = 60.0
    """Nearer to a point than this everybody of a lane comes together; chosen."""
    least_together_s: float = 480.0
    """Shorter company is a talk on the way; chosen."""
    chance_quantile: float = 0.95
    more_than_chance: float = 1.5
    """Times the company that so many of other pairs stay below, had they set off as far apart;
    chosen: a few other pairs who did walk together do not hide these."""
    least_share: float = 0.6
    """Of the shorter walk, points left out; chosen: on made classes others reach a quarter."""
    least_pairs: int = 6
    """Others to compare with; chosen: with fewer they say little."""
