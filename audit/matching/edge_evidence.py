"""What the walk says about one edge, whoever the walker is supposed to be."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.point_to_point import (
    cost_of_back_azimuth_after_approach,
    cost_of_rest_at_left_out,
    cost_of_rest_at_own_start,
    gain_from_point_to_point,
)
from audit.matching.portions import IndexArray, Portions, SmallFloat, SmallIndex, slices
from audit.matching.route import Edge
from audit.matching.soft_minimum import Runs, order_of
from audit.matching.where_slips_lead import Slips
from audit.settings import MatchingSettings
from audit.units import FloatArray, turn_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeEvidence:
    """The portions that may be a walk of an edge, sorted by their later cut; shape (p,).

    Kept for every edge while the walk is weighed, and so kept small: what a portion looks
    like whatever the edge is looked up with ``index`` (`PortionLooks`).

    Attributes
    ----------
    index, first, second : int arrays
        The portions' places among all, and their two cuts.
    at_target : float array
        Likelihood of ending here when the point is found, against an even one.
    standing_cost : float array
        Halts, wavering, and ends that do not lie along the leg, in nats: the same for every
        walker.
    slipped : Slips or None
        For an edge that is walked as slips lead: of each portion the slip that leads nearest to
        where it does.
    reach : pair of int
        First and last cut that any of these portions touches; the whole walk where they
        touch most of it, so that edges of one direction share their sums.
    """

    index: SmallIndex
    first: SmallIndex
    second: SmallIndex
    at_target: SmallFloat
    standing_cost: SmallFloat
    reach: tuple[int, int]
    slipped: Slips | None


class CutRuns:
    """Portions, sorted by their later cut, run by run of one cut.

    ``by_first`` is the order that sorts them by their earlier cut.
    """

    def __init__(
        self, first: IndexArray | SmallIndex, second: IndexArray | SmallIndex, cuts: int
    ) -> None:
        by_first = order_of(first, cuts)
        self.by_first: SmallIndex = by_first.astype(np.int32)
        self.at_first = Runs(first[by_first], cuts)
        self.at_second = Runs(second, cuts)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PortionLooks:
    """What portions look like, whatever edge they are weighed as; shape (p,).

    Attributes
    ----------
    chord_deg, log_chord : float arrays
        Grid azimuth and logarithm of the straight distance in metres.
    chord_sd_deg : float array
        Error of the chord's direction from the places of its ends.
    directly : float array
        1 for a way that leads straight to its end, falling to 0 with detours.
    bent_cost : float array
        Detours, in nats: none for a straight way, whatever its direction.
    """

    chord_deg: FloatArray
    log_chord: FloatArray
    chord_sd_deg: SmallFloat
    directly: SmallFloat
    bent_cost: SmallFloat


def look_at_portions(
    portions: Portions, index: SmallIndex, noise_m: float, settings: MatchingSettings
) -> PortionLooks:
    """Work out what some portions look like."""
    chord, path = portions.chord_m[index], portions.path_m[index]
    place_sd = float(np.hypot(1.4 * noise_m, settings.place_sd_m))
    return PortionLooks(
        chord_deg=portions.chord_deg[index],
        log_chord=np.log(np.maximum(chord, 1.0)),
        chord_sd_deg=np.degrees(place_sd / np.maximum(chord, 20.0)).astype(np.float32),
        directly=_directly(path, chord, noise_m, settings).astype(np.float32),
        bent_cost=_bent_cost(path, chord, noise_m, settings).astype(np.float32),
    )


def lay_out_edge(
    edge: Edge,
    index: SmallIndex,
    portions: Portions,
    cuts: Cuts,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> EdgeEvidence:
    """Work out what no walker changes of the portions ``index``, which are worth a look.

    ``to_point_m``, shape (k, nodes), holds the distance of each cut from each node.
    """
    slipped = None
    if edge.slips is not None:
        slipped, near = edge.slips.nearest(
            portions.chord_deg[index], portions.chord_m[index], settings
        )
        index, slipped = index[near], slipped.part(near)
    target_m = to_point_m[:, max(edge.target, 0)]
    first, second = portions.first[index], portions.second[index]
    chord = portions.chord_m[index]
    standing_cost = _standing_cost(edge, portions, index, noise_m, settings)
    if edge.line is None:
        standing_cost += _cost_of_ends(portions, index, cuts, settings)
    standing_cost += cost_of_back_azimuth_after_approach(
        edge, first, cuts, to_point_m, noise_m, settings
    )
    for cost in (cost_of_rest_at_own_start, cost_of_rest_at_left_out):
        standing_cost += cost(edge, (first, second), cuts, to_point_m, noise_m, settings)
    if settings.gain_point_to_point > 0.0:
        straight = _directly(portions.path_m[index], chord, noise_m, settings)
        standing_cost -= gain_from_point_to_point(
            edge, (first, second), to_point_m, straight, noise_m, settings
        )
    return EdgeEvidence(
        index=index,
        first=first,
        second=second,
        at_target=_at_target(chord, target_m[second], noise_m, settings).astype(np.float32),
        standing_cost=standing_cost.astype(np.float32),
        reach=reach_of(first, second, len(cuts)),
        slipped=slipped,
    )


def reach_of(
    first: IndexArray | SmallIndex, second: IndexArray | SmallIndex, cuts: int
) -> tuple[int, int]:
    """Give the reach of portions between these cuts; see `EdgeEvidence`."""
    if len(first) == 0:
        return 0, 0
    low, high = int(first.min()), int(second.max())
    return (low, high) if high - low < cuts / 2 else (0, cuts - 1)


def reaches(edges: Iterable[tuple[float, EdgeEvidence]]) -> dict[float, tuple[int, int]]:
    """Give the cuts from first to last that are touched in each planned direction.

    Edges of one direction, which is given with them, share their sums over the metres between.
    """
    found: dict[float, tuple[int, int]] = {}
    for azimuth_deg, at in edges:
        if len(at.index):
            low, high = found.get(azimuth_deg, (int(at.second[0]), 0))
            found[azimuth_deg] = min(low, int(at.first.min())), max(high, int(at.second[-1]))
    return found


def worth_a_look(
    edge: Edge, portions: Portions, to_point_m: FloatArray, settings: MatchingSettings
) -> SmallIndex:
    """Give the portions in the neighbourhood that are not far too short, long or turned."""
    if edge.pinned is not None:
        return edge.pinned.portions(portions.first, portions.second).astype(np.int32)
    near = _in_the_neighbourhood(edge, portions, to_point_m, settings).astype(np.int32)
    return np.concatenate(
        [_of_length_and_turn(edge, portions, of, settings) for of in pieces(near)]
    )


def pieces(index: SmallIndex) -> list[SmallIndex]:
    """Give an index in pieces of which what is worked out stays small; at least one."""
    return [index[of] for of in slices(len(index))]


def _of_length_and_turn(
    edge: Edge, portions: Portions, index: SmallIndex, settings: MatchingSettings
) -> SmallIndex:
    distance = edge.distance_m
    chord, path = portions.chord_m[index], portions.path_m[index]
    if edge.kind in ("late-start", "given-up"):
        fits = (chord >= settings.shortest_partial_m) & (chord < distance)
        fits &= path <= 2.0 * distance + 200.0
        if edge.kind == "late-start":
            fits &= portions.first[index] == 0
    elif edge.slips is not None:
        fits = path <= settings.slip_path_most * chord + settings.slip_path_m
    else:
        fits = (chord >= 0.3 * distance) & (chord <= 2.3 * distance)
        fits &= path <= 3.0 * distance + 300.0
    fits &= portions.silence_s[index] <= settings.longest_silence_s
    ridden_most = settings.ridden_most_m + settings.ridden_most_share * path
    fits &= portions.ridden_m[index] <= ridden_most
    if edge.slips is None:
        turn = turn_degrees(edge.azimuth_deg, portions.chord_deg[index])
        fits &= np.abs(turn) <= settings.widest_turn_deg
    return index[fits]


def _in_the_neighbourhood(
    edge: Edge, portions: Portions, to_point_m: FloatArray, settings: MatchingSettings
) -> IndexArray:
    """Give the portions that begin and end within reach of where the edge does.

    On a long course this leaves few of them, so that the cost grows with the course
    and not with its square. Portions are sorted by their later cut.
    """
    reach = settings.neighbourhood_m + 2.0 * edge.distance_m
    anywhere = np.ones(len(to_point_m), dtype=bool)
    begin = to_point_m[:, edge.source] <= reach if edge.source >= 0 else anywhere
    end = to_point_m[:, edge.target] <= reach if edge.target >= 0 else anywhere
    return portions.between(begin, end)


def _at_target(
    chord_m: FloatArray, to_point_m: FloatArray, noise_m: float, settings: MatchingSettings
) -> FloatArray:
    """Likelihood of a portion's end given that the point was found.

    A reckoned end is a density over direction (degrees) and the logarithm of
    distance, against an even one; the place found is put into the same measure.
    """
    sd = float(np.hypot(settings.found_arrival_sd_m, noise_m))
    density = np.exp(-0.5 * (to_point_m / sd) ** 2) / (2.0 * np.pi * sd**2)
    return np.asarray(density * chord_m**2 * np.radians(1.0) * 360.0 * 3.0)


def _directly(
    path_m: FloatArray, chord_m: FloatArray, noise_m: float, settings: MatchingSettings
) -> FloatArray:
    """Tell how straight a portion leads to its end.

    After a detour it is likelier that the leg had ended before, and a search found
    the point.
    """
    slack = settings.found_detour_share * chord_m + 2.0 * noise_m
    return np.asarray(np.exp(-(((path_m - chord_m) / slack) ** 2)))


def _bent_cost(
    path_m: FloatArray, chord_m: FloatArray, noise_m: float, settings: MatchingSettings
) -> FloatArray:
    slack = settings.astray_detour_share * chord_m + 2.0 * noise_m
    bent = 0.5 * (np.maximum(path_m - chord_m, 0.0) / slack) ** 2
    return np.asarray(np.minimum(bent, settings.astray_bent_most))


def _standing_cost(
    edge: Edge,
    portions: Portions,
    index: SmallIndex,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    halting = settings.cost_halted_s * portions.halted_s[index]
    halting += settings.cost_halt * portions.halts[index]
    cost = np.minimum(halting, settings.cost_halts_most)
    cost = cost + np.where(portions.silence_s[index] > 0.0, settings.cost_silence, 0.0)
    if edge.line is None:
        slack = settings.deviation_share * edge.distance_m + noise_m + 4.0
        wavering = 0.5 * (portions.deviation_m[index] / slack) ** 2
        cost = cost + settings.weight_deviation * np.minimum(wavering, 2.0)
    return np.asarray(cost)


def _cost_of_ends(
    portions: Portions, index: SmallIndex, cuts: Cuts, settings: MatchingSettings
) -> FloatArray:
    """Cost of a portion that is not entered, or not left, in the direction in which it leads.

    Who walks a leg sets out along it and comes to its end along it, whatever he walks round
    on the way. Who has searched comes to the point from anywhere. A last bend to a point in
    sight is shorter than the arm over which this is looked at.
    """
    chord_deg, path_m = portions.chord_deg[index], portions.path_m[index]
    cost = np.zeros(len(index))
    for way_deg, at, most in (
        (cuts.leaving_deg, portions.first, settings.cost_leaving_astray),
        (cuts.arriving_deg, portions.second, settings.cost_arriving_astray),
    ):
        turn = np.abs(turn_degrees(chord_deg, way_deg[at[index]]))
        off = (turn - settings.astray_end_deg) / settings.astray_end_soft_deg
        cost += most * 0.5 * (1.0 + np.tanh(off / 2.0))
    # On a leg no longer than the arm the two say the same, and little.
    return np.asarray(cost * np.clip(path_m / settings.end_arm_m - 1.0, 0.0, 1.0))
