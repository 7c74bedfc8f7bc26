"""What the signs of a leg say, in nats: curves learnt on made walks of the development seeds."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

import numpy as np

from audit.units import FloatArray

Signs = Mapping[str, FloatArray]
"""Values of each sign for a number of portions or stays; NaN where a sign does not apply."""


Habits = Mapping[str, float]
"""What this walk is like all along, each from 0 to 1 (`SignsSeen.habits`)."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Curve:
    """Nats against a reading, by the value of its sign; straight between the knots.

    Where a habit of the walk bends the curve, ``nats`` are those without it and ``with_habit``
    those of who has it altogether; between the two they are mixed.
    """

    knots: FloatArray
    nats: FloatArray
    by: str | None = None
    with_habit: FloatArray | None = None

    def __call__(self, values: FloatArray, habits: Habits) -> FloatArray:
        """Give the nats at some values; 0 where the sign does not apply."""
        nats = self.nats
        if self.by is not None and self.with_habit is not None:
            share = habits[self.by]
            nats = (1.0 - share) * nats + share * self.with_habit
        return np.where(np.isnan(values), 0.0, np.interp(values, self.knots, nats))


@dataclass(frozen=True, slots=True, kw_only=True)
class LearntCurves:
    """The curves of one kind of signs, by name."""

    curves: Mapping[str, Curve]

    def nats(self, signs: Signs, habits: Habits) -> FloatArray:
        """Add up what some signs say; a sign without a curve says nothing."""
        heard = [
            self.curves[name](values, habits)
            for name, values in signs.items()
            if name in self.curves
        ]
        return np.asarray(sum(heard)) if heard else np.zeros(np.shape(next(iter(signs.values()))))


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """All curves: of portions as legs, of stays, of beginning and of ending the course."""

    portions: LearntCurves
    stays: LearntCurves
    ends: LearntCurves


@cache
def learnt() -> Learnt:
    """Give the curves that are shipped; made anew by ``python -m learning``."""
    text = resources.files("audit.matching").joinpath("learnt.json").read_text("utf-8")
    kinds = json.loads(text)["curves"]
    return Learnt(**{kind: _curves(kinds[kind]) for kind in ("portions", "stays", "ends")})


def _curves(named: Mapping[str, Mapping[str, Any]]) -> LearntCurves:
    return LearntCurves(curves={name: _curve(curve) for name, curve in named.items()})


def _curve(shipped: Mapping[str, Any]) -> Curve:
    bent = shipped.get("with_habit")
    return Curve(
        knots=np.array(shipped["knots"]),
        nats=np.array(shipped["nats"]),
        by=shipped.get("by"),
        with_habit=None if bent is None else np.array(bent),
    )
