"""A recorded track from a GPX file, in one pass over the file.

GPX 1.0 and 1.1 (the schemas of topografix.com) are read alike: <trkpt> with lat, lon,
<time>, <ele> and <hdop>, and cadence from anyone's extensions, by local name, whatever
the prefix.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from audit.readers.gpx_notes import break_note, no_fix, no_place, point_notes
from audit.readers.gpx_passage import GpxPassage, pass_over
from audit.readers.plain_text import writable
from audit.settings import Settings
from audit.track import Track
from audit.words import sentence


def read_track(
    path: Path | str, *, keep_names: bool = False, settings: Settings | None = None
) -> Track:
    """Give all fixes of a recording in the order of the file, and notes on what was passed over.

    Parameters
    ----------
    path : Path or str
        A GPX file, which may be packed with gzip.
    keep_names : bool
        Say in the notes what the recorded tracks are called. Names, makers and device
        ids are not copied otherwise: they point at a person.

    Raises
    ------
    InputRefusedError
        When there is no fix to be had. A file that breaks off gives what came before.
    """
    path, limits = Path(path), (settings or Settings()).reading
    passage = pass_over(path, limits, keep_names=keep_names)
    if passage.stopped_at_letters:
        # Most often a name in an older encoding than the file claims. If that was not
        # it, the second passage comes no further than the first.
        again = pass_over(path, limits, encoding="iso-8859-1", keep_names=keep_names)
        if again.good_bytes > passage.good_bytes:
            return _track(again, path.name, [sentence("recording-other-letters")])
    return _track(passage, path.name, [])


def _track(passage: GpxPassage, file: str, notes: list[str]) -> Track:
    points = passage.points
    if points.complete == 0:
        raise no_fix(passage, file)
    columns = {
        name: np.frombuffer(values, dtype=np.float64)[: points.complete]
        for name, values in points.columns.items()
    }
    placed = (np.abs(columns["lat"]) <= 90.0) & (np.abs(columns["lon"]) <= 180.0)
    if not placed.any():
        raise no_place(points, columns, file)
    notes += passage.notes
    if passage.error is not None:
        notes.append(break_note(passage))
    notes += point_notes(points, placed)
    # Nothing is copied where nothing is left out.
    which = slice(None) if placed.all() else placed
    kept = {name: column[which] for name, column in columns.items()}
    segment = np.frombuffer(points.segment, dtype=np.int64)[: points.complete]
    return Track(
        time_s=kept["time"],
        longitude_deg=kept["lon"],
        latitude_deg=kept["lat"],
        elevation_m=kept["ele"],
        hdop=kept["hdop"],
        cadence_per_min=kept["cadence"],
        segment=segment[which],
        notes=tuple(notes),
        source=writable(file),
    )
