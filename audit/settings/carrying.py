"""What the card to carry, and a pace count, go by."""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.bezel import CLICK_DEG


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedCardSettings:
    """The card that the walker takes along."""

    click_deg: float = CLICK_DEG
    """A click of the bezel, where the command line gives none (``settings/bezel.py``)."""
    no_side_m: float = 3.0
    """Ending this near to a point has no side to look to; chosen: arm's length and a step, less
    than anyone walks straight."""
    too_old_years: float = 5.0
    """No angle of a map to go by from here on (common practice, no source); that it is older than
    one is a finding of the check."""
    station_m: float = 25.0
    """Heights are taken this far apart along a leg; chosen: a cell of the rasters in use, and
    short enough for the slopes of the walking rules."""
    ripple_m: float = 2.0
    """Less rise or fall than this between two turns of the ground is none; chosen: above what
    rasters ripple, below a contour."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PacingSettings:
    """How a pace count is taken from a strip, or from the cadence of a recording."""

    smoothing_s: float = 8.0
    """Of the path; chosen on made walks: less leaves noise in it, more cuts what cannot be given
    back. The ways of watches and handhelds at hand shrink evenly with the width from here on."""
    wander_prior_s: float = 60.0
    """What is known beforehand of a receiver's wander weighs as much as so long a halt; chosen."""
    given_strip_sd: float = 0.002
    """Standard error of a strip that somebody measured, as a share; chosen: 20 cm in 100 m, a tape
    laid over rough ground."""
    shortest_strip_m: float = 20.0
    """Less than this is no strip, but a receiver at rest; chosen: several times its error."""
    count_end_sd: float = 0.5
    """Paces: a strip seldom ends with a whole one; chosen: half a pace for both ends together."""
    straight_longer: float = 0.03
    """A path longer than the way from end to end by more than this share is no straight strip;
    chosen: weaving of 14 degrees."""
    straight_noise: float = 3.0
    straight_aside: float = 0.03
    """A straight strip keeps within so many times the receiver's noise, or this share of its
    length, of the line from end to end; chosen."""
    least_cadence_share: float = 0.6
    """A cadence below this share of the usual one while walking is a device that lost count;
    chosen: nobody walks on at half his cadence for long."""
    least_cadence_m: float = 200.0
    """Less than this walked with a cadence shows no pace count; chosen."""
    block_m: float = 400.0
    """Blocks of the way whose rates are taken as independent; chosen: some five minutes."""
    most_shown_sd: float = 0.1
    """A rate on one kind of ground that is worse known than this share is not told; chosen."""
