"""Recorders: what the receiver makes of a place, and what the device keeps of that.

All numbers are chosen.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray

Mask = NDArray[np.bool_]

_SKY_SD_M = {"trained": (1.2, 2.6), "ordinary": (1.8, 4.0), "novice": (3.0, 6.0)}
_BAD_PLACES = {"trained": 0.4, "ordinary": 1.2, "novice": 2.6}
_GAPS = {"trained": 0.25, "ordinary": 0.6, "novice": 1.6}
"""Of a walk, in the mean."""

_KINDS = ("phone", "watch", "handheld-1s", "handheld-distance", "handheld-interval")
_KIND_SHARE = (0.3, 0.25, 0.2, 0.13, 0.12)


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    """One recorder's fixed ways.

    ``spacing`` is in seconds, and in metres where it records by distance; ``turn_deg`` is the
    turn at which a watch records; ``part_second`` is added to whole seconds.
    """

    kind: str
    lag_s: float
    coasting: bool
    static_hold: bool
    auto_pause: bool
    spacing: float
    turn_deg: float
    cold_m: float
    standing_drift_m: float
    round_deg: bool
    latitude_deg: float
    part_second: float


def draw_device(rng: np.random.Generator) -> Device:
    """A phone, a watch or a handheld, set the way its owner happens to have it."""
    kind = str(rng.choice(_KINDS, p=_KIND_SHARE))
    phone, watch = kind == "phone", kind == "watch"
    spacing = {
        "phone": float(rng.choice([1, 2, 3, 5, 10], p=(0.3, 0.15, 0.2, 0.25, 0.1))),
        "watch": float(rng.choice([8, 15, 25, 45], p=(0.3, 0.3, 0.25, 0.15))),
        "handheld-1s": 1.0,
        "handheld-distance": float(rng.choice([5, 10, 15, 20])),
        "handheld-interval": float(rng.choice([5, 10, 15, 30], p=(0.4, 0.3, 0.2, 0.1))),
    }[kind]
    pause_share = {"phone": 0.2, "watch": 0.45}.get(kind, 0.12)
    return Device(
        kind=kind,
        lag_s=float(rng.uniform(*((3, 9) if phone else (1, 3.5) if watch else (1, 2.5)))),
        coasting=bool(rng.random() < (0.4 if phone else 0.25)),
        static_hold=bool(rng.random() < (0.25 if phone else 0.12)),
        auto_pause=bool(rng.random() < pause_share),
        spacing=spacing,
        turn_deg=float(rng.uniform(14, 28)),
        cold_m=float(rng.uniform(12, 70)) if rng.random() < 0.45 else 0.0,
        standing_drift_m=float(rng.uniform(2.5, 8) if phone else rng.uniform(0.5, 2.5)),
        round_deg=bool(rng.random() < 0.35),
        latitude_deg=float(rng.uniform(30, 64)),
        part_second=float(np.round(rng.random(), 3)) if phone and rng.random() < 0.5 else 0.0,
    )


def _slow_noise(rng: np.random.Generator, count: int, knot_s: float, sd: float) -> FloatArray:
    """Smooth wandering error of the given size, (count, 2)."""
    number = int(count / knot_s) + 3
    drawn = rng.standard_normal((number, 2))
    for index in range(1, number):
        drawn[index] = 0.6 * drawn[index - 1] + 0.8 * drawn[index]
    at = np.arange(count) / knot_s
    knots = np.arange(number)
    columns = [np.interp(at, knots, drawn[:, axis]) for axis in (0, 1)]
    return np.asarray(1.15 * sd * np.column_stack(columns))


def _eased(offset: FloatArray, seconds: float) -> FloatArray:
    """A step made gradual, the way a solution creeps from one set of echoes to another."""
    width = max(int(seconds), 1)
    padded = np.vstack([np.repeat(offset[:1], width, axis=0), offset])
    summed = np.cumsum(padded, axis=0)
    return np.asarray((summed[width:] - summed[:-width]) / width)


def _bad_places(rng: np.random.Generator, true: FloatArray, level: str) -> FloatArray:
    """Echo offsets: near rocks they belong to the place, under trees to a few minutes."""
    count = len(true)
    offset = np.zeros((count, 2))
    for _ in range(int(rng.poisson(_BAD_PLACES[level]))):
        size = rng.uniform(8, 22)
        turn = rng.uniform(0, 2 * np.pi)
        vector = size * np.array([np.sin(turn), np.cos(turn)])
        if rng.random() < 0.5:
            centre = true[int(rng.integers(0, count))] + rng.normal(0, 20, 2)
            near = np.hypot(*(true - centre).T) < rng.uniform(30, 90)
            offset[near] += vector
        else:
            begin = int(rng.integers(0, count))
            offset[begin : begin + int(rng.uniform(60, 330))] += vector
    return _eased(offset, float(rng.uniform(15, 50)))


def _standing(true: FloatArray) -> Mask:
    moved = np.hypot(*np.diff(true, axis=0, prepend=true[:1]).T)
    slow = np.convolve(moved, np.ones(9) / 9, mode="same")
    return np.asarray(slow < 0.3)


def _received(rng: np.random.Generator, device: Device, true: FloatArray, level: str) -> FloatArray:
    """Raw positions of every second, before the device's own filter."""
    low, high = _SKY_SD_M[level]
    sd = float(rng.uniform(low, high))
    count = len(true)
    error = _slow_noise(rng, count, float(rng.uniform(30, 90)), sd)
    error += _slow_noise(rng, count, 6.0, 0.3 * sd)
    error += rng.normal(0, 0.12 * sd + 0.15, (count, 2))
    error += _bad_places(rng, true, level)
    still = _eased(_standing(true).astype(float)[:, None], 25.0)
    error += still * _slow_noise(rng, count, 18.0, device.standing_drift_m)
    if device.cold_m:
        turn = rng.uniform(0, 2 * np.pi)
        fade = device.cold_m * np.exp(-np.arange(count) / rng.uniform(15, 45))
        error += fade[:, None] * np.array([np.sin(turn), np.cos(turn)])
    return np.asarray(true + error)


