"""How far to the right of a line the walk went, along its length."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_about, metres_along, steps_m
from audit.measurement.leg_measures import CrossTrack
from audit.units import FloatArray, unit_vector


def straight_line(start: FloatArray, azimuth_deg: float, length_m: float) -> FloatArray:
    """Give the line from a place along a grid azimuth; shape (2, 2)."""
    return np.array([start, start + length_m * unit_vector(azimuth_deg)])


def measure_cross_track(line: FloatArray, walk: FloatArray) -> CrossTrack:
    """Measure a walk, shape (n, 2), against a line, shape (k, 2); right is positive.

    A straight line is prolonged at both ends, so that an overshoot has an offset. A
    bent one is measured at its nearest place, the prolonged ends of it included.
    """
    along, offset = _offsets(line, walk)
    weight = metres_about(walk)
    total = float(weight.sum())
    square = float((weight * offset**2).sum() / total) if total else float((offset**2).mean())
    along.flags.writeable = offset.flags.writeable = False
    return CrossTrack(
        along_m=along,
        offset_m=offset,
        end_m=float(offset[-1]),
        max_abs_m=float(np.abs(offset).max()),
        rms_m=float(np.sqrt(square)),
    )


def _offsets(line: FloatArray, walk: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give distance along the line and offset to its right, from its nearest piece."""
    piece = np.diff(line, axis=0)
    length, begun = steps_m(line), metres_along(line)
    nearest = np.full(len(walk), np.inf)
    along, offset = np.zeros(len(walk)), np.zeros(len(walk))
    last = len(piece) - 1
    for number in range(len(piece)):
        if length[number] == 0.0:
            continue
        direction = piece[number] / length[number]
        from_start = walk - line[number]
        forward = from_start @ direction
        right = from_start @ np.array([direction[1], -direction[0]])
        low = -np.inf if number == 0 else 0.0
        high = np.inf if number == last else length[number]
        held = np.clip(forward, low, high)
        distance = np.hypot(right, forward - held)
        nearer = distance < nearest
        nearest[nearer] = distance[nearer]
        along[nearer] = (begun[number] + held)[nearer]
        offset[nearer] = np.where(right < 0.0, -distance, distance)[nearer]
    return along, offset
