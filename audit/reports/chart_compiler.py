"""Vega-Lite specifications turned into Vega, each shape of picture only once.

Pictures of one kind differ in their rows, their size, and in a few numbers and titles.
Those are taken out, the rest is turned into Vega and kept, and they are put back in.
"""

from __future__ import annotations

import gzip
import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any

from audit.reports.cursor_layers import CURSOR
from audit.reports.lean_chart import lean, without_marks_of

Spec = dict[str, Any]
_KEPT_SHAPES = 128
_GIVEN = "given_"
_ANY_SIZE = 200
"""In pixels; stands in a shape where a chart has its own."""
SHIPPED_SHAPES = files("audit.reports").joinpath("script", "chart_shapes.json.gz")


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A picture as Vega: a shape that many share, and what this one puts into it.

    Attributes
    ----------
    shape : dict
        One and the same object for all charts of this shape; not to be changed.
    rows, numbers : mapping
        By name of the data set, and of the signal.
    size : mapping
        Width and height, where the whole picture is one view.
    """

    shape: Spec
    rows: Mapping[str, Any]
    numbers: Mapping[str, Any]
    size: Mapping[str, float]

    def vega(self) -> Spec:
        """Give the whole specification, as it stands still: without the time cursor."""
        return {
            **without_marks_of(self.shape, {CURSOR}),
            **self.size,
            "data": [_filled(one, "values", self.rows) for one in self.shape["data"]],
            "signals": [_filled(one, "value", self.numbers) for one in self.shape["signals"]],
        }


def chart_of(specification: Mapping[str, Any]) -> Chart:
    """Give the chart of a Vega-Lite specification."""
    given: list[Any] = []
    datasets = specification.get("datasets", {})
    size = {side: specification[side] for side in ("width", "height") if side in specification}
    apart = {"datasets", "params", *size}
    shape = _shape({key: part for key, part in specification.items() if key not in apart}, given)
    shape |= dict.fromkeys(size, _ANY_SIZE)
    shape["datasets"] = {name: [] for name in datasets}
    own = specification.get("params", [])
    numbers = {_name(number): value for number, value in enumerate(given)}
    numbers |= {one["name"]: one["value"] for one in own if "value" in one}
    params = [{"name": name, "value": None} for name in numbers]
    shape["params"] = [*params, *(one for one in own if "value" not in one)]
    return Chart(shape=_compiled(json.dumps(shape)), rows=datasets, numbers=numbers, size=size)


def _shape(part: Any, given: list[Any]) -> Any:  # noqa: ANN401 (any part of a specification)
    """Copy a part with its titles and the numbers of its domains and ticks named, not given."""
    if isinstance(part, list | tuple):
        return [_shape(one, given) for one in part]
    if not isinstance(part, dict):
        return part
    copied: Spec = {}
    for key, value in part.items():
        if key in {"domain", "values"} and isinstance(value, list):
            given.append(value)
            name = _name(len(given) - 1)
            copied[key] = (
                {"expr": name}
                if key == "values"
                else [{"expr": f"{name}[{place}]"} for place in range(len(value))]
            )
        elif key == "title" and isinstance(value, str):
            given.append(value)
            copied[key] = _name(len(given) - 1)
        else:
            copied[key] = _shape(value, given)
    return copied


def _name(number: int) -> str:
    return f"{_GIVEN}{number}"


def _is_named(title: object) -> bool:
    return isinstance(title, str) and title.startswith(_GIVEN)


def _filled(part: Spec, key: str, values: Mapping[str, Any]) -> Spec:
    return {**part, key: values[part["name"]]} if part.get("name") in values else part


@lru_cache(maxsize=_KEPT_SHAPES)
def _compiled(shape: str) -> Spec:
    made = shipped_shapes().get(shape) or compile_shape(shape)
    return {"data": [], "signals": [], **_titled(lean(made))}


def _titled(vega: Spec) -> Spec:
    """Let the titles that are named be signals, which a compiled chart takes for words."""
    made = dict(vega)
    if "axes" in vega:
        made["axes"] = [
            {**one, "title": {"signal": one["title"]}} if _is_named(one.get("title")) else one
            for one in vega["axes"]
        ]
    if "marks" in vega:
        made["marks"] = [_titled(mark) for mark in vega["marks"]]
    return made


def compile_shape(shape: str) -> Spec:
    """Turn the text of a Vega-Lite specification into Vega."""
    import vl_convert  # noqa: PLC0415

    made: Spec = vl_convert.vegalite_to_vega(json.loads(shape))
    return made


@lru_cache(maxsize=1)
def shipped_shapes() -> Mapping[str, Spec]:
    """Give what nearly every page draws, compiled beforehand; empty for another compiler."""
    kept = json.loads(gzip.decompress(SHIPPED_SHAPES.read_bytes()))
    return dict(kept["shapes"]) if kept["made_by"] == compiler() else {}


def compiler() -> list[str]:
    """Say which compiler draws here."""
    import vl_convert  # noqa: PLC0415

    return [vl_convert.get_vegalite_versions()[-1], vl_convert.get_vega_version()]
