"""Rival: the research prototype, where its folder stands beside the checkout; else left out."""

from __future__ import annotations

import importlib
import sys
from pathlib import Path
from types import ModuleType

import numpy as np
from walks import Walk

from accuracy.positions_on_grid import fixes_m
from accuracy.scoring import Portion

FOLDER = Path(__file__).resolve().parents[3] / "shared" / "prototypes"


def is_present() -> bool:
    """Say whether the prototype can be run here."""
    return holds("seg")


def holds(name: str) -> bool:
    """Say whether the folder has a module."""
    return (FOLDER / f"{name}.py").is_file()


def loaded(name: str) -> ModuleType:
    """Load a module of the folder."""
    if str(FOLDER) not in sys.path:
        sys.path.append(str(FOLDER))
    return importlib.import_module(name)


def research_prototype(walk: Walk) -> list[Portion | None]:
    """Give the portions that the prototype finds."""
    segmenter = loaded("seg")
    course = walk.course
    first_s = float(walk.track.time_s[0])
    case = {
        "t": walk.track.time_s - first_s,
        "z": fixes_m(walk),
        "C": course.points_m,
        "L": course.leg_count,
        "paz": np.array(course.card_azimuth_deg),
        "pd": np.array(course.card_m),
        "gm": course.grid_magnetic_angle_deg,
    }
    cuts = segmenter.seg_dp(case)
    portions: list[Portion | None] = []
    for leg in range(course.leg_count):
        cut = cuts.get(leg)
        portions.append(None if cut is None else (first_s + float(cut[0]), first_s + float(cut[1])))
    return portions
