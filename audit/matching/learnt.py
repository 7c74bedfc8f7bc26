"""What the signs of a leg say, in nats: curves learnt on made walks of the development seeds."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources

import numpy as np

from audit.units import FloatArray

Signs = Mapping[str, FloatArray]
"""Values of each sign for a number of portions or stays; NaN where a sign does not apply."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Curve:
    """Nats against a reading, by the value of its sign; straight between the knots."""

    knots: FloatArray
    nats: FloatArray

    def __call__(self, values: FloatArray) -> FloatArray:
        """Give the nats at some values; 0 where the sign does not apply."""
        nats = np.interp(values, self.knots, self.nats)
        return np.where(np.isnan(values), 0.0, nats)


@dataclass(frozen=True, slots=True, kw_only=True)
class LearntCurves:
    """The curves of one kind of signs, by name."""

    curves: Mapping[str, Curve]

    def nats(self, signs: Signs) -> FloatArray:
        """Add up what some signs say; a sign without a curve says nothing."""
        heard = [self.curves[name](values) for name, values in signs.items() if name in self.curves]
        return np.sum(heard, axis=0) if heard else np.zeros(len(next(iter(signs.values()))))


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """All curves: of portions as legs, of stays, of beginning and of ending the course."""

    portions: LearntCurves
    stays: LearntCurves
    ends: LearntCurves


@cache
def learnt() -> Learnt:
    """Give the curves that are shipped; made anew by ``python -m accuracy.learning``."""
    text = resources.files("audit.matching").joinpath("learnt.json").read_text("utf-8")
    kinds = json.loads(text)["curves"]
    return Learnt(**{kind: _curves(kinds[kind]) for kind in ("portions", "stays", "ends")})


def _curves(named: Mapping[str, Mapping[str, list[float]]]) -> LearntCurves:
    return LearntCurves(
        curves={
            name: Curve(knots=np.array(curve["knots"]), nats=np.array(curve["nats"]))
            for name, curve in named.items()
        }
    )
