"""Heights of the ground at places of the course, out of an elevation raster."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from audit.errors import refuse_file
from audit.readers.ground_raster import opened_raster, refuse_too_fine
from audit.settings import ReadingSettings, Settings
from audit.units import FloatArray

if TYPE_CHECKING:
    from rasterio import DatasetReader

_FEET = {"ft", "foot", "feet", "us survey foot", "ft-us"}
_FOOT_M = 0.3048


def heights_at(
    path: Path, grid: str, places: FloatArray, settings: Settings | None = None
) -> FloatArray:
    """Give the height in metres at each place, NaN where the raster has none.

    Parameters
    ----------
    path : Path
        A GeoTIFF of elevation, or whatever else the raster library knows.
    grid : str
        Code of the grid that the places are on.
    places : float array, shape (n, 2)
        East and north in metres.

    Raises
    ------
    InputRefusedError
        The library is not installed, the file cannot be read, is no elevation or says not
        where it lies, or it covers none of the places.
    """
    limits = (settings or Settings()).reading
    with opened_raster(path, "a GeoTIFF of elevation", "heights of the ground", limits) as raster:
        heights = _between_cells(path, raster, grid, places, limits)
    if not np.isfinite(heights).any():
        raise refuse_file(
            path.name, "the raster has no heights on this course",
            "Give one of the ground that the legs go over.",
        )  # fmt: skip
    return heights


def _between_cells(
    path: Path,
    raster: DatasetReader,
    grid: str,
    places: FloatArray,
    limits: ReadingSettings,
) -> FloatArray:
    """Read the heights around the places and go between the middles of their cells evenly."""
    from rasterio.warp import transform  # noqa: PLC0415
    from rasterio.windows import Window  # noqa: PLC0415

    if raster.crs is None:
        rule = "the raster does not say where it lies"
        raise refuse_file(
            path.name, rule, "Give one with a coordinate system, a GeoTIFF for instance."
        )
    if raster.count != 1 or raster.dtypes[0] == "uint8":
        rule = "this is a picture of the ground, and heights are wanted"
        raise refuse_file(
            path.name, rule, "Give an elevation raster: one band of numbers in metres."
        )
    x, y = (np.array(one) for one in transform(grid, raster.crs, *places.T.tolist()))
    to_cell = ~raster.transform
    # Half a cell from the edge lies the middle of the first one.
    column = to_cell.a * x + to_cell.b * y + to_cell.c - 0.5
    row = to_cell.d * x + to_cell.e * y + to_cell.f - 0.5
    inside = np.isfinite(column) & np.isfinite(row)
    inside &= (column >= -0.5) & (column <= raster.width - 0.5)
    inside &= (row >= -0.5) & (row <= raster.height - 0.5)
    heights = np.full(len(places), np.nan)
    if not inside.any():
        return heights
    column = np.clip(column[inside], 0.0, raster.width - 1.0)
    row = np.clip(row[inside], 0.0, raster.height - 1.0)
    left, top = int(column.min()), int(row.min())
    right, bottom = (int(np.floor(edge.max())) + 2 for edge in (column, row))
    window = Window.from_slices((top, min(bottom, raster.height)), (left, min(right, raster.width)))
    refuse_too_fine(path, float(window.width) * window.height, limits)
    with np.errstate(all="ignore"):  # a file may hold any bits; what is no number is no height
        cells = raster.read(1, window=window, masked=True).astype(np.float64).filled(np.nan)
        cells[~np.isfinite(cells)] = np.nan
    heights[inside] = _bilinear(cells, row - top, column - left) * _metres(raster)
    return heights


def _bilinear(cells: FloatArray, row: FloatArray, column: FloatArray) -> FloatArray:
    first_row = np.minimum(row.astype(np.int64), max(cells.shape[0] - 2, 0))
    first_column = np.minimum(column.astype(np.int64), max(cells.shape[1] - 2, 0))
    next_row = np.minimum(first_row + 1, cells.shape[0] - 1)
    next_column = np.minimum(first_column + 1, cells.shape[1] - 1)
    down, right = row - first_row, column - first_column
    above = cells[first_row, first_column] * (1 - right) + cells[first_row, next_column] * right
    below = cells[next_row, first_column] * (1 - right) + cells[next_row, next_column] * right
    between: FloatArray = above * (1 - down) + below * down
    return between


def _metres(raster: DatasetReader) -> float:
    """Give metres a unit of the raster's heights; metres where it names none."""
    unit = (raster.units[0] or "").strip().lower()
    return _FOOT_M if unit in _FEET else 1.0
