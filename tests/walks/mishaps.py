"""What goes badly wrong on a leg: walked twice, begun the wrong way, given up, lost."""

from __future__ import annotations

from dataclasses import replace

from walks.leg_intents import LegIntent
from walks.legs_on_foot import held_azimuth_deg
from walks.outings import LegRecord, Outing
from walks.trails import Tag, along


def walk_and_come_back(
    outing: Outing, leg: int, held_deg: float, path_m: float
) -> tuple[int, int] | None:
    """Walk the leg, doubt it, return to its start; gives the attempt where it was whole."""
    trail, rng = outing.trail, outing.rng
    tag = Tag(kind="walking", label=-1, other=leg)
    start, first = trail.second, trail.position_m.copy()
    share = 1.0 if outing.chance(0.5) else float(rng.uniform(0.4, 0.9))
    trail.add(trail.straight_places(held_deg, share * path_m, outing.leg_gait()), tag)
    claim = trail.second
    trail.halt(float(rng.uniform(5.0, 60.0)), replace(tag, kind="search"))
    trail.go_through(first, outing.gait, tag)
    trail.halt(float(rng.uniform(10.0, 60.0)), Tag(kind="at-point"))
    return (start, claim) if share == 1.0 else None


def set_off_wrongly(
    outing: Outing, leg: int, intent: LegIntent, held_deg: float, path_m: float
) -> float:
    """Start in the wrong direction, notice, return, and hold the right azimuth instead."""
    trail, rng = outing.trail, outing.rng
    tag = Tag(kind="walking", label=-1, other=leg)
    first = trail.position_m.copy()
    share = float(rng.uniform(0.15, 0.6))
    trail.add(trail.straight_places(held_deg, share * path_m, outing.leg_gait()), tag)
    trail.halt(float(rng.uniform(10.0, 90.0)), replace(tag, kind="halt"))
    trail.go_through(first, outing.gait, tag)
    trail.halt(float(rng.uniform(5.0, 60.0)), Tag(kind="at-point"))
    intent.azimuth_deg = outing.course.card_azimuth_deg[leg]
    intent.count_m = outing.course.card_m[leg]
    return held_azimuth_deg(outing, intent)[1]


def give_up_on_the_way(outing: Outing, record: LegRecord, held_deg: float, path_m: float) -> None:
    trail, tag = outing.trail, Tag(kind="walking", label=record.leg)
    share = float(outing.rng.uniform(0.3, 0.8))
    trail.add(trail.straight_places(held_deg, share * path_m, outing.leg_gait()), tag)
    record.claim = record.search_end = trail.second
    record.finished = False
    record.attempts = [(record.start, record.claim)]
    trail.halt(float(outing.rng.uniform(20.0, 120.0)), Tag(kind="walk-off"))


def get_lost(outing: Outing, record: LegRecord, held_deg: float, path_m: float) -> None:
    """Leave the azimuth after a halt, wander, and come to the point by other means."""
    trail, rng = outing.trail, outing.rng
    tag = Tag(kind="walking", label=record.leg)
    share = float(rng.uniform(0.35, 0.75))
    trail.add(trail.straight_places(held_deg, share * path_m, outing.leg_gait()), tag)
    record.claim = trail.second
    looking = replace(tag, kind="search")
    trail.halt(float(rng.uniform(20.0, 180.0)), looking)
    turn = float(rng.choice([-1.0, 1.0]) * rng.uniform(40.0, 120.0))
    aside = trail.position_m + along(held_deg + turn, float(rng.uniform(80.0, 300.0)))
    trail.go_through(aside, outing.gait, looking)
    trail.halt(float(rng.uniform(0.0, 60.0)), looking)
    trail.go_by_way_of(outing.markers_m[record.leg + 1], 1, outing.gait, looking)
    record.found = True
