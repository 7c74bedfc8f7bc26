"""The well-known slips with an azimuth or the grid-magnetic angle, and how far each turns it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from audit.azimuths import NorthAngles
from audit.leg_card.rounding import is_whole
from audit.leg_card.slips import BORROWED, DIGIT, KNOWN, Slip
from audit.leg_card.written_digits import one_wrong, swapped
from audit.units import MILS_PER_CIRCLE, degrees_from_mils, mils_from_degrees, turn_degrees
from audit.words import sentence
from audit.words.figures import Number, Turn

BACK = 180.0
_OTHER_CIRCLES = (6000, 6300)
"""Mils to the circle of other compasses, as in the catalogue of causes (`wrong-mil-circle`)."""


def magnetic_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of turning grid into magnetic: given less right, which is grid - G."""
    g = angles.grid_magnetic_angle_deg
    doubled, back = slips_believed_right(angles)
    return (
        Slip(name="gm-angle-omitted", what=sentence("slip-omitted"), turn_deg=g),
        Slip(
            name="gm-angle-reversed",
            what=sentence("slip-reversed"),
            turn_deg=2.0 * g,
        ),
        doubled,
        Slip(
            name="declination-for-gm-angle",
            what=sentence("slip-declination"),
            turn_deg=-angles.convergence_deg,
        ),
        back,
        Slip(
            name="reciprocal",
            what=sentence("slip-back-omitted"),
            turn_deg=BACK + g,
        ),
    )


def slips_believed_right(angles: NorthAngles) -> tuple[Slip, Slip]:
    """Give the slips after which a walker believes to have set what he meant to."""
    doubled_deg = -angles.grid_magnetic_angle_deg
    return (
        Slip(name="gm-angle-doubled", what=sentence("slip-doubled"), turn_deg=doubled_deg),
        Slip(name="reciprocal", what=sentence("slip-back"), turn_deg=BACK),
    )


def grid_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of measuring a grid azimuth on the map."""
    g = angles.grid_magnetic_angle_deg
    return (
        Slip(
            name="magnetic-for-grid",
            what=sentence("slip-magnetic-for-grid"),
            turn_deg=-g,
        ),
        Slip(
            name="gm-angle-reversed",
            what=sentence("slip-applied-reversed"),
            turn_deg=g,
        ),
        Slip(
            name="true-for-grid",
            what=sentence("slip-true-for-grid"),
            turn_deg=angles.convergence_deg,
        ),
        Slip(name="reciprocal", what=sentence("slip-back"), turn_deg=BACK),
        Slip(name="right-angle", what=sentence("slip-quarter"), turn_deg=90.0),
        Slip(name="right-angle", what=sentence("slip-quarter"), turn_deg=-90.0),
    )


def dial_slips(graduations_deg: Sequence[float], rank: int) -> tuple[Slip, ...]:
    """Give the slips of reading a dial, or a protractor, one graduation off, either way."""
    return tuple(
        Slip(
            name="dial-misread",
            what=sentence("slip-dial", size=Turn(degrees=size_deg, degrees_decimals=0)),
            turn_deg=side * size_deg,
            rank=rank,
        )
        for size_deg in graduations_deg
        for side in (-1.0, 1.0)
    )


def true_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of turning grid into true: given less right, which is grid + C."""
    c = angles.convergence_deg
    return (
        Slip(
            name="magnetic-for-true",
            what=sentence("slip-magnetic-for-true"),
            turn_deg=-(angles.grid_magnetic_angle_deg + c),
        ),
        Slip(name="convergence-omitted", what=sentence("slip-convergence-omitted"), turn_deg=-c),
        Slip(
            name="convergence-reversed",
            what=sentence("slip-convergence-reversed"),
            turn_deg=-2.0 * c,
        ),
        Slip(name="reciprocal", what=sentence("slip-back"), turn_deg=BACK),
    )


