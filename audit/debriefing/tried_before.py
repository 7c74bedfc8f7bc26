"""A search that went as far as the next leg is long: it may have been a first try at that leg.

Nobody looks for a point a whole leg away from where he takes it to be. Who set out on a wrong
azimuth, found nothing, came back and walked the leg again did just that; but so may somebody who
fetched a thing left behind. No mistake is named for it: it is told, to be asked about.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.leg_card import CardLeg
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegAudit
from audit.measurement.measure_walk import WalkMeasures
from audit.settings import QualitySettings
from audit.units import FloatArray, direction_degrees
from audit.words import sentence
from audit.words.figures import Azimuth, Length, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class TriedBefore:
    """A way off and back between two walked legs, by their numbers, and how it is told."""

    before: int
    leg: int
    told: str


def tried_before(
    measured: WalkMeasures, clean: CleanTrack, settings: QualitySettings
) -> tuple[TriedBefore, ...]:
    """Tell of each way off and back that may have been a first try at the leg walked after it.

    Between two legs of which one between was left out it may have been that one.
    """
    return tuple(
        TriedBefore(before=number, leg=number + 1, told=told)
        for number, (before, leg) in enumerate(pairwise(measured.legs))
        if (told := _told(before, leg, clean, settings))
    )


def with_first_tries(doubtful: Mapping[int, str], tries: tuple[TriedBefore, ...]) -> dict[int, str]:
    """Put a first try to what is doubtful of the leg before it, and of the leg tried."""
    told = dict(doubtful)
    for one in tries:
        for leg in (one.before, one.leg):
            also = told.get(leg)
            told[leg] = sentence("doubt-also", doubt=also, also=one.told) if also else one.told
    return told


def _told(before: LegAudit, leg: LegAudit, clean: CleanTrack, settings: QualitySettings) -> str:
    """Tell of a way off from where a leg was begun, and back to it, since the claim before."""
    if before.measures is None or leg.measures is None:
        return ""
    claim_s, start_s = before.measures.claim.time_s, leg.measures.start.time_s
    if claim_s is None or start_s is None:
        return ""
    between = np.flatnonzero((clean.time_s >= claim_s) & (clean.time_s <= start_s))
    if len(between) < 3:
        return ""
    place = clean.places()[between]
    away_m = np.hypot(*(place - place[-1]).T)
    # Who had missed his point by much first came back to it.
    came = int(np.flatnonzero(away_m <= settings.tried_about * leg.card.distance_m)[0])
    furthest = came + int(away_m[came:].argmax())
    off_m = float(away_m[furthest])
    if off_m < max(settings.tried_share * leg.card.distance_m, settings.tried_off_m):
        return ""
    near = np.flatnonzero(away_m[: furthest + 1] <= settings.tried_about * off_m)
    set_out = int(near[-1]) if len(near) else came
    held_deg = _held_deg(place[set_out : furthest + 1], settings)
    return sentence(
        "doubt-tried-before",
        before=before.card.name,
        leg=leg.card.name,
        off=Length(metres=off_m, standard_error_m=settings.tried_off_sd_m),
        minutes=Number(value=(start_s - float(clean.time_s[between[came]])) / 60.0),
        held="" if held_deg is None else _held(held_deg, leg.card),
    )


def _held(held_deg: float, leg: CardLeg) -> str:
    return sentence(
        "doubt-tried-held",
        leg=leg.name,
        held=Azimuth(degrees=held_deg, degrees_decimals=0),
        planned=Azimuth(degrees=leg.azimuth.degrees, degrees_decimals=0),
    )


def _held_deg(out: FloatArray, settings: QualitySettings) -> float | None:
    """Give the direction of a way out, shape (n, 2), where it was held."""
    chord = out[-1] - out[0]
    length_m = float(np.hypot(*chord))
    aside_m = np.abs((out - out[0]) @ np.array([chord[1], -chord[0]])) / length_m
    if float(aside_m.max()) > settings.tried_aside * length_m:
        return None
    return direction_degrees(float(chord[0]), float(chord[1]))
