"""The landscape: slopes, thickets, trees, streams with crossing places, tracks.

The ground is a tile of 256 by 256 cells that repeats in both directions, so that no walk
can leave it. Streams and tracks are level lines of smooth random fields; beside them the
field over its gradient is a signed distance, which is all a walker needs to know. All
numbers are chosen.
"""

from __future__ import annotations

from random import Random

import numpy as np

from audit.units import FloatArray

_CELLS = 256
_CELL_M = 10.0
_MASK = _CELLS - 1
_FAR_M = 60.0
"""Distances to a line are not told beyond this."""

_RELIEFS = (0.02, 0.05, 0.08, 0.12, 0.17)
_WOOD = {"trained": -1.6, "ordinary": -0.2, "novice": 1.2}
_OPEN = {"trained": 1.1, "ordinary": 0.7, "novice": 0.45}
"""Trees and thickets: the less able walker is sent through more of both."""


def _field(field_rng: np.random.Generator, wave_m: float) -> FloatArray:
    """A smooth periodic random field of unit spread with waves about ``wave_m`` long."""
    per_m_north = np.fft.fftfreq(_CELLS, _CELL_M)
    per_m_east = np.fft.rfftfreq(_CELLS, _CELL_M)
    waves = np.hypot(per_m_north[:, None], per_m_east[None, :]) * wave_m
    shape = (np.exp(-1.4 * (waves - 1.0) ** 2) * (waves > 0)).astype(np.float32)
    noise = field_rng.standard_normal((2, *shape.shape), dtype=np.float32)
    out = np.fft.irfft2((noise[0] + np.complex64(1j) * noise[1]) * shape)
    return np.float32(1.0 / out.std()) * out


def _slopes(field: FloatArray) -> tuple[FloatArray, FloatArray]:
    """East and north derivative per metre; rows run north."""
    uphill_east = (np.roll(field, -1, 1) - np.roll(field, 1, 1)) / (2 * _CELL_M)
    uphill_north = (np.roll(field, -1, 0) - np.roll(field, 1, 0)) / (2 * _CELL_M)
    return uphill_east, uphill_north


class Line:
    """A family of winding lines on the ground: signed distance and its direction."""

    def __init__(self, field_rng: np.random.Generator, wave_m: float, level: float) -> None:
        field = _field(field_rng, wave_m) - level
        uphill_east, uphill_north = _slopes(field)
        steep = np.hypot(uphill_east, uphill_north) + 1e-6
        self.offs_m = np.clip(field / steep, -_FAR_M, _FAR_M)
        self.off_m = self.offs_m.ravel().data
        self.uphill_east = (uphill_east / steep).ravel().data
        self.uphill_north = (uphill_north / steep).ravel().data


class Land:
    """One piece of ground, looked up by the number of a cell.

    What is looked up every second is a view of memory, which gives plain numbers faster than
    an array does. ``slope_east`` and ``slope_north`` are rise over run, ``canopy`` and ``thick``
    go from 0 to 1, ``shut`` is where nobody goes through.
    """

    def __init__(self, rng: Random, level: str) -> None:
        field_rng = np.random.default_rng(rng.getrandbits(60))
        relief = rng.choice(_RELIEFS)
        height = _field(field_rng, 750.0) + 0.22 * _field(field_rng, 260.0)
        uphill_east, uphill_north = _slopes(height)
        scale = relief / np.sqrt((uphill_east**2 + uphill_north**2).mean())
        self.slope_east = (uphill_east * scale).ravel().data
        self.slope_north = (uphill_north * scale).ravel().data
        wood = _WOOD[level] + rng.gauss(0, 0.5)
        self.canopy_grid = 1.0 / (1.0 + np.exp(-2.2 * (_field(field_rng, 420.0) + wood)))
        rough = _field(field_rng, 130.0) + 0.5 * _field(field_rng, 50.0)
        bare = _OPEN[level] + rng.gauss(0, 0.2)
        thick = np.clip((rough - bare) * 0.8, 0.0, 1.0)
        self.track = Line(field_rng, rng.uniform(700, 1100), rng.uniform(-0.2, 1.3))
        self.stream = Line(field_rng, rng.uniform(800, 1200), rng.uniform(0.5, 2.0))
        # In the single precision of the fields, and so is the count that is tuned to it.
        steep = float(np.hypot(uphill_east, uphill_north).mean()) * scale
        self.mean_stride = 1.0 - 0.43 * steep - 0.16 * float(thick.mean())
        self.canopy = self.canopy_grid.ravel().data
        self._close(field_rng, rng, thick)

    def _close(self, field_rng: np.random.Generator, rng: Random, thick: FloatArray) -> None:
        """Decide where nobody goes through: thicket cores, rocks, deep water."""
        on_track = np.abs(self.track.offs_m) < 8.0
        ford = (_field(field_rng, 90.0) > rng.uniform(-0.6, 0.6)) | on_track
        shut = (thick > 0.75) | (_field(field_rng, 70.0) > 2.3)
        shut |= (np.abs(self.stream.offs_m) < 7.0) & ~ford
        shut &= ~on_track
        thick = np.where(on_track, 0.0, thick)
        self.thick = thick.ravel().data
        self.shut = shut.ravel().data

    @staticmethod
    def cell(east: float, north: float) -> int:
        """Index of the cell that holds a place."""
        return ((int(north * 0.1 + 25600.0) & _MASK) << 8) | (int(east * 0.1 + 25600.0) & _MASK)

    def canopy_at(self, place_m: FloatArray) -> FloatArray:
        """Tree cover, 0 open to 1 closed, along a path."""
        col = np.floor(place_m[:, 0] / _CELL_M).astype(int) & _MASK
        row = np.floor(place_m[:, 1] / _CELL_M).astype(int) & _MASK
        return self.canopy_grid[row, col].astype(float)

    def line_near(self, line: Line, east: float, north: float) -> tuple[float, float, float]:
        """Signed distance to the line and the unit direction along it."""
        cell = self.cell(east, north)
        uphill_east, uphill_north = line.uphill_east[cell], line.uphill_north[cell]
        in_cell_east = (east / _CELL_M) % 1.0 - 0.5
        in_cell_north = (north / _CELL_M) % 1.0 - 0.5
        return (
            line.off_m[cell]
            + _CELL_M * (uphill_east * in_cell_east + uphill_north * in_cell_north),
            -uphill_north,
            uphill_east,
        )
