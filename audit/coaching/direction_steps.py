"""The azimuth of a leg, step by step: given, plotted, measured, converted, set, walked."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from audit.azimuths import MagneticAzimuth, NorthAngles
from audit.coaching.noted_steps import with_log_noted
from audit.coaching.steps import Hop, Step
from audit.coaching.walkers_card import OwnLeg
from audit.leg_card import CardLeg
from audit.leg_card.azimuth_slips import (
    BACK,
    azimuth_digit_slips,
    dial_slips,
    grid_slips,
    magnetic_slips,
    slips_believed_right,
)
from audit.leg_card.rounding import azimuth_rounding_deg
from audit.leg_card.slips import BORROWED, KNOWN, Slip, fits_sentence, fitting_slips, slip_names
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.units import direction_degrees, turn_degrees, turned_aside_m
from audit.words import sentence
from audit.words.figures import Azimuth, Length, Turn

DIGITS, DIAL, CLICKS = "azimuth-digits", "dial-misread", "bezel-clicks"
_STEPS: tuple[Step, ...] = ("given", "plotted", "measured", "converted", "set", "walked")
_SET = 5
"""Steps behind the azimuth that the log has; the walked one alone is not written down."""


_MADE_AT: dict[str, Step] = {
    "gm-angle-omitted": "converted",
    "gm-angle-reversed": "converted",
    "gm-angle-doubled": "converted",
    "declination-for-gm-angle": "converted",
    "magnetic-for-grid": "measured",
    "true-for-grid": "measured",
    "right-angle": "measured",
}
"""Slips that are made at one step only, whatever else lies between two known numbers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AzimuthStage:
    """An azimuth on its way from map to ground.

    Attributes
    ----------
    reached : int
        How many of the steps lie behind it.
    grid_deg : float
        As a grid azimuth by the right grid-magnetic angle.
    tolerance_deg : float
        What is ordinary on the steps that led here.
    words : str
        What it is, with its figure.
    slips : tuple of Slip
        Those of the steps that led here, turning the number by what they say.
    copied : tuple of str
        Other legs that have this azimuth.
    digits_from_deg : float
        What is off by less is a matter of care, and no wrong digit.
    exact_deg : float or None
        A known slip that leaves more than this is no likelier than one by chance; None: whatever
        it leaves, as the number was read off the map.
    """

    reached: int
    grid_deg: float
    tolerance_deg: float
    words: str
    slips: tuple[Slip, ...] = ()
    copied: tuple[str, ...] = ()
    digits_from_deg: float = 0.0
    exact_deg: float | None = None


def direction_hops(
    card: CardLeg,
    own: OwnLeg | None,
    set_to: MagneticAzimuth | None,
    measures: LegMeasures,
    angles: NorthAngles,
    settings: CoachingSettings,
    others: Sequence[CardLeg],
) -> list[Hop]:
    """Give the hops of a leg's azimuth, from the course's own to the one walked."""
    stages = [
        AzimuthStage(
            reached=3 if own is None else 0,
            grid_deg=card.azimuth.degrees,
            tolerance_deg=0.0,
            words=sentence("step-course-azimuth", azimuth=_of_card(card.azimuth.degrees)),
        ),
        *_card_stages(card, own, angles, settings, others),
    ]
    hops = [_hop(before, after, card.distance_m) for before, after in pairwise(stages)]
    before, walked = stages[-1], _walked_stage(measures, settings)
    past_log = _hop(before, walked, card.distance_m)
    if set_to is None:
        return [*hops, past_log]
    noted = _set_stage(set_to, angles, settings, others)
    to_log = _hop(before, noted, card.distance_m)
    from_log = _hop(noted, walked, card.distance_m)
    if not to_log.over:
        from_log = _set_or_walked(noted, walked, card.distance_m, angles, settings)
    if abs(to_log.error) < settings.unlikely_turn_deg:
        return [*hops, to_log, from_log]  # he may have wandered back by as much
    return [*hops, *with_log_noted(to_log, from_log, past_log)]


