"""Make the demo course anew: plan, simulated recording and log.

    PYTHONPATH=.:tests python tests/make_demo.py

The same files come out every time. With ``--raster`` the ground is first cut out of the
whole elevation raster (see fixtures/README.md).
"""

from __future__ import annotations

import argparse
from pathlib import Path

import numpy as np
from demo.files import gpx_text, log_text, plan_text
from demo.ground import CUT_OUT, cut_out, read_ground
from demo.story import walk

COURSE = Path(__file__).resolve().parents[1] / "audit" / "demo_course"
SEED = 20260919


def demo_texts() -> dict[str, str]:
    """Give the text of every file of the demo, by name."""
    walker, receiver = (np.random.default_rng(seed) for seed in (SEED, SEED + 1))
    story = walk(walker)
    return {
        "plan.toml": plan_text(),
        "log.csv": log_text(story),
        "walk.gpx": gpx_text(story, read_ground(), receiver),
    }


def main() -> None:
    """Write the files of the demo."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("--raster", type=Path, help="cut the ground out of this raster first")
    raster = parser.parse_args().raster
    if raster:
        CUT_OUT.write_text(cut_out(raster), encoding="utf-8", newline="\n")
    for name, text in demo_texts().items():
        (COURSE / name).write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
