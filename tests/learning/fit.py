"""Finding the curves: the likeliest right ways, with smooth and small curves preferred."""

from __future__ import annotations

import multiprocessing as mp
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy as np
from scipy.optimize import minimize

from learning.knots import CATEGORIES, KINDS, Knots
from learning.likelihood import SIZES, loss
from learning.problems import Problem

SMALL = 0.5
"""Penalty on the square of a value, in nats; chosen by development walks kept apart."""

SMOOTH = 4.0
"""Penalty on the square of a bend between neighbouring knots, in nats; chosen so too."""

LEVEL = 1.2
"""Penalty on the square of a step between neighbouring knots, in nats; chosen so too."""

ALIKE = 0.5
"""Penalty on the square of a difference between the two ends of a habit, in nats; chosen."""

CAP = 25.0
"""A walk further off than this teaches only by the logarithm of how far; chosen."""


def penalty() -> np.ndarray:
    """Give the matrix of the penalty, shape (weights, weights)."""
    matrix = np.zeros((sum(SIZES), sum(SIZES)))
    begin = 0
    for knots in KINDS.values():
        for name, of in knots.items():
            size = len(of.at)
            one = _of_one(name, of)
            blocks = [slice(begin, begin + size)]
            if of.by is not None:
                blocks.append(slice(begin + size, begin + 2 * size))
                both = slice(begin, begin + 2 * size)
                apart = np.hstack([np.eye(size), -np.eye(size)])
                matrix[both, both] += ALIKE * apart.T @ apart
            for block in blocks:
                matrix[block, block] += one
            begin = blocks[-1].stop
    return matrix


def _of_one(name: str, of: Knots) -> np.ndarray:
    size = len(of.at)
    one = SMALL * np.eye(size)
    if name not in CATEGORIES:
        for order, weight in ((1, LEVEL), (2, SMOOTH)):
            step = np.diff(np.eye(size), order, axis=0)
            one += weight * step.T @ step
    return one


_PROBLEMS: Sequence[Problem] = ()


def _part(job: tuple[int, int, np.ndarray]) -> tuple[float, np.ndarray, int]:
    """Add up the losses of every nth problem."""
    first, step, weights = job
    total, slope, taught = 0.0, np.zeros(len(weights)), 0
    for problem in _PROBLEMS[first::step]:
        got = loss(problem, weights)
        if got is None:
            continue
        value, way = got
        if value > CAP:
            way, value = way * CAP / value, CAP * (1.0 + float(np.log(value / CAP)))
        total, slope, taught = total + value, slope + way, taught + 1
    return total, slope, taught


def fit(
    problems: Sequence[Problem],
    *,
    steps: int,
    jobs: int,
    begin: np.ndarray | None = None,
    told: Callable[[int, float, np.ndarray], None] | None = None,
) -> np.ndarray:
    """Find the weights; ``told`` hears of the number, the loss and the weights of a step."""
    global _PROBLEMS  # noqa: PLW0603 - inherited by the workers, which are forked
    _PROBLEMS = problems
    matrix = penalty()
    last = {"loss": 0.0, "step": 0.0}
    with mp.get_context("fork").Pool(jobs) as pool:

        def value(weights: np.ndarray) -> tuple[float, np.ndarray]:
            parts = pool.map(_part, [(job, jobs, weights) for job in range(jobs)])
            last["loss"] = sum(part[0] for part in parts)
            held = matrix @ weights
            return last["loss"] + 0.5 * float(weights @ held), held + sum(
                (part[1] for part in parts), np.zeros(len(weights))
            )

        def each(weights: np.ndarray) -> None:
            last["step"] += 1
            if told is not None:
                told(int(last["step"]), last["loss"], weights)

        start = np.zeros(sum(SIZES)) if begin is None else begin
        found = minimize(
            value,
            start,
            jac=True,
            method="L-BFGS-B",
            options={"maxiter": steps, "maxcor": 20},
            callback=each,
        )
    return np.asarray(found.x)


def curves(weights: np.ndarray) -> Mapping[str, Any]:
    """Give the weights as the file of the program has them."""
    out: dict[str, Any] = {}
    begin = 0
    for kind, knots in KINDS.items():
        out[kind] = {}
        for name, of in knots.items():
            size = len(of.at)
            ends = {"nats": weights[begin : begin + size]}
            begin += size
            if of.by is not None:
                ends["with_habit"] = weights[begin : begin + size]
                begin += size
            out[kind][name] = {
                "knots": list(of.at),
                **({} if of.by is None else {"by": of.by}),
                **{end: [round(float(nat), 3) for nat in nats] for end, nats in ends.items()},
            }
    return out


def weights_of(shipped: Mapping[str, Any]) -> np.ndarray:
    """Give the weights of curves as the file has them."""
    parts = []
    for kind, knots in KINDS.items():
        for name, of in knots.items():
            curve = shipped[kind][name]
            parts += [curve["nats"]] if of.by is None else [curve["nats"], curve["with_habit"]]
    return np.concatenate(parts)
