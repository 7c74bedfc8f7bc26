"""Learn the curves: PYTHONPATH=.:tests python -m learning --walks 2400 --jobs 2 --write."""

from __future__ import annotations

import json
import sys
import time
from multiprocessing import get_context
from pathlib import Path

import numpy as np

import audit.matching
from learning.families import Recipe, recipes, walk_of
from learning.fit import curves, fit, weights_of
from learning.learning_options import learnt_from, parser_of
from learning.problems import Problem, problem_of
from learning.right_legs import share_right

SHIPPED = Path(audit.matching.__file__).with_name("learnt.json")


def main(arguments: list[str]) -> int:
    """Make walks, learn from them, and show how many legs kept apart are right."""
    parser = parser_of("learning", __doc__)
    parser.add_argument("--steps", type=int, default=40)
    parser.add_argument("--anew", action="store_true", help="forget the curves that are shipped")
    asked = parser.parse_args(arguments)
    began = time.monotonic()
    apart = _problems(list(recipes(asked.apart, use="apart")), asked.jobs)
    teaching = _problems(list(recipes(asked.walks, use="curves")), asked.jobs)
    print(f"{len(teaching)} walks to learn from, {time.monotonic() - began:.0f} s", flush=True)

    def told(step: int, loss: float, weights: np.ndarray) -> None:
        if step % 5 == 0:
            _show(step, loss, weights, apart, time.monotonic() - began)

    begin = None
    if not asked.anew:
        begin = weights_of(json.loads(SHIPPED.read_text(encoding="utf-8"))["curves"])
    weights = fit(teaching, steps=asked.steps, jobs=asked.jobs, begin=begin, told=told)
    _show(asked.steps, np.nan, weights, apart, time.monotonic() - began)
    if asked.write:
        learnt = {
            "from": learnt_from(len(teaching)),
            "curves": curves(weights),
        }
        SHIPPED.write_text(_text(learnt), encoding="utf-8")
    return 0


def _problems(made: list[Recipe], jobs: int) -> list[Problem]:
    with get_context("fork").Pool(jobs) as pool:
        return pool.map(_problem, made, chunksize=8)


def _problem(recipe: Recipe) -> Problem:
    return problem_of(walk_of(recipe))


def _show(
    step: int, loss: float, weights: np.ndarray, apart: list[Problem], seconds: float
) -> None:
    families = sorted({problem.family for problem in apart})
    right = (
        f"{family} {share_right([one for one in apart if one.family == family], weights):.4f}"
        for family in families
    )
    print(f"step {step} {seconds:.0f} s loss {loss:.1f}:", ", ".join(right), flush=True)


def _text(learnt: dict) -> str:
    """Give the file, a curve a line."""
    lines = ["{", f' "from": {json.dumps(learnt["from"])},', ' "curves": {']
    kinds = list(learnt["curves"].items())
    for number, (kind, named) in enumerate(kinds):
        of_kind = [f"   {json.dumps(name)}: {json.dumps(curve)}" for name, curve in named.items()]
        end = "  }," if number + 1 < len(kinds) else "  }"
        lines += [f"  {json.dumps(kind)}: {{", ",\n".join(of_kind), end]
    return "\n".join([*lines, " }", "}", ""])


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
