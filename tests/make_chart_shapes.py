"""Make the charts that are compiled beforehand anew.

    PYTHONPATH=.:tests python tests/make_chart_shapes.py

They are the shapes that the pages of the demo, of a few made walks and of a made class
draw, in each language. The file changes with vl-convert, and whenever a picture does; a
shape that is missing in it is compiled where it is drawn.
"""

from __future__ import annotations

import gzip
import json
import warnings
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path
from unittest import mock

import numpy as np
from classes.made_class import make_class
from classes.members import Plants
from classes.true_results import true_result
from walks import DIFFICULTIES, make_walk

import audit
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import appeal_sheets, chart_compiler, class_page, page_pictures
from audit.settings import Settings
from audit.words import Words, spoken

TARGET = Path(str(chart_compiler.SHIPPED_SHAPES))
DEMO = Path(audit.__file__).parent / "demo_course"
WALKS = 1


def debriefs():
    """The demo, and made walks of every difficulty, with heights and without."""
    yield audit.debrief(audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx"))
    for family in DIFFICULTIES.values():
        for seed in range(WALKS):
            made = make_walk(seed, family)
            yield audit.debrief(made.plan, made.track)
            height = replace(made.track, elevation_m=np.arange(len(made.track)) % 500.0)
            yield audit.debrief(made.plan, height)


def drawn_shapes() -> set[str]:
    """The shapes that are drawn, in every language."""
    drawn: set[str] = set()
    found = list(debriefs())
    bare = {"data": [], "signals": []}
    graded = true_result(make_class(7, walkers=6, plants=Plants()))
    with ExitStack() as patched:
        compiled = mock.patch.object(
            chart_compiler, "_compiled", lambda shape: drawn.add(shape) or bare
        )
        patched.enter_context(compiled)
        for where in (page_pictures, class_page, appeal_sheets):
            patched.enter_context(mock.patch.object(where, "draw", _shape_of))
        for language in ("en", "de"):
            with spoken(Words(language=language)):
                for one in found:
                    moved = speed_and_direction(one.clean, Settings().measuring)
                    page_pictures.page_pictures(one, moved)
                class_page.leg_figures(graded)
                appeal_sheets.appeal_sheets(graded)
    return drawn


def _shape_of(specification, *_) -> mock.MagicMock:
    chart_compiler.chart_of(specification)
    return mock.MagicMock(svg="")


def main() -> None:
    warnings.simplefilter("ignore")
    shapes = [(shape, chart_compiler.compile_shape(shape)) for shape in sorted(drawn_shapes())]
    text = json.dumps({"made_by": chart_compiler.compiler(), "shapes": shapes}, sort_keys=True)
    TARGET.write_bytes(gzip.compress(text.encode(), 9, mtime=0))
    print(f"{len(shapes)} shapes, {TARGET.stat().st_size:,} bytes")


if __name__ == "__main__":
    main()
