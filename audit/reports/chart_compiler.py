"""Vega-Lite specifications turned into Vega, each shape of picture only once.

Pictures of one kind differ in their rows and in a few numbers. Those are taken out,
the rest is turned into Vega and kept, and they are put back in: that saves a third of
the time of drawing, and most of it for a class.
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
    """

    shape: Spec
    rows: Mapping[str, Any]
    numbers: Mapping[str, Any]

    def vega(self) -> Spec:
        """Give the whole specification, as it stands still: without the time cursor."""
        return {
            **without_marks_of(self.shape, {CURSOR}),
            "data": [_filled(one, "values", self.rows) for one in self.shape["data"]],
            "signals": [_filled(one, "value", self.numbers) for one in self.shape["signals"]],
        }


def chart_of(specification: Mapping[str, Any]) -> Chart:
    """Give the chart of a Vega-Lite specification."""
    given: list[Any] = []
    datasets = specification.get("datasets", {})
    shape = _shape({key: part for key, part in specification.items() if key != "datasets"}, given)
    shape["datasets"] = {name: [] for name in datasets}
    params = [{"name": _name(number), "value": None} for number in range(len(given))]
    shape["params"] = [*params, *shape.get("params", [])]
    numbers = {_name(number): value for number, value in enumerate(given)}
    return Chart(shape=_compiled(json.dumps(shape)), rows=datasets, numbers=numbers)


def _shape(part: Any, given: list[Any]) -> Any:  # noqa: ANN401 (any part of a specification)
    """Copy a part with the numbers of its domains and ticks named in place of given."""
    if isinstance(part, list | tuple):
        return [_shape(one, given) for one in part]
    if not isinstance(part, dict):
        return part
    copied = {}
    for key, value in part.items():
        if key in {"domain", "values"} and isinstance(value, list):
            given.append(value)
            name = _name(len(given) - 1)
            copied[key] = (
                {"expr": name}
                if key == "values"
                else [{"expr": f"{name}[{place}]"} for place in range(len(value))]
            )
        else:
            copied[key] = _shape(value, given)
    return copied


def _name(number: int) -> str:
    return f"given_{number}"


def _filled(part: Spec, key: str, values: Mapping[str, Any]) -> Spec:
    return {**part, key: values[part["name"]]} if part.get("name") in values else part


@lru_cache(maxsize=_KEPT_SHAPES)
def _compiled(shape: str) -> Spec:
    made = shipped_shapes().get(shape) or compile_shape(shape)
    return {"data": [], "signals": [], **lean(made)}


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
