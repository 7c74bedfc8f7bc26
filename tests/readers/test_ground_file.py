"""A picture of the ground comes onto the course grid where it belongs."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pytest
import rasterio
from PIL import Image
from rasterio.transform import from_bounds

from audit.errors import InputRefusedError
from audit.readers.ground_file import GroundFrame, read_ground
from audit.settings import Settings

FRAME = GroundFrame(
    grid="EPSG:32616", west_m=748_000.0, south_m=4_058_000.0, east_m=750_000.0, north_m=4_060_000.0
)
HILL = Path(__file__).resolve().parents[2] / "fixtures/elevation/demo-ground.asc"


def tiff(path, bands, edges=(748_000, 4_058_000, 750_000, 4_060_000), crs="EPSG:32616", **more):
    count, height, width = bands.shape
    with rasterio.open(
        path, "w", driver="GTiff", height=height, width=width, count=count, dtype=bands.dtype,
        crs=crs, transform=from_bounds(*edges, width, height), **more,
    ) as file:  # fmt: skip
        file.write(bands)
    return path


def shown(ground):
    return np.asarray(Image.open(io.BytesIO(ground.jpeg)).convert("RGB")).astype(int)


def paled(value):
    share = Settings().reading.ground_strength
    return value * share + 255 * (1 - share)


def test_picture_lies_where_it_says(tmp_path):
    bands = np.full((3, 200, 200), 250, dtype=np.uint8)
    bands[:, :50, 150:] = 20  # the north-east corner, 500 m by 500 m
    ground = read_ground(tiff(tmp_path / "map.tif", bands), FRAME)
    assert (ground.what, ground.source) == ("picture", "map.tif")
    seen = shown(ground)[:, :, 0]
    quarter = seen.shape[0] // 4
    assert seen[: quarter - 20, -quarter + 20 :].mean() == pytest.approx(paled(20), abs=6)
    assert seen[quarter + 20 :, :].mean() == pytest.approx(paled(250), abs=6)


def test_other_system_is_brought_onto_the_grid(tmp_path):
    # Two marks in degrees, whose place on the grid PROJ gives.
    from pyproj import Transformer

    to_degrees = Transformer.from_crs("EPSG:32616", "EPSG:4326", always_xy=True)
    lon, lat = to_degrees.transform(749_500.0, 4_059_500.0)
    edges = (lon - 0.02, lat - 0.02, lon + 0.02, lat + 0.02)
    bands = np.full((3, 400, 400), 255, dtype=np.uint8)
    bands[:, 195:205, 195:205] = 0  # the middle, some 45 m across
    ground = read_ground(tiff(tmp_path / "map.tif", bands, edges, "EPSG:4326"), FRAME)
    dark = np.argwhere(shown(ground)[:, :, 0] < paled(100))
    down, right = dark.mean(axis=0) / shown(ground).shape[0]
    assert FRAME.west_m + right * 2000.0 == pytest.approx(749_500.0, abs=6.0)  # metres
    assert FRAME.north_m - down * 2000.0 == pytest.approx(4_059_500.0, abs=6.0)


def test_one_band_of_numbers_is_shaded_from_the_north_west(tmp_path):
    east, north = np.meshgrid(np.linspace(-1, 1, 120), np.linspace(1, -1, 120))
    cone = (300.0 * np.clip(1 - np.hypot(east, north), 0, 1)).astype(np.float32)[None]
    ground = read_ground(tiff(tmp_path / "hill.tif", cone), FRAME)
    assert ground.what == "elevation"
    seen = shown(ground)[:, :, 0]
    size = seen.shape[0]
    lit = seen[size * 3 // 10 : size * 4 // 10, size * 3 // 10 : size * 4 // 10].mean()
    dark = seen[size * 6 // 10 : size * 7 // 10, size * 6 // 10 : size * 7 // 10].mean()
    assert lit > dark + 15


def test_palette_keeps_its_colours(tmp_path):
    path = tmp_path / "map.tif"
    tiff(path, np.ones((1, 50, 50), dtype=np.uint8), photometric="palette")
    with rasterio.open(path, "r+") as file:
        file.write_colormap(1, {0: (0, 0, 0, 255), 1: (200, 120, 40, 255)})
    middle = shown(read_ground(path, FRAME))[200, 200]
    assert middle == pytest.approx([paled(200), paled(120), paled(40)], abs=8)


def test_ground_beyond_the_raster_is_white(tmp_path):
    half = (748_000, 4_058_000, 749_000, 4_060_000)
    path = tiff(tmp_path / "map.tif", np.zeros((3, 100, 50), dtype=np.uint8), half)
    seen = shown(read_ground(path, FRAME))
    assert seen[:, 600:].min() > 245
    assert seen[:, :500].max() < 160


def test_elevation_of_the_demo_is_read(tmp_path):
    with rasterio.open(HILL) as file:
        heights, edges = file.read(1), file.bounds
    path = tiff(tmp_path / "dem.tif", heights[None].astype(np.float32), tuple(edges), "EPSG:4326")
    assert read_ground(path, FRAME).what == "elevation"


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda p: p.write_text("no raster"), r"no raster .* file format\. Give"),
        (lambda _: None, "there is no such file"),
        (lambda p: tiff(p, np.ones((3, 9, 9), dtype=np.uint8), crs=None), "where it lies"),
        (
            lambda p: tiff(p, np.ones((3, 9, 9), dtype=np.uint8), (0, 0, 9, 9)),
            "nothing of this course",
        ),
    ],
)
def test_what_cannot_be_used_is_refused(tmp_path, make, words):
    path = tmp_path / "ground.tif"
    make(path)
    with pytest.raises(InputRefusedError, match=words):
        read_ground(path, FRAME)