def _card_stages(
    card: CardLeg,
    own: OwnLeg | None,
    angles: NorthAngles,
    settings: CoachingSettings,
    others: Sequence[CardLeg],
) -> list[AzimuthStage]:
    """Give the azimuths of the card that was carried: the walker's own, or the course's."""
    if own is None:
        return [
            AzimuthStage(
                reached=4,
                grid_deg=angles.grid_from_magnetic(card.magnetic).degrees,
                tolerance_deg=_rounding(card.azimuth.degrees, card.magnetic.degrees),
                words=sentence("step-card-magnetic", azimuth=_of_card(card.magnetic.degrees)),
                slips=magnetic_slips(angles),
            )
        ]
    stages = []
    if own.start is not None and own.end is not None:
        stages.append(_reference_stage(own, card, settings))
    stated = own.stated
    if stated.grid_azimuth is not None:
        given_deg = stated.grid_azimuth.degrees
        stages.append(
            AzimuthStage(
                reached=3,
                grid_deg=given_deg,
                tolerance_deg=settings.measured_azimuth_deg + azimuth_rounding_deg(given_deg),
                words=sentence("step-card-grid", azimuth=_of_card(given_deg)),
                slips=(
                    *grid_slips(angles),
                    *dial_slips(settings.graduations_deg, KNOWN),
                    *azimuth_digit_slips(given_deg),
                ),
                copied=_copied(given_deg, "grid", others),
            )
        )
    if stated.magnetic_azimuth is not None:
        given_deg = stated.magnetic_azimuth.degrees
        stages.append(
            AzimuthStage(
                reached=4,
                grid_deg=angles.grid_from_magnetic(stated.magnetic_azimuth).degrees,
                tolerance_deg=settings.converted_deg + azimuth_rounding_deg(given_deg),
                words=sentence("step-card-magnetic", azimuth=_of_card(given_deg)),
                slips=(*magnetic_slips(angles), *azimuth_digit_slips(given_deg)),
                copied=_copied(given_deg, "magnetic", others),
            )
        )
    return stages


def _reference_stage(own: OwnLeg, card: CardLeg, settings: CoachingSettings) -> AzimuthStage:
    """Give the azimuth between the walker's own references."""
    start, end = own.start, own.end
    if start is None or end is None:
        message = "both references are needed"
        raise ValueError(message)
    east_m, north_m = end.east_m - start.east_m, end.north_m - start.north_m
    room_m = start.half_square_m + end.half_square_m + card.start.half_square_m
    room_m += card.end.half_square_m + 2.0 * settings.written_again_m
    room_deg = math.degrees(math.asin(min(1.0, room_m / max(1.0, card.distance_m))))
    # The course's own azimuth may be written, and then rounded.
    room_deg += azimuth_rounding_deg(card.azimuth.degrees)
    grid_deg = direction_degrees(east_m, north_m)
    return AzimuthStage(
        reached=1,
        grid_deg=grid_deg,
        tolerance_deg=room_deg,
        words=sentence("step-own-references", azimuth=_of_card(grid_deg)),
    )


def _set_stage(
    set_to: MagneticAzimuth,
    angles: NorthAngles,
    settings: CoachingSettings,
    others: Sequence[CardLeg],
) -> AzimuthStage:
    g = angles.grid_magnetic_angle_deg
    sums = (
        Slip(name="gm-angle-omitted", what=sentence("slip-grid-as-it-stood"), turn_deg=g),
        Slip(name="gm-angle-reversed", what=sentence("slip-reversed"), turn_deg=2.0 * g),
        *slips_believed_right(angles),
    )
    least, most = settings.clicks_off
    clicks = [
        Slip(
            name=CLICKS,
            what=sentence("slip-clicks", count=abs(n)),
            turn_deg=settings.click_deg * n,
            rank=BORROWED,
        )
        for n in (*range(-most, -least + 1), *range(least, most + 1))
    ]
    return AzimuthStage(
        reached=_SET,
        grid_deg=angles.grid_from_magnetic(set_to).degrees,
        tolerance_deg=settings.set_azimuth_deg,
        words=sentence("step-set-by-log", azimuth=_of_card(set_to.degrees)),
        slips=(
            *sums,
            *azimuth_digit_slips(set_to.degrees),
            *dial_slips(settings.graduations_deg, BORROWED),
            *clicks,
        ),
        copied=_copied(set_to.degrees, "magnetic", others),
        digits_from_deg=settings.click_deg,
        exact_deg=settings.converted_deg,
    )


def _set_or_walked(
    noted: AzimuthStage,
    walked: AzimuthStage,
    distance_m: float,
    angles: NorthAngles,
    settings: CoachingSettings,
) -> Hop:
    """Give the hop from a log that has the card's azimuth to the line that was held.

    Who set the back azimuth, or applied the angle again, notes what he meant to set: where such a
    slip fits, the log does not tell whether it was made in setting or in walking. Who walks back
    has no mark ahead to hold his line by.
    """
    hop = _hop(noted, replace(walked, slips=slips_believed_right(angles)), distance_m)
    if abs(hop.error) >= BACK - settings.unlikely_turn_deg:
        back = replace(
            walked, slips=slips_believed_right(angles), tolerance_deg=settings.unlikely_turn_deg
        )
        hop = _hop(noted, back, distance_m)
    return replace(hop, steps=("set", "walked")) if hop.slips else hop


