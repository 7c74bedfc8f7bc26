"""Rasters of the ground that would fetch other files or fill the memory."""

from __future__ import annotations

import socket
import time
from pathlib import Path

import numpy as np
import pytest

from audit.errors import InputRefusedError
from audit.readers.ground_file import GroundFrame, read_ground
from audit.readers.ground_heights import heights_at

rasterio = pytest.importorskip("rasterio")

FRAME = GroundFrame(
    grid="EPSG:32616", west_m=748_000, south_m=4_058_000, east_m=750_000, north_m=4_060_000
)
PLACES = np.array([[748_500.0, 4_058_500.0], [749_500.0, 4_059_500.0]])
VIRTUAL = """<VRTDataset rasterXSize="10" rasterYSize="10"><SRS>EPSG:32616</SRS>
<GeoTransform>748000,200,0,4060000,0,-200</GeoTransform><VRTRasterBand dataType="Int16" band="1">
<SimpleSource><SourceFilename relativeToVRT="0">{}</SourceFilename><SourceBand>1</SourceBand>
</SimpleSource></VRTRasterBand></VRTDataset>"""
SERVICE = """<GDAL_WMS><Service name="TMS"><ServerUrl>http://127.0.0.1:{}/a</ServerUrl></Service>
<DataWindow><SizeX>9</SizeX><SizeY>9</SizeY></DataWindow></GDAL_WMS>"""


def refused_both_ways(path: Path) -> str:
    said = []
    for read in (
        lambda: read_ground(path, FRAME),
        lambda: heights_at(path, "EPSG:32616", PLACES),
    ):
        began = time.monotonic()
        with pytest.raises(InputRefusedError) as refusal:
            read()
        assert time.monotonic() - began < 10.0
        said.append(str(refusal.value))
    return "\n".join(said)


def test_no_raster_fetches_anything_from_elsewhere(tmp_path):
    with socket.create_server(("127.0.0.1", 0)) as server:
        server.settimeout(0.2)
        port = server.getsockname()[1]
        for text in (
            VIRTUAL.format(f"/vsicurl/http://127.0.0.1:{port}/a.tif"),
            SERVICE.format(port),
        ):
            path = tmp_path / "ground.tif"
            path.write_text(text)
            assert "no raster that can be read" in refused_both_ways(path)
        with pytest.raises(TimeoutError):
            server.accept()


def sparse(path: Path, side: int, **options: object) -> Path:
    """Write a GeoTIFF of which nothing is filled in: small as a file, huge as declared."""
    with rasterio.open(
        path, "w", driver="GTiff", width=side, height=side, count=1, dtype="int16",
        crs="EPSG:32616", SPARSE_OK=True, BIGTIFF="YES", compress="deflate",
        transform=rasterio.transform.from_bounds(*(748_000, 4_058_000, 750_000, 4_060_000), side, side),
        **options,
    ):  # fmt: skip
        pass
    return path


def test_a_raster_of_billions_of_cells_is_refused(tmp_path):
    path = sparse(tmp_path / "ground.tif", 100_000, tiled=True, blockxsize=4096, blockysize=4096)
    assert path.stat().st_size < 50_000
    assert "cells on this course, more than 100,000,000" in refused_both_ways(path)


@pytest.mark.parametrize("damage", range(40))
def test_no_damage_to_a_raster_does_worse_than_one_sentence(tmp_path, damage):
    random = np.random.default_rng(damage)
    path = tmp_path / "ground.tif"
    side = 40
    with rasterio.open(
        path, "w", driver="GTiff", width=side, height=side, count=1, dtype="float32",
        crs="EPSG:32616", compress="deflate",
        transform=rasterio.transform.from_bounds(748_000, 4_058_000, 750_000, 4_060_000, side, side),
    ) as file:  # fmt: skip
        file.write(random.normal(300.0, 30.0, (1, side, side)).astype(np.float32))
    data = bytearray(path.read_bytes())
    for place in random.integers(0, 600 if damage % 2 else len(data), 3):
        data[place] = int(random.integers(0, 256))
    path.write_bytes(data)
    for read in (
        lambda: read_ground(path, FRAME).jpeg,
        lambda: heights_at(path, "EPSG:32616", PLACES),
    ):
        try:
            read()
        except InputRefusedError as refusal:
            said = str(refusal).splitlines()
        else:
            said = ["read"]
        assert len(said) == 1
