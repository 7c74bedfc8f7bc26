"""Obstacles passed on one side: a step out of the line, and no way back to it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.measurement.leg_details import Bypass
from audit.settings import AsideSettings
from audit.statistics.runs import runs_of_one
from audit.statistics.spread import robust_sd
from audit.units import FloatArray, direction_degrees, turn_degrees


def find_ways_aside(
    time_s: FloatArray,
    walk: FloatArray,
    noise_m: float,
    taken: Sequence[tuple[int, int]],
    settings: AsideSettings,
) -> list[Bypass]:
    """Find ways right across on a leg's smoothed walk, shape (n, 2), that were not made good.

    They stand out from how the walker wanders on this leg and from what the receiver
    could feign. ``taken`` holds the first and last samples of bypasses, which are made
    of such ways. What reaches to an end of the leg may be the turn there.
    """
    step = np.diff(walk, axis=0)
    length = np.hypot(*step.T)
    moving = length > 1e-6
    if not moving.any():
        return []
    turn = _off_the_held(direction_degrees(step[:, 0], step[:, 1]), moving)
    across, ahead = length * np.sin(np.radians(turn)), length * np.cos(np.radians(turn))
    wander = robust_sd(turn[moving])
    least_deg = max(settings.least_turn_deg, settings.wanders * wander)
    least_m = max(settings.least_m, settings.noises * noise_m)
    usual_m_s = float(np.median(length[moving] / np.maximum(np.diff(time_s)[moving], 1e-9)))
    found = []
    hand = np.where(moving & (np.abs(turn) >= least_deg), np.sign(turn), 0.0)
    for first, last in runs_of_one(hand).tolist():
        if hand[first] == 0.0:
            continue
        way_m = float(length[first:last].sum())
        straight_across = np.abs(across[first:last].sum()) >= settings.steep_share * way_m
        # Standing, a receiver wanders to one side too.
        walked = way_m >= settings.least_speed_share * usual_m_s * (time_s[last] - time_s[first])
        begin, end = _with_bends(turn, (first, last), settings.bends_share * least_deg)
        right_m = float(across[begin:end].sum())
        at_an_end = begin == 0 or end == len(length)
        of_bypass = any(one < end and other > begin for one, other in taken)
        if abs(right_m) < least_m or at_an_end or of_bypass or not (straight_across and walked):
            continue
        found.append(
            Bypass(
                start_s=float(time_s[begin]),
                end_s=float(time_s[end]),
                side="right" if right_m > 0.0 else "left",
                out_m=abs(right_m),
                ahead_m=float(ahead[begin:end].sum()),
                back_m=0.0,
                side_sd_m=noise_m,
                equal=False,
                returned=False,
            )
        )
    return found


def without_half_seen(
    asides: Sequence[Bypass],
    silences_s: Sequence[tuple[float, float]],
    speed_m_s: float,
    settings: AsideSettings,
) -> list[Bypass]:
    """Leave out ways aside that may be one half of a way round, the other in a silence.

    ``silences_s`` are beginnings and ends; one counts that begins or ends near the way aside
    and is long enough for walking as far across.
    """
    near_s = settings.beside_silence_s

    def half_seen(one: Bypass) -> bool:
        return not one.returned and any(
            begin <= one.end_s + near_s
            and end >= one.start_s - near_s
            and (end - begin) * speed_m_s >= one.out_m
            for begin, end in silences_s
        )

    return [one for one in asides if not half_seen(one)]


def _with_bends(turn: FloatArray, run: tuple[int, int], least_deg: float) -> tuple[int, int]:
    """Add the turns into and out of a run, which smoothing blurs: what still leans its way."""
    first, last = run
    hand = np.sign(turn[first])
    while first > 0 and hand * turn[first - 1] > least_deg:
        first -= 1
    while last < len(turn) and hand * turn[last] > least_deg:
        last += 1
    return first, last


def _off_the_held(direction_deg: FloatArray, moving: np.ndarray) -> FloatArray:
    """Give directions as turns off the middle one: what ways aside there are do not move it."""
    about = np.radians(direction_deg[moving])
    mean = direction_degrees(float(np.sin(about).sum()), float(np.cos(about).sum()))
    off = np.asarray(turn_degrees(mean, direction_deg))
    held = mean + float(np.median(off[moving]))
    return np.asarray(turn_degrees(held, direction_deg))
