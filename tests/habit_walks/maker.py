"""From a seed to a made walk."""

from __future__ import annotations

import zlib

import numpy as np
from walks.made_walk import LEVELS, LegTruth, MadeWalk

from habit_walks.outing import LegStory, Outing
from habit_walks.recorder import draw_device, record

_LEAST_SECONDS = 15
"""Chosen: an attempt of which less was recorded counts as not recorded."""

_PAD_S = 3


def make(seed: int, level: str) -> MadeWalk:
    """Make the walk of a seed at a level: the same two give the same bytes."""
    if level not in LEVELS:
        message = f"level must be one of {LEVELS}, not {level!r}"
        raise ValueError(message)
    rng = np.random.default_rng([zlib.crc32(b"habits"), LEVELS.index(level), seed])
    outing = Outing(rng, level)
    outing.run()
    true_m = np.column_stack([outing.tracer.easts_m, outing.tracer.norths_m])
    begin, end = _window(rng, outing, len(true_m))
    device = draw_device(rng)
    time_s, places_m = record(rng, device, true_m[begin : end + 1], begin, level)
    first, last = int(np.ceil(time_s[0])), int(np.floor(time_s[-1]))
    return MadeWalk(
        points_m=outing.course.points_m,
        gm_angle_deg=outing.course.gm_angle_deg,
        fix_time_s=time_s,
        fix_m=places_m,
        true_time_s=np.arange(len(true_m), dtype=float),
        true_m=true_m,
        legs=tuple(_truth(story, first, last) for story in outing.stories),
    )


def _window(rng: np.random.Generator, outing: Outing, total: int) -> tuple[int, int]:
    """Draw the seconds between which the recorder is on; the shares are chosen."""
    begin, end = _PAD_S, total - 1 - _PAD_S
    walked = max(outing.last_s - outing.first_s, 1)
    fate = rng.random()
    if fate < 0.5:
        begin = int(rng.uniform(_PAD_S, max(outing.first_s - 5, _PAD_S + 1)))
    elif fate < 0.56:
        begin = outing.first_s + int(rng.uniform(0.02, 0.3) * walked)
    fate = rng.random()
    if fate < 0.35:
        end = int(rng.uniform(outing.last_s, end))
    elif fate < 0.42:
        end = outing.first_s + int(rng.uniform(0.6, 0.99) * walked)
    return begin, max(end, begin + 120)


def _truth(story: LegStory, first: int, last: int) -> LegTruth:
    """Give of a leg's story what lies between the first and the last recorded second."""
    if story.status == "skipped" and first <= story.at_s <= last:
        return LegTruth(status="skipped", causes=tuple(story.causes))
    clipped = [_clipped(pair, first, last) for pair in story.attempts]
    attempts = tuple(pair for pair in clipped if pair is not None)
    if not attempts:
        return LegTruth(status="not-started")
    return LegTruth(
        status=story.status,
        start_s=attempts[-1][0],
        claim_s=attempts[-1][1],
        attempts=attempts,
        causes=tuple(story.causes),
    )


def _clipped(pair: tuple[int, int], first: int, last: int) -> tuple[int, int] | None:
    start, claim = max(pair[0], first), min(pair[1], last)
    if claim - start < min(_LEAST_SECONDS, pair[1] - pair[0]):
        return None
    return start, claim
