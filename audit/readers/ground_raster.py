"""A raster of the ground, opened so that it reaches no other file and fills no memory."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from audit.errors import refuse_file
from audit.settings import ReadingSettings

if TYPE_CHECKING:
    from rasterio import DatasetReader

_FORMS = [
    "GTiff", "PNG", "JPEG", "WEBP", "JP2OpenJPEG", "GIF", "BMP", "HFA", "ENVI", "EHdr", "AAIGrid",
    "XYZ", "DTED", "SRTMHGT", "USGSDEM", "netCDF",
]  # fmt: skip
"""What holds its own cells. Left out is what names other files or addresses to be fetched, such
as a virtual raster or the description of a map service."""


@contextmanager
def opened_raster(
    path: Path, wanted: str, needed_for: str, settings: ReadingSettings
) -> Iterator[DatasetReader]:
    """Open a raster that holds its own cells.

    Parameters
    ----------
    path : Path
    wanted, needed_for : str
        For messages: "a GeoTIFF", "pictures of the ground".

    Raises
    ------
    InputRefusedError
        Where the library is not installed, or the file cannot be read or declares blocks
        that no memory holds; also for what the library meets while the raster is in use.
    """
    try:
        from rasterio import Env  # noqa: PLC0415 (an extra, and heavy)
        from rasterio.errors import (  # noqa: PLC0415
            NotGeoreferencedWarning,
            RasterioError,
            RasterioIOError,
        )
        from rasterio.io import DatasetReader  # noqa: PLC0415
    except ImportError:
        rule = f"{needed_for} need the raster library"
        remedy = 'Install it: pip install "leg-audit[ground]".'
        raise refuse_file(path.name, rule, remedy) from None
    if not path.is_file():
        raise refuse_file(path.name, "there is no such file", f"Give {wanted}.")
    try:
        with warnings.catch_warnings(), Env():
            warnings.simplefilter("ignore", NotGeoreferencedWarning)
            with DatasetReader(str(path), driver=_FORMS) as raster:
                _refuse_huge_blocks(path, raster, settings)
                yield raster
    except (RasterioError, RasterioIOError, MemoryError) as problem:
        said = str(problem).splitlines() or ["it needs too much memory"]
        rule = f"this is no raster that can be read: {said[0].rstrip('.')}"
        raise refuse_file(path.name, rule, f"Give {wanted}.") from problem


def refuse_too_fine(path: Path, cells: float, settings: ReadingSettings) -> None:
    """Refuse a raster of which too many cells lie on the ground that is wanted.

    Raises
    ------
    InputRefusedError
        Where there are more than any map or model of the ground has.
    """
    if cells > settings.most_raster_cells:
        rule = f"has {cells:.3g} cells on this course, more than {settings.most_raster_cells:,}"
        raise refuse_file(path.name, rule, "Give a coarser raster.")


def _refuse_huge_blocks(path: Path, raster: DatasetReader, settings: ReadingSettings) -> None:
    """Refuse a file that has to be unpacked in pieces larger than any real one has."""
    largest = max((rows * columns for rows, columns in raster.block_shapes), default=0)
    if largest > settings.most_raster_cells:
        rule = f"is packed in blocks of {largest:,} cells, which would fill the memory"
        raise refuse_file(path.name, rule, "Save it again in tiles or strips.")