def _gap_mask(rng: np.random.Generator, raw: FloatArray, level: str) -> Mask:
    """True where the receiver had a solution; in ``raw`` what follows a gap is pulled aside."""
    count = len(raw)
    good = np.ones(count, bool)
    for _ in range(int(rng.poisson(_GAPS[level]))):
        begin = int(rng.integers(60, max(count - 60, 61)))
        end = min(begin + int(np.exp(rng.normal(4.2, 0.7))), count - 30)
        if end <= begin:
            continue
        good[begin:end] = False
        tail = np.arange(count - end)
        pull = rng.normal(0, 12, 2)
        raw[end:] += np.exp(-tail / rng.uniform(6, 25))[:, None] * pull
    return good


def _filtered(device: Device, raw: FloatArray, good: Mask) -> FloatArray:
    """The device's smoothing: a lag, or a lag that coasts on through halts and corners."""
    gain = 1.0 / max(device.lag_s, 1.0)
    pull = gain * gain * 0.5 if device.coasting else 0.0
    gain = min(1.0, gain * 1.5) if device.coasting else gain
    out = raw.copy()
    east, north = raw[0]
    speed_east = speed_north = 0.0
    fresh = True
    for index, (measured, there) in enumerate(zip(raw.tolist(), good.tolist(), strict=True)):
        if not there:
            fresh = True
            continue
        if fresh:
            (east, north), speed_east, speed_north, fresh = measured, 0.0, 0.0, False
        east, north = east + speed_east, north + speed_north
        off_east, off_north = measured[0] - east, measured[1] - north
        east, north = east + gain * off_east, north + gain * off_north
        speed_east, speed_north = speed_east + pull * off_east, speed_north + pull * off_north
        out[index] = east, north
    return out


