"""The point of a leg: the reference given, the place plotted, and whether it was recognised."""

from __future__ import annotations

import math
from collections.abc import Sequence

from audit.coaching.steps import Hop
from audit.coaching.walkers_card import OwnLeg, OwnPoint
from audit.geodesy.grids import CourseGrid
from audit.leg_card import CardLeg, CardPoint
from audit.leg_card.slips import fits_sentence
from audit.leg_card.written_reference import ReferenceSlip
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.units import unit_vector
from audit.words import sentence
from audit.words.figures import Length

_KM_M = 1000.0


def given_hop(
    point: OwnPoint | None, end: CardPoint, grid: CourseGrid, settings: CoachingSettings
) -> Hop | None:
    """Give what lies between a point of the course and its reference on the walker's card."""
    if point is None or end.dead_reckoned:
        return None
    off_m = math.hypot(point.east_m - end.east_m, point.north_m - end.north_m)
    # The same square written again has the same middle; a coarser one takes its own half.
    tolerance_m = math.sqrt(2.0) * (end.half_square_m + point.half_square_m)
    tolerance_m += settings.written_again_m
    slip = _slip_to(point, (end.east_m, end.north_m), tolerance_m, grid)
    fits = fits_sentence([] if slip is None else [slip.what], link="or")
    return Hop(
        steps=("given",),
        kind="point",
        error=off_m,
        tolerance=tolerance_m,
        off_m=off_m,
        slips=() if slip is None else (slip.name,),
        written=True,
        sentence=sentence(
            "step-reference",
            point=end.name,
            given=point.given,
            off=Length(metres=off_m),
            fits=fits,
        ),
    )


def plotted_hop(own: OwnLeg, grid: CourseGrid, settings: CoachingSettings) -> Hop | None:
    """Give the slip of plotting that explains azimuth and distance of the card together.

    None unless card has both, with a reference of its own at either end, and one slip of
    plotting that end leads where azimuth and distance lead.
    """
    azimuth, distance_m = own.stated.grid_azimuth, own.stated.distance_m
    start, end = own.start, own.end
    if azimuth is None or distance_m is None or start is None or end is None:
        return None
    led_m = distance_m * unit_vector(azimuth.degrees)
    east_m, north_m = start.east_m + float(led_m[0]), start.north_m + float(led_m[1])
    off_m = math.hypot(east_m - end.east_m, north_m - end.north_m)
    room_m = (
        (settings.measured_distance_share + math.radians(settings.measured_azimuth_deg))
        * distance_m
        + start.half_square_m
        + end.half_square_m
    )
    if off_m <= 2.0 * room_m:
        return None
    found = _plotting_slip(end, (east_m, north_m), room_m, grid)
    if found is None:
        return None
    name, what = found
    return Hop(
        steps=("plotted",),
        kind="point",
        error=off_m,
        tolerance=room_m,
        off_m=off_m,
        slips=(name,),
        written=True,
        sentence=sentence(
            "step-leads-elsewhere",
            off=Length(metres=off_m),
            fits=fits_sentence([what], link="or"),
        ),
    )


def recognised_hop(
    card: CardLeg, measures: LegMeasures, points: Sequence[CardPoint], radius_m: float
) -> Hop | None:
    """Give what became of the point itself; None where the leg ended elsewhere than near any."""
    if card.end.dead_reckoned:
        return None
    claim = measures.claim
    for point in points:
        away_m = math.hypot(claim.east_m - point.east_m, claim.north_m - point.north_m)
        other = point.name not in {card.end.name, card.start.name}
        if other and not point.dead_reckoned and away_m <= radius_m < measures.miss_m:
            return _recognised(
                measures.miss_m,
                radius_m,
                "wrong-point",
                sentence(
                    "step-other-point",
                    away=Length(metres=away_m),
                    other=point.name,
                    point=card.end.name,
                ),
            )
    passed = measures.miss_m > radius_m >= measures.nearest_m
    if passed and not (measures.came_back(radius_m) or measures.at_the_edge(radius_m)):
        return _recognised(
            measures.miss_m,
            radius_m,
            "passed-unseen",
            sentence(
                "step-passed",
                near=Length(metres=measures.nearest_m),
                point=card.end.name,
                miss=Length(metres=measures.miss_m),
            ),
        )
    if measures.miss_m <= radius_m:
        return _recognised(0.0, radius_m, "", sentence("step-reached", point=card.end.name))
    return None


def _recognised(error_m: float, radius_m: float, slip: str, said: str) -> Hop:
    return Hop(
        steps=("recognised",),
        kind="point",
        error=error_m,
        tolerance=radius_m,
        off_m=error_m,
        slips=(slip,) if slip else (),
        sentence=said,
    )


def _slip_to(
    point: OwnPoint, wanted_m: tuple[float, float], room_m: float, grid: CourseGrid
) -> ReferenceSlip | None:
    """Give the slip of the reference that, taken back, leads to a place; the likeliest."""
    if point.written is None:
        return None
    fitting = []
    for slip in point.written.slips():
        east_m, north_m = grid.to_grid(slip.longitude_deg, slip.latitude_deg)
        off_m = math.hypot(east_m - wanted_m[0], north_m - wanted_m[1])
        if off_m <= room_m:
            fitting.append((slip.rank, off_m, slip))
    return min(fitting, key=lambda one: one[:2], default=(0, 0.0, None))[2]


def _plotting_slip(
    end: OwnPoint, wanted_m: tuple[float, float], room_m: float, grid: CourseGrid
) -> tuple[str, str] | None:
    """Give (name, words) of the slip of plotting that leads from a reference to a place."""
    slip = _slip_to(end, wanted_m, room_m, grid)
    if slip is not None:
        return slip.name, sentence("figure-comma", before=slip.what, last=slip.text)
    east_in, north_in = end.east_m % _KM_M, end.north_m % _KM_M
    for factor, words in ((2.0, "doubled"), (0.5, "halved")):
        east_m = end.east_m + (factor - 1.0) * east_in
        north_m = end.north_m + (factor - 1.0) * north_in
        if math.hypot(east_m - wanted_m[0], north_m - wanted_m[1]) <= room_m:
            return "wrong-plotting-scale", sentence(f"slip-parts-{words}")
    return None
