"""The catalogue of causes by kind: each of these names has a page in the guide."""

from __future__ import annotations

WITHIN_SKILL, CANNOT_TELL = "within-skill", "cannot-tell"
JUDGEMENTS = (WITHIN_SKILL, CANNOT_TELL)
"""What a leg may be given in place of a mistake."""

CAUSE_KINDS: dict[str, tuple[str, ...]] = {
    "No mistake, or none that can be told": JUDGEMENTS,
    "Direction": (
        "gm-angle-omitted",
        "gm-angle-reversed",
        "gm-angle-doubled",
        "declination-for-gm-angle",
        "gm-angle-stale",
        "reciprocal",
        "right-angle",
        "bezel-clicks",
        "bezel-wrong-way",
        "mils-as-degrees",
        "wrong-mil-circle",
        "azimuth-digits",
        "dial-misread",
        "neighbour-azimuth",
        "magnetic-disturbance",
        "steady-bias",
    ),
    "Distance": (
        "hundred-miscounted",
        "single-double-pace",
        "pace-long",
        "pace-short",
        "wrong-ruler",
        "slope-paced",
        "early-stop",
        "overshoot",
        "bypass-paced",
    ),
    "Holding the line": (
        "veer",
        "sidehill",
        "handrail",
        "bypass-unequal",
        "obstacle-one-side",
    ),
    "The point": (
        "digits-transposed",
        "digit-wrong",
        "easting-northing-swapped",
        "wrong-grid-line",
        "wrong-plotting-scale",
        "datum",
        "point-misplaced",
        "wrong-start",
        "wrong-point",
    ),
    "Behaviour": ("point-skipped", "order-changed", "passed-unseen"),
}
"""Kinds in the order in which the guide lists them."""

CAUSE_NAMES: tuple[str, ...] = tuple(name for names in CAUSE_KINDS.values() for name in names)
