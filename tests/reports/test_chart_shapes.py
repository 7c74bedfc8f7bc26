"""What is compiled beforehand is what would be compiled, and is what pages draw.

The judge is vl-convert, which compiles each shape anew.
"""

from __future__ import annotations

from pathlib import Path
from unittest import mock

import pytest
from reports.sample_debrief import sample_debrief

import audit
from audit.reports import chart_compiler
from audit.reports.chart_compiler import compile_shape, shipped_shapes
from audit.reports.html_report import render_html
from audit.words import Words

DEMO = Path(audit.__file__).parent / "demo_course"


def test_every_shipped_shape_compiles_to_what_is_shipped():
    shapes = shipped_shapes()
    assert len(shapes) >= 20
    for shape, made in shapes.items():
        assert compile_shape(shape) == made


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_page_of_the_demo_compiles_no_chart(language):
    """Bug: a layer was added to the picture of the walk, and each run compiled it afresh."""
    demo = audit.debrief(audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx"))
    chart_compiler._compiled.cache_clear()
    with mock.patch.object(chart_compiler, "compile_shape", side_effect=compile_shape) as made:
        render_html(demo, words=Words(language=language))
    assert made.call_count == 0


def test_shapes_of_another_compiler_are_left_alone():
    shipped_shapes.cache_clear()
    chart_compiler._compiled.cache_clear()
    try:
        with mock.patch.object(chart_compiler, "compiler", return_value=["1", "2"]):
            assert shipped_shapes() == {}
            assert "<svg" in render_html(sample_debrief())
    finally:
        shipped_shapes.cache_clear()
        chart_compiler._compiled.cache_clear()
