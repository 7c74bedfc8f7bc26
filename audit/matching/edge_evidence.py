"""What the walk says about one edge, whoever the walker is supposed to be."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.portions import IndexArray, Portions
from audit.matching.route import Edge
from audit.matching.soft_minimum import Runs
from audit.settings import MatchingSettings
from audit.units import FloatArray, turn_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeEvidence:
    """The portions that may be a walk of an edge, sorted by their later cut; shape (p,).

    Attributes
    ----------
    index : int array
        Into the portions.
    by_first : int array
        Order that sorts these portions by their earlier cut.
    log_ratio : float array
        Logarithm of chord over the edge's distance.
    chord_sd_deg : float array
        Error of the chord's direction from the places of its ends.
    found : float array
        Likelihood of ending here by finding the point, against an even one.
    standing_cost : float array
        Halts and wavering, in nats: the same for every walker.
    """

    index: IndexArray
    first: IndexArray
    second: IndexArray
    by_first: IndexArray
    at_first: Runs
    at_second: Runs
    chord_deg: FloatArray
    chord_m: FloatArray
    log_ratio: FloatArray
    chord_sd_deg: FloatArray
    found: FloatArray
    standing_cost: FloatArray


def lay_out_edge(
    edge: Edge,
    portions: Portions,
    cuts: Cuts,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> EdgeEvidence:
    """Choose the portions worth a look for an edge and work out what no walker changes.

    ``to_point_m`` holds the distance of each cut from the edge's target.
    """
    index = _worth_a_look(edge, portions, settings)
    first, second = portions.first[index], portions.second[index]
    by_first = np.argsort(first, kind="stable")
    chord = portions.chord_m[index]
    place_sd = float(np.hypot(1.4 * noise_m, settings.place_sd_m))
    return EdgeEvidence(
        index=index,
        first=first,
        second=second,
        by_first=by_first,
        at_first=Runs(first[by_first], len(cuts)),
        at_second=Runs(second, len(cuts)),
        chord_deg=portions.chord_deg[index],
        chord_m=chord,
        log_ratio=np.log(np.maximum(chord, 1.0) / edge.distance_m),
        chord_sd_deg=np.degrees(place_sd / np.maximum(chord, 20.0)),
        found=_found(portions, index, to_point_m[second], noise_m, settings),
        standing_cost=_standing_cost(edge, portions, index, noise_m, settings),
    )


def _worth_a_look(edge: Edge, portions: Portions, settings: MatchingSettings) -> IndexArray:
    """Give the portions neither much too short or long nor the other way about."""
    distance = edge.distance_m
    if edge.kind in ("late-start", "given-up"):
        fits = portions.chord_m >= settings.shortest_partial_m
        fits &= portions.chord_m < distance
        fits &= portions.path_m <= 2.0 * distance + 200.0
        if edge.kind == "late-start":
            fits &= portions.first == 0
    else:
        fits = (portions.chord_m >= 0.3 * distance) & (portions.chord_m <= 2.0 * distance)
        fits &= portions.path_m <= 3.0 * distance + 300.0
    near = np.flatnonzero(fits)
    turn = turn_degrees(edge.azimuth_deg, portions.chord_deg[near])
    return near[np.abs(turn) <= settings.widest_turn_deg]


def _found(
    portions: Portions,
    index: IndexArray,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of a portion's end as the finding of the point, share included.

    A reckoned end is a density over direction (degrees) and the logarithm of
    distance, against an even one; the place found is put into the same measure. A
    point is found on a way that leads straight to it; after a detour it is likelier
    that the leg had ended and a search found it.
    """
    chord = portions.chord_m[index]
    sd = float(np.hypot(settings.found_arrival_sd_m, noise_m))
    detour = (portions.path_m[index] - chord) / (
        settings.found_detour_share * chord + 2.0 * noise_m
    )
    share = settings.found_share + settings.found_directly_share * np.exp(-(detour**2))
    density = np.exp(-0.5 * (to_point_m / sd) ** 2) / (2.0 * np.pi * sd**2)
    return np.asarray(share * density * chord**2 * np.radians(1.0) * 360.0 * 3.0)


def _standing_cost(
    edge: Edge,
    portions: Portions,
    index: IndexArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    halting = settings.cost_halted_s * portions.halted_s[index]
    halting += settings.cost_halt * portions.halts[index]
    cost = np.minimum(halting, settings.cost_halts_most)
    if not edge.bent:
        slack = settings.deviation_share * edge.distance_m + noise_m + 4.0
        wavering = 0.5 * (portions.deviation_m[index] / slack) ** 2
        cost = cost + settings.weight_deviation * np.minimum(wavering, 2.0)
    return np.asarray(cost)
