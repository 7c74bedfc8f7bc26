"""How many legs of some problems are read rightly under some curves, as the matching reads."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.reading import LegOdds, read_leg
from audit.settings import MatchingSettings
from learning.likelihood import Sums
from learning.problems import Problem

_KIND = {
    "leg": "leg",
    "slip": "leg",
    "reversed": "leg",
    "late-start": "late-start",
    "given-up": "given-up",
}


def share_right(problems: Sequence[Problem], weights: np.ndarray) -> float:
    """Give the share of all legs that is read rightly; a leg not walked is rightly none."""
    right = [leg for problem in problems for leg in _legs_right(problem, weights)]
    return float(np.mean(right)) if right else float("nan")


def _legs_right(problem: Problem, weights: np.ndarray) -> list[bool]:
    settings = MatchingSettings()
    shares = Sums(problem, weights, allowed_only=False).probabilities()
    cuts = _cuts(problem)
    not_before, answers = 0, []
    for leg, walked in enumerate(problem.walked):
        odds, rights = _odds(problem, shares, leg, len(problem.time_s))
        reading = read_leg(odds, cuts, not_before, settings) if odds else None
        if reading is None or reading.first is None or reading.second is None:
            answers.append(not walked)
            continue
        not_before = reading.second
        answers.append(walked and (reading.first, reading.second) in rights)
    return answers


def _odds(problem: Problem, shares: list[np.ndarray], leg: int, size: int):
    parts: dict[str, list[tuple[np.ndarray, np.ndarray]]] = {}
    rights: set[tuple[int, int]] = set()
    for step, share in zip(problem.steps, shares, strict=True):
        if step.leg == leg and len(share):
            parts.setdefault(_KIND[step.kind], []).append((step.first * size + step.second, share))
            rights.update(
                zip(step.first[step.right].tolist(), step.second[step.right].tolist(), strict=True)
            )
    odds = {}
    for kind, pieces in parts.items():
        keys, where = np.unique(np.concatenate([key for key, _ in pieces]), return_inverse=True)
        total = np.bincount(where, np.concatenate([share for _, share in pieces]), len(keys))
        odds[kind] = LegOdds(
            first=keys // size, second=keys % size, probability=total, share=float(total.sum())
        )
    return odds, rights


def _cuts(problem: Problem) -> Cuts:
    """Give cuts of which only times and path are known: more is not looked at."""
    nothing = np.empty(0)
    return Cuts(
        sample=nothing.astype(np.int64),
        position=nothing,
        time_s=problem.time_s,
        path_m=problem.path_m,
        seen_path_m=nothing,
        ends_unseen=nothing.astype(bool),
        begins_unseen=nothing.astype(bool),
        halted_s=nothing,
        begins_halt=nothing.astype(bool),
        ends_halt=nothing.astype(bool),
        turn_deg=nothing,
        arriving_deg=nothing,
        leaving_deg=nothing,
        rest_s=nothing,
    )