def _held(places: FloatArray) -> FloatArray:
    """Static hold: the place shown stays frozen until it has clearly been left."""
    out = places.copy()
    rows = places.tolist()
    hold: list[float] | None = None
    for index in range(8, len(rows)):
        here = rows[index]
        if hold is None:
            if _gap_squared(here, rows[index - 8]) < 2.0:
                hold = here
        elif _gap_squared(here, hold) > 64.0:
            hold = None
        if hold is not None:
            out[index] = hold
    return out


def _gap_squared(here: list[float], there: list[float]) -> float:
    return (here[0] - there[0]) ** 2 + (here[1] - there[1]) ** 2


def _paused(places: FloatArray) -> Mask:
    """True where a recorder with auto-pause has stopped: slow for a while, awake a bit late."""
    count = len(places)
    gone = np.zeros(count)
    gone[6:] = np.hypot(*(places[6:] - places[:-6]).T) / 6.0
    asleep = np.zeros(count, bool)
    down, slow = False, 0
    for index, speed in enumerate(gone.tolist()):
        slow = slow + 1 if speed < 0.45 else 0
        down = slow >= 5 or (down and speed < 0.75)
        asleep[index] = down
    return asleep


def _at_turns(places: FloatArray, keep: Mask, longest_s: float, turn_deg: float) -> list[int]:
    """A fix where the way turned, or after long enough: dense in turns, sparse on straights."""
    rows = places.tolist()
    bend = np.tan(np.radians(turn_deg))
    kept: list[int] = []
    way: tuple[float, float] | None = None
    for index in np.flatnonzero(keep).tolist():
        if not kept:
            kept.append(index)
            continue
        last = rows[kept[-1]]
        east, north = rows[index][0] - last[0], rows[index][1] - last[1]
        gone = float(np.hypot(east, north)) if index - kept[-1] > 2 else 0.0
        if way is None and gone > 3.0:
            way = (east / gone, north / gone)
        aside = abs(east * way[1] - north * way[0]) if way is not None else 0.0
        ahead = east * way[0] + north * way[1] if way is not None else 0.0
        turned = gone > 3.5 and aside > max(2.5, bend * max(ahead, 0.0) * 0.4)
        if turned or index - kept[-1] >= longest_s:
            kept.append(index)
            way = None
    return kept


def _by_distance(places: FloatArray, keep: Mask, spacing_m: float) -> list[int]:
    rows = places.tolist()
    kept: list[int] = []
    for index in np.flatnonzero(keep).tolist():
        if not kept or not _gap_squared(rows[index], rows[kept[-1]]) < spacing_m * spacing_m:
            kept.append(index)
    return kept


def _rounded(device: Device, places: FloatArray) -> FloatArray:
    """Give places to the centimetre, or as they are left by degrees of five decimals."""
    if not device.round_deg:
        return np.round(places, 2)
    north_m = 1.113
    step = np.array([north_m * np.cos(np.radians(device.latitude_deg)), north_m])
    return np.asarray(np.round(np.round(places / step) * step, 3))


def record(
    rng: np.random.Generator, device: Device, true: FloatArray, begin: int, level: str
) -> tuple[FloatArray, FloatArray]:
    """Times and places the device kept; ``true`` holds the seconds it was switched on."""
    raw = _received(rng, device, true, level)
    good = _gap_mask(rng, raw, level)
    places = _filtered(device, raw, good)
    if device.static_hold:
        places = _held(places)
    keep = good & ~_paused(places) if device.auto_pause else good
    if device.kind == "watch":
        kept = _at_turns(places, keep, device.spacing, device.turn_deg)
    elif device.kind == "handheld-distance":
        kept = _by_distance(places, keep, device.spacing)
    else:
        phase = np.arange(len(true)) % int(device.spacing) == 0
        kept = np.flatnonzero(keep & phase).tolist()
    chosen = np.array(kept, int)
    times = chosen + float(begin) + device.part_second
    return times, _rounded(device, places[chosen])
