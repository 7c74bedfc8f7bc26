"""What reading a GPX file met and passed over, and why there may be nothing to read."""

from __future__ import annotations

from xml.parsers import expat

import numpy as np
from numpy.typing import NDArray

from audit.errors import InputRefusedError, refuse
from audit.readers.gpx_passage import GpxPassage
from audit.readers.gpx_points import GatheredPoints
from audit.readers.xml_guard import no_xml
from audit.units import FloatArray

_FIELDS = {
    "time": ("time", "times"),
    "ele": ("elevation", "elevations"),
    "hdop": ("dilution of precision", "dilutions of precision"),
    "cadence": ("cadence", "cadences"),
}


def no_fix(passage: GpxPassage, file: str) -> InputRefusedError:
    """Give the error for a file without a single complete <trkpt>."""
    if passage.total_bytes == 0:
        return refuse(file, "", None, "is empty", "Export the recording again as GPX.")
    if passage.error is not None:
        return no_xml(file, passage.error)
    elements = passage.points.elements
    if elements["rtept"]:
        what = "a planned route and no recorded track"
    elif elements["trk"]:
        what = "a track without a single fix"
    elif elements["wpt"]:
        what = "waypoints and no recorded track"
    else:
        what = "no recorded track"
    return refuse(
        file, "", None, f"holds {what}", "Name the GPX file that was recorded on the walk."
    )


def no_place(
    points: GatheredPoints, columns: dict[str, FloatArray], file: str
) -> InputRefusedError:
    """Give the error for a file in which no point has a usable latitude and longitude."""
    shown = [
        points.unreadable[name][1] if name in points.unreadable else f"{columns[name][0]:g}"
        for name in ("lat", "lon")
    ]
    return refuse(
        file,
        "first point",
        f'lat="{shown[0]}" lon="{shown[1]}"',
        f"is no place on the earth, nor is any of the {points.complete} points",
        "Export the recording with decimal degrees, written with a full stop.",
    )


def break_note(passage: GpxPassage) -> str:
    """Say where a file breaks off, what was kept and what is lost."""
    line, reason = 1, str(passage.error)
    if isinstance(passage.error, expat.ExpatError):
        line, reason = passage.error.lineno, expat.ErrorString(passage.error.code)
    if passage.cut_short:
        where = f"The file breaks off in line {line}, after {passage.total_bytes:,} bytes"
    else:
        lost = passage.total_bytes - passage.good_bytes
        where = (
            f"The file cannot be read beyond line {line} ({reason}), and what follows is lost,"
            f" {lost:,} of {passage.total_bytes:,} bytes"
        )
    points = passage.points
    unfinished = ", without the one being written there" if points.in_point else ""
    return f"{where}; {_counted(points.complete, 'point')} before that kept{unfinished}."


def point_notes(points: GatheredPoints, placed: NDArray[np.bool_]) -> list[str]:
    """Say what single points lack, one sentence a kind."""
    notes = []
    if points.simulated:
        notes.append("The recording says of itself that it is simulated.")
    astray = np.flatnonzero(~placed)
    if len(astray):
        notes.append(
            f"{_counted(len(astray), 'point')} of {len(placed)} without a usable position left"
            f" out (the first is point {astray[0] + 1})."
        )
    for name, (one, many) in _FIELDS.items():
        if name in points.unreadable:
            count, first = points.unreadable[name]
            notes.append(
                f"{_counted(count, one, many)} could not be read (the first is {first[:40]!r})"
                " and counted as missing."
            )
    if points.without_zone:
        notes.append(f"{_counted(points.without_zone, 'time')} without a zone taken as UTC.")
    if points.elements["rtept"]:
        notes.append("The file also holds a planned route, which was not read here.")
    notes += [
        f"The track that begins at point {first + 1} is called {name[:80]!r}."
        for first, name in points.track_names
    ]
    return notes


def _counted(count: int, one: str, many: str | None = None) -> str:
    return f"{count:,} {one if count == 1 else many or one + 's'}"
