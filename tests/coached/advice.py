"""What the talk after a made walk said, and whether the walk's truth bears it out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np
from confusion.planted import Sort
from confusion.verdicts import Verdict, verdicts
from walks import LegTruth, Walk, make_walk

import audit
from audit.coaching.talk import Keep, WorkOn
from audit.debriefing.finished_debrief import Debrief
from audit.diagnosis.causes import CAUSES
from audit.guide.cause_names import WITHIN_SKILL
from audit.units import turn_degrees

Kind = Literal["keep", "named", "part", "planted"]
KIND_OF = {cause.name: cause.kind for cause in CAUSES} | {WITHIN_SKILL: "turn"}
"""What a cause puts out; ordinary error is worked on by the drill for a heading."""
HELD_DEG, KEPT_SHARE, NEAR_M = 6.0, 0.1, 60.0
"""Twice what is praised (3 degrees, 5 in 100, the arrival radius of 30 m): by so much receiver
and matching may be out before praise is called wrong."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """One thing that was said of a walk, or a planted mistake that should have been.

    Attributes
    ----------
    kind : "keep", "named" (a mistake), "part" (the first part of the misses), or "planted"
    what : str
        The skill, the cause, or the mistake planted.
    right : bool
        For "planted": whether it was among the things to work on.
    """

    kind: Kind
    what: str
    right: bool


def advice_on(kind: Sort, seed: int) -> list[Advice]:
    """Make and debrief a walk; give all that was said, and all that was planted."""
    family = kind.family() if kind.cause else Sort(
        difficulty=kind.difficulty, cause="veer", whole_walk=False
    ).family().planting()  # fmt: skip
    walk = make_walk(seed, family)
    debrief = audit.debrief(walk.plan, walk.track)
    legs = {one.leg: one for one in verdicts(kind, walk, debrief)}
    numbers = {leg.name: number for number, leg in enumerate(debrief.legs)}
    said = [_kept(one, walk, legs, numbers) for one in debrief.coaching.keep if one.legs]
    work_on = debrief.coaching.work_on
    named = [one for one in work_on if one.certain or one.one_of or one.cause == "order-changed"]
    explained = {numbers[name] for one in named for name in one.legs}
    first_part = next((one for one in work_on if one not in named), None)
    said += [
        _worked_on(one, walk, legs, numbers, explained)
        for one in work_on
        if one in named or one is first_part
    ]
    return [*said, *_planted(debrief, legs.values())]


def _truth(leg: int, walk: Walk) -> tuple[LegTruth, float, float, float]:
    """Give a leg's truth: turn in degrees, ratio of the distance, and metres from the point."""
    truth, course = walk.truth.legs[leg], walk.course
    if truth.azimuth_deg is None or truth.length_m is None or truth.claim_s is None:
        return truth, 180.0, 0.0, math.inf
    here = walk.truth.index_at(truth.claim_s)
    point = course.points_m[leg + 1] + course.marker_shift_m[leg + 1]
    miss_m = math.hypot(walk.truth.east_m[here] - point[0], walk.truth.north_m[here] - point[1])
    turn = turn_degrees(course.card_azimuth_deg[leg], truth.azimuth_deg)
    return truth, turn, truth.length_m / course.card_m[leg], miss_m


def _kept(one: Keep, walk: Walk, legs: dict[int, Verdict], numbers: dict[str, int]) -> Advice:
    """Judge praise: every leg of it, save one in ten, was truly walked like that."""
    good = [_well_done(one.skill, numbers[name], walk, legs) for name in one.legs]
    return Advice(kind="keep", what=one.skill, right=sum(good) >= 0.9 * len(good))


def _well_done(skill: str, leg: int, walk: Walk, legs: dict[int, Verdict]) -> bool:
    truth, turn, ratio, miss_m = _truth(leg, walk)
    made = legs[leg].separable if leg in legs else frozenset()
    if skill == "azimuth":
        return abs(turn) <= HELD_DEG and "turn" not in {KIND_OF[cause] for cause in made}
    if skill == "distance":
        return abs(ratio - 1.0) <= KEPT_SHARE and "length" not in {KIND_OF[one] for one in made}
    return miss_m <= NEAR_M if skill == "arriving" else _nearest_m(truth, walk) <= NEAR_M


def _nearest_m(truth: LegTruth, walk: Walk) -> float:
    """Give how near the walker truly came to the point before he left for the next."""
    if truth.start_s is None:
        return math.inf
    after = [leg.start_s for leg in walk.truth.legs[truth.leg + 1 :] if leg.start_s is not None]
    first = walk.truth.index_at(truth.start_s)
    last = walk.truth.index_at(after[0]) if after else len(walk.truth.time_s) - 1
    point = walk.course.points_m[truth.leg + 1]
    east, north = walk.truth.east_m[first : last + 1], walk.truth.north_m[first : last + 1]
    return float(np.hypot(east - point[0], north - point[1]).min())


def _worked_on(
    one: WorkOn,
    walk: Walk,
    legs: dict[int, Verdict],
    numbers: dict[str, int],
    explained: set[int],
) -> Advice:
    """Judge advice: most of its legs have the mistake, or it is about the larger part.

    "cannot-tell" among the parts is the exercise for a leg turned far off.
    """
    on = [numbers[name] for name in one.legs]
    if one.certain or one.one_of or one.cause == "order-changed":
        causes = one.one_of or (one.cause,)
        made = [any(legs[leg].right(cause) for cause in causes) for leg in on if leg in legs]
        return Advice(kind="named", what=one.cause, right=2 * sum(made) > len(on))
    turned, stretched = _parts_m(walk, explained)
    right = {
        "turn": turned >= 0.8 * stretched, "shape": turned >= 0.8 * stretched,
        "length": stretched >= 0.8 * turned, "place": _begun_off(walk), "behaviour": True,
    }[KIND_OF.get(one.cause, "turn")]  # fmt: skip
    return Advice(kind="part", what=one.cause, right=right)


def _parts_m(walk: Walk, explained: set[int]) -> tuple[float, float]:
    """Give what turns and what distances truly cost on the legs that no mistake explains."""
    turned = stretched = 0.0
    for leg, card_m in enumerate(walk.course.card_m):
        truth, turn, ratio, _ = _truth(leg, walk)
        if truth.status == "walked" and leg not in explained:
            turned += 2.0 * card_m * abs(math.sin(math.radians(turn) / 2.0))
            stretched += card_m * abs(ratio - 1.0)
    return turned, stretched


def _begun_off(walk: Walk) -> bool:
    """Tell whether a leg was truly begun away from its start."""
    for truth in walk.truth.legs:
        if truth.start_s is not None and truth.status == "walked":
            here = walk.truth.index_at(truth.start_s)
            point = walk.course.points_m[truth.leg]
            east, north = walk.truth.east_m[here], walk.truth.north_m[here]
            if math.hypot(east - point[0], north - point[1]) > 20.0:
                return True
    return False


def _planted(debrief: Debrief, legs: Iterator[Verdict]) -> Iterator[Advice]:
    """Give every mistake that stands out on a leg, and whether it is to be worked on."""
    told = {cause for one in debrief.coaching.work_on for cause in one.one_of or (one.cause,)}
    for cause in sorted({cause for leg in legs for cause in leg.separable}):
        yield Advice(kind="planted", what=cause, right=cause in told)
