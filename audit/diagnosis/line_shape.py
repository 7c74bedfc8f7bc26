"""How a leg's line was held: its bend, and a stretch on another bearing."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import metres_along, places_along
from audit.settings import LineShapeSettings
from audit.units import FloatArray, direction_degrees, turn_degrees

_OF_A_MEDIAN = 1.4826
"""A normal standard deviation over the median deviation."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherBearing:
    """One stretch on another bearing than the rest of the leg.

    ``turn_deg`` is against the rest; ``nats`` how much better than one bearing throughout
    it explains the walk, ``even_nats`` how much better an even bend does. Both go by
    ``spread_deg``, of the rest of the leg; ``sought_nats`` were taken off for the search.
    """

    turn_deg: float
    length_m: float
    right_m: float
    nats: float
    even_nats: float = 0.0
    spread_deg: float = 0.0
    sought_nats: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShape:
    """How a line was held.

    Attributes
    ----------
    bend_deg, bend_sd_deg : float
        Heading at the end less heading at the start of an even bend, and its error.
    other : OtherBearing or None
    chord_m : float
        From start to claim.
    wander_deg : float
        Spread of the headings about their middle; what stands out, and few steps, count little.
    """

    bend_deg: float
    bend_sd_deg: float
    other: OtherBearing | None = None
    chord_m: float = 500.0
    wander_deg: float = 0.0


def line_shape(walk: FloatArray, noise_m: float, settings: LineShapeSettings) -> LineShape | None:
    """Describe a walk, shape (n, 2), from start to claim; None for one that is too short."""
    steps = _even_steps(walk, settings)
    if steps is None:
        return None
    heading, chord_deg, chord_m = steps
    off = turn_degrees(chord_deg, heading)
    held = np.abs(off) < settings.held_deg
    ragged = float(np.sqrt(np.mean(off[held] ** 2))) if held.any() else 90.0
    bend, bend_sd = _bend(off, held, noise_m, ragged, settings)
    return LineShape(
        bend_deg=bend,
        bend_sd_deg=bend_sd,
        other=_other_bearing(off, noise_m, settings),
        chord_m=chord_m,
        wander_deg=_OF_A_MEDIAN * float(np.median(np.abs(off - np.median(off)))),
    )


def _even_steps(
    walk: FloatArray, settings: LineShapeSettings
) -> tuple[FloatArray, float, float] | None:
    """Give headings of steps of equal length along the way, and the chord."""
    path = metres_along(walk)
    count = int(path[-1] // settings.step_m)
    chord = walk[-1] - walk[0]
    chord_m = float(np.hypot(*chord))
    short = count < settings.least_steps or chord_m < settings.least_chord_m
    if short or path[-1] > settings.longest_of_chord * chord_m:
        return None
    at = np.linspace(0.0, path[-1], count + 1)
    places = places_along(walk, path, at)
    moves = np.diff(places, axis=0)
    heading = direction_degrees(moves[:, 0], moves[:, 1])
    return heading, direction_degrees(float(chord[0]), float(chord[1])), chord_m


def _bend(
    off: FloatArray, held: np.ndarray, noise_m: float, ragged: float, settings: LineShapeSettings
) -> tuple[float, float]:
    """Fit an even bend to the headings; its error counts wander and receiver as they are."""
    share = (np.arange(len(off)) + 0.5) / len(off) - 0.5
    if held.sum() < settings.least_held_steps:
        return 0.0, 90.0
    slope = float(np.polyfit(share[held], off[held], 1)[0])
    length_m = settings.step_m * len(off)
    wander = ragged * np.sqrt(12.0 * min(settings.own_wander_m / length_m, 1.0))
    receiver = np.degrees(6.0 * 1.2 * noise_m / length_m)
    return slope, float(np.hypot(wander, receiver))


def _other_bearing(
    off: FloatArray, noise_m: float, settings: LineShapeSettings
) -> OtherBearing | None:
    """Find the one stretch whose bearing differs most from that of the rest."""
    off = np.clip(off, -settings.clipped_deg, settings.clipped_deg)
    count, step_m = len(off), settings.step_m
    sums = np.concatenate([[0.0], np.cumsum(off)])
    shortest = settings.shortest_other_steps
    lengths = np.arange(shortest, max(shortest + 1, int(settings.longest_other_share * count)))
    best: tuple[float, int, int, float] | None = None
    for length in lengths.tolist():
        inner = (sums[length:] - sums[:-length]) / length
        outer = (sums[-1] - inner * length) / (count - length)
        turn = inner - outer
        weight = length * (count - length) / count * step_m / settings.own_wander_m
        at = int(np.argmax(np.abs(turn)))
        gain = 0.5 * turn[at] ** 2 * weight
        if best is None or gain > best[0]:
            best = (float(gain), at, length, float(turn[at]))
    if best is None:
        return None
    _, first, length, turn_deg = best
    rest = np.concatenate([off[:first], off[first + length :]])
    wander = float(np.std(rest))
    receiver = np.degrees(1.5 * noise_m / (step_m * length))
    spread = float(np.hypot(max(wander, settings.least_wander_deg), receiver))
    weight = length * (count - length) / count * step_m / settings.own_wander_m
    sought = float(np.log(0.5 * count))
    nats = 0.5 * (turn_deg / spread) ** 2 * weight - sought
    right = float(step_m * length * np.sin(np.radians(turn_deg)))
    return OtherBearing(
        turn_deg=turn_deg,
        length_m=step_m * length,
        right_m=right,
        nats=float(nats),
        even_nats=_even_nats(off, settings),
        spread_deg=spread,
        sought_nats=sought,
    )


def _even_nats(off: FloatArray, settings: LineShapeSettings) -> float:
    """Say how much better than one bearing an even bend explains a walk, by the same measure."""
    off = np.clip(off, -settings.clipped_deg, settings.clipped_deg)
    share = (np.arange(len(off)) + 0.5) / len(off) - 0.5
    slope, middle = np.polyfit(share, off, 1)
    wander = float(np.sqrt(np.mean((off - middle - slope * share) ** 2)))
    explained = float(((slope * share) ** 2).sum()) * settings.step_m / settings.own_wander_m
    return 0.5 * explained / max(wander, settings.least_wander_deg) ** 2
