"""How a leg's line was held: its bend, its ways sideways, and a stretch on another bearing."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray, direction_degrees, turn_degrees

_STEP_M = 8.0
"""Headings are taken over steps of this length."""
_OWN_WANDER_M = 40.0
"""Headings this far apart along the way are separate evidence of a bearing held."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sideways:
    """A way across the leg: where it began along it, and metres to the right."""

    along_m: float
    right_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherBearing:
    """One stretch on another bearing than the rest of the leg.

    ``turn_deg`` is against the rest; ``nats`` how much better than one bearing throughout
    it explains the walk, ``even_nats`` how much better an even bend does.
    """

    turn_deg: float
    length_m: float
    right_m: float
    nats: float
    even_nats: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShape:
    """How a line was held.

    Attributes
    ----------
    bend_deg, bend_sd_deg : float
        Heading at the end less heading at the start of an even bend, and its error.
    sideways : tuple of Sideways
    other : OtherBearing or None
    raggedness_deg : float
        Root mean square of the headings of short steps about the leg's own.
    chord_m : float
        From start to claim.
    """

    bend_deg: float
    bend_sd_deg: float
    sideways: tuple[Sideways, ...] = ()
    other: OtherBearing | None = None
    raggedness_deg: float = 8.0
    chord_m: float = 500.0


def line_shape(walk: FloatArray, noise_m: float, least_side_m: float) -> LineShape | None:
    """Describe a walk, shape (n, 2), from start to claim; None for one that is too short."""
    steps = _even_steps(walk)
    if steps is None:
        return None
    heading, chord_deg, chord_m = steps
    off = turn_degrees(chord_deg, heading)
    sides = _sideways(off, max(least_side_m, 2.5 * noise_m))
    held = np.abs(off) < 50.0
    ragged = float(np.sqrt(np.mean(off[held] ** 2))) if held.any() else 90.0
    bend, bend_sd = _bend(off, held, noise_m, ragged)
    return LineShape(
        bend_deg=bend,
        bend_sd_deg=bend_sd,
        sideways=sides,
        other=_other_bearing(off, noise_m),
        raggedness_deg=ragged,
        chord_m=chord_m,
    )


def _even_steps(walk: FloatArray) -> tuple[FloatArray, float, float] | None:
    """Give headings of steps of equal length along the way, and the chord."""
    path = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(walk, axis=0).T))])
    count = int(path[-1] // _STEP_M)
    chord = walk[-1] - walk[0]
    chord_m = float(np.hypot(*chord))
    if count < 12 or chord_m < 80.0 or path[-1] > 3.0 * chord_m:
        return None
    at = np.linspace(0.0, path[-1], count + 1)
    places = np.column_stack([np.interp(at, path, walk[:, axis]) for axis in (0, 1)])
    moves = np.diff(places, axis=0)
    heading = direction_degrees(moves[:, 0], moves[:, 1])
    return heading, direction_degrees(float(chord[0]), float(chord[1])), chord_m


def _bend(off: FloatArray, held: np.ndarray, noise_m: float, ragged: float) -> tuple[float, float]:
    """Fit an even bend to the headings; its error counts wander and receiver as they are."""
    share = (np.arange(len(off)) + 0.5) / len(off) - 0.5
    if held.sum() < 8:
        return 0.0, 90.0
    slope = float(np.polyfit(share[held], off[held], 1)[0])
    length_m = _STEP_M * len(off)
    wander = ragged * np.sqrt(12.0 * min(_OWN_WANDER_M / length_m, 1.0))
    receiver = np.degrees(6.0 * 1.2 * noise_m / length_m)
    return slope, float(np.hypot(wander, receiver))


def _sideways(off: FloatArray, least_m: float) -> tuple[Sideways, ...]:
    """Find ways across: runs of steps at 45 to 135 degrees to the leg."""
    hand = np.where((np.abs(off) > 45.0) & (np.abs(off) < 135.0), np.sign(off), 0.0)
    edges = np.concatenate([[0], np.flatnonzero(np.diff(hand)) + 1, [len(hand)]])
    found = []
    for begin, end in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True):
        if hand[begin] == 0.0:
            continue
        # The turns into and out of it are blurred by smoothing: take what leans that way.
        first, last = begin, end
        while first > 0 and hand[begin] * off[first - 1] > 20.0:
            first -= 1
        while last < len(off) and hand[begin] * off[last] > 20.0:
            last += 1
        right = float(_STEP_M * np.sin(np.radians(off[first:last])).sum())
        if abs(right) >= least_m:
            found.append(Sideways(along_m=_STEP_M * first, right_m=right))
    return tuple(found)


def _other_bearing(off: FloatArray, noise_m: float) -> OtherBearing | None:
    """Find the one stretch whose bearing differs most from that of the rest."""
    count = len(off)
    sums = np.concatenate([[0.0], np.cumsum(np.clip(off, -75.0, 75.0))])
    lengths = np.arange(3, max(4, int(0.55 * count)))
    best: tuple[float, int, int, float] | None = None
    for length in lengths.tolist():
        inner = (sums[length:] - sums[:-length]) / length
        outer = (sums[-1] - inner * length) / (count - length)
        turn = inner - outer
        weight = length * (count - length) / count * _STEP_M / _OWN_WANDER_M
        at = int(np.argmax(np.abs(turn)))
        gain = 0.5 * turn[at] ** 2 * weight
        if best is None or gain > best[0]:
            best = (float(gain), at, length, float(turn[at]))
    if best is None:
        return None
    _, first, length, turn_deg = best
    rest = np.concatenate([off[:first], off[first + length :]])
    wander = float(np.sqrt(np.mean((np.clip(rest, -75.0, 75.0) - rest.mean()) ** 2)))
    receiver = np.degrees(1.5 * noise_m / (_STEP_M * length))
    spread = float(np.hypot(max(wander, 4.0), receiver))
    weight = length * (count - length) / count * _STEP_M / _OWN_WANDER_M
    nats = 0.5 * (turn_deg / spread) ** 2 * weight - np.log(0.5 * count)
    right = float(_STEP_M * length * np.sin(np.radians(turn_deg)))
    return OtherBearing(
        turn_deg=turn_deg,
        length_m=_STEP_M * length,
        right_m=right,
        nats=float(nats),
        even_nats=_even_nats(off),
    )


def _even_nats(off: FloatArray) -> float:
    """Say how much better than one bearing an even bend explains a walk, by the same measure."""
    off = np.clip(off, -75.0, 75.0)
    share = (np.arange(len(off)) + 0.5) / len(off) - 0.5
    slope, middle = np.polyfit(share, off, 1)
    wander = float(np.sqrt(np.mean((off - middle - slope * share) ** 2)))
    explained = float(((slope * share) ** 2).sum()) * _STEP_M / _OWN_WANDER_M
    return 0.5 * explained / max(wander, 4.0) ** 2
