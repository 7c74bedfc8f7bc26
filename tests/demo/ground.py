"""The height of the ground, from a cut-out of an elevation raster."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.interpolate import RegularGridInterpolator

from audit.units import FloatArray

CUT_OUT = Path(__file__).resolve().parents[2] / "fixtures" / "elevation" / "demo-ground.asc"
WEST, SOUTH, EAST, NORTH = -84.24, 36.635, -84.20, 36.665
"""Degrees: the course of the demo and some hundred metres around it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """Heights in metres on a grid of degrees; row 0 is the northernmost."""

    west_deg: float
    south_deg: float
    cell_deg: float
    height_m: FloatArray

    def heights_m(self, longitude_deg: FloatArray, latitude_deg: FloatArray) -> FloatArray:
        """Give the heights of places, between the four nearest cells."""
        rows, columns = self.height_m.shape
        longitudes = self.west_deg + self.cell_deg * (np.arange(columns) + 0.5)
        latitudes = self.south_deg + self.cell_deg * (np.arange(rows) + 0.5)
        between = RegularGridInterpolator((latitudes, longitudes), self.height_m[::-1])
        return np.asarray(between(np.column_stack([latitude_deg, longitude_deg])))


def read_ground(path: Path = CUT_OUT) -> Ground:
    """Read a raster in the ASCII grid form."""
    lines = path.read_text().splitlines()
    head = {word: float(value) for word, value in (line.split() for line in lines[:5])}
    return Ground(
        west_deg=head["xllcorner"],
        south_deg=head["yllcorner"],
        cell_deg=head["cellsize"],
        height_m=np.array([[float(cell) for cell in line.split()] for line in lines[5:]]),
    )


def cut_out(raster: Path) -> str:
    """Give the text of the cut-out, from the whole raster (keys elevation, xmin, ymin, dx)."""
    whole = np.load(raster)
    cell, west, north = (float(whole[key]) for key in ("dx", "xmin", "ymin"))
    first_row, last_row = int((north - NORTH) / cell), int((north - SOUTH) / cell) + 1
    first_column, last_column = int((WEST - west) / cell), int((EAST - west) / cell) + 1
    part = whole["elevation"][first_row:last_row, first_column:last_column]
    head = (
        f"ncols {part.shape[1]}",
        f"nrows {part.shape[0]}",
        f"xllcorner {west + first_column * cell:.9f}",
        f"yllcorner {north - last_row * cell:.9f}",
        f"cellsize {cell:.12f}",
    )
    return "\n".join([*head, *(" ".join(map(str, row)) for row in part.tolist())]) + "\n"
