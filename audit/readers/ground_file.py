"""A georeferenced picture or an elevation raster, brought onto the grid of the course."""

from __future__ import annotations

import math
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from audit.errors import refuse_file
from audit.ground_picture import GroundPicture
from audit.readers.ground_raster import opened_raster, refuse_too_fine
from audit.readers.plain_text import writable
from audit.settings import ReadingSettings, Settings
from audit.units import FloatArray

if TYPE_CHECKING:
    from rasterio import DatasetReader
    from rasterio.vrt import WarpedVRT

_Bytes = NDArray[np.uint8]
_LIGHT_FROM_DEG, _LIGHT_HEIGHT_DEG = 315.0, 45.0


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundFrame:
    """The ground wanted: a grid by its code, and edges in its metres."""

    grid: str
    west_m: float
    south_m: float
    east_m: float
    north_m: float


def read_ground(path: Path, frame: GroundFrame, settings: Settings | None = None) -> GroundPicture:
    """Read a GeoTIFF, or whatever else the raster library knows, for a piece of ground.

    Three bands or a palette are a picture, one band of bytes a grey one; one band of any
    other numbers is elevation in metres, and is shaded.

    Raises
    ------
    InputRefusedError
        The library is not installed, the file cannot be read or says not where it lies,
        or it shows nothing of that ground.
    """
    limits = (settings or Settings()).reading
    with opened_raster(path, "a GeoTIFF", "pictures of the ground", limits) as raster:
        return _on_grid(path, raster, frame, limits)


def _on_grid(
    path: Path, raster: DatasetReader, frame: GroundFrame, settings: ReadingSettings
) -> GroundPicture:
    if raster.crs is None:
        raise refuse_file(
            path.name, "the raster does not say where it lies",
            "Give one with a coordinate system, a GeoTIFF for instance.",
        )  # fmt: skip
    from rasterio.enums import Resampling  # noqa: PLC0415
    from rasterio.transform import from_bounds  # noqa: PLC0415
    from rasterio.vrt import WarpedVRT  # noqa: PLC0415

    edges = (frame.west_m, frame.south_m, frame.east_m, frame.north_m)
    wide_m, high_m = edges[2] - edges[0], edges[3] - edges[1]
    scale = settings.ground_px / max(wide_m, high_m)
    width, height = max(1, round(wide_m * scale)), max(1, round(high_m * scale))
    refuse_too_fine(path, _cells_on(raster, frame), settings)
    elevation = raster.count == 1 and raster.dtypes[0] != "uint8"
    has_palette = bool(raster.count) and raster.colorinterp[0].name == "palette"
    with WarpedVRT(
        raster,
        crs=frame.grid,
        transform=from_bounds(*edges, width, height),
        width=width,
        height=height,
        add_alpha=raster.nodata is None and raster.count < 4,
        resampling=getattr(Resampling, _resampling(elevation=elevation, palette=has_palette)),
    ) as warped:
        seen = warped.dataset_mask() > 0
        if not seen.any():
            raise refuse_file(
                path.name, "the raster shows nothing of this course",
                "Give one of the ground that the map of the course shows.",
            )  # fmt: skip
        if elevation:
            with np.errstate(all="ignore"):  # a file may hold any bits
                heights = warped.read(1).astype(float)
                shown = _shaded(np.where(seen, heights, np.nan), wide_m / width)
        else:
            shown = _colours(raster, warped, has_palette=has_palette)
    return GroundPicture(
        jpeg=_jpeg(_paler(shown, seen, settings), settings),
        west_m=edges[0],
        south_m=edges[1],
        east_m=edges[2],
        north_m=edges[3],
        what="elevation" if elevation else "picture",
        source=writable(path.name),
    )


def _cells_on(raster: DatasetReader, frame: GroundFrame) -> float:
    """Give how many cells of the raster the frame shows, about."""
    from rasterio.errors import RasterioError  # noqa: PLC0415
    from rasterio.warp import transform_bounds  # noqa: PLC0415

    edges = (frame.west_m, frame.south_m, frame.east_m, frame.north_m)
    try:
        west, south, east, north = transform_bounds(frame.grid, raster.crs, *edges)
    except RasterioError:
        return 0.0  # not on the same side of the earth; the mask will say so
    cell = float(abs(raster.transform.determinant))
    shown = abs(float(east - west) * float(north - south)) / cell if cell else math.inf
    return float(min(shown, float(raster.width) * raster.height))


def _resampling(*, elevation: bool, palette: bool) -> str:
    """Choose what keeps slopes smooth, and colours of a palette as they are."""
    if elevation:
        return "cubic_spline"
    return "nearest" if palette else "bilinear"


def _colours(raster: DatasetReader, warped: WarpedVRT, *, has_palette: bool) -> _Bytes:
    """Give red, green and blue; shape (3, height, width)."""
    if has_palette:
        palette = np.zeros((256, 3), dtype=np.uint8)
        for value, colour in raster.colormap(1).items():
            palette[value] = colour[:3]
        painted: _Bytes = np.moveaxis(palette[warped.read(1)], -1, 0)
        return painted
    bands = [1, 2, 3] if raster.count >= 3 else [1, 1, 1]
    colours: NDArray[Any] = warped.read(bands)
    if colours.dtype == np.uint8:
        return colours
    top = float(np.nanpercentile(colours, 99.0)) or 1.0
    return np.clip(colours / top * 255.0, 0.0, 255.0).astype(np.uint8)


def _shaded(height_m: FloatArray, cell_m: float) -> _Bytes:
    """Shade elevation by the cosine of the angle between slope and light (Lambert)."""
    filled = np.where(np.isfinite(height_m), height_m, np.nanmean(height_m))
    if min(filled.shape) < 2:
        return np.full((3, *filled.shape), 255, dtype=np.uint8)
    south, east = np.gradient(filled, cell_m)
    away, up = np.radians(_LIGHT_FROM_DEG), np.radians(_LIGHT_HEIGHT_DEG)
    light = np.array([np.sin(away) * np.cos(up), np.cos(away) * np.cos(up), np.sin(up)])
    lit = (light[2] - light[0] * east + light[1] * south) / np.sqrt(1 + east**2 + south**2)
    grey = np.clip(lit / light[2] * 190.0, 0.0, 255.0).astype(np.uint8)
    return np.stack([grey] * 3)


def _paler(shown: _Bytes, seen: NDArray[np.bool_], settings: ReadingSettings) -> _Bytes:
    """Mix with white; all white where the raster shows nothing."""
    share = settings.ground_strength
    pale = shown.astype(float) * share + 255.0 * (1.0 - share)
    return np.where(seen, pale, 255.0).astype(np.uint8)


def _jpeg(shown: _Bytes, settings: ReadingSettings) -> bytes:
    from rasterio.io import MemoryFile  # noqa: PLC0415

    options: dict[str, Any] = {
        "driver": "JPEG",
        "count": 3,
        "dtype": "uint8",
        "height": shown.shape[1],
        "width": shown.shape[2],
        "quality": settings.ground_jpeg_quality,
    }
    with MemoryFile() as memory:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with memory.open(**options) as target:
                target.write(shown)
        made: bytes = memory.read()
        return made
