"""Looking for a point that did not turn up: square, fan, wandering, or straight on."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.units import FloatArray, direction_degrees, turn_degrees
from walks.outings import BEND_DEG, Outing
from walks.trails import Tag, along

LONGEST_M = 900.0


def _square(azimuth_deg: float, step_m: float, turns: int) -> list[FloatArray]:
    """Give the corners of a square that grows outward."""
    corner = np.zeros(2)
    corners = []
    for side in range(turns):
        corner = corner + along(azimuth_deg + 90.0 * side, step_m * (side // 2 + 1))
        corners.append(corner)
    return corners


def _fan(azimuth_deg: float, reach_m: float, blades: int, spread_deg: float) -> list[FloatArray]:
    """Give out-and-back blades about the middle."""
    corners: list[FloatArray] = []
    for blade in range(blades):
        tip = along(azimuth_deg + spread_deg * (blade - (blades - 1) / 2.0), reach_m)
        corners += [tip, np.zeros(2)]
    return corners


def draw_search(outing: Outing, azimuth_deg: float, reach_m: float) -> FloatArray:
    """Draw the corners of a search about where the walker stands, shape (k, 2)."""
    rng = outing.rng
    manner = str(rng.choice(["square", "fan", "wander", "straight-on"], p=[0.25, 0.2, 0.4, 0.15]))
    if manner == "square":
        step = float(np.clip(1.4 * outing.sight_m, 15.0, 60.0))
        corners = _square(float(rng.uniform(0, 360)), step, int(rng.integers(4, 10)))
    elif manner == "fan":
        corners = _fan(azimuth_deg, reach_m, int(rng.integers(2, 6)), float(rng.uniform(50, 100)))
    elif manner == "wander":
        spread = (int(rng.integers(3, 9)), 2)
        corners = list(rng.normal(0.0, 0.6 * reach_m, spread))
    else:
        corners = [along(azimuth_deg, float(rng.uniform(0.8, 2.0)) * reach_m), np.zeros(2)]
    return outing.trail.position_m + np.array(corners)


def search(
    outing: Outing,
    marker_m: FloatArray,
    azimuth_deg: float,
    tag: Tag,
    *,
    again: bool = False,
) -> tuple[bool, int]:
    """Look for the marker; the trail ends at it where it is found.

    Gives whether it is found, and the second at which the walker's own navigation
    ended: now, or, where he walks on without a halt or a turn, where he first turns;
    ``again`` says that it ended before, at an earlier search.
    """
    rng, trail = outing.rng, outing.trail
    looking = replace(tag, kind="search")
    miss = float(np.hypot(*(marker_m - trail.position_m)))
    halted = outing.chance(outing.difficulty.halt_before_search)
    claim = trail.second
    if halted:
        trail.halt(float(rng.uniform(10.0, 90.0)), looking)
    finds = outing.chance(outing.difficulty.finds * float(np.exp(-((miss / 200.0) ** 2))))
    gait = replace(outing.gait, speed_m_s=0.8 * outing.gait.speed_m_s)
    reach = float(np.clip(miss * rng.uniform(0.5, 1.3), 20.0, 160.0))
    walked = 0.0
    for number, corner in enumerate(draw_search(outing, azimuth_deg, reach)):
        in_reach = finds and _in_reach(trail.position_m, corner, marker_m, outing.sight_m)
        goal = marker_m if in_reach else corner
        walked += float(np.hypot(*(goal - trail.position_m)))
        if number == 0 and not (halted or again) and _goes_on(outing, goal, azimuth_deg):
            trail.go_through(goal, outing.gait, replace(tag, kind="walking", other=None))
            claim = trail.second
        else:
            trail.go_through(goal, gait, looking)
        if in_reach:
            return True, claim
        if outing.chance(0.2):
            trail.halt(float(rng.uniform(4.0, 30.0)), looking)
        if walked > LONGEST_M:
            break
    if finds:
        trail.go_through(marker_m, gait, looking)
    return finds, claim


def _goes_on(outing: Outing, goal_m: FloatArray, azimuth_deg: float) -> bool:
    """Say whether the way to a goal is the way that the walker was going anyhow."""
    way = goal_m - outing.trail.position_m
    turn = turn_degrees(azimuth_deg, direction_degrees(float(way[0]), float(way[1])))
    return abs(turn) < BEND_DEG


def _in_reach(
    here_m: FloatArray, corner_m: FloatArray, marker_m: FloatArray, sight_m: float
) -> bool:
    """Say whether the marker lies within sight of the straight way to the next corner."""
    way = corner_m - here_m
    share = float(np.clip((marker_m - here_m) @ way / max(float(way @ way), 1.0), 0.0, 1.0))
    return float(np.hypot(*(here_m + share * way - marker_m))) < sight_m
