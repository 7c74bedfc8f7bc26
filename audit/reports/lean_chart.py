"""Vega made lighter to draw, with no stroke of it changed.

A compiled chart carries each axis twice, once for its grid and once for its numbers, and
axes that draw nothing at all. Every one of them costs as much as a layer of marks. Its
lines would be sorted from left to right; here all lines run as their rows come.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

Spec = dict[str, Any]


def lean(vega: Spec) -> Spec:
    """Give the same chart with one axis where two lie over each other, none where none shows."""
    made = {key: part for key, part in vega.items() if key != "sort"}
    if "axes" in vega:
        made["axes"] = _axes(vega["axes"])
    if "marks" in vega:
        made["marks"] = [lean(mark) for mark in vega["marks"]]
    return made


def without_marks_of(vega: Spec, names: Collection[str]) -> Spec:
    """Give the chart without the marks that draw these rows."""
    made = dict(vega)
    if "marks" in vega:
        kept = (mark for mark in vega["marks"] if _rows_of(mark) not in names)
        made["marks"] = [without_marks_of(mark, names) for mark in kept]
    return made


def _axes(axes: list[Spec]) -> list[Spec]:
    bare: list[Spec] = []
    numbered: list[Spec] = []
    for one in axes:
        (bare if one.get("gridScale") else numbered).append(one)
    merged = []
    for one in numbered:
        under = next((grid for grid in bare if _same_place(grid, one)), None)
        if under is not None:
            bare.remove(under)
            merged.append(_with_grid(one, under))
        elif one.get("labels", True) or one.get("title"):
            merged.append(one)
    return [*bare, *merged]


def _with_grid(numbers: Spec, grid: Spec) -> Spec:
    made = {**numbers, **{key: part for key, part in grid.items() if key.startswith("grid")}}
    encode = {**grid.get("encode", {}), **numbers.get("encode", {})}
    return {**made, "encode": encode} if encode else made


def _same_place(grid: Spec, numbers: Spec) -> bool:
    """Tell whether two axes lie over each other and mark the same values."""
    keys = ("scale", "orient", "tickCount", "values", "zindex")
    return all(grid.get(key) == numbers.get(key) for key in keys)


def _rows_of(mark: Spec) -> str | None:
    name: str | None = mark.get("from", {}).get("data")
    return name
