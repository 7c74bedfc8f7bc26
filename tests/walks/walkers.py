"""The walk from point to point: legs, links past skipped points, searches and halts."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from audit.units import direction_degrees
from walks.leg_intents import LegIntent
from walks.legs_on_foot import (
    held_azimuth_deg,
    make_claim,
    plan_pieces,
    record_leg,
    walk_pieces,
)
from walks.mishaps import get_lost, give_up_on_the_way, set_off_wrongly, walk_and_come_back
from walks.mistakes import draw_leg_intent
from walks.outings import LegRecord, Outing
from walks.searches import search
from walks.trails import Tag, along
from walks.walk_mistakes import pace_on_ground


def draw_order(outing: Outing) -> list[int]:
    """Draw the points made for, in order; usually 1, 2, 3 and so on."""
    last = outing.course.leg_count
    planned = list(range(1, last + 1))
    order = list(planned)
    if last < 4:
        return order
    rng = outing.rng
    if outing.chance(outing.difficulty.skips):
        count = 2 if last >= 6 and outing.chance(0.2) else 1
        first = int(rng.integers(1, last - count + 1))
        del order[first - 1 : first - 1 + count]
    elif outing.chance(outing.difficulty.swaps):
        first = int(rng.integers(0, last - 1))
        order[first], order[first + 1] = order[first + 1], order[first]
    return order if _can_be_told(outing, order) else planned


def _can_be_told(outing: Outing, order: list[int]) -> bool:
    """Refuse an order whose links lie on planned legs: nobody could tell the two apart."""
    site, points = outing.course.site, outing.course.points_m
    planned = set(pairwise(site))
    for here, target in zip([0, *order[:-1]], order, strict=True):
        if target == here + 1:
            continue
        if (site[here], site[target]) in planned:
            return False
        if float(np.hypot(*(points[target] - points[here]))) < 100.0:
            return False
    return True


def walk_course(outing: Outing) -> None:
    """Walk the whole course, or as much as the walker does of it."""
    order = draw_order(outing)
    gives_up = None
    if len(order) >= 4 and outing.chance(outing.difficulty.abandons):
        gives_up = int(outing.rng.integers(1, len(order)))
    here = 0
    for number, target in enumerate(order):
        if number == gives_up and outing.chance(0.4):
            return
        outing.order.append(target)
        if target == here + 1:
            finished = walk_planned_leg(outing, here, stops_short=number == gives_up)
        else:
            finished = walk_link(outing, here, target)
        if not finished or number == gives_up:
            return
        here = target


def _point_halt(outing: Outing) -> None:
    difficulty = outing.difficulty
    if outing.chance(difficulty.halt_at_point):
        seconds = float(outing.rng.uniform(*difficulty.halt_at_point_s))
    else:
        seconds = float(outing.rng.uniform(0.0, 4.0))
    outing.trail.halt(seconds, Tag(kind="at-point"))


def walk_link(outing: Outing, here: int, target: int) -> bool:
    """Walk straight to a point out of its turn; no planned leg, so nobody's seconds."""
    course, tag = outing.course, Tag(kind="walking")
    way = course.points_m[target] - course.points_m[here]
    intent = LegIntent(
        azimuth_deg=direction_degrees(float(way[0]), float(way[1])),
        count_m=float(np.hypot(*way)),
    )
    _, held = held_azimuth_deg(outing, intent)
    pieces = plan_pieces(outing, intent, intent.count_m * outing.pace_factor)
    marker = outing.markers_m[target] if outing.marked else None
    seen = walk_pieces(outing, pieces, held, outing.leg_gait(), tag, marker_m=marker)
    make_claim(outing, seen, outing.markers_m[target], held, tag)
    if outing.marked and not seen and not search(outing, outing.markers_m[target], held, tag)[0]:
        outing.trail.go_by_way_of(outing.markers_m[target], 1, outing.gait, tag)
    outing.plotted_shift_m = np.zeros(2)
    _point_halt(outing)
    return True


def walk_planned_leg(outing: Outing, leg: int, *, stops_short: bool = False) -> bool:
    """Walk one leg of the plan; says False where the walker gives up on it."""
    rng, difficulty, trail = outing.rng, outing.difficulty, outing.trail
    intent = draw_leg_intent(rng, difficulty, outing.course, leg, outing.plotted_shift_m)
    setting, held = held_azimuth_deg(outing, intent)
    factor = outing.pace_factor * float(np.exp(rng.normal(0.0, difficulty.leg_pace_sd)))
    factor *= pace_on_ground(outing.shared, outing.course.card_azimuth_deg[leg])
    path_m = max(intent.count_m * factor, 40.0)
    earlier = None
    if outing.chance(difficulty.repeats) and leg > 0:
        earlier = walk_and_come_back(outing, leg, held, path_m)
    elif intent.wrong_way and outing.chance(difficulty.notices):
        held = set_off_wrongly(outing, leg, intent, held, path_m)
        setting = outing.course.card_azimuth_deg[leg]
    record = record_leg(outing, leg, intent, setting, factor)
    gait, tag = outing.leg_gait(), Tag(kind="walking", label=leg)
    if stops_short:
        give_up_on_the_way(outing, record, held, path_m)
        return False
    marker = outing.markers_m[leg + 1 if intent.other_point is None else intent.other_point]
    if outing.marked and outing.chance(difficulty.lost) and path_m > 200.0:
        get_lost(outing, record, held, path_m)
    else:
        pieces = plan_pieces(outing, intent, path_m)
        looks = outing.marked and not intent.unseen and outing.chance(difficulty.sees)
        seen = walk_pieces(
            outing,
            pieces,
            held,
            gait,
            tag,
            veer_deg=intent.veer_deg,
            marker_m=marker if looks else None,
        )
        record.claim = make_claim(outing, seen, marker, held, tag)
        _reach_point(outing, record, intent, held, seen=seen)
    record.attempts = [*([earlier] if earlier else []), (record.start, record.claim)]
    record.planted = tuple(intent.planted)
    record.search_end = trail.second
    outing.plotted_shift_m = np.zeros(2) if record.found else intent.plotted_shift_m
    _point_halt(outing)
    return True


def _reach_point(
    outing: Outing, record: LegRecord, intent: LegIntent, held_deg: float, *, seen: bool
) -> None:
    """After the claim: search, relocate, come back from an overshoot, or go on."""
    trail, tag = outing.trail, Tag(kind="search", label=record.leg, other=-1)
    marker = outing.markers_m[record.leg + 1]
    if not outing.marked:
        if intent.overshoot_m and outing.chance(0.7):
            back = along(held_deg + 180.0, intent.overshoot_m * float(outing.rng.uniform(0.7, 1.1)))
            trail.go_through(trail.position_m + back, outing.gait, tag)
        return
    if intent.other_point is not None and not seen:
        other = outing.markers_m[intent.other_point]
        seen, record.claim = search(outing, other, held_deg, tag)
    if intent.other_point is not None and seen:
        record.found = False
        return
    record.found = seen
    if not seen:
        again = intent.other_point is not None
        record.found, claim = search(outing, marker, held_deg, tag, again=again)
        record.claim = record.claim if again else claim
    if not record.found and outing.chance(0.5):
        trail.halt(float(outing.rng.uniform(10.0, 90.0)), tag)
        trail.go_by_way_of(marker, int(outing.rng.integers(0, 3)), outing.gait, tag)
        record.found = True
