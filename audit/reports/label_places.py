"""Where the words of the map go, so that they hide neither the lines nor each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray, unit_vector

_LETTER_PX, _LINE_PX = 7.5, 14.0
_DIRECTIONS_DEG = (90, 270, 45, 135, 315, 225, 0, 180)
_REACHES = (1.0, 1.7, 2.6)
_OVER_LABEL, _OUTSIDE = 60.0, 400.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """Words to set near a place, in pixels right and down; ``clear_px`` is kept free round it."""

    text: str
    right_px: float
    down_px: float
    clear_px: float
    kind: str
    may_go: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedLabel:
    """The middle of a label, in pixels right and down."""

    label: Label
    right_px: float
    down_px: float


def place_labels(
    labels: Sequence[Label], drawn_px: FloatArray, width_px: float, height_px: float
) -> list[PlacedLabel]:
    """Place each label in turn where it covers least; ``drawn_px`` (n, 2) samples the lines.

    One that ``may_go`` is left out where it would hide another.
    """
    placed: list[PlacedLabel] = []
    boxes: list[FloatArray] = []
    for label in labels:
        choices = [_at(label, bearing, reach) for reach in _REACHES for bearing in _DIRECTIONS_DEG]
        costs = [
            _cost(_box(choice), drawn_px, boxes, (width_px, height_px)) + 0.3 * order
            for order, choice in enumerate(choices)
        ]
        best = choices[int(np.argmin(costs))]
        if label.may_go and min(costs) >= _OVER_LABEL:
            continue
        placed.append(best)
        boxes.append(_box(best))
    return placed


def _at(label: Label, bearing_deg: float, reach: float) -> PlacedLabel:
    right, up = unit_vector(bearing_deg)
    half_width = len(label.text) * _LETTER_PX / 2
    clear = label.clear_px * reach
    return PlacedLabel(
        label=label,
        right_px=label.right_px + right * (clear + half_width),
        down_px=label.down_px - up * (clear + _LINE_PX / 2),
    )


def _box(placed: PlacedLabel) -> FloatArray:
    """Give left, top, right and bottom."""
    half = np.array([len(placed.label.text) * _LETTER_PX / 2, _LINE_PX / 2])
    middle = np.array([placed.right_px, placed.down_px])
    return np.concatenate([middle - half, middle + half])


def _cost(
    box: FloatArray, drawn_px: FloatArray, boxes: list[FloatArray], size: tuple[float, float]
) -> float:
    inside = np.all((drawn_px >= box[:2]) & (drawn_px <= box[2:]), axis=1)
    over = sum(bool(np.all(box[:2] < other[2:]) and np.all(other[:2] < box[2:])) for other in boxes)
    outside = bool(np.any(box[:2] < 0) or np.any(box[2:] > np.array(size)))
    return float(inside.sum()) + _OVER_LABEL * over + _OUTSIDE * outside
