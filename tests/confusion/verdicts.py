"""What the diagnosis said of each leg of a made walk, beside what was really done there."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from walks import DIFFICULTIES, LegTruth, Walk
from walks.difficulties import Difficulty
from walks.truth import Planted

import audit
from audit.debriefing.finished_debrief import Debrief
from audit.units import turn_degrees
from confusion.planted import Sort

NAMED = 0.8
TIMES_ITS_ERROR = 3.0
SHOWN_SHARE = 0.6
NO_MISTAKE = ("within-skill", "cannot-tell")
STEADY_DEG = 4.0
"""A walker drawn with a bias of more is steadily turned, whether or not it was planted."""
PACE_OFF = 0.06


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """One walked leg.

    Attributes
    ----------
    planted : frozenset of str
        Mistakes made on it.
    also : frozenset of str
        Other names that would be no lie: the walker's own bias or pace is that large.
    separable : frozenset of str
        Planted ones whose effect the leg really shows, and more than three times its error.
    shares : dict
        Probability of each mistake that is listed, and of "within-skill".
    made : dict
        Probability that each mistake was made at all, be it beside a larger one.
    either : frozenset of str
        Two mistakes that are told as "one of these", where neither is named.
    """

    difficulty: str
    cause: str
    planted: frozenset[str]
    also: frozenset[str]
    separable: frozenset[str]
    shares: dict[str, float]
    made: dict[str, float] = field(default_factory=dict)
    either: frozenset[str] = frozenset()
    leg: int = 0

    @property
    def named(self) -> str | None:
        """The mistake that is named, None where none is."""
        found = [c for c, share in self.shares.items() if share >= NAMED and c not in NO_MISTAKE]
        return found[0] if found else None

    def tells(self, cause: str) -> bool:
        """Say whether a mistake is named, or told as one of two look-alikes."""
        return self.named == cause or cause in self.either

    def right(self, cause: str) -> bool:
        """Say whether naming a mistake would be true."""
        return cause in self.planted or cause in self.also


def verdicts(
    kind: Sort, walk: Walk, debrief: Debrief | None = None, family: Difficulty | None = None
) -> list[Verdict]:
    """Debrief a walk, where that has not been done; give its walked legs.

    ``family`` has the ordinary error of such walkers; that of the difficulty if None.
    """
    debrief = debrief or audit.debrief(walk.plan, walk.track)
    family = family or DIFFICULTIES[kind.difficulty]
    found = []
    for leg, truth in zip(debrief.legs, walk.truth.legs, strict=True):
        if leg.audit.measures is None or truth.status != "walked" or truth.length_m is None:
            continue
        planted = {one.cause for one in truth.planted}
        if truth.leg > 0:
            planted.discard("wrong-start")  # later legs begin where the one before ended
        found.append(
            Verdict(
                leg=truth.leg,
                difficulty=kind.difficulty,
                cause=kind.cause,
                planted=frozenset(planted),
                also=_also(walk),
                separable=frozenset(
                    one.cause
                    for one in truth.planted
                    if one.cause in planted
                    and _separable(one, truth, walk, family, shared=kind.whole_walk)
                ),
                shares={one.cause: one.probability for one in leg.causes},
                made={one.cause: one.made or 0.0 for one in leg.causes},
                either=frozenset(leg.one_of.causes if leg.one_of else ()),
            )
        )
    return found


def _also(walk: Walk) -> frozenset[str]:
    truth = walk.truth
    found = set()
    if abs(truth.bias_deg) >= STEADY_DEG:
        found.add("steady-bias")
    if truth.pace_factor >= 1.0 + PACE_OFF:
        found.add("pace-long")
    if truth.pace_factor <= 1.0 - PACE_OFF:
        found.add("pace-short")
    return frozenset(found)


def _separable(
    planted: Planted, truth: LegTruth, walk: Walk, family: Difficulty, *, shared: bool
) -> bool:
    """Say whether a leg shows a mistake by more than three times ordinary error.

    The error: the family's scatter of legs (shared out over the legs of a mistake of
    the whole walk) and of walkers, over the leg's length. What the leg shows: how far its
    true end lies from where a leg without error would have ended.
    """
    length_m = walk.course.card_m[truth.leg]
    legs = math.sqrt(sum(leg.status == "walked" for leg in walk.truth.legs))
    over = legs if shared else 1.0
    turn = math.radians(math.hypot(family.bias_sd_deg, family.leg_sd_deg / over))
    pace = math.hypot(family.pace_sd, family.leg_pace_sd / over)
    if planted.unit == "deg":
        effect = 2.0 * math.sin(math.radians(min(abs(planted.size), 180.0)) / 2.0)
        error = turn
    elif planted.unit == "ratio":
        effect, error = abs(planted.size - 1.0), pace
    elif planted.unit == "m":
        effect, error = abs(planted.size) / length_m, math.hypot(turn, pace)
        if planted.cause in ("hundred-miscounted", "overshoot", "early-stop", "bypass-paced"):
            error = pace
    else:
        return False
    off = math.radians(turn_degrees(walk.course.card_azimuth_deg[truth.leg], truth.azimuth_deg))
    ratio = truth.length_m / length_m
    shown = math.hypot(ratio * math.cos(off) - 1.0, ratio * math.sin(off))
    if planted.cause == "wrong-start":
        shown = effect  # the whole leg is shifted, so its own vector shows nothing
    return effect > TIMES_ITS_ERROR * error and shown >= SHOWN_SHARE * effect
