"""How often each mistake is made: chosen, for no source says; a school's counts may replace it."""

from __future__ import annotations

WALK_PRIORS: tuple[tuple[str, float], ...] = (
    ("gm-angle-omitted", 0.11),
    ("gm-angle-reversed", 0.05),
    ("gm-angle-doubled", 0.035),
    ("declination-for-gm-angle", 0.02),
    ("gm-angle-stale", 0.02),
    ("steady-bias", 0.07),
    ("reciprocal", 0.004),
    ("bezel-wrong-way", 0.003),
    ("mils-as-degrees", 0.002),
    ("wrong-mil-circle", 0.005),
    ("sidehill", 0.03),
    ("pace-long", 0.05),
    ("pace-short", 0.05),
    ("single-double-pace", 0.004),
    ("wrong-ruler", 0.004),
    ("slope-paced", 0.03),
)
"""That the walker did this on this walk, on more legs than one. A track shows the wrong ruler and
single for double paces alike, and no source says which is the commoner: they weigh the same."""

LEG_PRIORS: tuple[tuple[str, float], ...] = (
    ("gm-angle-omitted", 0.012),
    ("gm-angle-reversed", 0.006),
    ("gm-angle-doubled", 0.004),
    ("declination-for-gm-angle", 0.003),
    ("reciprocal", 0.01),
    ("right-angle", 0.005),
    ("bezel-clicks", 0.012),
    ("dial-misread", 0.012),
    ("bezel-wrong-way", 0.003),
    ("mils-as-degrees", 0.002),
    ("azimuth-digits", 0.005),
    ("neighbour-azimuth", 0.004),
    ("hundred-miscounted", 0.04),
    ("single-double-pace", 0.003),
    ("early-stop", 0.008),
    ("overshoot", 0.009),
    ("digits-transposed", 0.004),
    ("digit-wrong", 0.01),
    ("easting-northing-swapped", 0.0015),
    ("wrong-grid-line", 0.002),
    ("wrong-plotting-scale", 0.0015),
    ("wrong-point", 0.004),
    ("point-misplaced", 0.02),
    ("datum", 0.01),
    ("wrong-start", 0.012),
    ("veer", 0.016),
    ("handrail", 0.008),
    ("magnetic-disturbance", 0.004),
    ("bypass-unequal", 0.008),
    ("obstacle-one-side", 0.006),
    ("bypass-paced", 0.005),
    ("passed-unseen", 0.004),
    ("point-skipped", 0.03),
    ("order-changed", 0.01),
)
"""That one leg shows this, the walk otherwise not: leaving the angle out, and losing or adding
a hundred, are the slips that instructors name first."""


MADE_AGAIN: tuple[str, ...] = (
    "gm-angle-omitted",
    "gm-angle-reversed",
    "gm-angle-doubled",
    "reciprocal",
    "right-angle",
    "bezel-wrong-way",
    "mils-as-degrees",
    "azimuth-digits",
    "neighbour-azimuth",
    "hundred-miscounted",
    "early-stop",
    "overshoot",
    "digits-transposed",
    "digit-wrong",
    "easting-northing-swapped",
    "wrong-plotting-scale",
    "wrong-point",
)
"""Slips of a way of working, which one walker makes on a leg here and a leg there."""


SLIPS_BESIDE: tuple[str, ...] = (
    "reciprocal",
    "right-angle",
    "neighbour-azimuth",
    "azimuth-digits",
    "hundred-miscounted",
)
"""Slips of one leg that stand out beside a mistake which the whole walk shares."""
