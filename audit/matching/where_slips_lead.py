"""Other ways that a card leads: after a slip with a point's digits or plotting, or at the dial.

Who plots a point wrongly, or sets another leg's azimuth, walks a leg as well as any other, but
elsewhere. Where he then went is not anywhere: the digits and the dial leave a few ways only.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.reference_digits import (
    LINES_APART_M,
    carried_digits_m,
    exchanged_m,
    on_other_tool_m,
    swapped_digits_m,
    wrong_digits_m,
)
from audit.leg_card import LegCard
from audit.leg_card.finished_card import CardLeg
from audit.matching.portions import IndexArray
from audit.settings import MatchingSettings
from audit.units import (
    FloatArray,
    direction_degrees,
    on_other_scale_deg,
    turn_degrees,
    wrap_degrees,
)

Way = tuple[float, float]
"""A grid azimuth in degrees and a distance in metres."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Slips:
    """Where slips lead: grid azimuths and distances, shape (s,)."""

    azimuth_deg: FloatArray
    distance_m: FloatArray

    def part(self, which: NDArray[np.bool_] | IndexArray) -> Slips:
        """Give some of the slips, or the slips of some portions."""
        return Slips(azimuth_deg=self.azimuth_deg[which], distance_m=self.distance_m[which])

    def nearest(
        self, chord_deg: FloatArray, chord_m: FloatArray, settings: MatchingSettings
    ) -> tuple[Slips, NDArray[np.bool_]]:
        """Give the slip that leads nearest to each chord, shape (p,), and whether it is near."""
        least = np.full(len(chord_deg), np.inf)
        which = np.zeros(len(chord_deg), dtype=np.int64)
        for slip, way in enumerate(
            zip(self.azimuth_deg.tolist(), self.distance_m.tolist(), strict=True)
        ):
            off = _off_sd(way, chord_deg, chord_m, settings)
            nearer = off < least
            least[nearer], which[nearer] = off[nearer], slip
        return self.part(which), least <= settings.slip_reach_sd


def slips_of(card: LegCard, leg: int, settings: MatchingSettings) -> Slips | None:
    """Give the slips that lead a leg clearly elsewhere; None where none does, or it bends."""
    of = card.legs[leg]
    return _apart(of, [*_misplotted(of, settings), *_misset(card, leg)], settings)


def carried_on(card: LegCard, leg: int, settings: MatchingSettings) -> Slips | None:
    """Give the ways from where slips have put the start of a leg to its point.

    Who has plotted a point wrongly plans the next leg from there as well.
    """
    of, before = card.legs[leg], card.legs[leg - 1]
    shifts = [(-east, -north) for east, north in _shifts_m(before, settings)]
    return _apart(of, _ways_shifted(of, shifts, settings.shortest_link_m), settings)


def _apart(of: CardLeg, ways: Sequence[Way], settings: MatchingSettings) -> Slips | None:
    """Keep the ways that lead elsewhere than the leg and the ways before them."""
    if len(of.line) > 2:
        return None
    kept: list[Way] = [(of.azimuth.degrees, of.distance_m)]
    for way in ways:
        known_deg, known_m = np.array(kept).T
        if _off_sd(way, known_deg, known_m, settings).min() > settings.slip_apart_sd:
            kept.append(way)
    if len(kept) == 1:
        return None
    azimuths, distances = np.array(kept[1:]).T
    return Slips(azimuth_deg=azimuths, distance_m=distances)


def _off_sd(
    way: Way, azimuth_deg: FloatArray, distance_m: FloatArray, settings: MatchingSettings
) -> FloatArray:
    """Give how far some ways are from one, in the usual errors of direction and distance."""
    turned = turn_degrees(way[0], azimuth_deg) / settings.heading_sd_deg
    stretched = np.log(np.maximum(distance_m, 1.0) / way[1]) / settings.distance_sd
    return np.asarray(np.hypot(turned, stretched))


def _misplotted(of: CardLeg, settings: MatchingSettings) -> list[Way]:
    """Give the ways to where slips put the point of a leg."""
    least_m = max(settings.shortest_link_m, settings.slip_shortest * of.distance_m)
    return _ways_shifted(of, _shifts_m(of, settings), least_m)


def _ways_shifted(
    of: CardLeg, shifts_m: Sequence[tuple[float, float]], least_m: float
) -> list[Way]:
    """Give a leg's ways to places so far from where it should lead, those not too short."""
    east_m, north_m = of.end.east_m - of.start.east_m, of.end.north_m - of.start.north_m
    ways = []
    for east, north in shifts_m:
        to = (east_m + east, north_m + north)
        if (length := float(np.hypot(*to))) >= least_m:
            ways.append((direction_degrees(*to), length))
    return ways


def _shifts_m(of: CardLeg, settings: MatchingSettings) -> list[tuple[float, float]]:
    """Give how far, to the east and north, slips with digits, lines or tools put a point off."""
    if of.end.dead_reckoned:
        return []  # nobody plotted it
    end_m = (of.end.east_m, of.end.north_m)
    east_m, north_m = (
        (
            *swapped_digits_m(at),
            *wrong_digits_m(at),
            *carried_digits_m(at),
            -LINES_APART_M,
            LINES_APART_M,
        )
        for at in end_m
    )
    shifts = [exchanged_m(*end_m), *on_other_tool_m(*end_m)]
    shifts += [(move, 0.0) for move in east_m] + [(0.0, move) for move in north_m]
    return [shift for shift in shifts if float(np.hypot(*shift)) <= settings.slip_most_m]


def _misset(card: LegCard, leg: int) -> list[Way]:
    """Give the ways of a neighbour's azimuth, of a misread dial, and of a right angle."""
    of = card.legs[leg]
    magnetic = of.magnetic.degrees
    neighbours = [card.legs[other] for other in (leg - 1, leg + 1) if 0 <= other < len(card.legs)]
    turns = [turn_degrees(of.azimuth.degrees, other.azimuth.degrees) for other in neighbours]
    turns += [turn_degrees(magnetic, read) for read in on_other_scale_deg(magnetic)]
    turns.append(turn_degrees(magnetic, -magnetic))
    return [
        (wrap_degrees(of.azimuth.degrees + turn), of.distance_m) for turn in (*turns, -90.0, 90.0)
    ]