def angle_slips(
    given_deg: float, model_angle_deg: float, convergence_deg: float
) -> tuple[Slip, ...]:
    """Give the slips of taking the grid-magnetic angle from the map: given less D - C."""
    g, c = model_angle_deg, convergence_deg
    slips = [
        Slip(
            name="east-for-west",
            what=sentence("slip-east-for-west"),
            turn_deg=-2.0 * g,
        ),
        Slip(
            name="declination-for-gm-angle",
            what=sentence("slip-declination-given"),
            turn_deg=c,
        ),
        Slip(
            name="convergence-reversed",
            what=sentence("slip-convergence-reversed"),
            turn_deg=2.0 * c,
        ),
    ]
    for meant_deg, what in (
        (given_deg / 10.0, "point-lost"),
        (given_deg * 10.0, "point-too-many"),
        (degrees_from_mils(given_deg), "mils"),
        (-given_deg / 10.0, "point-and-side"),
    ):
        slips.append(
            Slip(
                name="mils-as-degrees" if what == "mils" else "decimal-point",
                what=sentence(f"slip-{what}", given=f"{given_deg:g}", meant=f"{meant_deg:g}"),
                turn_deg=given_deg - meant_deg,
            )
        )
    return tuple(slips)


def azimuth_digit_slips(given_deg: float, *, in_mils: bool = False) -> Iterator[Slip]:
    """Give the slips of writing an azimuth: digits swapped, a digit wrong, another scale.

    ``in_mils`` says that it was written in mils; otherwise its digits tell.
    """
    mils = mils_from_degrees(given_deg)
    in_mils = in_mils or (is_whole(mils) and not is_whole(given_deg * 10.0))
    whole = round(mils) if in_mils else int(given_deg)
    written = f"{whole:04d}" if in_mils else f"{whole:03d}"
    rest_deg = 0.0 if in_mils else given_deg - whole
    unit = degrees_from_mils(1.0) if in_mils else 1.0
    circle = MILS_PER_CIRCLE if in_mils else 360.0

    def slip(meant: str, what: str, rank: int) -> Iterator[Slip]:
        if float(meant) < circle:
            turn_deg = turn_degrees(float(meant) * unit + rest_deg, given_deg)
            words = sentence(f"slip-{what}", given=written, meant=meant)
            yield Slip(name="azimuth-digits", what=words, turn_deg=turn_deg, rank=rank)

    for meant in swapped(written):
        yield from slip(meant, "swapped", KNOWN)
    for _, meant in one_wrong(written):
        yield from slip(meant, "one-wrong", DIGIT)
    if in_mils:
        yield from _mil_slips(mils)
    else:
        meant_deg = degrees_from_mils(given_deg)
        in_degrees = Number(value=meant_deg, decimals=1)
        what = sentence("slip-mils-for-degrees", given=f"{given_deg:g}", meant=in_degrees)
        turn_deg = turn_degrees(meant_deg, given_deg)
        yield Slip(name="mils-as-degrees", what=what, turn_deg=turn_deg, rank=BORROWED)


def _mil_slips(mils: float) -> Iterator[Slip]:
    """Give the slips of the scale of an azimuth in mils: degrees, or another circle of mils."""
    given_deg, written = degrees_from_mils(mils), f"{mils:.0f}"
    if mils < 360.0:
        meant = Number(value=mils_from_degrees(mils))
        what = sentence("slip-degrees-for-mils", given=written, meant=meant)
        yield Slip(name="mils-as-degrees", what=what, turn_deg=turn_degrees(mils, given_deg))
    for circle in _OTHER_CIRCLES:
        if mils < circle:
            meant = Number(value=mils * MILS_PER_CIRCLE / circle)
            turn_deg = turn_degrees(mils * 360.0 / circle, given_deg)
            what = sentence("slip-mil-circle", circle=str(circle), given=written, meant=meant)
            yield Slip(name="wrong-mil-circle", what=what, turn_deg=turn_deg)


def neighbour_slips(expected_deg: float, others: Iterable[tuple[str, float]]) -> Iterator[Slip]:
    """Give the slips of copying the azimuth of another leg, from (name, azimuth) of each."""
    for name, azimuth_deg in others:
        yield Slip(
            name="neighbour-azimuth",
            what=sentence("slip-of-leg", leg=name),
            turn_deg=turn_degrees(expected_deg, azimuth_deg),
            rank=BORROWED,
        )
