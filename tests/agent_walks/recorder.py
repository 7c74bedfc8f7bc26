"""The recorder: a phone, a watch or a handheld, each with its own ways of being wrong.

All shares and sizes are chosen.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random

import numpy as np

from agent_walks.weighted import pick
from audit.units import FloatArray

_KINDS = (("phone", 45), ("watch", 33), ("handheld", 22))
_RANK = {"trained": 0, "ordinary": 1, "novice": 2}
_SMOOTHING = {"phone": 0.6, "watch": 0.8, "handheld": 0.45}
_PAUSES = {"phone": 0.1, "watch": 0.22, "handheld": 0.04}
_LATE = {"trained": 0.04, "ordinary": 0.08, "novice": 0.12}
"""How often it is switched on after the start, and how often off before the end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    """How one recorder samples and errs.

    Attributes
    ----------
    picks : str
        What it goes by: "time", "distance", or "turns" together with both.
    every : float
        Seconds or metres between fixes, as it ``picks``.
    slow_m, quick_m : float
        Spread of the error that wanders over minutes, and over seconds.
    smoothing : float
        Share of the place of a second ago in that of now.
    holds, pauses : bool
        Whether it freezes, and whether it stops, while the walker stands.
    trouble : float
        Gaps an hour; jumps and spikes go with it.
    """

    picks: str
    every: float
    slow_m: float
    quick_m: float
    smoothing: float
    holds: bool
    pauses: bool
    grain_m: float
    trouble: float


def make_device(rng: Random, level: str) -> Device:
    """Draw a recorder; the less able walker has more trouble with it."""
    kind = pick(rng, _KINDS)
    rank = _RANK[level]
    picks, every = rng.choice(_ways_to_pick(rng, kind))
    # Each argument draws in its turn: another order makes other walks.
    return Device(
        picks=picks,
        every=float(every),
        slow_m=rng.uniform(1.0, 2.6) + 0.4 * rank,
        quick_m=rng.uniform(0.2, 0.9),
        smoothing=_SMOOTHING[kind] * rng.uniform(0.6, 1.1),
        holds=kind != "handheld" and rng.random() < 0.4,
        pauses=rng.random() < _PAUSES[kind],
        grain_m=rng.choice((0.01, 0.1, 0.1, 1.11)),
        trouble=(0.3, 0.8, 1.6)[rank],
    )


def _ways_to_pick(rng: Random, kind: str) -> tuple[tuple[str, int], ...]:
    """Give the ways in which a kind of recorder may be set to pick its fixes."""
    if kind == "phone":
        by_way = ("distance", rng.choice((3, 5, 10)))
        return (("time", 1), ("time", 1), ("time", 2), ("time", 5), by_way, ("time", 15))
    if kind == "watch":
        return (("time", 1), ("turns", 4), ("turns", 7), ("turns", 10))
    seldom = ("time", rng.choice((20, 30)))
    return (("time", 1), ("time", 5), ("time", 10), ("distance", 10), ("turns", 8), seldom)


def window_of(rng: Random, level: str, first: int, last: int, end: int) -> tuple[int, int]:
    """When the recorder is switched on and off; sometimes late, sometimes too early."""
    late = _LATE[level]
    on = rng.randint(1, max(2, first - 2)) if rng.random() < 0.7 else max(1, first - 3)
    off = rng.randint(min(last, end - 2), end - 1)
    if rng.random() < late:
        on = first + int(math.exp(rng.uniform(math.log(20), math.log(900))))
    if rng.random() < late:
        off = last - int(math.exp(rng.uniform(math.log(20), math.log(1500))))
    if off - on < 0.3 * (last - first):
        return max(1, first - 3), end - 1
    return on, off