def _walked_stage(measures: LegMeasures, settings: CoachingSettings) -> AzimuthStage:
    heading = measures.heading
    return AzimuthStage(
        reached=6,
        grid_deg=heading.azimuth.degrees,
        tolerance_deg=math.hypot(heading.told_half_95_deg, settings.held_azimuth_deg),
        words=sentence("step-azimuth-walked", azimuth=_of_card(heading.azimuth.degrees)),
    )


def _copied(given_deg: float, north: str, others: Sequence[CardLeg]) -> tuple[str, ...]:
    """Name the other legs whose azimuth is the one given."""
    azimuths = {leg.name: leg.azimuth if north == "grid" else leg.magnetic for leg in others}
    return tuple(
        name
        for name, azimuth in azimuths.items()
        if abs(turn_degrees(azimuth.degrees, given_deg)) <= azimuth_rounding_deg(given_deg)
    )


def _rounding(*azimuths_deg: float) -> float:
    return sum(azimuth_rounding_deg(azimuth_deg) for azimuth_deg in azimuths_deg)


def _hop(before: AzimuthStage, after: AzimuthStage, distance_m: float) -> Hop:
    """Give the hop between two stages."""
    error_deg = turn_degrees(before.grid_deg, after.grid_deg)
    slips = _fitting(after, error_deg)
    off_m = turned_aside_m(distance_m, error_deg)
    told = {slip.name: slip.what for slip in reversed(slips)}  # the nearest of each name
    fits = fits_sentence([told[name] for name in slip_names(slips)[:2]], link="or")
    said = sentence(
        "step-turned",
        after=after.words,
        size=Turn(degrees=error_deg),
        side="right" if error_deg > 0.0 else "left",
        before=before.words,
        off=Length(metres=off_m),
        fits=fits,
    )
    steps = _STEPS[before.reached : after.reached]
    return Hop(
        steps=_decided(steps, slips, after.reached),
        kind="direction",
        error=error_deg,
        tolerance=after.tolerance_deg,
        off_m=off_m,
        slips=slip_names(slips),
        written=after.reached <= _SET,
        sentence=said,
    )


def _fitting(after: AzimuthStage, error_deg: float) -> tuple[Slip, ...]:
    """Give the slips that fit an error, none where it is ordinary."""
    if abs(error_deg) <= after.tolerance_deg:
        return ()
    copied = [
        Slip(
            name="neighbour-azimuth",
            what=sentence("slip-of-leg", leg=name),
            turn_deg=error_deg,
            rank=BORROWED,
        )
        for name in after.copied
    ]
    slips = [
        slip
        for slip in after.slips
        if slip.name != DIGITS or abs(error_deg) >= after.digits_from_deg
    ]
    if after.exact_deg is not None:
        slips = list(_between_written(slips, error_deg, after.exact_deg))
    return fitting_slips(error_deg, (*copied, *slips), after.tolerance_deg)


def _between_written(slips: Sequence[Slip], error_deg: float, exact_deg: float) -> Iterator[Slip]:
    """Give the slips between two written numbers: a known one comes first where it leaves nothing.

    A graduation is of whole degrees: what leaves some is none. Nor are clicks that leave some told
    beside a slip that leaves none.
    """
    left_deg = [abs(turn_degrees(slip.turn_deg, error_deg)) for slip in slips]
    exact = [left <= exact_deg + 1e-6 for left in left_deg]
    fits = any(none and slip.rank <= BORROWED for slip, none in zip(slips, exact, strict=True))
    whole = {DIAL, CLICKS} if fits else {DIAL}
    for slip, leaves_none in zip(slips, exact, strict=True):
        if leaves_none:
            yield slip
        elif slip.name not in whole:
            yield replace(slip, rank=max(slip.rank, BORROWED))


def _decided(steps: tuple[Step, ...], slips: Sequence[Slip], reached: int) -> tuple[Step, ...]:
    """Give the one step at which the slips that fit are made, where that is one."""
    # A slip of the pen, or the back azimuth, on a grid azimuth is made in measuring it.
    otherwise: Step | None = "measured" if reached == _STEPS.index("measured") + 1 else None
    made = {_MADE_AT.get(slip.name, otherwise) for slip in slips}
    at = made.pop() if len(made) == 1 else None
    return (at,) if at is not None and at in steps else steps


def _of_card(azimuth_deg: float) -> Azimuth:
    """Give an azimuth as it is written on a card."""
    return Azimuth(degrees=azimuth_deg, of_card=True)
