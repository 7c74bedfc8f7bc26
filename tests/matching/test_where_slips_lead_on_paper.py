"""Every slip of a leg, worked out a second time from the digits as they are written."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, card_of

from audit.matching import where_slips_lead
from audit.matching.route import plan_route, with_slips
from audit.matching.where_slips_lead import Slips, slips_of
from audit.units import turn_degrees

S = SETTINGS.matching
POINTS = ((0, 0), (400, 0), (400, 500), (-200, 500))
ODD = ((13, 27), (413, 52), (466, 581), (-207, 538))
"""Points whose coordinates have no two digits alike where it matters."""
FREE = replace(S, slip_most_m=1e9, slip_shortest=1e-9, shortest_link_m=1e-9)


def written(metres: float) -> str:
    """The four digits of an 8-figure reference: tens of metres in the square of 100 km."""
    return f"{int(metres):07d}"[2:6]


def slipped_digits(text: str):
    """Every other reading of four digits: one wrong, two neighbours swapped, or a 9 of tens or
    hundreds counted on and a 0 counted back, so that the digit before changes too.
    """
    for place, right in enumerate(text):
        for wrong in "0123456789":
            if wrong != right:
                yield text[:place] + wrong + text[place + 1 :]
    for place in range(3):
        yield text[:place] + text[place + 1] + text[place] + text[place + 2 :]
    for place, worth in ((2, 10), (3, 1)):
        if text[place] in "09":
            yield f"{int(text) + (worth if text[place] == '9' else -worth):04d}"


def moved_points(end):
    """Where the point is put: digits of either coordinate, the next line, both exchanged, and
    both measured with the wrong tool."""
    for wrong in slipped_digits(written(end.east_m)):
        yield end.east_m + 10.0 * (int(wrong) - int(written(end.east_m))), end.north_m
    for wrong in slipped_digits(written(end.north_m)):
        yield end.east_m, end.north_m + 10.0 * (int(wrong) - int(written(end.north_m)))
    for line in (-1000.0, 1000.0):
        yield end.east_m + line, end.north_m
        yield end.east_m, end.north_m + line
    east, north = (math.floor(at / 1000.0) * 1000.0 for at in (end.east_m, end.north_m))
    yield east + end.north_m - north, north + end.east_m - east
    for scale in (2.0, 0.5):  # with a tool for another scale, from the corner of the square
        yield east + scale * (end.east_m - east), north + scale * (end.north_m - north)


def ways_to(points, of):
    """The ways of a leg to other points than its own."""
    start, unmoved = of.start, (of.end.east_m, of.end.north_m)
    for east_m, north_m in points:
        east, north = east_m - start.east_m, north_m - start.north_m
        length = math.hypot(east, north)
        if length > 0.01 and (east_m, north_m) != unmoved:
            yield round(math.degrees(math.atan2(east, north)) % 360.0, 4) % 360.0, round(length, 4)


def rounded(ways):
    return {(round(azimuth, 4) % 360.0, round(length, 4)) for azimuth, length in ways}


@pytest.mark.parametrize("leg", [0, 1, 2])
def test_a_point_is_misplotted_to_where_its_digits_and_lines_put_it(leg) -> None:
    of = card_of(*ODD).legs[leg]
    expected = set(ways_to(moved_points(of.end), of))
    assert len(expected) > 60
    assert rounded(where_slips_lead._misplotted(of, FREE)) == expected


def test_the_next_leg_leads_on_from_where_its_start_is_put(monkeypatch) -> None:
    """To the leg's own point, from every place where the digits of its start put that."""
    card = card_of(*ODD)
    monkeypatch.setattr(where_slips_lead, "_apart", lambda _of, ways, _settings: ways)
    of = card.legs[1]
    expected = set()
    for east_m, north_m in moved_points(card.legs[0].end):
        east, north = of.end.east_m - east_m, of.end.north_m - north_m
        if (east_m, north_m) != (of.start.east_m, of.start.north_m):
            way = round(math.degrees(math.atan2(east, north)) % 360.0, 4) % 360.0
            expected.add((way, round(math.hypot(east, north), 4)))
    assert rounded(where_slips_lead.carried_on(card, 1, FREE)) == expected


def test_a_point_put_too_far_off_or_beside_the_start_is_not_looked_for() -> None:
    of = card_of(*ODD).legs[0]
    points = [
        (east, north)
        for east, north in moved_points(of.end)
        if math.hypot(east - of.end.east_m, north - of.end.north_m) <= 1000.0
        and math.hypot(east - of.start.east_m, north - of.start.north_m) >= 0.4 * of.distance_m
    ]
    assert rounded(where_slips_lead._misplotted(of, S)) == set(ways_to(points, of))
    # No way is shorter than what can be told from a search: of 95 m neither 55 m is, nor 45 m.
    short = card_of((0, 0), (95, 0)).legs[0]
    nearest = sorted(length for _, length in where_slips_lead._misplotted(short, S))[:2]
    assert nearest == pytest.approx([65.0, 75.0])


