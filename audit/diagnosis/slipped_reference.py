"""A point never gone to, where one slip among its digits leads to a place that was."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import product
from typing import Literal

import numpy as np

from audit.diagnosis.grid_digits import along_one_axis
from audit.diagnosis.turning_places import TurningPlaces, turning_places
from audit.geodesy.reference_digits import (
    LINES_APART_M,
    carried_digits_m,
    swapped_digits_m,
    wrong_digits_m,
)
from audit.leg_card import CardPoint
from audit.matching.leg_match import CleanTrack
from audit.settings import DiagnosisSettings
from audit.units import FloatArray

_HUNDRED_KM_M = 100_000.0
_TENS_M = 10.0
_ELSEWHERE_M = (-180.0, -120.0, -60.0, 0.0, 60.0, 120.0, 180.0)
"""Shifts, no whole hundreds, by which the places that slips lead to are moved to where no
slip leads: how many fit there, fit by chance."""

Slip = Literal["digit-wrong", "digits-transposed", "wrong-grid-line"]

_MOVES_M: tuple[tuple[Slip, Callable[[float], Iterable[float]]], ...] = (
    ("digit-wrong", wrong_digits_m),
    ("digits-transposed", swapped_digits_m),
    ("digit-wrong", carried_digits_m),
    ("wrong-grid-line", lambda _: (-LINES_APART_M, LINES_APART_M)),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SlippedReference:
    """A place where the walker turned off or halted, and the slip that leads there.

    Attributes
    ----------
    slip : "digit-wrong", "digits-transposed" or "wrong-grid-line"
        A kilometre off is the digit's where one digit says so, and else the grid line's.
    shift_m : (east, north)
        From the point to where the slip puts it.
    away_m, turned_m : float
        From there, and from the point, to where the walker turned.
    odds : float
        How much likelier he turned there with the slip than without.
    written, slipped : str
        Four digits of the coordinate that has the slip, tens of metres last.
    """

    slip: Slip
    shift_m: tuple[float, float]
    away_m: float
    turned_m: float
    time_s: float
    halted: bool
    odds: float
    written: str
    slipped: str


def slipped_reference(
    point: CardPoint,
    between: CleanTrack,
    others: FloatArray,
    noise_m: float,
    most_m: float,
    settings: DiagnosisSettings,
) -> SlippedReference | None:
    """Find the slip in a point's reference that leads to where the walker turned off.

    Parameters
    ----------
    between : CleanTrack
        The walk from the point before to the point after.
    others : float array, shape (n, 2)
        The other points of the course: who turns off there has gone to them.
    most_m : float
        A slip that puts the point further off would be seen.
    """
    turned = turning_places(between, settings).away_from(others, settings.turning_arm_m)
    if not len(turned.position):
        return None
    slips = [*_slips(point, settings.least_shift_m, most_m)]
    places = np.array([(point.east_m + east, point.north_m + north) for _, (east, north) in slips])
    within_m = 2.0 * math.hypot(noise_m, settings.point_sd_m, point.half_square_m)
    away_m = _away_m(places, turned)
    if not len(places) or away_m.min() > within_m:
        return None
    elsewhere = [shift for shift in product(_ELSEWHERE_M, repeat=2) if any(shift)]
    by_chance = sum(_away_m(places + shift, turned).min() <= within_m for shift in elsewhere)
    chance = (1.0 + by_chance) / (1.0 + len(elsewhere))
    if chance > settings.slip_by_chance_most:
        return None
    best, at = np.unravel_index(int(np.argmin(away_m)), away_m.shape)
    slip, shift_m = slips[best]
    inside = (point.east_m if shift_m[0] else point.north_m) % _HUNDRED_KM_M
    return SlippedReference(
        slip=slip,
        shift_m=shift_m,
        away_m=float(away_m[best, at]),
        turned_m=float(np.hypot(*(turned.position[at] - (point.east_m, point.north_m)))),
        time_s=float(turned.time_s[at]),
        halted=bool(turned.halted[at]),
        odds=settings.slip_turned_at / chance,
        written=_digits(inside),
        slipped=_digits(inside + sum(shift_m)),
    )


def _slips(
    point: CardPoint, least_m: float, most_m: float
) -> Iterator[tuple[Slip, tuple[float, float]]]:
    """Give each slip among the digits, and the way from the point to where it leads.

    Of two that lead to one place the first is told.
    """
    inside = point.east_m % _HUNDRED_KM_M, point.north_m % _HUNDRED_KM_M
    for slip, moves_m in _MOVES_M:
        east, north = (
            [move for move in moves_m(at) if 0.0 <= at + move < _HUNDRED_KM_M] for at in inside
        )
        for shift in along_one_axis((east, north), least_m, most_m):
            yield slip, shift


def _away_m(places: FloatArray, turned: TurningPlaces) -> FloatArray:
    """Give the metres from every place (rows) to every one where the walker turned."""
    apart = places[:, None] - turned.position
    return np.asarray(np.hypot(apart[..., 0], apart[..., 1]))


def _digits(metres: float) -> str:
    return f"{int(metres // _TENS_M):04d}"
