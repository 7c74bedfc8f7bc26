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
_ORDER = 0.3 * np.arange(len(_REACHES) * len(_DIRECTIONS_DEG))
"""Of two places that cover as much, the earlier."""


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
    boxes = np.empty((0, 4))
    for label in labels:
        choices = [_at(label, bearing, reach) for reach in _REACHES for bearing in _DIRECTIONS_DEG]
        around = np.array([_box(choice) for choice in choices])
        costs = _costs(around, drawn_px, boxes, (width_px, height_px)) + _ORDER
        best = int(np.argmin(costs))
        if label.may_go and costs[best] >= _OVER_LABEL:
            continue
        placed.append(choices[best])
        boxes = np.vstack([boxes, around[best]])
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


def _costs(
    around: FloatArray, drawn_px: FloatArray, boxes: FloatArray, size: tuple[float, float]
) -> FloatArray:
    """Give what each choice of box would cover: dots of lines, other labels, the edge."""
    low, high = around[:, :2], around[:, 2:]
    near = drawn_px[np.all((drawn_px >= low.min(axis=0)) & (drawn_px <= high.max(axis=0)), axis=1)]
    inside = (near >= low[:, None]) & (near <= high[:, None])
    over = (low[:, None] < boxes[:, 2:]) & (boxes[:, :2] < high[:, None])
    outside = (low < 0).any(axis=1) | (high > np.array(size)).any(axis=1)
    costs: FloatArray = (
        inside.all(axis=2).sum(axis=1)
        + _OVER_LABEL * over.all(axis=2).sum(axis=1)
        + _OUTSIDE * outside
    )
    return costs
