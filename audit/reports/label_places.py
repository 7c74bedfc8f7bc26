"""Where the words of a picture go, so that they hide neither lines and signs nor each other."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import even_places
from audit.units import FloatArray, unit_vector

_LETTER_PX, _LINE_PX = 7.5, 14.0
_DIRECTIONS_DEG = (90, 270, 45, 135, 315, 225, 0, 180)
_REACHES = (1.0, 1.7, 2.6)
_OVER_LABEL, _OUTSIDE = 60.0, 400.0
_UPRIGHT = 0.1
"""A direction with less of east and west is up or down: the words stand over their place."""
_ALIGNS = {1: "left", 0: "center", -1: "right"}
_NO_BOX = np.empty((0, 4))
_SAMPLE_PX = 4.0
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
    """The middle of a label, in pixels right and down.

    ``edge_px`` is where it begins beside its place, ``align`` which of its edges that is: so
    it keeps its distance in whatever size it is written.
    """

    label: Label
    right_px: float
    down_px: float
    edge_px: float
    align: str


def place_labels(
    labels: Sequence[Label],
    drawn_px: FloatArray,
    width_px: float,
    height_px: float,
    taken: FloatArray = _NO_BOX,
    room: float = 1.0,
) -> list[PlacedLabel]:
    """Place each label in turn where it covers least; ``drawn_px`` (n, 2) samples the lines.

    ``taken`` are boxes (n, 4) of signs and words that stand already: left, top, right, bottom.
    Each takes ``room`` times its own height and width, for pictures that are shown smaller
    with words that shrink less. One that ``may_go`` is left out where it would hide another
    or one of these.
    """
    placed: list[PlacedLabel] = []
    boxes = taken
    for label in labels:
        choices = [_at(label, bearing, reach) for reach in _REACHES for bearing in _DIRECTIONS_DEG]
        around = np.array([_box(choice, room) for choice in choices])
        over = _over(around, boxes)
        costs = _OVER_LABEL * over + _costs(around, drawn_px, (width_px, height_px)) + _ORDER
        best = int(np.argmin(costs))
        if label.may_go and over[best]:
            continue
        placed.append(choices[best])
        boxes = np.vstack([boxes, around[best]])
    return placed


def boxes_round(places_px: FloatArray, half_px: float) -> FloatArray:
    """Give the boxes of signs at places (n, 2), so far to each side."""
    return np.column_stack([places_px - half_px, places_px + half_px])


def sampled(lines_px: Iterable[FloatArray]) -> FloatArray:
    """Give a dot every few pixels of every line, so that labels can keep off them."""
    # A line in pixels is cut as one in metres is.
    return np.vstack([np.empty((0, 2)), *(even_places(line, _SAMPLE_PX) for line in lines_px)])


def _at(label: Label, bearing_deg: float, reach: float) -> PlacedLabel:
    right, up = unit_vector(bearing_deg)
    clear = label.clear_px * reach
    side = 0 if abs(right) < _UPRIGHT else int(math.copysign(1.0, right))
    edge = label.right_px + right * clear
    return PlacedLabel(
        label=label,
        right_px=edge + side * _half(label, 1.0)[0],
        down_px=label.down_px - up * (clear + _LINE_PX / 2),
        edge_px=edge,
        align=_ALIGNS[side],
    )


def _half(label: Label, room: float) -> FloatArray:
    """Give half the width and half the height of the words."""
    half: FloatArray = np.array([len(label.text) * _LETTER_PX / 2, _LINE_PX / 2]) * room
    return half


def _box(placed: PlacedLabel, room: float) -> FloatArray:
    """Give left, top, right and bottom; room beyond the words is on the far side of their place."""
    half = _half(placed.label, room)
    side = {"left": 1.0, "center": 0.0, "right": -1.0}[placed.align]
    middle = np.array([placed.edge_px + side * half[0], placed.down_px])
    return np.concatenate([middle - half, middle + half])


def _over(around: FloatArray, boxes: FloatArray) -> FloatArray:
    """Give how many of the boxes that stand already each choice of box would cover."""
    low, high = around[:, None, :2], around[:, None, 2:]
    over = (low < boxes[:, 2:]) & (boxes[:, :2] < high)
    count: FloatArray = over.all(axis=2).sum(axis=1)
    return count


def _costs(around: FloatArray, drawn_px: FloatArray, size: tuple[float, float]) -> FloatArray:
    """Give what else each choice of box would cover: dots of lines, the edge."""
    low, high = around[:, :2], around[:, 2:]
    near = drawn_px[np.all((drawn_px >= low.min(axis=0)) & (drawn_px <= high.max(axis=0)), axis=1)]
    inside = (near >= low[:, None]) & (near <= high[:, None])
    outside = (low < 0).any(axis=1) | (high > np.array(size)).any(axis=1)
    costs: FloatArray = inside.all(axis=2).sum(axis=1) + _OUTSIDE * outside
    return costs
