"""PROJ's workings, made once each: steps between degrees and a grid, and its projection."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import numpy.typing as npt
import pyproj
from pyproj import network

# A program for the field never asks the network, whatever the machine's settings say.
network.set_network_enabled(active=False)  # type: ignore[attr-defined]

_WGS84 = "EPSG:4326"


@lru_cache(maxsize=64)
def grid_system(crs: str) -> pyproj.CRS:
    """Give PROJ's entry for a grid; raises pyproj's CRSError where there is none."""
    return pyproj.CRS.from_user_input(crs)


# PROJ's guess without a datum shift ("ballpark") is off by up to hundreds of metres, and
# would be taken for single fixes outside the datum's area: one kind of step for all.
@lru_cache(maxsize=64)
def degrees_to_grid(crs: str) -> pyproj.Transformer:
    """Give the step from (longitude, latitude) on WGS 84 to (east, north)."""
    return pyproj.Transformer.from_crs(_WGS84, crs, always_xy=True, allow_ballpark=False)


@lru_cache(maxsize=64)
def grid_to_degrees(crs: str) -> pyproj.Transformer:
    """Give the step from (east, north) to (longitude, latitude) on WGS 84."""
    return pyproj.Transformer.from_crs(crs, _WGS84, always_xy=True, allow_ballpark=False)


def arrays_through(
    step: pyproj.Transformer, first: npt.NDArray[np.float64], second: npt.NDArray[np.float64]
) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Give arrays taken through a step. PROJ's library takes an array of one for a number."""
    if first.size != 1:
        return step.transform(first, second)
    one, other = step.transform(first.item(), second.item())
    return np.full(first.shape, one), np.full(first.shape, other)


@lru_cache(maxsize=64)
def projection(crs: str) -> pyproj.Proj:
    """Give the bare projection, from degrees on the grid's own datum."""
    return pyproj.Proj(crs)