def record(
    rng: Random, device: Device, window: tuple[int, int], true_m: FloatArray, canopy: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Fix times and places for the seconds of the window."""
    on, off = window
    part_m, cover = true_m[on : off + 1], canopy[on : off + 1]
    error_m = _errors(rng, device, cover)
    if rng.random() < 0.25:
        # Switched on cold: the first fixes come home slowly.
        second, far_m, turn = np.arange(len(part_m)), rng.uniform(15, 110), rng.uniform(0, 6.283)
        home_m = far_m * np.exp(-second / rng.uniform(8, 35))[:, None]
        error_m += home_m * np.array([math.sin(turn), math.cos(turn)])
    speed_m_s = np.r_[0.0, np.hypot(*np.diff(part_m, axis=0).T)]
    shown_m = _smooth(device, part_m + error_m, speed_m_s)
    picked = _without_gaps(rng, device, len(shown_m), _picked(device, shown_m, speed_m_s))
    if len(picked) < 20:
        picked = list(range(0, len(shown_m), 5))
    places_m = np.round(shown_m[picked] / device.grain_m) * device.grain_m
    return on + np.array(picked, dtype=float), places_m


def _errors(rng: Random, device: Device, canopy: FloatArray) -> FloatArray:
    """Position error at every second before the recorder's own smoothing."""
    count = len(canopy)
    noise_rng = np.random.default_rng(rng.getrandbits(60))
    memory_s = rng.uniform(60, 260)
    slow_m = (device.slow_m * (1.0 + 1.3 * canopy))[:, None]
    error_m = slow_m * _wandering(noise_rng, count, memory_s)
    quick_m = (device.quick_m * (1.0 + 1.6 * canopy))[:, None]
    error_m += quick_m * _wandering(noise_rng, count, 6.0)
    expected = device.trouble * count / 3600.0
    for _ in range(_count(rng, 2.5 * expected)):
        # Another set of satellites, or their echoes, for a while.
        at, lasts = rng.randrange(count), rng.randint(12, 90)
        size_m = abs(rng.gauss(0, 9.0)) * (0.4 + canopy[at])
        turn = rng.uniform(0, 6.283)
        part = error_m[at : at + lasts]
        aside_m = size_m * _ramp(lasts, 3)[: len(part), None]
        part += aside_m * np.array([math.sin(turn), math.cos(turn)])
    for _ in range(_count(rng, 1.2 * expected)):
        at, lasts, turn = rng.randrange(count), rng.randint(1, 4), rng.uniform(0, 6.283)
        spike_m = rng.uniform(15, 110)
        error_m[at : at + lasts] += spike_m * np.array([math.sin(turn), math.cos(turn)])
    return error_m


def _wandering(noise_rng: np.random.Generator, count: int, memory_s: float) -> FloatArray:
    """A wandering error of unit spread that forgets itself in about so many seconds."""
    step = max(1, int(memory_s / 12.0))
    knots = count // step + 2
    kept = math.exp(-step / memory_s)
    kicks = (math.sqrt(1.0 - kept * kept) * noise_rng.standard_normal((knots, 2))).tolist()
    east, north = noise_rng.standard_normal(2).tolist()
    wandered = []
    for kick_east, kick_north in kicks:
        wandered.append((east, north))
        east, north = kept * east + kick_east, kept * north + kick_north
    if step == 1:
        return np.array(wandered[:count])
    at_knot, second = np.array(wandered), np.arange(count)
    knot_s = np.arange(knots) * step
    return np.stack([np.interp(second, knot_s, at_knot[:, axis]) for axis in (0, 1)], 1)


def _ramp(count: int, rise: int) -> FloatArray:
    """Up in ``rise`` seconds, flat, and down again."""
    second = np.arange(count)
    return np.clip(np.minimum(second, count - 1 - second) / max(1, rise), 0.0, 1.0)


def _count(rng: Random, mean: float) -> int:
    """A count of chance events with a given mean."""
    count, left = 0, mean - rng.expovariate(1.0)
    while left > 0:
        count, left = count + 1, left - rng.expovariate(1.0)
    return count


def _smooth(device: Device, raw_m: FloatArray, speed_m_s: FloatArray) -> FloatArray:
    """The recorder's filter: follows with a lag; some freeze while he stands."""
    kept = device.smoothing
    east, north = raw_m[0].tolist()
    still_s = 0
    shown_m = []
    for (raw_east, raw_north), speed in zip(raw_m.tolist(), speed_m_s.tolist(), strict=True):
        still_s = still_s + 1 if speed < 0.35 else 0
        near = abs(raw_east - east) + abs(raw_north - north) < 14.0
        if not (device.holds and still_s > 6 and near):
            east = kept * east + (1.0 - kept) * raw_east
            north = kept * north + (1.0 - kept) * raw_north
        shown_m.append((east, north))
    return np.array(shown_m)


def _picked(device: Device, shown_m: FloatArray, speed_m_s: FloatArray) -> list[int]:
    """Which seconds the recorder writes down."""
    count = len(shown_m)
    if device.picks == "time":
        picked = list(range(0, count, int(device.every)))
    elif device.picks == "distance":
        picked = _by_distance(device, shown_m)
    else:
        picked = _at_turns(device, shown_m)
    if device.pauses:
        slow = np.convolve(speed_m_s < 0.3, np.ones(12), "full")[:count] >= 12
        picked = [second for second in picked if not slow[second]]
    return picked


def _by_distance(device: Device, shown_m: FloatArray) -> list[int]:
    """A fix every so many metres, and after two minutes."""
    places = shown_m.tolist()
    picked = [0]
    for second, here in enumerate(places):
        last = picked[-1]
        if math.dist(here, places[last]) >= device.every or second - last >= 120:
            picked.append(second)
    return picked


def _at_turns(device: Device, shown_m: FloatArray) -> list[int]:
    """A fix where the way of the last seconds turns off, after a distance, or after a time."""
    places = shown_m.tolist()
    picked = [0]
    for second, here in enumerate(places):
        last = picked[-1]
        since_s = second - last
        east, north = here[0] - places[last][0], here[1] - places[last][1]
        far_m = math.hypot(east, north)
        if since_s >= 2 and far_m > 2.0:
            before = places[max(last, second - 3)]
            newest_east, newest_north = here[0] - before[0], here[1] - before[1]
            across = abs(east * newest_north - north * newest_east)
            turn = across / (far_m * (math.hypot(newest_east, newest_north) + 0.1))
            takes = far_m >= 3.0 * device.every or turn > 0.3 or since_s >= 2.2 * device.every
        else:
            takes = since_s >= 40
        if takes:
            picked.append(second)
    return picked


def _without_gaps(rng: Random, device: Device, count: int, picked: list[int]) -> list[int]:
    """Take out the seconds in which the recorder had no fix or slept."""
    there = np.ones(count, dtype=bool)
    for _ in range(_count(rng, device.trouble * count / 3600)):
        begin = rng.randrange(count)
        there[begin : begin + int(math.exp(rng.uniform(math.log(12), math.log(300))))] = False
    return [second for second in picked if there[second]]
