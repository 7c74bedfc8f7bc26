"""Whether the matching has become worse than the figures that were recorded for it."""

from __future__ import annotations

import json
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from walks import make_walk

from accuracy.figures import share_with_error
from accuracy.project import project
from accuracy.scoring import LegScores, score_walk
from accuracy.seeds import first_seeds

RECORD = Path(__file__).with_name("recorded.json")
RIVALS = Path(__file__).with_name("rivals.json")
SIGMAS = 3.0
"""A fall by more than this many standard errors is no chance: one false alarm in 700."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recorded:
    """The share of legs right on a family of walks, as it was recorded."""

    walks: int
    legs_right: float
    legs_right_se: float


Table = dict[str, dict[str, dict[str, float]]]
"""Figures by difficulty and method."""


def write_record(seeds: str, walks: int, table: Table, path: Path = RECORD) -> None:
    """Write the project's figures of a table as those to be kept to."""
    kept = {difficulty: _kept(methods["project"]) for difficulty, methods in table.items()}
    _write(path, seeds, walks, kept)


def write_rivals(seeds: str, walks: int, table: Table, path: Path = RIVALS) -> None:
    """Write the figures of the rivals that a table holds; what it does not hold stays."""
    kept: Table = {}
    if path.is_file():
        before = json.loads(path.read_text(encoding="utf-8"))
        if (before["seeds"], before["walks"]) == (seeds, walks):
            kept = before["figures"]
    for difficulty, methods in table.items():
        rivals = {name: _kept(of) for name, of in methods.items() if name != "project"}
        kept[difficulty] = {**kept.get(difficulty, {}), **rivals}
    _write(path, seeds, walks, kept)


def _kept(of: dict[str, float]) -> dict[str, float]:
    # Seconds are the machine's, not the method's.
    return {name: round(value, 5) for name, value in of.items() if name != "processor_s"}


def _write(path: Path, seeds: str, walks: int, figures: object) -> None:
    document = {"seeds": seeds, "walks": walks, "figures": figures}
    # A share of nothing (nan) has no place in JSON.
    text = json.dumps(_without_nan(document), indent=1, allow_nan=False)
    path.write_text(text + "\n", encoding="utf-8")


def _without_nan(value: object) -> object:
    if isinstance(value, dict):
        return {key: _without_nan(inner) for key, inner in value.items()}
    return None if isinstance(value, float) and not np.isfinite(value) else value


def read_record(path: Path = RECORD) -> dict[str, Recorded]:
    """Read the recorded figures by difficulty; empty where none were recorded."""
    if not path.is_file():
        return {}
    document = json.loads(path.read_text(encoding="utf-8"))
    return {
        difficulty: Recorded(
            walks=int(of["walks"]),
            legs_right=of["legs_right"],
            legs_right_se=of["legs_right_se"],
        )
        for difficulty, of in document["figures"].items()
    }


def lowest_by_chance(recorded: Recorded, walks: int) -> float:
    """Give the share below which a sample of so many walks is worse than chance allows.

    The spread of the sample is taken from the recorded one, legs clustered in walks, so
    that a sample which has become erratic does not excuse itself; at least that of one
    wrong leg in the sample, where the record has next to no spread.
    """
    sample_se = recorded.legs_right_se * np.sqrt(recorded.walks / walks)
    floor = 0.5 / walks
    spread = float(np.hypot(recorded.legs_right_se, max(sample_se, floor / SIGMAS)))
    return recorded.legs_right - SIGMAS * spread


def sample(difficulties: Sequence[str], walks: int, budget_s: float) -> dict[str, list[LegScores]]:
    """Match the guard's walks, one difficulty after the other, within processor seconds."""
    scores: dict[str, list[LegScores]] = {difficulty: [] for difficulty in difficulties}
    began = time.process_time()
    for seed in first_seeds("guard", walks):
        for difficulty in difficulties:
            if time.process_time() - began > budget_s:
                return scores
            walk = make_walk(seed, difficulty)
            scores[difficulty].append(score_walk(walk, project(walk)))
    return scores


def complaints(recorded: dict[str, Recorded], scores: dict[str, list[LegScores]]) -> list[str]:
    """Give one sentence for each difficulty whose share of legs right has fallen."""
    fallen = []
    for difficulty, of in scores.items():
        share, _ = share_with_error([w.legs_right for w in of], [len(w.legs) for w in of])
        lowest = lowest_by_chance(recorded[difficulty], len(of))
        if not share >= lowest:
            fallen.append(
                f"{difficulty}: {share:.3f} of the legs are right in {len(of)} walks; recorded "
                f"is {recorded[difficulty].legs_right:.3f}, and chance reaches down to {lowest:.3f}"
            )
    return fallen
