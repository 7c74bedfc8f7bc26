"""Strips walked by somebody whose pace is known, as a receiver with lasting errors writes them."""

from __future__ import annotations

from pathlib import Path

import gpxpy
import numpy as np
from walks.random_drift import drift

from audit.geodesy.grids import course_grid
from audit.moments import utc_text
from audit.track import Track

GRID = course_grid("EPSG:32616")
_EAST_M, _NORTH_M = 700_000.0, 3_580_000.0
_START_S = 1_790_000_000.0


def straight(length_m: float, speed_m_s: float = 1.2, stand_s: float = 60.0) -> np.ndarray:
    """Give places a second: standing, walking straight, standing; shape (n, 2)."""
    walking = round(length_m / speed_m_s)
    along = np.concatenate(
        [np.zeros(int(stand_s)), np.linspace(0.0, length_m, walking + 1),
         np.full(int(stand_s), length_m)]
    )  # fmt: skip
    return np.column_stack([0.6 * along, 0.8 * along])


def winding(length_m: float, speed_m_s: float = 1.2) -> np.ndarray:
    """Give places a second along a trail of bends 150 m in radius."""
    along = np.arange(0.0, length_m, speed_m_s)
    heading = np.sin(along / 150.0) * 1.2
    steps = speed_m_s * np.column_stack([np.sin(heading), np.cos(heading)])
    return np.vstack([[0.0, 0.0], np.cumsum(steps, axis=0)])


def recording(
    places: np.ndarray,
    rng: np.random.Generator | None = None,
    *,
    noise_m: float = 4.0,
    correlation_s: float = 60.0,
    height_m: np.ndarray | None = None,
    cadence_per_min: np.ndarray | None = None,
    source: str = "strip.gpx",
) -> Track:
    n = len(places)
    error = np.zeros((n, 2))
    if rng is not None:
        error = np.column_stack([drift(rng, n, noise_m, correlation_s) for _ in range(2)])
    longitude, latitude = GRID.to_geographic(
        np.ascontiguousarray(_EAST_M + places[:, 0] + error[:, 0]),
        np.ascontiguousarray(_NORTH_M + places[:, 1] + error[:, 1]),
    )
    nothing = np.full(n, np.nan)
    return Track(
        time_s=_START_S + np.arange(n, dtype=np.float64),
        longitude_deg=longitude,
        latitude_deg=latitude,
        elevation_m=nothing.copy() if height_m is None else height_m.astype(np.float64),
        hdop=nothing.copy(),
        cadence_per_min=nothing.copy() if cadence_per_min is None else cadence_per_min,
        segment=np.zeros(n, dtype=np.int64),
        source=source,
    )


def write_strip(path: Path, length_m: float, seed: int, cadence: float | None = None) -> None:
    """Write the recording of a straight strip as GPX, with one cadence for all of it."""
    track = recording(straight(length_m), np.random.default_rng(seed))
    points = "".join(
        f'<trkpt lat="{lat:.7f}" lon="{lon:.7f}"><time>{utc_text(moment)}</time>'
        + (f"<extensions><cadence>{cadence}</cadence></extensions>" if cadence else "")
        + "</trkpt>"
        for lat, lon, moment in zip(
            track.latitude_deg, track.longitude_deg, track.time_s, strict=True
        )
    )
    head = '<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">'
    path.write_text(f"{head}<trk><trkseg>{points}</trkseg></trk></gpx>")
    assert gpxpy.parse(path.read_text()).tracks
