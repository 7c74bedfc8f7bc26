"""Hatching lies inside its area, and tells the kinds of ground apart without colour."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely

from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.reports.figure_ground import GroundSketch, Sign, ground_specification
from audit.reports.ground_key import ground_key
from audit.reports.hatching import hatching

SEEN = shapely.box(0.0, 0.0, 1000.0, 1000.0)
LAKE = shapely.Polygon(
    [(100, 100), (400, 100), (400, 400), (100, 400)], [[(200, 200), (300, 200), (250, 300)]]
)


@pytest.mark.parametrize("azimuth_deg", [45.0, 135.0, 60.0])
def test_strokes_lie_inside_at_their_azimuth(azimuth_deg):
    strokes = hatching([LAKE], SEEN, azimuth_deg, 20.0)
    assert len(strokes) > 10
    for stroke in strokes:
        assert LAKE.buffer(0.01).covers(shapely.LineString(stroke))
        east, north = stroke[-1] - stroke[0]
        assert np.degrees(np.arctan2(east, north)) % 180.0 == pytest.approx(azimuth_deg, abs=1e-6)
    # Strokes 20 m apart are as long together as the area is wide, in units of 20 m.
    length_m = sum(shapely.LineString(stroke).length for stroke in strokes)
    assert length_m * 20.0 == pytest.approx(LAKE.area, rel=0.05)


def test_a_line_and_what_is_out_of_sight_are_not_hatched():
    crag = shapely.LineString([(100, 100), (300, 200), (400, 100)])
    assert hatching([crag, shapely.transform(LAKE, lambda c: c + 5000.0)], SEEN, 45.0, 20.0) == []


def test_kinds_of_ground_differ_without_their_colours():
    """Bug: pale blue and grey could not be told apart in grey print, and a crag was filled."""
    crag = shapely.LineString([(500, 100), (600, 300), (700, 100)])
    areas = GroundAreas(
        no_go=(GroundArea(name="Lake", shape=LAKE),),
        hazards=(GroundArea(name="Mine", shape=LAKE), GroundArea(name="Crag", shape=crag)),
    )
    gate = Sign(text="Gate", east_m=500.0, north_m=500.0)
    sketch = GroundSketch(points=(gate,), lines=(), areas=areas, unsafe=(LAKE,), radius_m=30.0,
                          shown=np.array([[0.0, 0.0], [1000.0, 1000.0]]))  # fmt: skip
    made = ground_specification(sketch)
    azimuths = {}
    for layer in made["layer"]:
        rows = made["datasets"].get(layer.get("data", {}).get("name"), [])
        if layer["mark"].get("strokeWidth") in {0.7, 1.2} and rows:
            lines = {}
            for row in rows:
                lines.setdefault(row["line"], []).append((row["x"], row["y"]))
            turns = {
                round(np.degrees(np.arctan2(b[0] - a[0], b[1] - a[1])) % 180.0, -1)
                for a, b, *_ in lines.values()
                if np.hypot(b[0] - a[0], b[1] - a[1]) > 50.0
            }
            azimuths[layer["mark"]["stroke"], layer["mark"]["strokeWidth"]] = turns
        if any((row.get("x"), row.get("y")) == (600.0, 300.0) for row in rows):
            assert "fill" not in layer["mark"]
    assert len(set(map(frozenset, azimuths.values()))) == 3


def test_key_of_the_ground_lists_what_its_picture_shows():
    """Bug: the note below told of no-go areas, hazards and bounds where none were drawn."""
    gate = Sign(text="Gate", east_m=500.0, north_m=500.0)
    line = (("planned", np.array([[500.0, 500.0], [700.0, 600.0]])),)
    bare = GroundSketch(points=(gate,), lines=line, radius_m=30.0)
    assert [sign for sign, _ in ground_key(bare)] == ["planned", "point"]
    near = replace(bare, areas=GroundAreas(no_go=(GroundArea(name="Lake", shape=LAKE),)),
                   shown=np.array([[0.0, 0.0], [1000.0, 1000.0]]))  # fmt: skip
    assert "no-go" in dict(ground_key(near))
    far = shapely.transform(LAKE, lambda places: places + 50_000.0)
    gone = replace(near, areas=GroundAreas(no_go=(GroundArea(name="Lake", shape=far),)))
    assert "no-go" not in dict(ground_key(gone))
