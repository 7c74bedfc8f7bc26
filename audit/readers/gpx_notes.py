"""What reading a GPX file met and passed over, and why there may be nothing to read."""

from __future__ import annotations

from xml.parsers import expat

import numpy as np
from numpy.typing import NDArray

from audit.errors import InputRefusedError, refuse, refuse_file
from audit.readers.gpx_passage import GpxPassage
from audit.readers.gpx_points import GatheredPoints
from audit.readers.xml_guard import no_xml
from audit.units import FloatArray
from audit.words import sentence

_FIELDS = ("time", "ele", "hdop", "cadence")


def no_fix(passage: GpxPassage, file: str) -> InputRefusedError:
    """Give the error for a file without a single complete <trkpt>."""
    if passage.total_bytes == 0:
        return refuse_file(file, "is empty", "Export the recording again as GPX.")
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
    return refuse_file(file, f"holds {what}", "Name the GPX file that was recorded on the walk.")


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
    points, total = passage.points, f"{passage.total_bytes:,}"
    unfinished = "yes" if points.in_point else "no"
    if passage.cut_short:
        where = sentence("recording-breaks-off", line=str(line), bytes=total)
    else:
        lost = f"{passage.total_bytes - passage.good_bytes:,}"
        where = sentence("recording-lost", line=str(line), reason=reason, lost=lost, of=total)
    return sentence(
        "recording-kept-before", where=where, count=points.complete, unfinished=unfinished
    )


def point_notes(points: GatheredPoints, placed: NDArray[np.bool_]) -> list[str]:
    """Say what single points lack, one sentence a kind."""
    notes: list[str] = []
    if points.simulated:
        notes.append(sentence("recording-simulated"))
    astray = np.flatnonzero(~placed)
    if len(astray):
        notes.append(
            sentence(
                "recording-astray", count=len(astray), of=str(len(placed)), first=str(astray[0] + 1)
            )
        )
    for name in _FIELDS:
        if name in points.unreadable:
            count, first = points.unreadable[name]
            what = sentence(f"recording-field-{name}", count=count)
            notes.append(sentence("recording-unreadable", what=what, first=repr(first[:40])))
    if points.without_zone:
        notes.append(sentence("recording-without-zone", count=points.without_zone))
    if points.elements["rtept"]:
        notes.append(sentence("recording-planned-route"))
    notes += [
        sentence("recording-called", point=str(first + 1), name=repr(name[:80]))
        for first, name in points.track_names
    ]
    return notes
