"""Heights come out of an elevation raster where they belong."""

from __future__ import annotations

import shutil
from pathlib import Path

import numpy as np
import pyproj
import pytest
import rasterio
from rasterio.transform import from_bounds

from audit.errors import InputRefusedError
from audit.geodesy.grids import course_grid
from audit.readers.ground_heights import heights_at

HILL = Path(__file__).resolve().parents[2] / "fixtures/elevation/demo-ground.asc"
EDGES = (748_000, 4_058_000, 750_000, 4_060_000)


def raster(path, cells, crs="EPSG:32616", edges=EDGES, **more):
    height, width = cells.shape
    with rasterio.open(
        path, "w", driver="GTiff", height=height, width=width, count=1, dtype=cells.dtype,
        crs=crs, transform=from_bounds(*edges, width, height), **more,
    ) as file:  # fmt: skip
        file.write(cells, 1)
    return path


def plane(edges=EDGES, size=50):
    """Give cells whose middles lie on the plane 100 + 0.1 east + 0.02 north, from the corner."""
    step = (edges[2] - edges[0]) / size
    middles = (np.arange(size) + 0.5) * step
    east, north = np.meshgrid(middles, middles[::-1])
    return (100.0 + 0.1 * east + 0.02 * north).astype(np.float32)


def test_a_plane_is_a_plane_between_its_cells(tmp_path):
    path = raster(tmp_path / "plane.tif", plane())
    places = np.array([[748_500.0, 4_059_000.0], [748_777.0, 4_058_333.0], [749_811.5, 4_059_940]])
    wanted = 100.0 + 0.1 * (places[:, 0] - 748_000) + 0.02 * (places[:, 1] - 4_058_000)
    assert heights_at(path, "EPSG:32616", places) == pytest.approx(wanted, abs=0.01)


def test_another_system_is_brought_onto_the_grid(tmp_path):
    path = tmp_path / "hill.asc"
    shutil.copy(HILL, path)
    path.with_suffix(".prj").write_text(pyproj.CRS.from_epsg(4326).to_wkt("WKT1_ESRI"))
    # The corner of the demo's raster by its own header: the middle of its north-west cell.
    longitude, latitude = -84.240416667 + 0.000833333333 / 2, 36.634583333 + 36.5 * 0.000833333333
    place = np.array([course_grid("EPSG:32616").to_grid(longitude, latitude)])
    assert heights_at(path, "EPSG:32616", place) == pytest.approx([599.0], abs=0.05)


def test_outside_and_unknown_cells_have_no_height(tmp_path):
    cells = plane()
    cells[:, :25] = -9999.0
    path = raster(tmp_path / "half.tif", cells, nodata=-9999.0)
    places = np.array([[748_300.0, 4_059_000.0], [749_600.0, 4_059_000.0], [760_000.0, 4_059_000]])
    heights = heights_at(path, "EPSG:32616", places)
    assert np.isfinite(heights).tolist() == [False, True, False]


def test_heights_in_feet_are_metres(tmp_path):
    path = tmp_path / "feet.tif"
    raster(path, np.full((4, 4), 1000.0, dtype=np.float32))
    with rasterio.open(path, "r+") as file:
        file.units = ("ft",)
    place = np.array([[749_000.0, 4_059_000.0]])
    assert heights_at(path, "EPSG:32616", place) == pytest.approx([304.8])


@pytest.mark.parametrize(
    ("name", "match"),
    [("picture.tif", "picture of the ground"), ("nowhere.tif", "not say where it lies"),
     ("text.tif", "no raster that can be read"), ("far.tif", "no heights on this course")],
)  # fmt: skip
def test_what_is_no_elevation_of_the_course_is_refused(tmp_path, name, match):
    raster(tmp_path / "picture.tif", np.full((4, 4), 7, dtype=np.uint8))
    raster(tmp_path / "nowhere.tif", plane(), crs=None)
    (tmp_path / "text.tif").write_text("heights")
    raster(tmp_path / "far.tif", plane(), edges=(200_000, 4_058_000, 202_000, 4_060_000))
    with pytest.raises(InputRefusedError, match=match) as refused:
        heights_at(tmp_path / name, "EPSG:32616", np.array([[749_000.0, 4_059_000.0]]))
    assert refused.value.problems[0].file == name
