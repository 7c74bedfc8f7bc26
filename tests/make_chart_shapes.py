"""Make the charts that are compiled beforehand anew.

    PYTHONPATH=.:tests python tests/make_chart_shapes.py

They are the shapes that the pages of the demo and of a few made walks draw more than
once, in each language. The map is of its own on every page. The file changes with
vl-convert, and whenever a picture does; a shape that is missing in it is compiled where
it is drawn.
"""

from __future__ import annotations

import gzip
import json
import warnings
from collections import Counter
from dataclasses import replace
from pathlib import Path
from unittest import mock

import numpy as np
from walks import DIFFICULTIES, make_walk

import audit
from audit.measurement.passage import passage
from audit.reports import chart_compiler, page_pictures
from audit.settings import Settings
from audit.words import Words, spoken

TARGET = Path(str(chart_compiler.SHIPPED_SHAPES))
DEMO = Path(audit.__file__).parent / "demo_course"
WALKS = 3


def debriefs():
    """The demo, and made walks of every difficulty, with heights and without."""
    yield audit.debrief(audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx"))
    for family in DIFFICULTIES.values():
        for seed in range(WALKS):
            made = make_walk(seed, family)
            yield audit.debrief(made.plan, made.track)
            height = replace(made.track, elevation_m=np.arange(len(made.track)) % 500.0)
            yield audit.debrief(made.plan, height)


def drawn_shapes(debrief) -> list[str]:
    """The shapes that the page of a debrief draws, in every language."""
    drawn: list[str] = []
    bare = {"data": [], "signals": []}
    compiled = mock.patch.object(
        chart_compiler, "_compiled", lambda shape: drawn.append(shape) or bare
    )
    draw = mock.patch.object(page_pictures, "draw", _shape_unless_map)
    moved = passage(debrief.clean, Settings().measuring)
    for language in ("en", "de"):
        with compiled, draw, spoken(Words(language=language)):
            page_pictures.page_pictures(debrief, moved)
    return drawn


def _shape_unless_map(specification, ident: str, *_) -> None:
    if ident != "map":
        chart_compiler.chart_of(specification)


def main() -> None:
    warnings.simplefilter("ignore")
    pages = Counter(shape for one in debriefs() for shape in set(drawn_shapes(one)))
    often = sorted(shape for shape, times in pages.items() if times > 1)
    shapes = [(shape, chart_compiler.compile_shape(shape)) for shape in often]
    text = json.dumps({"made_by": chart_compiler.compiler(), "shapes": shapes}, sort_keys=True)
    TARGET.write_bytes(gzip.compress(text.encode(), 9, mtime=0))
    print(f"{len(shapes)} shapes of {len(pages)}, {TARGET.stat().st_size:,} bytes")


if __name__ == "__main__":
    main()