def test_the_dial_is_set_to_a_neighbour_the_other_scale_its_mirror_or_a_quarter_off() -> None:
    """Legs of 90, 0 and 270 degrees; magnetic azimuths are 7 degrees more.

    A circle has 6400 mils, numbered in hundreds: 97 degrees read on the other scale are 9.7
    hundreds of 5.625 degrees, and 17.24 hundreds of mils read as degrees are 172.4. A bezel
    turned to the other side of north is set to 360 less the azimuth.
    """
    card = card_of(*POINTS)
    for leg, (grid, neighbours) in enumerate([(90.0, [0.0]), (0.0, [90.0, 270.0]), (270.0, [0.0])]):
        magnetic = grid + 7.0
        set_deg = [*neighbours, magnetic * 6400.0 / 3600.0 - 7.0, magnetic * 5.625 - 7.0]
        expected = np.array([*set_deg, 360.0 - magnetic - 7.0, grid - 90.0, grid + 90.0])
        ways = where_slips_lead._misset(card, leg)
        assert {length for _, length in ways} == {card.legs[leg].distance_m}
        off = turn_degrees(expected, np.array([azimuth for azimuth, _ in ways]))
        assert off == pytest.approx(np.zeros(len(expected)), abs=1e-3)


def test_how_far_off_a_way_is_counts_in_usual_errors_of_direction_and_length() -> None:
    azimuth, length = (
        np.array([7.0, 0.0, 353.0, 180.0, 0.0]),
        np.array([300.0, 600.0, 150.0, 300.0, 0.1]),
    )
    off = where_slips_lead._off_sd((0.0, 300.0), azimuth, length, S)
    turned = np.array([7.0, 0.0, 7.0, 180.0, 0.0]) / S.heading_sd_deg
    stretched = np.log(np.array([1.0, 2.0, 0.5, 1.0, 1.0 / 300.0])) / S.distance_sd
    assert off == pytest.approx(np.sqrt(turned**2 + stretched**2))


def test_of_two_slips_as_near_the_first_is_told_and_a_reach_is_a_reach() -> None:
    made = Slips(
        azimuth_deg=np.array([10.0, 350.0, 20.0]), distance_m=np.array([300.0, 300.0, 300.0])
    )
    told, near = made.nearest(np.array([0.0, 349.0, 26.0]), np.full(3, 300.0), S)
    assert told.azimuth_deg.tolist() == [10.0, 350.0, 20.0]
    assert near.tolist() == [True, True, True]
    reach_deg = S.slip_reach_sd * S.heading_sd_deg
    at, over = (np.array([20.0 + reach_deg + more]) for more in (0.0, 0.01))
    assert made.nearest(at, np.array([300.0]), S)[1].tolist() == [True]
    assert made.nearest(over, np.array([300.0]), S)[1].tolist() == [False]


def test_slips_are_kept_where_they_lead_clearly_elsewhere_than_those_before(monkeypatch) -> None:
    """The leg is 90 degrees and 400 m; one and a half usual errors are clear."""
    card = card_of(*POINTS)
    clear = S.slip_apart_sd * S.heading_sd_deg
    ways = [(90.0 + clear + 0.1, 400.0), (90.0 + clear - 0.1, 400.0), (90.0 - 2.0 * clear, 400.0),
            (90.0 + 2.0 * clear, 400.0), (90.0, 400.0 * math.exp(S.slip_apart_sd * S.distance_sd + 0.01))]  # fmt: skip
    monkeypatch.setattr(where_slips_lead, "_misplotted", lambda *_: ways[:2])
    monkeypatch.setattr(where_slips_lead, "_misset", lambda *_: ways[2:])
    made = slips_of(card, 0, S)
    kept = [ways[0], ways[2], ways[4]]
    assert list(zip(made.azimuth_deg.tolist(), made.distance_m.tolist(), strict=True)) == kept
    part = made.part(np.array([True, False, True]))
    assert (part.azimuth_deg.tolist(), part.distance_m.tolist()) == (
        [ways[0][0], ways[4][0]],
        [ways[0][1], ways[4][1]],
    )
    monkeypatch.setattr(where_slips_lead, "_misplotted", lambda *_: ways[1:2])
    monkeypatch.setattr(where_slips_lead, "_misset", lambda *_: [])
    assert slips_of(card, 0, S) is None


def test_only_a_leg_from_its_point_to_the_next_is_held_against_slips() -> None:
    """Not a repeated one, one on its back azimuth, one begun before the recording or given up."""
    card = card_of(*POINTS)
    route = plan_route(card, S)
    slipped = with_slips(route, card, range(3), S).edges[len(route.edges) :]
    held = [(edge.source, edge.target, edge.leg, edge.kind) for edge in slipped]
    wrong = route.misplotted
    assert set(held) == {
        *((leg, leg + 1, leg, "slip") for leg in range(3)),
        *((leg, wrong[leg], leg, "slip") for leg in range(2)),
        *((wrong[leg], leg + 2, leg + 1, "carried") for leg in range(2)),
    }
    assert len(held) == 7
    plain = [edge for edge in route.edges if edge.kind == "leg" and edge.source == edge.target - 1]
    for edge in slipped:
        of = plain[edge.leg]
        assert (edge.azimuth_deg, edge.distance_m) == (of.azimuth_deg, of.distance_m)
    of_slips = [edge for edge in slipped if edge.target == edge.source + 1]
    for one, other in pairwise(of_slips):
        assert one.slips is not other.slips
    aside = replace(
        route, edges=tuple(edge for edge in route.edges if edge.target != edge.source + 1)
    )
    assert with_slips(aside, card, range(3), S) is aside
