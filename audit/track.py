"""A recorded track: arrays of fixes in the order of the file, nothing cleaned."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray
from audit.words import says


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Track:
    """Fixes as recorded. All arrays have shape (n,), are read-only and n >= 1.

    Attributes
    ----------
    time_s : float array
        Seconds since 1970-01-01T00:00:00Z; NaN where a fix carries no time.
    longitude_deg, latitude_deg : float arrays
        WGS 84.
    elevation_m, hdop, cadence_per_min : float arrays
        NaN where the recording has none.
    segment : int array
        Number of the <trkseg>, counted through the whole file from 0.
    notes : tuple of str
        What reading met and passed over, one sentence each.
    source : str
        Name of the file, without its folder.
    """

    time_s: FloatArray
    longitude_deg: FloatArray
    latitude_deg: FloatArray
    elevation_m: FloatArray
    hdop: FloatArray
    cadence_per_min: FloatArray
    segment: NDArray[np.int64]
    notes: tuple[str, ...] = ()
    source: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        columns = (
            self.time_s,
            self.longitude_deg,
            self.latitude_deg,
            self.elevation_m,
            self.hdop,
            self.cadence_per_min,
            self.segment,
        )
        if len({len(column) for column in columns}) != 1:
            message = "the columns of a track must be equally long"
            raise ValueError(message)
        for column in columns:
            column.flags.writeable = False

    def __len__(self) -> int:
        return len(self.time_s)


def calls_itself_simulated(notes: Iterable[str]) -> tuple[str, ...]:
    """Give the notes by which a recording calls itself simulated, each once.

    Not every note that holds the word: a name of a point or of a leg may.
    """
    return tuple(dict.fromkeys(note for note in notes if says(note, "recording-simulated")))
