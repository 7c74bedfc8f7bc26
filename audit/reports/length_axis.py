"""An axis of lengths with round numbers in the unit that is shown."""

from __future__ import annotations

import json
import math
from typing import Any

from audit.reports.chart_layers import Spec, axis
from audit.words import in_force, say
from audit.words.in_other_units import LENGTH_SIGN, METRES

_ROUND = (1.0, 2.0, 5.0, 10.0)


def length_axis(shown_m: tuple[float, float], about: int, label: str, **more: Any) -> Spec:  # noqa: ANN401
    """Give an axis of about so many numbers; ``label`` is an expression of ``size``, the number."""
    units = in_force().units
    metres = METRES[units.length]
    low, high = (edge / metres for edge in shown_m)
    step = round_step((high - low) / about)
    values = [metres * step * i for i in range(math.ceil(low / step), math.floor(high / step) + 1)]
    size = f"round(abs(datum.value) / {metres})"
    return axis(values=values, labelExpr=label.replace("size", size), **more)


def round_step(about: float) -> float:
    """Give the 1, 2 or 5 times a power of ten that comes nearest above."""
    power = 10.0 ** math.floor(math.log10(about))
    return next(power * one for one in _ROUND if power * one >= about * 0.75)


def side_label() -> str:
    """Give the expression of "20 m left", "on the line", "20 m right"."""
    sign = LENGTH_SIGN[in_force().units.length]
    sides = [say(f"figure-{side}", size=f"@ {sign}").split("@") for side in ("left", "right")]
    (before_left, left), (before_right, right) = sides
    words = (say("figure-on-line"), before_left, left, before_right, right)
    on, begin_left, end_left, begin_right, end_right = (json.dumps(one) for one in words)
    return (
        f"datum.value === 0 ? {on} : datum.value < 0 ? {begin_left} + size + {end_left} : "
        f"{begin_right} + size + {end_right}"
    )


def length_label() -> str:
    """Give the expression of "20 m", with a bare nought."""
    return f"datum.value === 0 ? '0' : size + ' {LENGTH_SIGN[in_force().units.length]}'"
